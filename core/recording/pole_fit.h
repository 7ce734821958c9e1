// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/decay_samples.h"

#include <Eigen/Core>

#include <complex>
#include <vector>

/// Poles that several decays have in common, fitted to their samples.
namespace stillbay {

/// ω(−ζ + i√(1−ζ²)).
struct DecayPole {
    double omega = 0.0;    ///< [rad/s] > 0
    double damping = 0.0;  ///< ζ, 0 < ζ < 1
    bool isSoftening = false;
    /// Share by which the frequency is lower while the motion is as large as at the beginning of
    /// the strongest pluck; less in proportion to the motion. `omega` is that of small motion.
    double softening = 0.0;

    std::complex<double> s() const;
};

/// Offset and drift: the last columns of decayBasis().
inline constexpr Eigen::Index kSlowColumns = 2;

/// exp(s t) with what softening does to it, at every block of a pluck, weighted as its samples.
Eigen::VectorXcd motionOf(const DecaySamples& pluck, const DecayPole& pole);

/// What a pluck is made of, weighted as its samples are: Re and −Im of exp(s t) for each pole, so
/// that their factors are the complex amplitude's parts; then offset and drift.
Eigen::MatrixXd decayBasis(const DecaySamples& pluck, const std::vector<DecayPole>& poles);

struct PoleFit {
    std::vector<DecayPole> poles;
    double squares = 0.0;  ///< sum of squared residuals; about `freedom` where only noise is left
    double freedom = 0.0;  ///< samples less parameters, amplitudes included
    /// Of ln ω₁, ln ζ₁, ln ω₂, … and of the softenings behind them: covariance for noise of
    /// deviation 1. Amplitudes taken out.
    Eigen::MatrixXd covariance;
    /// A pluck each: poles × channels, y = Re(a exp(s t)), in the samples' weighted unit.
    std::vector<Eigen::MatrixXcd> amplitudes;
    std::vector<Eigen::MatrixXd> residuals;  ///< a pluck each: blocks × channels
};

struct FitLimits {
    int steps = 20;           ///< of Levenberg's iteration; 0 only eliminates the amplitudes
    double leastGain = 1e-3;  ///< of the sum of squares; a step that gains less is the last
};

/// Least squares over poles, complex amplitudes, and offset and drift of each pluck and channel.
///
/// @source Golub & Pereyra 1973; Kaufman 1975, BIT 15 (the Jacobian's shorter form)
PoleFit fitPoles(const std::vector<DecaySamples>& plucks, std::vector<DecayPole> start,
                 const FitLimits& limits = {});

}  // namespace stillbay
