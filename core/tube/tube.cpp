// SPDX-License-Identifier: MIT
#include "core/tube/tube.h"

#include "core/base/units.h"
#include "core/tube/tanh_ratio.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Length of a clamped end that behaves as if it did not stretch, over √(D² − d²). Fits the
// three-dimensional finite elements in tests/reference best; a thin shell's edge layer gives 0.072.
constexpr double kEndFactor = 0.075;

template <class T>
struct EndPair {
    T a, b;
};

// a and b from bending rigidity EI, shear rigidity S and tension T at length L (docs/theory.md).
template <class T, class L>
EndPair<T> endPair(const T& EI, const T& S, const T& tension, const L& length, double delta)
{
    const T s = S / (S + tension);
    const T x = s * tension * length * length / (4.0 * EI);
    const auto [tc, phi] = tanhRatio(x);
    const T p = EI / length * (2.0 * tc) / (4.0 * EI / (length * length * S) + s * phi);
    const T m = 2.0 * EI / (length * tc);
    const T pHeld = p / (1.0 - delta * p / EI);
    const T mHeld = m / (1.0 - delta * m / EI);
    return {0.5 * (pHeld + mHeld), 0.5 * (pHeld - mHeld)};
}

}  // namespace

Result<Tube> makeTube(const TubeSpec& spec)
{
    const TubeSection& section = spec.section;
    const double D = section.outerDiameter, d = section.bore;
    const double delta = spec.clamped ? kEndFactor * std::sqrt(D * D - d * d) : 0.0;
    if (!(spec.freeLength > 4 * delta))
        return fail(
            Errc::BadInput,
            phrase("Free length is %1 mm, too short for a clamped tube of this section: allowed "
                   "above %2 mm",
                   fixed(spec.freeLength / unit::mm, 2), fixed(4 * delta / unit::mm, 2)),
            "mounts.free_length_mm");
    const double G = spec.shearModulus;
    return Tube{.GA0 = G * section.area(),
                .GI0 = G * section.secondMoment(),
                .GJ0 = G * section.polarMoment(),
                .kappa = section.shearCoefficient(),
                .freeLength = spec.freeLength,
                .effectiveLength = spec.freeLength - 2 * delta,
                .endLength = delta,
                .mass = spec.density * section.area() * spec.freeLength,
                .clamped = spec.clamped};
}

double effectiveStretch(const Tube& tube, double length)
{
    return 1 + (length - tube.freeLength) / tube.effectiveLength;
}

TubeLaws tubeLaws(const Tube& tube, double length)
{
    const double lambda = effectiveStretch(tube, length);
    const double l1 = 1 / lambda, l2 = l1 * l1, l3 = l2 * l1;
    const double Le = tube.effectiveLength;

    TubeLaws laws;
    // λ² + 2/λ − 3 and λ − λ⁻² factored by λ − 1: as they stand they lose digits near λ = 1, which
    // the search for the rest pose needs.
    const double strain = (length - tube.freeLength) / Le;
    laws.energy = {0.5 * tube.GA0 * Le * strain * strain * (lambda + 2) * l1,
                   tube.GA0 * strain * (lambda * lambda + lambda + 1) * l2,
                   tube.GA0 / Le * (1 + 2 * l3)};
    if (!tube.clamped)
        return laws;

    // Everything below as a function of λ by chain(), λ′ = 1/Le.
    const Jet stretch{lambda, 1 / Le, 0.0};
    const Jet EI = tube.GI0 * (1.0 + 2.0 * chain(stretch, l3, -3 * l3 * l1, 12 * l3 * l2));
    const Jet S = tube.kappa * tube.GA0 * chain(stretch, l2, -2 * l3, 6 * l3 * l1);
    const Jet tension = tube.GA0 * chain(stretch, lambda - l2, 1 + 2 * l3, -6 * l3 * l1);
    const Jet L = variable(length);
    const auto [a, b] = endPair(EI, S, tension, L, tube.endLength);
    laws.a = a;
    laws.b = b;
    laws.torsion = tube.GJ0 / L;
    return laws;
}

BeamFigures beamFigures(const Tube& tube, double length)
{
    const double lambda = effectiveStretch(tube, length);
    const double l1 = 1 / lambda, l2 = l1 * l1;
    return {tube.GI0 * (1 + 2 * l2 * l1), tube.kappa * tube.GA0 * l2, tube.GA0 * (lambda - l2)};
}

DynamicEnds dynamicEnds(const Tube& tube, double length, Complex g)
{
    if (!tube.clamped)
        return {};
    const BeamFigures beam = beamFigures(tube, length);
    const auto [a, b] =
        endPair(g * beam.EI, g * beam.S, Complex(beam.tension), length, tube.endLength);
    return {a, b};
}

double lateralStiffness(const TubeLaws& laws, double length)
{
    return 2 * (laws.a.value + laws.b.value) / (length * length) + laws.energy.d1 / length;
}

double bucklingLoad(const Tube& tube, double length)
{
    const BeamFigures beam = beamFigures(tube, length);
    const double wave = (tube.clamped ? 2 : 1) * std::numbers::pi / length;
    const double euler = beam.EI * wave * wave;
    return euler / (1 + euler / beam.S);
}

}  // namespace stillbay
