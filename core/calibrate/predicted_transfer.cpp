// SPDX-License-Identifier: MIT
#include "core/calibrate/predicted_transfer.h"

#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/response/excitation.h"
#include "core/suspension/suspension.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillbay {
namespace {

// What a sensor shows along its axis for a motion of the point that `place` is measured from, which
// is u + θ × place: acceleration, and θ × (0, 0, −g) less of what gravity is to it.
Vector6d readingOf(const Vector3d& place, const Vector3d& axis, double omega)
{
    Vector6d reading;
    reading << axis, place.cross(axis);
    reading *= -omega * omega;
    reading.tail<3>() += axis.cross(Vector3d(0, 0, kGravity));
    return reading;
}

// The two bodies' motion at one frequency, for all load cases.
struct MovedBodies {
    std::vector<Vector6cd> airframe;  // of its reference point
    std::vector<Vector6cd> bay;       // of its centre of mass at rest
};

class CoupledCraft {
public:
    CoupledCraft(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                 const Vector3d& reference)
        : m_K(K), m_P(carry(bay.centre + rest.shift - reference).cast<Complex>())
    {
        m_inverseMass.setZero();
        m_inverseMass.topLeftCorner<3, 3>().diagonal().setConstant(1 / bay.mass);
        m_inverseMass.bottomRightCorner<3, 3>() =
            (rest.R * bay.inertia * rest.R.transpose()).inverse().cast<Complex>();
    }

    // (1 + (P R Pᵀ − M_b⁻¹/ω²) K*) δ = −P R F, δ the bay's motion against the airframe.
    MovedBodies at(const AirframeAt& airframe) const
    {
        const double square = airframe.omega * airframe.omega;
        const Matrix6cd D = Matrix6cd::Identity() +
                            (m_P * airframe.R * m_P.transpose() - m_inverseMass / square) * m_K;
        std::vector<Vector6cd> right;
        for (const Vector6cd& motion : airframe.freeMotion)
            right.push_back(-(m_P * motion));
        MovedBodies motions;
        const std::vector<Vector6cd> apart = solve(D, right);
        for (std::size_t load = 0; load < apart.size(); ++load) {
            const Vector6cd wrench = m_K * apart[load];
            motions.bay.push_back(m_inverseMass * wrench / square);
            motions.airframe.push_back(airframe.freeMotion[load] +
                                       airframe.R * (m_P.transpose() * wrench));
        }
        return motions;
    }

private:
    Matrix6cd m_K, m_P, m_inverseMass;
};

struct Sums {
    double xx = 0.0, yy = 0.0;
    Complex xy;  // Σ y x*
};

PredictedTransfer fromSums(const std::map<long, Sums>& rows, double step_hz, double count)
{
    PredictedTransfer result;
    for (const auto& [row, sums] : rows) {
        if (!(sums.xx > 0 && sums.yy > 0))
            continue;
        const Complex h1 = sums.xy / sums.xx;
        result.frequency_hz.push_back(static_cast<double>(row) * step_hz);
        result.magnitude.push_back(std::abs(h1));
        result.phase_deg.push_back(std::arg(h1) / unit::deg);
        result.coherence.push_back(std::min(1.0, std::norm(sums.xy) / (sums.xx * sums.yy)));
        result.input.push_back(sums.xx / 2 / count);
    }
    return result;
}

Result<void> validatePlan(const SensorPoint& onAirframe, const SensorPoint& onBay,
                          std::span<const double> throttles, double step_hz)
{
    for (const SensorPoint* const sensor : {&onAirframe, &onBay})
        if (!sensor->place.allFinite() || !sensor->axis.allFinite() || !(sensor->axis.norm() > 0))
            return fail(Errc::BadInput, phrase("a sensor needs a place and an axis"));
    if (throttles.empty())
        return fail(Errc::BadInput, phrase("no throttle is given"));
    for (const double u : throttles)
        if (!(u >= 0 && u <= 1))
            return fail(Errc::BadInput, phrase("throttle %1 is not within 0 to 1", rounded(u, 4)));
    if (!(step_hz > 0) || !std::isfinite(step_hz))
        return fail(Errc::BadInput, phrase("the step of frequency must be above 0 Hz"));
    return {};
}

}  // namespace

Result<PredictedTransfer> predictedTransfer(const Setup& setup, const SensorPoint& onAirframe,
                                            const SensorPoint& onBay,
                                            std::span<const double> throttles, double step_hz,
                                            bool flexible)
{
    if (const auto valid = validatePlan(onAirframe, onBay, throttles, step_hz); !valid)
        return tl::unexpected(valid.error());
    const auto mounted = makeMountedBay(setup);
    if (!mounted)
        return tl::unexpected(mounted.error());
    const auto rest = restPose(mounted->suspension, 1.0);
    if (!rest)
        return tl::unexpected(rest.error());
    const Matrix6cd K = dynamicStiffness(mounted->suspension, *rest, mounted->dynamicFactor);
    const ExcitedAirframe excited = makeExcitedAirframe(setup);
    const Vector3d reference = referencePoint(excited.airframe, flexible);
    const MassFigures& bay = mounted->suspension.bay;
    const CoupledCraft craft(bay, *rest, K, reference);
    const Vector3d placeX = onAirframe.place - reference, axisX = onAirframe.axis.normalized();
    const Vector3d placeY = rest->R * (onBay.place - bay.centre),
                   axisY = rest->R * onBay.axis.normalized();

    std::map<long, Sums> rows;
    for (const double u : throttles)
        for (const ExcitationOrder& order : excitationPoint(excited, u, flexible).orders) {
            if (order.airframe.freeMotion.empty())
                continue;
            const MovedBodies motions = craft.at(order.airframe);
            const Vector6d readX = readingOf(placeX, axisX, order.airframe.omega);
            const Vector6d readY = readingOf(placeY, axisY, order.airframe.omega);
            Sums& sums = rows[std::lround(order.frequency_hz / step_hz)];
            for (std::size_t motor = 0; motor < motions.bay.size(); ++motor) {
                const Complex x = (readX.transpose() * motions.airframe[motor]).value();
                const Complex y = (readY.transpose() * motions.bay[motor]).value();
                sums.xx += std::norm(x);
                sums.yy += std::norm(y);
                sums.xy += y * std::conj(x);
            }
        }
    PredictedTransfer result = fromSums(rows, step_hz, static_cast<double>(throttles.size()));
    if (result.frequency_hz.empty())
        return fail(Errc::NoAnswer, phrase("at these throttles no motor moves the sensors"));
    return result;
}

}  // namespace stillbay
