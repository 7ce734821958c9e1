// SPDX-License-Identifier: MIT
#include "core/setup/validate.h"

#include "core/setup/tunes.h"
#include "tests/setup/number_walk.h"
#include "tests/setup/setup_text.h"

#include <cmath>
#include <limits>
#include <set>

namespace stillbay {
namespace {

using test::forEachNumber;
using test::NumberPlace;
using test::sampleSetup;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A setup with every number of the table in use: optional ones set, one tune kept.
Setup fullSetup(const std::string& sample)
{
    stillbay::Setup setup = sampleSetup(sample);
    setup.airframe.arm.wall_mm = 1.0;
    setup.airframe.arm.root_stiffness_nm_per_rad = 800.0;
    setup.drive.propeller.thrust_coefficient = 0.1;
    setup.drive.propeller.power_coefficient = 0.04;
    setup.drive.propeller.inertia_g_mm2 = 5e4;
    setup.drive.propeller.height_above_arm_mm = 30.0;
    setup.drive.motor.diameter_mm = 28.0;
    setup.drive.motor.height_mm = 26.0;
    setup.airframe.arms[1].unbalance_g_mm = 3.0;
    setup.tube.youngs_modulus_mpa = 2.0;
    setup.mounts.points[0].free_length_mm = 1.02 * setup.mounts.free_length_mm;
    if (!setup.mounts.drilled())
        setup.mounts.points[1].stretch = 1.17;
    setup.sources.push_back({.key = "tube.density_kg_m3", .spread = 0.1});
    setup.tunes.push_back(
        {.name = "kept", .saved = "2026-05-01T10:00:00Z", .design = designOf(setup)});
    return setup;
}

std::string describe(const Result<void>& result)
{
    return result ? "valid" : english(result.error().what) + ": " + result.error().where;
}

void expectFault(const Setup& setup, const std::string& where, const std::string& part)
{
    const auto result = validate(setup);
    ASSERT_FALSE(result) << "no fault at " << where;
    EXPECT_EQ(result.error().code, Errc::BadInput);
    EXPECT_EQ(result.error().where, where) << english(result.error().what);
    EXPECT_NE(english(result.error().what).find(part), std::string::npos)
        << english(result.error().what);
    EXPECT_EQ(english(result.error().what).find('_'), std::string::npos)
        << "names a key: " << english(result.error().what);
}

/// Puts a value where a number lives, for the length of a scope.
class Replaced {
public:
    Replaced(const NumberPlace& place, double value)
        : m_value(*std::get<double*>(place.value)), m_old(m_value)
    {
        m_value = value;
    }
    ~Replaced() { m_value = m_old; }
    Replaced(const Replaced&) = delete;
    Replaced& operator=(const Replaced&) = delete;

private:
    double& m_value;
    double m_old;
};

class EveryNumber : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Samples, EveryNumber, testing::ValuesIn(test::kSamples));

TEST_P(EveryNumber, IsRefusedJustOutsideItsRange)
{
    stillbay::Setup setup = fullSetup(GetParam());
    ASSERT_TRUE(validate(setup)) << describe(validate(setup));
    int numbers = 0;
    forEachNumber(setup, [&](const NumberPlace& place) {
        if (!std::holds_alternative<double*>(place.value))
            return;
        ++numbers;
        const std::string what = place.label + " is ";
        const double below = std::nextafter(place.min, -kInfinity);
        const double above = std::nextafter(place.max, kInfinity);
        for (const double bad : {below, above, std::nan(""), kInfinity, -kInfinity, 1e300, -1e300,
                                 std::numeric_limits<double>::max()}) {
            const Replaced replaced(place, bad);
            expectFault(setup, place.path, what);
        }
    });
    EXPECT_GT(numbers, 100);
}

TEST_P(EveryNumber, IsTakenAtBothEndsOfItsRange)
{
    stillbay::Setup setup = fullSetup(GetParam());
    forEachNumber(setup, [&](const NumberPlace& place) {
        if (!std::holds_alternative<double*>(place.value))
            return;
        for (const double good : {place.min, place.max, 0.5 * (place.min + place.max)}) {
            const Replaced replaced(place, good);
            const auto result = validate(setup);
            if (result)
                continue;
            // A rule between two fields may object; the range may not.
            const Error& fault = result.error();
            EXPECT_FALSE(fault.where == place.path &&
                         english(fault.what).find("allowed") != std::string::npos)
                << english(fault.what) << ": " << fault.where;
        }
    });
}

TEST(Validate, CountsWholeNumbersToTheirEnds)
{
    stillbay::Setup setup = fullSetup("reedbed");
    std::set<std::string> seen;
    forEachNumber(setup, [&](const NumberPlace& place) {
        if (!std::holds_alternative<int*>(place.value))
            return;
        seen.insert(place.path);
        int& value = *std::get<int*>(place.value);
        const int old = value;
        for (const int good : {static_cast<int>(place.min), static_cast<int>(place.max)}) {
            value = good;
            EXPECT_TRUE(validate(setup)) << place.path << ' ' << describe(validate(setup));
        }
        for (const int bad : {static_cast<int>(place.min) - 1, static_cast<int>(place.max) + 1,
                              std::numeric_limits<int>::min(), std::numeric_limits<int>::max()}) {
            value = bad;
            expectFault(setup, place.path, place.label + " is " + std::to_string(bad));
        }
        value = old;
    });
    EXPECT_EQ(seen, (std::set<std::string>{"drive.propeller.blades", "drive.battery.cells",
                                           "camera.width_px", "camera.height_px"}));
}

TEST(Validate, NamesValueUnitAndRange)
{
    stillbay::Setup setup = sampleSetup();
    setup.bay.parts[1].mass_g = 0.0;
    const auto result = validate(setup);
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().where, "bay.parts[1].mass_g");
    EXPECT_EQ(english(result.error().what), "Mass is 0 g, allowed 0.1 to 20000 g");
}

