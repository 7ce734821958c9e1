// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"

#include "core/assess/constraints.h"
#include "core/assess/warnings.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/clearance.h"
#include "core/craft/craft.h"
#include "core/drive/balance.h"
#include "core/response/bay_at_rest.h"
#include "core/response/cruise.h"
#include "core/response/excitation.h"
#include "core/response/flight_sweep.h"
#include "core/response/wobble.h"
#include "core/response/wobble_curve.h"
#include "core/setup/validate.h"
#include "core/suspension/elastic_centre.h"
#include "core/suspension/modes.h"
#include "core/suspension/motion_text.h"
#include "core/suspension/transmissibility.h"
#include "core/tube/own_resonance.h"

#include <algorithm>
#include <iterator>

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
            .own_resonance_hz =
                ownResonance_hz(tube, mounted.drawnLength, mounted.dynamicFactor.real()),
            .modulus_from_hardness = !setup.tube.youngs_modulus_mpa.has_value()};
}

std::array<ModeFigures, 6> modeFigures(const Modes& modes, const Matrix6d& mu)
{
    std::array<ModeFigures, 6> figures;
    for (Eigen::Index k = 0; k < 6; ++k) {
        ModeFigures& mode = figures[static_cast<std::size_t>(k)];
        mode.frequency_hz = frequency_hz(modes.omegaSquare[k]);
        mode.loss_factor = lossFactor(modes.omegaSquare[k]);
        mode.motion = motionOf(modes.Phi.col(k));
        mode.energy = energyShares(mode.motion, mu);
        mode.text = motionText(mode.motion);
    }
    return figures;
}

double decouplingOf(const std::array<ModeFigures, 6>& modes)
{
    Matrix6d shares;
    for (std::size_t k = 0; k < modes.size(); ++k)
        shares.col(static_cast<Eigen::Index>(k)) = modes[k].energy;
    return decoupling(shares);
}

// The longest arm bends first.
CantileverFrequencies armFrequencies(const AirframeModel& airframe)
{
    double longest = 0.0;
    for (const ArmPlace& place : airframe.arms)
        longest = std::max(longest, place.length);
    return cantileverFrequencies(airframe.arm, longest,
                                 airframe.tip.motor.mass + airframe.tip.propeller.mass);
}

// μ⁻¹ of the bay against the airframe in flight.
Matrix6d inverseFlightMass(const BayAtRest& atRest, const MassFigures& airframe)
{
    const MassFigures& bay = atRest.mounted.suspension.bay;
    const Vector3d p_FB = bay.centre + atRest.pose.shift - airframe.centre;
    return inverseReducedMass(massMatrix(bay, atRest.pose.R), massMatrix(airframe), p_FB);
}

constexpr double kLookFrom = 1.0 / 3;  // of the faint limit: a lower point hides no faint peak

// What an assessment takes from one craft to the next while it stays the same.
struct Prepared {
    const Excitation& asked;               ///< the throttles asked for, at the full pack
    const FilmedFlight& flight;            ///< those and finer ones through the camera
    const std::vector<RigidPoint>& rigid;  ///< of `asked`
};

