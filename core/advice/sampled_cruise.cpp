// SPDX-License-Identifier: MIT
#include "core/advice/sampled_cruise.h"

#include "core/assess/assess.h"
#include "core/assess/constraints.h"
#include "core/base/units.h"
#include "core/craft/clearance.h"
#include "core/craft/craft.h"
#include "core/response/wobble_powers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kStep = 0.012;  // between neighbouring speeds, of the speed
constexpr std::size_t kMostSteps = 200;
constexpr double kSlowest = 0.05;    // of the highest speed; nothing shakes below
constexpr double kLargeHump = 0.25;  // of the largest power: worth a second look
constexpr double kBorder = 1e-9;     // a speed on the border of a window is inside

/// Wobble power at one rotor speed.
struct SpeedPower {
    double speed = 0.0;  // [rev/s]
    double power_px2 = 0.0;
};

/// The cruise window of one pack.
struct PackWindow {
    double voltage = 0.0;                 // [V]
    double slowest = 0.0, fastest = 0.0;  // [rev/s]

    bool contains(double speed) const
    {
        return speed >= slowest * (1 - kBorder) && speed <= fastest * (1 + kBorder);
    }
};

std::array<PackWindow, 2> packWindows(const ExcitedAirframe& craft, const Flight& flight)
{
    std::array<PackWindow, 2> windows{{{craft.fullVoltage}, {craft.emptyVoltage}}};
    for (PackWindow& window : windows) {
        window.slowest = rotorSpeed(craft.drive, flight.cruise_throttle[0], window.voltage);
        window.fastest = rotorSpeed(craft.drive, flight.cruise_throttle[1], window.voltage);
    }
    return windows;
}

std::optional<BayAtRest> restedBay(const CraftSample& craft)
{
    auto mounted = makeMountedBay(craft.setup);
    if (!mounted)
        return {};
    for (std::size_t i = 0; i < craft.cuts_mm.size(); ++i) {
        const auto own =
            makeTube(craft.setup.tube, craft.setup.mounts, i, craft.cuts_mm[i] * unit::mm, 1.0);
        if (!own)
            return {};
        mounted->suspension.attachments.at(i).ownTube = *own;
    }
    auto bay = letGo(*std::move(mounted));
    if (!bay)
        return {};
    addPullUp(*bay);
    if (!addModes(*bay))
        return {};
    return *std::move(bay);
}

std::vector<double> coarseSpeeds(const std::array<PackWindow, 2>& windows)
{
    const double fastest = windows[0].fastest;
    const double slowest = std::max(windows[1].slowest, kSlowest * fastest);
    const double steps = std::clamp(std::ceil(std::log(fastest / slowest) / kStep), 1.0,
                                    static_cast<double>(kMostSteps));
    std::vector<double> speeds;
    for (int k = 0; k <= static_cast<int>(steps); ++k)
        speeds.push_back(slowest * std::pow(fastest / slowest, k / steps));
    for (const PackWindow& window : windows)
        for (const double end : {window.slowest, window.fastest})
            if (end > slowest && end < fastest)
                speeds.push_back(end);
    std::sort(speeds.begin(), speeds.end());
    return speeds;
}

// Adds the powers at some speeds. @return false where there is no answer.
bool addPowers(const ExcitedAirframe& craft, bool flexible, const CameraModel& camera,
               const BayAtRest& bay, const std::vector<double>& speeds,
               std::vector<SpeedPower>& sweep)
{
    std::vector<double> throttles;
    for (const double speed : speeds)
        if (const auto u = throttleForSpeed(craft.drive, speed, craft.fullVoltage))
            throttles.push_back(*u);
    if (throttles.empty())
        return true;
    const Excitation excitation = prepareExcitation(craft, throttles, flexible);
    std::vector<WobblePower> powers(throttles.size());
    if (!FilmedExcitation(excitation, camera)
             .powers(bay.mounted.suspension.bay, bay.pose, bay.K, powers))
        return false;
    for (std::size_t i = 0; i < powers.size(); ++i) {
        const double power = powers[i].turn + powers[i].blades;
        if (!std::isfinite(power))
            return false;
        sweep.push_back({excitation.points[i].speed, power});
    }
    std::sort(sweep.begin(), sweep.end(),
              [](const SpeedPower& a, const SpeedPower& b) { return a.speed < b.speed; });
    return true;
}

// Where a parabola through the inverse powers of three neighbours is lowest; none where it has no
// lowest point between them.
std::optional<double> lowestInverse(const SpeedPower& a, const SpeedPower& b, const SpeedPower& c)
{
    const double left = a.speed - b.speed, right = c.speed - b.speed;
    const double fall = 1 / a.power_px2 - 1 / b.power_px2, rise = 1 / c.power_px2 - 1 / b.power_px2;
    const double determinant = left * right * (left - right);
    const double curvature = (fall * right - rise * left) / determinant;
    const double slope = (rise * left * left - fall * right * right) / determinant;
    const double at = b.speed - 0.5 * slope / curvature;
    return curvature > 0 && at > a.speed && at < c.speed ? std::optional(at) : std::nullopt;
}

