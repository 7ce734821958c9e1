// SPDX-License-Identifier: MIT
#include "core/response/flight_sweep.h"

#include "core/base/check.h"
#include "core/response/wobble_curve.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSame = 1e-10;  // throttles nearer to each other are one

// The packs' throttles at one rotor speed.
struct Packs {
    const DriveModel& drive;
    double fullVoltage, emptyVoltage;

    // The full pack's where the empty one has the speed of `throttle`; it always can.
    double atFull(double throttle) const
    {
        const double speed = rotorSpeed(drive, throttle, emptyVoltage);
        const double same = throttleForSpeed(drive, speed, fullVoltage).value_or(throttle);
        return speed > 0 ? same : same * (1 - kSame);  // just below where the rotors start
    }

    // Whether the full pack can turn as slowly as the empty one at this throttle.
    bool isReached(double throttle) const
    {
        return throttleForSpeed(drive, rotorSpeed(drive, throttle, emptyVoltage), fullVoltage)
            .has_value();
    }

    std::optional<double> atEmpty(double throttle) const
    {
        return throttleForSpeed(drive, rotorSpeed(drive, throttle, fullVoltage), emptyVoltage);
    }

    // Whether the empty pack turns the faster the more the throttle opens, up to here.
    bool rises(double throttle) const
    {
        const double speed = rotorSpeed(drive, throttle, emptyVoltage);
        return speed == 0 || std::abs(throttleForSpeed(drive, speed, emptyVoltage).value_or(0) -
                                      throttle) < 1e-6 * throttle;
    }
};

void insert(std::vector<double>& rising, double throttle)
{
    const auto behind = std::lower_bound(rising.begin(), rising.end(), throttle - kSame);
    if (behind == rising.end() || *behind > throttle + kSame)
        rising.insert(behind, throttle);
}

// From one throttle to another, both ends in.
PointRange within(const std::vector<double>& rising, double from, double to)
{
    const auto first = std::lower_bound(rising.begin(), rising.end(), from - 2 * kSame),
               last = std::upper_bound(rising.begin(), rising.end(), to + 2 * kSame);
    return {static_cast<std::size_t>(first - rising.begin()),
            static_cast<std::size_t>(std::max(first, last) - rising.begin())};
}

// One point more on either side, so that a peak near an end is seen.
PointRange withNeighbours(PointRange range, std::size_t points)
{
    if (range.first == range.last)
        return range;
    return {range.first - std::min<std::size_t>(range.first, 1), std::min(range.last + 1, points)};
}

PointRange together(PointRange a, PointRange b)
{
    if (a.first == a.last || b.first == b.last)
        return a.first == a.last ? b : a;
    return {std::min(a.first, b.first), std::max(a.last, b.last)};
}

// Throttles of one pack: what is asked for, and the part of it that is cruise, if any.
struct Asked {
    double from = 0.0, to = 0.0;
    std::optional<std::pair<double, double>> cruise;

    Asked(const std::vector<double>& rising, const CruiseWindow& window)
        : from(rising.front()), to(rising.back())
    {
        for (const double u : rising)
            if (window.contains(u))
                cruise = {cruise ? cruise->first : u, u};
    }

    // What the full pack shows where the empty one is asked for this.
    Asked atFull(const Packs& packs) const
    {
        Asked full = *this;
        full.from = packs.atFull(from);
        full.to = packs.atFull(to);
        if (cruise)
            full.cruise = {packs.atFull(cruise->first), packs.atFull(cruise->second)};
        return full;
    }
};

// Points of a sweep that one pack has to do with.
struct Span {
    PointRange points, cruise;

    Span(const std::vector<double>& sweep, const Asked& asked, Throttles throttles)
    {
        if (asked.cruise)
            cruise = within(sweep, asked.cruise->first, asked.cruise->second);
        points = throttles == Throttles::All ? within(sweep, asked.from, asked.to)
                                             : withNeighbours(cruise, sweep.size());
    }

    void moveDown(std::size_t by)
    {
        for (PointRange* range : {&points, &cruise})
            *range = range->first == range->last ? PointRange{}
                                                 : PointRange{range->first - by, range->last - by};
    }
};

std::vector<double> part(const std::vector<double>& values, PointRange range)
{
    const auto at = [&values](std::size_t i) {
        return values.begin() + static_cast<std::ptrdiff_t>(i);
    };
    return {at(range.first), at(range.last)};
}

// As far as this pack reaches.
std::vector<double> atEmpty(const Packs& packs, const std::vector<double>& full)
{
    std::vector<double> empty;
    for (const double u : full) {
        const auto throttle = packs.atEmpty(u);
        if (!throttle)
            break;
        empty.push_back(*throttle);
    }
    return empty;
}

