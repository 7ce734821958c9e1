// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/assess/vibrations.h"
#include "core/base/units.h"
#include "core/calibrate/film_match.h"
#include "core/clip/row_shift_reader.h"
#include "core/craft/craft.h"
#include "core/film/filmed.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace stillbay {
namespace {

constexpr int kFilmWidth = 640, kFilmHeight = 360, kFilmMargin = 24;
constexpr double kGain = 4.0;

// Grey, with details of a few pixels.
std::vector<std::uint32_t> texture(int width, int height)
{
    std::mt19937 random(7);
    std::vector<double> grey(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    for (double& value : grey)
        value = static_cast<double>(random()) / static_cast<double>(std::mt19937::max()) - 0.5;
    for (const std::size_t step : {std::size_t{1}, static_cast<std::size_t>(width)})
        for (int pass = 0; pass < 3; ++pass) {
            std::vector<double> smooth = grey;
            for (std::size_t i = step; i + step < grey.size(); ++i)
                smooth[i] = (grey[i - step] + grey[i] + grey[i + step]) / 3;
            grey = std::move(smooth);
        }
    std::vector<std::uint32_t> pixels;
    for (const double value : grey) {
        const auto level = static_cast<std::uint32_t>(std::clamp(128 + 500 * value, 0.0, 255.0));
        pixels.push_back(level * 0x01010101U);
    }
    return pixels;
}

// The craft's film at a throttle, drawn as the window draws it with its motion enlarged, and read.
FilmReading drawnAndRead(const ThrottlePoint& point, const CameraModel& camera, double gain,
                         int frames)
{
    const int width = kFilmWidth + 2 * kFilmMargin, height = kFilmHeight + 2 * kFilmMargin;
    const auto pixels = texture(width, height);
    const auto vibrations = vibrationsAt(point, camera, Hold::Tubes);
    std::vector<std::uint32_t> canvas(std::size_t{kFilmWidth} * kFilmHeight);
    std::vector<std::uint8_t> luma(canvas.size());
    RowShiftReader reader;
    for (int k = 0; k < frames; ++k) {
        filmFrame({width, height, pixels}, {camera, vibrations, gain, k},
                  {kFilmWidth, kFilmHeight, canvas}, 0, kFilmWidth);
        std::transform(canvas.begin(), canvas.end(), luma.begin(),
                       [](std::uint32_t pixel) { return static_cast<std::uint8_t>(pixel); });
        reader.add(
            {k / camera.frameRate_hz, kFilmWidth, kFilmHeight, luma, static_cast<std::size_t>(k)});
    }
    const auto reading =
        readFilm(reader.finish(), {.readout_s = camera.readout, .exposure_s = camera.exposure});
    EXPECT_TRUE(reading) << english(reading.error().what);
    return reading.value_or(FilmReading{});
}

TEST(AsFilmed, ReadBackGivesTheReportsNumber)
{
    // Oracle: the wobble that the report computes in closed form; the film is drawn row by row and
    // read by its picture alone.
    const auto setup = test::sampleCraft("reedbed");
    const CameraModel camera = makeCamera(setup.camera);
    for (const double throttle : {0.28, 0.32}) {
        const auto assessment = assess(setup, {.throttle = Grid{throttle, throttle, 1.0}}).value();
        const ThrottlePoint& point = *assessment.throttle.begin();
        const double scale = kGain * kFilmWidth / static_cast<double>(setup.camera.width_px);
        const FilmReading reading = drawnAndRead(point, camera, kGain, 45);
        EXPECT_NEAR(reading.wobble_px / (scale * point.wobble_px), 1.0, 0.05);
        ASSERT_FALSE(reading.lines.empty());
        const auto loudest = std::max_element(
            point.orders.begin(), point.orders.end(),
            [](const auto& a, const auto& b) { return a.wobble_px < b.wobble_px; });
        EXPECT_NEAR(reading.lines.front().frequency_hz, loudest->frequency_hz, 0.2);
        EXPECT_NEAR(reading.lines.front().wobble_px / (scale * loudest->wobble_px), 1.0, 0.05);
    }
}

}  // namespace
}  // namespace stillbay
