// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/quality.h"
#include "core/base/result.h"
#include "core/recording/plucks.h"
#include "core/recording/recording.h"

#include <complex>
#include <cstddef>
#include <stop_token>
#include <vector>

/// Frequencies and losses of what rings after a pluck.
namespace stillbay {

/// A mode while it was so large: what rises as it dies has softened.
struct SofteningRow {
    double amplitude = 0.0;  ///< of the channel that it moves most, in that channel's unit
    double frequency_hz = 0.0;
    double lossFactor = 0.0;
    double frequencySpread = 0.0;  ///< one standard deviation over the frequency
    double lossSpread = 0.0;       ///< one standard deviation over the loss factor

    bool operator==(const SofteningRow&) const = default;
};

/// Pole s = ω(−ζ + i√(1−ζ²)): the frequency is ω/2π = |s|/2π, the loss factor 2ζ.
///
/// Against a hysteretic model, whose modes are ω² = ω₀²(1 + iη): its √Re ω² is |s|(1 − ζ²) to
/// second order, and its η is 2ζ.
struct DecayingMode {
    double frequency_hz = 0.0;
    double lossFactor = 0.0;
    double share = 0.0;            ///< of the energy of all modes' decays, 0 … 1
    double frequencySpread = 0.0;  ///< one standard deviation over the frequency
    double lossSpread = 0.0;       ///< one standard deviation over the loss factor
    /// A channel of RingDown::channels each: how it moves, largest 1, in the channel's unit.
    std::vector<std::complex<double>> shape;
    std::vector<double> amplitudes;  ///< a pluck each: where the stretch begins, largest channel
    std::vector<SofteningRow> softening;  ///< amplitudes falling; empty: too little of it to say
    /// Share by which the frequency is lower at the beginning of the strongest pluck than in small
    /// motion, which `frequency_hz` is of; 0 where the samples do not ask for it.
    double softens = 0.0;

    std::complex<double> pole() const;  ///< [1/s]
    bool operator==(const DecayingMode&) const = default;
};

/// A line that is no mode: two modes, or one twice, make it where the motion is large
/// (overtones.h).
struct Overtone {
    double frequency_hz = 0.0;
    double first_hz = 0.0, second_hz = 0.0;  ///< of those modes

    bool operator==(const Overtone&) const = default;
};

struct RingDown {
    std::vector<std::size_t> channels;  ///< used, indices into Recording::channels
    std::vector<DecayingMode> modes;    ///< frequencies rising; at least one
    std::vector<Overtone> overtones;    ///< left out of the modes
    std::vector<Stretch> plucks;        ///< the stretches taken
    double residual = 0.0;  ///< share of the decays' energy that no mode explains, noise included
    /// Mean square of the decays over that of the noise, both of means over blocks:
    /// decay_samples.h.
    double signalToNoise_db = 0.0;
    QualityMark mark;

    bool operator==(const RingDown&) const = default;
};

struct RingDownOptions {
    std::vector<std::size_t> channels;  ///< empty: usualChannels()
    std::vector<Stretch> stretches;     ///< empty: findPlucks()
    double lowest_hz = 1.5;             ///< below it lies the sensor's drift
    double highest_hz = 600.0;

    bool operator==(const RingDownOptions&) const = default;
};

/// All channels of acceleration; where there are none, of angular rate, then of any other kind.
std::vector<std::size_t> usualChannels(const Recording& recording);

/// The modes that all channels and all plucks have in common.
///
/// Candidates come from the shift invariance of the signal subspace over several rates and model
/// orders; what repeats over the orders stays. Poles are then fitted to the samples themselves,
/// amplitudes, offsets and drift of each pluck and channel eliminated linearly. A mode is claimed
/// only where leaving it out makes the fit worse than noise can, and where its frequency and loss
/// are determined.
///
/// @error BadInput  no such channel, no sample, a value that is not finite, too short, constant
/// @error NoAnswer  nothing rings down: noise only, a steady tone, or no pluck stands out
/// @source Hua & Sarkar 1990, IEEE Trans. ASSP 38 (matrix pencil); Roy & Kailath 1989, same
///         journal 37 (ESPRIT); Golub & Pereyra 1973, SIAM J. Numer. Anal. 10 (linear amplitudes
///         eliminated); docs/theory.md
Result<RingDown> ringDown(const Recording& recording, const RingDownOptions& options = {},
                          std::stop_token stop = {});

}  // namespace stillbay