// A pack's part of a sweep. @param throttleOf of the pack, from the sweep's; none out of its reach
template <class ThrottleOf>
PackWobble partOf(const WobbleSweep& sweep, const PackPoints& pack, const ThrottleOf& throttleOf)
{
    PackWobble part{pack.throttle, {}, {}};
    const auto first = sweep.wobble_px.begin() + static_cast<std::ptrdiff_t>(pack.first);
    part.wobble_px.assign(first, first + static_cast<std::ptrdiff_t>(pack.throttle.size()));
    for (const WobbleAt& peak : sweep.peaks) {
        const std::optional<double> throttle = throttleOf(peak.throttle);
        if (throttle && !pack.throttle.empty() && *throttle >= pack.throttle.front() &&
            *throttle <= pack.throttle.back())
            part.peaks.push_back({*throttle, peak.wobble_px});
    }
    return part;
}

}  // namespace

FlightExcitation prepareFlight(const ExcitedAirframe& craft, const Flight& flight,
                               const std::vector<double>& asked, Throttles throttles, bool flexible)
{
    check(!asked.empty(), "flight: at least one throttle");
    const Packs packs{craft.drive, craft.fullVoltage, craft.emptyVoltage};
    const CruiseWindow window(flight);
    std::vector<double> coarse = window.withEnds(asked);
    const Asked full(coarse, window);
    const bool isShared = packs.rises(full.to) && packs.isReached(full.from);
    const Asked empty = isShared ? full.atFull(packs) : full;
    insert(coarse, empty.from);
    insert(coarse, empty.to);
    if (empty.cruise) {
        insert(coarse, empty.cruise->first);
        insert(coarse, empty.cruise->second);
    }
    for (const auto& pair : craft.drive.throttleCurve)  // where the speed has a kink
        if (pair[0] > coarse.front() && pair[0] < coarse.back())
            insert(coarse, pair[0]);
    const std::vector<double> fine = fineThrottles(craft, coarse, flexible);
    Span ofFull(fine, full, throttles), ofEmpty(fine, empty, throttles);
    const PointRange swept = together(ofFull.points, ofEmpty.points);
    const std::vector<double> sweep = part(fine, swept);
    ofFull.moveDown(swept.first);
    ofEmpty.moveDown(swept.first);

    FlightExcitation result{prepareExcitation(craft, sweep, flexible),
                            {},
                            {ofFull.points.first, part(sweep, ofFull.points), ofFull.cruise},
                            {ofEmpty.points.first, part(sweep, ofEmpty.points), ofEmpty.cruise}};
    if (isShared)
        result.empty.throttle = atEmpty(packs, result.empty.throttle);
    else
        result.emptySweep = prepareExcitation(atEmptyPack(craft), sweep, flexible);
    return result;
}

std::optional<CruiseFigures> cruiseFigures(const CruiseWindow& window, const FlightWobble& flight)
{
    const auto over = [&window](const PackWobble& pack) {
        return window.over(pack.throttle, pack.wobble_px, pack.peaks);
    };
    const auto full = over(flight.full), empty = over(flight.empty);
    if (!full || !empty)
        return {};
    return CruiseFigures{*full, *empty};
}

FilmedFlight::FilmedFlight(const FlightExcitation& flight, const CameraModel& camera)
    : m_drive(flight.sweep.craft.drive),
      m_fullVoltage(flight.sweep.craft.fullVoltage),
      m_emptyVoltage(flight.sweep.craft.emptyVoltage),
      m_sweep(flight.sweep, camera),
      m_full(flight.full),
      m_empty(flight.empty)
{
    if (flight.emptySweep)
        m_emptySweep.emplace(*flight.emptySweep, camera);
}

Result<FlightWobble> FilmedFlight::sweep(const MassFigures& bay, const Pose& rest,
                                         const Matrix6cd& K, double unbalance,
                                         double least_px) const
{
    const auto asIs = [](double throttle) {
        return std::optional(throttle);
    };
    const std::array both{m_full.cruise, m_empty.cruise};
    const auto sweep = m_sweep.sweep(bay, rest, K, {both, unbalance, least_px});
    if (!sweep)
        return tl::unexpected(sweep.error());
    PackWobble full = partOf(*sweep, m_full, asIs);
    if (!m_emptySweep) {
        const Packs packs{m_drive, m_fullVoltage, m_emptyVoltage};
        return FlightWobble{std::move(full), partOf(*sweep, m_empty, [&packs](double throttle) {
                                return packs.atEmpty(throttle);
                            })};
    }
    const auto own = m_emptySweep->sweep(bay, rest, K, {{&m_empty.cruise, 1}, unbalance, least_px});
    if (!own)
        return tl::unexpected(own.error());
    return FlightWobble{std::move(full), partOf(*own, m_empty, asIs)};
}

}  // namespace stillbay
