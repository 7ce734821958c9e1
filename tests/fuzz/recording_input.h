// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/read_recording.h"

#include <cmath>
#include <cstdlib>
#include <string_view>

/// Any bytes are refused with a sentence, or read into channels of one length and of finite
/// numbers whose flaws are told.
inline void tryRecording(std::string_view bytes)
{
    const auto demand = [](bool holds) {
        if (!holds)
            std::abort();
    };
    auto plan = stillbay::planBytes(bytes);
    if (!plan) {
        demand(!english(plan.error().what).empty());
        return;
    }
    if (!plan->rate_hz)
        plan->rate_hz = 1000.0;
    const auto read = stillbay::readBytes(bytes, *plan);
    if (!read) {
        demand(!english(read.error().what).empty());
        return;
    }
    demand(std::isfinite(read->rate) && std::isfinite(read->start));
    for (const stillbay::Channel& channel : read->channels) {
        demand(channel.values.size() == read->samples());
        for (const double value : channel.values)
            demand(std::isfinite(value));
    }
    for (const stillbay::RecordingFlaw& flaw : read->flaws)
        demand(!english(flaw.text).empty());
}
