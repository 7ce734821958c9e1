// SPDX-License-Identifier: MIT
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/airframe/element_arm.h"
#include "tests/lapack/lapack.h"
#include "tests/recordings/noise.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/table_text.h"
#include "tests/recordings/true_reedbed.h"

#include <kissfft/kissfft.hh>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stillbay::test {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;
constexpr double kDuration = 16.0;  // [s]
constexpr double kFirstStick = 0.08, kLastStick = 0.40;
constexpr double kAirframeRate = 1000, kBayRate = 500;  // [Hz], each by its own clock
constexpr double kBayTo = 15.87;                        // [s] by the airframe's clock
constexpr double kNoise = 0.03;                         // [m/s²] of each sensor
constexpr double kGust = 0.10;     // [N rms] of each force that the air shakes the hub with,
constexpr double kGustArm = 0.05;  // [m] and moments by that arm,
constexpr double kGustTo = 220;    // [Hz] evenly up to here
constexpr int kElements = 4;
constexpr std::array<int, 3> kOrders{1, 2, 4};

// What both sensors feel: airframe x y z, bay x y z [m/s²].
using Felt = Eigen::Matrix<Complex, 6, 1>;

// Hub, arms of finite elements and the bay on its tubes at one frequency.
class ShakenCraft {
public:
    explicit ShakenCraft(const Setup& craft)
        : m_craft(makeExcitedAirframe(craft)), m_mounted(makeMountedBay(craft).value())
    {
        const Suspension& suspension = m_mounted.suspension;
        const Pose rest = restPose(suspension, 1.0).value();
        m_K = dynamicStiffness(suspension, rest, m_mounted.dynamicFactor);
        m_bayMass = massMatrix(suspension.bay, rest.R);
        m_bayCentre = suspension.bay.centre + rest.shift;
    }

    const ExcitedAirframe& excited() const { return m_craft; }

    struct At {
        Eigen::Matrix<Complex, 6, 6> felt;  // by wrench on the hub about its centre of mass
        std::vector<Matrix6cd> toHub;       // by arm: that wrench by the one on the arm's tip
    };

    At at(double omega, double speed) const
    {
        const AirframeModel& airframe = m_craft.airframe;
        Matrix6cd D = (-omega * omega * massMatrix(airframe.hub)).cast<Complex>();
        At result;
        const std::array<Condensed, 2> both{condensed(omega, speed, 1),
                                            condensed(omega, speed, -1)};
        for (std::size_t motor = 0; motor < airframe.arms.size(); ++motor) {
            const ArmPlace& place = airframe.arms[motor];
            const Condensed& arm = both[motor % 2];
            Matrix6d T = Matrix6d::Zero();
            T.topLeftCorner<3, 3>() = T.bottomRightCorner<3, 3>() = place.R_OA();
            const Matrix6d C = T.transpose() * carry(place.p_OR() - airframe.hub.centre);
            D += C.transpose().cast<Complex>() * arm.root * C.cast<Complex>();
            result.toHub.push_back(C.transpose().cast<Complex>() * arm.fromTip *
                                   T.transpose().cast<Complex>());
        }
        result.felt = felt(omega, inverse(D));
        return result;
    }

private:
    struct Condensed {
        Matrix6cd root, fromTip;
    };

    Condensed condensed(double omega, double speed, double spin) const
    {
        const AirframeModel& airframe = m_craft.airframe;
        const Eigen::MatrixXcd D =
            elementArm(airframe.arm, airframe.arms[0].length, airframe.tip,
                       spin * rotorMomentum(airframe.tip, speed), omega, kElements);
        const Eigen::Index inner = D.rows() - 6;
        Eigen::MatrixXcd loads = Eigen::MatrixXcd::Zero(inner, 12);
        loads.leftCols(6) = D.bottomLeftCorner(inner, 6);
        loads.bottomRightCorner(6, 6) = Matrix6cd::Identity();
        const Eigen::MatrixXcd solved = solveByLapack(D.bottomRightCorner(inner, inner), loads);
        const Eigen::MatrixXcd passed = D.topRightCorner(6, inner) * solved;
        return {D.topLeftCorner(6, 6) - passed.leftCols(6), -passed.rightCols(6)};
    }

