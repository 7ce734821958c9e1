// SPDX-License-Identifier: MIT
#include "core/response/wobble_powers.h"

#include "core/assess/assess.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>
#include <thread>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

struct Design {
    MountedBay mounted;
    Pose rest;
    Matrix6cd K;

    explicit Design(const Craft& craft)
        : mounted(makeMountedBay(craft).value()),
          rest(restPose(mounted.suspension, 1.0).value()),
          K(dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor))
    {
    }

    std::vector<WobblePower> powers(const FilmedExcitation& filmed) const
    {
        std::vector<WobblePower> result(filmed.throttles(), {-1, -1});
        EXPECT_TRUE(filmed.powers(mounted.suspension.bay, rest, K, result));
        return result;
    }
};

FilmedExcitation filmedExcitation(const Craft& craft, const Grid& throttle, bool flexible = true)
{
    return {prepareExcitation(makeExcitedAirframe(craft), throttle.values(), flexible),
            makeCamera(craft.camera)};
}

void expectAsAssessed(const Craft& craft, const Grid& throttle, bool flexible)
{
    const auto whole = assess(craft, {.throttle = throttle, .flexible_airframe = flexible});
    ASSERT_TRUE(whole) << english(whole.error().what);
    const auto powers = Design(craft).powers(filmedExcitation(craft, throttle, flexible));
    ASSERT_EQ(powers.size(), whole->throttle.size());
    for (std::size_t i = 0; i < powers.size(); ++i) {
        const ThrottlePoint& point = whole->throttle[i];
        double turn = 0, blades = 0;
        for (const OrderPoint& order : point.orders)
            (order.order == 1 ? turn : blades) += order.wobble_px * order.wobble_px;
        EXPECT_NEAR(powers[i].turn, turn, 1e-10 * turn) << "throttle " << point.throttle;
        EXPECT_NEAR(powers[i].blades, blades, 1e-10 * blades) << "throttle " << point.throttle;
        EXPECT_NEAR(powers[i].wobble_px(), point.wobble_px, 1e-10 * point.wobble_px);
        EXPECT_GT(point.wobble_px, 0);
    }
}

class WobblePowers : public testing::TestWithParam<bool> {};
INSTANTIATE_TEST_SUITE_P(Airframe, WobblePowers, testing::Bool(), [](const auto& flexible) {
    return std::string(flexible.param ? "Flexible" : "Rigid");
});

// Oracle: assess(), which keeps every motor apart; itself checked in direct_solution_test.cpp.
TEST_P(WobblePowers, EqualTheAssessmentOfASample)
{
    for (const char* name : {"reedbed", "saltmarsh", "quarry"}) {
        SCOPED_TRACE(name);
        expectAsAssessed(test::sampleCraft(name), {0.1, 1.0, 0.02}, GetParam());
    }
}

// Oracle: the same. Three to six motors without any symmetry.
TEST_P(WobblePowers, EqualTheAssessmentOfASkewCraft)
{
    for (unsigned seed = 1; seed <= 8; ++seed) {
        SCOPED_TRACE(seed);
        expectAsAssessed(test::skewCraft(seed), {0.15, 0.9, 0.05}, GetParam());
    }
}

// Oracle: the same. Eight motors are more than the six motions that one body has.
TEST_P(WobblePowers, EqualTheAssessmentOfEightMotors)
{
    Craft craft = test::skewCraft(3);
    const auto arms = craft.airframe.arms;
    for (std::size_t k = 0; craft.airframe.arms.size() < 8; ++k) {
        craft.airframe.arms.push_back(arms[k % arms.size()]);
        craft.airframe.arms.back().azimuth_deg += 17;
    }
    expectAsAssessed(craft, {0.2, 0.8, 0.1}, GetParam());
}

// Oracle: the same. Grids that do not fill the lanes.
TEST_P(WobblePowers, TakeAnyNumberOfThrottles)
{
    const Craft craft = test::sampleCraft("reedbed");
    for (const int more : {0, 1, 2, 3, 4, 5, 6, 7, 8}) {
        SCOPED_TRACE(more);
        expectAsAssessed(craft, {0.3, 0.3 + 0.05 * more + 1e-9, 0.05}, GetParam());
    }
}