Result<Assessment> assessPrepared(const Setup& setup, const AssessOptions& options,
                                  const Prepared& prepared)
{
    const Excitation& excitation = prepared.asked;
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
    const Matrix6d inverseMu = inverseFlightMass(bay, result.airframe);
    const auto flight = solveModes(bay.K, inverseMu);
    if (!flight)
        return tl::unexpected(flight.error());
    const CameraModel camera = makeCamera(setup.camera);
    auto throttle = wobbleOverThrottle(excitation, suspension, bay.pose, bay.K, camera);
    if (!throttle)
        return tl::unexpected(throttle.error());
    addRigid(*throttle, prepared.rigid);

    result.tube = tubeFigures(bay.mounted, setup);
    result.rest = bay.at1g;
    result.rest_3g = bay.at3g;
    result.bench = modeFigures(bay.bench, massMatrix(suspension.bay, bay.pose.R));
    result.flight = modeFigures(*flight, inverse(inverseMu));
    result.bench_decoupling = decouplingOf(result.bench);
    result.elastic_centre = elasticCentre(bay.K.real());
    const CantileverFrequencies arm = armFrequencies(excitation.craft.airframe);
    result.arm_vertical_hz = arm.vertical_hz;
    result.arm_horizontal_hz = arm.horizontal_hz;
    const std::vector<double> frequency = options.frequency_hz.values();
    const Vector3d p_BC = bay.pose.R * (bay.mounted.p_OC - suspension.bay.centre);
    Transmissibility curves = transmissibility(bay.K, bay.bench, p_BC, frequency);
    result.transmissibility = {frequency,
                               std::move(curves.x),
                               std::move(curves.y),
                               std::move(curves.z),
                               std::move(curves.roll),
                               std::move(curves.pitch),
                               std::move(curves.yaw)};
    result.motor = excitation.craft.motor;
    result.propeller = excitation.craft.propeller;
    result.hover = hoverFigures(excitation.craft, result.airframe, result.bay);
    const auto wobble = prepared.flight.sweep(suspension.bay, bay.pose, bay.K, 1.0,
                                              kLookFrom * setup.limits.faint_px);
    if (!wobble)
        return tl::unexpected(wobble.error());
    result.cruise = cruiseFigures(CruiseWindow(setup.flight), *wobble);
    result.throttle = std::move(*throttle);
    result.curve = wobbleCurve(wobble->full.throttle, wobble->full.wobble_px, wobble->full.peaks);
    result.ranges = gradedRanges(result.curve, setup.limits.faint_px, setup.limits.bad_px);
    const ConstraintInputs constraints{
        bay,           setup.bay,     setup.tube.max_stretch,
        &result.hover, &setup.flight, propellerClearance(setup.airframe, setup.drive.propeller)};
    result.warnings = warningsOf({setup, excitation.craft, bay, constraints, result});
    result.status = statusOf(constraints, result.cruise, setup.limits);
    return result;
}

}  // namespace

std::vector<double> throttlesOf(const Setup& setup, const AssessOptions& options)
{
    return options.throttle ? options.throttle->values() : CruiseWindow(setup.flight).sweep();
}

HoverFigures hoverFigures(const ExcitedAirframe& craft, const MassFigures& airframe,
                          const MassFigures& bay)
{
    const double perMotor = (airframe.mass + bay.mass) * kGravity / craft.drive.motors;
    const double speed = speedForThrust(craft.drive, perMotor);
    return {speed * 60, perMotor, throttleForSpeed(craft.drive, speed, craft.fullVoltage),
            throttleForSpeed(craft.drive, speed, craft.emptyVoltage),
            balanceGrade_mm_s(*std::max_element(craft.unbalance.begin(), craft.unbalance.end()),
                              craft.rotorMass, speed)};
}

struct Assessor::Kept {
    // What the excitation depends on; compared by value.
    struct Key {
        Airframe airframe;
        Drive drive;
        Flight flight;
        std::optional<Grid> throttle;
        bool flexible = true;

        bool operator==(const Key&) const = default;
    };

    Kept(Key of, const Setup& setup, const AssessOptions& options) : key(std::move(of))
    {
        const std::vector<double> wanted = throttlesOf(setup, options);
        flight = prepareFlight(makeExcitedAirframe(setup), key.flight, wanted, Throttles::All,
                               key.flexible);
        const Excitation& sweep = flight.sweep;
        asked = {sweep.craft, sweep.flexible, sweep.reference, {}};
        std::copy_if(sweep.points.begin(), sweep.points.end(), std::back_inserter(asked.points),
                     [&wanted](const ExcitationPoint& point) {
                         return std::binary_search(wanted.begin(), wanted.end(), point.throttle);
                     });
    }

    Key key;
    FlightExcitation flight;
    Excitation asked;
    Camera camera;  // that has filmed
    std::optional<FilmedFlight> filmed;
    Bay bay;  // that is rigidly mounted
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
    Kept::Key key{setup.airframe, setup.drive, setup.flight, options.throttle,
                  options.flexible_airframe};
    key.flight.notes.clear();  // what was seen changes nothing
    if (!m_kept || m_kept->key != key)
        m_kept = std::make_unique<Kept>(std::move(key), setup, options);
    if (!m_kept->filmed || m_kept->camera != setup.camera) {
        m_kept->camera = setup.camera;
        m_kept->filmed.emplace(m_kept->flight, makeCamera(setup.camera));
        m_kept->rigid.reset();
    }
    if (!m_kept->rigid || m_kept->bay != setup.bay) {
        m_kept->bay = setup.bay;
        m_kept->rigid =
            rigidOverThrottle(m_kept->asked, makeBody(setup.bay.parts), makeCamera(setup.camera));
    }
    return assessPrepared(setup, options, {m_kept->asked, *m_kept->filmed, *m_kept->rigid});
}

Result<Assessment> assess(const Setup& setup, const AssessOptions& options)
{
    return Assessor().assess(setup, options);
}

}  // namespace stillbay
