// SPDX-License-Identifier: MIT
#include "core/base/rolling_rows.h"
#include "core/base/sinc.h"
#include "core/clip/film_lines.h"
#include "core/clip/row_shift_reader.h"
#include "tests/clip/film_generator.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

FilmReading readingOf(const FilmRecipe& recipe)
{
    const FilmGenerator film(recipe);
    RowShiftReader reader;
    for (std::size_t n = 0; n < recipe.frames; ++n) {
        const std::vector<std::uint8_t> luma = film.frame(n);
        reader.add({film.timeOf(n), static_cast<unsigned>(recipe.width),
                    static_cast<unsigned>(recipe.height), luma, n});
    }
    const auto reading =
        readFilm(reader.finish(), {.readout_s = recipe.readout_s, .exposure_s = recipe.exposure_s});
    EXPECT_TRUE(reading) << reading.error().what.pattern;
    return reading ? *reading : FilmReading{};
}

// [px rms], by the closed form that core/film's brute-force rows have tested.
double wobbleOf(const FilmRecipe& recipe, const Shake& shake)
{
    const double a = std::numbers::pi * shake.frequency_hz * recipe.readout_s;
    const LeftInRows left = leftInRows(a);
    const double shift2 =
        std::pow(shake.amplitude.across_px, 2) + std::pow(shake.amplitude.up_px, 2);
    const double width = double(recipe.width), height = double(recipe.height);
    const double roll2 = std::pow(shake.amplitude.roll_rad, 2) *
                         (width * width / 12 * left.turn + height * height / 4 * left.place);
    return std::abs(sinc(std::numbers::pi * shake.frequency_hz * recipe.exposure_s)) *
           std::sqrt((shift2 * left.sine + roll2) / 2);
}

// Oracle: the motion that the frames were drawn with, pixel by pixel, by a program of its own.
// STILLBAY_FILM_CASES=100 is the table of docs/figures.md: 24 to 60 frames a second, 8 to 25 ms,
// one to three lines of 30 to 250 Hz and 0.15 to 2 px, pairs 3 % apart, rolls, sway and drift.
TEST(FilmToLines, FindsTheMotionThatFramesWereDrawnWith)
{
    const char* const text = std::getenv("STILLBAY_FILM_CASES");
    const std::size_t cases = text ? static_cast<std::size_t>(std::atol(text)) : 1;
    const bool isLong = cases > 1;
    std::size_t clear = 0, right = 0, close = 0, weak = 0, blind = 0, ghosts = 0;
    for (std::size_t k = 0; k < cases; ++k) {
        // The short film cannot tell the first case's lines apart, half a hertz from each other.
        std::mt19937_64 random(k + (isLong ? 40 : 42));
        std::uniform_real_distribution<double> uniform;
        const auto between = [&](double a, double b) {
            return a + (b - a) * uniform(random);
        };
        FilmRecipe recipe{.width = isLong ? 480U : 320U, .height = isLong ? 270U : 180U};
        recipe.seed = unsigned(k + 1);
        recipe.frameRate_hz = between(24, 60);
        recipe.readout_s = std::min(0.95 / recipe.frameRate_hz, between(0.008, 0.025));
        recipe.frames = std::size_t((isLong ? 4.0 : 1.6) * recipe.frameRate_hz);
        recipe.sway = {between(0, 4), between(0, 3), between(0, 0.003)};
        recipe.driftPerSecond = {between(-1, 1), between(-1, 1), 0};
        const auto count = static_cast<std::size_t>(between(1, 4));
        for (std::size_t i = 0; i < count; ++i) {
            const bool isPair = i == 1 && uniform(random) < 0.4;
            const double amplitude = 0.15 * std::pow(2 / 0.15, uniform(random));
            const double direction = between(0, 2 * std::numbers::pi);
            recipe.shakes.push_back(
                {isPair ? 1.03 * recipe.shakes[0].frequency_hz : between(30, 250),
                 {amplitude * std::cos(direction), amplitude * std::sin(direction),
                  uniform(random) < 0.3 ? amplitude / 250 : 0.0},
                 {uniform(random), uniform(random), uniform(random)}});
        }
        const FilmReading reading = readingOf(recipe);
        std::size_t seen = 0;
        for (const Shake& shake : recipe.shakes) {
            const auto found = std::min_element(
                reading.lines.begin(), reading.lines.end(), [&](const auto& a, const auto& b) {
                    return std::abs(a.frequency_hz - shake.frequency_hz) <
                           std::abs(b.frequency_hz - shake.frequency_hz);
                });
            const bool isRight = found != reading.lines.end() &&
                                 std::abs(found->frequency_hz - shake.frequency_hz) < 0.2;
            const double wobble = wobbleOf(recipe, shake);
            seen += isRight ? 1 : 0;
            if (text && std::atol(text) < 20)
                std::printf("%zu: %.2f fps %.1f ms %.2f Hz %.3f px: %.2f Hz %.3f px, floor %.4f\n",
                            k, recipe.frameRate_hz, 1e3 * recipe.readout_s, shake.frequency_hz,
                            wobble, isRight ? found->frequency_hz : 0.0,
                            isRight ? found->wobble_px : 0.0, reading.floor_px);
            const bool isBlind = std::any_of(reading.blind_hz.begin(), reading.blind_hz.end(),
                                             [&](const BlindBand& band) {
                                                 return band.from_hz - 0.2 <= shake.frequency_hz &&
                                                        shake.frequency_hz <= band.to_hz + 0.2;
                                             });
            if (isBlind && !isRight) {
                ++blind;
                continue;
            }
            if (wobble < 3 * reading.floor_px) {
                ++weak;
                continue;
            }
            ++clear;
            right += isRight ? 1 : 0;
            close += isRight && std::abs(found->wobble_px / wobble - 1) < 0.1 ? 1 : 0;
        }
        if (text && std::atol(text) < 20)
            for (const FilmLine& line : reading.lines)
                std::printf("   %.2f Hz %.4f px a %.3f u %.3f r %.5f\n", line.frequency_hz,
                            line.wobble_px, line.across_px, line.up_px, line.roll_rad);
        ghosts += reading.lines.size() - std::min(seen, reading.lines.size());
    }
    std::printf(
        "%zu films: %zu lines above three floors, %zu right, %zu wobbles within a tenth; "
        "%zu weak, %zu blind, %zu claimed that are none\n",
        cases, clear, right, close, weak, blind, ghosts);
    EXPECT_GE(double(right), 0.95 * double(clear));
    EXPECT_GE(double(close), 0.90 * double(clear));
    EXPECT_GE(clear, cases);  // a floor too high would leave none
    EXPECT_LE(ghosts, cases / 20);
}

}  // namespace
}  // namespace stillbay
