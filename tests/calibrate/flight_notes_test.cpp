// SPDX-License-Identifier: MIT
#include "core/calibrate/flight_notes.h"

#include "core/assess/assess.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

// Up to 0.8 px at 40 %, a second hump of 0.5 px at 70 %.
const std::vector<WobbleAt> kCurve{{0.2, 0.1},  {0.3, 0.2}, {0.35, 0.4}, {0.4, 0.8},
                                   {0.45, 0.3}, {0.6, 0.1}, {0.7, 0.5},  {0.8, 0.2}};

Craft craftWith(std::vector<FlightNote> notes, Limits limits)
{
    static const Craft reedbed = test::sampleCraft("reedbed");
    Craft craft = reedbed;
    craft.limits = std::move(limits);
    craft.flight.notes = std::move(notes);
    return craft;
}

FlightNote seen(Seen seen, double from, double to)
{
    return {.from = from, .to = to, .seen = seen, .note = {}, .extras = {}};
}

// Oracle: by hand on a curve of straight pieces.
TEST(FlightNotes, AgreeWhereTheCurveIsGradedAlike)
{
    const Craft craft = craftWith({seen(Seen::Clean, 0.2, 0.33), seen(Seen::Bad, 0.38, 0.42),
                                   seen(Seen::Faint, 0.65, 0.65), seen(Seen::Bad, 0.9, 0.95)},
                                  {0.325, 0.7, {}});
    FlightNotesCheck check = checkFlightNotes(craft, kCurve);
    ASSERT_EQ(check.notes.size(), 3U);                 // the last lies beyond the curve
    EXPECT_NEAR(check.notes[0].most_px, 0.32, 1e-12);  // 0.2 and 3/5 of the way to 0.4
    EXPECT_NEAR(check.notes[0].least_px, 0.1, 1e-12);
    EXPECT_NEAR(check.notes[1].most_px, 0.8, 1e-12);
    EXPECT_NEAR(check.notes[2].most_px, 0.3, 1e-12);
    EXPECT_TRUE(check.notes[0].agrees);
    EXPECT_TRUE(check.notes[1].agrees);
    EXPECT_FALSE(check.notes[2].agrees);  // 0.3 is clean below 0.325
    EXPECT_NEAR(*check.faint_px.above_px, 0.32, 1e-12);
    EXPECT_NEAR(*check.faint_px.upTo_px, 0.3, 1e-12);
    EXPECT_FALSE(check.canAgree);  // what was clean is stronger than what was faint
    EXPECT_FALSE(check.correction);
    EXPECT_NE(english(flightNotesText(check)).find("No limits agree"), std::string::npos);
}

// Oracle: by hand. Both limits are too high; each goes to the geometric middle of its range.
TEST(FlightNotes, SayWhereTheLimitsWouldHaveToLie)
{
    const Craft craft = craftWith(
        {seen(Seen::Clean, 0.55, 0.62), seen(Seen::Faint, 0.69, 0.71), seen(Seen::Bad, 0.38, 0.42)},
        {1.0, 3.0, {}});
    const FlightNotesCheck check = checkFlightNotes(craft, kCurve);
    EXPECT_TRUE(check.canAgree);
    EXPECT_NEAR(*check.faint_px.above_px, 0.18, 1e-12);
    EXPECT_NEAR(*check.faint_px.upTo_px, 0.5, 1e-12);
    EXPECT_NEAR(*check.bad_px.above_px, 0.5, 1e-12);
    EXPECT_NEAR(*check.bad_px.upTo_px, 0.8, 1e-12);
    ASSERT_TRUE(check.correction);
    ASSERT_EQ(check.correction->values.size(), 2U);
    EXPECT_EQ(check.correction->values[0].after, 0.3);    // √(0.18 · 0.5)
    EXPECT_EQ(check.correction->values[1].after, 0.632);  // √(0.5 · 0.8)
    EXPECT_EQ(check.correction->mark.quality, Quality::Fair);
    EXPECT_NEAR(check.correction->residualBefore.value(), 2 / 3.0,
                1e-12);  // only what was clean agrees

    const Craft corrected = accept(craft, *check.correction, "2026-05-01").value();
    const FlightNotesCheck again = checkFlightNotes(corrected, kCurve);
    EXPECT_TRUE(std::all_of(again.notes.begin(), again.notes.end(),
                            [](const NoteCheck& note) { return note.agrees; }));
    EXPECT_FALSE(again.correction);
    EXPECT_FALSE(corrected.sources.back().spread);  // a limit has none
    EXPECT_EQ(english(flightNotesText(again)), "The flight notes agree with the curve.");
}

