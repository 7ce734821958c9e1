// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/read_recording.h"
#include "tests/fuzz/demand.h"

#include <cmath>
#include <string_view>

/// Any bytes are refused with a sentence, or read into channels of one length and of finite
/// numbers whose flaws are told.
inline void tryRecording(std::string_view bytes)
{
    auto plan = stillbay::planBytes(bytes);
    if (!plan) {
        demandReason(english(plan.error().what));
        return;
    }
    if (!plan->rate_hz)
        plan->rate_hz = 1000.0;
    const auto read = stillbay::readBytes(bytes, *plan);
    if (!read) {
        demandReason(english(read.error().what));
        return;
    }
    demand(std::isfinite(read->rate) && read->rate > 0 && std::isfinite(read->start), "a clock");
    for (const stillbay::Channel& channel : read->channels) {
        demand(channel.values.size() == read->samples(), "channels of one length");
        for (const double value : channel.values)
            demand(std::isfinite(value), "finite numbers");
    }
    for (const stillbay::RecordingFlaw& flaw : read->flaws)
        demandReason(english(flaw.text));
}
