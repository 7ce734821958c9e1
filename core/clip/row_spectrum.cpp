// SPDX-License-Identifier: MIT
#include "core/clip/row_spectrum.h"

#include "core/base/linalg.h"
#include "core/base/parallel.h"
#include "core/base/quantile.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kStepsPerWidth = 4;  // grid steps in 1/T: a peak between two loses at most 5 %
constexpr int kTaylorTerms = 7;       // of the Taylor series over a block
constexpr double kBlockPhase = 0.5;   // [rad] at its edge: 0.5⁷/7! = 1.6e-6
constexpr double kWidestBlock_hz = 40.0;
constexpr double kLevelReach_hz = 12.0;  // either side
constexpr double kMedianOfTwo = 1.386;   // of χ² of 2
constexpr double kMedianOfSix = 5.348;   // of χ² of 6
constexpr double kTwoPi = 2 * std::numbers::pi;

// Real tables, whose sums with e^{−iωt} are the sines' products with the data: across, up, roll.
RowTables products(const RowGrid& grid, const RowTables& cleaned)
{
    RowTables x;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        x[axis].resize(cleaned[axis].size());
        for (std::size_t k = 0; k < x[axis].size(); ++k)
            x[axis][k] = grid.weight[axis][k] * cleaned[axis][k];
    }
    for (std::size_t k = 0; k < x[kRoll].size(); ++k)
        x[kRoll][k] += grid.row[k % grid.rows()] * x[kAcross][k];
    return x;
}

// Power of the sines themselves, weights taken as those of a frame times those of a row.
class SinePower {
public:
    SinePower(const RowGrid& grid, const SlowMotion& slow, double readout)
        : m_grid(grid), m_readout(readout)
    {
        for (std::size_t axis = 0; axis < 3; ++axis) {
            m_rows[axis].assign(grid.rows(), 0.0);
            for (std::size_t n = 0; n < grid.frames(); ++n)
                for (std::size_t r = 0; slow.isUsed(n) && r < grid.rows(); ++r)
                    m_rows[axis][r] += grid.weight[axis][n * grid.rows() + r];
            for (std::size_t r = 0; r < grid.rows(); ++r)
                m_all[axis] += m_rows[axis][r];
        }
    }

