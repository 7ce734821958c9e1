// SPDX-License-Identifier: MIT
#include "core/calibrate/motor_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

namespace stillbay {
namespace {

constexpr double kFarthestLine = 0.06;  // of the speed: motors are no further from their mean
constexpr double kOutsideLines = 0.14;  // up to here nothing turns: noise
constexpr double kGridBins = 0.25;      // of 1/T, from one place to the next
constexpr double kApartBins = 3.0;      // Hann windows' main lobes that do not cover each other
constexpr double kLobeBins = 2.2;       // either side, that a line's power is taken from
constexpr double kHannBins = 1.5;       // equivalent noise bandwidth of a Hann window
constexpr double kFaintest = 0.01;      // of the strongest line's power; side lobes are below
constexpr double kOverNoise = 16.0;     // power of a line
constexpr double kMostUnlike = 0.15;    // share of a line that its motor's motion leaves
constexpr double kClearly = 0.05;       // by so much the next best assignment is worse
constexpr std::size_t kMostMotors = 8;  // 40 320 assignments

using Amplitudes = std::vector<Complex>;  // one an axis

double powerOf(const Amplitudes& amplitudes)
{
    double sum = 0;
    for (const Complex& a : amplitudes)
        sum += std::norm(a);
    return sum;
}

// The most samples of a turn that may be taken together: order 1's own mirror, and what turns up to
// four times as fast, must fold beyond what is looked at.
std::size_t samplesTogether(double rate, double speed)
{
    const auto foldsBeyond = [&](std::size_t taken) {
        const double turns = rate / static_cast<double>(taken) / speed;
        return std::ranges::all_of(std::array{-4.0, -3.0, -2.0, 1.0, 2.0, 3.0}, [&](double from) {
            return std::abs(std::remainder(from, turns)) > kOutsideLines + kFarthestLine;
        });
    };
    auto taken = std::max<std::size_t>(1, static_cast<std::size_t>(rate / speed));
    while (taken > 1 && !foldsBeyond(taken))
        --taken;
    return taken;
}

/// The stretch moved down by its speed, some samples a turn taken together.
class Baseband {
public:
    Baseband(const RecordedAxes& recorded, const SteadyStretch& stretch)
        : m_speed(stretch.speed), m_rate(recorded.rate)
    {
        const std::size_t samples = recorded.values[0].size();
        const auto first = std::min(samples, static_cast<std::size_t>(stretch.from * m_rate));
        const auto last = std::min(samples, static_cast<std::size_t>(stretch.to * m_rate));
        m_taken = samplesTogether(m_rate, m_speed);
        const std::size_t count = (last - first) / m_taken;
        for (const auto& values : recorded.values) {
            const auto part = values.subspan(first, count * m_taken);
            const double mean = std::accumulate(part.begin(), part.end(), 0.0) /
                                static_cast<double>(std::max<std::size_t>(part.size(), 1));
            Amplitudes& moved = m_moved.emplace_back(count);
            const double turn = -2 * std::numbers::pi * m_speed / m_rate;
            for (std::size_t k = 0; k < part.size(); ++k)
                moved[k / m_taken] += (part[k] - mean) *
                                      std::polar(1.0, turn * static_cast<double>(k)) /
                                      static_cast<double>(m_taken);
        }
        double sum = 0;
        for (std::size_t k = 0; k < count; ++k) {
            m_window.push_back(
                0.5 - 0.5 * std::cos(2 * std::numbers::pi * (static_cast<double>(k) + 0.5) /
                                     static_cast<double>(count)));
            sum += m_window.back();
        }
        m_scale = sum > 0 ? 2 / sum : 0.0;
    }

    // [s]
    double duration() const { return static_cast<double>(m_window.size() * m_taken) / m_rate; }

