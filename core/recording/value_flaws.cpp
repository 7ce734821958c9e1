// SPDX-License-Identifier: MIT
#include "core/recording/value_flaws.h"

#include <algorithm>
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

// Calls with each run of at least so many.
template <class Call>
void forRuns(std::span<const double> values, std::size_t least, Call&& call)
{
    for (std::size_t i = 0; i < values.size();) {
        std::size_t end = i + 1;
        while (end < values.size() && values[end] == values[i])
            ++end;
        if (end - i >= least)
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
                                      const std::function<std::size_t(std::size_t)>& rowOf)
{
    std::vector<RecordingFlaw> flaws;
    if (values.size() < 2 * kHeldRun || !isRecordedSignal(quantity))
        return flaws;
    const auto ends = std::minmax_element(values.begin(), values.end());
    const double least = *ends.first, most = *ends.second;
    const double range = most - least;
    if (!(range > 0.0))
        return flaws;
    std::size_t equal = 0, inside = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        if (values[i] == values[i - 1]) {
            ++equal;
            inside += values[i] != least && values[i] != most ? 1U : 0U;
        }
    // Where values of the range seldom repeat, two at its end are no chance.
    const bool isFine = static_cast<double>(inside) < kSeldom * static_cast<double>(values.size());
    const std::size_t clippedRun = isFine ? kClippedRun : kClippedRun + 1;
    const double share = static_cast<double>(equal) / static_cast<double>(values.size() - 1);
    const double chance = std::log(kLikelyOnce / static_cast<double>(values.size()));
    const std::size_t heldRun = std::max<std::size_t>(
        kHeldRun, share > 0.0
                      ? static_cast<std::size_t>(chance / std::log(std::min(share, kMostEqual))) + 1
                      : 0);

    std::size_t clipped = 0, clippedFrom = 0, held = 0, heldFrom = 0;
    forRuns(values, kClippedRun, [&](const EqualRun& run) {
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
