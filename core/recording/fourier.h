// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

/// Discrete Fourier transforms, by KissFFT in double precision.
namespace stillbay {

/// Transforms series of one length, which may be any from 1; those of small prime factors are the
/// fastest, others go by a chirp and take some eight times as long. One object serves one thread.
class Fourier {
public:
    explicit Fourier(std::size_t length);
    ~Fourier();
    Fourier(Fourier&&) noexcept;
    Fourier& operator=(Fourier&&) noexcept;

    std::size_t length() const;

    /// X_k = Σ x_n exp(−2πi kn/N), k = 0 … N−1.
    ///
    /// @param x, X  N values each, not the same memory
    void forward(std::span<const Complex> x, std::span<Complex> X);

    /// x_n = Σ X_k exp(+2πi kn/N) / N.
    void inverse(std::span<const Complex> X, std::span<Complex> x);

private:
    struct Plan;
    std::unique_ptr<Plan> m_plan;
};

/// The same for real series: the upper half of the frequencies is left out, being the conjugate of
/// the lower.
class RealFourier {
public:
    explicit RealFourier(std::size_t length);

    std::size_t length() const { return m_length; }
    std::size_t bins() const { return m_length / 2 + 1; }

    /// X_k as above, k = 0 … N/2.
    ///
    /// @param x  length() values
    /// @param X  bins() values
    void forward(std::span<const double> x, std::span<Complex> X);

    /// The real series of such X; of X_0 and, where N is even, X_{N/2} the real part counts.
    void inverse(std::span<const Complex> X, std::span<double> x);

private:
    std::size_t m_length;
    Fourier m_fourier;             // of half the length where that is even
    std::vector<Complex> m_turns;  // exp(−2πi k/N), k = 0 … N/2
    std::vector<Complex> m_in, m_out;
};

/// Whether the length is transformed by its factors, not by a chirp.
bool hasSmallFactors(std::size_t length);

/// The smallest length from `least` on whose only prime factors are 2, 3 and 5.
std::size_t fastLength(std::size_t least);

}  // namespace stillbay