    // Amplitudes of e^{2πift}, t from the stretch's beginning.
    Amplitudes at(double f_hz) const
    {
        const auto taken = static_cast<double>(m_taken);
        const double step = 2 * std::numbers::pi * (f_hz - m_speed) / m_rate;  // a sample
        // What taking samples together makes of it.
        const double droop = std::abs(step) > 1e-12
                                 ? std::sin(step * taken / 2) / (taken * std::sin(step / 2))
                                 : 1.0;
        const Complex together = std::polar(droop, step * (taken - 1) / 2);
        Amplitudes result;
        for (const Amplitudes& moved : m_moved) {
            Complex sum = 0;
            for (std::size_t k = 0; k < moved.size(); ++k)
                sum += m_window[k] * moved[k] *
                       std::polar(1.0, -step * taken * static_cast<double>(k));
            result.push_back(m_scale * sum / together);
        }
        return result;
    }

private:
    double m_speed, m_rate;
    std::size_t m_taken = 1;
    std::vector<Amplitudes> m_moved;
    std::vector<double> m_window;
    double m_scale = 0.0;
};

/// Amplitudes about the speed.
struct LineGrid {
    double step_hz = 0.0;
    std::vector<double> f_hz;
    std::vector<Amplitudes> amplitudes;
    double noise = 0.0;  // power of all axes where nothing turns

    LineGrid(const Baseband& baseband, double speed)
    {
        step_hz = kGridBins / baseband.duration();
        double outside = 0, places = 0;
        const auto reach = static_cast<long>(kOutsideLines * speed / step_hz);
        for (long k = -reach; k <= reach; ++k) {
            const double at_hz = speed + static_cast<double>(k) * step_hz;
            const bool isInside = std::abs(at_hz - speed) <= kFarthestLine * speed;
            if (!isInside && k % 4 != 0)
                continue;
            Amplitudes a = baseband.at(at_hz);
            if (isInside) {
                f_hz.push_back(at_hz);
                amplitudes.push_back(std::move(a));
            } else if (std::abs(at_hz - speed) > 1.4 * kFarthestLine * speed) {
                outside += powerOf(a);
                places += 1;
            }
        }
        noise = places > 0 ? outside / places : 0.0;
    }
};

/// One motor's.
struct Line {
    double f_hz = 0.0;
    Amplitudes amplitudes;
};

// The line at a place of the grid: direction of the peak, power of all of its lobe.
Line lineAt(const LineGrid& grid, std::size_t peak, double reach_hz)
{
    double power = 0, moment = 0;
    for (std::size_t k = 0; k < grid.f_hz.size(); ++k)
        if (std::abs(grid.f_hz[k] - grid.f_hz[peak]) <= reach_hz) {
            const double own = std::max(0.0, powerOf(grid.amplitudes[k]) - grid.noise);
            power += own;
            moment += own * grid.f_hz[k];
        }
    Line line{power > 0 ? moment / power : grid.f_hz[peak], grid.amplitudes[peak]};
    const double factor = std::sqrt(power * kGridBins / kHannBins / powerOf(grid.amplitudes[peak]));
    for (Complex& a : line.amplitudes)
        a *= factor;
    return line;
}

// So many lines, and no more, that stand apart; rising.
std::vector<Line> linesApart(const LineGrid& grid, std::size_t motors)
{
    const std::size_t places = grid.f_hz.size();
    std::vector<double> power(places);
    for (std::size_t k = 0; k < places; ++k)
        power[k] = powerOf(grid.amplitudes[k]);
    const double bin_hz = grid.step_hz / kGridBins;
    const double most = places > 0 ? *std::max_element(power.begin(), power.end()) : 0.0;
    std::vector<std::size_t> peaks;
    for (std::size_t k = 1; k + 1 < places; ++k)
        if (power[k] > power[k - 1] && power[k] >= power[k + 1] &&
            power[k] > std::max(kFaintest * most, kOverNoise * grid.noise))
            peaks.push_back(k);
    if (peaks.size() != motors)
        return {};
    for (std::size_t k = 1; k < peaks.size(); ++k)
        if (grid.f_hz[peaks[k]] - grid.f_hz[peaks[k - 1]] < kApartBins * bin_hz)
            return {};
    std::vector<Line> lines;
    for (std::size_t k = 0; k < peaks.size(); ++k) {
        double reach_hz = kLobeBins * bin_hz;
        for (std::size_t next = 0; next < peaks.size(); ++next)
            if (next != k)
                reach_hz = std::min(reach_hz,
                                    0.499 * std::abs(grid.f_hz[peaks[k]] - grid.f_hz[peaks[next]]));
        lines.push_back(lineAt(grid, peaks[k], reach_hz));
    }
    return lines;
}

// Share of a line's power that a motor's motion, however strong, leaves.
double unlike(const Amplitudes& line, const Amplitudes& motion)
{
    Complex along = 0;
    for (std::size_t k = 0; k < line.size(); ++k)
        along += std::conj(motion[k]) * line[k];
    return 1 - std::norm(along) / (powerOf(line) * powerOf(motion));
}

// By how the axes move together; none: not clear.
std::optional<std::vector<std::size_t>> motorsByMotion(
    const std::vector<std::vector<double>>& misfit, double noise)
{
    const std::size_t motors = misfit.size();
    std::vector<std::size_t> order(motors), best;
    std::iota(order.begin(), order.end(), 0U);
    double least = std::numeric_limits<double>::infinity(), next = least;
    do {
        double sum = 0;
        for (std::size_t line = 0; line < motors; ++line)
            sum += misfit[line][order[line]];
        if (sum < least) {
            next = least;
            least = sum;
            best = order;
        } else {
            next = std::min(next, sum);
        }
    } while (std::next_permutation(order.begin(), order.end()));
    for (std::size_t line = 0; line < motors; ++line)
        if (misfit[line][best[line]] > kMostUnlike)
            return {};
    if (next - least < std::max({kClearly, 2 * least, 4 * noise}))
        return {};
    return best;
}

// By the speeds that are known of each: both rise alike.
std::optional<std::vector<std::size_t>> motorsBySpeed(const std::vector<Line>& lines,
                                                      const std::vector<double>& speeds,
                                                      double bin_hz)
{
    std::vector<std::size_t> order(speeds.size());
    std::iota(order.begin(), order.end(), 0U);
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return speeds[a] < speeds[b]; });
    for (std::size_t k = 0; k < order.size(); ++k)
        if (std::abs(speeds[order[k]] - lines[k].f_hz) >
            std::max(kApartBins / 2 * bin_hz, 0.002 * lines[k].f_hz))
            return {};
    return order;
}

}  // namespace

