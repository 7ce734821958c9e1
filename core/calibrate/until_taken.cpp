// SPDX-License-Identifier: MIT
#include "core/calibrate/until_taken.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillbay {
namespace {

constexpr double kEnergyWindow_s = 0.05;
constexpr std::size_t kGrasp = 4;     // windows in which a hand has taken the bay
constexpr std::size_t kMargin = 2;    // windows before the first still one that it may have touched
constexpr double kStilled = 30.0;     // fall of the energy meanwhile, at least
constexpr double kFallsFaster = 3.0;  // than before, in the logarithm

// Sum of squares about the mean.
double unrest(const double* values, std::size_t count)
{
    double mean = 0.0, squares = 0.0;
    for (std::size_t i = 0; i < count; ++i)
        mean += values[i] / static_cast<double>(count);
    for (std::size_t i = 0; i < count; ++i)
        squares += (values[i] - mean) * (values[i] - mean);
    return squares;
}

// Window for window over all channels, those of a kind weighted alike.
std::vector<double> energiesOf(const Recording& recording, const std::vector<std::size_t>& channels,
                               const Stretch& stretch, std::size_t window)
{
    std::map<Quantity, double> whole;
    for (const std::size_t c : channels)
        whole[recording.channels[c].quantity] +=
            unrest(recording.channels[c].values.data() + stretch.from, stretch.samples());
    std::vector<double> energies(stretch.samples() / window);
    for (const std::size_t c : channels) {
        const Channel& channel = recording.channels[c];
        const double size = std::max(whole[channel.quantity], 1e-300);
        for (std::size_t w = 0; w < energies.size(); ++w)
            energies[w] += unrest(channel.values.data() + stretch.from + w * window, window) / size;
    }
    return energies;
}

// The first window in which the bay is held; their number where it rings to the end.
std::size_t firstHeld(const std::vector<double>& energies)
{
    std::vector<double> later = energies;  // the most from here on
    for (std::size_t w = later.size(); w-- > 1;)
        later[w - 1] = std::max(later[w - 1], later[w]);
    const auto most = [&](std::size_t from) {
        return *std::max_element(energies.begin() + static_cast<long>(from),
                                 energies.begin() + static_cast<long>(from + kGrasp));
    };
    for (std::size_t w = 3 * kGrasp; w < later.size(); ++w) {
        const double before = most(w - kGrasp);
        const double fall = std::log(before / std::max(later[w], 1e-300));
        const double usual = std::log(later.front() / std::max(before, 1e-300)) *
                             static_cast<double>(kGrasp) / static_cast<double>(w - kGrasp);
        if (fall > std::log(kStilled) && fall > kFallsFaster * usual)
            return w;
    }
    return later.size();
}

}  // namespace

std::vector<Stretch> untilTaken(const Recording& recording,
                                const std::vector<std::size_t>& channels,
                                std::vector<Stretch> stretches)
{
    const auto window =
        static_cast<std::size_t>(std::max(8L, std::lround(kEnergyWindow_s * recording.rate)));
    for (Stretch& stretch : stretches) {
        const std::vector<double> energies = energiesOf(recording, channels, stretch, window);
        const std::size_t held = firstHeld(energies);
        if (held < energies.size())
            stretch.to = stretch.from + (held - kMargin) * window;
    }
    return stretches;
}

}  // namespace stillbay