    // How much a sine across explains, up, and in roll beside the one across.
    // @param doubled Σ e^{2iωt} over frames, as a share
    std::array<double, 3> explained(double f_hz, Complex doubled,
                                    const std::array<Complex, 3>& s) const
    {
        const std::size_t rows = m_grid.rows();
        const double turn = kTwoPi * f_hz * m_readout;
        // Sums over rows of the weights with 1, row, row², and of them with e^{iφ} and its square.
        struct Sums {
            double w[3] = {};
            Complex e[3] = {}, d[3] = {};
        };
        std::array<Sums, 3> sums;
        for (std::size_t r = 0; r < rows; ++r) {
            const Complex e = std::polar(1.0, turn * m_grid.row[r]), ee = e * e;
            for (std::size_t axis = 0; axis < 3; ++axis) {
                double w = m_rows[axis][r];
                for (int k = 0; k < 3; ++k, w *= m_grid.row[r]) {
                    sums[axis].w[k] += w;
                    sums[axis].e[k] += w * e;
                    sums[axis].d[k] += w * ee;
                }
            }
        }
        // Products of two sines row^i e^{iφ} and row^j e^{iφ} within one axis, what a straight line
        // takes of them left out: with the one conjugated, and with neither.
        const auto product = [&](std::size_t axis, int i, int j, bool isConjugated) {
            const Sums& q = sums[axis];
            const double norm = q.w[0] * q.w[2] - q.w[1] * q.w[1];
            if (norm <= 0)
                return Complex(0);
            const auto bar = [&](Complex z) {
                return isConjugated ? std::conj(z) : z;
            };
            const Complex a0 = bar(q.e[i]), a1 = bar(q.e[i + 1]), b0 = q.e[j], b1 = q.e[j + 1];
            const Complex whole = isConjugated ? Complex(q.w[i + j]) : q.d[i + j];
            return whole -
                   (q.w[2] * a0 * b0 - q.w[1] * (a0 * b1 + a1 * b0) + q.w[0] * a1 * b1) / norm;
        };
        std::array<double, 3> explained{};
        {
            const Complex h = product(kUp, 0, 0, true), p = doubled * product(kUp, 0, 0, false);
            explained[kUp] = solve1(h, p, s[kUp], m_all[kUp]);
        }
        const Complex haa = product(kAcross, 0, 0, true), har = product(kAcross, 0, 1, true),
                      hrr = product(kAcross, 1, 1, true) + product(kRoll, 0, 0, true);
        const Complex paa = doubled * product(kAcross, 0, 0, false),
                      par = doubled * product(kAcross, 0, 1, false),
                      prr = doubled * (product(kAcross, 1, 1, false) + product(kRoll, 0, 0, false));
        const auto both = solve2(haa, har, hrr, paa, par, prr, s[kAcross], s[kRoll]);
        explained[kAcross] = both[0];
        explained[kRoll] = both[1];
        return explained;
    }

private:
    // Model Re(c z), c = a + ib: columns Re z and −Im z. With h = Σw z̄z and p = Σw zz their
    // products are (h + Re p)/2, (h − Re p)/2, −Im p/2; s = Σ w d z̄.
    static double solve1(Complex h, Complex p, Complex s, double all)
    {
        Eigen::Matrix2d a;
        a << h.real() + p.real(), -p.imag(), -p.imag(), h.real() - p.real();
        a *= 0.5;
        const Eigen::Vector2d b(s.real(), s.imag());
        const double least = 1e-7 * all;
        if (a.determinant() <= least * least)
            return 0.0;
        return b.dot(a.inverse() * b);
    }

    static std::array<double, 2> solve2(Complex haa, Complex har, Complex hrr, Complex paa,
                                        Complex par, Complex prr, Complex sa, Complex sr)
    {
        Eigen::Matrix4d a;
        const auto block = [&](int i, int j, Complex h, Complex p) {
            // Re z_i Re z_j = Re(z̄_i z_j + z_i z_j)/2 and so on.
            a(2 * i, 2 * j) = h.real() + p.real();
            a(2 * i, 2 * j + 1) = -h.imag() - p.imag();
            a(2 * i + 1, 2 * j) = h.imag() - p.imag();
            a(2 * i + 1, 2 * j + 1) = h.real() - p.real();
        };
        block(0, 0, haa, paa);
        block(0, 1, har, par);
        block(1, 0, std::conj(har), par);
        block(1, 1, hrr, prr);
        a *= 0.5;
        Eigen::Vector4d b(sa.real(), sa.imag(), sr.real(), sr.imag());
        // Cholesky by hand; what is too small to be told is left out.
        std::array<double, 2> explained{};
        Eigen::Matrix4d l = Eigen::Matrix4d::Zero();
        for (int i = 0; i < 4; ++i) {
            for (int j = 0; j < i; ++j) {
                double v = a(i, j);
                for (int k = 0; k < j; ++k)
                    v -= l(i, k) * l(j, k);
                l(i, j) = l(j, j) > 0 ? v / l(j, j) : 0.0;
            }
            double d = a(i, i), y = b(i);
            for (int k = 0; k < i; ++k) {
                d -= l(i, k) * l(i, k);
                y -= l(i, k) * b(k);
            }
            l(i, i) = d > 1e-6 * a(i, i) && d > 0 ? std::sqrt(d) : 0.0;
            b(i) = l(i, i) > 0 ? y / l(i, i) : 0.0;
            explained[static_cast<std::size_t>(i / 2)] += b(i) * b(i);
        }
        return explained;
    }

    const RowGrid& m_grid;
    double m_readout;
    std::array<std::vector<double>, 3> m_rows;
    std::array<double, 3> m_all{};
};

