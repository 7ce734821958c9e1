// SPDX-License-Identifier: MIT
#include "core/calibrate/unbalance.h"

#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/bay_at_rest.h"
#include "core/response/excitation.h"
#include "core/setup/unbalance.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace stillbay {
namespace {

constexpr double kWorstShakeCondition = 30.0;
constexpr double kLeastShakeSpread = 0.01;

using Motions = std::vector<std::vector<Complex>>;  // per motor, per axis

/// A craft with its bay hanging from it.
class Shaken {
public:
    Shaken(const Setup& setup, BayAtRest bay)
        : m_craft(makeExcitedAirframe(setup)),
          m_bay(std::move(bay)),
          m_reference(referencePoint(m_craft.airframe, true))
    {
    }

    const ExcitedAirframe& craft() const { return m_craft; }

    // For an unbalance of 1 kg·m.
    Motions at(double speed, std::span<const SensorAxis> axes) const
    {
        const double omega = 2 * std::numbers::pi * speed;
        const Receptance airframe = receptance(m_craft.airframe, omega, speed, true);
        const Matrix6cd withBay =
            inverse(Matrix6cd(Matrix6cd::Identity() + airframe.R * felt(omega)));
        Motions motions;
        const Matrix3d lever = skew({0, 0, m_craft.airframe.tip.propeller.height});
        for (std::size_t motor = 0; motor < airframe.motor.size(); ++motor) {
            const Vector3cd force = omega * omega * Vector3cd(1, Complex(0, -spinOf(motor)), 0);
            Vector6cd tipWrench;
            tipWrench << force, lever * force;
            const Vector6cd hub = withBay * (airframe.R * (airframe.motor[motor] * tipWrench));
            std::vector<Complex>& seen = motions.emplace_back();
            for (const SensorAxis& axis : axes) {
                const Matrix3cd arm = skew(axis.place - m_reference).cast<Complex>();
                const Vector3cd moved = hub.head<3>() - arm * hub.tail<3>();
                seen.push_back(-omega * omega * axis.direction.cast<Complex>().dot(moved));
            }
        }
        return motions;
    }

private:
    // The hanging bay's dynamic stiffness, as the airframe's reference point feels it.
    Matrix6cd felt(double omega) const
    {
        const MassFigures& bay = m_bay.mounted.suspension.bay;
        const Matrix6cd& K = m_bay.K;
        const Matrix6cd own = K - omega * omega * massMatrix(bay, m_bay.pose.R).cast<Complex>();
        const Matrix6cd D = K - K * inverse(own) * K;
        const Matrix6cd P = carry(bay.centre + m_bay.pose.shift - m_reference).cast<Complex>();
        return P.transpose() * D * P;
    }

