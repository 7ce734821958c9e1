// SPDX-License-Identifier: MIT
#include "tests/recordings/sample_film.h"

#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/film/film.h"
#include "tests/recordings/true_reedbed.h"

#include <cmath>
#include <numbers>

namespace stillbay::test {
namespace {

constexpr std::size_t kFilmWidth = 640, kFilmHeight = 360, kFilmFrames = 120;

// What one motor's order moves the picture by; in step it would begin at 0.
Shake shakeOf(const Vector3cd& rotation, const Vector3d& filmPixels, const FilmedMotor& motor,
              int order, double begin)
{
    const auto phase = [&](Eigen::Index axis) {
        return (std::arg(rotation[axis]) + order * begin) / (2 * std::numbers::pi);
    };
    return {order * motor.speed,
            {filmPixels[0] * std::abs(rotation[0]), filmPixels[1] * std::abs(rotation[1]),
             std::abs(rotation[2])},
            {phase(0), phase(1), phase(2)},
            [motor](double t) {
                return motor.turns(t) / motor.speed;
            }};
}

}  // namespace

std::string SampleFilm::name() const
{
    return "film-" + std::to_string(std::lround(100 * stick)) + ".mp4";
}

SampleFilm sampleFilm(const Setup& trueCraft, const FilmedThrottle& held)
{
    SampleFilm film{.stick = held.stick, .seed = held.seed};
    Noise noise(film.seed);
    const Camera& camera = trueCraft.camera;
    FilmRecipe& recipe = film.recipe;
    recipe = {.width = kFilmWidth,
              .height = kFilmHeight,
              .frameRate_hz = camera.frame_rate_hz,
              .readout_s = camera.readout_ms * unit::ms,
              .exposure_s = camera.exposure_ms * unit::ms,
              .frames = kFilmFrames,
              .seed = static_cast<unsigned>(film.seed),
              .driftPerSecond = {0.8, 0.3, 0.0},
              .sway = {5.0, 1.5, 0.003},
              .sway_hz = 0.31,
              .scene = filmedBank,
              .texture = 50.0,
              .noise = 0.5};

    const auto assessment =
        assess(trueCraft, {.throttle = Grid{held.stick, held.stick, 1.0}}).value();
    const ThrottlePoint& point = *assessment.throttle.begin();
    const double smaller = static_cast<double>(kFilmWidth) / camera.width_px;
    const Vector3d filmPixels = smaller * pixelsPerRadian(makeCamera(camera));
    for (std::size_t motor = 0; motor < kTrueSpeedOffset.size(); ++motor) {
        film.motors.push_back(
            {point.speed_rpm * unit::rpm * (1 + kTrueSpeedOffset[motor]), Wander(noise)});
        const double begin = noise.phase();
        for (const OrderPoint& order : point.orders)
            recipe.shakes.push_back(shakeOf(order.rotations[motor], filmPixels, film.motors.back(),
                                            order.order, begin));
    }
    return film;
}

}  // namespace stillbay::test