TEST(Validate, WritesNumbersAsABuilderWould)
{
    stillbay::Setup setup = sampleSetup();
    setup.camera.exposure_ms = 0.0005;
    expectFault(setup, "camera.exposure_ms", "Exposure is 0.0005 ms, allowed 0.001 to 1000 ms");
    setup.camera.exposure_ms = 100000;
    expectFault(setup, "camera.exposure_ms", "Exposure is 100000 ms");
    setup.camera.exposure_ms = 1e20;
    expectFault(setup, "camera.exposure_ms", "Exposure is 1e+20 ms");
}

TEST(Validate, NamesTheEntryOfATuple)
{
    stillbay::Setup setup = sampleSetup();
    setup.airframe.parts[0].size_mm[2] = -3.5;
    expectFault(setup, "airframe.parts[0].size_mm[2]", "Size is -3.5 mm, allowed 0.1 to 2000 mm");
}

TEST(Validate, ReportsTheFirstFaultInFileOrder)
{
    stillbay::Setup setup = sampleSetup();
    setup.limits.bad_px = -1.0;
    setup.tube.bore_mm = 9.0;
    setup.camera.exposure_ms = 1e9;
    expectFault(setup, "camera.exposure_ms", "Exposure is 1000000000 ms");
    setup.camera.exposure_ms = 2.0;
    expectFault(setup, "tube.bore_mm", "9 mm");
    setup.tube.bore_mm = 5.0;
    expectFault(setup, "limits.bad_px", "-1 px");
}

// The rules between fields, each at its border and just beyond.

TEST(Validate, BoreIsSmallerThanTheTube)
{
    stillbay::Setup setup = sampleSetup();
    setup.tube.bore_mm = std::nextafter(setup.tube.outer_diameter_mm, 0.0);
    EXPECT_TRUE(validate(setup));
    setup.tube.bore_mm = setup.tube.outer_diameter_mm;
    expectFault(setup, "tube.bore_mm",
                "Bore is 8 mm, must be smaller than the outer diameter, 8 mm");
}

