// SPDX-License-Identifier: MIT
#include "core/recording/spectrum.h"

#include "core/recording/segments.h"
#include "tests/recording/scipy_series.h"

#include <gtest/gtest.h>

#include <limits>
#include <numbers>

namespace stillbay {
namespace {

// Oracle: scipy.signal.welch (tests/reference/spectra.py), of even, odd and no power of two.
TEST(Welch, AgreesWithScipy)
{
    const ScipySeries series = scipySeries();
    for (const std::size_t segment : {256U, 250U, 127U}) {
        const auto spectrum = welch(series.x, kScipyRate, {segment});
        const std::vector<ScipyRow> rows = scipyRows(segment);
        ASSERT_TRUE(spectrum);
        ASSERT_EQ(spectrum->density.size(), rows.size());
        ASSERT_EQ(rows.size(), segment / 2 + 1);
        for (std::size_t k = 0; k < rows.size(); ++k) {
            EXPECT_NEAR(spectrum->frequency_hz[k], rows[k].frequency_hz, 1e-9);
            EXPECT_NEAR(spectrum->density[k], rows[k].density, 1e-9 * rows[k].density) << k;
        }
    }
}

// Oracle: identity, Parseval: the density over all frequencies is the mean square under the
// window, Σ w²(x − mean)² / Σ w², averaged over the segments.
TEST(Welch, HoldsTheMeanSquare)
{
    const std::vector<double> x = scipySeries().x;
    for (const std::size_t segment : {256U, 127U}) {
        const auto spectrum = welch(x, kScipyRate, {segment});
        ASSERT_TRUE(spectrum);
        double power = 0, expected = 0, squares = 0, count = 0;
        for (const double density : spectrum->density)
            power += density * spectrum->resolution_hz();
        const std::vector<double> window = hannWindow(segment);
        for (const double w : window)
            squares += w * w;
        for (std::size_t from = 0; from + segment <= x.size(); from += segment - segment / 2) {
            double mean = 0;
            for (std::size_t n = 0; n < segment; ++n)
                mean += x[from + n] / static_cast<double>(segment);
            for (std::size_t n = 0; n < segment; ++n)
                expected += std::pow(window[n] * (x[from + n] - mean), 2) / squares;
            ++count;
        }
        EXPECT_EQ(count, static_cast<double>(spectrum->averages));
        EXPECT_NEAR(power, expected / count, 1e-12 * power);
    }
}

// Oracle: closed form. A tone of amplitude A has the root mean square A/√2, whatever its place
// between the bins; a Hann window's main lobe holds all but 1e-3 of it, and the parabola through
// the logarithms misses a twentieth of a bin at most (own derivation, brute force over the places).
TEST(Welch, FindsTonesBetweenBins)
{
    for (const double place : {0.0, 0.13, 0.5, 0.77}) {
        const double rate = 800, f_hz = (37 + place) * rate / 512, second_hz = 211.3;
        std::vector<double> x = noise(9, 20000);
        for (std::size_t n = 0; n < x.size(); ++n) {
            const double t = static_cast<double>(n) / rate, turn = 2 * std::numbers::pi;
            x[n] = 1e-3 * x[n] + 5 + 2 * std::sin(turn * f_hz * t + 0.4) +
                   0.5 * std::cos(turn * second_hz * t);
        }
        const auto spectrum = welch(x, rate, {512});
        ASSERT_TRUE(spectrum);
        const std::vector<SpectrumPeak> peaks = strongestPeaks(*spectrum, 2);
        ASSERT_EQ(peaks.size(), 2U);
        EXPECT_NEAR(peaks[0].frequency_hz, f_hz, 0.05 * spectrum->resolution_hz()) << place;
        EXPECT_NEAR(peaks[0].rms, 2 / std::numbers::sqrt2, 2e-3) << place;
        EXPECT_NEAR(peaks[1].frequency_hz, second_hz, 0.05 * spectrum->resolution_hz());
        EXPECT_NEAR(peaks[1].rms, 0.5 / std::numbers::sqrt2, 1e-3);
    }
}

// A series that says nothing is refused in one sentence.
TEST(Welch, RefusesWhatSaysNothing)
{
    const auto said = [](const std::vector<double>& x, double rate = 100,
                         std::size_t segment = 64) {
        const auto spectrum = welch(x, rate, {segment});
        return spectrum ? std::string("taken") : english(spectrum.error().what);
    };
    std::vector<double> x = noise(1, 100);
    EXPECT_EQ(said(x), "taken");
    EXPECT_EQ(said({}), "holds no samples");
    EXPECT_EQ(said(noise(1, 63)), "holds 63 samples, which is too few: at least 64 are needed");
    EXPECT_EQ(said(std::vector<double>(100, 3.5)), "all samples are the same");
    EXPECT_EQ(said(x, 0), "the sample rate must be above 0 Hz");
    EXPECT_EQ(said(x, 100, 3), "a segment of 3 samples is too short: at least 4");
    x[41] = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(said(x), "sample 42 is not a finite number");
    x[41] = -1e200;
    EXPECT_EQ(said(x), "sample 42 is beyond ±1e+100");
}

}  // namespace
}  // namespace stillbay
