// SPDX-License-Identifier: MIT
#include "core/tube/own_resonance.h"

#include "core/base/check.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr int kHalvings = 44;  // 1e-13 of where the frequency may lie

// Free vibration of the beam in s = ω²:
//   ((S + T) w′ − S ψ)′ + μ s w = 0,  EI ψ″ + S (w′ − ψ) + J s ψ = 0.
struct VibratingBeam {
    double EI, S, T;  // [N·m²], [N], [N]; S + T > 0
    double mu, J;     // mass and rotary inertia of a metre: [kg/m], [kg·m]
    double length;    // [m]
};

VibratingBeam vibratingBeam(const Tube& tube, double length, double dynamicRatio)
{
    const BeamFigures beam = beamFigures(tube, length);
    const double stretch = length / tube.freeLength;
    return {dynamicRatio * beam.EI,
            dynamicRatio * beam.S,
            beam.tension,
            tube.mass / length,
            tube.mass / tube.freeLength * (tube.GI0 / tube.GA0) / (stretch * stretch * stretch),
            length};
}

// The two s at which w = sin kx, ψ ∝ cos kx swings freely, lower first; the lower one is negative
// where the tension lets the beam buckle in that wave.
std::pair<double, double> waveFrequencies(const VibratingBeam& beam, double k)
{
    const double q = k * k;
    const double product = q * ((beam.S + beam.T) * beam.EI * q + beam.S * beam.T);
    const double sum = beam.mu * (beam.EI * q + beam.S) + beam.J * (beam.S + beam.T) * q;
    const double root = std::sqrt(sum * sum - 4 * beam.mu * beam.J * product);
    return {2 * product / (sum + root), (sum + root) / (2 * beam.mu * beam.J)};
}

// C(x) = cosh √z x and its integral for z > 0, both over cosh; cos and its integral for z ≤ 0.
struct Wave {
    double shape, integral;
};

Wave waveAt(double z, double x)
{
    const double k = std::sqrt(std::abs(z));
    if (z > 0)
        return {1.0, std::tanh(k * x) / k};
    return {std::cos(k * x), k > 0 ? std::sin(k * x) / k : x};
}

// Vanishes where the clamped beam swings alike left and right, and changes its sign there.
//
// With w even about the middle, w = A C₁ + B C₂ and ψ = A g₁ ∫C₁ + B g₂ ∫C₂, z₁ > z₂ the roots of
// (S+T) EI z² + ((S+T) J s − S T + EI μ s) z + μ s (J s − S) = 0, which are always real, and
// g = ((S+T) z + μ s)/S. This is the determinant of w = ψ = 0 at the end.
double clampedDeterminant(const VibratingBeam& beam, double s)
{
    const double a = (beam.S + beam.T) * beam.EI;
    const double b = (beam.S + beam.T) * beam.J * s - beam.S * beam.T + beam.EI * beam.mu * s;
    const double c = beam.mu * s * (beam.J * s - beam.S);
    const double q = -0.5 * (b + std::copysign(std::sqrt(b * b - 4 * a * c), b));
    const double z1 = std::max(q / a, c / q), z2 = std::min(q / a, c / q);
    const auto turn = [&](double z) {
        return ((beam.S + beam.T) * z + beam.mu * s) / beam.S;
    };
    const Wave one = waveAt(z1, 0.5 * beam.length), two = waveAt(z2, 0.5 * beam.length);
    return turn(z2) * two.integral * one.shape - turn(z1) * one.integral * two.shape;
}

// Clamping both ends is one constraint on the swings of the hinged beam that are alike left and
// right, so their first frequency lies between the first and the second of those, and no other
// does (Rayleigh's theorem on constraints). Swings that are not alike come later.
double clampedFrequency(const VibratingBeam& beam)
{
    const auto [first, alsoTurning] = waveFrequencies(beam, kPi / beam.length);
    double low = std::max(first, 0.0),
           high = std::min(waveFrequencies(beam, 3 * kPi / beam.length).first, alsoTurning);
    for (int k = 0; k < kHalvings; ++k) {
        const double middle = 0.5 * (low + high);
        (clampedDeterminant(beam, middle) < 0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

// A wave of one arch; in a stub thicker than long its sections swing to and fro all alike, w = 0.
double hingedFrequency(const VibratingBeam& beam)
{
    return std::min(waveFrequencies(beam, kPi / beam.length).first, beam.S / beam.J);
}

}  // namespace

std::optional<double> ownResonance_hz(const Tube& tube, double length, double dynamicRatio)
{
    check(dynamicRatio >= 1, "ownResonance_hz: a dynamic ratio below one");
    const VibratingBeam beam = vibratingBeam(tube, length, dynamicRatio);
    if (-beam.T >= bucklingLoad(tube, length))
        return std::nullopt;
    const double s = tube.clamped ? clampedFrequency(beam) : hingedFrequency(beam);
    return std::sqrt(s) / (2 * kPi);
}

}  // namespace stillbay
