// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck.h"

#include "core/advice/uncertain_inputs.h"
#include "core/calibrate/bay_decay.h"
#include "core/calibrate/until_taken.h"
#include "core/response/bay_at_rest.h"
#include "core/setup/sources.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/unknown_craft.h"
#include "tests/recordings/pluck_in_time.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <numbers>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using test::hungFile;
using test::PluckDice;
using test::sensorOf;
using test::UnknownCraft;
using test::unknownCraft;

Result<PluckAnswer> pluckedBy(const Setup& file, const test::PluckedBay& plucked,
                              bool withAxes = true)
{
    return pluckTest(file, test::pluckInTime(plucked).recording(plucked.rate_hz),
                     {.sensor = sensorOf(plucked, withAxes)});
}

// The sample with its modulus measured, and what its rubber really is.
struct Reedbed {
    Setup file = test::sampleCraft("reedbed");
    test::PluckedBay truth;

    Reedbed()
    {
        file.tube.youngs_modulus_mpa = 3.3;
        putSource(file,
                  {.key = "tube.youngs_modulus_mpa", .from = Origin::Measured, .spread = 0.01});
        truth.craft = file;
        truth.craft.tube.dynamic_ratio = 1.38;
        truth.craft.tube.loss_factor = 0.095;
        truth.sensor = {.mass_g = 172, .centre_mm = {22, 6, -21}, .size_mm = {70, 140, 8}};
        truth.sensor.axes = axesFromText("-y:x:z").value();
        truth.plucks = {{.shift_mm = {1.5, 0, 0}},
                        {.shift_mm = {0, 1.5, 0}},
                        {.shift_mm = {0, 0, -1.5}},
                        {.turn_deg = {0.6, 0.6, 2.0}}};
    }
};

// Of the Reedbed above, simulated once.
const Recording& reedbedRecord()
{
    static const Recording recording = [] {
        const Reedbed reedbed;
        return test::pluckInTime(reedbed.truth).recording(reedbed.truth.rate_hz);
    }();
    return recording;
}

double off(double have, double want)
{
    return std::abs(have / want - 1);
}

struct Recovered {
    double ratio = 0.0, loss = 0.0, modes = 0.0;   // off the truth, relative
    double ratioSpreads = 0.0, lossSpreads = 0.0;  // the same over the spread told
    QualityMark mark;
};

Recovered recover(const UnknownCraft& unknown, unsigned seed)
{
    const Setup measured = hungFile(unknown.file, unknown, seed);
    const auto answer = pluckedBy(measured, unknown.truth, unknown.withAxes);
    if (!answer) {
        ADD_FAILURE() << seed << ": " << english(answer.error().what);
        return {1, 1, 1, 0, 0, {}};
    }
    const Correction& correction = answer->correction;
    const TubeKind& rubber = unknown.truth.craft.tube;
    Recovered recovered;
    recovered.mark = correction.mark;
    recovered.ratio = off(correction.values[0].after, rubber.dynamic_ratio);
    recovered.loss = off(correction.values[1].after, rubber.loss_factor);
    recovered.ratioSpreads = recovered.ratio / correction.values[0].spread;
    recovered.lossSpreads = recovered.loss / correction.values[1].spread;

    // The modes that the corrected craft has on the bench, without the sensor.
    Setup corrected = measured;
    corrected.tube.dynamic_ratio = correction.values[0].after;
    corrected.tube.loss_factor = correction.values[1].after;
    auto bay = letGo(makeMountedBay(corrected).value()).value();
    EXPECT_TRUE(addModes(bay));
    test::PluckedBay bare = unknown.truth;
    bare.sensor.mass_g = 0;
    const auto truth = test::trueModes(bare);
    for (std::size_t k = 0; k < truth.size(); ++k)
        recovered.modes = std::max(
            recovered.modes,
            off(frequency_hz(bay.bench.omegaSquare[static_cast<Eigen::Index>(k)]), truth[k][0]));
    return recovered;
}

// Oracle: independent method, integration in time with the tubes' nonlinear forces
// (pluck_in_time.cpp), the rubber known to it alone. 1 %, 10 % and 0.5 % are what the project
// promises. STILLBAY_PLUCKED_CRAFTS=50 looks at so many and prints them.
TEST(PluckTest, FindsRatioLossAndModesOfUnknownRubber)
{
    const char* const wanted = std::getenv("STILLBAY_PLUCKED_CRAFTS");
    const unsigned count = wanted ? static_cast<unsigned>(std::atoi(wanted)) : 2;
    for (unsigned seed = 1; seed <= count; ++seed) {
        const UnknownCraft unknown = unknownCraft(seed);
        const Recovered recovered = recover(unknown, seed);
        EXPECT_LT(recovered.ratio, 0.01) << seed;
        EXPECT_LT(recovered.loss, 0.10) << seed;
        EXPECT_LT(recovered.modes, 0.005) << seed;
        EXPECT_LT(recovered.ratioSpreads, 3) << seed;
        EXPECT_LT(recovered.lossSpreads, 3) << seed;
        EXPECT_NE(recovered.mark.quality, Quality::Poor) << seed << english(recovered.mark.reason);
        if (wanted)
            std::printf("craft %2u %s ratio %.3f %% (%.1f) loss %.2f %% (%.1f) modes %.3f %% %s\n",
                        seed, unknown.withAxes ? "axes" : "    ", 100 * recovered.ratio,
                        recovered.ratioSpreads, 100 * recovered.loss, recovered.lossSpreads,
                        100 * recovered.modes, english(recovered.mark.reason).c_str());
    }
}