    // The tubes' wrench on the bay is −K*(x_b − P x_hub) and its counterpart acts on the hub:
    //  −ω² M_b x_b = −K*(x_b − P x_hub),  x_hub = R (F + Pᵀ K*(x_b − P x_hub)).
    Eigen::Matrix<Complex, 6, 6> felt(double omega, const Matrix6cd& R) const
    {
        const Vector3d& hub = m_craft.airframe.hub.centre;
        const Matrix6cd P = carry(m_bayCentre - hub).cast<Complex>();
        const Matrix6cd fromMount = inverse(Matrix6cd(m_K - omega * omega * m_bayMass)) * m_K;
        // x_b = fromMount · P x_hub, so that the hub feels K_b = Pᵀ K* (1 − fromMount) P.
        const Matrix6cd K_b = P.transpose() * m_K * (Matrix6cd::Identity() - fromMount) * P;
        const Matrix6cd hubByWrench = inverse(Matrix6cd(Matrix6cd::Identity() + R * K_b)) * R;
        Eigen::Matrix<Complex, 6, 6> result;
        result.topRows<3>() = feltAt(omega, kAirframeSensor_mm, hub) * hubByWrench;
        result.bottomRows<3>() =
            feltAt(omega, kBaySensor_mm, m_bayCentre) * fromMount * P * hubByWrench;
        return result;
    }

    // A sensor tells what moves it less gravity, in axes that turn with it: f − θ × (0, 0, g).
    static Eigen::Matrix<Complex, 3, 6> feltAt(double omega, const Triple& sensor_mm,
                                               const Vector3d& reference)
    {
        const Vector3d p =
            Vector3d(sensor_mm[0], sensor_mm[1], sensor_mm[2]) * unit::mm - reference;
        Eigen::Matrix<double, 3, 6> A = -omega * omega * carry(p).topRows<3>();
        A.rightCols<3>() += skew(Vector3d(0, 0, kGravity));
        return A.cast<Complex>();
    }

    ExcitedAirframe m_craft;
    MountedBay m_mounted;
    Matrix6cd m_K;
    Matrix6d m_bayMass;
    Vector3d m_bayCentre;
};

// What one motor's order is felt as, over the rotor speed that the frequency belongs to.
class OrderTable {
public:
    static constexpr double kFrom = 8.0, kStep = 0.125;  // [rev/s]
    static constexpr int kCount = 600;

    explicit OrderTable(const ShakenCraft& craft)
    {
        for (auto& order : m_felt)
            order.resize(kCount);
        for (int k = 0; k < kCount; ++k)
            for (std::size_t o = 0; o < kOrders.size(); ++o)
                fill(craft, o, k);
    }

    Felt at(std::size_t order, std::size_t motor, double speed) const
    {
        const double x = (speed - kFrom) / kStep;
        if (x < 0 || x >= kCount - 1)
            return Felt::Zero();
        const auto k = static_cast<std::size_t>(x);
        const double share = x - static_cast<double>(k);
        return (1 - share) * m_felt[order][k][motor] + share * m_felt[order][k + 1][motor];
    }

private:
    void fill(const ShakenCraft& craft, std::size_t order, int k)
    {
        const ExcitedAirframe& excited = craft.excited();
        const double speed = kFrom + k * kStep, omega = kTwoPi * kOrders[order] * speed;
        const ShakenCraft::At at = craft.at(omega, speed);
        const Matrix3d lever = skew({0, 0, excited.airframe.tip.propeller.height});
        for (std::size_t motor = 0; motor < at.toHub.size(); ++motor) {
            Vector3cd force(0, 0, 0);
            if (order == 0)
                force = excited.unbalance[motor] * omega * omega *
                        Vector3cd(1, Complex(0, -spinOf(motor)), 0);
            else
                force.z() = excited.bladePass[order - 1] * thrust(excited.drive, speed);
            Vector6cd tip;
            tip << force, lever * force;
            m_felt[order][static_cast<std::size_t>(k)].push_back(at.felt * at.toHub[motor] * tip);
        }
    }

