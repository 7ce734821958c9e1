// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/response/bay_at_rest.h"
#include "core/response/wobble_powers.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

const ThrottleCurve kSkew{{0.08, 0.03}, {0.35, 0.2}, {0.55, 0.51}, {0.93, 0.97}};

Craft withOwnUnbalances(Craft craft, const std::vector<double>& unbalances_g_mm)
{
    for (std::size_t i = 0; i < craft.airframe.arms.size(); ++i)
        craft.airframe.arms[i].unbalance_g_mm = unbalances_g_mm[i];
    return craft;
}

// Once-per-turn and blade-pass power at some throttles of a craft's full pack.
std::vector<WobblePower> powersOf(const Craft& craft, const ExcitedAirframe& excited,
                                  const std::vector<double>& throttles)
{
    BayAtRest bay = letGo(makeMountedBay(craft).value()).value();
    EXPECT_TRUE(addModes(bay));
    std::vector<WobblePower> powers(throttles.size());
    EXPECT_TRUE(
        FilmedExcitation(prepareExcitation(excited, throttles, true), makeCamera(craft.camera))
            .powers(bay.mounted.suspension.bay, bay.pose, bay.K, powers));
    return powers;
}

void expectSame(const Assessment& a, const Assessment& b)
{
    ASSERT_EQ(a.throttle.size(), b.throttle.size());
    for (std::size_t i = 0; i < a.throttle.size(); ++i) {
        EXPECT_EQ(a.throttle[i].speed_rpm, b.throttle[i].speed_rpm);
        EXPECT_EQ(a.throttle[i].wobble_px, b.throttle[i].wobble_px);
        EXPECT_EQ(a.throttle[i].wobble_worst_px, b.throttle[i].wobble_worst_px);
        EXPECT_EQ(a.throttle[i].rigid_px, b.throttle[i].rigid_px);
    }
    EXPECT_EQ(a.hover.throttle_full, b.hover.throttle_full);
    EXPECT_EQ(a.hover.throttle_empty, b.hover.throttle_empty);
    EXPECT_EQ(a.hover.balance_grade_mm_s, b.hover.balance_grade_mm_s);
    EXPECT_EQ(a.cruise->full.worst_px, b.cruise->full.worst_px);
    EXPECT_EQ(a.cruise->empty.worst_px, b.cruise->empty.worst_px);
}

// Oracle: definition, to the last bit: a straight curve and each motor with the common unbalance
// are the craft without them, and what was seen changes nothing.
TEST(ThrottleCurve, AStraightOneChangesNothing)
{
    const Craft plain = test::sampleCraft("quarry");
    Craft same = plain;
    same.drive.throttle_curve = {{0, 0}, {1, 1}};
    for (Arm& arm : same.airframe.arms)
        arm.unbalance_g_mm = plain.drive.unbalance_g_mm;
    same.flight.notes = {{.from = 0.4, .to = 0.47, .seen = Seen::Bad}};
    expectSame(assess(plain).value(), assess(same).value());
}

