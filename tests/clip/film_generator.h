// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <vector>

/// Films of a drawn scene as a camera with a rolling shutter would take them, from a known motion.
/// It shares no code with what reads films.
namespace stillbay {

/// How the scene stands in the picture: its middle to the right, upwards, turned
/// counter-clockwise about the picture's middle.
struct Stand {
    double across_px = 0.0;
    double up_px = 0.0;
    double roll_rad = 0.0;
};

/// One sine of the motion: amplitudes, and a phase each, in turns.
struct Shake {
    double frequency_hz = 0.0;
    Stand amplitude;
    Stand phase;
    /// Its own time at a time [s], of a speed that wanders; empty: the same.
    std::function<double(double)> clock;
};

/// What moves through the picture by itself: a box with a texture of its own.
struct PassingBox {
    double width_px = 0.0, height_px = 0.0;
    double x_px = 0.0, y_px = 0.0;  ///< of its middle at the time 0, from the picture's middle
    double right_px_s = 0.0, down_px_s = 0.0;
};

/// What a camera's own stabiliser does to whole frames before the film is written.
enum class Steadied {
    Not,
    Held,      ///< each frame's mean motion is taken out
    Smoothed,  ///< … but for what of it is slower than a second
};

struct FilmRecipe {
    std::size_t width = 480;
    std::size_t height = 270;
    double frameRate_hz = 30.0;
    double readout_s = 0.016;
    double exposure_s = 0.0;
    std::size_t frames = 24;
    unsigned seed = 1;
    std::vector<Shake> shakes;
    Stand driftPerSecond;  ///< steady
    Stand sway;            ///< amplitudes of a slow sway
    double sway_hz = 0.7;
    /// What is filmed: its brightness, of any scale, so far to the right and below the picture's
    /// middle [px]. Empty: patches and boxes of all sizes, other ones in each shot and on a
    /// passing box.
    std::function<double(double, double)> scene;
    double texture = 30.0;  ///< standard deviation of the brightness, of 255
    double noise = 2.0;     ///< the sensor's, of each pixel
    std::optional<PassingBox> box;
    std::function<double(double)> gain;  ///< of the brightness at a time [s]; empty: 1
    double offset = 0.0;  ///< added to the brightness at the end of the film, 0 at its start
    std::vector<std::size_t> cuts;          ///< frames that begin another scene
    double pan_px = 0.0;                    ///< a pan to the right, in all …
    double panFrom_s = 0.0, panTo_s = 0.0;  ///< … from and to
    Steadied steadied = Steadied::Not;
};

class FilmGenerator {
public:
    explicit FilmGenerator(FilmRecipe recipe);

    const FilmRecipe& recipe() const { return m_recipe; }

    /// Where the scene stands at a time.
    Stand standAt(double time_s) const;

    /// The same, mean over the exposure of a row (−½ at the top … ½ at the bottom): what a perfect
    /// reader of that row finds.
    Stand seenBy(std::size_t frame, double row) const;

    double timeOf(std::size_t frame) const;

    /// Brightness of the frame's pixels, row by row from the top.
    std::vector<std::uint8_t> frame(std::size_t index) const;

    /// All frames, one behind the other. @return false where they could not be written.
    bool write(const std::filesystem::path& file) const;

private:
    struct Picture {
        std::size_t width = 0, height = 0;
        std::vector<float> values;
    };

    Picture drawScene(unsigned seed, std::size_t width, std::size_t height) const;

    /// Of the frame, by its stabiliser, which takes it out.
    Stand steadyOf(std::size_t frame) const;
    Stand meanOf(std::ptrdiff_t frame) const;

    FilmRecipe m_recipe;
    std::vector<Stand> m_steady;
    std::size_t m_marginX = 0, m_marginY = 0;
    std::vector<Picture> m_scenes;  // one a cut, and the first
    Picture m_box;
};

}  // namespace stillbay
