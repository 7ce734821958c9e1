// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/setup/setup.h"

#include <array>
#include <vector>

/// The craft as flat faces and lines in space, in millimetres and the craft's axes.
namespace stillbay::ui {

enum class Piece { Airframe, Arm, Motor, Propeller, Bay, Tube, View };

/// One flat side of a solid, or a disc that is seen from both sides.
struct Face {
    Piece piece = Piece::Airframe;
    int index = 0;                  ///< which of its kind
    std::vector<Vector3d> corners;  ///< convex, flat; counterclockwise seen from outside

    Vector3d normal() const;  ///< outwards, of length 1
};

/// Where two faces of a solid meet, or where two solids cut through each other.
struct Edge {
    Piece piece = Piece::Airframe;
    int index = 0;
    Vector3d from = Vector3d::Zero(), to = Vector3d::Zero();
    std::array<Vector3d, 2> normals{};  ///< of its faces
    bool round = false;                 ///< of a round side: seen as its outline only
    bool cut = false;                   ///< seen only where both faces are
};

/// A line of no solid.
struct Stroke {
    Piece piece = Piece::View;
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
    bool operator==(const BayPlace&) const = default;
};

struct CraftShape {
    std::vector<Face> faces;
    std::vector<Edge> edges;
    std::vector<Stroke> strokes;
    std::vector<Vector3d> tubeEnds;  ///< on the bay, in the order of the mount points
    Vector3d centreOfMass_mm = Vector3d::Zero();
    Vector3d camera_mm = Vector3d::Zero();
};

/// Everything to scale but the camera, which is a pyramid of what it sees. Tubes are drawn straight
/// from hole to bay. A propeller whose height is not given turns on top of its motor.
CraftShape craftShape(const Setup& setup, const BayPlace& bay);

/// The bay's parts alone.
CraftShape bayShape(const Setup& setup, const BayPlace& bay);

/// The lines in which the faces of different solids cut through each other; not those of glass.
std::vector<Edge> cutsOf(const std::vector<Face>& faces);

/// What lies behind it shows through.
bool isGlass(Piece piece);

}  // namespace stillbay::ui
