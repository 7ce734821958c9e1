// SPDX-License-Identifier: MIT
#include "ui/bay/craft_shape.h"

#include "core/base/rotation.h"
#include "core/base/units.h"
#include "core/setup/mount_layout.h"

#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace stillbay::ui {
namespace {

constexpr double kTwoPi = 2.0 * std::numbers::pi;
constexpr int kArmPieces = 5, kTubePieces = 4, kTubeSides = 10, kDiscCorners = 36;
constexpr double kSight_mm = 70.0;  // length of the camera's pyramid

using Place = std::function<Vector3d(const Vector3d&)>;

Vector3d vectorOf(const Triple& t)
{
    return {t[0], t[1], t[2]};
}

Vector3d inPlace(const Vector3d& p)
{
    return p;
}

// The six faces of a box with corners at ±half along its own axes (columns of R).
void addBox(CraftShape& shape, Piece piece, int index, const Vector3d& centre, const Vector3d& half,
            const Matrix3d& R, const Place& place)
{
    for (int axis = 0; axis < 3; ++axis)
        for (const double side : {-1.0, 1.0}) {
            Face face{piece, index, {}};
            for (const auto& [s, t] : {std::array{-1.0, -1.0}, std::array{1.0, -1.0},
                                       std::array{1.0, 1.0}, std::array{-1.0, 1.0}}) {
                Vector3d corner = half;
                corner[axis] *= side;
                corner[(axis + 1) % 3] *= s;
                corner[(axis + 2) % 3] *= t;
                face.corners.push_back(place(centre + R * corner));
            }
            shape.faces.push_back(std::move(face));
        }
}

void addParts(CraftShape& shape, Piece piece, const std::vector<Part>& parts, const Place& place)
{
    int index = 0;
    for (const Part& part : parts)
        addBox(shape, piece, index++, vectorOf(part.centre_mm), 0.5 * vectorOf(part.size_mm),
               Matrix3d::Identity(), place);
}

void addArm(CraftShape& shape, const Setup& setup, int index)
{
    const Arm& arm = setup.airframe.arms[static_cast<std::size_t>(index)];
    const Matrix3d R = rotationFromVector({0.0, 0.0, arm.azimuth_deg * unit::deg});
    const ArmSection& section = setup.airframe.arm;
    const double piece_mm = arm.length_mm / kArmPieces;
    for (int k = 0; k < kArmPieces; ++k)
        addBox(shape, Piece::Arm, index,
               R * Vector3d(arm.root_radius_mm + (k + 0.5) * piece_mm, 0.0, arm.height_mm),
               0.5 * Vector3d(piece_mm, section.width_mm, section.height_mm), R, inPlace);
    const Vector3d tip = R * Vector3d(arm.root_radius_mm + arm.length_mm, 0.0, arm.height_mm);
    const Vector3d hub = tip + Vector3d(0.0, 0.0, setup.drive.motor.height_above_arm_mm);
    shape.strokes.push_back({Piece::Propeller, index, tip, hub});
    const double radius = 0.5 * setup.drive.propeller.diameter_in * unit::inch / unit::mm;
    Face disc{Piece::Propeller, index, {}};
    for (int k = 0; k < kDiscCorners; ++k) {
        const double angle = kTwoPi * k / kDiscCorners;
        disc.corners.push_back(hub + radius * Vector3d(std::cos(angle), std::sin(angle), 0.0));
    }
    shape.faces.push_back(std::move(disc));
}

void addTube(CraftShape& shape, int index, const Vector3d& from, const Vector3d& to, double radius)
{
    const Vector3d along = (to - from).normalized();
    const Vector3d aside = along.unitOrthogonal();
    const Vector3d across = along.cross(aside);
    const auto rim = [&](double share, int k) {
        const double angle = kTwoPi * k / kTubeSides;
        return Vector3d(from + share * (to - from) +
                        radius * (std::cos(angle) * aside + std::sin(angle) * across));
    };
    for (int piece = 0; piece < kTubePieces; ++piece) {
        const double a = static_cast<double>(piece) / kTubePieces,
                     b = static_cast<double>(piece + 1) / kTubePieces;
        for (int k = 0; k < kTubeSides; ++k)
            shape.faces.push_back(
                {Piece::Tube, index, {rim(a, k), rim(b, k), rim(b, k + 1), rim(a, k + 1)}});
    }
}

// The pyramid of what the camera sees, from its point along the optical axis.
void addSight(CraftShape& shape, const Camera& camera, const Place& place)
{
    const Matrix3d R = rotationFromVector({0.0, camera.tilt_down_deg * unit::deg, 0.0});
    const double half = kSight_mm * std::tan(0.5 * camera.horizontal_fov_deg * unit::deg);
    const double tall = half * camera.height_px / camera.width_px;
    const Vector3d eye = vectorOf(camera.centre_mm);
    std::array<Vector3d, 4> corners;
    const std::array<std::array<double, 2>, 4> signs{{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}};
    for (std::size_t k = 0; k < 4; ++k)
        corners[k] = place(eye + R * Vector3d(kSight_mm, signs[k][0] * half, signs[k][1] * tall));
    shape.camera_mm = place(eye);
    for (std::size_t k = 0; k < 4; ++k) {
        shape.strokes.push_back({Piece::View, 0, shape.camera_mm, corners[k]});
        shape.strokes.push_back({Piece::View, 0, corners[k], corners[(k + 1) % 4]});
    }
}

}  // namespace

CraftShape craftShape(const Setup& setup, const BayPlace& bay)
{
    CraftShape shape;
    const Place moved = [&bay](const Vector3d& p) {
        return bay.moved(p);
    };
    addParts(shape, Piece::Airframe, setup.airframe.parts, inPlace);
    for (int k = 0; k < static_cast<int>(setup.airframe.arms.size()); ++k)
        addArm(shape, setup, k);
    addParts(shape, Piece::Bay, setup.bay.parts, moved);
    for (const MountPoint& point : setup.mounts.points) {
        const Vector3d onBay = bay.moved(vectorOf(point.bay_mm));
        addTube(shape, static_cast<int>(shape.tubeEnds.size()),
                vectorOf(anchorOf(setup.mounts, point)), onBay, 0.5 * setup.tube.outer_diameter_mm);
        shape.tubeEnds.push_back(onBay);
    }
    addSight(shape, setup.camera, moved);
    shape.centreOfMass_mm = bay.moved(bay.centre_mm);
    return shape;
}

}  // namespace stillbay::ui
