// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"

#include "core/assess/warnings.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/drive/balance.h"
#include "core/response/bay_at_rest.h"
#include "core/response/cruise.h"
#include "core/response/excitation.h"
#include "core/response/wobble.h"
#include "core/setup/validate.h"
#include "core/suspension/modes.h"
#include "core/suspension/motion_text.h"
#include "core/suspension/transmissibility.h"

#include <algorithm>

namespace stillbay {
namespace {

TubeFigures tubeFigures(const MountedBay& mounted, const Setup& setup)
{
    const Tube& tube = mounted.suspension.tube;
    const TubeLaws laws = tubeLaws(tube, mounted.drawnLength);
    return {.youngs_modulus = mounted.youngsModulus,
            .shear_modulus = shearModulus(mounted.youngsModulus),
            .length = mounted.drawnLength,
            .stretch = mounted.drawnLength / tube.freeLength,
            .tension = laws.energy.d1,
            .axial_stiffness = laws.energy.d2,
            .lateral_stiffness = lateralStiffness(laws, mounted.drawnLength),
            .own_resonance_hz = ownResonance_hz(tube, mounted.drawnLength, laws.energy.d1),
            .modulus_from_hardness = !setup.tube.youngs_modulus_mpa.has_value()};
}

std::array<ModeFigures, 6> modeFigures(const Modes& modes)
{
    std::array<ModeFigures, 6> figures;
    for (Eigen::Index k = 0; k < 6; ++k) {
        ModeFigures& mode = figures[static_cast<std::size_t>(k)];
        mode.frequency_hz = frequency_hz(modes.omegaSquare[k]);
        mode.loss_factor = lossFactor(modes.omegaSquare[k]);
        mode.motion = motionOf(modes.Phi.col(k));
        mode.text = motionText(mode.motion);
    }
    return figures;
}

HoverFigures hoverFigures(const ExcitedAirframe& craft, double weight)
{
    const double perMotor = weight / craft.drive.motors;
    const double speed = speedForThrust(craft.drive, perMotor);
    return {speed * 60, perMotor, throttleForSpeed(craft.drive, speed, craft.fullVoltage),
            throttleForSpeed(craft.drive, speed, craft.emptyVoltage),
            balanceGrade_mm_s(craft.unbalance, craft.propellerMass, speed)};
}

// The longest arm bends first.
CantileverFrequencies armFrequencies(const AirframeModel& airframe)
{
    double longest = 0.0;
    for (const ArmPlace& place : airframe.arms)
        longest = std::max(longest, place.length);
    return cantileverFrequencies(airframe.arm, longest, airframe.tip.mass);
}

Result<Modes> flightModes(const BayAtRest& atRest, const MassFigures& airframe)
{
    const MassFigures& bay = atRest.mounted.suspension.bay;
    const Vector3d p_FB = bay.centre + atRest.pose.shift - airframe.centre;
    return solveModes(
        atRest.K, inverseReducedMass(massMatrix(bay, atRest.pose.R), massMatrix(airframe), p_FB));
}

std::optional<CruiseWobble> overCruise(const Flight& flight,
                                       const std::vector<ThrottlePoint>& points)
{
    std::vector<double> throttle, wobble_px;
    for (const ThrottlePoint& point : points) {
        throttle.push_back(point.throttle);
        wobble_px.push_back(point.wobble_px);
    }
    return CruiseWindow(flight).over(throttle, wobble_px);
}

Result<Assessment> assessPrepared(const Setup& setup, const AssessOptions& options,
                                  const Excitation& excitation,
                                  const std::vector<RigidPoint>& rigid)
{
    auto mounted = makeMountedBay(setup);
    if (!mounted)
        return tl::unexpected(mounted.error());
    auto let = letGo(*std::move(mounted));
    if (!let)
        return tl::unexpected(let.error());
    BayAtRest& bay = *let;
    addPullUp(bay);
    if (const auto done = addModes(bay); !done)
        return tl::unexpected(done.error());
    const Suspension& suspension = bay.mounted.suspension;

    Assessment result;
    result.bay = suspension.bay;
    result.airframe = rigidFigures(excitation.craft.airframe);
    const auto flight = flightModes(bay, result.airframe);
    if (!flight)
        return tl::unexpected(flight.error());
    const CameraModel camera = makeCamera(setup.camera);
    auto throttle = wobbleOverThrottle(excitation, suspension, bay.pose, bay.K, camera);
    if (!throttle)
        return tl::unexpected(throttle.error());
    addRigid(*throttle, rigid);

    result.tube = tubeFigures(bay.mounted, setup);
    result.rest = bay.at1g;
    result.rest_3g = bay.at3g;
    result.bench = modeFigures(bay.bench);
    result.flight = modeFigures(*flight);
    const CantileverFrequencies arm = armFrequencies(excitation.craft.airframe);
    result.arm_vertical_hz = arm.vertical_hz;
    result.arm_horizontal_hz = arm.horizontal_hz;
    const std::vector<double> frequency = options.frequency_hz.values();
    const Vector3d p_BC = bay.pose.R * (bay.mounted.p_OC - suspension.bay.centre);
    Transmissibility curves = transmissibility(bay.K, bay.bench, p_BC, frequency);
    result.transmissibility = {frequency, std::move(curves.x), std::move(curves.y),
                               std::move(curves.z)};
    result.propeller = excitation.craft.propeller;
    result.hover =
        hoverFigures(excitation.craft, (result.bay.mass + result.airframe.mass) * kGravity);
    result.throttle = std::move(*throttle);
    result.ranges = gradedRanges(result.throttle, setup.limits.faint_px, setup.limits.bad_px);
    result.cruise = overCruise(setup.flight, result.throttle);
    result.warnings = warningsOf({setup, excitation.craft, bay, result});
    return result;
}

}  // namespace

std::vector<double> throttlesOf(const Setup& setup, const AssessOptions& options)
{
    return options.throttle ? options.throttle->values() : CruiseWindow(setup.flight).sweep();
}

struct Assessor::Kept {
    // What Excitation depends on; compared by value.
    struct Key {
        Airframe airframe;
        Drive drive;
        double air_density_kg_m3 = 0.0;
        std::vector<double> throttles;
        bool flexible = true;