// Oracle: brute force, the craft without a curve flown at each duty; the worst of cruise among 1000
// throttles of each pack, good to 1 %.
TEST(ThrottleCurve, MovesTheCurveOfAnyCraft)
{
    const Craft plain = test::skewCraft(5);
    Craft curved = plain;
    curved.drive.throttle_curve = kSkew;
    const ExcitedAirframe excited = makeExcitedAirframe(plain);
    const DriveModel drive = makeExcitedAirframe(curved).drive;
    const Assessment assessment = assess(curved).value();

    std::vector<double> duties;
    for (const ThrottlePoint& point : assessment.throttle)
        duties.push_back(dutyAt(drive, point.throttle));
    const std::vector<WobblePower> powers = powersOf(plain, excited, duties);
    for (std::size_t i = 0; i < duties.size(); ++i) {
        const ThrottlePoint& point = assessment.throttle[i];
        const double speed = rotorSpeed(excited.drive, duties[i], excited.fullVoltage);
        EXPECT_NEAR(point.speed_rpm / 60, speed, 1e-14 * speed);
        EXPECT_NEAR(point.wobble_px, powers[i].wobble_px(), 1e-9 * powers[i].wobble_px());
    }

    const auto [from, to] = curved.flight.cruise_throttle;
    const std::array packs{std::pair(excited, assessment.cruise->full),
                           std::pair(atEmptyPack(excited), assessment.cruise->empty)};
    for (const auto& [pack, figures] : packs) {
        std::vector<double> dense;
        for (int k = 0; k <= 1000; ++k)
            dense.push_back(dutyAt(drive, std::lerp(from, to, k / 1000.0)));
        double worst = 0;
        for (const WobblePower& power : powersOf(plain, pack, dense))
            worst = std::max(worst, power.wobble_px());
        EXPECT_NEAR(figures.worst_px, worst, 0.01 * worst);
    }
    const double speed = assessment.hover.speed_rpm / 60;
    EXPECT_NEAR(rotorSpeed(drive, assessment.hover.throttle_full.value(), excited.fullVoltage),
                speed, 1e-9 * speed);
}

// Oracle: definition. A controller that turns the rotors at rest cannot slow the full pack down to
// what the empty one shows there; each pack is flown alone then.
TEST(ThrottleCurve, MayTurnTheRotorsAtRest)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.drive.throttle_curve = {{0, 0.2}, {1, 1}};
    const Assessment assessment = assess(craft).value();
    craft.drive.throttle_curve.clear();
    const ExcitedAirframe empty = atEmptyPack(makeExcitedAirframe(craft));
    std::vector<double> duties;
    const auto [from, to] = craft.flight.cruise_throttle;
    for (int k = 0; k <= 500; ++k)
        duties.push_back(0.2 + 0.8 * std::lerp(from, to, k / 500.0));
    double worst = 0;
    for (const WobblePower& power : powersOf(craft, empty, duties))
        worst = std::max(worst, power.wobble_px());
    EXPECT_NEAR(assessment.cruise->empty.worst_px, worst, 0.01 * worst);
}

// Oracle: linear mechanics. Motors run apart, so their powers add: each motor alone at 1 g·mm,
// times the square of its own unbalance. A skew craft, one motor of it with the common unbalance.
TEST(OwnUnbalance, ActsOnItsMotorAlone)
{
    const Craft craft = test::skewCraft(8);
    const std::size_t motors = craft.airframe.arms.size();
    std::vector<double> unbalances_g_mm;
    for (std::size_t i = 0; i < motors; ++i)
        unbalances_g_mm.push_back(1.0 + 1.7 * static_cast<double>(i * i));
    Craft uneven = withOwnUnbalances(craft, unbalances_g_mm);
    uneven.airframe.arms[1].unbalance_g_mm.reset();
    unbalances_g_mm[1] = craft.drive.unbalance_g_mm;

    const std::vector<double> throttles{0.2, 0.43, 0.7};
    std::vector<double> expected(throttles.size());
    for (std::size_t motor = 0; motor < motors; ++motor) {
        std::vector<double> alone(motors, 0.0);
        alone[motor] = 1.0;
        const Craft one = withOwnUnbalances(craft, alone);
        const auto powers = powersOf(one, makeExcitedAirframe(one), throttles);
        for (std::size_t i = 0; i < throttles.size(); ++i)
            expected[i] += powers[i].turn * unbalances_g_mm[motor] * unbalances_g_mm[motor];
    }
    const auto powers = powersOf(uneven, makeExcitedAirframe(uneven), throttles);
    for (std::size_t i = 0; i < throttles.size(); ++i)
        EXPECT_NEAR(powers[i].turn, expected[i], 1e-11 * expected[i]);
}

}  // namespace
}  // namespace stillbay