// Oracle: LAPACK's eigenvalues of the model. A pluck so small that nothing is nonlinear is a sum of
// six decaying sines: (amplitude/length)² ≈ 1e-6, and the integration's own error.
TEST(PluckInTime, RingsWithTheModesOfTheModel)
{
    Reedbed reedbed;
    reedbed.truth.noise = 0;
    reedbed.truth.plucks = {{.shift_mm = {0.02, 0.01, -0.02}, .turn_deg = {0.01, -0.02, 0.02}}};
    const Recording recording = test::pluckInTime(reedbed.truth).recording(reedbed.truth.rate_hz);
    const DecayData data(recording, {0, 1, 2}, {{170, 900}});
    std::vector<SeenMode> modes;
    for (const auto& [f_hz, loss] : test::trueModes(reedbed.truth)) {
        const double omega0 = 2 * std::numbers::pi * f_hz;
        modes.push_back({Complex(0, omega0) * std::sqrt(Complex(1, loss)), {}});
    }
    EXPECT_LT(data.fit(modes).squares, 1e-6 * data.squares());
    for (SeenMode& mode : modes)
        mode.lambda *= 1.003;
    EXPECT_GT(data.fit(modes).squares, 1e-5 * data.squares()) << "the look is sharp enough";
}

TEST(PluckTest, CountsTheSensorAsAPartOfTheBay)
{
    const Reedbed reedbed;
    const Recording& recording = reedbedRecord();
    auto sensor = sensorOf(reedbed.truth);
    const auto counted = pluckTest(reedbed.file, recording, {.sensor = sensor});
    ASSERT_TRUE(counted) << english(counted.error().what);
    EXPECT_LT(off(counted->correction.values[0].after, 1.38), 0.01);
    EXPECT_EQ(counted->correction.mark.quality, Quality::Good)
        << english(counted->correction.mark.reason);
    EXPECT_LT(counted->correction.residual, 0.2 * *counted->correction.residualBefore);

    // Measured modes are those of the model's rows.
    std::size_t rows = 0;
    for (const PluckedMode& mode : counted->modes)
        if (mode.measured) {
            ++rows;
            EXPECT_LT(off(counted->measured[*mode.measured].frequency_hz, mode.after_hz), 0.02);
        }
    EXPECT_GE(rows, 3u);

    // What accept() writes is what the forecast's uncertainty counts with.
    const auto corrected = accept(reedbed.file, counted->correction, "2026-05-01");
    ASSERT_TRUE(corrected);
    for (const CorrectedValue& value : counted->correction.values) {
        EXPECT_NEAR(spreadOf(*corrected, value.key).value(), value.spread, 1e-12) << value.key;
        EXPECT_LT(value.spread, 0.5 * spreadOf(reedbed.file, value.key).value()) << value.key;
    }

    sensor.mass_g = 0;
    const auto left = pluckTest(reedbed.file, recording, {.sensor = sensor});
    const std::string said = english(left ? left->correction.mark.reason : left.error().what);
    EXPECT_TRUE(!left || left->correction.mark.quality == Quality::Poor) << said;
    EXPECT_NE(said.find(": say what the sensor weighs"), std::string::npos) << said;
}

TEST(PluckTest, SaysThatModulusAndRatioCannotBeToldApart)
{
    Reedbed reedbed;
    reedbed.file.sources.clear();
    const auto answer =
        pluckTest(reedbed.file, reedbedRecord(), {.sensor = sensorOf(reedbed.truth)});
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->correction.mark.quality, Quality::Fair);
    const std::string said = english(answer->correction.mark.reason);
    EXPECT_NE(said.find("do the hang test"), std::string::npos) << said;
    EXPECT_EQ(answer->correction.warnings.front().code, "pluck-modulus");
    EXPECT_GT(answer->correction.values[0].spread,
              spreadOf(reedbed.file, "tube.youngs_modulus_mpa").value())
        << "the forecast's doubt of the modulus is part of the ratio's";
}

