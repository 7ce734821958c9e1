// SPDX-License-Identifier: MIT
#include "core/recording/spectrum.h"

#include "core/recording/segment_power.h"
#include "core/recording/segments.h"
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr std::size_t kLobe = 2;  // bins either side of a tone under a Hann window

bool isSummit(const std::vector<double>& density, std::size_t k)
{
    for (std::size_t j = k - kLobe; j <= k + kLobe && j < density.size(); ++j)
        if (density[j] > density[k] || (density[j] == density[k] && j < k))
            return false;
    return density[k] > 0;
}

SpectrumPeak peakAt(const Spectrum& spectrum, std::size_t k)
{
    const std::vector<double>& density = spectrum.density;
    const double df = spectrum.resolution_hz();
    double offset = 0, power = 0;
    if (k + 1 < density.size() && density[k - 1] > 0 && density[k + 1] > 0) {
        const double left = std::log(density[k - 1]), right = std::log(density[k + 1]);
        const double curvature = left + right - 2 * std::log(density[k]);
        offset = curvature < 0 ? 0.5 * (left - right) / curvature : 0;
    }
    for (std::size_t j = k - kLobe; j <= k + kLobe && j < density.size(); ++j)
        power += density[j] * df;
    return {spectrum.frequency_hz[k] + offset * df, std::sqrt(power)};
}

}  // namespace

Result<Spectrum> welch(std::span<const double> x, double rate, const WelchOptions& options)
{
    const std::size_t segment = options.segment;
    for (const auto& valid :
         {validateRate(rate), validateSegment(segment), validateSeries(x, segment)})
        if (!valid)
            return tl::unexpected(valid.error());
    Spectrum spectrum;
    spectrum.frequency_hz = binFrequencies_hz(segment, rate);
    spectrum.averages = segmentCount(x.size(), segment);
    spectrum.density = summedPower(x, segment);
    const double scale =
        densityScale(hannWindow(segment), rate) / static_cast<double>(spectrum.averages);
    for (double& density : spectrum.density)
        density *= scale;
    spectrum.density.front() /= 2;
    if (segment % 2 == 0)
        spectrum.density.back() /= 2;
    return spectrum;
}

std::vector<SpectrumPeak> strongestPeaks(const Spectrum& spectrum, std::size_t most)
{
    std::vector<SpectrumPeak> peaks;
    for (std::size_t k = kLobe; k < spectrum.density.size(); ++k)
        if (isSummit(spectrum.density, k))
            peaks.push_back(peakAt(spectrum, k));
    std::stable_sort(peaks.begin(), peaks.end(),
                     [](const auto& a, const auto& b) { return a.rms > b.rms; });
    peaks.resize(std::min(peaks.size(), most));
    return peaks;
}

}  // namespace stillbay
