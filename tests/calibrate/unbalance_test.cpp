// SPDX-License-Identifier: MIT
#include "core/calibrate/unbalance.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/bay_at_rest.h"
#include "core/response/excitation.h"
#include "core/suspension/coupled.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

std::vector<SensorAxis> threeAxesAt(const Vector3d& place)
{
    return {{place, Vector3d::UnitX()}, {place, Vector3d::UnitY()}, {place, Vector3d::UnitZ()}};
}

// Two sensors, fore and aft.
std::vector<SensorAxis> sixAxes()
{
    std::vector<SensorAxis> axes = threeAxesAt({0.06, 0.01, 0.012});
    for (const SensorAxis& axis : threeAxesAt({-0.05, -0.02, -0.01}))
        axes.push_back(axis);
    return axes;
}

class Shaker {
public:
    Shaker(Craft craft, std::vector<SensorAxis> axes, double noise)
        : m_craft(std::move(craft)), m_axes(std::move(axes)), m_noise(noise)
    {
    }

    // All motors at one speed, their phases anyhow; or one motor alone. Noise over the amplitude.
    ShakeLine line(double throttle, double speed, const std::vector<double>& unbalances_g_mm,
                   std::optional<std::size_t> motor = {})
    {
        const auto motions = shakeOfMotors(m_craft, m_axes, speed).value();
        ShakeLine line{throttle, speed, motor, std::vector<Complex>(m_axes.size()), 0};
        for (std::size_t k = 0; k < motions.size(); ++k) {
            if (motor && *motor != k)
                continue;
            const Complex phase = std::polar(1.0, m_phase(m_random));
            for (std::size_t i = 0; i < m_axes.size(); ++i)
                line.acceleration[i] += unbalances_g_mm[k] * unit::g_mm * phase * motions[k][i];
        }
        double power = 0;
        for (const Complex& a : line.acceleration)
            power += std::norm(a);
        line.noise = m_noise * std::sqrt(power / static_cast<double>(m_axes.size()));
        for (Complex& a : line.acceleration) {
            const double real = m_gauss(m_random), imaginary = m_gauss(m_random);
            a += line.noise * Complex(real, imaginary);
        }
        return line;
    }

    double speedAt(double throttle) const
    {
        const ExcitedAirframe craft = makeExcitedAirframe(m_craft);
        return rotorSpeed(craft.drive, throttle, craft.fullVoltage);
    }

    Correction test(const std::vector<ShakeLine>& lines, const ShakeOptions& options = {}) const
    {
        const auto correction = unbalanceTest(m_craft, m_axes, lines, options);
        EXPECT_TRUE(correction) << english(correction.error().what);
        return correction.value();
    }

private:
    Craft m_craft;
    std::vector<SensorAxis> m_axes;
    double m_noise;
    std::mt19937 m_random{11};
    std::uniform_real_distribution<double> m_phase{0, 2 * std::numbers::pi};
    std::normal_distribution<double> m_gauss;
};

// Oracle: the bay's turning as the assessment has it, by another road. Six axes give the airframe's
// motion x; the bay that hangs from it turns with (K − ω² M)⁻¹ K P x.
TEST(ShakeOfMotors, MovesTheBayAsTheAssessmentDoes)
{
    const Craft craft = test::skewCraft(3);
    BayAtRest bay = letGo(makeMountedBay(craft).value()).value();
    ASSERT_TRUE(addModes(bay));
    ExcitedAirframe excited = makeExcitedAirframe(craft);
    excited.unbalance.assign(excited.unbalance.size(), 1.0);
    const ExcitationPoint point = excitationPoint(excited, 0.4, true);
    const AirframeAt& airframe = point.orders[0].airframe;
    const Vector3d F = referencePoint(excited.airframe, true);
    const MassFigures& body = bay.mounted.suspension.bay;
    const Vector3d p_FB = body.centre + bay.pose.shift - F;
    const Matrix6d M = massMatrix(body, bay.pose.R);
    const auto expected =
        CoupledBay(bay.K, body.mass, bay.pose.R * body.inertia * bay.pose.R.transpose(), p_FB)
            .rotations({&airframe})[0];

    std::vector<SensorAxis> axes = threeAxesAt(F);
    axes.push_back({F + Vector3d::UnitX(), Vector3d::UnitY()});  // a_y + θ̈_z
    axes.push_back({F + Vector3d::UnitX(), Vector3d::UnitZ()});  // a_z − θ̈_y
    axes.push_back({F + Vector3d::UnitY(), Vector3d::UnitZ()});  // a_z + θ̈_x
    const auto motions = shakeOfMotors(craft, axes, point.speed).value();
    ASSERT_EQ(motions.size(), expected.size());
    for (std::size_t motor = 0; motor < motions.size(); ++motor) {
        const auto& a = motions[motor];
        Vector6cd x;
        x << a[0], a[1], a[2], a[5] - a[2], -(a[4] - a[2]), a[3] - a[1];
        x /= -airframe.omega * airframe.omega;
        // Tilted by θ a sensor feels gravity along (−θ_y, θ_x) besides.
        x[0] -= kGravity * x[4] / (airframe.omega * airframe.omega);
        x[1] += kGravity * x[3] / (airframe.omega * airframe.omega);
        const Matrix6cd own = bay.K - airframe.omega * airframe.omega * M.cast<Complex>();
        const Vector6cd hung = test::solveByLapack(own, bay.K * (carry(p_FB).cast<Complex>() * x));
        EXPECT_LT((hung.tail<3>() - expected[motor]).norm(), 1e-9 * expected[motor].norm());
    }
}

