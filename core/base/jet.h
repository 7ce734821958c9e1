// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// A value with its first and second derivative by one variable, carried through arithmetic.
struct Jet {
    double value = 0.0;
    double d1 = 0.0;
    double d2 = 0.0;
};

/// The variable itself.
inline Jet variable(double x)
{
    return {x, 1.0, 0.0};
}
inline Jet operator+(const Jet& a, const Jet& b)
{
    return {a.value + b.value, a.d1 + b.d1, a.d2 + b.d2};
}
inline Jet operator-(const Jet& a, const Jet& b)
{
    return {a.value - b.value, a.d1 - b.d1, a.d2 - b.d2};
}
inline Jet operator*(const Jet& a, const Jet& b)
{
    return {a.value * b.value, a.d1 * b.value + a.value * b.d1,
            a.d2 * b.value + 2 * a.d1 * b.d1 + a.value * b.d2};
}
inline Jet operator+(double a, const Jet& b)
{
    return {a + b.value, b.d1, b.d2};
}
inline Jet operator-(double a, const Jet& b)
{
    return {a - b.value, -b.d1, -b.d2};
}
inline Jet operator*(double a, const Jet& b)
{
    return {a * b.value, a * b.d1, a * b.d2};
}
/// f(a), with f, f′ and f″ at a.value given.
inline Jet chain(const Jet& a, double f, double f1, double f2)
{
    return {f, f1 * a.d1, f2 * a.d1 * a.d1 + f1 * a.d2};
}
inline Jet inverse(const Jet& a)
{
    const double r = 1 / a.value;
    return chain(a, r, -r * r, 2 * r * r * r);
}
inline Jet operator/(const Jet& a, const Jet& b)
{
    return a * inverse(b);
}
inline Jet operator/(double a, const Jet& b)
{
    return a * inverse(b);
}

}  // namespace stillbay
