// SPDX-License-Identifier: MIT
#include "core/recording/segments.h"

#include "core/base/check.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr std::size_t kShortestSegment = 4;

}  // namespace

double meanOf(std::span<const double> x)
{
    double sums[4] = {};  // side by side: one would wait for itself
    std::size_t n = 0;
    for (; n + 4 <= x.size(); n += 4)
        for (std::size_t lane = 0; lane < 4; ++lane)
            sums[lane] += x[n + lane];
    for (; n < x.size(); ++n)
        sums[0] += x[n];
    return (sums[0] + sums[1] + sums[2] + sums[3]) / static_cast<double>(x.size());
}

std::vector<double> hannWindow(std::size_t length)
{
    std::vector<double> window(length);
    for (std::size_t n = 0; n < length; ++n)
        window[n] = 0.5 - 0.5 * std::cos(2 * std::numbers::pi * static_cast<double>(n) /
                                         static_cast<double>(length));
    return window;
}

std::size_t segmentCount(std::size_t samples, std::size_t segment)
{
    return samples < segment ? 0 : (samples - segment) / (segment - segment / 2) + 1;
}

double densityScale(std::span<const double> window, double rate)
{
    double squares = 0;
    for (const double w : window)
        squares += w * w;
    return 2 / (rate * squares);
}

SegmentTransform::SegmentTransform(std::size_t segment)
    : m_fourier(segment), m_window(hannWindow(segment)), m_cut(segment), m_bins(m_fourier.bins())
{
}

std::span<const Complex> SegmentTransform::of(std::span<const double> x, std::size_t from)
{
    check(from + m_cut.size() <= x.size(), "segments: beyond the end");
    const std::span<const double> part = x.subspan(from, m_cut.size());
    const double mean = meanOf(part);
    for (std::size_t n = 0; n < m_cut.size(); ++n)
        m_cut[n] = (part[n] - mean) * m_window[n];
    m_fourier.forward(m_cut, m_bins);
    return m_bins;
}

std::vector<double> binFrequencies_hz(std::size_t segment, double rate)
{
    std::vector<double> frequency_hz(segment / 2 + 1);
    for (std::size_t k = 0; k < frequency_hz.size(); ++k)
        frequency_hz[k] = static_cast<double>(k) * rate / static_cast<double>(segment);
    return frequency_hz;
}

Result<void> validateSegment(std::size_t segment)
{
    if (segment < kShortestSegment)
        return fail(Errc::BadInput, phrase("a segment of %1 samples is too short: at least %2",
                                           whole(segment), whole(kShortestSegment)));
    return {};
}

}  // namespace stillbay
