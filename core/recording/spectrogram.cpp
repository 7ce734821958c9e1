// SPDX-License-Identifier: MIT
#include "core/recording/spectrogram.h"

#include "core/base/check.h"
#include "core/recording/segments.h"
#include "core/recording/series.h"

#include <algorithm>

namespace stillbay {
namespace {

using Pooling = SpectrogramOptions::Pooling;

// One-sided density of one segment, as welch() averages it.
void densityOf(std::span<const Complex> X, double scale, bool isEven, std::vector<double>& density)
{
    for (std::size_t k = 0; k < X.size(); ++k)
        density[k] = scale * std::norm(X[k]);
    density.front() /= 2;
    if (isEven)
        density.back() /= 2;
}

void poolBins(const std::vector<double>& density, std::size_t binsPerRow, Pooling pooling,
              std::vector<double>& rows)
{
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const std::size_t from = row * binsPerRow, to = std::min(from + binsPerRow, density.size());
        double sum = 0, largest = 0;
        for (std::size_t k = from; k < to; ++k) {
            sum += density[k];
            largest = std::max(largest, density[k]);
        }
        rows[row] = pooling == Pooling::Mean ? sum / static_cast<double>(to - from) : largest;
    }
}

std::size_t roundedUp(std::size_t count, std::size_t most)
{
    return (count + most - 1) / most;
}

}  // namespace

Result<Spectrogram> spectrogram(std::span<const double> x, double rate,
                                const SpectrogramOptions& options, const std::stop_token& stop,
                                const Progress& progress)
{
    check(options.mostColumns > 0 && options.mostRows > 0, "spectrogram: no picture");
    const std::size_t segment = options.segment;
    for (const auto& valid :
         {validateRate(rate), validateSegment(segment), validateSeries(x, segment)})
        if (!valid)
            return tl::unexpected(valid.error());
    SegmentTransform transform(segment);
    const std::size_t segments = segmentCount(x.size(), segment);
    Spectrogram result;
    result.pooling = options.pooling;
    result.segmentsPerColumn = roundedUp(segments, options.mostColumns);
    result.binsPerRow = roundedUp(transform.bins(), options.mostRows);
    const std::size_t columns = roundedUp(segments, result.segmentsPerColumn);
    std::vector<double> rows(roundedUp(transform.bins(), result.binsPerRow));
    std::vector<double> density(transform.bins()), column(rows.size());
    const double scale = densityScale(transform.window(), rate);
    const double df = rate / static_cast<double>(segment);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const std::size_t from = row * result.binsPerRow;
        const std::size_t last = std::min(from + result.binsPerRow, transform.bins()) - 1;
        result.frequency_hz.push_back(df * static_cast<double>(from + last) / 2);
    }
    result.density.reserve(columns * rows.size());
    for (std::size_t c = 0; c < columns; ++c) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        const std::size_t first = c * result.segmentsPerColumn;
        const std::size_t end = std::min(first + result.segmentsPerColumn, segments);
        std::fill(column.begin(), column.end(), 0.0);
        for (std::size_t s = first; s < end; ++s) {
            densityOf(transform.of(x, s * transform.step()), scale, segment % 2 == 0, density);
            poolBins(density, result.binsPerRow, options.pooling, rows);
            for (std::size_t row = 0; row < rows.size(); ++row)
                column[row] = options.pooling == Pooling::Mean
                                  ? column[row] + rows[row] / static_cast<double>(end - first)
                                  : std::max(column[row], rows[row]);
        }
        for (const double value : column)
            result.density.push_back(static_cast<float>(value));
        const double middle =
            static_cast<double>((first + end - 1) * transform.step() + segment) / 2;
        result.time.push_back(middle / rate);
        if (progress)
            progress(c + 1, columns);
    }
    return result;
}

}  // namespace stillbay
