// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "tests/recordings/pluck_in_time.h"

#include <filesystem>
#include <string>
#include <vector>

/// The invented recordings in samples/recordings, all of one craft: true_reedbed.h. The same bytes
/// every time.
namespace stillbay::test {

/// What every file says of itself.
inline constexpr const char* kInvented =
    "invented recording, made by tests/recordings/make_samples.cpp";

struct SampleTable {
    std::string name;  ///< of the file
    std::string text;
};

/// The bay with a phone on its tray pushed off four times and let go, the airframe clamped: some
/// 200 uneven samples a second. Motion by pluck_in_time.h, which integrates the tubes' own forces.
/// Sideways in m/s², with commas between cells; nodding in g, with semicolons and decimal commas.
SampleTable sidewaysPluck(const Setup& trueCraft);
SampleTable nodPluck(const Setup& trueCraft);

/// How they were plucked.
PluckedBay pluckedSideways(const Setup& trueCraft);
PluckedBay pluckedDown(const Setup& trueCraft);

/// The phone: what it weighs and where its middle lies; its top forward, its screen up.
inline constexpr double kPhone_g = 165;
inline constexpr Triple kPhone_mm{5, 0, -22};

/// One arm of a craft clamped to the table, tapped three times: up, sideways, up. A small sensor at
/// the tip, axes of the arm, 1600 a second.
///
/// Apart from the core: arm of finite elements with the bodies of its tip, decaying modes.
SampleTable armTap(const Setup& trueCraft);

/// √Re ω²/2π [Hz] of the tapped arm's modes, rising.
std::vector<double> tappedFrequencies_hz(const Setup& trueCraft);

/// The craft on a tether under a long cord, the stick from 8 to 40 %, which does not lift it, in 16
/// s: a log with the stick and the airframe's sensor, 1000 a second, and the bay's own sensor, 500
/// a second by a clock that began later and runs 40 ppm fast.
///
/// Apart from the core: arms of finite elements, speeds, phases, both clocks and what shakes the
/// hub besides. The core's own: stiffness of the tubes, speed and thrust at a duty. The
/// stick moves slowly, but what a resonance keeps ringing meanwhile is in it.
struct SweepTables {
    SampleTable airframe, bay;
};
SweepTables throttleSweep(const Setup& trueCraft);

/// The bay's clock: when it began by the airframe's [s], and its seconds in one of that.
inline constexpr double kBayClockBegan = 0.3513, kBayClockRuns = 1 + 40e-6;

/// Places of the sweep's sensors, datum and axes of the craft [mm].
inline constexpr Triple kAirframeSensor_mm{-20, 10, 22};
inline constexpr Triple kBaySensor_mm{95, -25, -18};

/// A microphone three metres off, mono, of full scale. Motors still, 30, 45 and 60 % for 3.5 s
/// each, motors still between. Nothing but the speeds is the core's.
struct SampleSound {
    int rate_hz = 8000;
    std::vector<double> values;
};
SampleSound motorSound(const Setup& trueCraft);

struct HeldThrottle {
    double stick = 0.0, from = 0.0, to = 0.0;  ///< [s]
};
inline constexpr HeldThrottle kHeldThrottles[] = {
    {0.30, 1.0, 4.5}, {0.45, 5.5, 9.0}, {0.60, 10.0, 13.5}};

/// Writes them all but the films (sample_film.h). Throws where it cannot.
///
/// @param reedbed  the sample craft as its file has it
void writeSamples(const Setup& reedbed, const std::filesystem::path& folder);

/// The pictures of them in the docs, read as the program reads recordings. Throws where it cannot.
void writePictures(const std::filesystem::path& samples, const std::filesystem::path& folder);

}  // namespace stillbay::test
