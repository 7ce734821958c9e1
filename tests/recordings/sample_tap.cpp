// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/airframe/element_arm.h"
#include "tests/recordings/noise.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/table_text.h"

#include <Eigen/Eigenvalues>

#include <cmath>
#include <numbers>

namespace stillbay::test {
namespace {

constexpr double kRate = 1600;       // [Hz]
constexpr double kDuration = 3.3;    // [s]
constexpr double kContact = 1.5e-3;  // [s] that the finger's tap lasts
constexpr double kSensorPass = 700;  // [Hz], above which the sensor lets nothing through
constexpr double kNoise = 0.02;      // [m/s²]
constexpr int kElements = 12;

struct Tap {
    double at = 0.0;   // [s]
    Vector3d impulse;  // [N·s], axes of the arm
};

// A mode of the arm by the motions of its tip.
struct TipMode {
    Complex omega;   // [rad/s], decaying e^{iωt}
    Vector3d shape;  // [kg^-½]
};

// Root clamped. All of the arm has one loss, so the shapes are those without it.
std::vector<TipMode> modesOf(const ExcitedAirframe& craft)
{
    const AirframeModel& airframe = craft.airframe;
    const auto D = [&](double omega) {
        const Eigen::MatrixXcd full =
            elementArm(airframe.arm, airframe.arms[0].length, airframe.tip, 0.0, omega, kElements);
        return Eigen::MatrixXd(full.bottomRightCorner(full.rows() - 6, full.cols() - 6).real());
    };
    constexpr double kAny = 1e4;  // [rad/s]
    const Eigen::MatrixXd K = D(0.0);
    const Eigen::MatrixXd M = (K - D(kAny)) / (kAny * kAny);
    const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> solver(K, M);
    std::vector<TipMode> modes;
    for (Eigen::Index k = 0; k < K.rows(); ++k) {
        const double omegaSquare = solver.eigenvalues()[k];
        if (omegaSquare > std::pow(2 * std::numbers::pi * kSensorPass, 2))
            break;
        modes.push_back({std::sqrt(omegaSquare * Complex(1, airframe.arm.lossFactor)),
                         solver.eigenvectors().col(k).tail<6>().head<3>()});
    }
    return modes;
}

// What is left of half a sine of that impulse, by t after its begin.
Complex rung(const TipMode& mode, double t)
{
    constexpr int kParts = 16;
    Complex sum = 0;
    for (int part = 0; part < kParts; ++part) {
        const double x = (part + 0.5) / kParts;
        if (const double since = t - x * kContact; since > 0)
            sum += std::sin(std::numbers::pi * x) * std::exp(Complex(0, since) * mode.omega);
    }
    return sum * std::numbers::pi / 2.0 / double(kParts);
}

}  // namespace

std::vector<double> tappedFrequencies_hz(const Setup& trueCraft)
{
    std::vector<double> frequencies;
    for (const TipMode& mode : modesOf(makeExcitedAirframe(trueCraft)))
        frequencies.push_back(std::sqrt((mode.omega * mode.omega).real()) / (2 * std::numbers::pi));
    return frequencies;
}

SampleTable armTap(const Setup& trueCraft)
{
    const std::vector<TipMode> modes = modesOf(makeExcitedAirframe(trueCraft));
    const std::vector<Tap> taps{{0.2137, {0.0, 0.002, 0.009}},
                                {1.2411, {0.001, -0.010, -0.002}},
                                {2.2683, {0.0, -0.001, 0.008}}};
    Noise noise(20261);
    std::string text = std::string("# ") + kInvented +
                       ".\n# An arm of the craft reedbed, airframe clamped to a table, no "
                       "propeller but a strip of "
                       "its length and mass on the motor.\n# Three taps near the tip: up, to the "
                       "side, up. A sensor of "
                       "almost no mass at the tip, axes of the arm.\n"
                       "time (ms),out (g),left (g),up (g)\n";
    const int count = static_cast<int>(kDuration * kRate);
    for (int k = 0; k < count; ++k) {
        const double t = k / kRate;
        Vector3d a(0, 0, kGravity);
        for (const Tap& tap : taps)
            if (t > tap.at)
                for (const TipMode& mode : modes)
                    a += mode.shape * mode.shape.dot(tap.impulse) *
                         (Complex(0, 1) * mode.omega * rung(mode, t - tap.at)).real();
        appendNumber(text, t * 1000, 3);
        for (const double component : a) {
            text += ',';
            appendNumber(text, (component + kNoise * noise.normal()) / kGravity, 4);
        }
        text += '\n';
    }
    return {"arm-tap.csv", text};
}

}  // namespace stillbay::test
