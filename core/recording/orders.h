// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"
#include "core/recording/rotor_speed.h"

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

/// What vibrates so many times a turn, whatever the speed.
namespace stillbay {

/// The speed at some times, in a straight line between them. Where it is 0 nothing turns.
struct SpeedOverTime {
    std::vector<double> time;   ///< [s] since the first sample, rising
    std::vector<double> speed;  ///< [rev/s], from 0
};

/// As it was followed; 0 where nothing was heard to turn.
SpeedOverTime speedOf(const RotorSpeedTrack& track);

/// Of a column that holds the speed [rev/s], or the throttle, from which `speedAt` makes it.
SpeedOverTime speedOf(std::span<const double> column, double rate,
                      const std::function<double(double)>& speedAt = {});

struct OrdersOptions {
    std::vector<double> orders{1, 2, 4};  ///< which; each above 0 and at most 60
    std::size_t turns = 16;               ///< of a block: orders 4/turns apart are told apart

    bool operator==(const OrdersOptions&) const = default;
};

/// One order through the record.
struct OrderLine {
    double order = 1.0;
    /// [unit] of the sine that holds the power within 3/turns of the order: of several motors at
    /// slightly different speeds the root of the sum of squares.
    std::vector<double> amplitude;
    /// [rad] of the cosine against the turn angle, which is 0 at the speed's first time; means
    /// something between blocks only where the speed is exact.
    std::vector<double> phase;
};

struct OrderLines {
    std::vector<double> from, to;  ///< [s] of each block since the first sample
    std::vector<double> speed;     ///< [rev/s] of each block, the mean
    std::vector<OrderLine> lines;
    /// Over all blocks: 0, 1/turns, … and the amplitude of a sine in each, by the mean power.
    std::vector<double> order, spectrum;
};

/// Resamples the series to equal angles (Interpolator, with a band that follows the speed) and
/// transforms blocks of whole turns, half overlapped, under a Hann window. Blocks in which nothing
/// turns are left out.
///
/// @error BadInput  what validateSeries() refuses; a speed with no two times, not rising or not
///                  finite; an order out of its range, or beyond half the rate at all speeds; a
///                  block of less than 4 turns; nothing turns long enough for one block.
Result<OrderLines> ordersOf(std::span<const double> x, double rate, const SpeedOverTime& speed,
                            const OrdersOptions& options = {});

/// The mean of a column over each block.
std::vector<double> meanOverBlocks(const OrderLines& lines, std::span<const double> column,
                                   double rate);

/// The orders' amplitudes against what each block was flown at: a throttle or a speed.
struct OrderCurve {
    std::vector<double> at;                      ///< middle of each bin that holds a block
    std::vector<std::size_t> blocks;             ///< so many
    std::vector<std::vector<double>> amplitude;  ///< of each order at each, by the mean power
};

/// @param at    one a block
/// @param step  width of the bins, above 0
OrderCurve orderCurve(const OrderLines& lines, std::span<const double> at, double step);

}  // namespace stillbay
