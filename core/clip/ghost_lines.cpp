// SPDX-License-Identifier: MIT
#include "core/clip/ghost_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <initializer_list>

namespace stillbay {
namespace {

constexpr std::array kEvenMultiples{2.0, 4.0, 6.0};
constexpr double kOnBeat = 0.12;           // in 1/T: so near a combination's beat is on it …
constexpr double kSpreads = 4.0;           // … and by so many spreads of both
constexpr double kUnsure = 0.02;           // of the rate: a spread that puts it nearly anywhere
constexpr double kSidebands_hz = 1.6;      // twice what a craft sways with
constexpr double kPairedSidebands_hz = 4;  // where there is one either side …
constexpr double kTwinReach = 4.0;         // … by so many times what else is on a beat
constexpr double kThrice = 0.06;  // of its parent: three blades make true lines there, larger ones
constexpr double kLonely = 0.1;   // … of a sideband without a twin
constexpr double kFaint = 0.2;    // … of sums and differences, and of sidebands
constexpr double kAliasShare = 0.3;      // … of what beats as the parent itself
constexpr std::size_t kMostParents = 3;  // with more, combinations lie everywhere

struct Combination {
    double f_hz = 0.0;
    double spread_hz = 0.0;
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

struct Term {
    double times;
    const FilmLine& line;
};

// Sum of lines, the strongest first.
Combination sumOf(std::initializer_list<Term> terms, double most, double height_px)
{
    Combination sum{.parent = sizeOfMotion(terms.begin()->line, height_px), .most = most};
    for (const Term& term : terms) {
        sum.f_hz += term.times * term.line.frequency_hz;
        sum.spread_hz = std::hypot(sum.spread_hz, term.times * term.line.uncertainty_hz);
    }
    sum.f_hz = std::abs(sum.f_hz);
    return sum;
}

// Of odd order, of lines that are no ghosts themselves, the strongest first; what lies nearly
// anywhere left out.
std::vector<Combination> combinationsOf(const std::vector<FilmLine>& parents, double rate_hz,
                                        double height_px)
{
    constexpr std::array<std::array<double, 2>, 6> kTwo{
        {{2, -1}, {2, 1}, {-1, 2}, {1, 2}, {3, -2}, {-2, 3}}};
    constexpr std::array<std::array<double, 3>, 4> kThree{
        {{1, 1, -1}, {1, -1, 1}, {-1, 1, 1}, {1, 1, 1}}};
    std::vector<Combination> all;
    for (std::size_t i = 0; i < parents.size(); ++i) {
        const FilmLine& a = parents[i];
        all.push_back(sumOf({{1, a}}, kAliasShare, height_px));
        all.push_back(sumOf({{3, a}}, kThrice, height_px));
        for (std::size_t j = i + 1; j < parents.size(); ++j) {
            const FilmLine& b = parents[j];
            for (const auto& times : kTwo)
                all.push_back(sumOf({{times[0], a}, {times[1], b}}, kFaint, height_px));
            for (std::size_t k = j + 1; k < parents.size(); ++k)
                for (const auto& times : kThree)
                    all.push_back(sumOf({{times[0], a}, {times[1], b}, {times[2], parents[k]}},
                                        kFaint, height_px));
        }
    }
    std::erase_if(all, [&](const Combination& sum) { return sum.spread_hz > kUnsure * rate_hz; });
    return all;
}

double reachOf(double width_hz, double spread_hz, double otherSpread_hz)
{
    return kOnBeat * width_hz + kSpreads * std::hypot(spread_hz, otherSpread_hz);
}

bool hasTwin(const FilmLine& line, const FilmLine& parent, const std::vector<FilmLine>& lines,
             double width_hz)
{
    const double mirrored_hz = 2 * parent.frequency_hz - line.frequency_hz;
    const double spread_hz = std::hypot(2 * parent.uncertainty_hz, line.uncertainty_hz);
    return std::any_of(lines.begin(), lines.end(), [&](const FilmLine& other) {
        return std::abs(other.frequency_hz - mirrored_hz) <
               kTwinReach * reachOf(width_hz, spread_hz, other.uncertainty_hz);
    });
}

// As rotors make them: once a turn, the blade pass, twice that. A coder's products are of odd
// order, but those of an order with its own double fall there, too.
bool isEvenMultiple(const FilmLine& line, const std::vector<FilmLine>& parents, double width_hz)
{
    return std::ranges::any_of(parents, [&](const FilmLine& parent) {
        return std::ranges::any_of(kEvenMultiples, [&](double times) {
            return std::abs(line.frequency_hz - times * parent.frequency_hz) <
                   reachOf(width_hz, line.uncertainty_hz, times * parent.uncertainty_hz);
        });
    });
}

// Its share of the parent; 0: it is none.
double ghostShare(const FilmLine& line, const std::vector<FilmLine>& parents,
                  const std::vector<FilmLine>& lines, double rate_hz, double width_hz,
                  double height_px)
{
    const double motion = sizeOfMotion(line, height_px);
    double share = 0.0;
    if (isEvenMultiple(line, parents, width_hz))
        return share;
    for (const Combination& each : combinationsOf(parents, rate_hz, height_px))
        if (motion < each.most * each.parent &&
            std::abs(beatOf(each.f_hz, rate_hz) - beatOf(line.frequency_hz, rate_hz)) <
                reachOf(width_hz, each.spread_hz, line.uncertainty_hz))
            share = std::max(share, motion / each.parent);
    for (const FilmLine& parent : parents) {
        const double apart_hz = std::abs(line.frequency_hz - parent.frequency_hz);
        const double parentMotion = sizeOfMotion(parent, height_px);
        if ((motion < kLonely * parentMotion && apart_hz < kSidebands_hz) ||
            (motion < kFaint * parentMotion && apart_hz < kPairedSidebands_hz &&
             hasTwin(line, parent, lines, width_hz)))
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
        const double share = ghostShare(line, parents, sorted, rate_hz, width_hz, height_px);
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
