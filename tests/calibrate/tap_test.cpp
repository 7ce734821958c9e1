// SPDX-License-Identifier: MIT
#include "core/calibrate/tap.h"

#include "core/airframe/tapped_arm.h"
#include "core/craft/craft.h"
#include "tests/airframe/element_arm.h"
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

constexpr int kElements = 6;  // cubic beams: the first mode is within 1e-5

// The lowest frequency at which the tip's stiffness in one direction falls through zero, the root
// held: [m] of the arm is the craft's first.
double firstFrequency_hz(const Craft& craft, double modulus, double shear, Eigen::Index direction,
                         double from_hz = 2)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    ArmMaterial arm = excited.airframe.arm;
    arm.youngsModulus *= modulus;
    arm.shearModulus *= shear;
    arm.lossFactor = 0;
    const auto stiffness = [&](double f_hz) {
        const Eigen::MatrixXd D =
            test::elementArm(arm, excited.airframe.arms[0].length, excited.airframe.tip, 0,
                             2 * std::numbers::pi * f_hz, kElements)
                .real();
        const Eigen::Index n = D.rows() - 6;
        Eigen::VectorXd force = Eigen::VectorXd::Zero(n);
        force[n - 6 + direction] = 1;
        return 1 /
               test::leastSquaresByLapack(D.bottomRightCorner(n, n), force)(n - 6 + direction, 0);
    };
    double low = from_hz;
    while (!(stiffness(low) > 0 && stiffness(low * 1.06) <= 0))
        low *= 1.06;
    double high = low * 1.06;
    for (int k = 0; k < 30; ++k) {
        const double middle = 0.5 * (low + high);
        (stiffness(middle) > 0 ? low : high) = middle;
    }
    return low;
}

TappedMode modeOf(const Craft& truth, Eigen::Index direction)
{
    const double f_hz = firstFrequency_hz(truth, 1, 1, direction);
    // The arm's share of the strain by Rayleigh's quotient.
    const double share =
        2 * std::log(firstFrequency_hz(truth, 1.01, 1.01, direction, 0.99 * f_hz) / f_hz) /
        std::log(1.01);
    return {.frequency_hz = f_hz, .lossFactor = truth.airframe.arm.loss_factor * share};
}

TappedArm tapped(const Craft& truth)
{
    return {0, modeOf(truth, 2), modeOf(truth, 1)};
}

const CorrectedValue& modulusOf(const Correction& correction)
{
    return *test::valueOf(correction, "airframe.arm.youngs_modulus_gpa");
}

class AnyArm {
public:
    explicit AnyArm(unsigned seed) : m_random(seed) {}

    double between(double low, double high)
    {
        return std::uniform_real_distribution<double>(low, high)(m_random);
    }

    // A flat or upright, solid or hollow arm with a motor on it.
    Craft draw()
    {
        Craft craft = test::sampleCraft("reedbed");
        ArmSection& arm = craft.airframe.arm;
        arm.width_mm = between(9, 18);
        arm.height_mm = arm.width_mm * (between(0, 1) < 0.5 ? between(0.4, 0.7) : between(1.4, 2));
        arm.wall_mm.reset();
        if (between(0, 1) < 0.4)
            arm.wall_mm = 0.2 * std::min(arm.width_mm, arm.height_mm);
        arm.youngs_modulus_gpa = between(8, 70);
        arm.shear_modulus_gpa = arm.youngs_modulus_gpa * between(0.1, 0.38);
        arm.loss_factor = between(0.004, 0.03);
        craft.airframe.arms[0].length_mm = between(120, 260);
        craft.drive.motor.mass_g = between(25, 90);
        craft.drive.motor.height_above_arm_mm = between(5, 25);
        return craft;
    }

private:
    std::mt19937 m_random;
};