Result<std::optional<std::vector<ShakeLine>>> motorLines(const Setup& setup,
                                                         const RecordedAxes& recorded,
                                                         const SteadyStretch& stretch,
                                                         const std::vector<double>& speeds,
                                                         double throttle)
{
    using Told = std::optional<std::vector<ShakeLine>>;
    const std::size_t motors = setup.airframe.arms.size();
    if (motors > kMostMotors)
        return Told();
    const Baseband baseband(recorded, stretch);
    if (!(baseband.duration() * 2 * kFarthestLine * stretch.speed >
          kApartBins * static_cast<double>(motors)))
        return Told();
    const LineGrid grid(baseband, stretch.speed);
    const std::vector<Line> lines = linesApart(grid, motors);
    if (lines.empty())
        return Told();
    std::optional<std::vector<std::size_t>> owners;
    if (speeds.size() == motors) {
        owners = motorsBySpeed(lines, speeds, grid.step_hz / kGridBins);
    } else if (recorded.axes.size() > 1) {
        std::vector<std::vector<double>> misfit;
        double noise = 0;
        for (const Line& line : lines) {
            const auto motions = shakeOfMotors(setup, recorded.axes, line.f_hz);
            if (!motions)
                return tl::unexpected(motions.error());
            std::vector<double>& row = misfit.emplace_back();
            for (const Amplitudes& motion : *motions)
                row.push_back(unlike(line.amplitudes, motion));
            noise = std::max(noise, grid.noise / powerOf(line.amplitudes));
        }
        owners = motorsByMotion(misfit, noise);
    }
    if (!owners)
        return Told();
    std::vector<ShakeLine> told;
    const double noise = std::sqrt(grid.noise / 2 / static_cast<double>(recorded.axes.size()));
    for (std::size_t k = 0; k < lines.size(); ++k)
        told.push_back({throttle, lines[k].f_hz, (*owners)[k], lines[k].amplitudes, noise});
    return Told(std::move(told));
}

}  // namespace stillbay