std::vector<double> humpSpeeds(const std::vector<SpeedPower>& sweep)
{
    double largest = 0;
    for (const SpeedPower& point : sweep)
        largest = std::max(largest, point.power_px2);
    std::vector<double> speeds;
    for (std::size_t i = 1; i + 1 < sweep.size(); ++i)
        if (sweep[i].power_px2 > kLargeHump * largest &&
            sweep[i].power_px2 >= sweep[i - 1].power_px2 &&
            sweep[i].power_px2 >= sweep[i + 1].power_px2)
            if (const auto at = lowestInverse(sweep[i - 1], sweep[i], sweep[i + 1]))
                speeds.push_back(*at);
    return speeds;
}

// Where the wobble passes a limit between two neighbours.
double crossing(const SpeedPower& a, const SpeedPower& b, double limit_px)
{
    const double from = std::sqrt(a.power_px2), to = std::sqrt(b.power_px2);
    return a.speed + (b.speed - a.speed) * (limit_px - from) / (to - from);
}

// Speeds between the first and the last that is bad within a window.
std::optional<std::pair<double, double>> badSpeeds(const std::vector<SpeedPower>& sweep,
                                                   const PackWindow& window, double bad_px)
{
    const auto isBad = [&](const SpeedPower& point) {
        return std::sqrt(point.power_px2) >= bad_px;
    };
    std::optional<std::pair<double, double>> bad;
    for (std::size_t i = 0; i < sweep.size(); ++i) {
        if (!isBad(sweep[i]) || !window.contains(sweep[i].speed))
            continue;
        const bool begins = i > 0 && window.contains(sweep[i - 1].speed) && !isBad(sweep[i - 1]);
        const bool ends =
            i + 1 < sweep.size() && window.contains(sweep[i + 1].speed) && !isBad(sweep[i + 1]);
        if (!bad)
            bad.emplace(begins ? crossing(sweep[i - 1], sweep[i], bad_px) : sweep[i].speed, 0);
        bad->second = ends ? crossing(sweep[i], sweep[i + 1], bad_px) : sweep[i].speed;
    }
    return bad;
}

std::optional<BadThrottles> badThrottles(const std::vector<SpeedPower>& sweep,
                                         const std::array<PackWindow, 2>& windows,
                                         const DriveModel& drive, const Setup& setup)
{
    const double low = setup.flight.cruise_throttle[0], high = setup.flight.cruise_throttle[1];
    std::optional<BadThrottles> bad;
    for (const PackWindow& window : windows) {
        const auto speeds = badSpeeds(sweep, window, setup.limits.bad_px);
        if (!speeds)
            continue;
        const auto throttleAt = [&](double speed) {
            const auto u = throttleForSpeed(drive, speed, window.voltage);
            return std::clamp(u.value_or(high), low, high);
        };
        const double from = throttleAt(speeds->first), to = throttleAt(speeds->second);
        bad = bad ? BadThrottles{std::min(bad->from, from), std::max(bad->to, to)}
                  : BadThrottles{from, to};
    }
    return bad;
}

}  // namespace

SampledCruise sampledCruise(const CraftSample& craft, bool flexible)
{
    const Setup& setup = craft.setup;
    const auto bay = restedBay(craft);
    if (!bay)
        return {};
    const ExcitedAirframe excited = makeExcitedAirframe(setup);
    const HoverFigures hover =
        hoverFigures(excited, rigidFigures(excited.airframe), bay->mounted.suspension.bay);
    const ConstraintInputs constraints{
        *bay,   setup.bay,     setup.tube.max_stretch,
        &hover, &setup.flight, propellerClearance(setup.airframe, setup.drive.propeller)};
    SampledCruise result{.flyable = statusOf(constraints, {}, setup.limits).flyable};

    const auto windows = packWindows(excited, setup.flight);
    if (!(windows[0].fastest > 0)) {
        result.worst_px = 0.0;
        return result;
    }
    const CameraModel camera = makeCamera(setup.camera);
    std::vector<SpeedPower> sweep;
    if (!addPowers(excited, flexible, camera, *bay, coarseSpeeds(windows), sweep) ||
        !addPowers(excited, flexible, camera, *bay, humpSpeeds(sweep), sweep))
        return {};
    double worst_px2 = 0;
    for (const SpeedPower& point : sweep)
        if (windows[0].contains(point.speed) || windows[1].contains(point.speed))
            worst_px2 = std::max(worst_px2, point.power_px2);
    result.worst_px = std::sqrt(worst_px2);
    result.bad = badThrottles(sweep, windows, excited.drive, setup);
    return result;
}

}  // namespace stillbay
