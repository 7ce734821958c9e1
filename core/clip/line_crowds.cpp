// SPDX-License-Identifier: MIT
#include "core/clip/line_crowds.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

constexpr std::size_t kCrowd = 3;  // so many lines are one that wanders
constexpr double kSameBeat_hz = 1.0;

// One line for what crowds about a mean: a speed that wanders shows as many lines, few widths
// apart.
FilmLine lineOfCrowd(const std::vector<FilmLine>& crowd, double rate_hz)
{
    FilmLine line = *std::max_element(crowd.begin(), crowd.end(), [](const auto& a, const auto& b) {
        return a.wobble_px < b.wobble_px;
    });
    const double strongest_hz = line.frequency_hz;
    const auto sum = [&](double FilmLine::*of) {
        double square = 0;
        for (const FilmLine& each : crowd)
            square += each.*of * each.*of;
        return std::sqrt(square);
    };
    for (const auto of :
         {&FilmLine::across_px, &FilmLine::up_px, &FilmLine::roll_rad, &FilmLine::wobble_px,
          &FilmLine::wobbleUncertainty_px, &FilmLine::frameShake_px})
        line.*of = sum(of);
    double mean = 0, square = 0;
    for (const FilmLine& each : crowd)
        mean += std::pow(each.wobble_px / line.wobble_px, 2) * each.frequency_hz;
    for (const FilmLine& each : crowd)
        square += std::pow(each.wobble_px / line.wobble_px * (each.frequency_hz - mean), 2);
    line.frequency_hz = mean;
    line.wander_hz = std::sqrt(square);
    // What beats alike moves alike, or against it where it is as far below a multiple of the rate.
    for (double& alias_hz : line.aliases_hz) {
        const double apart = (alias_hz - strongest_hz) / rate_hz;
        const bool isAlike = std::abs(apart - std::round(apart)) * rate_hz < kSameBeat_hz;
        alias_hz += (isAlike ? 1 : -1) * (mean - strongest_hz);
    }
    line.uncertainty_hz = line.wander_hz / std::sqrt(static_cast<double>(crowd.size()));
    return line;
}

}  // namespace

std::vector<FilmLine> withCrowdsMerged(std::vector<FilmLine> lines, double reach_hz, double rate_hz)
{
    std::sort(lines.begin(), lines.end(),
              [](const auto& a, const auto& b) { return a.frequency_hz < b.frequency_hz; });
    std::vector<FilmLine> merges;
    for (std::size_t from = 0; from < lines.size();) {
        std::size_t to = from + 1;
        while (to < lines.size() && lines[to].frequency_hz - lines[to - 1].frequency_hz <= reach_hz)
            ++to;
        const auto first = lines.begin() + static_cast<std::ptrdiff_t>(from);
        const auto last = lines.begin() + static_cast<std::ptrdiff_t>(to);
        if (to - from >= kCrowd)
            merges.push_back(lineOfCrowd({first, last}, rate_hz));
        else
            merges.insert(merges.end(), first, last);
        from = to;
    }
    std::sort(merges.begin(), merges.end(),
              [](const auto& a, const auto& b) { return a.wobble_px > b.wobble_px; });
    return merges;
}

}  // namespace stillbay
