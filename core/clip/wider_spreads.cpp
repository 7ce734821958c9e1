// SPDX-License-Identifier: MIT
#include "core/clip/wider_spreads.h"

#include "core/base/quantile.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

namespace stillbay {

namespace {

constexpr std::array<double, 5> kFourth{1.0, -4.0, 6.0, -4.0, 1.0};
constexpr double kMedianOfSquare = 0.45494;  // of a standard normal number

constexpr double kByChance = 1.3;  // a film's excess without any coder is less

struct Part {
    double BandShift::*value;
    double BandShift::*spread;
};

constexpr std::array<Part, 3> kParts{{{&BandShift::across_px, &BandShift::acrossSpread_px},
                                      {&BandShift::up_px, &BandShift::upSpread_px},
                                      {&BandShift::roll_rad, &BandShift::rollSpread_rad}}};

// Squares of one frame's fourth differences, over what its spreads allow.
std::vector<double> squaresOf(std::span<const BandShift> frame, const Part& part, double bandHeight)
{
    std::vector<double> squares;
    for (std::size_t k = 0; k + kFourth.size() <= frame.size(); ++k) {
        const auto bands = frame.subspan(k, kFourth.size());
        if (bands.back().row - bands.front().row > 4.5 * bandHeight)
            continue;  // a band between them is missing
        double difference = 0.0, variance = 0.0;
        for (std::size_t i = 0; i < kFourth.size(); ++i) {
            difference += kFourth[i] * bands[i].*part.value;
            variance += std::pow(kFourth[i] * bands[i].*part.spread, 2);
        }
        if (variance > 0.0)
            squares.push_back(difference * difference / variance);
    }
    return squares;
}

// How many times larger than allowed such squares are.
double excessOf(std::vector<double> squares)
{
    return squares.empty() ? 1.0 : median(std::move(squares)) / kMedianOfSquare;
}

}  // namespace

void widenSpreads(RowShifts& shifts)
{
    std::vector<std::span<BandShift>> frames;
    for (std::size_t first = 0, end = 0; first < shifts.bands.size(); first = end) {
        while (end < shifts.bands.size() && shifts.bands[end].frame == shifts.bands[first].frame)
            ++end;
        frames.push_back(std::span(shifts.bands).subspan(first, end - first));
    }
    for (const Part& part : kParts) {
        std::vector<double> all, excess;
        for (const std::span<BandShift> frame : frames) {
            std::vector<double> squares = squaresOf(frame, part, shifts.bandHeight);
            all.insert(all.end(), squares.begin(), squares.end());
            excess.push_back(excessOf(std::move(squares)));
        }
        const double usual = excessOf(std::move(all));
        for (std::size_t k = 0; k < frames.size(); ++k) {
            // Coded films differ from frame to frame; but one frame has few differences.
            const double own = usual > kByChance ? 0.5 * (excess[k] + usual) : usual;
            const double widening = std::sqrt(std::max(1.0, own));
            for (BandShift& band : frames[k])
                band.*part.spread *= widening;
        }
    }
}

}  // namespace stillbay