// Oracle: definition. Motors that stand still excite nothing.
TEST(WobblePowers, AreZeroWhereTheMotorsStandStill)
{
    const Craft craft = test::sampleCraft("reedbed");
    const auto powers = Design(craft).powers(filmedExcitation(craft, {0.0, 0.4, 0.2}));
    ASSERT_EQ(powers.size(), 3U);
    EXPECT_EQ(powers[0].turn, 0);
    EXPECT_EQ(powers[0].blades, 0);
    EXPECT_GT(powers[1].turn, 0);
    EXPECT_GT(powers[1].blades, 0);

    const auto standing = Design(craft).powers(filmedExcitation(craft, {0.0, 0.0, 0.2}));
    ASSERT_EQ(standing.size(), 1U);
    EXPECT_EQ(standing[0].wobble_px(), 0);
}

// Oracle: linear mechanics. Unbalance drives the once-per-turn excitation alone, power as its
// square.
TEST(WobblePowers, SplitTheWobbleByItsCause)
{
    const Craft craft = test::sampleCraft("saltmarsh");
    Excitation excitation =
        prepareExcitation(makeExcitedAirframe(craft), Grid{0.2, 0.8, 0.1}.values(), true);
    const auto once = Design(craft).powers({excitation, makeCamera(craft.camera)});
    ExcitedAirframe heavier = makeExcitedAirframe(craft);
    for (double& unbalance : heavier.unbalance)
        unbalance *= 2;
    excitation = prepareExcitation(heavier, Grid{0.2, 0.8, 0.1}.values(), true);
    const auto twice = Design(craft).powers({excitation, makeCamera(craft.camera)});
    for (std::size_t i = 0; i < once.size(); ++i) {
        EXPECT_NEAR(twice[i].turn, 4 * once[i].turn, 1e-12 * twice[i].turn);
        EXPECT_EQ(twice[i].blades, once[i].blades);
    }
}

// Oracle: definition. An undamped bay exactly on its resonance has no answer, in whatever lane.
TEST(WobblePowers, HaveNoAnswerOnAnUndampedResonance)
{
    // A fixed airframe, all numbers powers of two: 1/k = 1/(mω²) to the last bit.
    const MassFigures bay{0.25, Vector3d::Zero(), 0.25 * Matrix3d::Identity()};
    const Matrix6cd K = 1024.0 * Matrix6cd::Identity();
    const CameraModel camera = makeCamera(Camera{});
    for (std::size_t resonant = 0; resonant <= 5; ++resonant) {
        Excitation excitation;
        for (std::size_t i = 0; i < 5; ++i) {
            const double omega = i == resonant ? 64.0 : 65.0 + static_cast<double>(i);
            const AirframeAt at{omega, Matrix6cd::Zero(), {Vector6cd::Ones()}};
            excitation.points.push_back({.orders = {{1, 10.0, at}}});
        }
        std::vector<WobblePower> powers(5);
        EXPECT_EQ(FilmedExcitation(excitation, camera).powers(bay, {}, K, powers), resonant == 5)
            << resonant;
    }
}

// Oracle: definition. The same answer from two threads at once, to the last bit.
TEST(WobblePowers, AreTheSameFromTwoThreads)
{
    const Craft craft = test::sampleCraft("quarry");
    const FilmedExcitation filmed = filmedExcitation(craft, {0.1, 1.0, 0.01});
    const Design design(craft);
    const auto alone = design.powers(filmed);
    const auto differences = [&] {
        int count = 0;
        for (int repeat = 0; repeat < 50; ++repeat) {
            const auto powers = design.powers(filmed);
            for (std::size_t i = 0; i < powers.size(); ++i)
                count += powers[i].turn != alone[i].turn || powers[i].blades != alone[i].blades;
        }
        return count;
    };
    int first = -1, second = -1;
    std::thread one([&] { first = differences(); }), two([&] { second = differences(); });
    one.join();
    two.join();
    EXPECT_EQ(first, 0);
    EXPECT_EQ(second, 0);
}

// Oracle: definition. A caller with too few places is our own bug.
TEST(WobblePowers, AskForOnePlaceAThrottle)
{
    const Craft craft = test::sampleCraft("reedbed");
    const FilmedExcitation filmed = filmedExcitation(craft, {0.2, 0.4, 0.1});
    const Design design(craft);
    std::vector<WobblePower> powers(2);
    EXPECT_THROW(filmed.powers(design.mounted.suspension.bay, design.rest, design.K, powers),
                 std::logic_error);
}

}  // namespace
}  // namespace stillbay
