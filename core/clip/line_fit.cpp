// SPDX-License-Identifier: MIT
#include "core/clip/line_fit.h"

#include "core/base/sinc.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;
constexpr std::size_t kMostSteps = 8;
constexpr double kStill = 1e-3;  // of the frequency's own spread: a smaller step changes nothing

// e^{iωt} of every band, softened by its height.
struct Phases {
    std::vector<Complex> frame, row;
};

Phases phasesOf(const RowGrid& grid, double readout, double f_hz)
{
    Phases phases;
    for (const double t : grid.time)
        phases.frame.push_back(std::polar(1.0, kTurn * f_hz * t));
    const double soft = sinc(kTurn / 2 * f_hz * readout * grid.bandHeight);
    for (const double row : grid.row)
        phases.row.push_back(std::polar(soft, kTurn * f_hz * readout * row));
    return phases;
}

// Six unknowns; what the data do not tell is 0.
Vector6d solveSix(const Matrix6d& a, const Vector6d& b)
{
    Matrix6d l = Matrix6d::Zero();
    Vector6d y = b;
    for (int i = 0; i < 6; ++i) {
        for (int j = 0; j < i; ++j) {
            double v = a(i, j);
            for (int k = 0; k < j; ++k)
                v -= l(i, k) * l(j, k);
            l(i, j) = l(j, j) > 0 ? v / l(j, j) : 0.0;
        }
        double d = a(i, i);
        for (int k = 0; k < i; ++k) {
            d -= l(i, k) * l(i, k);
            y(i) -= l(i, k) * y(k);
        }
        l(i, i) = d > 1e-9 * a(i, i) && d > 0 ? std::sqrt(d) : 0.0;
        y(i) = l(i, i) > 0 ? y(i) / l(i, i) : 0.0;
    }
    for (int i = 5; i >= 0; --i) {
        for (int k = i + 1; k < 6; ++k)
            y(i) -= l(k, i) * y(k);
        y(i) = l(i, i) > 0 ? y(i) / l(i, i) : 0.0;
    }
    return y;
}

}  // namespace

void addSine(const RowGrid& grid, double readout, const Sine& sine, double factor,
             RowTables& tables)
{
    const Phases phases = phasesOf(grid, readout, sine.frequency_hz);
    for (std::size_t n = 0; n < grid.frames(); ++n)
        for (std::size_t r = 0; r < grid.rows(); ++r) {
            const Complex e = factor * phases.frame[n] * phases.row[r];
            const std::size_t k = n * grid.rows() + r;
            const double roll = (sine.amplitude[kRoll] * e).real();
            tables[kAcross][k] += (sine.amplitude[kAcross] * e).real() + grid.row[r] * roll;
            tables[kUp][k] += (sine.amplitude[kUp] * e).real();
            tables[kRoll][k] += roll;
        }
}

double SineColumns::product(const RowGrid& grid, const RowTables& a, const RowTables& b)
{
    double sum = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (a[axis].empty() || b[axis].empty())
            continue;
        double part[4] = {};
        const std::size_t count = a[axis].size();
        const double* const w = grid.weight[axis].data();
        const double* const x = a[axis].data();
        const double* const y = b[axis].data();
        std::size_t k = 0;
        for (; k + 4 <= count; k += 4)
            for (std::size_t lane = 0; lane < 4; ++lane)
                part[lane] += w[k + lane] * x[k + lane] * y[k + lane];
        for (; k < count; ++k)
            part[0] += w[k] * x[k] * y[k];
        sum += part[0] + part[1] + part[2] + part[3];
    }
    return sum;
}

SineColumns::SineColumns(const RowGrid& grid, const SlowMotion& slow, double readout, double f_hz)
    : m_grid(grid), m_slow(slow), m_readout(readout), m_f_hz(f_hz)
{
    const std::size_t rows = grid.rows(), count = grid.frames() * rows;
    const Phases phases = phasesOf(grid, readout, f_hz);
    RowTable c(count), s(count);
    for (std::size_t n = 0; n < grid.frames(); ++n)
        for (std::size_t r = 0; r < rows; ++r) {
            const Complex e = phases.frame[n] * phases.row[r];
            c[n * rows + r] = e.real();
            s[n * rows + r] = -e.imag();
        }
    for (std::size_t part = 0; part < 2; ++part) {
        const RowTable& wave = part == 0 ? c : s;
        m_columns[part][kAcross] = wave;
        m_columns[2 + part][kUp] = wave;
        m_columns[4 + part][kRoll] = wave;
        RowTable& lever = m_columns[4 + part][kAcross];
        lever = wave;
        for (std::size_t k = 0; k < count; ++k)
            lever[k] *= grid.row[k % rows];
    }
    for (RowTables& column : m_columns)
        slow.takeOut(column);
}