// The products of all bands with e^{−iωt}, for frequencies around one.
class Block {
public:
    Block(const RowGrid& grid, const RowTables& x, double readout, double middle_hz, double half_hz)
        : m_middle_hz(middle_hz), m_half_hz(half_hz)
    {
        const std::size_t rows = grid.rows(), frames = grid.frames();
        // e^{−iωτ} = e^{−iω₀τ} Σ (−i(ω − ω₀)τ)ʲ/j!, for each row.
        std::vector<std::array<double, 2 * kTaylorTerms>> terms(rows);
        for (std::size_t r = 0; r < rows; ++r) {
            const double tau = grid.row[r] * readout;
            Complex term = std::polar(1.0, -kTwoPi * middle_hz * tau);
            for (int j = 0; j < kTaylorTerms; ++j) {
                const auto place = static_cast<std::size_t>(2 * j);
                terms[r][place] = term.real();
                terms[r][place + 1] = term.imag();
                term *= Complex(0, -kTwoPi * half_hz * tau / (j + 1));
            }
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (auto& m : m_moments[axis])
                m.resize(static_cast<Eigen::Index>(frames));
            for (std::size_t n = 0; n < frames; ++n) {
                std::array<double, 2 * kTaylorTerms> sum{};
                const double* const row = &x[axis][n * rows];
                for (std::size_t r = 0; r < rows; ++r)
                    for (std::size_t j = 0; j < 2 * kTaylorTerms; ++j)
                        sum[j] += row[r] * terms[r][j];
                for (std::size_t j = 0; j < 2 * kTaylorTerms; ++j)
                    m_moments[axis][j][static_cast<Eigen::Index>(n)] = sum[j];
            }
        }
    }

    // @param re, im of e^{−iωt} of the frames
    std::array<Complex, 3> at(double f_hz, const Eigen::ArrayXd& re, const Eigen::ArrayXd& im)
    {
        const double u = (f_hz - m_middle_hz) / m_half_hz;
        std::array<Complex, 3> sums;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const auto& m = m_moments[axis];
            static_assert(kTaylorTerms == 7);
            m_re =
                m[0] + u * (m[2] + u * (m[4] + u * (m[6] + u * (m[8] + u * (m[10] + u * m[12])))));
            m_im =
                m[1] + u * (m[3] + u * (m[5] + u * (m[7] + u * (m[9] + u * (m[11] + u * m[13])))));
            sums[axis] = {(m_re * re - m_im * im).sum(), (m_re * im + m_im * re).sum()};
        }
        return sums;
    }

private:
    double m_middle_hz, m_half_hz;
    std::array<std::array<Eigen::ArrayXd, 2 * kTaylorTerms>, 3> m_moments;
    Eigen::ArrayXd m_re, m_im;
};

// Median of what is explained around each frequency, found on a coarser grid.
std::vector<double> levels(const std::vector<double>& explained, double step_hz)
{
    const auto reach = static_cast<std::size_t>(kLevelReach_hz / step_hz);
    const std::size_t hop = std::max<std::size_t>(1, reach / 8);
    std::vector<double> coarse;
    std::vector<double> around;
    for (std::size_t k = 0; k < explained.size() + hop; k += hop) {
        const std::size_t at = std::min(k, explained.size() - 1);
        const std::size_t from = at > reach ? at - reach : 0;
        const std::size_t to = std::min(explained.size(), at + reach + 1);
        around.clear();
        for (std::size_t i = from; i < to; i += 2)
            if (explained[i] > 0)
                around.push_back(explained[i]);
        const auto middle = around.begin() + static_cast<std::ptrdiff_t>(around.size() / 2);
        std::nth_element(around.begin(), middle, around.end());
        coarse.push_back(around.empty() ? 1.0 : *middle / kMedianOfSix);
    }
    std::vector<double> level(explained.size());
    for (std::size_t k = 0; k < level.size(); ++k) {
        const double share = static_cast<double>(k % hop) / static_cast<double>(hop);
        level[k] = (1 - share) * coarse[k / hop] + share * coarse[k / hop + 1];
    }
    return level;
}

}  // namespace