    std::array<std::vector<std::vector<Felt>>, kOrders.size()> m_felt;  // by order, speed, motor
};

double stickAt(double t)
{
    return kFirstStick + (kLastStick - kFirstStick) * std::clamp(t / kDuration, 0.0, 1.0);
}

// What both sensors feel at any moment: put together line by line of its spectrum, so that what a
// resonance keeps ringing while the stick moves on is in it.
class Sweep {
public:
    explicit Sweep(const Setup& trueCraft) : m_noise(20263), m_craft(trueCraft)
    {
        for (auto& axis : m_felt)
            axis.assign(kCount, 0);
        addGusts();
        addOrders();
        const kissfft<double> transform(kCount, true);
        std::vector<Complex> lines(kCount);
        for (auto& axis : m_felt) {
            transform.transform(axis.data(), lines.data());
            axis.swap(lines);
        }
        for (double& phase : m_tiltPhase)
            phase = m_noise.phase();
    }

    // By the six points around: nothing is above 320 Hz of 2048.
    double feltAt(std::size_t axis, double t) const
    {
        const double x = (t + kLead) * kRate;
        const auto first = static_cast<std::size_t>(x) - 2;
        double sum = slow(axis, t);
        for (std::size_t i = 0; i < 6; ++i) {
            double weight = 1;
            for (std::size_t j = 0; j < 6; ++j)
                if (j != i)
                    weight *= (x - static_cast<double>(first + j)) /
                              (static_cast<double>(i) - static_cast<double>(j));
            sum += weight * m_felt[axis][first + i].real();
        }
        return sum;
    }

    Noise& noise() { return m_noise; }

private:
    static constexpr std::size_t kCount = 1 << 17;
    static constexpr double kRate = 4096;  // [Hz], so that all of it is 32 s
    static constexpr double kLead = 6;     // [s] before the sweep, at its first throttle

    // The spectrum holds what turns one way; its real part is what is felt.
    void addGusts()
    {
        constexpr std::size_t kFirst = 128;  // 4 Hz
        const auto last = static_cast<std::size_t>(kGustTo / kRate * kCount);
        // So many lines make the asked rms together.
        const double line = kGust / std::sqrt(static_cast<double>(last - kFirst + 1));
        Matrix6cd answer;
        for (std::size_t k = kFirst; k <= last; ++k) {
            if ((k - kFirst) % 8 == 0)  // nothing is as narrow as a quarter of a hertz
                answer =
                    m_craft.at(kTwoPi * (static_cast<double>(k) + 3.5) * kRate / kCount, 0).felt;
            Vector6cd wrench;
            for (Complex& each : wrench) {
                const double real = m_noise.normal();
                each = line * Complex(real, m_noise.normal());
            }
            wrench.tail<3>() *= kGustArm;
            add(k, answer * wrench);
        }
    }

    void addOrders()
    {
        const OrderTable table(m_craft);
        const std::vector<double> turned = turnedBy();
        const kissfft<double> transform(kCount, false);
        std::vector<Complex> turning(kCount), lines(kCount);
        for (std::size_t o = 0; o < kOrders.size(); ++o)
            for (std::size_t motor = 0; motor < kTrueSpeedOffset.size(); ++motor) {
                const double multiple = kOrders[o] * (1 + kTrueSpeedOffset[motor]);
                const double begin = m_noise.phase();
                for (std::size_t k = 0; k < kCount; ++k)
                    turning[k] = fade(k) * std::polar(1.0, kTwoPi * multiple * turned[k] + begin);
                transform.transform(turning.data(), lines.data());
                for (std::size_t k = 1; k < kCount / 2; ++k) {
                    const double f_hz = static_cast<double>(k) * kRate / kCount;
                    add(k, table.at(o, motor, f_hz / kOrders[o]) * lines[k] / double(kCount));
                }
            }
    }