// Oracle: by hand. Clean at 0.8 px puts both limits a tenth above it, and bad √2 above faint, for
// it is open above; bad at 0.8 px puts bad a tenth below it, and faint, which is open below, √2
// below; all to the thousandths that the form shows.
TEST(FlightNotes, KeepFaintBelowBad)
{
    const auto after = [](const Craft& craft) {
        return checkFlightNotes(craft, kCurve).correction.value().values;
    };
    const auto raised = after(craftWith({seen(Seen::Clean, 0.38, 0.42)}, {0.3, 0.6, {}}));
    ASSERT_EQ(raised.size(), 2U);
    EXPECT_NEAR(raised[0].after, 0.88, 1e-12);
    EXPECT_EQ(raised[1].after, 1.245);  // 0.88 √2 = 1.24451
    const auto lowered = after(craftWith({seen(Seen::Bad, 0.38, 0.42)}, {0.8, 1.0, {}}));
    ASSERT_EQ(lowered.size(), 2U);
    EXPECT_EQ(lowered[0].after, 0.514);  // 0.727/√2 = 0.51407
    EXPECT_NEAR(lowered[1].after, 0.727, 1e-12);
}

// Oracle: definition, by all grades that three stretches can be seen with: the limits
// that are offered agree, and where none are offered no two of a fine grid do.
TEST(FlightNotes, OfferLimitsWheneverThereAreAny)
{
    const std::array all{Seen::Clean, Seen::Faint, Seen::Bad};
    for (const Seen a : all)
        for (const Seen b : all)
            for (const Seen c : all)
                for (const Limits& limits :
                     {Limits{0.02, 0.05, {}}, Limits{0.3, 0.6, {}}, Limits{2.0, 5.0, {}}}) {
                    const std::vector<FlightNote> notes{seen(a, 0.2, 0.3), seen(b, 0.38, 0.42),
                                                        seen(c, 0.69, 0.71)};
                    const auto agrees = [&notes](double faint_px, double bad_px) {
                        const auto check =
                            checkFlightNotes(craftWith(notes, {faint_px, bad_px, {}}), kCurve);
                        return std::all_of(check.notes.begin(), check.notes.end(),
                                           [](const NoteCheck& note) { return note.agrees; });
                    };
                    const auto check = checkFlightNotes(craftWith(notes, limits), kCurve);
                    if (agrees(limits.faint_px, limits.bad_px)) {
                        EXPECT_FALSE(check.correction);
                        continue;
                    }
                    bool isThere = false;
                    for (const double faint_px : {0.05, 0.3, 0.6, 0.9})
                        for (const double bad_px : {0.1, 0.15, 0.35, 0.65, 1.0})
                            isThere = isThere || (faint_px < bad_px && agrees(faint_px, bad_px));
                    ASSERT_EQ(check.correction.has_value(), isThere);
                    EXPECT_EQ(check.canAgree, isThere);
                    if (!isThere)
                        continue;
                    const auto corrected =
                        accept(craftWith(notes, limits), *check.correction, "2026-05-01");
                    ASSERT_TRUE(corrected) << english(corrected.error().what);
                    EXPECT_TRUE(agrees(corrected->limits.faint_px, corrected->limits.bad_px));
                }
}

// Oracle: definition. Limits grade a film; a craft that must not fly must not fly after them.
TEST(FlightNotes, MakeNoForbiddenCraftFlyable)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.tube.max_stretch = 1.01;  // its tubes are stretched further
    craft.limits = {0.001, 0.002, {}};
    craft.flight.notes = {seen(Seen::Clean, 0.25, 0.6)};
    const Assessment before = assess(craft).value();
    ASSERT_FALSE(before.status.flyable);
    const FlightNotesCheck check = checkFlightNotes(craft, before.curve);
    ASSERT_TRUE(check.correction);
    const Craft corrected = accept(craft, *check.correction, "2026-05-01").value();
    const Assessment after = assess(corrected).value();
    EXPECT_FALSE(after.status.flyable);
    EXPECT_EQ(after.status.violated, before.status.violated);
}

TEST(FlightNotes, AreToldInASentence)
{
    const Craft craft =
        craftWith({seen(Seen::Bad, 0.38, 0.42), seen(Seen::Clean, 0.2, 0.3)}, {0.3, 1.0, {}});
    const FlightNotesCheck check = checkFlightNotes(craft, kCurve);
    EXPECT_EQ(english(noteText(check.notes[0])),
              "Seen bad from 38 % to 42 %, computed 0.8 px there: faint.");
    EXPECT_EQ(english(noteText(check.notes[1])),
              "Seen clean from 20 % to 30 %, as computed: 0.2 px.");
}

}  // namespace
}  // namespace stillbay
