// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/recording.h"
#include "core/setup/setup.h"
#include "core/suspension/suspension.h"

#include <array>
#include <cstdint>
#include <vector>

/// A bay that is held off its rest, let go and recorded by a sensor on it, integrated in time.
///
/// The bay is a rigid body with finite rotations under its weight and the tubes' nonlinear static
/// forces. To these come a linear stiffness and a linear damping against the rest pose, which stand
/// for the rubber's dynamic ratio and loss: the only real matrices with which the small free
/// vibration has exactly the six decaying modes of K* φ = ω² M φ with g = ρ_d(1 + iη) at every
/// frequency. Rubber whose ratio and loss both stay the same over all frequencies does not exist;
/// docs/theory.md says what that costs.
namespace stillbay::test {

/// A sensor in the bay: a box with its own mass that measures in its middle.
struct SensorOnBay {
    double mass_g = 0.0;
    Triple centre_mm{};
    Triple size_mm{70.0, 150.0, 8.0};
    Matrix3d axes = Matrix3d::Identity();  ///< turns the sensor's axes into the craft's
};

/// How the bay is held before it is let go: against its rest, craft axes.
struct HeldAt {
    Vector3d shift_mm = Vector3d::Zero();  ///< of its centre of mass
    Vector3d turn_deg = Vector3d::Zero();  ///< rotation vector
};

struct PluckedBay {
    Setup craft;  ///< as it is, without the sensor
    SensorOnBay sensor;
    std::vector<HeldAt> plucks{{.shift_mm = {2.0, 0.0, 0.0}}};
    double rate_hz = 400.0;
    double held_s = 0.4, ringing_s = 2.0;  ///< of each pluck
    double noise = 0.02;                   ///< [m/s²] each sample, one standard deviation
    double jitter_s = 0.0;                 ///< of each sample's time, one standard deviation
    std::uint64_t seed = 1;
};

/// What the sensor wrote down: acceleration less gravity, its own axes, as sensors do.
struct PluckRecord {
    std::vector<double> times;                  ///< [s] when each sample was taken
    std::array<std::vector<double>, 3> values;  ///< [m/s²]

    /// As if the samples were even.
    Recording recording(double rate_hz) const;
};

/// The craft with the sensor as a part of its bay.
Setup withSensor(const Setup& craft, const SensorOnBay& sensor);

PluckRecord pluckInTime(const PluckedBay& plucked);

/// √Re ω²/2π [Hz] and loss Im ω²/Re ω² of the six modes that are recorded, rising: the oracle, by
/// LAPACK's general complex eigenvalues.
std::array<std::array<double, 2>, 6> trueModes(const PluckedBay& plucked);

}  // namespace stillbay::test
