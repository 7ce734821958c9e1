// SPDX-License-Identifier: MIT
#include "ui/bay/craft_shape.h"

#include "core/base/rotation.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/setup/mount_layout.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kTwoPi = 2.0 * std::numbers::pi;
constexpr int kTubeSides = 16, kMotorSides = 24, kDiscCorners = 48;
constexpr double kSight_mm = 70.0;  // length of the camera's pyramid

using Place = std::function<Vector3d(const Vector3d&)>;
using Ring = std::vector<Vector3d>;

Vector3d vectorOf(const Triple& t)
{
    return {t[0], t[1], t[2]};
}

Vector3d inPlace(const Vector3d& p)
{
    return p;
}

Ring circle(const Vector3d& middle, const Vector3d& aside, const Vector3d& across, int corners)
{
    Ring ring;
    for (int k = 0; k < corners; ++k) {
        const double angle = kTwoPi * k / corners;
        ring.push_back(middle + std::cos(angle) * aside + std::sin(angle) * across);
    }
    return ring;
}

// A convex solid between two rings that face each other corner by corner.
void addPrism(CraftShape& shape, Piece piece, int index, const Ring& a, const Ring& b, bool round)
{
    Vector3d middle = Vector3d::Zero();
    for (std::size_t k = 0; k < a.size(); ++k)
        middle += (a[k] + b[k]) / (2.0 * static_cast<double>(a.size()));
    const auto add = [&](Ring corners) {
        Face face{piece, index, std::move(corners)};
        if (face.normal().dot(face.corners.front() - middle) < 0.0)
            std::reverse(face.corners.begin(), face.corners.end());
        shape.faces.push_back(std::move(face));
        return shape.faces.back().normal();
    };
    const std::size_t count = a.size();
    std::vector<Vector3d> sides;
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t next = (k + 1) % count;
        sides.push_back(add({a[k], b[k], b[next], a[next]}));
    }
    const Vector3d capA = add(a), capB = add(b);
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t next = (k + 1) % count;
        shape.edges.push_back(
            {piece, index, a[k], b[k], {sides[(k + count - 1) % count], sides[k]}, round});
        shape.edges.push_back({piece, index, a[k], a[next], {sides[k], capA}});
        shape.edges.push_back({piece, index, b[k], b[next], {sides[k], capB}});
    }
}

// A box with corners at ±half along its own axes (columns of R).
void addBox(CraftShape& shape, Piece piece, int index, const Vector3d& centre, const Vector3d& half,
            const Matrix3d& R, const Place& place)
{
    Ring low, high;
    for (const auto& [x, y] : {std::pair{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
        low.push_back(place(centre + R * half.cwiseProduct(Vector3d(x, y, -1))));
        high.push_back(place(centre + R * half.cwiseProduct(Vector3d(x, y, 1))));
    }
    addPrism(shape, piece, index, low, high, false);
}

void addParts(CraftShape& shape, Piece piece, const std::vector<Part>& parts, const Place& place)
{
    int index = 0;
    for (const Part& part : parts)
        addBox(shape, piece, index++, vectorOf(part.centre_mm), 0.5 * vectorOf(part.size_mm),
               Matrix3d::Identity(), place);
}

// Motor and propeller stand on the arm's middle line.
void addRotor(CraftShape& shape, const Drive& drive, int index, const Vector3d& tip)
{
    const MotorFigures size = motorFigures(drive.motor);
    const double radius = 0.5 * size.diameter / unit::mm, half = 0.5 * size.height / unit::mm;
    const double middle = drive.motor.height_above_arm_mm;
    const auto ring = [&](double height, double r, int corners) {
        return circle(tip + height * Vector3d::UnitZ(), r * Vector3d::UnitX(),
                      r * Vector3d::UnitY(), corners);
    };
    addPrism(shape, Piece::Motor, index, ring(middle - half, radius, kMotorSides),
             ring(middle + half, radius, kMotorSides), true);
    const double height =
        drive.propeller.height_above_arm_mm.value_or(middle + (middle < 0.0 ? -half : half));
    shape.strokes.push_back({Piece::Motor, index, tip, tip + height * Vector3d::UnitZ()});
    shape.faces.push_back(
        {Piece::Propeller, index,
         ring(height, 0.5 * drive.propeller.diameter_in * unit::inch / unit::mm, kDiscCorners)});
}

void addArm(CraftShape& shape, const Setup& setup, int index)
{
    const Arm& arm = setup.airframe.arms[static_cast<std::size_t>(index)];
    const Matrix3d R = rotationFromVector({0.0, 0.0, arm.azimuth_deg * unit::deg});
    const ArmSection& section = setup.airframe.arm;
    addBox(shape, Piece::Arm, index,
           R * Vector3d(arm.root_radius_mm + 0.5 * arm.length_mm, 0.0, arm.height_mm),
           0.5 * Vector3d(arm.length_mm, section.width_mm, section.height_mm), R, inPlace);
    addRotor(shape, setup.drive, index,
             R * Vector3d(arm.root_radius_mm + arm.length_mm, 0.0, arm.height_mm));
}

void addTube(CraftShape& shape, int index, const Vector3d& from, const Vector3d& to, double radius)
{
    const Vector3d along = (to - from).normalized();
    const Vector3d aside = radius * along.unitOrthogonal(), across = along.cross(aside);
    addPrism(shape, Piece::Tube, index, circle(from, aside, across, kTubeSides),
             circle(to, aside, across, kTubeSides), true);
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

Vector3d Face::normal() const
{
    return (corners[1] - corners[0]).cross(corners[2] - corners[1]).normalized();
}

bool isGlass(Piece piece)
{
    return piece == Piece::Airframe || piece == Piece::Propeller;
}

CraftShape bayShape(const Setup& setup, const BayPlace& bay)
{
    CraftShape shape;
    addParts(shape, Piece::Bay, setup.bay.parts,
             [&bay](const Vector3d& p) { return bay.moved(p); });
    return shape;
}

CraftShape craftShape(const Setup& setup, const BayPlace& bay)
{
    CraftShape shape = bayShape(setup, bay);
    addParts(shape, Piece::Airframe, setup.airframe.parts, inPlace);
    for (int k = 0; k < static_cast<int>(setup.airframe.arms.size()); ++k)
        addArm(shape, setup, k);
    for (const MountPoint& point : setup.mounts.points) {
        const Vector3d onBay = bay.moved(vectorOf(point.bay_mm));
        addTube(shape, static_cast<int>(shape.tubeEnds.size()),
                vectorOf(anchorOf(setup.mounts, point)), onBay, 0.5 * setup.tube.outer_diameter_mm);
        shape.tubeEnds.push_back(onBay);
    }
    addSight(shape, setup.camera, [&bay](const Vector3d& p) { return bay.moved(p); });
    shape.centreOfMass_mm = bay.moved(bay.centre_mm);
    return shape;
}

}  // namespace stillbay::ui
