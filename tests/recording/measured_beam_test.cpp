// SPDX-License-Identifier: MIT
#include "core/recording/spectrum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <numbers>
#include <numeric>
#include <string>
#include <vector>

namespace stillbay {
namespace {

// One for each line but comments and heading.
std::vector<double> beamDeflections()
{
    std::ifstream in(STILLBAY_REFERENCE_DIR "/beam_deflections.csv");
    std::vector<double> values;
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line[0] != '#' && line != "deflection")
            values.push_back(std::stod(line));
    return values;
}

// What the NIST Statistical Reference Datasets certify of the series "Lew".
constexpr double kCertifiedDeviation = 277.332168044316;  // over n − 1

// What the NIST/SEMATECH e-Handbook (1.4.2.5, from memory) fits to it: one sine.
constexpr double kPublishedAmplitude = 361.766, kPublishedFrequency = 0.302596;  // per interval

constexpr std::size_t kSegment = 64;

// Oracle: a measured series with published figures. The frequency to half a bin, since the beam
// does not keep its own better than that over the record; the tone is no smaller than the fitted
// sine and no larger than all of the series.
TEST(MeasuredBeam, SwingsAsItsPublishersSay)
{
    const std::vector<double> x = beamDeflections();
    ASSERT_EQ(x.size(), 200u);

    const auto spectrum = welch(x, 1.0, {.segment = kSegment});

    ASSERT_TRUE(spectrum);
    const auto peaks = strongestPeaks(*spectrum, 1);
    ASSERT_EQ(peaks.size(), 1u);
    EXPECT_NEAR(peaks[0].frequency_hz, kPublishedFrequency, 0.5 / kSegment);
    EXPECT_GE(peaks[0].rms, kPublishedAmplitude / std::numbers::sqrt2);
    EXPECT_LE(peaks[0].rms, kCertifiedDeviation);
}

// Oracle: the certified standard deviation; the density adds up to it but for what the window
// leaves out of six segments, of a tone a few per cent.
TEST(MeasuredBeam, HasItsCertifiedPower)
{
    const std::vector<double> x = beamDeflections();
    const auto spectrum = welch(x, 1.0, {.segment = kSegment});
    ASSERT_TRUE(spectrum);

    const double power = std::accumulate(spectrum->density.begin(), spectrum->density.end(), 0.0) *
                         spectrum->resolution_hz();

    EXPECT_NEAR(power, kCertifiedDeviation * kCertifiedDeviation * 199 / 200, 0.03 * power);
}

}  // namespace
}  // namespace stillbay
