// SPDX-License-Identifier: MIT
// Oracle of all: the figures of the assessment itself, rounded here; how it comes to them is held
// by the other tests. What a sentence tells must be the figure.
#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/craft/clearance.h"
#include "tests/assess/crafts.h"
#include "tests/base/plain.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using test::plain;

std::string told(double number, int decimals)
{
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, number);
    return text;
}

bool holds(const std::string& text, const std::string& part)
{
    return text.find(part) != std::string::npos;
}

std::string warningOf(const Assessment& assessment, const std::string& code)
{
    for (const Warning& warning : assessment.warnings)
        if (warning.code == code)
            return plain(warning.text);
    return {};
}

TEST(ToldNumbers, OfTheCurveAreItsOwn)
{
    for (const char* name : {"reedbed", "saltmarsh", "quarry"}) {
        const stillbay::Setup setup = test::sampleCraft(name);
        const Assessment shown = assess(setup).value();
        const std::vector<Phrase> sentences = findings(setup, shown);
        const HoverFigures& hover = shown.hover;
        EXPECT_EQ(plain(sentences.back()),
                  "Hover is at " + told(100 * *hover.throttle_full, 0) + " % on a full pack, " +
                      told(100 * *hover.throttle_empty, 0) + " % on an empty one (" +
                      told(hover.speed_rpm, 0) + " rpm).");
        const std::vector<ThrottlePoint> fine =
            assess(setup, {.throttle = Grid{0.05, 1.0, 0.0002}}).value().throttle;
        std::size_t humps = 0;
        for (const Phrase& sentence : sentences) {
            const std::string text = plain(sentence);
            double px = 0;
            int percent = 0;
            const std::size_t end = text.rfind(", ");
            if (!text.starts_with("Wobble at") ||
                std::sscanf(text.c_str() + end, ", %lf px at %d %%.", &px, &percent) != 2)
                continue;
            ++humps;
            double largest = 0;
            for (const ThrottlePoint& point : fine)
                if (std::abs(100 * point.throttle - percent) <= 0.5)
                    largest = std::max(largest, point.wobble_px);
            EXPECT_NEAR(px, largest, 0.05 + 0.02 * largest) << text;
        }
        EXPECT_GT(humps, 0U) << name;
        const CruiseFigures& cruise = *shown.cruise;
        const std::string worst = plain(cruiseText(cruise));
        for (const auto& [pack, word] :
             {std::pair(cruise.full, "with the full pack"), {cruise.empty, "with the empty one"}})
            EXPECT_TRUE(holds(worst, "px at " + told(100 * pack.worst_throttle, 1) + " % " +
                                         (word[9] == 'f' ? "throttle " : "") + word))
                << worst;
    }
}

TEST(ToldNumbers, OfTheEmptyPackAreItsOwn)
{
    stillbay::Setup setup = test::sampleCraft("reedbed");
    const CruiseFigures before = assess(setup).value().cruise.value();
    setup.flight.cruise_throttle = {before.full.worst_throttle + 0.02,
                                    before.empty.worst_throttle + 0.02};
    const Assessment shown = assess(setup).value();
    EXPECT_TRUE(plain(causeText(setup, shown))
                    .starts_with("With the empty pack, at " +
                                 told(100 * shown.cruise->empty.worst_throttle, 0) +
                                 " % throttle: "))
        << plain(causeText(setup, shown));
}

TEST(ToldNumbers, OfACruiseWindowBesideTheHover)
{
    stillbay::Setup setup = test::sampleCraft("reedbed");
    const double hover = *assess(setup).value().hover.throttle_full;
    setup.flight.cruise_throttle = {hover + 0.1, hover + 0.2};
    EXPECT_EQ(warningOf(assess(setup).value(), "cruise-without-hover"),
              "The craft hovers at " + told(100 * hover, 0) +
                  " % throttle with the full pack, outside its cruise window of " +
                  told(100 * hover + 10, 0) + " to " + told(100 * hover + 20, 0) +
                  " %: what is said of cruise is not about how it flies.");
}

TEST(ToldNumbers, OfPropellersThatTouch)
{
    stillbay::Setup setup = test::sampleCraft("reedbed");
    const double apart = propellerClearance(setup.airframe, setup.drive.propeller);
    setup.drive.propeller.diameter_in += (apart / unit::mm + 7) / 25.4;
    EXPECT_TRUE(holds(warningOf(assess(setup).value(), "propellers-touch"), " overlap by 7 mm"))
        << warningOf(assess(setup).value(), "propellers-touch");
}

// An order's frequency rises with the throttle, so it is met between the points that hold it.
TEST(ToldNumbers, OfOrdersThatMeetAResonance)
{
    stillbay::Setup setup = test::sampleCraft("reedbed");
    setup.flight.cruise_throttle = {0.10, 0.45};
    const Assessment shown = assess(setup).value();
    int met = 0;
    for (const Warning& warning : shown.warnings) {
        const std::string text = plain(warning.text);
        int percent = 0;
        double frequency_hz = 0;
        const std::size_t meets = text.find(" meets ");
        if (!warning.code.starts_with("order-meets-") || meets == std::string::npos ||
            std::sscanf(text.c_str(), "At %d %%", &percent) != 1 ||
            std::sscanf(text.c_str() + meets, " meets %lf Hz", &frequency_hz) != 1)
            continue;
        ++met;
        const std::size_t order = holds(text, "order 1 ") ? 0 : holds(text, "order 2B ") ? 2 : 1;
        double low = 1e9, high = 0;
        for (const ThrottlePoint& point : shown.throttle)
            if (std::abs(100 * point.throttle - percent) <= 1) {
                low = std::min(low, point.orders.at(order).frequency_hz);
                high = std::max(high, point.orders.at(order).frequency_hz);
            }
        EXPECT_GE(frequency_hz, low - 0.5) << text;
        EXPECT_LE(frequency_hz, high + 0.5) << text;
    }
    EXPECT_GE(met, 2);
}

TEST(ToldNumbers, OfTheRest)
{
    const auto text = [](double rise_mm, double turn_deg) {
        RestFigures rest;
        rest.shift = {0.004, 0.003, rise_mm * unit::mm};
        rest.rotation = Eigen::Vector3d(0.6, 0, 0.8) * turn_deg * unit::deg;
        return plain(restText(rest));
    };
    EXPECT_EQ(text(1.24, 0.04), "The bay rises 1.2 mm from the drawing.");
    EXPECT_EQ(text(-0.052, 3.26), "The bay sags 0.1 mm from the drawing and turns by 3.3°.");
    EXPECT_EQ(text(-0.049, 0.06), "The bay rests where it is drawn and turns by 0.1°.");
    EXPECT_EQ(text(0.049, 0), "The bay rests where it is drawn.");
}

TEST(ToldNumbers, OfATubesStretchAreItsLengths)
{
    const stillbay::Setup setup = test::sampleCraft("reedbed");
    const Assessment shown = assess(setup).value();
    EXPECT_NEAR(shown.tube.stretch, *setup.mounts.stretch, 1e-9);
    EXPECT_NEAR(shown.tube.length, *setup.mounts.stretch * setup.mounts.free_length_mm * unit::mm,
                1e-9);
}

}  // namespace
}  // namespace stillbay
