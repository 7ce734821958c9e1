// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/bay_decay.h"
#include "core/calibrate/pluck.h"
#include "core/suspension/modes.h"
#include "core/suspension/suspension.h"

#include <optional>
#include <vector>

/// The plucked bay as a function of what is fitted. Internal to the calibrate room.
namespace stillbay {

/// What the rubber is taken for.
struct RubberFigures {
    double ratio = 1.0;  ///< ρ_d
    double loss = 0.0;   ///< η
    /// κ: the tubes' tension over the one computed, what it makes stiff with it
    double tension = 1.0;
};

/// The bay with its sensor at rest.
class PluckedBayModel {
public:
    /// @error NoAnswer  no stable rest. BadInput: as makeMountedBay().
    static Result<PluckedBayModel> of(const Setup& plucked, const BaySensor& sensor);

    /// @return none where a mode does not swing
    std::optional<Modes> modes(const RubberFigures& rubber) const;

    /// The modes as the recording's channels see them; with known axes, where every kind of channel
    /// comes as three, x, y and z.
    std::vector<SeenMode> seen(const Modes& modes, const std::vector<Quantity>& channels,
                               bool withShapes) const;

    const Matrix6d& mass() const { return m_mass; }
    double shortestTube() const { return m_shortest; }  ///< [m] free length
    /// [1/m] By what share the tubes' tension grows with each one's length at rest.
    double tensionSlope() const { return m_tensionSlope; }

private:
    Suspension m_suspension;
    Pose m_rest;
    Matrix6d m_mass, m_inverseMass;
    Vector3d m_arm = Vector3d::Zero();  // from the bay's rested centre of mass to the sensor
    Matrix3d m_toSensor = Matrix3d::Identity();
    double m_shortest = 0.0, m_tensionSlope = 0.0;
};

}  // namespace stillbay
