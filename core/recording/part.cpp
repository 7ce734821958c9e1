// SPDX-License-Identifier: MIT
#include "core/recording/part.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace stillbay {
namespace {

constexpr std::size_t kLeastPart = 16;  // samples

}  // namespace

Result<Recording> partOf(const Recording& recording, std::optional<double> from_s,
                         std::optional<double> to_s)
{
    const auto sampleAt = [&](double time) {
        return static_cast<std::size_t>(std::clamp(std::round(time * recording.rate), 0.0,
                                                   static_cast<double>(recording.samples())));
    };
    const std::size_t from = from_s ? sampleAt(*from_s) : 0;
    const std::size_t to = to_s ? sampleAt(*to_s) : recording.samples();
    if (to < from + kLeastPart)
        return fail(Errc::BadInput,
                    phrase("the chosen part holds fewer than %1 samples", whole(kLeastPart)));
    Recording part{.rate = recording.rate,
                   .start = static_cast<double>(from) / recording.rate,
                   .flaws = recording.flaws};
    for (const Channel& channel : recording.channels) {
        const auto begin = channel.values.begin();
        part.channels.push_back({channel.name, channel.quantity,
                                 std::vector<double>(begin + static_cast<std::ptrdiff_t>(from),
                                                     begin + static_cast<std::ptrdiff_t>(to))});
    }
    return part;
}

}  // namespace stillbay