    ExcitedAirframe m_craft;
    BayAtRest m_bay;
    Vector3d m_reference;
};

Result<Shaken> makeShaken(const Setup& setup)
{
    auto mounted = makeMountedBay(setup);
    if (!mounted)
        return tl::unexpected(mounted.error());
    auto bay = letGo(*std::move(mounted));
    if (!bay)
        return tl::unexpected(bay.error());
    if (const auto done = addModes(*bay); !done)
        return tl::unexpected(done.error());
    return Shaken(setup, *std::move(bay));
}

double power(const std::vector<Complex>& amplitudes)
{
    double sum = 0;
    for (const Complex& a : amplitudes)
        sum += std::norm(a);
    return sum;
}

/// A line with what each motor at 1 kg·m would make of it.
struct Equation {
    const ShakeLine* line = nullptr;
    Motions motions;
};

/// One unbalance and its relative spread without the model's; none: nothing above the noise.
struct Found {
    double unbalance = 0.0, spread = 0.0;  // [kg·m]
};

// Of one motor alone on its lines.
std::optional<Found> aloneOn(const std::vector<Equation>& equations, std::size_t motor,
                             bool arePhasesKnown)
{
    double sum = 0, weights = 0;
    for (const Equation& equation : equations) {
        if (equation.line->motor != motor)
            continue;
        const std::vector<Complex>& seen = equation.line->acceleration;
        const std::vector<Complex>& model = equation.motions[motor];
        const double noise = equation.line->noise, square = power(model);
        Complex along = 0;
        for (std::size_t k = 0; k < seen.size(); ++k)
            along += std::conj(model[k]) * seen[k];
        // Without phases noise adds to the power.
        const double own = power(seen) - 2 * noise * noise * static_cast<double>(seen.size());
        const double value =
            arePhasesKnown ? std::abs(along) / square : std::sqrt(std::max(own, 0.0) / square);
        const double spread = std::max(noise / std::sqrt(square), kLeastShakeSpread * value);
        if (!(spread > 0))
            continue;
        sum += value / (spread * spread);
        weights += 1 / (spread * spread);
    }
    if (!(weights > 0) || !(sum > 0))
        return {};
    return Found{sum / weights, std::sqrt(1 / weights) / (sum / weights)};
}

/// All motors from the axes of common lines.
struct Apart {
    std::vector<Found> motors;
    double condition = 0.0;  // the worst of the lines that were used
};

std::optional<Apart> apart(const std::vector<Equation>& equations, std::size_t motors)
{
    std::vector<double> sum(motors), weights(motors);
    double worst = 0;
    for (const Equation& equation : equations) {
        const std::vector<Complex>& seen = equation.line->acceleration;
        const auto rows = static_cast<Eigen::Index>(seen.size()),
                   columns = static_cast<Eigen::Index>(motors);
        if (rows < columns)
            return {};
        Eigen::MatrixXcd H(rows, columns);
        Eigen::VectorXcd a(rows);
        for (Eigen::Index i = 0; i < rows; ++i) {
            a[i] = seen[static_cast<std::size_t>(i)];
            for (Eigen::Index j = 0; j < columns; ++j)
                H(i, j) =
                    equation.motions[static_cast<std::size_t>(j)][static_cast<std::size_t>(i)];
        }
        const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXcd> solver(
            Eigen::MatrixXcd(H.adjoint() * H));
        const Eigen::VectorXd squares = solver.eigenvalues();
        const double condition = std::sqrt(squares[columns - 1] / std::max(squares[0], 0.0));
        if (!(condition < kWorstShakeCondition))
            continue;
        worst = std::max(worst, condition);
        const Eigen::MatrixXcd& V = solver.eigenvectors();
        const Eigen::VectorXcd z =
            V * (V.adjoint() * (H.adjoint() * a)).cwiseQuotient(squares.cast<Complex>());
        for (Eigen::Index j = 0; j < columns; ++j) {
            double variance = 0;
            for (Eigen::Index k = 0; k < columns; ++k)
                variance += std::norm(V(j, k)) / squares[k];
            const double noise = equation.line->noise;
            const double value = std::abs(z[j]);
            const double spread =
                std::max(noise * std::sqrt(variance), kLeastShakeSpread * z.cwiseAbs().maxCoeff());
            const auto motor = static_cast<std::size_t>(j);
            if (!(spread > 0))
                return {};
            sum[motor] += value / (spread * spread);
            weights[motor] += 1 / (spread * spread);
        }
    }
    if (!(worst > 0))
        return {};
    Apart result{{}, worst};
    for (std::size_t motor = 0; motor < motors; ++motor) {
        const double value = sum[motor] / weights[motor];
        result.motors.push_back({value, std::sqrt(1 / weights[motor]) / std::max(value, 1e-12)});
    }
    return result;
}

// What all have in common, by power.
std::optional<Found> inCommon(const std::vector<Equation>& equations, bool areBeatsAveraged)
{
    double sum = 0, weights = 0, ofPhases = 0;
    std::vector<double> each;
    for (const Equation& equation : equations) {
        const std::vector<Complex>& seen = equation.line->acceleration;
        const double noise = equation.line->noise;
        double all = 0, squares = 0;
        for (const std::vector<Complex>& motion : equation.motions) {
            const double own = power(motion);
            all += own;
            squares += own * own;
        }
        const double own = power(seen) - 2 * noise * noise * static_cast<double>(seen.size());
        sum += std::max(own, 0.0) / all;
        weights += 1;
        each.push_back(std::max(own, 0.0) / all);
        // Motors of random phase on one axis: the variance of the sum's power.
        ofPhases += areBeatsAveraged ? 0.0 : 1 - squares / (all * all);
    }
    const double mean = sum / weights;
    if (!(mean > 0))
        return {};
    double scatter = 0;
    for (const double value : each)
        scatter += (value / mean - 1) * (value / mean - 1);
    const double ofPower = std::max(each.size() > 1 ? scatter / (weights * (weights - 1)) : 0.0,
                                    ofPhases / (weights * weights));
    return Found{std::sqrt(mean), 0.5 * std::sqrt(ofPower)};
}

Result<void> checkLines(const Setup& setup, std::span<const SensorAxis> axes,
                        std::span<const ShakeLine> lines)
{
    if (axes.empty() || lines.empty())
        return fail(Errc::BadInput, phrase("No level was measured: at least one axis at one "
                                           "throttle is needed"));
    for (const ShakeLine& line : lines) {
        if (!(line.throttle >= 0 && line.throttle <= 1))
            return fail(Errc::BadInput,
                        phrase("A throttle is %1, must be from 0 to 1", exact(line.throttle)));
        if (line.speed && !(*line.speed > 0 && std::isfinite(*line.speed)))
            return fail(Errc::BadInput, phrase("A speed is %1 rpm, must be above 0",
                                               rounded(*line.speed / unit::rpm, 5)));
        if (line.motor && *line.motor >= setup.airframe.arms.size())
            return fail(Errc::BadInput,
                        phrase("There is no motor %1, the craft has %2", whole(*line.motor + 1),
                               whole(setup.airframe.arms.size())));
        if (line.acceleration.size() != axes.size())
            return fail(Errc::BadInput,
                        phrase("A reading has %1 amplitudes for %2 axes",
                               whole(line.acceleration.size()), whole(axes.size())));
        if (line.motor.has_value() != lines[0].motor.has_value())
            return fail(Errc::BadInput, phrase("Some readings are of one motor and others of all; "
                                               "all must be alike"));
    }
    return {};
}

Warning commonOnly()
{
    return {"motors-not-told",
            phrase("These readings do not tell the motors apart: the value is what all have in "
                   "common. Motors that turn at speeds of their own, or as many axes as motors, "
                   "would.")};
}

Warning oneMoment()
{
    return {"one-moment",
            phrase("At one moment the motors may just add or cancel: readings at more throttles, "
                   "or over a longer time, narrow the value.")};
}

Phrase shakeText(std::size_t throttles)
{
    return throttles == 1 ? phrase("airframe level at one throttle")
                          : phrase("airframe level at %1 throttles", whole(throttles));
}

CorrectedValue ofMotor(const Setup& setup, std::size_t motor, const Found& found, double model)
{
    return {"airframe.arms[" + std::to_string(motor) + "].unbalance_g_mm",
            phrase("unbalance of motor %1", whole(motor + 1)),
            "g·mm",
            unbalanceOf_g_mm(setup, setup.airframe.arms[motor]),
            found.unbalance / unit::g_mm,
            std::min(std::hypot(found.spread, model), 2.0)};
}

// What each line leaves unexplained, root mean square over what was measured.
double shakeResidual(const std::vector<Equation>& equations, const std::vector<double>& unbalances)
{
    double squares = 0;
    for (const Equation& equation : equations) {
        double model = 0;
        for (std::size_t motor = 0; motor < unbalances.size(); ++motor)
            if (!equation.line->motor || equation.line->motor == motor)
                model += unbalances[motor] * unbalances[motor] * power(equation.motions[motor]);
        const double measured = power(equation.line->acceleration);
        squares += std::pow(1 - std::sqrt(model / measured), 2);
    }
    return std::sqrt(squares / static_cast<double>(equations.size()));
}

}  // namespace

