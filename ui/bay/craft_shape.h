// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/setup/setup.h"

#include <vector>

/// The craft as flat faces and lines in space, in millimetres and the craft's axes.
namespace stillbay::ui {

enum class Piece { Airframe, Arm, Propeller, Bay, Tube, View, Axis };

struct Face {
    Piece piece = Piece::Airframe;
    int index = 0;                  ///< which of its kind
    std::vector<Vector3d> corners;  ///< convex, flat, in turn
};

struct Stroke {
    Piece piece = Piece::Axis;
    int index = 0;
    Vector3d from = Vector3d::Zero(), to = Vector3d::Zero();
};

/// Where the bay is: p stands at centre + shift + R (p − centre).
struct BayPlace {
    Vector3d centre_mm = Vector3d::Zero();  ///< of mass, as drawn
    Vector3d shift_mm = Vector3d::Zero();
    Matrix3d R = Matrix3d::Identity();

    Vector3d moved(const Vector3d& p_mm) const
    {
        return centre_mm + shift_mm + R * (p_mm - centre_mm);
    }
};

struct CraftShape {
    std::vector<Face> faces;
    std::vector<Stroke> strokes;
    std::vector<Vector3d> tubeEnds;  ///< on the bay, in the order of the mount points
    Vector3d centreOfMass_mm = Vector3d::Zero();
    Vector3d camera_mm = Vector3d::Zero();
};

/// Everything to scale but the camera, which is a pyramid of what it sees. Tubes are drawn straight
/// from hole to bay, arms and tubes cut into short pieces so that they can be sorted by distance.
CraftShape craftShape(const Setup& setup, const BayPlace& bay);

}  // namespace stillbay::ui
