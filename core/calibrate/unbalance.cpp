// SPDX-License-Identifier: MIT
#include "core/calibrate/unbalance.h"

#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/bay_at_rest.h"
#include "core/response/excitation.h"
#include "core/setup/unbalance.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace stillbay {
namespace {

constexpr double kWorstShakeCondition = 30.0;
constexpr double kLeastShakeSpread = 0.01;
constexpr double kTuningDoubt = 0.03;  // of the frequencies of arms and bay
constexpr double kEvenDoubt = 0.05;    // of a line's power, that none is surer than
// Of random phases alone: amplitudes by Rayleigh leave √(2 − √π) = 0.48 about their rms.
constexpr double kMostUnexplained = 0.6;

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
                // Turned by θ it shows θ × (0, 0, −g) less of what gravity is to it.
                const Vector3cd tilted = skew(Vector3d(0, 0, kGravity)) * hub.tail<3>();
                seen.push_back(
                    axis.direction.cast<Complex>().dot(Vector3cd(-omega * omega * moved + tilted)));
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
    std::vector<double> doubts;  // of each motor's motion, over it, from where the resonances lie
    double doubtOfAll = 0.0;     // of the power of all together, over it
};

double powerOfAll(const Motions& motions)
{
    double sum = 0;
    for (const auto& motion : motions)
        sum += power(motion);
    return sum;
}

// Resonances somewhat higher are as a speed somewhat lower.
Equation equationOf(const ShakeLine& line, double speed, const Shaken& shaken,
                    std::span<const SensorAxis> axes)
{
    Equation equation{&line, shaken.at(speed, axes), {}, 0.0};
    // Both loads and accelerations go with the speed's square whatever resounds.
    const double whole = std::pow(1 + kTuningDoubt, 4);
    const Motions beside = shaken.at((1 + kTuningDoubt) * speed, axes);
    for (std::size_t motor = 0; motor < beside.size(); ++motor)
        equation.doubts.push_back(0.5 * std::abs(std::log(power(beside[motor]) / whole /
                                                          power(equation.motions[motor]))));
    equation.doubtOfAll =
        std::abs(std::log(powerOfAll(beside) / whole / powerOfAll(equation.motions)));
    return equation;
}

/// One unbalance and its relative spread without the model's; none: nothing above the noise.
struct Found {
    double unbalance = 0.0, spread = 0.0;  // [kg·m]
};

