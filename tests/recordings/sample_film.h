// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "tests/clip/film_generator.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/wander.h"

#include <array>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

/// The invented films in samples/recordings: a drawn bank as the camera of the true reedbed sees it
/// at throttles that are held, hung on a long cord, where no throttle lifts it; a sixth of the
/// camera's size.
namespace stillbay::test {

/// One motor while a film is taken; its speed wanders.
struct FilmedMotor {
    double speed = 0.0;  ///< [rev/s] in the middle
    Wander wander;

    double turns(double t) const { return speed * (t + kFilmWander * wander.until(t)); }

    static constexpr double kFilmWander = 0.002;  // of the speed, up and down
};

struct SampleFilm {
    double stick = 0.0;
    std::uint64_t seed = 0;
    std::vector<FilmedMotor> motors;
    FilmRecipe recipe;  ///< one shake a motor and order

    std::string name() const;  ///< of the file
    double duration() const { return static_cast<double>(recipe.frames) / recipe.frameRate_hz; }
};

struct FilmedThrottle {
    double stick = 0.0;
    std::uint64_t seed = 0;
};

/// Motors that turn 0.3 Hz apart beat over three seconds, so four show more or less than the mean
/// of a long flight: these seeds, within a twentieth of it.
inline constexpr std::array<FilmedThrottle, 3> kFilmedThrottles{
    {{0.27, 420}, {0.30, 320}, {0.32, 460}}};

/// The craft's answer to each motor's orders is the core's own; so is what the camera makes of a
/// rotation. Speeds, phases, sway, rows, scene and noise are the generator's.
SampleFilm sampleFilm(const Setup& trueCraft, const FilmedThrottle& held);

/// The film's sound, as the microphone of motorSound() hears it.
SampleSound soundOf(const SampleFilm& film);

/// Brightness of the drawn bank, so far to the right and below the picture's middle [px].
double filmedBank(double right, double down);

/// Writes the films, H.264 and AAC in MP4, through ffmpeg, whose versions pack them differently.
/// Throws where it cannot.
void writeFilms(const Setup& reedbed, const std::filesystem::path& folder);

}  // namespace stillbay::test
