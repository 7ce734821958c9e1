// SPDX-License-Identifier: MIT
#include "core/airframe/beam.h"

#include <array>
#include <cmath>

namespace stillbay {
namespace {

// Up to this |βL| the power series is exact to rounding, above it the closed form does not cancel.
constexpr double kSeriesBound = 3.0;

// The four numbers a beam needs, in units of EI/L³, EI/L², EI/L at both ends and across.
struct BeamCoefficients {
    Complex shear, shearMoment, moment;                    // near end on itself
    Complex shearAcross, momentShearAcross, momentAcross;  // far end on near end
};

// Krylov-Duncan functions of the unit beam: s_k = Σ z⁴ⁿ/(4n + k)!.
BeamCoefficients bySeries(Complex z4)
{
    std::array<Complex, 4> s{};
    Complex power = 1.0;
    double factorial = 1.0;
    for (int n = 0; n < 12; ++n) {
        for (int k = 0; k < 4; ++k) {
            if (4 * n + k > 0)
                factorial *= 4 * n + k;
            s[static_cast<std::size_t>(k)] += power / factorial;
        }
        power *= z4;
    }
    const auto& [s0, s1, s2, s3] = s;
    const Complex det = s2 * s2 - s1 * s3;
    return {(s0 * s1 - z4 * s2 * s3) / det,
            (s1 * s1 - s0 * s2) / det,
            (s1 * s2 - s0 * s3) / det,
            -s1 / det,
            s2 / det,
            s3 / det};
}

// The same with sin, cos, sinh, cosh of z = βL, all divided by cosh z so that nothing overflows.
BeamCoefficients byCircularFunctions(Complex z)
{
    const Complex decay = std::exp(-z);
    const Complex sech = 2.0 * decay / (1.0 + decay * decay);
    const Complex tanh = (1.0 - decay * decay) / (1.0 + decay * decay);
    const Complex sin = std::sin(z), cos = std::cos(z);
    const Complex det = sech - cos;
    return {z * z * z * (sin + cos * tanh) / det, z * z * sin * tanh / det,
            z * (sin - tanh * cos) / det,         -z * z * z * (tanh + sin * sech) / det,
            z * z * (1.0 - cos * sech) / det,     z * (tanh - sin * sech) / det};
}

}  // namespace

Matrix4cd bendingStiffness(Complex EI, double massPerLength, double length, double omega)
{
    const Complex z4 = massPerLength * omega * omega * std::pow(length, 4) / EI;
    const Complex z = std::sqrt(std::sqrt(z4));
    const BeamCoefficients c = std::abs(z) < kSeriesBound ? bySeries(z4) : byCircularFunctions(z);
    const double L = length;
    Matrix4cd K;
    K << c.shear, c.shearMoment * L, c.shearAcross, c.momentShearAcross * L,                    //
        c.shearMoment * L, c.moment * L * L, -c.momentShearAcross * L, c.momentAcross * L * L,  //
        c.shearAcross, -c.momentShearAcross * L, c.shear, -c.shearMoment * L,                   //
        c.momentShearAcross * L, c.momentAcross * L * L, -c.shearMoment * L, c.moment * L * L;
    return EI / (L * L * L) * K;
}

Matrix2cd rodStiffness(Complex rigidity, double inertiaPerLength, double length, double omega)
{
    const Complex x = omega * length * std::sqrt(inertiaPerLength / rigidity);
    const bool slow = std::abs(x) < 1e-4;  // next terms of both series are below 1e-16
    const Complex cotangent = slow ? 1.0 - x * x / 3.0 : x * std::cos(x) / std::sin(x);
    const Complex cosecant = slow ? 1.0 + x * x / 6.0 : x / std::sin(x);
    Matrix2cd K;
    K << cotangent, -cosecant, -cosecant, cotangent;
    return rigidity / length * K;
}

}  // namespace stillbay