// Oracle: an arm of finite elements with its bodies written out by Newton and Euler. What the craft
// believes of the modulus is off by up to a quarter; the joint is known.
TEST(TapTest, GivesTheModulusOfAnyArm)
{
    AnyArm any(3);
    for (int k = 0; k < 15; ++k) {
        SCOPED_TRACE(k);
        Craft truth = any.draw();
        if (k % 2 == 0)
            truth.airframe.arm.root_stiffness_nm_per_rad = any.between(200, 3000);
        Craft believed = truth;
        believed.airframe.arm.youngs_modulus_gpa *= any.between(0.75, 1.25);
        TappedArm tap = tapped(truth);
        if (k % 3 == 0)
            tap.horizontal.reset();
        if (k % 3 == 1)
            tap.vertical.reset();
        const auto correction = tapTest(believed, std::span(&tap, 1));
        ASSERT_TRUE(correction) << english(correction.error().what);
        EXPECT_NEAR(modulusOf(*correction).after, truth.airframe.arm.youngs_modulus_gpa,
                    0.01 * truth.airframe.arm.youngs_modulus_gpa);
        const double loss = truth.airframe.arm.loss_factor;
        EXPECT_NEAR(test::valueOf(*correction, "airframe.arm.loss_factor")->after, loss,
                    0.01 * loss);
    }
}

// Oracle: the same; the joint is not known. Where the answer claims to tell modulus and joint
// apart it must be right; where not it must say so.
TEST(TapTest, TellsModulusAndJointApartOrSaysSo)
{
    AnyArm any(4);
    int told = 0;
    for (int k = 0; k < 15; ++k) {
        SCOPED_TRACE(k);
        Craft truth = any.draw();
        const double joint = any.between(150, 1500);
        truth.airframe.arm.root_stiffness_nm_per_rad = joint;
        Craft believed = truth;
        believed.airframe.arm.youngs_modulus_gpa *= any.between(0.75, 1.25);
        believed.airframe.arm.root_stiffness_nm_per_rad.reset();
        TappedArm tap = tapped(truth);
        tap.vertical->frequencySpread = tap.horizontal->frequencySpread = 0.001;
        const auto correction = tapTest(believed, std::span(&tap, 1), {.calliper_mm = 0.01});
        ASSERT_TRUE(correction) << english(correction.error().what);
        const CorrectedValue* const root =
            test::valueOf(*correction, "airframe.arm.root_stiffness_nm_per_rad");
        if (test::warns(*correction, "joint-not-told") || test::warns(*correction, "joint-rigid")) {
            EXPECT_FALSE(root);
            continue;
        }
        ++told;
        ASSERT_TRUE(root);
        EXPECT_NEAR(modulusOf(*correction).after, truth.airframe.arm.youngs_modulus_gpa,
                    0.01 * truth.airframe.arm.youngs_modulus_gpa);
        EXPECT_NEAR(root->after, joint, 0.03 * joint);
        EXPECT_LT(correction->residual, 1e-4);
    }
    EXPECT_GT(told, 5);
}

// Oracle: definition. One modulus cannot explain two directions that are 2 % apart where the joint
// is known, and losses that differ twofold leave half of that open: the spreads say so.
TEST(TapTest, WidensWhereDirectionsDisagree)
{
    const Craft craft = test::sampleCraft("reedbed");
    TappedArm tap = tapped(craft);
    const Correction agreed = tapTest(craft, std::span(&tap, 1)).value();
    tap.horizontal->frequency_hz *= 1.02;
    *tap.horizontal->lossFactor *= 2;
    const Correction apart = tapTest(craft, std::span(&tap, 1)).value();
    ASSERT_TRUE(test::warns(apart, "joint-not-told"));
    EXPECT_GT(modulusOf(apart).spread, 1.5 * modulusOf(agreed).spread);
    // The standard error of two values, by hand: half of their difference over their mean.
    EXPECT_NEAR(test::valueOf(apart, "airframe.arm.loss_factor")->spread, 1 / 3.0, 0.01);
    EXPECT_LT(test::valueOf(agreed, "airframe.arm.loss_factor")->spread, 0.1);
}

