// SPDX-License-Identifier: MIT
#include "core/tube/tanh_ratio.h"

#include <array>
#include <cmath>

namespace stillbay {
namespace {

// Below this |x| the power series; its radius is π²/4, so 24 terms reach 1e-16 here.
constexpr double kSeriesBound = 0.5;
constexpr int kTerms = 24;

// Coefficients of tc, from tc + 2x tc′ = 1 − x tc².
constexpr std::array<double, kTerms + 1> makeSeries()
{
    std::array<double, kTerms + 1> c{};
    c[0] = 1.0;
    for (int n = 1; n <= kTerms; ++n) {
        double sum = 0.0;
        for (int i = 0; i < n; ++i)
            sum += c[static_cast<std::size_t>(i)] * c[static_cast<std::size_t>(n - 1 - i)];
        c[static_cast<std::size_t>(n)] = -sum / (1 + 2 * n);
    }
    return c;
}
constexpr auto kSeries = makeSeries();

// φ and, on request, its first two derivatives: φ = −Σ c[n+1] xⁿ.
template <class T>
struct PhiSeries {
    T phi{}, d1{}, d2{};
};

template <class T>
PhiSeries<T> phiSeries(const T& x)
{
    PhiSeries<T> s;
    for (std::size_t n = kTerms; n-- > 0;) {  // Horner, derivatives alongside
        s.d2 = s.d2 * x + 2.0 * s.d1;
        s.d1 = s.d1 * x + s.phi;
        s.phi = s.phi * x - kSeries[n + 1];
    }
    return s;
}

double tanhOverRoot(double x)
{
    const double root = std::sqrt(std::abs(x));
    return (x > 0 ? std::tanh(root) : std::tan(root)) / root;
}

}  // namespace

TanhRatio<Jet> tanhRatio(const Jet& x)
{
    const double v = x.value;
    if (std::abs(v) < kSeriesBound) {
        const auto [f, f1, f2] = phiSeries(v);
        const Jet phi = chain(x, f, f1, f2);
        return {1.0 - x * phi, phi};
    }
    const double t = tanhOverRoot(v);
    const double t1 = (1 - v * t * t - t) / (2 * v);
    const double t2 = (-t * t - 2 * v * t * t1 - 3 * t1) / (2 * v);
    const Jet tc = chain(x, t, t1, t2);
    return {tc, (1.0 - tc) / x};
}

TanhRatio<Complex> tanhRatio(const Complex& x)
{
    if (std::abs(x) < kSeriesBound) {
        const Complex phi = phiSeries(x).phi;
        return {1.0 - x * phi, phi};
    }
    const Complex root = std::sqrt(x);
    const Complex tc = std::tanh(root) / root;
    return {tc, (1.0 - tc) / x};
}

}  // namespace stillbay
