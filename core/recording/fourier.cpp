// SPDX-License-Identifier: MIT
#include "core/recording/fourier.h"

#include "core/base/check.h"

#include <kissfft/kissfft.hh>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace stillbay {
namespace {

// A butterfly of a prime p costs p² products; from about here on the chirp is cheaper.
constexpr std::size_t kLargestFactor = 64;

std::size_t largestFactor(std::size_t n)
{
    std::size_t largest = 1;
    for (std::size_t p = 2; p * p <= n; ++p)
        for (; n % p == 0; n /= p)
            largest = p;
    return std::max(largest, n);
}

// exp(sign·2πi k/n)
Complex turn(std::uint64_t k, std::uint64_t n, double sign)
{
    return std::polar(
        1.0, sign * 2 * std::numbers::pi * static_cast<double>(k % n) / static_cast<double>(n));
}

void conjugate(std::span<Complex> values)
{
    for (Complex& value : values)
        value = std::conj(value);
}

}  // namespace

// Bluestein's chirp, where the length has a large prime factor: with kn = (k² + n² − (k−n)²)/2 the
// transform is a convolution, done by transforms of a power of two (Rabiner, Schafer & Rader,
// 1969).
struct Fourier::Plan {
    explicit Plan(std::size_t n)
        : length(n), isChirp(!hasSmallFactors(n)), kiss(isChirp ? padded(n) : n, false)
    {
        if (!isChirp)
            return;
        const std::size_t m = padded(n);
        chirp.resize(n);
        for (std::uint64_t k = 0; k < n; ++k)
            chirp[k] = turn(k * k, 2 * static_cast<std::uint64_t>(n), -1);
        std::vector<Complex> kernel(m);
        for (std::size_t k = 0; k < n; ++k)
            kernel[k] = kernel[(m - k) % m] = std::conj(chirp[k]);
        response.resize(m);
        kiss.transform(kernel.data(), response.data());
        first.resize(m);
        second.resize(m);
    }

    static std::size_t padded(std::size_t n)
    {
        std::size_t m = 1;
        while (m < 2 * n - 1)
            m *= 2;
        return m;
    }

    void transform(const Complex* x, Complex* X)
    {
        if (!isChirp)
            return kiss.transform(x, X);
        std::fill(first.begin(), first.end(), Complex());
        for (std::size_t n = 0; n < length; ++n)
            first[n] = x[n] * chirp[n];
        kiss.transform(first.data(), second.data());
        // The inverse by conjugates, before and after.
        for (std::size_t k = 0; k < second.size(); ++k)
            second[k] = std::conj(second[k] * response[k]);
        kiss.transform(second.data(), first.data());
        for (std::size_t k = 0; k < length; ++k)
            X[k] = std::conj(first[k]) * chirp[k] / static_cast<double>(first.size());
    }

    std::size_t length;
    bool isChirp;
    kissfft<double> kiss;
    std::vector<Complex> chirp, response, first, second;
    std::vector<Complex> turned;  // of an inverse
};

Fourier::Fourier(std::size_t length)
{
    check(length > 0, "fourier: a length of nothing");
    m_plan = std::make_unique<Plan>(length);
}

Fourier::~Fourier() = default;
Fourier::Fourier(Fourier&&) noexcept = default;
Fourier& Fourier::operator=(Fourier&&) noexcept = default;

std::size_t Fourier::length() const
{
    return m_plan->length;
}

void Fourier::forward(std::span<const Complex> x, std::span<Complex> X)
{
    check(x.size() == length() && X.size() == length(), "fourier: a series of another length");
    check(x.data() != X.data(), "fourier: in place");
    m_plan->transform(x.data(), X.data());
}

void Fourier::inverse(std::span<const Complex> X, std::span<Complex> x)
{
    check(X.size() == length() && x.size() == length(), "fourier: a series of another length");
    std::vector<Complex>& turned = m_plan->turned;
    turned.assign(X.begin(), X.end());
    conjugate(turned);
    m_plan->transform(turned.data(), x.data());
    conjugate(x);
    for (Complex& value : x)
        value /= static_cast<double>(length());
}

RealFourier::RealFourier(std::size_t length)
    : m_length(length), m_fourier(length % 2 == 0 && length > 0 ? length / 2 : length)
{
    if (length % 2 == 0)
        for (std::size_t k = 0; k <= length / 2; ++k)
            m_turns.push_back(turn(k, length, -1));
    m_in.resize(m_fourier.length());
    m_out.resize(m_fourier.length());
}

void RealFourier::forward(std::span<const double> x, std::span<Complex> X)
{
    check(x.size() == m_length && X.size() == bins(), "fourier: a series of another length");
    const std::size_t n = m_fourier.length();
    if (m_length % 2 == 1) {
        std::copy(x.begin(), x.end(), m_in.begin());
        m_fourier.forward(m_in, m_out);
        std::copy_n(m_out.begin(), bins(), X.begin());
        return;
    }
    // Even samples as real, odd ones as imaginary parts of a series of half the length.
    for (std::size_t k = 0; k < n; ++k)
        m_in[k] = {x[2 * k], x[2 * k + 1]};
    m_fourier.forward(m_in, m_out);
    for (std::size_t k = 0; k <= n; ++k) {
        const Complex z = m_out[k % n], mirrored = std::conj(m_out[(n - k) % n]);
        const Complex odd = Complex(0, -0.5) * (z - mirrored);
        X[k] = 0.5 * (z + mirrored) + m_turns[k] * odd;
    }
}

void RealFourier::inverse(std::span<const Complex> X, std::span<double> x)
{
    check(x.size() == m_length && X.size() == bins(), "fourier: a series of another length");
    const std::size_t n = m_fourier.length();
    if (m_length % 2 == 1) {
        m_in[0] = X[0].real();
        for (std::size_t k = 1; k < bins(); ++k) {
            m_in[k] = X[k];
            m_in[n - k] = std::conj(X[k]);
        }
        m_fourier.inverse(m_in, m_out);
        for (std::size_t k = 0; k < n; ++k)
            x[k] = m_out[k].real();
        return;
    }
    const auto at = [&](std::size_t k) {
        return k % n == 0 ? Complex(X[k].real()) : X[k];
    };
    for (std::size_t k = 0; k < n; ++k) {
        const Complex z = at(k), mirrored = std::conj(at(n - k));
        m_in[k] = 0.5 * (z + mirrored) + Complex(0, 0.5) * std::conj(m_turns[k]) * (z - mirrored);
    }
    m_fourier.inverse(m_in, m_out);
    for (std::size_t k = 0; k < n; ++k) {
        x[2 * k] = m_out[k].real();
        x[2 * k + 1] = m_out[k].imag();
    }
}

bool hasSmallFactors(std::size_t length)
{
    return largestFactor(length) <= kLargestFactor;
}

std::size_t fastLength(std::size_t least)
{
    for (std::size_t length = std::max<std::size_t>(least, 1);; ++length)
        if (largestFactor(length) <= 5)
            return length;
}

}  // namespace stillbay
