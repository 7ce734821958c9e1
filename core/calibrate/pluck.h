// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/recording/ring_down.h"
#include "core/setup/setup.h"

#include <array>
#include <cstddef>
#include <optional>
#include <stop_token>
#include <string_view>
#include <vector>

/// A plucked bay's record to the dynamic ratio and the loss of its tubes.
namespace stillbay {

/// What records on the bay. While it lies there it is a part of the bay.
struct BaySensor {
    double mass_g = 0.0;  ///< 0: none, or among the bay's parts already
    Triple centre_mm{};   ///< middle of its box, where it measures
    /// Its box along the craft's axes; zeros: not told, and from 50 g on it is taken for a phone of
    /// 70 mm × 150 mm × 8 mm along its own axes (common practice, no source), else for a point.
    Triple size_mm{};
    /// Turns its own axes into the craft's; none: not known, and nothing is read from directions.
    std::optional<Matrix3d> axes;
};

/// Where a sensor's axes point, "x:y:z" for one that lies as the craft does, "-y:x:z" for one whose
/// x points to the right and whose y points ahead.
///
/// @return none where it is not three of x, y, z, each once, with signs, right-handed
std::optional<Matrix3d> axesFromText(std::string_view text);

struct PluckOptions {
    BaySensor sensor;
    std::vector<std::size_t> channels;  ///< empty: usualChannels()
    std::vector<Stretch> stretches;     ///< empty: findPlucks()
    /// By hand: for each mode that ringDown() finds, which of the model's six it is (0 to 5, rising
    /// in frequency); none: no mode of the bay. Empty: by frequency, loss and motion.
    std::vector<std::optional<std::size_t>> matching;
};

/// A mode of the bay on its bench, the sensor on it.
struct PluckedMode {
    Vector6d motion = Vector6d::Zero();  ///< as motionOf()
    double before_hz = 0.0, beforeLoss = 0.0;
    double after_hz = 0.0, afterLoss = 0.0;
    std::optional<std::size_t> measured;  ///< which of PluckAnswer::measured it is
    double share = 0.0;                   ///< of the record's energy
    bool isExcited = false;               ///< stands out of what is left unexplained
};

struct PluckAnswer {
    Correction correction;
    std::array<PluckedMode, 6> modes;    ///< rising in frequency
    std::vector<DecayingMode> measured;  ///< as ringDown() has them, the model unheard
    std::vector<Stretch> used;           ///< samples that were fitted, a pluck each
    std::vector<Phrase> plucksToAdd;     ///< that would excite what has not rung
};

/// The craft as it is plucked.
Setup withSensor(const Setup& setup, const BaySensor& sensor);

/// Dynamic ratio and loss factor of the tubes, fitted through the model of the whole bay to all six
/// modes at once: the poles, and where the sensor's axes are known the shapes, are those of the
/// model; the start of each pluck (amplitude and phase of every mode), offset and drift are
/// eliminated linearly. The tubes' tension is let off by as much as it is not known, since modes
/// that hang on it are sharp and say little of the rubber. What is measured is the dynamic modulus:
/// where the modulus errs, the ratio makes up for it.
///
/// Only what swings little is fitted, until a hand takes the bay again.
///
/// @return keys tube.dynamic_ratio and tube.loss_factor. The spread comes from the curvature of the
///         squares and what they leave, wider as far as neighbouring residuals agree; that of the
///         modulus is part of the ratio's.
/// @error BadInput  as ringDown(), or the matching is not one entry for each mode measured, each
///                  mode of the model once, or the sensor is none that a part of the bay may be
/// @error NoAnswer  nothing rings down, the bay has no stable rest, or the record does not
///                  determine ratio and loss
/// @source G. H. Golub & V. Pereyra, SIAM J. Numer. Anal. 10 (1973) (amplitudes eliminated), from
///         memory; docs/theory.md, "A measured bay"
Result<PluckAnswer> pluckTest(const Setup& setup, const Recording& recording,
                              const PluckOptions& options = {}, std::stop_token stop = {});

}  // namespace stillbay
