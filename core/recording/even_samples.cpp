// SPDX-License-Identifier: MIT
#include "core/recording/even_samples.h"

#include "core/base/progress.h"
#include "core/recording/resample_uneven.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace stillbay {
namespace {

void dropRows(std::vector<double>& values, const std::vector<std::size_t>& dropped)
{
    std::size_t kept = dropped.front(), next = 0;
    for (std::size_t i = kept; i < values.size(); ++i)
        if (next < dropped.size() && dropped[next] == i)
            ++next;
        else
            values[kept++] = values[i];
    values.resize(kept);
}

// A straight line between the samples beside the stretch.
void bridge(std::vector<double>& values, std::size_t from, std::size_t to)
{
    if (from == 0 || to >= values.size())
        return;
    const double before = values[from - 1], after = values[to];
    const auto length = static_cast<double>(to - from + 1);
    for (std::size_t i = from; i < to; ++i)
        values[i] = before + (after - before) * static_cast<double>(i - from + 1) / length;
}

// Makes room for what is missing, from behind so that nothing is overwritten.
void fillEvenGaps(std::vector<double>& values,
                  const std::vector<std::pair<std::size_t, std::size_t>>& gaps)
{
    std::size_t missing = 0, end = values.size();
    for (const auto& [row, count] : gaps)
        missing += count;
    values.resize(values.size() + missing);
    for (auto gap = gaps.rbegin(); gap != gaps.rend(); ++gap) {
        const auto& [row, count] = *gap;
        const auto at = [&values](std::size_t i) {
            return values.begin() + static_cast<std::ptrdiff_t>(i);
        };
        std::move_backward(at(row), at(end), at(end + missing));
        missing -= count;
        end = row;
    }
    std::size_t shift = 0;  // the lines are drawn once all is in place
    for (const auto& [row, count] : gaps) {
        bridge(values, row + shift, row + shift + count);
        shift += count;
    }
}

Result<void> resampleStretches(std::vector<std::vector<double>>& channels,
                               const std::vector<double>& stamps, const TimeBase& base,
                               const std::stop_token& stop)
{
    const double start = stamps.front();
    const auto index = [&](double time) {
        return (time - start) * base.rate;
    };
    const auto total = static_cast<std::size_t>(std::floor(index(stamps.back()) + 1e-6)) + 1;
    std::vector<std::vector<double>> even;
    for (std::size_t c = 0; c < channels.size(); ++c) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        even.emplace_back(total);
    }
    std::size_t from = 0, filledTo = 0;
    for (std::size_t k = 0; k <= base.gaps.size(); ++k) {
        const std::size_t to = k < base.gaps.size() ? base.gaps[k].first : stamps.size();
        const auto begin = std::min(
            static_cast<std::size_t>(std::max(0.0, std::ceil(index(stamps[from]) - 1e-6))), total);
        const auto end = std::clamp(
            static_cast<std::size_t>(std::floor(index(stamps[to - 1]) + 1e-6)) + 1, begin, total);
        const EvenTimes times{start + static_cast<double>(begin) / base.rate, base.rate,
                              end - begin};
        std::vector<std::span<const double>> parts;
        for (const std::vector<double>& values : channels)
            parts.push_back(std::span(values).subspan(from, to - from));
        if (to - from >= 2 && end > begin) {
            auto part =
                resampleUneven(std::span(stamps).subspan(from, to - from), parts, times, stop);
            if (!part)
                return tl::unexpected(part.error());
            for (std::size_t c = 0; c < channels.size(); ++c)
                std::copy((*part)[c].begin(), (*part)[c].end(),
                          even[c].begin() + static_cast<std::ptrdiff_t>(begin));
        } else {
            for (std::size_t c = 0; c < channels.size(); ++c)
                std::fill_n(even[c].begin() + static_cast<std::ptrdiff_t>(begin), end - begin,
                            parts[c].front());
        }
        if (end > begin) {
            for (std::vector<double>& values : even)
                bridge(values, filledTo, begin);
            filledTo = end;
        }
        from = to;
    }
    channels = std::move(even);
    return {};
}

}  // namespace

Result<void> makeEven(std::vector<std::vector<double>>& channels, const std::vector<double>& stamps,
                      const TimeBase& base, const std::stop_token& stop)
{
    for (std::vector<double>& values : channels) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (!base.dropped.empty())
            dropRows(values, base.dropped);
        if (base.isEven && !base.gaps.empty())
            fillEvenGaps(values, base.gaps);
    }
    if (!base.isEven)
        return resampleStretches(channels, stamps, base, stop);
    return {};
}

}  // namespace stillbay
