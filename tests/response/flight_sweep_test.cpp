// SPDX-License-Identifier: MIT
#include "core/response/flight_sweep.h"

#include "core/response/bay_at_rest.h"
#include "core/response/wobble_curve.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kSame = 1e-9;  // one throttle

BayAtRest bayOf(const Craft& craft)
{
    BayAtRest bay = letGo(makeMountedBay(craft).value()).value();
    EXPECT_TRUE(addModes(bay));
    return bay;
}

FlightExcitation flightOf(const Craft& craft, Throttles throttles)
{
    return prepareFlight(makeExcitedAirframe(craft), craft.flight,
                         CruiseWindow(craft.flight).sweep(), throttles, true);
}

FlightWobble wobbleOf(const FilmedFlight& flight, const BayAtRest& bay)
{
    return flight.sweep(bay.mounted.suspension.bay, bay.pose, bay.K).value();
}

// Each pack's own excitation at its own throttles.
void expectAsFlownWith(const ExcitedAirframe& craft, const PackWobble& pack, const BayAtRest& bay,
                       const CameraModel& camera)
{
    const std::vector<double> throttle(pack.throttle.begin(), pack.throttle.end());
    const FilmedExcitation alone(prepareExcitation(craft, throttle, true), camera);
    std::vector<WobblePower> powers(throttle.size());
    ASSERT_TRUE(alone.powers(bay.mounted.suspension.bay, bay.pose, bay.K, powers));
    ASSERT_EQ(pack.wobble_px.size(), throttle.size());
    double largest = 0;
    for (const WobblePower& power : powers)
        largest = std::max(largest, power.wobble_px());
    // A narrow peak is steep: a throttle that is off by its last digits shows.
    for (std::size_t i = 0; i < throttle.size(); ++i)
        EXPECT_NEAR(pack.wobble_px[i], powers[i].wobble_px(), 1e-8 * largest) << throttle[i];
    EXPECT_TRUE(std::is_sorted(throttle.begin(), throttle.end()));
}

void expectBothPacks(const Craft& craft)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const BayAtRest bay = bayOf(craft);
    for (const Throttles throttles : {Throttles::Cruise, Throttles::All}) {
        const FilmedFlight flight(flightOf(craft, throttles), makeCamera(craft.camera));
        const FlightWobble wobble = wobbleOf(flight, bay);
        expectAsFlownWith(excited, wobble.full, bay, makeCamera(craft.camera));
        expectAsFlownWith(atEmptyPack(excited), wobble.empty, bay, makeCamera(craft.camera));
        const auto [from, to] =
            throttles == Throttles::All ? std::array{0.1, 1.0} : craft.flight.cruise_throttle;
        for (const PackWobble* pack : {&wobble.full, &wobble.empty}) {
            EXPECT_LE(pack->throttle.front(), from + kSame);
            EXPECT_GE(pack->throttle.back(), to - kSame);
            for (const double end : craft.flight.cruise_throttle)
                EXPECT_TRUE(std::any_of(pack->throttle.begin(), pack->throttle.end(),
                                        [end](double u) { return std::abs(u - end) < kSame; }))
                    << end;
        }
    }
}

// Oracle: each throttle of each pack flown alone.
TEST(FlightSweep, ServesBothPacks)
{
    for (const char* name : {"reedbed", "quarry", "saltmarsh"}) {
        SCOPED_TRACE(name);
        const Craft craft = test::sampleCraft(name);
        EXPECT_FALSE(flightOf(craft, Throttles::All).emptySweep);
        expectBothPacks(craft);
    }
}

// Oracle: each throttle of each pack flown alone; a pack whose resistance is so large that the last
// tenths of the throttle slow the rotors.
TEST(FlightSweep, ServesAPackThatSags)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.drive.battery.resistance_mohm *= 40;
    const ExcitedAirframe empty = atEmptyPack(makeExcitedAirframe(craft));
    ASSERT_LT(rotorSpeed(empty.drive, 1.0, empty.fullVoltage),
              rotorSpeed(empty.drive, 0.9, empty.fullVoltage));
    EXPECT_TRUE(flightOf(craft, Throttles::All).emptySweep);
    expectBothPacks(craft);
}

// Oracle: definition; a window that reaches full throttle, and one below where the rotors start.
TEST(FlightSweep, ReachesTheEndsOfTheThrottle)
{
    Craft craft = test::sampleCraft("quarry");
    craft.flight.cruise_throttle = {0.4, 1.0};
    expectBothPacks(craft);
    craft.flight.cruise_throttle = {0.002, 0.4};
    const BayAtRest bay = bayOf(craft);
    const FilmedFlight flight(flightOf(craft, Throttles::Cruise), makeCamera(craft.camera));
    const FlightWobble wobble = wobbleOf(flight, bay);
    EXPECT_EQ(wobble.full.wobble_px.front(), 0);
    EXPECT_TRUE(cruiseFigures(CruiseWindow(craft.flight), wobble));
}

// Oracle: definition; beside a large peak of one pack the other's smaller one is as true.
TEST(FlightSweep, LooksForPeaksOfEachPack)
{
    const Craft craft = test::sampleCraft("reedbed");
    const BayAtRest bay = bayOf(craft);
    const FilmedFlight flight(flightOf(craft, Throttles::Cruise), makeCamera(craft.camera));
    const auto cruise = cruiseFigures(CruiseWindow(craft.flight), wobbleOf(flight, bay)).value();
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    for (const auto& [pack, figures] :
         {std::pair(excited, cruise.full), std::pair(atEmptyPack(excited), cruise.empty)}) {
        std::vector<double> dense;
        const auto [from, to] = craft.flight.cruise_throttle;
        for (int k = 0; k <= 6000; ++k)
            dense.push_back(std::lerp(from, to, k / 6000.0));
        const FilmedExcitation alone(prepareExcitation(pack, dense, true),
                                     makeCamera(craft.camera));
        std::vector<WobblePower> powers(dense.size());
        ASSERT_TRUE(alone.powers(bay.mounted.suspension.bay, bay.pose, bay.K, powers));
        double largest = 0;
        for (const WobblePower& power : powers)
            largest = std::max(largest, power.wobble_px());
        EXPECT_NEAR(figures.worst_px, largest, 0.01 * largest);
    }
}

// Oracle: definition, by hand.
TEST(HighestNear, LosesNoPeak)
{
    const std::vector<WobbleAt> curve{{0.1, 1}, {0.2, 2}, {0.24, 9}, {0.3, 3}, {0.5, 1}};
    const std::vector<double> highest = highestNear(curve, {0.05, 0.2, 0.3, 0.4, 0.6});
    EXPECT_EQ(highest[0], 1);
    EXPECT_EQ(highest[1], 9);  // 0.24 is nearer to 0.2 than to 0.3
    EXPECT_EQ(highest[2], 3);
    EXPECT_NEAR(highest[3], 2, 1e-12);
    EXPECT_EQ(highest[4], 1);
}

}  // namespace
}  // namespace stillbay