// Oracle: simulation with the model's receptance, noise of 2 %. Motors 2 % apart in speed have
// lines of their own; magnitudes without phases do as well.
TEST(UnbalanceTest, TellsMotorsOfUnlikeSpeed)
{
    const Craft craft = test::sampleCraft("reedbed");
    const std::vector<double> truth{2.5, 7.0, 4.1, 0.9};
    for (const bool arePhasesKnown : {true, false}) {
        Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.02);
        std::vector<ShakeLine> lines;
        for (const double throttle : {0.35, 0.5})
            for (std::size_t motor = 0; motor < 4; ++motor)
                lines.push_back(shaker.line(
                    throttle, shaker.speedAt(throttle) * (0.97 + 0.02 * static_cast<double>(motor)),
                    truth, motor));
        const Correction correction = shaker.test(lines, {.arePhasesKnown = arePhasesKnown});
        ASSERT_EQ(correction.values.size(), 4U);
        for (std::size_t motor = 0; motor < 4; ++motor) {
            const CorrectedValue& value = correction.values[motor];
            EXPECT_EQ(value.key, "airframe.arms[" + std::to_string(motor) + "].unbalance_g_mm");
            EXPECT_NEAR(value.after, truth[motor], 0.06 * truth[motor]);
            EXPECT_GE(value.spread, 0.1);  // the model's own
        }
        EXPECT_EQ(correction.mark.quality, Quality::Good);
        EXPECT_LT(correction.residual, 0.1);
        const Craft corrected = accept(craft, correction, "2026-05-01").value();
        EXPECT_EQ(corrected.airframe.arms[1].unbalance_g_mm, correction.values[1].after);
    }
}

// Oracle: simulation as above. Six axes of two sensors see three motors of one speed apart; the
// condition number says how well, and the noise it lets through is what the spread claims.
TEST(UnbalanceTest, TellsMotorsByManyAxes)
{
    const Craft craft = test::sampleCraft("saltmarsh");
    const std::vector<double> truth{3.0, 6.0, 1.5};
    Shaker shaker(craft, sixAxes(), 0.005);
    std::vector<ShakeLine> lines;
    for (const double throttle : {0.3, 0.4, 0.5, 0.6})
        lines.push_back(shaker.line(throttle, shaker.speedAt(throttle), truth));
    const Correction correction = shaker.test(lines);
    ASSERT_EQ(correction.values.size(), 3U) << english(correction.mark.reason);
    EXPECT_NE(english(correction.mark.reason).find("condition number"), std::string::npos);
    for (std::size_t motor = 0; motor < 3; ++motor)
        EXPECT_NEAR(correction.values[motor].after, truth[motor],
                    3 * correction.values[motor].spread * truth[motor]);
}