TEST(Validate, WallIsBelowHalfTheSmallerSide)
{
    stillbay::Setup setup = sampleSetup();
    setup.airframe.arm.width_mm = 10.0;
    setup.airframe.arm.wall_mm = std::nextafter(5.0, 0.0);
    EXPECT_TRUE(validate(setup));
    setup.airframe.arm.wall_mm = 5.0;
    expectFault(setup, "airframe.arm.wall_mm", "5 mm");
    setup.airframe.arm.height_mm = 6.0;
    setup.airframe.arm.wall_mm = 3.0;
    expectFault(setup, "airframe.arm.wall_mm", "must be below half the smaller side, 3 mm");
}

TEST(Validate, EmptyVoltageIsNotAboveFull)
{
    stillbay::Setup setup = sampleSetup();
    setup.drive.battery.empty_v_per_cell = setup.drive.battery.full_v_per_cell;
    EXPECT_TRUE(validate(setup));
    setup.drive.battery.empty_v_per_cell = 4.25;
    expectFault(setup, "drive.battery.empty_v_per_cell", "4.25 V");
}

TEST(Validate, ReadoutAndExposureFitIntoAFrame)
{
    stillbay::Setup setup = sampleSetup();
    setup.camera.frame_rate_hz = 60.0;
    setup.camera.readout_ms = 16.67;  // as people round a sixtieth
    setup.camera.exposure_ms = 16.67;
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup.camera.readout_ms = 17.0;
    expectFault(setup, "camera.readout_ms", "17 ms, must fit into one frame, 16.67 ms");
    setup.camera.readout_ms = 10.0;
    setup.camera.exposure_ms = 20.0;
    expectFault(setup, "camera.exposure_ms", "20 ms");
}

TEST(Validate, OnlyAFisheyeSeesFurtherThanARectilinearLensCan)
{
    stillbay::Setup setup = sampleSetup();
    setup.camera.horizontal_fov_deg = kWidestRectilinear_deg;
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup.camera.horizontal_fov_deg = std::nextafter(kWidestRectilinear_deg, 180.0);
    expectFault(setup, "camera.horizontal_fov_deg",
                "must not exceed 170° unless the lens is a fisheye");
    setup.camera.lens = Lens::Fisheye;
    setup.camera.horizontal_fov_deg = 220;
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup.camera.horizontal_fov_deg = 220.5;
    expectFault(setup, "camera.horizontal_fov_deg",
                "Horizontal field of view is 220.5°, allowed 0.5 to 220°");
}

// Oracle: definition. No number but those of the enumerators is a choice.
TEST(Validate, ChoicesAreAmongTheirWords)
{
    stillbay::Setup setup = sampleSetup();
    setup.mounts.ends = static_cast<Ends>(2);
    expectFault(setup, "mounts.ends", "Ends is neither \"clamped\" nor \"hinged\"");
    setup = sampleSetup();
    setup.camera.lens = static_cast<Lens>(-1);
    expectFault(setup, "camera.lens", "Lens is neither \"rectilinear\" nor \"fisheye\"");
}

// Oracle: definition.
TEST(Validate, EachNumberHasOneSource)
{
    stillbay::Setup setup = sampleSetup();
    setup.sources = {{.key = "tube.loss_factor"}, {.key = "tube.bore_mm"}};
    EXPECT_TRUE(validate(setup));
    setup.sources[1].key = setup.sources[0].key;
    expectFault(setup, "sources.tube.loss_factor", "Two sources are of the same number");
    setup.sources.pop_back();
    setup.sources[0].from = static_cast<Origin>(4);
    expectFault(setup, "sources.tube.loss_factor.from",
                "Origin is none of \"typical\", \"label\", \"measured\" and \"estimated\"");
    setup.sources[0] = {.key = "tube.loss_factor", .date = "\xC0\xAF"};
    expectFault(setup, "sources.tube.loss_factor.date", "UTF-8");
}

TEST(Validate, CruiseWindowRises)
{
    stillbay::Setup setup = sampleSetup();
    setup.flight.cruise_throttle = {0.5, 0.5};
    expectFault(setup, "flight.cruise_throttle", "from 0.5 to 0.5");
    setup.flight.cruise_throttle = {0.0, 1.0};
    EXPECT_TRUE(validate(setup));
}