double RowSpectrum::levelAt(double f_hz) const
{
    const double at = std::round((f_hz - first_hz) / step_hz);
    const double last = static_cast<double>(level.size() - 1);
    return level[static_cast<std::size_t>(std::clamp(at, 0.0, last))];
}

RowSpectrum rowSpectrum(const RowGrid& grid, const SlowMotion& slow, const RowTables& cleaned,
                        double readout, double lowest_hz, double highest_hz,
                        const std::stop_token& stop)
{
    RowSpectrum spectrum{.first_hz = lowest_hz, .step_hz = 1 / (kStepsPerWidth * grid.span())};
    const auto count =
        static_cast<std::size_t>(std::ceil((highest_hz - lowest_hz) / spectrum.step_hz)) + 1;
    spectrum.explained.resize(count);
    spectrum.told.resize(count);
    std::array<std::vector<double>, 3> byAxis;
    for (std::vector<double>& explained : byAxis)
        explained.resize(count);
    const RowTables x = products(grid, cleaned);
    const SinePower power(grid, slow, readout);
    const double half_hz =
        std::min(kWidestBlock_hz, readout > 0 ? kBlockPhase / (std::numbers::pi * readout) : 1e9);
    const auto perBlock =
        std::max<std::size_t>(1, static_cast<std::size_t>(2 * half_hz / spectrum.step_hz));
    std::vector<double> used(grid.frames());
    double all = 0;
    for (std::size_t n = 0; n < grid.frames(); ++n) {
        for (std::size_t r = 0; slow.isUsed(n) && r < grid.rows(); ++r)
            used[n] += grid.weight[kAcross][n * grid.rows() + r];
        all += used[n];
    }
    const auto run = [&](std::size_t b) {
        const std::size_t from = b * perBlock, to = std::min(count, from + perBlock);
        const double middle_hz = (spectrum.frequency_hz(from) + spectrum.frequency_hz(to - 1)) / 2;
        Block block(grid, x, readout, middle_hz, half_hz);
        const auto frames = static_cast<Eigen::Index>(grid.frames());
        const Eigen::Map<const Eigen::ArrayXd> time(grid.time.data(), frames);
        const Eigen::Map<const Eigen::ArrayXd> share(used.data(), frames);
        Eigen::ArrayXd re = (kTwoPi * spectrum.frequency_hz(from) * time).cos();
        Eigen::ArrayXd im = -(kTwoPi * spectrum.frequency_hz(from) * time).sin();
        const Eigen::ArrayXd stepRe = (kTwoPi * spectrum.step_hz * time).cos();
        const Eigen::ArrayXd stepIm = -(kTwoPi * spectrum.step_hz * time).sin();
        Eigen::ArrayXd next(frames);
        for (std::size_t k = from; k < to; ++k) {
            const double f = spectrum.frequency_hz(k);
            const Complex doubled((share * (re * re - im * im)).sum() / all,
                                  -2 * (share * re * im).sum() / all);
            const auto explained = power.explained(f, doubled, block.at(f, re, im));
            for (std::size_t axis = 0; axis < 3; ++axis)
                byAxis[axis][k] = explained[axis];
            next = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = next;
        }
    };
    if (!inParallel((count + perBlock - 1) / perBlock, 0, run, stop, {}))
        return spectrum;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        std::vector<double> told;
        std::copy_if(byAxis[axis].begin(), byAxis[axis].end(), std::back_inserter(told),
                     [](double each) { return each > 0; });
        spectrum.scale[axis] = told.empty() ? 1.0 : median(std::move(told)) / kMedianOfTwo;
        for (std::size_t k = 0; k < count; ++k)
            spectrum.explained[k] += byAxis[axis][k] / spectrum.scale[axis];
        for (std::size_t k = 0; k < count; ++k)
            spectrum.told[k] += byAxis[axis][k];
    }
    spectrum.level = levels(spectrum.explained, spectrum.step_hz);
    return spectrum;
}

}  // namespace stillbay
