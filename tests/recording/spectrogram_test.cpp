// SPDX-License-Identifier: MIT
#include "core/recording/spectrogram.h"

#include "core/recording/spectrum.h"
#include "tests/recording/noise.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

// Oracle: identity. The mean over all columns is Welch's estimate of the same segments (of a record
// that fills its columns evenly), to the float's rounding; a picture of a tenth of the segments and
// a quarter of the bins holds the same power.
TEST(Spectrogram, AveragesToWelch)
{
    const std::vector<double> x = noise(2, 256 + 128 * 399);
    const auto spectrum = welch(x, 500, {256});
    ASSERT_TRUE(spectrum);
    for (const bool isSmall : {false, true}) {
        const auto picture = spectrogram(x, 500, {256, isSmall ? 40U : 400U, isSmall ? 43U : 800U});
        ASSERT_TRUE(picture);
        ASSERT_EQ(picture->time.size(), isSmall ? 40U : 400U);
        ASSERT_EQ(picture->frequency_hz.size(), isSmall ? 43U : 129U);
        EXPECT_EQ(picture->density.size(), picture->time.size() * picture->frequency_hz.size());
        const std::size_t pooled = picture->binsPerRow;
        EXPECT_EQ(pooled, isSmall ? 3U : 1U);
        for (std::size_t row = 0; row < picture->frequency_hz.size(); ++row) {
            double mean = 0, expected = 0;
            for (std::size_t column = 0; column < picture->time.size(); ++column)
                mean += picture->at(column, row) / static_cast<double>(picture->time.size());
            for (std::size_t k = row * pooled; k < (row + 1) * pooled; ++k)
                expected += spectrum->density[k] / static_cast<double>(pooled);
            EXPECT_NEAR(mean, expected, 1e-5 * expected) << row;
        }
    }
}

// Oracle: where the knock was put. The largest keeps it in a picture of 20 columns, at its time;
// the size of the picture does not grow with the record.
TEST(Spectrogram, KeepsAShortKnock)
{
    std::vector<double> x = noise(3, 400000);
    for (std::size_t n = 0; n < 60; ++n)
        x[234000 + n] += 40 * std::sin(0.8 * static_cast<double>(n));
    const auto picture = spectrogram(x, 1000, {128, 20, 30, SpectrogramOptions::Pooling::Largest});
    ASSERT_TRUE(picture);
    EXPECT_LE(picture->density.size(), 600U);
    EXPECT_EQ(picture->time.size(), 20U);
    const auto best = std::max_element(picture->density.begin(), picture->density.end());
    const auto at = static_cast<std::size_t>(best - picture->density.begin());
    EXPECT_NEAR(picture->time[at / picture->frequency_hz.size()], 234, 10.1);
    EXPECT_NEAR(picture->frequency_hz[at % picture->frequency_hz.size()], 127, 20);
}

TEST(Spectrogram, RefusesWhatSaysNothingAndStops)
{
    EXPECT_FALSE(spectrogram(noise(1, 100), 1000, {128}));
    EXPECT_FALSE(spectrogram(std::vector<double>(1000, 2.0), 1000, {128}));
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(spectrogram(noise(1, 1000), 1000, {128}, stop.get_token()));
}

}  // namespace
}  // namespace stillbay
