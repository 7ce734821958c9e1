// SPDX-License-Identifier: MIT
#include "core/airframe/tapped_arm.h"

#include "core/airframe/arm_stiffness.h"
#include "core/base/solve.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

using Matrix12d = Eigen::Matrix<double, 12, 12>;

constexpr double kLowest = 0.1, kHighest = 3.0;  // of the cantilever's frequency
constexpr double kScan = 1.05;                   // from frequency to frequency
constexpr int kTappedHalvings = 40;

// The arm between hub and tip, the root's own rotations condensed away where a spring is between.
Matrix12d betweenHubAndTip(const ArmMaterial& material, double length, double omega)
{
    Matrix12d D = armStiffness(material, length, omega).real();
    if (!material.rootStiffness)
        return D;
    const double k = *material.rootStiffness;
    Eigen::Matrix<double, 12, 3> a = D.middleCols<3>(3);  // pulls on the root's rotations
    const Matrix3d own = a.middleRows<3>(3) + k * Matrix3d::Identity();
    a.middleRows<3>(3) = -k * Matrix3d::Identity();
    D.middleCols<3>(3).setZero();
    D.middleRows<3>(3).setZero();
    D.block<3, 3>(3, 3) = k * Matrix3d::Identity();
    D -= a * own.inverse() * a.transpose();
    return D;
}

// Hub and all other arms, by the motion of this arm's root, arm axes.
Matrix6d restOfAirframe(const AirframeModel& airframe, std::size_t tapped, double omega)
{
    Matrix6cd D = (-omega * omega * massMatrix(airframe.hub)).cast<Complex>();
    const auto rootMap = [&airframe](const ArmPlace& place) {
        Matrix6d T = Matrix6d::Zero();
        T.topLeftCorner<3, 3>() = T.bottomRightCorner<3, 3>() = place.R_OA().transpose();
        return Matrix6d(T * carry(place.p_OR() - airframe.hub.centre));
    };
    for (std::size_t other = 0; other < airframe.arms.size(); ++other) {
        if (other == tapped)
            continue;
        const ArmPlace& place = airframe.arms[other];
        const Matrix6cd C = rootMap(place).cast<Complex>();
        D += C.transpose() *
             condensedArms(airframe.arm, place.length, airframe.tip, omega, 0).clockwise.D * C;
    }
    const Matrix6d toHub = inverse(rootMap(airframe.arms[tapped]));
    return toHub.transpose() * D.real() * toHub;
}

// Force on the tip for its motion in one direction, nothing else held.
double tipStiffness(const AirframeModel& airframe, std::size_t arm, bool isHeld, int direction,
                    double omega)
{
    const Matrix12d D = betweenHubAndTip(airframe.arm, airframe.arms[arm].length, omega);
    Matrix6d tip = D.bottomRightCorner<6, 6>() - omega * omega * tipMassMatrix(airframe.tip);
    if (!isHeld) {
        const Matrix6d root = D.topLeftCorner<6, 6>() + restOfAirframe(airframe, arm, omega);
        const Matrix6d toRoot = D.bottomLeftCorner<6, 6>();
        tip -= toRoot * inverse(root) * toRoot.transpose();
    }
    return 1 / inverse(tip)(direction, direction);
}

// The tip's stiffness falls between its poles: it rings where that goes from above to below zero.
std::optional<double> firstFrequency_hz(const AirframeModel& airframe, std::size_t arm, bool isHeld,
                                        int direction, double about_hz)
{
    const auto stiffness = [&](double f_hz) {
        return tipStiffness(airframe, arm, isHeld, direction, 2 * std::numbers::pi * f_hz);
    };
    double low = kLowest * about_hz, before = stiffness(low);
    for (double high = low * kScan; high < kHighest * about_hz; high *= kScan) {
        const double now = stiffness(high);
        if (before > 0 && !(now > 0)) {
            double top = high;
            for (int k = 0; k < kTappedHalvings; ++k) {
                const double middle = 0.5 * (low + top);
                (stiffness(middle) > 0 ? low : top) = middle;
            }
            return 0.5 * (low + top);
        }
        low = high;
        before = now;
    }
    return {};
}

}  // namespace

std::optional<TappedFrequencies> tappedFrequencies(const AirframeModel& airframe, std::size_t arm,
                                                   bool isHeld)
{
    AirframeModel lossless = airframe;
    lossless.arm.lossFactor = 0;
    const CantileverFrequencies bare =
        cantileverFrequencies(airframe.arm, airframe.arms.at(arm).length,
                              airframe.tip.motor.mass + airframe.tip.propeller.mass);
    constexpr int kUp = 2, kSideways = 1;
    const auto vertical = firstFrequency_hz(lossless, arm, isHeld, kUp, bare.vertical_hz);
    const auto horizontal = firstFrequency_hz(lossless, arm, isHeld, kSideways, bare.horizontal_hz);
    if (!vertical || !horizontal)
        return {};
    return TappedFrequencies{*vertical, *horizontal};
}

}  // namespace stillbay