// Oracle: simulation as above. One line of four motors has only what they have in common: with
// phases that come and go, twenty throttles give it within twice the spread that is claimed.
TEST(UnbalanceTest, GivesWhatMotorsHaveInCommon)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.02);
    std::vector<ShakeLine> lines;
    for (int k = 0; k < 20; ++k) {
        const double throttle = 0.3 + 0.02 * k;
        lines.push_back(shaker.line(throttle, shaker.speedAt(throttle), {5, 5, 5, 5}));
    }
    const Correction correction = shaker.test(lines, {.modelSpread = 0});
    ASSERT_EQ(correction.values.size(), 1U);
    const CorrectedValue& value = correction.values[0];
    EXPECT_EQ(value.key, "drive.unbalance_g_mm");
    EXPECT_NEAR(value.after, 5, 2 * value.spread * 5);
    EXPECT_LT(value.spread, 0.15);
    EXPECT_EQ(correction.mark.quality, Quality::Fair);
    EXPECT_EQ(correction.warnings.at(0).code, "motors-not-told");

    const Correction one = shaker.test({lines[0]}, {.modelSpread = 0});
    EXPECT_GT(one.values[0].spread, 0.2);  // motors may just agree
    EXPECT_EQ(one.warnings.at(1).code, "one-moment");

    Craft uneven = craft;
    uneven.airframe.arms[2].unbalance_g_mm = 1.0;
    const Correction both =
        Shaker(uneven, threeAxesAt({0.02, 0.01, 0.01}), 0).test(lines, {.modelSpread = 0});
    ASSERT_EQ(both.values.size(), 2U);  // an own one would hide the common one
    EXPECT_EQ(both.values[1].key, "airframe.arms[2].unbalance_g_mm");
    EXPECT_EQ(both.values[1].before, 1.0);
    EXPECT_EQ(both.values[1].after, both.values[0].after);
}

// Oracle: brute force. One reading repeated 400 times with noise of a fifth of it in each part of
// each of three axes: beyond what the model leaves open, which the same reading tells whose noise
// is not told, the values differ as each claims, known to 3.5 %. The model's own spread adds.
TEST(UnbalanceTest, ClaimsTheSpreadThatNoiseLeaves)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.2);
    const double throttle = 0.45, speed = shaker.speedAt(throttle);
    double sum = 0, squares = 0, told2 = 0;
    constexpr int kRepeats = 400;
    for (int k = 0; k < kRepeats; ++k) {
        ShakeLine line = shaker.line(throttle, speed, {4, 4, 4, 4}, 0);
        const CorrectedValue value = shaker.test({line}, {.modelSpread = 0}).values.at(0);
        EXPECT_NEAR(shaker.test({line}, {.modelSpread = 0.3}).values.at(0).spread,
                    std::hypot(value.spread, 0.3), 1e-9);
        line.noise = 0;
        const double open = shaker.test({line}, {.modelSpread = 0}).values.at(0).spread;
        sum += value.after;
        squares += value.after * value.after;
        told2 += (value.spread * value.spread - open * open) * value.after * value.after / kRepeats;
    }
    const double mean = sum / kRepeats;
    EXPECT_NEAR(mean, 4.0, 0.1);
    EXPECT_NEAR(std::sqrt((squares / kRepeats - mean * mean) / told2), 1.0, 0.1);
}

// Oracle: definition. Two readings of one motor that are a factor of 1.6 apart leave at least half
// of their difference open, whatever each claims.
TEST(UnbalanceTest, WidensWhereReadingsOfOneMotorDisagree)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.001);
    const std::vector<ShakeLine> lines{shaker.line(0.45, shaker.speedAt(0.45), {4, 4, 4, 4}, 0),
                                       shaker.line(0.5, shaker.speedAt(0.5), {6.4, 4, 4, 4}, 0)};
    const Correction correction = shaker.test(lines, {.modelSpread = 0});
    ASSERT_EQ(correction.values.size(), 1U);
    // The standard error of two values about their mean (JCGM 100, 4.2.3), by hand.
    const double mean = correction.values[0].after;
    EXPECT_NEAR(correction.values[0].spread * mean,
                std::sqrt((std::pow(mean - 4, 2) + std::pow(mean - 6.4, 2)) / 2), 0.01);
}

// Oracle: by hand. Two moments of one speed, the second of three times the power: their mean is
// twice the first's, and its standard error half of their difference, the half of it; an unbalance
// goes with the root. The model's own spread adds.
TEST(UnbalanceTest, WidensWhereMomentsDisagree)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.0);
    const ShakeLine line = shaker.line(0.45, shaker.speedAt(0.45), {5, 5, 5, 5});
    ShakeLine stronger = line;
    for (Complex& a : stronger.acceleration)
        a *= std::sqrt(3.0);
    const ShakeOptions averaged{
        .arePhasesKnown = false, .areBeatsAveraged = true, .modelSpread = 0};
    const double first = shaker.test({line}, averaged).values.at(0).after;
    const CorrectedValue both = shaker.test({line, stronger}, averaged).values.at(0);
    EXPECT_NEAR(both.after, std::sqrt(2.0) * first, 1e-9);
    EXPECT_NEAR(both.spread, 0.25, 1e-9);
    ShakeOptions doubted = averaged;
    doubted.modelSpread = 0.3;
    EXPECT_NEAR(shaker.test({line, stronger}, doubted).values.at(0).spread, std::hypot(0.25, 0.3),
                1e-9);
}