// Oracle: propagation of uncertainty (JCGM 100, 5.1.2): the modulus goes with the frequency as 2
// over the arm's share of the strain, which finite elements give. What else is open stays the same.
TEST(TapTest, LeavesOpenWhatTheFrequencyDoes)
{
    const Craft craft = test::sampleCraft("reedbed");
    const double f_hz = firstFrequency_hz(craft, 1, 1, 2);
    const double slope =
        std::log(firstFrequency_hz(craft, 1.01, 1.01, 2, 0.99 * f_hz) / f_hz) / std::log(1.01);
    const auto spread2 = [&](double frequencySpread) {
        TappedArm tap{0, modeOf(craft, 2), {}};
        tap.vertical->frequencySpread = frequencySpread;
        return std::pow(modulusOf(tapTest(craft, std::span(&tap, 1)).value()).spread, 2);
    };
    EXPECT_NEAR(std::sqrt(spread2(0.03) - spread2(0.01)),
                std::sqrt(0.03 * 0.03 - 0.01 * 0.01) / slope, 0.01 * 0.03 / slope);
}

// Oracle: propagation, by hand. A bent section has I = b h³/12, so its frequency goes with the bent
// side by 3/2 and with the other by 1/2; its slope with the modulus by finite elements, the twist
// being the shear's.
TEST(TapTest, LeavesOpenWhatTheCalliperDoes)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.airframe.arm.height_mm = 8;
    craft.airframe.arm.width_mm = 14;
    for (const Eigen::Index direction : {2, 1}) {
        const double f_hz = firstFrequency_hz(craft, 1, 1, direction);
        const double slope =
            std::log(firstFrequency_hz(craft, 1.01, 1, direction, 0.99 * f_hz) / f_hz) /
            std::log(1.01);
        const auto spread2 = [&](double calliper_mm) {
            TappedArm tap;
            (direction == 2 ? tap.vertical : tap.horizontal) = modeOf(craft, direction);
            return std::pow(
                modulusOf(tapTest(craft, std::span(&tap, 1), {.calliper_mm = calliper_mm}).value())
                    .spread,
                2);
        };
        const double bent_mm = direction == 2 ? 8 : 14, other_mm = direction == 2 ? 14 : 8;
        const double share = std::hypot(1.5 * 0.4 / bent_mm, 0.5 * 0.4 / other_mm);
        EXPECT_NEAR(std::sqrt(spread2(0.4) - spread2(0.0)), share / slope, 0.01 * share / slope);
    }
}

// Oracle: least squares by hand of two logarithms, one of them 2 % off, by one modulus: what is
// left over the root of one degree of freedom is its standard error. Slopes by finite elements.
TEST(TapTest, TellsWhatIsLeft)
{
    const Craft craft = test::sampleCraft("reedbed");
    const auto slope = [&craft](Eigen::Index direction) {
        const double f_hz = firstFrequency_hz(craft, 1, 1, direction);
        return std::log(firstFrequency_hz(craft, 1.01, 1, direction, 0.99 * f_hz) / f_hz) /
               std::log(1.01);
    };
    const double up = slope(2), across = slope(1), off = std::log(1.02);
    TappedArm tap = tapped(craft);
    tap.horizontal->frequency_hz *= 1.02;
    const Correction correction = tapTest(craft, std::span(&tap, 1), {.calliper_mm = 0.0}).value();
    ASSERT_TRUE(test::warns(correction, "joint-not-told"));
    const double change = across * off / (up * up + across * across);
    const double left = std::hypot(up * change, off - across * change);
    EXPECT_NEAR(std::log(modulusOf(correction).after / craft.airframe.arm.youngs_modulus_gpa),
                change, 0.02 * change);
    EXPECT_NEAR(correction.residual, left / std::sqrt(2.0), 0.02 * left);
    EXPECT_NEAR(correction.residualBefore.value(), off / std::sqrt(2.0), 0.01 * off);
    const double spread = left / std::hypot(up, across);
    EXPECT_NEAR(modulusOf(correction).spread, spread, 0.03 * spread);
}