    // Turns of the mean motor since the beginning.
    std::vector<double> turnedBy() const
    {
        const ExcitedAirframe& craft = m_craft.excited();
        std::vector<double> turned{0.0};
        double before = 0;
        for (std::size_t k = 0; k < kCount; ++k) {
            const double stick = stickAt(static_cast<double>(k) / kRate - kLead);
            const double n = rotorSpeed(craft.drive, stick, craft.fullVoltage);
            if (k > 0)
                turned.push_back(turned.back() + (before + n) / 2 / kRate);
            before = n;
        }
        return turned;
    }

    // Far before and behind the sweep to nothing, so that the end meets the beginning.
    static double fade(std::size_t k)
    {
        constexpr double kFade = 1.5;  // [s]
        const double t = static_cast<double>(k) / kRate, end = kCount / kRate;
        const double x = std::min({t / kFade, (end - t) / kFade, 1.0});
        return x * x * (3 - 2 * x);
    }

    void add(std::size_t k, const Felt& felt)
    {
        for (std::size_t axis = 0; axis < m_felt.size(); ++axis)
            m_felt[axis][k] += felt[static_cast<Eigen::Index>(axis)];
    }

    // Hanging on its cord it sways by two degrees.
    double slow(std::size_t axis, double t) const
    {
        constexpr double kTilt = 2 * unit::deg, kSway_hz = 0.31;
        if (axis % 3 == 2)
            return kGravity;
        return kGravity * kTilt * std::sin(kTwoPi * kSway_hz * t + m_tiltPhase[axis % 3]);
    }

    Noise m_noise;
    ShakenCraft m_craft;
    std::array<std::vector<Complex>, 6> m_felt;  // by axis: lines, then moments
    std::array<double, 2> m_tiltPhase{};
};

std::string placeText(const Triple& mm)
{
    std::string text;
    for (const double each : mm) {
        text += text.empty() ? "" : ", ";
        appendNumber(text, each, 0);
    }
    return text + " mm";
}

SampleTable airframeTable(Sweep& sweep)
{
    std::string text =
        std::string("# ") + kInvented +
        ".\n# The craft reedbed on a tether under a long cord, stick slowly opened. Log of the "
        "airframe's sensor at " +
        placeText(kAirframeSensor_mm) +
        ".\ntime (s),throttle (%),forward (m/s²),left (m/s²),up (m/s²)\n";
    for (int k = 0; k < static_cast<int>(kDuration * kAirframeRate); ++k) {
        const double t = k / kAirframeRate;
        appendNumber(text, t, 3);
        text += ',';
        appendNumber(text, 100 * stickAt(t), 1);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            text += ',';
            appendNumber(text, sweep.feltAt(axis, t) + kNoise * sweep.noise().normal(), 2);
        }
        text += '\n';
    }
    return {"sweep-airframe.csv", text};
}

SampleTable bayTable(Sweep& sweep)
{
    std::string text = std::string("# ") + kInvented +
                       ".\n# The same sweep, sensor in the bay at " + placeText(kBaySensor_mm) +
                       ". Its clock is its own.\ntime (s),forward (m/s²),left (m/s²),up (m/s²)\n";
    for (int k = 0;; ++k) {
        const double own = k / kBayRate, t = kBayClockBegan + own / kBayClockRuns;
        if (t > kBayTo)
            break;
        appendNumber(text, own, 3);
        for (std::size_t axis = 3; axis < 6; ++axis) {
            text += ',';
            appendNumber(text, sweep.feltAt(axis, t) + kNoise * sweep.noise().normal(), 2);
        }
        text += '\n';
    }
    return {"sweep-bay.csv", text};
}

}  // namespace

SweepTables throttleSweep(const Setup& trueCraft)
{
    Sweep sweep(trueCraft);
    SampleTable airframe = airframeTable(sweep);
    SampleTable bay = bayTable(sweep);
    return {airframe, bay};
}

}  // namespace stillbay::test
