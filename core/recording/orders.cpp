// SPDX-License-Identifier: MIT
#include "core/recording/orders.h"

#include "core/base/check.h"
#include "core/recording/interpolate.h"
#include "core/recording/segments.h"
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillbay {
namespace {

constexpr double kSlowest = 1.0;  // [rev/s]; below it a rotor stands
constexpr double kHighestOrder = 60;
constexpr std::size_t kFewestBlockTurns = 4;
constexpr double kBandBins = 3;      // either side of an order
constexpr double kCutoffSteps = 16;  // an octave, so that few tables are made

// Turn angle over a run of times in which the rotor turns throughout; the speed is straight from
// one time to the next, so the angle is a parabola there.
class TurnAngle {
public:
    TurnAngle(std::span<const double> time, std::span<const double> speed)
        : m_time(time), m_speed(speed), m_turns(time.size(), 0.0)
    {
        for (std::size_t k = 1; k < time.size(); ++k)
            m_turns[k] = m_turns[k - 1] + (speed[k] + speed[k - 1]) / 2 * (time[k] - time[k - 1]);
    }

    double turns() const { return m_turns.back(); }

    // [rev/s] the least between two times.
    double slowestWithin(double from, double to) const
    {
        const auto first = std::upper_bound(m_time.begin(), m_time.end(), from);
        auto k = static_cast<std::size_t>(first - m_time.begin());
        double slowest = m_speed[k - 1];
        for (; k < m_time.size() && m_time[k - 1] < to; ++k)
            slowest = std::min(slowest, m_speed[k]);
        return slowest;
    }

    // [s] at which so many turns are done; called with turns that rise, mostly.
    double timeAt(double turns)
    {
        while (m_at + 2 < m_turns.size() && m_turns[m_at + 1] < turns)
            ++m_at;
        while (m_at > 0 && m_turns[m_at] > turns)
            --m_at;
        const double left = turns - m_turns[m_at], n = m_speed[m_at];
        const double span = m_time[m_at + 1] - m_time[m_at];
        const double gain = (m_speed[m_at + 1] - n) / span;  // [rev/s²]
        // n t + ½ gain t² = left, in the form that stands a gain of 0
        return m_time[m_at] + 2 * left / (n + std::sqrt(std::max(0.0, n * n + 2 * gain * left)));
    }

private:
    std::span<const double> m_time, m_speed;
    std::vector<double> m_turns;
    std::size_t m_at = 0;
};

class AngleSampler {
public:
    AngleSampler(std::span<const double> x, double rate, std::size_t perTurn)
        : m_x(x), m_rate(rate), m_perTurn(perTurn)
    {
    }

    // From `turns` on, one value each 1/perTurn of a turn, at speeds from `slowest` on.
    void take(TurnAngle& angle, double turns, double slowest, std::vector<double>& values)
    {
        const Interpolator& interpolator = of(static_cast<double>(m_perTurn) * slowest / m_rate);
        for (std::size_t n = 0; n < values.size(); ++n) {
            const double t =
                angle.timeAt(turns + static_cast<double>(n) / static_cast<double>(m_perTurn));
            values[n] = interpolator.at(m_x, t * m_rate);
        }
    }

private:
    const Interpolator& of(double cutoff)
    {
        const int step =
            std::min(0, static_cast<int>(std::floor(kCutoffSteps * std::log2(cutoff))));
        return m_interpolators.try_emplace(step, std::exp2(step / kCutoffSteps)).first->second;
    }

    std::span<const double> m_x;
    double m_rate;
    std::size_t m_perTurn;
    std::map<int, Interpolator> m_interpolators;
};

Result<void> validateOrders(double rate, const SpeedOverTime& speed, const OrdersOptions& options)
{
    check(speed.time.size() == speed.speed.size(), "orders: times without a speed");
    if (options.turns < kFewestBlockTurns)
        return fail(Errc::BadInput, phrase("a block of %1 turns is too short: at least %2",
                                           whole(options.turns), whole(kFewestBlockTurns)));
    if (speed.time.size() < 2)
        return fail(Errc::BadInput, phrase("the speed must be known at two times at least"));
    double fastest = 0;
    for (std::size_t k = 0; k < speed.time.size(); ++k) {
        const bool rises = k == 0 || speed.time[k] > speed.time[k - 1];
        if (!rises || !std::isfinite(speed.time[k]) || !std::isfinite(speed.speed[k]) ||
            speed.speed[k] < 0)
            return fail(Errc::BadInput,
                        phrase("the speed must be finite, not below 0, at times that rise"));
        fastest = std::max(fastest, speed.speed[k]);
    }
    for (const double order : options.orders) {
        if (!(order > 0 && order <= kHighestOrder))
            return fail(Errc::BadInput, phrase("order %1 must be above 0 and at most %2",
                                               rounded(order, 4), fixed(kHighestOrder, 0)));
        if (order * fastest > rate / 2)
            return fail(Errc::BadInput,
                        phrase("order %1 reaches %2 Hz, above half the rate of %3 Hz",
                               rounded(order, 4), rounded(order * fastest, 4), rounded(rate, 5)));
    }
    return {};
}

// Values a turn: the highest order and its band stay below 0.9 of half of them.
std::size_t valuesPerTurn(const OrdersOptions& options)
{
    double highest = 4;
    for (const double order : options.orders)
        highest = std::max(highest, order);
    std::size_t count = 8;
    while (0.42 * static_cast<double>(count) < highest + 1)
        count *= 2;
    return count;
}

void addBlock(std::span<const Complex> X, std::span<const double> window, std::size_t turns,
              OrderLines& result)
{
    double squares = 0;
    for (const double w : window)
        squares += w * w;
    // A sine of amplitude A has Σ|X|² = N Σw² A²/4 over its lobe.
    const double scale = 4 / (static_cast<double>(window.size()) * squares);
    for (std::size_t k = 0; k < result.spectrum.size(); ++k)
        result.spectrum[k] += scale * std::norm(X[k]);
    for (OrderLine& line : result.lines) {
        const double centre = line.order * static_cast<double>(turns);
        double power = 0;
        const auto from = static_cast<std::size_t>(std::max(1.0, std::ceil(centre - kBandBins)));
        for (std::size_t k = from; static_cast<double>(k) <= centre + kBandBins && k < X.size();
             ++k)
            power += scale * std::norm(X[k]);
        line.amplitude.push_back(std::sqrt(power));
        line.phase.push_back(std::arg(X[static_cast<std::size_t>(std::lround(centre))]));
    }
}

struct Run {
    std::size_t from, to;  // times, both included
};

std::vector<Run> turningRuns(const SpeedOverTime& speed)
{
    std::vector<Run> runs;
    for (std::size_t from = 0; from < speed.time.size();) {
        std::size_t end = from;
        while (end < speed.time.size() && speed.speed[end] >= kSlowest)
            ++end;
        if (end - from >= 2)
            runs.push_back({from, end - 1});
        from = end + 1;
    }
    return runs;
}

}  // namespace

SpeedOverTime speedOf(const RotorSpeedTrack& track)
{
    SpeedOverTime speed{track.time, track.speed};
    for (std::size_t n = 0; n < speed.speed.size(); ++n)
        if (track.quality[n] < kTurningQuality)
            speed.speed[n] = 0;
    return speed;
}

SpeedOverTime speedOf(std::span<const double> column, double rate,
                      const std::function<double(double)>& speedAt)
{
    SpeedOverTime speed;
    for (std::size_t n = 0; n < column.size(); ++n) {
        speed.time.push_back(static_cast<double>(n) / rate);
        speed.speed.push_back(speedAt ? speedAt(column[n]) : column[n]);
    }
    return speed;
}

Result<OrderLines> ordersOf(std::span<const double> x, double rate, const SpeedOverTime& speed,
                            const OrdersOptions& options)
{
    for (const auto& valid : {validateRate(rate), validateSeries(x, 64)})
        if (!valid)
            return tl::unexpected(valid.error());
    if (const auto valid = validateOrders(rate, speed, options); !valid)
        return tl::unexpected(valid.error());
    const std::size_t perTurn = valuesPerTurn(options), turns = options.turns;
    AngleSampler sampler(x, rate, perTurn);
    SegmentTransform transform(perTurn * turns);
    std::vector<double> values(perTurn * turns);
    OrderLines result;
    for (const double order : options.orders)
        result.lines.push_back({order, {}, {}});
    // Above it the band ends.
    const auto shown = static_cast<std::size_t>(0.42 * static_cast<double>(perTurn * turns));
    for (std::size_t k = 0; k <= shown; ++k)
        result.order.push_back(static_cast<double>(k) / static_cast<double>(turns));
    result.spectrum.assign(result.order.size(), 0.0);

    const double duration = static_cast<double>(x.size() - 1) / rate;
    for (const Run& run : turningRuns(speed)) {
        const std::size_t count = run.to - run.from + 1;
        TurnAngle angle(std::span(speed.time).subspan(run.from, count),
                        std::span(speed.speed).subspan(run.from, count));
        const double block = static_cast<double>(turns);
        // Whole turns from the run's first time, so that phases of its blocks compare.
        for (double begin = 0; begin + block <= angle.turns(); begin += std::floor(block / 2)) {
            const double from = angle.timeAt(begin), to = angle.timeAt(begin + block);
            if (from < 0 || to > duration)
                continue;
            sampler.take(angle, begin, angle.slowestWithin(from, to), values);
            addBlock(transform.of(values, 0), transform.window(), turns, result);
            result.from.push_back(from);
            result.to.push_back(to);
            result.speed.push_back(block / (to - from));
        }
    }
    if (result.from.empty())
        return fail(Errc::BadInput,
                    phrase("nothing turns for %1 turns on end", whole(options.turns)));
    for (double& value : result.spectrum)
        value = std::sqrt(value / static_cast<double>(result.from.size()));
    return result;
}

std::vector<double> meanOverBlocks(const OrderLines& lines, std::span<const double> column,
                                   double rate)
{
    check(!column.empty(), "orders: an empty column");
    std::vector<double> means;
    for (std::size_t n = 0; n < lines.from.size(); ++n) {
        const auto last = column.size() - 1;
        const auto from = std::min(last, static_cast<std::size_t>(lines.from[n] * rate));
        const auto to = std::min(last, static_cast<std::size_t>(lines.to[n] * rate));
        double sum = 0;
        for (std::size_t k = from; k <= to; ++k)
            sum += column[k];
        means.push_back(sum / static_cast<double>(to - from + 1));
    }
    return means;
}

OrderCurve orderCurve(const OrderLines& lines, std::span<const double> at, double step)
{
    check(at.size() == lines.from.size() && step > 0, "orders: bins");
    std::map<long, std::vector<std::size_t>> bins;
    for (std::size_t n = 0; n < at.size(); ++n)
        bins[std::lround(std::floor(at[n] / step))].push_back(n);
    OrderCurve curve;
    curve.amplitude.resize(lines.lines.size());
    for (const auto& [bin, blocks] : bins) {
        curve.at.push_back((static_cast<double>(bin) + 0.5) * step);
        curve.blocks.push_back(blocks.size());
        for (std::size_t k = 0; k < lines.lines.size(); ++k) {
            double power = 0;
            for (const std::size_t n : blocks)
                power += lines.lines[k].amplitude[n] * lines.lines[k].amplitude[n];
            curve.amplitude[k].push_back(std::sqrt(power / static_cast<double>(blocks.size())));
        }
    }
    return curve;
}

}  // namespace stillbay