void SineColumns::addTo(RowTables& tables, const std::array<Complex, 3>& amplitude,
                        double factor) const
{
    for (std::size_t i = 0; i < 6; ++i) {
        const Complex c = amplitude[i / 2];
        const double by = factor * (i % 2 == 0 ? c.real() : c.imag());
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (std::size_t k = 0; k < m_columns[i][axis].size(); ++k)
                tables[axis][k] += by * m_columns[i][axis][k];
    }
}

SineColumns::Fit SineColumns::fit(const RowTables& data) const
{
    Fit fit;
    Vector6d b;
    for (int i = 0; i < 6; ++i) {
        const auto& column = m_columns[static_cast<std::size_t>(i)];
        b(i) = product(m_grid, column, data);
        for (int j = 0; j <= i; ++j)
            fit.normal(i, j) = fit.normal(j, i) =
                product(m_grid, column, m_columns[static_cast<std::size_t>(j)]);
    }
    const Vector6d x = solveSix(fit.normal, b);
    for (int i = 0; i < 6; ++i)
        fit.noise2[static_cast<std::size_t>(i / 2)] += solveSix(fit.normal, Vector6d::Unit(i))(i);
    fit.explained = x.dot(b);
    for (int axis = 0; axis < 3; ++axis)
        fit.amplitude[static_cast<std::size_t>(axis)] = {x(2 * axis), x(2 * axis + 1)};
    return fit;
}

SineColumns::Change SineColumns::change(const std::array<Complex, 3>& amplitude,
                                        const RowTables& data) const
{
    const std::size_t rows = m_grid.rows(), count = m_grid.frames() * rows;
    const Phases phases = phasesOf(m_grid, m_readout, m_f_hz);
    RowTables column;
    for (RowTable& table : column)
        table.resize(count);
    for (std::size_t n = 0; n < m_grid.frames(); ++n)
        for (std::size_t r = 0; r < rows; ++r) {
            const double t = m_grid.time[n] + m_readout * m_grid.row[r];
            const Complex d = phases.frame[n] * phases.row[r] * Complex(0, kTurn * t);
            const std::size_t k = n * rows + r;
            const double roll = (amplitude[kRoll] * d).real();
            column[kAcross][k] = (amplitude[kAcross] * d).real() + m_grid.row[r] * roll;
            column[kUp][k] = (amplitude[kUp] * d).real();
            column[kRoll][k] = roll;
        }
    m_slow.takeOut(column);
    Change change;
    for (int i = 0; i < 6; ++i)
        change.withColumns(i) = product(m_grid, m_columns[static_cast<std::size_t>(i)], column);
    change.square = product(m_grid, column, column);
    change.withData = product(m_grid, column, data);
    return change;
}

SineColumns::Fit refineSine(const RowGrid& grid, const SlowMotion& slow, double readout,
                            const RowTables& data, double reach_hz, Sine& sine,
                            const std::stop_token& stop)
{
    const double from = sine.frequency_hz;
    SineColumns::Fit fit;
    for (std::size_t step = 0; step < kMostSteps && !stop.stop_requested(); ++step) {
        const SineColumns columns(grid, slow, readout, sine.frequency_hz);
        fit = columns.fit(data);
        sine.amplitude = fit.amplitude;
        // What the six cannot follow of a change with frequency, against what they leave.
        RowTables left = data;
        columns.addTo(left, fit.amplitude, -1.0);
        const auto change = columns.change(fit.amplitude, left);
        const double own =
            change.square - change.withColumns.dot(solveSix(fit.normal, change.withColumns));
        if (own <= 0)
            break;
        sine.variance_hz2 = 1 / own;
        const double move = change.withData / own;
        if (std::abs(move) < kStill * std::sqrt(sine.variance_hz2))
            break;
        const double limit = reach_hz / 4;
        sine.frequency_hz = std::clamp(sine.frequency_hz + std::clamp(move, -limit, limit),
                                       from - reach_hz, from + reach_hz);
    }
    return fit;
}

}  // namespace stillbay