TEST(Validate, FaintIsBelowBad)
{
    stillbay::Setup setup = sampleSetup();
    setup.limits = {.faint_px = 1.0, .bad_px = 1.0};
    expectFault(setup, "limits.faint_px", "1 px");
}

TEST(Validate, ListsHoldWhatACraftNeeds)
{
    const stillbay::Setup sample = sampleSetup();
    stillbay::Setup setup = sample;
    setup.airframe.parts.clear();
    expectFault(setup, "airframe.parts", "0 entries, allowed 1 to 100");
    setup = sample;
    setup.airframe.arms.resize(1);
    expectFault(setup, "airframe.arms", "1 entry, allowed 2 to 16");
    setup = sample;
    setup.airframe.arms.resize(17);
    expectFault(setup, "airframe.arms", "17 entries");
    setup = sample;
    setup.bay.parts.clear();
    expectFault(setup, "bay.parts", "0 entries");
    setup = sample;
    setup.mounts.points.clear();
    expectFault(setup, "mounts.points", "0 entries, allowed 1 to 32");
    setup = sample;
    setup.mounts.points.resize(1);
    EXPECT_TRUE(validate(setup));  // one tube may be loaded; the physics says what is free
    setup = sample;
    setup.drive.blade_pass_thrust_fraction.assign(9, 0.01);
    expectFault(setup, "drive.blade_pass_thrust_fraction", "9 entries, allowed 0 to 8");
    setup.drive.blade_pass_thrust_fraction.clear();
    EXPECT_TRUE(validate(setup));
    setup.flight.notes.resize(201);
    expectFault(setup, "flight.notes",
                "The list of flight notes has 201 entries, allowed 0 to 200");
    setup = sample;
    setup.recordings.resize(1);
    setup.recordings[0].file = "a.csv";
    setup.recordings[0].columns.resize(501);
    expectFault(setup, "recordings[0].columns", "501 entries, allowed 0 to 500");
    setup.recordings[0].columns.clear();
    setup.recordings[0].file.assign(4097, 'x');
    expectFault(setup, "recordings[0].file", "4097 bytes");
}

TEST(Validate, AThrottleCurveRises)
{
    stillbay::Setup setup = sampleSetup();
    setup.drive.throttle_curve = {{0.1, 0.05}, {0.5, 0.3}, {0.9, 0.95}};
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    const auto with = [&setup](std::size_t pair, std::size_t place, double value) {
        stillbay::Setup changed = setup;
        changed.drive.throttle_curve[pair][place] = value;
        return changed;
    };
    expectFault(with(1, 0, 0.1), "drive.throttle_curve[1]", "from 0.1, 0.05 to 0.1, 0.3");
    expectFault(with(2, 1, 0.2), "drive.throttle_curve[2]", "must both rise");
    expectFault(with(0, 0, -0.1), "drive.throttle_curve[0][0]", "Throttle is -0.1, allowed 0 to 1");
    expectFault(with(2, 1, std::nan("")), "drive.throttle_curve[2][1]", "Duty is ");
    setup.drive.throttle_curve.resize(1);
    expectFault(setup, "drive.throttle_curve", "1 entry, allowed 2 to 33");
    setup.drive.throttle_curve.assign(34, {0.5, 0.5});
    expectFault(setup, "drive.throttle_curve", "34 entries");
}

TEST(Validate, AFlightNoteRunsUpwards)
{
    stillbay::Setup setup = sampleSetup();
    setup.flight.notes = {{.from = 0.4, .to = 0.47, .seen = Seen::Bad}, {.from = 0.5, .to = 0.5}};
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup.flight.notes[1].from = 0.6;
    expectFault(setup, "flight.notes[1].from", "runs from 0.6 to 0.5");
}

