// SPDX-License-Identifier: MIT
#include "core/clip/slow_motion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>

namespace stillbay {
namespace {

constexpr std::size_t kHalf = kFramesAtOnce / 2;
constexpr std::size_t kMostSweeps = 6;
constexpr double kNothing = 1e-3;  // of a band's spread: another sweep changes no more
constexpr double kSpanOfLine = 1.0, kSpanOfBend = 2.0;  // [s] from which on a pattern may drift

// Weights that give a derivative of the polynomial through so many points at 0.
template <std::size_t N>
std::array<double, N> derivativeAtZero(const std::array<double, N>& t, std::size_t order)
{
    std::array<double, N> weights{};
    for (std::size_t k = 0; k < N; ++k) {
        // Coefficients of the product of (x − t_j), j ≠ k, over its value at t_k.
        std::array<double, N> c{1.0};
        double value = 1.0;
        std::size_t degree = 0;
        for (std::size_t j = 0; j < N; ++j) {
            if (j == k)
                continue;
            ++degree;
            for (std::size_t n = degree; n > 0; --n)
                c[n] = c[n - 1] - t[j] * c[n];
            c[0] *= -t[j];
            value *= t[k] - t[j];
        }
        weights[k] = c[order] * (order == 2 ? 2.0 : 1.0) / value;
    }
    return weights;
}

}  // namespace

SlowMotion::SlowMotion(const RowGrid& grid, double readout)
    : m_grid(grid),
      m_weight(grid.weight),
      m_readout(readout),
      m_isUsed(grid.frames(), false),
      m_stencils(grid.frames())
{
    const std::size_t count = grid.frames(), rows = grid.rows();
    for (std::size_t n = 0; n < count; ++n) {
        m_isUsed[n] = n >= kHalf && n + kHalf < count && grid.run[n - kHalf] == grid.run[n + kHalf];
        if (m_isUsed[n]) {
            std::array<double, 5> t{};
            for (std::size_t k = 0; k < 5; ++k)
                t[k] = grid.time[n + k - kHalf] - grid.time[n];
            const auto first = derivativeAtZero(t, 1), second = derivativeAtZero(t, 2);
            const auto between = derivativeAtZero(std::array<double, 4>{t[0], t[1], t[3], t[4]}, 0);
            std::copy(first.begin(), first.end(), m_stencils[n].first);
            std::copy(second.begin(), second.end(), m_stencils[n].second);
            for (std::size_t k = 0; k < 4; ++k)
                m_stencils[n].between[k < 2 ? k : k + 1] = -between[k];
            m_stencils[n].between[2] = 1.0;
        }
    }
    for (std::size_t axis = 0; axis < 3; ++axis) {
        m_fits[axis].resize(count);
        for (std::size_t n = 0; n < count; ++n) {
            const double* const w = &m_weight[axis][n * rows];
            double sum = 0, first = 0, second = 0;
            for (std::size_t r = 0; r < rows; ++r) {
                sum += w[r];
                first += w[r] * grid.row[r];
            }
            LineFit& fit = m_fits[axis][n];
            if (sum <= 0)
                continue;
            fit.middle = first / sum;
            for (std::size_t r = 0; r < rows; ++r)
                second += w[r] * (grid.row[r] - fit.middle) * (grid.row[r] - fit.middle);
            fit.perWeight = 1 / sum;
            fit.perSpread = second > 1e-9 * sum ? 1 / second : 0.0;
        }
    }
    fitPatterns();

    // As many sweeps as the data need, and the same for sines.
    RowTables before = grid.value;
    takeOut(before);
    for (; m_sweeps < kMostSweeps;) {
        ++m_sweeps;
        RowTables after = grid.value;
        takeOut(after);
        double change = 0, bands = 0;
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (std::size_t k = 0; k < after[axis].size(); ++k) {
                const double d = after[axis][k] - before[axis][k], w = m_weight[axis][k];
                if (m_isUsed[k / rows] && w > 0) {
                    change += w * d * d;
                    ++bands;
                }
            }
        if (change < kNothing * kNothing * bands) {
            --m_sweeps;
            break;
        }
        before = std::move(after);
    }
}

void SlowMotion::fitPatterns()
{
    const std::size_t rows = m_grid.rows();
    for (std::size_t from = 0; from < m_grid.frames();) {
        std::size_t to = from;
        while (to < m_grid.frames() && m_grid.reference[to] == m_grid.reference[from])
            ++to;
        const double span = m_grid.time[to - 1] - m_grid.time[from];
        const double middle = (m_grid.time[to - 1] + m_grid.time[from]) / 2;
        Pattern pattern{.from = from, .to = to};
        pattern.terms = span >= kSpanOfBend ? 3 : span >= kSpanOfLine ? 2 : 1;
        pattern.powers.resize((to - from) * 3);
        for (std::size_t n = from; n < to; ++n) {
            const double t = (m_grid.time[n] - middle) / (span / 2);
            double* const p = &pattern.powers[(n - from) * 3];
            p[0] = m_isUsed[n] ? 1 : 0;
            p[1] = pattern.terms > 1 ? p[0] * t : 0;
            p[2] = pattern.terms > 2 ? p[0] * (1.5 * t * t - 0.5) : 0;
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            pattern.factor[axis].resize(rows * 6);
            for (std::size_t r = 0; r < rows; ++r) {
                // Cholesky of the 3 × 3 normal matrix; a term that the frames do not bear is left.
                double a[6] = {};
                for (std::size_t n = from; n < to; ++n) {
                    const double w = m_weight[axis][n * rows + r];
                    const double* const p = &pattern.powers[(n - from) * 3];
                    for (std::size_t i = 0, k = 0; i < 3; ++i)
                        for (std::size_t j = 0; j <= i; ++j, ++k)
                            a[k] += w * p[i] * p[j];
                }
                double* const l = &pattern.factor[axis][r * 6];
                const double least = 1e-3 * a[0];
                l[0] = a[0] > 0 ? std::sqrt(a[0]) : 0;
                l[1] = l[0] > 0 ? a[1] / l[0] : 0;
                const double d1 = a[2] - l[1] * l[1];
                l[2] = d1 > least ? std::sqrt(d1) : 0;
                l[3] = l[0] > 0 ? a[3] / l[0] : 0;
                l[4] = l[2] > 0 ? (a[4] - l[3] * l[1]) / l[2] : 0;
                const double d2 = a[5] - l[3] * l[3] - l[4] * l[4];
                l[5] = d2 > least ? std::sqrt(d2) : 0;
            }
        }
        m_patterns.push_back(std::move(pattern));
        from = to;
    }
}

std::vector<SlowMotion::Line> SlowMotion::takeLines(RowTable& table, std::size_t axis) const
{
    const std::size_t rows = m_grid.rows();
    std::vector<Line> lines(m_grid.frames());
    for (std::size_t n = 0; n < lines.size(); ++n) {
        const double* const w = &m_weight[axis][n * rows];
        double* const x = &table[n * rows];
        const LineFit& fit = m_fits[axis][n];
        double mean = 0, tilt = 0;
        for (std::size_t r = 0; r < rows; ++r) {
            mean += w[r] * x[r];
            tilt += w[r] * x[r] * (m_grid.row[r] - fit.middle);
        }
        mean *= fit.perWeight;
        tilt *= fit.perSpread;
        lines[n] = {mean - tilt * fit.middle, tilt};
        for (std::size_t r = 0; r < rows; ++r)
            x[r] -= lines[n].a + lines[n].b * m_grid.row[r];
    }
    return lines;
}

void SlowMotion::takePatterns(RowTable& table, std::size_t axis) const
{
    const std::size_t rows = m_grid.rows();
    std::vector<double> sums(rows * 3);
    for (const Pattern& pattern : m_patterns) {
        std::fill(sums.begin(), sums.end(), 0.0);
        for (std::size_t n = pattern.from; n < pattern.to; ++n) {
            const double* const w = &m_weight[axis][n * rows];
            const double* const x = &table[n * rows];
            const double* const p = &pattern.powers[(n - pattern.from) * 3];
            for (std::size_t r = 0; r < rows; ++r) {
                const double wx = w[r] * x[r];
                sums[r] += wx * p[0];
                sums[rows + r] += wx * p[1];
                sums[2 * rows + r] += wx * p[2];
            }
        }
        for (std::size_t r = 0; r < rows; ++r) {
            const double* const l = &pattern.factor[axis][r * 6];
            const auto over = [](double a, double b) {
                return b > 0 ? a / b : 0.0;
            };
            const double y0 = over(sums[r], l[0]);
            const double y1 = over(sums[rows + r] - l[1] * y0, l[2]);
            const double y2 = over(sums[2 * rows + r] - l[3] * y0 - l[4] * y1, l[5]);
            const double c2 = over(y2, l[5]);
            const double c1 = over(y1 - l[4] * c2, l[2]);
            sums[r] = over(y0 - l[1] * c1 - l[3] * c2, l[0]);
            sums[rows + r] = c1;
            sums[2 * rows + r] = c2;
        }
        for (std::size_t n = pattern.from; n < pattern.to; ++n) {
            double* const x = &table[n * rows];
            const double* const p = &pattern.powers[(n - pattern.from) * 3];
            for (std::size_t r = 0; r < rows; ++r)
                x[r] -= p[0] * sums[r] + p[1] * sums[rows + r] + p[2] * sums[2 * rows + r];
        }
    }
}

std::vector<double> SlowMotion::derivative(const std::vector<Line>& lines, std::size_t order) const
{
    std::vector<double> slopes(lines.size(), 0.0);
    for (std::size_t n = 0; n < lines.size(); ++n) {
        if (!m_isUsed[n])
            continue;
        const double* const weights = order == 1 ? m_stencils[n].first : m_stencils[n].second;
        for (std::size_t k = 0; k < 5; ++k)
            slopes[n] += weights[k] * lines[n + k - kHalf].a;
    }
    return slopes;
}

void SlowMotion::takeOut(RowTables& tables) const
{
    const std::size_t rows = m_grid.rows();
    std::array<bool, 3> isThere{};
    std::array<std::vector<Line>, 3> lines;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        isThere[axis] = !tables[axis].empty();
        if (isThere[axis])
            lines[axis] = takeLines(tables[axis], axis);
    }
    const double bendScale = m_readout * m_readout / 2;
    for (const std::size_t axis : {kAcross, kUp}) {
        if (!isThere[axis])
            continue;
        std::vector<double> bend = derivative(lines[axis], 2);
        for (double& b : bend)
            b *= bendScale;
        // A roll leans its rows by their height: what is straight in it bends, what bends twists.
        std::vector<double> twist(bend.size(), 0.0);
        if (axis == kAcross && isThere[kRoll]) {
            const std::vector<double> turning = derivative(lines[kRoll], 1);
            twist = derivative(lines[kRoll], 2);
            for (std::size_t n = 0; n < bend.size(); ++n) {
                bend[n] += m_readout * turning[n];
                twist[n] *= bendScale;
            }
        }
        for (std::size_t n = 0; n < bend.size(); ++n)
            for (std::size_t r = 0; r < rows; ++r) {
                const double row = m_grid.row[r];
                tables[axis][n * rows + r] -= row * row * (bend[n] + row * twist[n]);
            }
    }
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (!isThere[axis])
            continue;
        for (std::size_t sweep = 0; sweep < m_sweeps; ++sweep) {
            takePatterns(tables[axis], axis);
            takeLines(tables[axis], axis);
        }
        for (std::size_t n = 0; n < m_grid.frames(); ++n)
            if (!m_isUsed[n])
                std::fill_n(&tables[axis][n * rows], rows, 0.0);
    }
}

