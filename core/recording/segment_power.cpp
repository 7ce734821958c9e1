// SPDX-License-Identifier: MIT
#include "core/recording/segment_power.h"

#include "core/base/check.h"
#include "core/base/linalg.h"
#include "core/recording/fourier.h"
#include "core/recording/segments.h"

#include <kissfft/kissfft.hh>

#include <array>
#include <complex>

namespace stillbay {
namespace {

constexpr std::size_t kLanes = 2;  // two doubles are what every 64-bit processor works on at once

/// A number in each lane, in the place of KissFFT's scalar: one run transforms as many series, in
/// a third of the time. Where KissFFT and std::complex, whose plain formulas this takes, ask for
/// the functions of one number (its turns), all lanes hold the same.
struct Lanes {
    using Vector = double __attribute__((vector_size(kLanes * sizeof(double))));
    Vector v;

    Lanes() = default;
    // NOLINTBEGIN(google-explicit-constructor): as a double would
    Lanes(Vector lanes) : v(lanes) {}
    Lanes(double every) : v{every, every} {}
    operator double() const { return v[0]; }
    // NOLINTEND(google-explicit-constructor)
    explicit Lanes(int every) : Lanes(static_cast<double>(every)) {}

    Lanes& operator+=(Lanes other) { return *this = v + other.v; }
    Lanes& operator-=(Lanes other) { return *this = v - other.v; }
    Lanes& operator*=(Lanes other) { return *this = v * other.v; }
    friend Lanes operator+(Lanes a, Lanes b) { return a.v + b.v; }
    friend Lanes operator-(Lanes a, Lanes b) { return a.v - b.v; }
    friend Lanes operator*(Lanes a, Lanes b) { return a.v * b.v; }
    friend Lanes operator-(Lanes a) { return -a.v; }
    friend Lanes operator*(std::size_t a, Lanes b) { return Lanes(static_cast<double>(a)) * b; }
    friend Lanes operator*(Lanes a, int b) { return a * Lanes(b); }
    friend Lanes operator*(Lanes a, double b) { return a * Lanes(b); }
};

/// Sums |X_k|² of segments four at a time: two real ones are the real and the imaginary part of one
/// series z, and |Z_k|² + |Z_{N−k}|² is twice the sum of what both have at k.
class LanePower {
public:
    explicit LanePower(std::size_t segment)
        : m_window(hannWindow(segment)),
          m_kiss(segment, false),
          m_in(segment),
          m_out(segment),
          m_squares(segment)
    {
    }

    std::vector<double> of(std::span<const double> x)
    {
        const std::size_t segment = m_window.size();
        const std::size_t count = segmentCount(x.size(), segment), step = segment - segment / 2;
        for (std::size_t first = 0; first < count; first += kAtOnce)
            add(x, first * step, step, count - first);
        std::vector<double> power(segment / 2 + 1);
        for (std::size_t k = 0; k < power.size(); ++k) {
            const Lanes both = m_squares[k] + m_squares[(segment - k) % segment];
            power[k] = (both.v[0] + both.v[1]) / 2;
        }
        return power;
    }

private:
    static constexpr std::size_t kAtOnce = 2 * kLanes;

    void add(std::span<const double> x, std::size_t from, std::size_t step, std::size_t left)
    {
        std::array<const double*, kAtOnce> part{};
        std::array<double, kAtOnce> mean{}, share{};
        for (std::size_t s = 0; s < kAtOnce; ++s) {
            part[s] = x.data() + from + (s < left ? s * step : 0);  // else any, times 0
            mean[s] = meanOf({part[s], m_window.size()});
            share[s] = s < left ? 1 : 0;
        }
        using Vector = Lanes::Vector;
        const Vector meanRe{mean[0], mean[2]}, meanIm{mean[1], mean[3]};
        const Vector shareRe{share[0], share[2]}, shareIm{share[1], share[3]};
        for (std::size_t n = 0; n < m_window.size(); ++n) {
            const Vector re{part[0][n], part[2][n]}, im{part[1][n], part[3][n]};
            m_in[n] = {(re - meanRe) * (shareRe * m_window[n]),
                       (im - meanIm) * (shareIm * m_window[n])};
        }
        m_kiss.transform(m_in.data(), m_out.data());
        for (std::size_t k = 0; k < m_out.size(); ++k)
            m_squares[k] += m_out[k].real() * m_out[k].real() + m_out[k].imag() * m_out[k].imag();
    }

    std::vector<double> m_window;
    kissfft<Lanes> m_kiss;
    std::vector<std::complex<Lanes>> m_in, m_out;
    std::vector<Lanes> m_squares;
};

}  // namespace

std::vector<double> summedPower(std::span<const double> x, std::size_t segment)
{
    check(segment > 0 && x.size() >= segment, "segment power: no segment");
    if (hasSmallFactors(segment))
        return LanePower(segment).of(x);
    SegmentTransform transform(segment);
    std::vector<double> power(transform.bins());
    for (std::size_t from = 0; from + segment <= x.size(); from += transform.step()) {
        const std::span<const Complex> X = transform.of(x, from);
        for (std::size_t k = 0; k < X.size(); ++k)
            power[k] += std::norm(X[k]);
    }
    return power;
}

}  // namespace stillbay