// Oracle: by hand. Motors of twice the unbalance that the craft's file has: half of each level is
// left before, and nothing after.
TEST(UnbalanceTest, TellsWhatIsLeft)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.drive.unbalance_g_mm = 3;
    for (Arm& arm : craft.airframe.arms)
        arm.unbalance_g_mm.reset();
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.0);
    std::vector<ShakeLine> lines;
    for (std::size_t motor = 0; motor < 4; ++motor)
        lines.push_back(shaker.line(0.45, shaker.speedAt(0.45), {6, 6, 6, 6}, motor));
    const Correction correction = shaker.test(lines);
    EXPECT_NEAR(correction.residualBefore.value(), 0.5, 1e-9);
    EXPECT_NEAR(correction.residual, 0.0, 1e-9);
}

// Oracle: brute force. One line of three motors on six axes, repeated 400 times with noise: each
// motor's values differ as each claims, known to 3.5 %; without phases noise adds nothing to the
// mean power of one motor.
TEST(UnbalanceTest, ClaimsTheSpreadThatNoiseLeavesOfManyAxes)
{
    const Craft craft = test::sampleCraft("saltmarsh");
    const std::vector<double> truth{3.0, 6.0, 1.5};
    Shaker still(craft, sixAxes(), 0.0);
    const ShakeLine line = still.line(0.5, still.speedAt(0.5), truth);
    double power = 0;
    for (const Complex& a : line.acceleration)
        power += std::norm(a);
    std::mt19937 random(3);
    std::normal_distribution<double> gauss(0, 0.02 * std::sqrt(power / 6));
    std::vector<double> sum(3), squares(3), told2(3);
    constexpr int kRepeats = 400;
    for (int k = 0; k < kRepeats; ++k) {
        ShakeLine noisy = line;
        noisy.noise = gauss.stddev();
        for (Complex& a : noisy.acceleration) {
            const double real = gauss(random), imaginary = gauss(random);
            a += Complex(real, imaginary);
        }
        const Correction correction = still.test({noisy}, {.modelSpread = 0});
        ASSERT_EQ(correction.values.size(), 3U);
        for (std::size_t motor = 0; motor < 3; ++motor) {
            const CorrectedValue& value = correction.values[motor];
            sum[motor] += value.after / kRepeats;
            squares[motor] += value.after * value.after / kRepeats;
            told2[motor] += std::pow(value.spread * value.after, 2) / kRepeats;
        }
    }
    for (std::size_t motor = 0; motor < 3; ++motor) {
        EXPECT_GT(std::sqrt(told2[motor]), 0.02 * sum[motor]);  // beyond the least that is claimed
        EXPECT_NEAR(std::sqrt((squares[motor] - sum[motor] * sum[motor]) / told2[motor]), 1.0, 0.09)
            << motor;
    }
}

// Oracle: brute force. Noise of a fifth in each part adds 4 % to the power of three axes' parts; of
// 400 repeats the mean square, known to 1.5 %, is the truth's.
TEST(UnbalanceTest, TakesNoNoiseForUnbalance)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.2);
    const double speed = shaker.speedAt(0.45);
    double square = 0;
    constexpr int kRepeats = 400;
    for (int k = 0; k < kRepeats; ++k)
        square +=
            std::pow(
                shaker.test({shaker.line(0.45, speed, {4, 4, 4, 4}, 0)}, {.arePhasesKnown = false})
                    .values.at(0)
                    .after,
                2) /
            kRepeats;
    EXPECT_NEAR(square / 16, 1.0, 0.04);
}

