// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/crossings.h"
#include "core/calibrate/correction.h"
#include "core/clip/film_lines.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// What a film's lines are of this craft: its rotors' orders at one speed.
namespace stillbay {

/// A speed of the rotors that is known beside the film.
struct SpeedOfRotors {
    double speed = 0.0;      ///< [rev/s]
    double tolerance = 0.0;  ///< [rev/s] either way

    bool operator==(const SpeedOfRotors&) const = default;
};

struct FilmMatchOptions {
    /// 0 … 1, of the stick while it was filmed; none: whatever explains the lines.
    std::optional<double> throttle;
    /// By the film's sound; it counts more than what the craft is computed to turn at a throttle.
    std::optional<SpeedOfRotors> heard;
};

/// A line and what explains it.
struct MatchedLine {
    std::size_t line = 0;       ///< its place in FilmReading::lines
    std::optional<int> order;   ///< times the rotors' speed; none: no order explains it
    double frequency_hz = 0.0;  ///< its own, or that of its aliases which the order chooses
    /// What of the craft rings there, where no order explains the line; none: nothing does.
    std::optional<Resonance> resonance;
};

/// An order as filmed beside as predicted.
struct OrderOnFilm {
    int order = 1;
    double frequency_hz = 0.0;
    std::optional<double> filmed_px;     ///< rms; none: no line of the film is of this order
    std::optional<double> predicted_px;  ///< rms; none: as in FilmMatch
};

struct FilmMatch {
    double speed = 0.0;   ///< [rev/s] of the rotors, where they differ in the middle
    double spread = 0.0;  ///< [rev/s] one standard deviation
    /// Of the stick with the pack full and empty; none: that pack does not reach the speed.
    std::optional<double> throttle_full, throttle_empty;
    double explained = 0.0;  ///< share of the lines' power, 0 … 1
    double filmed_px = 0.0;  ///< rms of all that vibrates on the film
    /// rms at that speed; none: the full pack does not reach it, and a warning says so.
    std::optional<double> predicted_px;
    std::vector<MatchedLine> lines;   ///< one a line of the film
    std::vector<OrderOnFilm> orders;  ///< rising; of the craft at that speed
    /// [rev/s] that explains the lines nearly as well; none where the speed is heard.
    std::optional<double> otherSpeed;
    /// By a sound, or by a throttle at which no other speed puts a line that matters onto an order:
    /// how fast it turns the rotors depends on the pack, so its speeds are far apart.
    bool isSpeedKnown = false;
    bool isStabilised = false;  ///< the film, whose lines may be wrong then
    QualityMark mark;
    std::vector<Warning> warnings;
};

/// The speed of the rotors at which their orders explain most of the lines. Lines nearer than
/// kOrderWidth of an order are its own: motors differ in speed where the load on them does. What an
/// order should show and the film does not speaks against a speed, and so does a line that is many
/// times stronger or weaker than predicted. Where no speed is known, it is one that flies: at least
/// half of the hover's.
///
/// @error BadInput  a throttle outside of 0 … 1. NoAnswer  a film without a line, lines that no
///                  speed of this craft explains, or what the assessment refuses.
/// @source own derivation
Result<FilmMatch> matchFilm(const Setup& setup, const FilmReading& reading,
                            const FilmMatchOptions& options = {});

inline constexpr double kOrderWidth = 0.025;  // of an order's frequency
inline constexpr double kShowsOnFilm = 2.0;   // times the floor, from which an order should be seen

/// Whether the film's speed may be built upon: not poor, no other explains the lines nearly as
/// well, and it is known beside the film, or by two orders or more. A single line is an order of
/// some speed in any case.
bool isSpeedSettled(const FilmMatch& match);

}  // namespace stillbay