// Of one motor alone on its lines.
std::optional<Found> aloneOn(const std::vector<Equation>& equations, std::size_t motor,
                             bool arePhasesKnown)
{
    double sum = 0, weights = 0;
    std::vector<double> values;
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
        const double spread =
            std::hypot(noise / std::sqrt(square),
                       std::hypot(kLeastShakeSpread, equation.doubts[motor]) * value);
        if (!(spread > 0))
            continue;
        sum += value / (spread * spread);
        weights += 1 / (spread * spread);
        values.push_back(value);
    }
    if (!(weights > 0) || !(sum > 0))
        return {};
    const double mean = sum / weights;
    double scatter = 0;
    for (const double value : values)
        scatter += (value - mean) * (value - mean);
    const auto count = static_cast<double>(values.size());
    const double ofScatter = count > 1 ? std::sqrt(scatter / (count * (count - 1))) : 0.0;
    return Found{mean, std::max(std::sqrt(1 / weights), ofScatter) / mean};
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
        // H z = a in real numbers: real parts above imaginary ones. Each eigenvalue comes twice.
        Eigen::MatrixXd H(2 * rows, 2 * columns);
        Eigen::VectorXd a(2 * rows);
        for (Eigen::Index i = 0; i < rows; ++i) {
            a[i] = seen[static_cast<std::size_t>(i)].real();
            a[rows + i] = seen[static_cast<std::size_t>(i)].imag();
            for (Eigen::Index j = 0; j < columns; ++j) {
                const Complex motion =
                    equation.motions[static_cast<std::size_t>(j)][static_cast<std::size_t>(i)];
                H(i, j) = H(rows + i, columns + j) = motion.real();
                H(rows + i, j) = motion.imag();
                H(i, columns + j) = -motion.imag();
            }
        }
        const auto [squares, V] = denseSymmetricEigen(H.transpose() * H);
        const double condition = std::sqrt(squares[2 * columns - 1] / std::max(squares[0], 0.0));
        if (!(condition < kWorstShakeCondition))
            continue;
        worst = std::max(worst, condition);
        const Eigen::VectorXd parts =
            V * (V.transpose() * (H.transpose() * a)).cwiseQuotient(squares);
        const Eigen::VectorXd z =
            (parts.head(columns).array().square() + parts.tail(columns).array().square()).sqrt();
        for (Eigen::Index j = 0; j < columns; ++j) {
            double variance = 0;
            for (Eigen::Index k = 0; k < 2 * columns; ++k)
                variance += V(j, k) * V(j, k) / squares[k];
            const double noise = equation.line->noise;
            const double value = z[j];
            const double spread =
                std::max(noise * std::sqrt(variance), kLeastShakeSpread * z.maxCoeff());
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

// Variance of the power of motors of random phases, over its mean: Σ_{j≠k} |h_jᴴ h_k|² of
// Σ_j |h_j|².
double varianceOfPhases(const Motions& motions)
{
    double unlike = 0;
    for (std::size_t j = 0; j < motions.size(); ++j)
        for (std::size_t k = 0; k < motions.size(); ++k) {
            Complex product = 0;
            for (std::size_t i = 0; i < motions[j].size(); ++i)
                product += std::conj(motions[j][i]) * motions[k][i];
            unlike += j == k ? 0.0 : std::norm(product);
        }
    return unlike / std::pow(powerOfAll(motions), 2);
}

// What all have in common, by power.
std::optional<Found> inCommon(const std::vector<Equation>& equations, const ShakeOptions& options)
{
    struct Square {
        double value, weight;
    };
    double sum = 0, weights = 0, weightSquares = 0, ofPhases = 0, ofNoise = 0;
    std::vector<Square> each;
    for (const Equation& equation : equations) {
        const std::vector<Complex>& seen = equation.line->acceleration;
        const double noise = equation.line->noise, all = powerOfAll(equation.motions);
        const double own = power(seen) - 2 * noise * noise * static_cast<double>(seen.size());
        const double phases = options.areBeatsAveraged ? 0.0 : varianceOfPhases(equation.motions);
        // Where beats are averaged, nothing but the model's steepness tells good lines from bad.
        const double weight = 1 / (phases + kEvenDoubt + equation.doubtOfAll * equation.doubtOfAll);
        each.push_back({std::max(own, 0.0) / all, weight});
        sum += weight * each.back().value;
        weights += weight;
        weightSquares += weight * weight;
        ofPhases += weight * phases;
        ofNoise += weight * weight * 4 * noise * noise * each.back().value / all;
    }
    const double mean = sum / weights;
    if (!(mean > 0))
        return {};
    double scatter = 0;
    for (const Square& square : each)
        scatter += square.weight * std::pow(square.value / mean - 1, 2);
    scatter /= weights;
    // As many as weigh alike, and no more than there are independent ones.
    const double lines = std::max(1.0, weights * weights / weightSquares);
    const double moments = std::clamp(options.moments.value_or(lines), 1.0, lines);
    const double ofScatter = each.size() > 1 ? scatter / std::max(moments - 1, 0.5) : 0.0;
    const double ofPower = std::max(ofScatter, ofPhases / weights / moments) +
                           ofNoise / (weights * weights) / (mean * mean);
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

// What the levels leave unexplained over what was measured, each over the motion that an unbalance
// of 1 kg·m would make.
double shakeResidual(const std::vector<Equation>& equations, const std::vector<double>& unbalances)
{
    double squares = 0, whole = 0;
    for (const Equation& equation : equations) {
        const std::optional<std::size_t>& owner = equation.line->motor;
        double model = 0;
        for (std::size_t motor = 0; motor < unbalances.size(); ++motor)
            if (!owner || *owner == motor)
                model += unbalances[motor] * unbalances[motor] * power(equation.motions[motor]);
        const double unit = owner ? power(equation.motions[*owner]) : powerOfAll(equation.motions);
        const double doubt = owner ? 2 * equation.doubts[*owner] : equation.doubtOfAll;
        const double weight = 1 / (kEvenDoubt + doubt * doubt);
        const double measured = std::sqrt(power(equation.line->acceleration) / unit);
        squares += weight * std::pow(measured - std::sqrt(model / unit), 2);
        whole += weight * measured * measured;
    }
    return std::sqrt(squares / whole);
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
        equations.push_back(equationOf(line, speed, *shaken, axes));
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
    } else if (const auto common = inCommon(equations, options)) {
        after.assign(motors, common->unbalance);
        correction.values.push_back({"drive.unbalance_g_mm", phrase("unbalance of the propellers"),
                                     "g·mm", setup.drive.unbalance_g_mm,
                                     common->unbalance / unit::g_mm,
                                     std::hypot(common->spread, options.modelSpread)});
        for (std::size_t motor = 0; motor < motors; ++motor)
            if (setup.airframe.arms[motor].unbalance_g_mm)
                correction.values.push_back(ofMotor(setup, motor, *common, options.modelSpread));
        correction.warnings.push_back(commonOnly());
        if (!options.areBeatsAveraged &&
            options.moments.value_or(static_cast<double>(lines.size())) < 3)
            correction.warnings.push_back(oneMoment());
        correction.mark = {Quality::Fair, phrase("the motors are not told apart")};
    }
    if (correction.values.empty())
        return fail(Errc::NoAnswer, phrase("Nothing stands above the noise"));
    correction.residual = shakeResidual(equations, after);
    // Beats alone leave up to half of a moment's level.
    if (correction.residual > kMostUnexplained)
        correction.mark = {Quality::Poor,
                           phrase("the lines do not go with the speed as this craft's would: "
                                  "correct arms and tubes first, or look where the sensor sat")};
    return correction;
}

}  // namespace stillbay