Result<std::vector<std::vector<Complex>>> shakeOfMotors(const Setup& setup,
                                                        std::span<const SensorAxis> axes,
                                                        double speed)
{
    const auto shaken = makeShaken(setup);
    if (!shaken)
        return tl::unexpected(shaken.error());
    return shaken->at(speed, axes);
}

Result<Correction> unbalanceTest(const Setup& setup, std::span<const SensorAxis> axes,
                                 std::span<const ShakeLine> lines, const ShakeOptions& options)
{
    if (const auto valid = checkLines(setup, axes, lines); !valid)
        return tl::unexpected(valid.error());
    const auto shaken = makeShaken(setup);
    if (!shaken)
        return tl::unexpected(shaken.error());
    std::vector<Equation> equations;
    for (const ShakeLine& line : lines) {
        const double speed = line.speed.value_or(
            rotorSpeed(shaken->craft().drive, line.throttle, shaken->craft().fullVoltage));
        if (!(speed > 0))
            return fail(Errc::BadInput, phrase("At %1 % throttle the rotors stand still",
                                               rounded(kPercent * line.throttle, 3)));
        if (!(power(line.acceleration) > 0) || !std::isfinite(power(line.acceleration)))
            return fail(Errc::NoAnswer, phrase("A reading shows no motion"));
        equations.push_back({&line, shaken->at(speed, axes)});
    }

    const std::size_t motors = setup.airframe.arms.size();
    std::vector<double> before, after;
    for (const Arm& arm : setup.airframe.arms)
        before.push_back(unbalanceOf_g_mm(setup, arm) * unit::g_mm);
    after = before;
    Correction correction;
    correction.measurement = shakeText(lines.size());
    correction.residualBefore = shakeResidual(equations, before);
    if (lines[0].motor) {
        for (std::size_t motor = 0; motor < motors; ++motor)
            if (const auto found = aloneOn(equations, motor, options.arePhasesKnown)) {
                after[motor] = found->unbalance;
                correction.values.push_back(ofMotor(setup, motor, *found, options.modelSpread));
            }
        correction.mark = {Quality::Good, phrase("each line is one motor's")};
    } else if (const auto each = options.arePhasesKnown ? apart(equations, motors) : std::nullopt) {
        for (std::size_t motor = 0; motor < motors; ++motor) {
            after[motor] = each->motors[motor].unbalance;
            correction.values.push_back(
                ofMotor(setup, motor, each->motors[motor], options.modelSpread));
        }
        correction.mark = {
            each->condition < kWorstShakeCondition / 3 ? Quality::Good : Quality::Fair,
            phrase("the axes tell the motors apart, condition number %1",
                   rounded(each->condition, 2))};
    } else if (const auto common = inCommon(equations, options.areBeatsAveraged)) {
        after.assign(motors, common->unbalance);
        correction.values.push_back({"drive.unbalance_g_mm", phrase("unbalance of the propellers"),
                                     "g·mm", setup.drive.unbalance_g_mm,
                                     common->unbalance / unit::g_mm,
                                     std::hypot(common->spread, options.modelSpread)});
        for (std::size_t motor = 0; motor < motors; ++motor)
            if (setup.airframe.arms[motor].unbalance_g_mm)
                correction.values.push_back(ofMotor(setup, motor, *common, options.modelSpread));
        correction.warnings.push_back(commonOnly());
        if (!options.areBeatsAveraged && lines.size() < 3)
            correction.warnings.push_back(oneMoment());
        correction.mark = {Quality::Fair, phrase("the motors are not told apart")};
    }
    if (correction.values.empty())
        return fail(Errc::NoAnswer, phrase("Nothing stands above the noise"));
    correction.residual = shakeResidual(equations, after);
    return correction;
}

}  // namespace stillbay