std::vector<double> SlowMotion::shifts(const RowTable& table, std::size_t axis) const
{
    RowTable copy = table;
    const std::vector<Line> lines = takeLines(copy, axis);
    std::vector<double> shifts(lines.size());
    for (std::size_t n = 0; n < lines.size(); ++n)
        shifts[n] = lines[n].a;
    return shifts;
}

std::vector<double> SlowMotion::unforeseen(const std::vector<double>& shifts) const
{
    std::vector<double> left(shifts.size(), 0.0);
    for (std::size_t n = 0; n < shifts.size(); ++n)
        for (std::size_t k = 0; m_isUsed[n] && k < 5; ++k)
            left[n] += m_stencils[n].between[k] * shifts[n + k - kHalf];
    return left;
}

double SlowMotion::eatenByPattern(double f_hz) const
{
    double eaten = 0, whole = 0;
    for (const Pattern& pattern : m_patterns) {
        std::complex<double> sums[3] = {};
        double norms[3] = {}, count = 0;
        for (std::size_t n = pattern.from; n < pattern.to; ++n) {
            const double* const p = &pattern.powers[(n - pattern.from) * 3];
            const auto phase = std::polar(1.0, 2 * std::numbers::pi * f_hz * m_grid.time[n]);
            for (std::size_t k = 0; k < pattern.terms; ++k) {
                sums[k] += p[k] * phase;
                norms[k] += p[k] * p[k];
            }
            count += p[0];
        }
        for (std::size_t k = 0; k < pattern.terms; ++k)
            if (norms[k] > 0)
                eaten += std::norm(sums[k]) / norms[k];
        whole += count;
    }
    return whole > 0 ? eaten / whole : 1.0;
}