// Oracle: simulation of another craft than the one the readings are held against: arms 9 % softer
// than its file, tubes a tenth stiffer. Readings next to the resonances, which lie elsewhere then,
// count little, and the spread that is claimed covers what they do.
TEST(UnbalanceTest, StandsArmsAndTubesThatAreSomewhatOff)
{
    const Craft craft = test::sampleCraft("reedbed");
    Craft truth = craft;
    truth.airframe.arm.youngs_modulus_gpa *= 0.91;
    truth.tube.dynamic_ratio *= 1.1;
    const std::vector<SensorAxis> axes = threeAxesAt({-0.02, 0.01, 0.022});
    Shaker shaker(truth, axes, 0.02);
    std::vector<ShakeLine> lines;
    for (int k = 0; k < 40; ++k) {
        const double throttle = 0.1 + 0.01 * k;
        lines.push_back(shaker.line(throttle, shaker.speedAt(throttle), {6.5, 6.5, 6.5, 6.5}));
    }
    const Correction correction = unbalanceTest(craft, axes, lines).value();
    const CorrectedValue& value = correction.values.at(0);
    EXPECT_NEAR(value.after, 6.5, 2 * value.spread * value.after);
    EXPECT_LT(value.spread, 0.2);
    EXPECT_NE(correction.mark.quality, Quality::Poor) << correction.residual;
    EXPECT_LT(correction.residual, correction.residualBefore.value());
}

// Oracle: definition. Fewer independent moments than lines are worth no more than they are.
TEST(UnbalanceTest, CountsMomentsAndNotLines)
{
    const Craft craft = test::sampleCraft("reedbed");
    Shaker shaker(craft, threeAxesAt({0.02, 0.01, 0.01}), 0.0);
    const std::vector<ShakeLine> lines(50, shaker.line(0.45, shaker.speedAt(0.45), {5, 5, 5, 5}));
    const Correction many = shaker.test(lines, {.modelSpread = 0});
    const Correction two = shaker.test(lines, {.modelSpread = 0, .moments = 2.0});
    EXPECT_NEAR(two.values[0].spread, 5 * many.values[0].spread, 1e-6);
    EXPECT_EQ(two.warnings.at(1).code, "one-moment");
}

// Oracle: definition. Levels that fall with the speed's fourth power, where an unbalance rises with
// its second, are no unbalance.
TEST(UnbalanceTest, CallsPoorWhatNoUnbalanceMakes)
{
    const Craft craft = test::sampleCraft("reedbed");
    const std::vector<SensorAxis> axes = threeAxesAt({0.02, 0.01, 0.01});
    Shaker shaker(craft, axes, 0.0);
    std::vector<ShakeLine> lines;
    for (int k = 0; k < 20; ++k) {
        const double throttle = 0.4 + 0.03 * k;
        lines.push_back({throttle, {}, {}, std::vector<Complex>(3), 0});
        const double level = std::pow(shaker.speedAt(throttle) / 80, -4);
        lines.back().acceleration = {level, level, level};
    }
    const Correction correction = unbalanceTest(craft, axes, lines).value();
    EXPECT_EQ(correction.mark.quality, Quality::Poor) << correction.residual;
}

TEST(UnbalanceTest, RefusesWhatSaysNothing)
{
    const Craft craft = test::sampleCraft("reedbed");
    const std::vector<SensorAxis> axes = threeAxesAt(Vector3d::Zero());
    const auto fault = [&](const std::vector<ShakeLine>& lines) {
        const auto correction = unbalanceTest(craft, axes, lines);
        EXPECT_FALSE(correction);
        return correction ? std::string() : test::plain(correction.error().what);
    };
    const std::vector<Complex> some{1, 1, 1};
    EXPECT_NE(fault({}).find("No level"), std::string::npos);
    EXPECT_NE(fault({{0.4, {}, {}, {1}, 0}}).find("1 amplitudes for 3 axes"), std::string::npos);
    EXPECT_NE(fault({{0.4, {}, 7, some, 0}}).find("no motor 8"), std::string::npos);
    EXPECT_NE(fault({{0.4, {}, 1, some, 0}, {0.4, {}, {}, some, 0}}).find("must be alike"),
              std::string::npos);
    EXPECT_NE(fault({{0.4, -1.5, {}, some, 0}}).find("A speed is -90 rpm, must be above 0"),
              std::string::npos);
    EXPECT_EQ(fault({{0.001, {}, {}, some, 0}}), "At 0.1 % throttle the rotors stand still");
    EXPECT_NE(fault({{0.4, {}, {}, {0, 0, 0}, 0}}).find("no motion"), std::string::npos);
}

}  // namespace
}  // namespace stillbay
