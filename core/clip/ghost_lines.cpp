// SPDX-License-Identifier: MIT
#include "core/clip/ghost_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace stillbay {
namespace {

constexpr std::array kEvenMultiples{2.0, 4.0, 6.0};
constexpr double kOnBeat = 0.12;           // in 1/T: so near a combination's beat is on it …
constexpr double kSpreads = 4.0;           // … and by so many spreads of both lines
constexpr double kSidebands_hz = 1.6;      // twice what a craft sways with
constexpr double kPairedSidebands_hz = 4;  // where there is one either side
constexpr double kThrice = 0.06;  // of its parent: three blades make true lines there, larger ones
constexpr double kLonely = 0.1;   // … of a sideband without a twin
constexpr double kFaint = 0.2;    // … of sums and differences, and of sidebands
constexpr double kAliasShare = 0.3;      // … of what beats as the parent itself
constexpr std::size_t kMostParents = 3;  // with more, combinations lie everywhere

struct Combination {
    double f_hz = 0.0;
    double parent = 0.0;  // motion of the strongest line in it
    double most = 0.0;    // share of that which a ghost has at most
};

// The motion itself, turned or not [px rms].
double sizeOfMotion(const FilmLine& line, double height_px)
{
    return std::hypot(line.across_px, line.up_px, line.roll_rad * height_px / 2);
}

double beatOf(double f_hz, double rate_hz)
{
    return std::abs(f_hz - rate_hz * std::round(f_hz / rate_hz));
}

// Of odd order, of lines that are no ghosts themselves, the strongest first.
std::vector<Combination> combinationsOf(const std::vector<FilmLine>& parents, double height_px)
{
    std::vector<Combination> all;
    for (std::size_t i = 0; i < parents.size(); ++i) {
        const double a = parents[i].frequency_hz, motion = sizeOfMotion(parents[i], height_px);
        all.push_back({a, motion, kAliasShare});
        all.push_back({3 * a, motion, kThrice});
        for (std::size_t j = i + 1; j < parents.size(); ++j) {
            const double b = parents[j].frequency_hz;
            for (const double f_hz :
                 {2 * a - b, 2 * a + b, 2 * b - a, 2 * b + a, 3 * a - 2 * b, 3 * b - 2 * a})
                all.push_back({std::abs(f_hz), motion, kFaint});
            for (std::size_t k = j + 1; k < parents.size(); ++k) {
                const double c = parents[k].frequency_hz;
                for (const double f_hz : {a + b - c, a - b + c, b + c - a, a + b + c})
                    all.push_back({std::abs(f_hz), motion, kFaint});
            }
        }
    }
    return all;
}

bool hasTwin(const FilmLine& line, const FilmLine& parent, const std::vector<FilmLine>& lines,
             double reach_hz)
{
    const double mirrored_hz = 2 * parent.frequency_hz - line.frequency_hz;
    return std::any_of(lines.begin(), lines.end(), [&](const FilmLine& other) {
        return std::abs(other.frequency_hz - mirrored_hz) < reach_hz;
    });
}

// As rotors make them: once a turn, the blade pass, twice that. A coder's products are of odd
// order, but those of an order with its own double fall there, too.
bool isEvenMultiple(const FilmLine& line, const std::vector<FilmLine>& parents, double reach_hz)
{
    return std::ranges::any_of(parents, [&](const FilmLine& parent) {
        return std::ranges::any_of(kEvenMultiples, [&](double times) {
            return std::abs(line.frequency_hz - times * parent.frequency_hz) < reach_hz;
        });
    });
}

// Its share of the parent; 0: it is none.
double ghostShare(const FilmLine& line, const std::vector<FilmLine>& parents,
                  const std::vector<FilmLine>& lines, double rate_hz, double reach_hz,
                  double height_px)
{
    const double motion = sizeOfMotion(line, height_px);
    double share = 0.0;
    if (isEvenMultiple(line, parents, reach_hz))
        return share;
    for (const Combination& each : combinationsOf(parents, height_px))
        if (motion < each.most * each.parent &&
            std::abs(beatOf(each.f_hz, rate_hz) - beatOf(line.frequency_hz, rate_hz)) < reach_hz)
            share = std::max(share, motion / each.parent);
    for (const FilmLine& parent : parents) {
        const double apart_hz = std::abs(line.frequency_hz - parent.frequency_hz);
        const double parentMotion = sizeOfMotion(parent, height_px);
        if ((motion < kLonely * parentMotion && apart_hz < kSidebands_hz) ||
            (motion < kFaint * parentMotion && apart_hz < kPairedSidebands_hz &&
             hasTwin(line, parent, lines, 4 * reach_hz)))
            share = std::max(share, motion / parentMotion);
    }
    return share;
}

}  // namespace

FilmDistortion takeGhosts(std::vector<FilmLine>& lines, double rate_hz, double width_hz,
                          double height_px)
{
    std::vector<FilmLine> sorted = lines, parents;
    std::ranges::sort(sorted, std::ranges::greater(),
                      [&](const FilmLine& line) { return sizeOfMotion(line, height_px); });
    FilmDistortion distortion;
    std::vector<double> ghosts_hz;
    for (const FilmLine& line : sorted) {
        double spread_hz = line.uncertainty_hz;
        for (const FilmLine& parent : parents)
            spread_hz = std::max(spread_hz, parent.uncertainty_hz);
        const double share = ghostShare(line, parents, sorted, rate_hz,
                                        kOnBeat * width_hz + kSpreads * spread_hz, height_px);
        if (share > 0) {
            ghosts_hz.push_back(line.frequency_hz);
            distortion.share = std::max(distortion.share, share);
            distortion.ghost_px = std::max(distortion.ghost_px, line.wobble_px);
        } else if (parents.size() < kMostParents) {
            parents.push_back(line);
        }
    }
    std::erase_if(lines, [&](const FilmLine& line) {
        return std::ranges::find(ghosts_hz, line.frequency_hz) != ghosts_hz.end();
    });
    return distortion;
}

}  // namespace stillbay
