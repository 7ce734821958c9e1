// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"

#include "core/assess/cautions.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/drive/balance.h"
#include "core/response/cruise.h"
#include "core/response/rest_figures.h"
#include "core/response/shaking.h"
#include "core/response/wobble.h"
#include "core/setup/validate.h"
#include "core/suspension/modes.h"
#include "core/suspension/motion_words.h"
#include "core/suspension/transmissibility.h"

#include <algorithm>

namespace stillbay {
namespace {

TubeFigures tubeFigures(const HungBay& hung, const Setup& setup)
{
    const Tube& tube = hung.suspension.tube;
    const TubeLaws laws = tubeLaws(tube, hung.drawnLength);
    return {.youngs_modulus = hung.youngsModulus,
            .shear_modulus = shearModulus(hung.youngsModulus),
            .length = hung.drawnLength,
            .stretch = hung.drawnLength / tube.freeLength,
            .tension = laws.energy.d1,
            .axial_stiffness = laws.energy.d2,
            .lateral_stiffness = lateralStiffness(laws, hung.drawnLength),
            .own_resonance_hz = ownResonance_hz(tube, hung.drawnLength, laws.energy.d1),
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
        mode.words = motionInWords(mode.motion);
    }
    return figures;
}

HoverFigures hoverFigures(const ShakenAirframe& craft, double weight)
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

struct BayModes {
    Modes bench, flight;
};

Result<BayModes> bayModes(const HungBay& hung, const Pose& rest, const Matrix6cd& K,
                          const MassFigures& airframe)
{
    const MassFigures& bay = hung.suspension.bay;
    const Matrix6d M_b = massMatrix(bay, rest.R);
    const auto bench = solveModes(K, inverse(M_b));
    if (!bench)
        return tl::unexpected(bench.error());
    const Vector3d p_FB = bay.centre + rest.shift - airframe.centre;
    const auto flight = solveModes(K, inverseReducedMass(M_b, massMatrix(airframe), p_FB));
    if (!flight)
        return tl::unexpected(flight.error());
    return BayModes{*bench, *flight};
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
                                  const Shaking& shaking)
{
    const auto hung = makeHungBay(setup);
    if (!hung)
        return tl::unexpected(hung.error());
    const Suspension& suspension = hung->suspension;
    const auto rest = restPose(suspension, 1.0);
    if (!rest)
        return tl::unexpected(rest.error());
    const Matrix6cd K = dynamicStiffness(suspension, *rest, hung->dynamicFactor);

    Assessment result;
    result.bay = suspension.bay;
    result.airframe = rigidFigures(shaking.craft.airframe);
    const auto modes = bayModes(*hung, *rest, K, result.airframe);
    if (!modes)
        return tl::unexpected(modes.error());
    auto throttle = wobbleOverThrottle(shaking, suspension, *rest, K, makeCamera(setup.camera));
    if (!throttle)
        return tl::unexpected(throttle.error());
    addBolted(*throttle, shaking, suspension.bay, makeCamera(setup.camera));

    result.tube = tubeFigures(*hung, setup);
    result.rest = restFigures(suspension, *rest, 1.0);
    const auto rest3g = restPose(suspension, kPullUp);
    if (rest3g)
        result.rest_3g = restFigures(suspension, *rest3g, kPullUp);
    result.bench = modeFigures(modes->bench);
    result.flight = modeFigures(modes->flight);
    const CantileverFrequencies arm = armFrequencies(shaking.craft.airframe);
    result.arm_vertical_hz = arm.vertical_hz;
    result.arm_horizontal_hz = arm.horizontal_hz;
    const std::vector<double> frequency = options.frequency_hz.values();
    const Vector3d p_BC = rest->R * (hung->p_OC - suspension.bay.centre);
    Transmissibility curves = transmissibility(K, modes->bench, p_BC, frequency);
    result.transmissibility = {frequency, std::move(curves.x), std::move(curves.y),
                               std::move(curves.z)};
    result.propeller = shaking.craft.propeller;
    result.hover = hoverFigures(shaking.craft, (result.bay.mass + result.airframe.mass) * kGravity);
    result.throttle = std::move(*throttle);
    result.ranges = gradedRanges(result.throttle, setup.limits.faint_px, setup.limits.bad_px);
    result.cruise = overCruise(setup.flight, result.throttle);
    result.warnings = cautions({setup, shaking.craft, *hung, result});
    return result;
}

// What Shaking depends on; compared by value.
struct ShakingKey {
    Airframe airframe;
    Drive drive;
    double air_density_kg_m3 = 0.0;
    std::vector<double> throttles;
    bool flexible = true;

    bool operator==(const ShakingKey&) const = default;
};

}  // namespace

std::vector<double> throttlesOf(const Setup& setup, const AssessOptions& options)
{
    return options.throttle ? options.throttle->values() : CruiseWindow(setup.flight).sweep();
}

struct Assessor::Kept {
    ShakingKey key;
    Shaking shaking;
};

Assessor::Assessor() = default;
Assessor::~Assessor() = default;
Assessor::Assessor(Assessor&&) noexcept = default;
Assessor& Assessor::operator=(Assessor&&) noexcept = default;

Result<Assessment> Assessor::assess(const Setup& setup, const AssessOptions& options)
{
    if (const auto valid = validate(setup); !valid)
        return tl::unexpected(valid.error());
    ShakingKey key{setup.airframe, setup.drive, setup.flight.air_density_kg_m3,
                   throttlesOf(setup, options), options.flexible_airframe};
    if (!m_kept || m_kept->key != key) {
        Shaking shaking = prepareShaking(makeShakenAirframe(setup), key.throttles, key.flexible);
        m_kept = std::make_unique<Kept>(Kept{std::move(key), std::move(shaking)});
    }
    return assessPrepared(setup, options, m_kept->shaking);
}

Result<Assessment> assess(const Setup& setup, const AssessOptions& options)
{
    return Assessor().assess(setup, options);
}

}  // namespace stillbay