        bool operator==(const Key&) const = default;
    };

    Key key;
    Excitation excitation;
    Bay bay;        // that is mounted
    Camera camera;  // that films
    std::optional<std::vector<RigidPoint>> rigid;
};

Assessor::Assessor() = default;
Assessor::~Assessor() = default;
Assessor::Assessor(Assessor&&) noexcept = default;
Assessor& Assessor::operator=(Assessor&&) noexcept = default;

Result<Assessment> Assessor::assess(const Setup& setup, const AssessOptions& options)
{
    if (const auto valid = validate(setup); !valid)
        return tl::unexpected(valid.error());
    Kept::Key key{setup.airframe, setup.drive, setup.flight.air_density_kg_m3,
                  throttlesOf(setup, options), options.flexible_airframe};
    if (!m_kept || m_kept->key != key) {
        Excitation excitation =
            prepareExcitation(makeExcitedAirframe(setup), key.throttles, key.flexible);
        m_kept = std::make_unique<Kept>(Kept{std::move(key), std::move(excitation), {}, {}, {}});
    }
    if (!m_kept->rigid || m_kept->bay != setup.bay || m_kept->camera != setup.camera) {
        m_kept->bay = setup.bay;
        m_kept->camera = setup.camera;
        m_kept->rigid = rigidOverThrottle(m_kept->excitation, makeBody(setup.bay.parts),
                                          makeCamera(setup.camera));
    }
    return assessPrepared(setup, options, m_kept->excitation, *m_kept->rigid);
}

Result<Assessment> assess(const Setup& setup, const AssessOptions& options)
{
    return Assessor().assess(setup, options);
}

}  // namespace stillbay