// Oracle: own derivation. What is measured is the dynamic modulus, so a modulus that is off by some
// share leaves its product with the ratio where it was, and its spread is part of the ratio's.
TEST(PluckTest, HoldsTheDynamicModulusWhereTheModulusErrs)
{
    Reedbed reedbed;
    const double E = *reedbed.file.tube.youngs_modulus_mpa;
    reedbed.file.tube.youngs_modulus_mpa = 1.05 * E;
    putSource(reedbed.file,
              {.key = "tube.youngs_modulus_mpa", .from = Origin::Measured, .spread = 0.05});
    const auto answer =
        pluckTest(reedbed.file, reedbedRecord(), {.sensor = sensorOf(reedbed.truth)});
    ASSERT_TRUE(answer) << english(answer.error().what);
    const CorrectedValue& ratio = answer->correction.values[0];
    EXPECT_LT(off(1.05 * ratio.after, 1.38), 0.01);
    EXPECT_GT(ratio.spread, 0.05);
    EXPECT_LT(ratio.spread, 0.06);
}

// Oracle: where the record was cut when it was put together. Every pluck but the last is followed
// by 0.4 s in a hand, which are no part of the ringing; a record without a hand loses nothing.
TEST(PluckTest, EndsAStretchWhereAHandTakesTheBay)
{
    const double rate = 400, f_hz = 9.3, decay = 0.6;
    Recording recording;
    recording.rate = rate;
    recording.channels = {{"ax", Quantity::Acceleration, {}}};
    PluckDice dice(7);
    const auto addRing = [&](double from, double to) {
        for (double t = from; t < to - 1e-9; t += 1 / rate)
            recording.channels[0].values.push_back(
                std::exp(-decay * t) * std::cos(2 * std::numbers::pi * f_hz * t) +
                0.3 * std::exp(-20 * t) * std::cos(2 * std::numbers::pi * 41 * t) +
                dice.between(-0.02, 0.02));
    };
    addRing(0, 2);
    const auto free = untilTaken(recording, {0}, {{0, 800}});
    EXPECT_EQ(free.front(), (Stretch{0, 800}));
    for (int i = 0; i < 160; ++i)
        recording.channels[0].values.push_back(0.4 + dice.between(-0.02, 0.02));
    const auto taken = untilTaken(recording, {0}, {{0, 960}});
    EXPECT_LE(taken.front().to, 800U);
    EXPECT_GE(taken.front().to, 740U);
}

TEST(PluckTest, NamesThePluckToAdd)
{
    Reedbed reedbed;
    reedbed.truth.plucks = {{.shift_mm = {0, 0, -1.5}}, {.shift_mm = {0, 0, 1.5}}};
    const auto answer = pluckedBy(reedbed.file, reedbed.truth);
    ASSERT_TRUE(answer);
    std::string plucks;
    for (const Phrase& pluck : answer->plucksToAdd)
        plucks += english(pluck) + "; ";
    EXPECT_NE(plucks.find("push it sideways"), std::string::npos) << plucks;
    EXPECT_EQ(plucks.find("push it down"), std::string::npos) << plucks;
    EXPECT_EQ(answer->correction.warnings.back().code, "pluck-modes");
}

TEST(PluckTest, IsMatchedByHandAndRefusesWhatIsNoMatching)
{
    const Reedbed reedbed;
    const Recording& recording = reedbedRecord();
    PluckOptions options{.sensor = sensorOf(reedbed.truth)};
    const auto answer = pluckTest(reedbed.file, recording, options);
    ASSERT_TRUE(answer);
    options.matching.resize(answer->measured.size());
    for (std::size_t k = 0; k < answer->modes.size(); ++k)
        if (answer->modes[k].measured)
            options.matching[*answer->modes[k].measured] = k;
    const auto same = pluckTest(reedbed.file, recording, options);
    ASSERT_TRUE(same);
    EXPECT_LT(off(same->correction.values[0].after, answer->correction.values[0].after), 1e-3);
    options.matching.push_back(0);
    EXPECT_FALSE(pluckTest(reedbed.file, recording, options));
    options.matching.assign(answer->measured.size(), 6);
    EXPECT_FALSE(pluckTest(reedbed.file, recording, options)) << "there are six, from 0";
}

TEST(AxesFromText, AreSignedLettersOfARightHandedFrame)
{
    EXPECT_EQ(axesFromText("x:y:z"), Matrix3d(Matrix3d::Identity()));
    const Matrix3d turned = axesFromText("-y:x:z").value();
    EXPECT_EQ(turned * Vector3d::UnitX(), -Vector3d::UnitY());
    EXPECT_EQ(turned * Vector3d::UnitY(), Vector3d::UnitX());
    for (const char* text : {"", "x:y", "x:y:z:x", "x:x:z", "x:y:-z", "a:y:z", "xyz", "x:y:z "})
        EXPECT_FALSE(axesFromText(text)) << text;
}

}  // namespace
}  // namespace stillbay
