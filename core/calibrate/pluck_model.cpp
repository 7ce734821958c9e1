// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_model.h"

#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace stillbay {
namespace {

constexpr double kLightestPhone_g = 50.0;
const Vector3d kPhone_mm(70.0, 150.0, 8.0);  // along its own axes

// As it lies in the craft's axes.
Triple sizeOf(const BaySensor& sensor)
{
    if (sensor.size_mm != Triple{} || sensor.mass_g < kLightestPhone_g)
        return sensor.size_mm;
    const Vector3d lying = sensor.axes.value_or(Matrix3d::Identity()).cwiseAbs() * kPhone_mm;
    return {lying.x(), lying.y(), lying.z()};
}

}  // namespace

Setup withSensor(const Setup& setup, const BaySensor& sensor)
{
    Setup plucked = setup;
    if (sensor.mass_g > 0.0)
        plucked.bay.parts.push_back(
            {"sensor", sensor.mass_g, sensor.centre_mm, sizeOf(sensor), {}});
    return plucked;
}

Result<PluckedBayModel> PluckedBayModel::of(const Setup& plucked, const BaySensor& sensor)
{
    auto mounted = makeMountedBay(plucked);
    if (!mounted)
        return tl::unexpected(mounted.error());
    PluckedBayModel model;
    model.m_suspension = std::move(mounted->suspension);
    const auto rest = restPose(model.m_suspension, 1.0);
    if (!rest)
        return tl::unexpected(rest.error());
    model.m_rest = *rest;
    const MassFigures& bay = model.m_suspension.bay;
    model.m_mass = massMatrix(bay, rest->R);
    model.m_inverseMass = inverse(model.m_mass);
    const Vector3d place(sensor.centre_mm[0], sensor.centre_mm[1], sensor.centre_mm[2]);
    model.m_arm = rest->R * (place * unit::mm - bay.centre);
    model.m_toSensor = sensor.axes.value_or(Matrix3d::Identity()).transpose() * rest->R.transpose();
    model.m_shortest = std::numeric_limits<double>::infinity();
    const std::vector<double> lengths = tubeLengths(model.m_suspension, *rest);
    double tension = 0.0, slope = 0.0;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const Tube& tube = model.m_suspension.tubeOf(model.m_suspension.attachments[i]);
        model.m_shortest = std::min(model.m_shortest, tube.freeLength);
        const TubeLaws laws = tubeLaws(tube, lengths[i]);
        tension += std::abs(laws.energy.d1);
        slope += laws.energy.d2;
    }
    model.m_tensionSlope = slope / std::max(tension, 1e-9 * slope);
    return model;
}

std::optional<Modes> PluckedBayModel::modes(const RubberFigures& rubber) const
{
    // Stiffness is linear in tension and modulus together: κ K*(g/κ) has κ times the tension.
    const Complex g = rubber.ratio / rubber.tension * Complex(1, rubber.loss);
    const auto modes =
        solveModes(rubber.tension * dynamicStiffness(m_suspension, m_rest, g), m_inverseMass);
    return modes ? std::optional(*modes) : std::nullopt;
}

std::vector<SeenMode> PluckedBayModel::seen(const Modes& modes,
                                            const std::vector<Quantity>& channels,
                                            bool withShapes) const
{
    std::vector<SeenMode> seen;
    for (Eigen::Index k = 0; k < 6; ++k) {
        SeenMode mode;
        mode.lambda = Complex(0, 1) * std::sqrt(modes.omegaSquare[k]);
        if (withShapes) {
            // A sensor shows acceleration less gravity, which turns in its axes as it tilts.
            const Vector3cd u = modes.Phi.col(k).head<3>(), theta = modes.Phi.col(k).tail<3>();
            const Vector3cd moved = u - skew(m_arm) * theta;
            const Vector3cd tilted = -kGravity * (skew(Vector3d::UnitZ()) * theta);
            const Vector3cd acceleration =
                m_toSensor * (mode.lambda * mode.lambda * moved - tilted);
            const Vector3cd rate = m_toSensor * (mode.lambda * theta);
            std::map<Quantity, Eigen::Index> next;
            for (const Quantity quantity : channels)
                mode.channels.push_back(
                    (quantity == Quantity::AngularRate ? rate : acceleration)[next[quantity]++]);
        }
        seen.push_back(std::move(mode));
    }
    return seen;
}

}  // namespace stillbay
