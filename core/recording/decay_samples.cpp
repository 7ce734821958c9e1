// SPDX-License-Identifier: MIT
#include "core/recording/decay_samples.h"

#include "core/base/linalg.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay {

DecaySamples growingBlocks(const Recording& recording, const std::vector<std::size_t>& channels,
                           const std::vector<double>& noise, const Stretch& stretch, int width,
                           std::size_t each)
{
    DecaySamples samples;
    samples.sampleTime = 1.0 / recording.rate;
    std::vector<std::size_t> first;
    for (std::size_t at = stretch.from; at + static_cast<std::size_t>(width) <= stretch.to;) {
        first.push_back(at);
        samples.width.push_back(width);
        samples.time.push_back((static_cast<double>(at - stretch.from) + 0.5 * (width - 1)) *
                               samples.sampleTime);
        at += static_cast<std::size_t>(width);
        if (first.size() % each == 0)
            width *= 2;
    }
    samples.values.resize(static_cast<Eigen::Index>(first.size()),
                          static_cast<Eigen::Index>(channels.size()));
    for (std::size_t c = 0; c < channels.size(); ++c) {
        const auto& values = recording.channels[channels[c]].values;
        for (std::size_t j = 0; j < first.size(); ++j) {
            double sum = 0.0;
            for (int k = 0; k < samples.width[j]; ++k)
                sum += values[first[j] + static_cast<std::size_t>(k)];
            samples.values(static_cast<Eigen::Index>(j), static_cast<Eigen::Index>(c)) =
                sum / (noise[c] * std::sqrt(static_cast<double>(samples.width[j])));
        }
    }
    return samples;
}

DecaySamples evenBlocks(const Recording& recording, const std::vector<std::size_t>& channels,
                        const std::vector<double>& noise, const Stretch& stretch, int width,
                        std::size_t most)
{
    const Stretch head{stretch.from,
                       std::min(stretch.to, stretch.from + most * static_cast<std::size_t>(width))};
    return growingBlocks(recording, channels, noise, head, width,
                         std::numeric_limits<std::size_t>::max());
}

Complex blockGain(Complex s, int width, double sampleTime)
{
    if (width == 1)
        return 1.0;
    return std::sinh(0.5 * s * (width * sampleTime)) /
           (static_cast<double>(width) * std::sinh(0.5 * s * sampleTime));
}

Complex blockGainSlope(Complex s, int width, double sampleTime)
{
    if (width == 1)
        return 0.0;
    const auto halfCoth = [&](double length) {
        return 0.5 * length / std::tanh(0.5 * s * length);
    };
    return halfCoth(width * sampleTime) - halfCoth(sampleTime);
}

}  // namespace stillbay