TEST(Validate, PlannedAndDrilledPointsDoNotMix)
{
    stillbay::Setup setup = sampleSetup();
    setup.mounts.points[2].anchor_mm = Triple{0, 0, 0};
    expectFault(setup, "mounts.points[2]", "must have the same");
    setup = sampleSetup("quarry");
    setup.mounts.points[1].anchor_mm.reset();
    expectFault(setup, "mounts.points[1]", "must have the same");
}

TEST(Validate, StretchIsGivenExactlyWhenPlanning)
{
    stillbay::Setup setup = sampleSetup();
    setup.mounts.stretch.reset();
    expectFault(setup, "mounts.stretch", "missing, allowed 0.7 to 3");
    setup = sampleSetup("quarry");
    setup.mounts.stretch = 1.2;
    expectFault(setup, "mounts.stretch", "must be left out");
}

TEST(Validate, AnOwnStretchIsForPlanningAndAnOwnLengthForBoth)
{
    stillbay::Setup setup = sampleSetup();
    setup.mounts.points[1].stretch = 1.2;
    setup.mounts.points[2].free_length_mm = 21.5;
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup = sampleSetup("quarry");
    setup.mounts.points[2].free_length_mm = 24.0;
    EXPECT_TRUE(validate(setup)) << describe(validate(setup));
    setup.mounts.points[4].stretch = 1.2;
    expectFault(setup, "mounts.points[4].stretch", "Stretch is 1.2, must be left out");
    setup.mounts.points[4].stretch.reset();
    setup.mounts.points[3].free_length_mm = 10.0;  // the hole lies 30.7 mm away
    expectFault(setup, "mounts.points[3].anchor_mm", "on a free length of 10 mm");
}

TEST(Validate, HolesLieApartAndWithinTheStretchRange)
{
    stillbay::Setup setup = sampleSetup("quarry");
    MountPoint& point = setup.mounts.points[3];
    point.anchor_mm = point.bay_mm;
    expectFault(setup, "mounts.points[3].anchor_mm", "lies 0 mm from its bay point");
    (*point.anchor_mm)[0] += 5.0;
    expectFault(setup, "mounts.points[3].anchor_mm", "allowed 0.7 to 3");
    (*point.anchor_mm)[0] = point.bay_mm[0] + 3.01 * setup.mounts.free_length_mm;
    expectFault(setup, "mounts.points[3].anchor_mm", "Stretch to this hole is 3.01 (");
}

TEST(Validate, KeptTunesObeyTheSameRules)
{
    stillbay::Setup setup = fullSetup("reedbed");
    setup.tunes[0].design.tube.bore_mm = 20.0;
    expectFault(setup, "tunes[0].tube.bore_mm", "20 mm");
    setup = fullSetup("reedbed");
    setup.tunes[0].design.mounts.stretch.reset();
    expectFault(setup, "tunes[0].mounts.stretch", "missing");
    setup = fullSetup("reedbed");
    setup.tunes[0].saved = "yesterday";
    expectFault(setup, "tunes[0].saved", "\"yesterday\"");
    setup.tunes[0].saved.clear();
    EXPECT_TRUE(validate(setup));
    setup.tunes.assign(201, setup.tunes[0]);
    expectFault(setup, "tunes", "201 entries, allowed 0 to 200");
}

TEST(Validate, TextIsBoundedUtf8)
{
    stillbay::Setup setup = sampleSetup();
    setup.name.assign(kMaxNameBytes, 'x');
    EXPECT_TRUE(validate(setup));
    setup.name += 'x';
    expectFault(setup, "name", "201 bytes");
    setup = sampleSetup();
    setup.notes.assign(kMaxNotesBytes + 1, 'x');
    expectFault(setup, "notes", "20001 bytes");
    // Stray continuation, overlong form, surrogate, beyond the last plane, cut sequence.
    for (const char* bad : {"a\x80", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82"}) {
        setup = sampleSetup();
        setup.bay.parts[0].name = bad;
        expectFault(setup, "bay.parts[0].name", "UTF-8");
    }
    setup.bay.parts[0].name = "π ≠ 3, \xF4\x8F\xBF\xBF";
    EXPECT_TRUE(validate(setup));
}

}  // namespace
}  // namespace stillbay
