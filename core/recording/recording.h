// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <cstddef>
#include <string>
#include <vector>

/// What a sensor or a microphone wrote down, evenly sampled and in SI.
namespace stillbay {

/// What the numbers of a channel are, and the unit in which they are kept.
enum class Quantity {
    Acceleration,  ///< [m/s²]
    AngularRate,   ///< [rad/s]
    Sound,         ///< of full scale, −1 … 1
    Throttle,      ///< 0 … 1, as the stick or the log has it
    RotorSpeed,    ///< [rev/s]
    Other,         ///< as in the file
};

struct Channel {
    std::string name;  ///< as in the file
    Quantity quantity = Quantity::Other;
    std::vector<double> values;

    bool operator==(const Channel&) const = default;
};

/// What is wrong with a recording, or was done to it, at one place.
struct RecordingFlaw {
    enum class Kind {
        Gap,             ///< stamps further apart than they should be
        RepeatedStamp,   ///< a stamp a second time
        BackwardStamp,   ///< a stamp before the one before it
        NotANumber,      ///< a cell that holds no finite number
        MissingCell,     ///< a row that ends too early
        Clipped,         ///< values at the end of the sensor's range
        DroppedSamples,  ///< a value held where the others go on
        RateChanged,     ///< from here on another rate
        Truncated,       ///< the file ends before it should
        Resampled,       ///< stamps were uneven: values are interpolated
    };
    Kind kind = Kind::Gap;
    std::size_t row = 0;    ///< line of the text, or sample of the sound, from 1; 0: the whole
    std::size_t count = 1;  ///< how many such places there are; `row` is the first
    Phrase text;            ///< one plain sentence with the row in it

    bool operator==(const RecordingFlaw&) const = default;
};

/// Channels of one clock.
struct Recording {
    double rate = 0.0;              ///< [Hz]
    double start = 0.0;             ///< [s] of the first sample, on the file's own clock
    std::vector<Channel> channels;  ///< each as long as the others
    std::vector<RecordingFlaw> flaws;

    std::size_t samples() const { return channels.empty() ? 0 : channels.front().values.size(); }
    double duration() const { return rate > 0.0 ? static_cast<double>(samples()) / rate : 0.0; }
    bool operator==(const Recording&) const = default;
};

/// The channel of that name; null: there is none.
const Channel* channelOf(const Recording& recording, const std::string& name);

}  // namespace stillbay
