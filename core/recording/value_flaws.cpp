// SPDX-License-Identifier: MIT
#include "core/recording/value_flaws.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {
namespace {

constexpr std::size_t kFewest = 3;      // clipped values; one or two are peaks
constexpr double kSeldom = 0.01;        // share of equal neighbours inside the range
constexpr std::size_t kClippedRun = 2;  // samples at the end of the range in a row
constexpr double kSteepShare = 0.02;    // of the range: how far a run's neighbour is away at least
constexpr std::size_t kHeldRun = 4;     // samples
constexpr double kMostEqual = 0.1;      // share of equal neighbours in a signal that lives
constexpr double kLikelyOnce = 1e-3;    // a run that chance makes this seldom is none of its making

/// Equal values in a row.
struct EqualRun {
    std::size_t from, to;
};

Phrase saysClipped(const std::string& name, std::size_t row, std::size_t count)
{
    return phrase("%1 is at the end of its range from line or sample %2 on (values like it: %3)",
                  name, whole(row), whole(count));
}

Phrase saysHeld(const std::string& name, std::size_t row, std::size_t count)
{
    return phrase(
        "%1 stands still from line or sample %2 on, as if samples were lost (values "
        "like it: %3)",
        name, whole(row), whole(count));
}

/// Values of which some are equal to the one before.
struct Repeats {
    std::size_t from, to;
};

/// What one walk over the values finds.
struct Survey {
    double least, most;
    std::size_t equal = 0;           // neighbours
    std::vector<Repeats> stretches;  // where they are
};

Survey survey(std::span<const double> values, const std::stop_token& stop)
{
    constexpr std::size_t kLookedAtOnce = 1024;
    // Two of each, so that one need not wait for the other.
    std::array<double, 2> least{values[0], values[0]}, most = least;
    Survey found{};
    for (std::size_t from = 1; from < values.size(); from += kLookedAtOnce) {
        if (stop.stop_requested())
            break;
        const std::size_t to = std::min(from + kLookedAtOnce, values.size());
        std::size_t equal = 0;
        const auto look = [&](std::size_t lane, std::size_t i) {
            const double value = values[i];
            least[lane] = value < least[lane] ? value : least[lane];
            most[lane] = value > most[lane] ? value : most[lane];
            equal += value == values[i - 1] ? 1U : 0U;
        };
        std::size_t i = from;
        for (; i + 1 < to; i += 2) {
            look(0, i);
            look(1, i + 1);
        }
        if (i < to)
            look(0, i);
        if (equal == 0)
            continue;
        found.equal += equal;
        if (!found.stretches.empty() && found.stretches.back().to == from)
            found.stretches.back().to = to;
        else
            found.stretches.push_back({from, to});
    }
    found.least = std::min(least[0], least[1]);
    found.most = std::max(most[0], most[1]);
    return found;
}

// Calls with each run of at least two.
template <class Call>
void forRuns(std::span<const double> values, const std::vector<Repeats>& stretches,
             const std::stop_token& stop, Call&& call)
{
    for (const Repeats& stretch : stretches)
        for (std::size_t i = stretch.from - 1; i < stretch.to && !stop.stop_requested();) {
            std::size_t end = i + 1;
            while (end < stretch.to && values[end] == values[i])
                ++end;
            if (end - i >= 2)
                call(EqualRun{i, end});
            i = end;
        }
}

bool isRecordedSignal(Quantity quantity)
{
    return quantity != Quantity::Throttle && quantity != Quantity::RotorSpeed;
}

}  // namespace

std::vector<RecordingFlaw> valueFlaws(const std::string& name, std::span<const double> values,
                                      Quantity quantity,
                                      const std::function<std::size_t(std::size_t)>& rowOf,
                                      const std::stop_token& stop)
{
    std::vector<RecordingFlaw> flaws;
    if (values.size() < 2 * kHeldRun || !isRecordedSignal(quantity))
        return flaws;
    const Survey found = survey(values, stop);
    const double least = found.least, most = found.most;
    const double range = most - least;
    if (!(range > 0.0) || stop.stop_requested())
        return flaws;
    std::size_t inside = 0;
    forRuns(values, found.stretches, stop, [&](const EqualRun& run) {
        const double value = values[run.from];
        inside += value != least && value != most ? run.to - run.from - 1 : 0;
    });
    // Where values of the range seldom repeat, two at its end are no chance.
    const bool isFine = static_cast<double>(inside) < kSeldom * static_cast<double>(values.size());
    const std::size_t clippedRun = isFine ? kClippedRun : kClippedRun + 1;
    const double share = static_cast<double>(found.equal) / static_cast<double>(values.size() - 1);
    const double chance = std::log(kLikelyOnce / static_cast<double>(values.size()));
    const std::size_t heldRun = std::max<std::size_t>(
        kHeldRun, share > 0.0
                      ? static_cast<std::size_t>(chance / std::log(std::min(share, kMostEqual))) + 1
                      : 0);

    std::size_t clipped = 0, clippedFrom = 0, held = 0, heldFrom = 0;
    forRuns(values, found.stretches, stop, [&](const EqualRun& run) {
        const double value = values[run.from];
        const auto isSteep = [&](std::size_t neighbour) {
            return std::abs(values[neighbour] - value) > kSteepShare * range;
        };
        const bool isAtEnd = value == least || value == most;
        const std::size_t count = run.to - run.from;
        if (isAtEnd && count >= clippedRun &&
            ((run.from > 0 && isSteep(run.from - 1)) ||
             (run.to < values.size() && isSteep(run.to)))) {
            clippedFrom = clipped == 0 ? run.from : clippedFrom;
            clipped += count;
        } else if (!isAtEnd && share <= kMostEqual && count >= heldRun) {
            heldFrom = held == 0 ? run.from : heldFrom;
            held += count - 1;
        }
    });
    if (clipped >= kFewest)
        flaws.push_back({RecordingFlaw::Kind::Clipped, rowOf(clippedFrom), clipped,
                         saysClipped(name, rowOf(clippedFrom), clipped)});
    if (held > 0)
        flaws.push_back({RecordingFlaw::Kind::DroppedSamples, rowOf(heldFrom), held,
                         saysHeld(name, rowOf(heldFrom), held)});
    return flaws;
}

}  // namespace stillbay
