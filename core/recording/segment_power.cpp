// SPDX-License-Identifier: MIT
#include "core/recording/segment_power.h"

#include "core/base/check.h"
#include "core/recording/segments.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr std::size_t kPairs = 2;  // lanes: two doubles are what every 64-bit processor has
using Pair = double __attribute__((vector_size(kPairs * sizeof(double))));

// Complex numbers, a transform in each lane.
struct PairSeries {
    explicit PairSeries(std::size_t length) : re(length), im(length) {}
    std::vector<Pair> re, im;
};

// Transforms of a power of two, in each lane one; Stockham's order, four points a butterfly.
class PairFourier {
public:
    explicit PairFourier(std::size_t length) : m_length(length), m_other(length)
    {
        for (std::size_t k = 0; k < length; ++k) {
            const double angle =
                -2 * std::numbers::pi * static_cast<double>(k) / static_cast<double>(length);
            m_cos.push_back(std::cos(angle));
            m_sin.push_back(std::sin(angle));
        }
    }

    void transform(PairSeries& z)
    {
        std::size_t n = m_length, stride = 1;
        for (; n >= 4; n /= 4, stride *= 4) {
            quarter(z, n, stride);
            std::swap(z, m_other);
        }
        if (n == 2) {
            half(z, stride);
            std::swap(z, m_other);
        }
    }

private:
    void quarter(const PairSeries& from, std::size_t n, std::size_t stride)
    {
        const std::size_t m = n / 4, apart = stride * m;
        for (std::size_t p = 0; p < m; ++p) {
            const std::size_t turn = p * stride;  // of m_length
            const double c1 = m_cos[turn], s1 = m_sin[turn];
            const double c2 = m_cos[2 * turn], s2 = m_sin[2 * turn];
            const double c3 = m_cos[3 * turn], s3 = m_sin[3 * turn];
            const Pair *re = from.re.data() + stride * p, *im = from.im.data() + stride * p;
            Pair *toRe = m_other.re.data() + 4 * stride * p,
                 *toIm = m_other.im.data() + 4 * stride * p;
            for (std::size_t q = 0; q < stride; ++q) {
                const Pair are = re[q], aim = im[q];
                const Pair bre = re[q + apart], bim = im[q + apart];
                const Pair cre = re[q + 2 * apart], cim = im[q + 2 * apart];
                const Pair dre = re[q + 3 * apart], dim = im[q + 3 * apart];
                const Pair sumRe = are + cre, sumIm = aim + cim;
                const Pair difRe = are - cre, difIm = aim - cim;
                const Pair othRe = bre + dre, othIm = bim + dim;
                const Pair turRe = dim - bim, turIm = bre - dre;  // i (b − d)
                toRe[q] = sumRe + othRe;
                toIm[q] = sumIm + othIm;
                const Pair fRe = difRe - turRe, fIm = difIm - turIm;
                toRe[q + stride] = c1 * fRe - s1 * fIm;
                toIm[q + stride] = c1 * fIm + s1 * fRe;
                const Pair gRe = sumRe - othRe, gIm = sumIm - othIm;
                toRe[q + 2 * stride] = c2 * gRe - s2 * gIm;
                toIm[q + 2 * stride] = c2 * gIm + s2 * gRe;
                const Pair hRe = difRe + turRe, hIm = difIm + turIm;
                toRe[q + 3 * stride] = c3 * hRe - s3 * hIm;
                toIm[q + 3 * stride] = c3 * hIm + s3 * hRe;
            }
        }
    }

    void half(const PairSeries& from, std::size_t stride)
    {
        for (std::size_t q = 0; q < stride; ++q) {
            m_other.re[q] = from.re[q] + from.re[q + stride];
            m_other.im[q] = from.im[q] + from.im[q + stride];
            m_other.re[q + stride] = from.re[q] - from.re[q + stride];
            m_other.im[q + stride] = from.im[q] - from.im[q + stride];
        }
    }

    std::size_t m_length;
    PairSeries m_other;
    std::vector<double> m_cos, m_sin;
};

// Two real segments a lane, as real and as imaginary part: |Z_k|² + |Z_{N−k}|² is twice the sum of
// what both have at k.
std::vector<double> byPairs(std::span<const double> x, std::size_t segment)
{
    constexpr std::size_t kAtOnce = 2 * kPairs;
    const std::vector<double> window = hannWindow(segment);
    const std::size_t count = segmentCount(x.size(), segment), step = segment - segment / 2;
    PairFourier fourier(segment);
    PairSeries z(segment);
    std::vector<Pair> sums(segment);
    for (std::size_t first = 0; first < count; first += kAtOnce) {
        std::array<const double*, kAtOnce> part{};
        std::array<double, kAtOnce> mean{}, share{};
        for (std::size_t s = 0; s < kAtOnce; ++s) {
            const bool isThere = first + s < count;  // else any, times 0
            part[s] = x.data() + (isThere ? first + s : first) * step;
            mean[s] = meanOf({part[s], segment});
            share[s] = isThere ? 1 : 0;
        }
        const Pair meanRe{mean[0], mean[2]}, meanIm{mean[1], mean[3]};
        const Pair shareRe{share[0], share[2]}, shareIm{share[1], share[3]};
        for (std::size_t n = 0; n < segment; ++n) {
            const Pair re{part[0][n], part[2][n]}, im{part[1][n], part[3][n]};
            z.re[n] = (re - meanRe) * (shareRe * window[n]);
            z.im[n] = (im - meanIm) * (shareIm * window[n]);
        }
        fourier.transform(z);
        for (std::size_t k = 0; k < segment; ++k)
            sums[k] += z.re[k] * z.re[k] + z.im[k] * z.im[k];
    }
    std::vector<double> power(segment / 2 + 1);
    for (std::size_t k = 0; k < power.size(); ++k) {
        const Pair both = sums[k] + sums[(segment - k) % segment];
        power[k] = (both[0] + both[1]) / 2;
    }
    return power;
}

}  // namespace

std::vector<double> summedPower(std::span<const double> x, std::size_t segment)
{
    check(segment > 0 && x.size() >= segment, "segment power: no segment");
    if (std::has_single_bit(segment))
        return byPairs(x, segment);
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