double SlowMotion::eatenByBend(double f_hz) const
{
    const auto used = std::find(m_isUsed.begin(), m_isUsed.end(), true);
    if (used == m_isUsed.end())
        return 1.0;
    const auto n = static_cast<std::size_t>(used - m_isUsed.begin());
    constexpr std::size_t places = 64;
    const double turn = 2 * std::numbers::pi * f_hz;
    // Of e^{iφ} and of row² what shift and straight skew leave, in places down the frame.
    std::array<std::complex<double>, places> wave{}, bend{};
    std::complex<double> mean = 0;
    for (std::size_t k = 0; k < places; ++k) {
        const double row = (static_cast<double>(k) + 0.5) / places - 0.5;
        wave[k] = std::polar(1.0, turn * m_readout * row);
        bend[k] = row * row;
        mean += wave[k] / static_cast<double>(places);
    }
    const auto straighten = [](std::array<std::complex<double>, places>& x) {
        std::complex<double> shift = 0, skew = 0;
        double square = 0;
        for (std::size_t k = 0; k < places; ++k) {
            const double row = (static_cast<double>(k) + 0.5) / places - 0.5;
            shift += x[k] / static_cast<double>(places);
            skew += x[k] * row;
            square += row * row;
        }
        for (std::size_t k = 0; k < places; ++k)
            x[k] -= shift + skew / square * ((static_cast<double>(k) + 0.5) / places - 0.5);
    };
    straighten(wave);
    straighten(bend);
    std::complex<double> second = 0;
    for (std::size_t k = 0; k < kFramesAtOnce; ++k)
        second += m_stencils[n].second[k] *
                  std::polar(1.0, turn * (m_grid.time[n + k - kHalf] - m_grid.time[n]));
    double before = 0, after = 0;
    for (std::size_t k = 0; k < places; ++k) {
        before += std::norm(wave[k]);
        after += std::norm(wave[k] - mean * second * m_readout * m_readout / 2.0 * bend[k]);
    }
    return before > 0 ? 1 - after / before : 1.0;
}

double SlowMotion::usedTime() const
{
    return static_cast<double>(std::count(m_isUsed.begin(), m_isUsed.end(), true)) / m_grid.rate_hz;
}

}  // namespace stillbay
