// SPDX-License-Identifier: MIT
#include "core/recording/fourier.h"

#include "tests/recording/noise.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fftw3.h>
#include <numeric>

namespace stillbay {
namespace {

std::vector<Complex> byFftw(const std::vector<Complex>& x, int sign)
{
    std::vector<Complex> X(x.size()), in = x;
    const auto plan =
        fftw_plan_dft_1d(static_cast<int>(x.size()), reinterpret_cast<fftw_complex*>(in.data()),
                         reinterpret_cast<fftw_complex*>(X.data()), sign, FFTW_ESTIMATE);
    fftw_execute(plan);
    fftw_destroy_plan(plan);
    return X;
}

double largest(const std::vector<Complex>& a)
{
    double most = 0;
    for (const Complex& value : a)
        most = std::max(most, std::abs(value));
    return most;
}

double largestDifference(std::vector<Complex> a, const std::vector<Complex>& b)
{
    for (std::size_t k = 0; k < a.size(); ++k)
        a[k] -= b[k];
    return largest(a);
}

// Powers of two, small factors, primes that a butterfly takes and such that go by the chirp.
const std::vector<std::size_t> kLengths{1,  2,   3,   4,    7,    8,    12,   61,
                                        67, 125, 134, 1000, 1024, 1021, 2042, 4096};

// Oracle: FFTW. Rounding grows as √log N times ε of the root mean square, which lies below the
// largest; 64 covers the chirp, whose three transforms are four times as long.
TEST(Fourier, AgreesWithFftwBothWays)
{
    for (const std::size_t n : kLengths) {
        const auto re = noise(3, n), im = noise(4, n);
        std::vector<Complex> x(n), X(n), back(n);
        for (std::size_t k = 0; k < n; ++k)
            x[k] = {re[k] + 2, im[k] - 0.7};
        Fourier fourier(n);
        fourier.forward(x, X);
        const std::vector<Complex> expected = byFftw(x, FFTW_FORWARD);
        EXPECT_LT(largestDifference(X, expected), 64 * kEpsilon * largest(expected)) << n;
        fourier.inverse(X, back);
        EXPECT_LT(largestDifference(back, x), 64 * kEpsilon * std::sqrt(n) * largest(x)) << n;
    }
}

// Oracle: FFTW, as above, of real series: the lower half of the same, and back.
TEST(Fourier, OfRealSeriesIsTheLowerHalf)
{
    for (const std::size_t n : kLengths) {
        std::vector<double> x = noise(5, n), back(n);
        RealFourier fourier(n);
        std::vector<Complex> X(fourier.bins());
        fourier.forward(x, X);
        std::vector<Complex> expected =
            byFftw(std::vector<Complex>(x.begin(), x.end()), FFTW_FORWARD);
        const double scale = largest(expected);
        expected.resize(fourier.bins());
        EXPECT_LT(largestDifference(X, expected), 64 * kEpsilon * scale) << n;
        fourier.inverse(X, back);
        for (std::size_t k = 0; k < n; ++k)
            ASSERT_NEAR(back[k], x[k], 64 * kEpsilon * std::sqrt(n)) << n;
    }
}

// Oracle: identity, Parseval: Σ|X|² = N Σ|x|².
TEST(Fourier, KeepsTheEnergy)
{
    for (const std::size_t n : {1000U, 1021U, 4096U}) {
        const auto re = noise(6, n), im = noise(7, n);
        std::vector<Complex> x(n), X(n);
        double energy = 0, transformed = 0;
        for (std::size_t k = 0; k < n; ++k) {
            x[k] = {re[k], 3 * im[k]};
            energy += std::norm(x[k]);
        }
        Fourier(n).forward(x, X);
        for (const Complex& value : X)
            transformed += std::norm(value);
        EXPECT_NEAR(transformed, static_cast<double>(n) * energy, 1e-13 * transformed) << n;
    }
}

TEST(Fourier, FastLengthHasSmallFactors)
{
    EXPECT_EQ(fastLength(1), 1U);
    EXPECT_EQ(fastLength(1021), 1024U);
    EXPECT_EQ(fastLength(121), 125U);
    EXPECT_EQ(fastLength(4321), 4374U);
}

}  // namespace
}  // namespace stillbay
