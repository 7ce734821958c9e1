// SPDX-License-Identifier: MIT
#include "core/recording/transfer.h"

#include "core/base/units.h"
#include "core/recording/segments.h"
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

// Of the strongest bin's power: below it a transform holds nothing but its own rounding.
constexpr double kRounding = 1e-30;

struct CrossSums {
    std::vector<double> xx, yy;
    std::vector<Complex> xy;  // Σ conj(X) Y
};

CrossSums crossSums(std::span<const double> x, std::span<const double> y, SegmentTransform& ofX,
                    SegmentTransform& ofY)
{
    const std::size_t bins = ofX.bins(), segment = ofX.window().size();
    CrossSums sums{std::vector<double>(bins), std::vector<double>(bins),
                   std::vector<Complex>(bins)};
    for (std::size_t from = 0; from + segment <= x.size(); from += ofX.step()) {
        const std::span<const Complex> X = ofX.of(x, from), Y = ofY.of(y, from);
        for (std::size_t k = 0; k < bins; ++k) {
            sums.xx[k] += std::norm(X[k]);
            sums.yy[k] += std::norm(Y[k]);
            sums.xy[k] += std::conj(X[k]) * Y[k];
        }
    }
    return sums;
}

Result<void> validatePair(std::span<const double> x, std::span<const double> y, double rate,
                          std::size_t segment)
{
    for (const auto& valid : {validateRate(rate), validateSegment(segment)})
        if (!valid)
            return valid;
    if (x.size() != y.size())
        return fail(Errc::BadInput, phrase("the input holds %1 samples, the output %2",
                                           whole(x.size()), whole(y.size())));
    const std::size_t fewest = segment + segment - segment / 2;
    for (const bool isInput : {true, false})
        if (auto valid = validateSeries(isInput ? x : y, fewest); !valid) {
            valid.error().where = isInput ? "input" : "output";
            return valid;
        }
    return {};
}

}  // namespace

Result<Transfer> transfer(std::span<const double> x, std::span<const double> y, double rate,
                          const WelchOptions& options)
{
    const std::size_t segment = options.segment;
    if (const auto valid = validatePair(x, y, rate, segment); !valid)
        return tl::unexpected(valid.error());
    SegmentTransform ofX(segment), ofY(segment);
    const CrossSums sums = crossSums(x, y, ofX, ofY);
    Transfer result;
    result.frequency_hz = binFrequencies_hz(segment, rate);
    result.averages = segmentCount(x.size(), segment);
    const double scale = densityScale(ofX.window(), rate) / static_cast<double>(result.averages);
    const double leastInput = kRounding * *std::max_element(sums.xx.begin(), sums.xx.end());
    const double leastOutput = kRounding * *std::max_element(sums.yy.begin(), sums.yy.end());
    for (std::size_t k = 0; k < sums.xx.size(); ++k) {
        const bool standsAlone = k == 0 || 2 * k == segment;
        const double cross = std::abs(sums.xy[k]);
        const bool hasInput = sums.xx[k] > leastInput, hasOutput = sums.yy[k] > leastOutput;
        const Complex h1 = hasInput ? sums.xy[k] / sums.xx[k] : Complex();
        const double both = std::sqrt(sums.xx[k]) * std::sqrt(sums.yy[k]);
        result.magnitude.push_back(std::abs(h1));
        result.phase_deg.push_back(std::arg(h1) / unit::deg);
        result.coherence.push_back(
            hasInput && hasOutput ? std::min(1.0, cross / both * (cross / both)) : 0.0);
        result.input.push_back(sums.xx[k] * scale / (standsAlone ? 2 : 1));
    }
    return result;
}

}  // namespace stillbay