// Oracle: propagation of uncertainty (JCGM 100, 5.1.2) through the inverse of the two frequencies'
// slopes with modulus and joint, which finite elements give.
TEST(TapTest, LeavesOpenWhatBothDirectionsDo)
{
    Craft truth = test::sampleCraft("reedbed");
    truth.airframe.arm.height_mm = 7;
    truth.airframe.arm.width_mm = 15;
    truth.airframe.arm.root_stiffness_nm_per_rad = 500;
    Craft stiffer = truth;
    stiffer.airframe.arm.root_stiffness_nm_per_rad = 510;
    Eigen::Matrix2d slopes;
    for (const Eigen::Index direction : {2, 1}) {
        const double f_hz = firstFrequency_hz(truth, 1, 1, direction);
        slopes.row(2 - direction) << std::log(
                                         firstFrequency_hz(truth, 1.01, 1, direction, 0.99 * f_hz) /
                                         f_hz) /
                                         std::log(1.01),
            std::log(firstFrequency_hz(stiffer, 1, 1, direction, 0.99 * f_hz) / f_hz) /
                std::log(1.02);
    }
    const Eigen::Matrix2d spreads = 0.002 * slopes.inverse();
    TappedArm tap = tapped(truth);
    tap.vertical->frequencySpread = tap.horizontal->frequencySpread = 0.002;
    const Correction correction = tapTest(truth, std::span(&tap, 1), {.calliper_mm = 0.0}).value();
    EXPECT_NEAR(modulusOf(correction).spread, spreads.row(0).norm(),
                0.03 * modulusOf(correction).spread);
    const CorrectedValue* const root =
        test::valueOf(correction, "airframe.arm.root_stiffness_nm_per_rad");
    ASSERT_TRUE(root);
    EXPECT_NEAR(root->spread, spreads.row(1).norm(), 0.03 * root->spread);
    // Both directions agree on the loss: as sure as two readings of a tenth each are.
    EXPECT_NEAR(test::valueOf(correction, "airframe.arm.loss_factor")->spread, 0.1 / std::sqrt(2.0),
                1e-3);
}

// Oracle: definition. A square arm with a low motor rings alike both ways, whatever gives.
TEST(TapTest, CannotTellAJointFromASquareArm)
{
    Craft truth = test::sampleCraft("reedbed");
    truth.drive.motor.height_above_arm_mm = 0;
    truth.drive.propeller.height_above_arm_mm = 0;
    truth.airframe.arm.root_stiffness_nm_per_rad = 700;
    Craft believed = truth;
    believed.airframe.arm.root_stiffness_nm_per_rad.reset();
    const TappedArm tap = tapped(truth);
    const Correction correction = tapTest(believed, std::span(&tap, 1)).value();
    EXPECT_TRUE(test::warns(correction, "joint-not-told"));
    EXPECT_EQ(correction.mark.quality, Quality::Fair);
    EXPECT_LT(modulusOf(correction).after, believed.airframe.arm.youngs_modulus_gpa);
}

// Oracle: the receptance of the whole airframe, which is singular where it rings; a craft without
// symmetry, in which no mode spares the hub.
TEST(TappedFrequencies, OfAFreeCraftAreThoseOfTheWhole)
{
    AirframeModel airframe = makeExcitedAirframe(test::skewCraft(6)).airframe;
    airframe.arm.lossFactor = 0;
    airframe.arm.rootStiffness = 900;
    for (std::size_t arm = 0; arm < airframe.arms.size(); ++arm) {
        const TappedFrequencies found = tappedFrequencies(airframe, arm, false).value();
        for (const double f_hz : {found.vertical_hz, found.horizontal_hz}) {
            const auto size = [&airframe](double at_hz) {
                return receptance(airframe, 2 * std::numbers::pi * at_hz, 0, true).R.norm();
            };
            EXPECT_GT(size(f_hz), 1e4 * size(1.02 * f_hz)) << arm << " at " << f_hz;
        }
    }
}

TEST(TapTest, RefusesWhatSaysNothing)
{
    const Craft craft = test::sampleCraft("reedbed");
    const auto fault = [&craft](const TappedArm& tap) {
        const auto correction = tapTest(craft, std::span(&tap, 1));
        EXPECT_FALSE(correction);
        return correction ? std::string() : english(correction.error().what);
    };
    EXPECT_NE(fault({}).find("No arm was tapped"), std::string::npos);
    EXPECT_NE(fault({9, TappedMode{50, {}}, {}}).find("no arm 10"), std::string::npos);
    EXPECT_NE(fault({0, TappedMode{-1, {}}, {}}).find("must be above 0"), std::string::npos);
    EXPECT_NE(fault({0, TappedMode{50, 2.0}, {}}).find("loss factor is 2"), std::string::npos);
}

}  // namespace
}  // namespace stillbay
