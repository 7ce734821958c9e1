// SPDX-License-Identifier: MIT
#include "core/recording/time_base.h"

#include "core/base/progress.h"
#include "core/base/quantile.h"
#include "core/recording/pieces.h"
#include "core/recording/rate_limit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kLooks = 100'000;  // at as many places a clock is judged
constexpr std::size_t kSpan = 64;        // rows over which a step is averaged
constexpr std::size_t kOutOfOrder = 8;   // rows; if stamps stay back longer, a clock began anew
constexpr double kEvenWithin = 0.04;     // of a step, from the earliest to the latest stamp
constexpr double kRegularWithin = 0.1;   // of a step, for all steps but few
constexpr double kGapFrom = 1.5;         // steps of an even clock
constexpr double kUnevenGapFrom = 5.0;   // mean steps
constexpr std::size_t kRateWindow = 32;  // rows that must agree for a rate
constexpr double kOtherRate = 1.2;       // and by how much they must differ from those before

// Median over places of the mean step from there on: rounded stamps average out, single faults
// stay outside.
double usualStep(const std::vector<double>& stamps)
{
    const std::size_t span = std::min(kSpan, (stamps.size() + 3) / 4);
    const std::size_t stride = std::max<std::size_t>(1, stamps.size() / kLooks);
    std::vector<double> steps;
    for (std::size_t i = span; i < stamps.size(); i += stride)
        if (const double rise = stamps[i] - stamps[i - span]; rise > 0.0)
            steps.push_back(rise / static_cast<double>(span));
    return median(std::move(steps));
}

// What the stamps are rounded to: the coarsest power of ten of which all are multiples; 0: none.
double roundedTo(const std::vector<double>& stamps, double step)
{
    constexpr std::size_t kEnough = 1000;
    const std::size_t stride = std::max<std::size_t>(1, stamps.size() / kEnough);
    const double largest = std::max(std::abs(stamps.front()), std::abs(stamps.back()));
    for (int power = static_cast<int>(std::floor(std::log10(20.0 * step)));; --power) {
        const double unit = std::pow(10.0, power);
        const double blur = 8.0 * std::numeric_limits<double>::epsilon() * largest / unit;
        if (unit < 1e-4 * step || blur > 0.1)
            return 0.0;
        bool isMultiple = true;
        for (std::size_t i = 0; i < stamps.size() && isMultiple; i += stride) {
            const double count = stamps[i] / unit;
            isMultiple = std::abs(count - std::round(count)) < 1e-3 + blur;
        }
        if (isMultiple)
            return unit;
    }
}

// Whether steps are all over the place rather than those of an even clock with faults.
bool isIrregular(const std::vector<double>& stamps, double step, double rounding)
{
    const std::size_t stride = std::max<std::size_t>(1, stamps.size() / kLooks);
    std::size_t looks = 0, odd = 0;
    for (std::size_t i = 1; i < stamps.size(); i += stride, ++looks)
        odd += std::abs(stamps[i] - stamps[i - 1] - step) > kRegularWithin * step + 1.01 * rounding
                   ? 1U
                   : 0U;
    return 20 * odd > looks;
}

Phrase saysGap(std::size_t line, double seconds, std::size_t count)
{
    return phrase("before line %1 %2 s are missing (gaps: %3)", whole(line), rounded(seconds, 3),
                  whole(count));
}

Phrase saysRepeat(std::size_t line, std::size_t count)
{
    return phrase("line %1 has the time of the line before and is left out (lines like it: %2)",
                  whole(line), whole(count));
}

Phrase saysBackward(std::size_t line, std::size_t count)
{
    return phrase("line %1 goes back in time and is left out (lines like it: %2)", whole(line),
                  whole(count));
}

Phrase saysAnew(std::size_t line, std::size_t count)
{
    return phrase("in line %1 the clock begins anew: what follows is joined on (places: %2)",
                  whole(line), whole(count));
}

Phrase saysRateChange(std::size_t line, double before_hz, double after_hz)
{
    return phrase("from line %1 on there are %2 samples a second instead of %3", whole(line),
                  rounded(after_hz, 4), rounded(before_hz, 4));
}

Phrase saysResampled(double least_s, double most_s, double rate_hz)
{
    return phrase(
        "the steps of the time are uneven, %1 ms to %2 ms: resampled to %3 samples a "
        "second",
        rounded(1e3 * least_s, 3), rounded(1e3 * most_s, 3), rounded(rate_hz, 5));
}

tl::unexpected<Error> gapTooLong(std::size_t line, double seconds)
{
    return tl::unexpected(
        Error{Errc::BadInput,
              phrase("before line %1 %2 s are missing, longer than the recording itself: read the "
                     "parts one by one",
                     whole(line), rounded(seconds, 3)),
              {},
              TextPlace{line, 1}});
}

/// Where something happened first, and how often.
struct Happening {
    std::size_t line = 0, count = 0;
    double extent = 0.0;

    void add(std::size_t at, double size = 0.0)
    {
        line = count++ == 0 ? at : line;
        extent += size;
    }
};

/// Walks along the stamps once and puts them right.
class ClockWalk {
public:
    ClockWalk(std::vector<double>& stamps, const std::function<std::size_t(std::size_t)>& lineOf)
        : m_stamps(stamps), m_lineOf(lineOf)
    {
        m_step = usualStep(stamps);
        if (checkRate(1.0 / m_step)) {
            m_rounding = roundedTo(stamps, m_step);
            m_isIrregular = isIrregular(stamps, m_step, m_rounding);
        }
    }

    double step() const { return m_step; }

    TimeBase walk(const std::stop_token& stop)
    {
        std::size_t kept = 1;
        double shift = 0.0;
        m_base.start = m_stamps.front();
        inPieces(1, m_stamps.size(), stop,
                 [&](std::size_t from, std::size_t to) { walkOver(from, to, kept, shift); });
        m_stamps.resize(kept);
        return std::move(m_base);
    }

    // The flaws of the walk.
    void tell(std::vector<RecordingFlaw>& flaws) const
    {
        using Kind = RecordingFlaw::Kind;
        if (m_gap.count > 0)
            flaws.push_back({Kind::Gap, m_gap.line, m_gap.count,
                             saysGap(m_gap.line, m_gap.extent, m_gap.count)});
        if (m_repeat.count > 0)
            flaws.push_back({Kind::RepeatedStamp, m_repeat.line, m_repeat.count,
                             saysRepeat(m_repeat.line, m_repeat.count)});
        if (m_backward.count > 0)
            flaws.push_back({Kind::BackwardStamp, m_backward.line, m_backward.count,
                             saysBackward(m_backward.line, m_backward.count)});
        if (m_anew.count > 0)
            flaws.push_back({Kind::BackwardStamp, m_anew.line, m_anew.count,
                             saysAnew(m_anew.line, m_anew.count)});
    }

    double rounding() const { return m_rounding; }
    const Happening& gap() const { return m_gap; }

private:
    void walkOver(std::size_t from, std::size_t to, std::size_t& kept, double& shift)
    {
        for (std::size_t i = from; i < to; ++i) {
            const double before = m_stamps[kept - 1];
            double stamp = m_stamps[i] + shift;
            if (stamp < before) {
                if (!staysBack(i, before, shift)) {
                    m_backward.add(m_lineOf(i));
                    m_base.dropped.push_back(i);
                    continue;
                }
                m_anew.add(m_lineOf(i));
                shift += before + m_step - stamp;
                stamp = before + m_step;
            } else if (stamp <= before && !isFinerThanStamps()) {
                m_repeat.add(m_lineOf(i));
                m_base.dropped.push_back(i);
                continue;
            } else if (stamp - before > gapFrom()) {
                m_gap.add(m_lineOf(i), stamp - before - m_step);
                m_base.gaps.emplace_back(kept, 0);
            }
            m_stamps[kept++] = stamp;
        }
    }

    // Then rows share a rounded stamp by right.
    bool isFinerThanStamps() const { return m_step < 0.999 * m_rounding; }

    double gapFrom() const
    {
        return m_isIrregular ? kUnevenGapFrom * m_step + m_rounding
                             : std::max(kGapFrom * m_step, m_step + 1.01 * m_rounding);
    }

    bool staysBack(std::size_t row, double before, double shift) const
    {
        const std::size_t end = std::min(row + kOutOfOrder + 1, m_stamps.size());
        for (std::size_t i = row + 1; i < end; ++i)
            if (m_stamps[i] + shift > before)
                return false;
        return end > row + 1;
    }

    std::vector<double>& m_stamps;
    const std::function<std::size_t(std::size_t)>& m_lineOf;
    TimeBase m_base;
    double m_step = 0.0, m_rounding = 0.0;
    bool m_isIrregular = false;
    Happening m_gap, m_repeat, m_backward, m_anew;
};

/// Kept rows from one gap to the next.
struct Stretch {
    std::size_t from, to;
};

std::vector<Stretch> stretchesOf(const TimeBase& base, std::size_t rows)
{
    std::vector<Stretch> stretches;
    std::size_t from = 0;
    for (const auto& [row, missing] : base.gaps) {
        stretches.push_back({from, row});
        from = row;
    }
    stretches.push_back({from, rows});
    return stretches;
}

// Slope of the straight line through a stretch [s a row], by least squares.
double slopeOf(const std::vector<double>& stamps, const Stretch& stretch,
               const std::stop_token& stop)
{
    const std::size_t count = stretch.to - stretch.from;
    const double middle = 0.5 * static_cast<double>(count - 1);
    double sum = 0.0, squares = 0.0;
    inPieces(0, count, stop, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) {
            const double x = static_cast<double>(i) - middle;
            sum += x * (stamps[stretch.from + i] - stamps[stretch.from]);
            squares += x * x;
        }
    });
    return sum / squares;
}

// From the earliest to the latest stamp of a stretch, against an even clock [s].
double unevennessOf(const std::vector<double>& stamps, const Stretch& stretch, double step,
                    const std::stop_token& stop)
{
    double least = 0.0, most = 0.0;
    inPieces(stretch.from, stretch.to, stop, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) {
            const double late =
                stamps[i] - stamps[stretch.from] - static_cast<double>(i - stretch.from) * step;
            least = std::min(least, late);
            most = std::max(most, late);
        }
    });
    return most - least;
}

// [s] where all stretches are one even clock's.
std::optional<double> evenStep(const std::vector<double>& stamps, const TimeBase& base,
                               double rounding, const std::stop_token& stop)
{
    const std::vector<Stretch> stretches = stretchesOf(base, stamps.size());
    const Stretch longest = *std::max_element(
        stretches.begin(), stretches.end(),
        [](const Stretch& a, const Stretch& b) { return a.to - a.from < b.to - b.from; });
    if (longest.to - longest.from < 2)
        return std::nullopt;
    const double step = slopeOf(stamps, longest, stop);
    const double blur = 64 * std::numeric_limits<double>::epsilon() * std::abs(stamps.back());
    // A slope through few rounded stamps is off by some of what they are rounded to.
    const double slack = 1.05 + 3.0 / std::sqrt(static_cast<double>(longest.to - longest.from));
    const double within = std::max(kEvenWithin * step, slack * rounding) + blur;
    for (const Stretch& stretch : stretches)
        if (unevennessOf(stamps, stretch, step, stop) > within)
            return std::nullopt;
    return step;
}

/// A rate that some rows kept to.
struct Pace {
    std::size_t row;
    double step;  // [s]
};

// Where the mean step of windows changes and stays so.
std::vector<Pace> pacesOf(const std::vector<double>& stamps, const TimeBase& base)
{
    std::vector<Pace> paces;
    for (const Stretch& stretch : stretchesOf(base, stamps.size()))
        for (std::size_t at = stretch.from; at + kRateWindow < stretch.to; at += kRateWindow) {
            const double step = (stamps[at + kRateWindow] - stamps[at]) / double{kRateWindow};
            const auto isOther = [step](double other) {
                return std::max(step, other) > kOtherRate * std::min(step, other);
            };
            if (paces.empty()) {
                paces.push_back({at, step});
                continue;
            }
            const bool isSteady =
                at + 2 * kRateWindow < stretch.to &&
                !isOther((stamps[at + 2 * kRateWindow] - stamps[at + kRateWindow]) /
                         double{kRateWindow});
            if (isOther(paces.back().step) && isSteady)
                paces.push_back({at, step});
        }
    return paces;
}

// Rows of one rounded stamp share the time until the next.
void spreadRepeats(std::vector<double>& stamps, double step)
{
    for (std::size_t i = 0; i < stamps.size();) {
        std::size_t next = i + 1;
        while (next < stamps.size() && stamps[next] <= stamps[i])
            ++next;
        const double from = stamps[i];
        const auto count = static_cast<double>(next - i);
        const double to = next < stamps.size() ? std::min(stamps[next], from + count * step)
                                               : from + count * step;
        for (std::size_t k = i + 1; k < next; ++k)
            stamps[k] = from + (to - from) * static_cast<double>(k - i) / count;
        i = next;
    }
}

std::size_t rowBeforeDrops(const TimeBase& base, std::size_t kept)
{
    std::size_t row = kept;
    for (const std::size_t dropped : base.dropped) {
        if (dropped > row)
            break;
        ++row;
    }
    return row;
}

// Counts what gaps of an even clock miss, as far as that is sensible; how many in all.
double countMissing(TimeBase& base, const std::vector<double>& stamps, double step)
{
    double missing = 0.0;
    for (auto& [row, count] : base.gaps) {
        const double steps = std::round((stamps[row] - stamps[row - 1]) / step);
        missing += std::max(steps, 1.0) - 1.0;
        if (missing > static_cast<double>(stamps.size()))
            break;
        count = static_cast<std::size_t>(std::max(steps, 1.0)) - 1;
    }
    return missing;
}

void tellOfPaces(TimeBase& base, const std::vector<Pace>& paces,
                 const std::function<std::size_t(std::size_t)>& lineOf)
{
    for (std::size_t k = 1; k < paces.size(); ++k) {
        const std::size_t line = lineOf(rowBeforeDrops(base, paces[k].row));
        base.flaws.push_back({RecordingFlaw::Kind::RateChanged, line, 1,
                              saysRateChange(line, 1.0 / paces[k - 1].step, 1.0 / paces[k].step)});
    }
}

// The rate that loses nothing of where stamps are dense, unless that is a burst.
double unevenRate(const std::vector<double>& stamps, const std::vector<Pace>& paces, double step)
{
    double finest = step;
    for (const Pace& pace : paces)
        finest = std::min(finest, pace.step);
    const double most = 6.0 * finest * static_cast<double>(stamps.size());
    return 1.0 / (stamps.back() - stamps.front() > most ? step : finest);
}

void planResampling(TimeBase& base, std::vector<double>& stamps, double step,
                    const std::function<std::size_t(std::size_t)>& lineOf)
{
    base.isEven = false;
    spreadRepeats(stamps, step);
    const std::vector<Pace> paces = pacesOf(stamps, base);
    tellOfPaces(base, paces, lineOf);
    base.rate = unevenRate(stamps, paces, step);
    double least = step, most = step;
    for (std::size_t i = 1; i < stamps.size(); ++i) {
        least = std::min(least, stamps[i] - stamps[i - 1]);
        most = std::max(most, stamps[i] - stamps[i - 1]);
    }
    base.flaws.push_back(
        {RecordingFlaw::Kind::Resampled, 0, 1, saysResampled(least, most, base.rate)});
}

double missingIn(const TimeBase& base, const std::vector<double>& stamps)
{
    double missing = 0.0;
    for (const auto& [row, count] : base.gaps)
        missing += (stamps[row] - stamps[row - 1]) * base.rate;
    return missing;
}

}  // namespace

Result<TimeBase> timeBase(std::vector<double>& stamps,
                          const std::function<std::size_t(std::size_t row)>& lineOf,
                          const std::stop_token& stop)
{
    ClockWalk clock(stamps, lineOf);
    if (!(clock.step() > 0.0))
        return fail(Errc::BadInput, phrase("the time column does not go forward"));
    if (const auto rate = checkRate(1.0 / clock.step()); !rate)
        return tl::unexpected(rate.error());
    TimeBase base = clock.walk(stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    clock.tell(base.flaws);
    if (stamps.size() < 2)
        return fail(Errc::BadInput, phrase("the time column does not go forward"));

    double missing = 0.0;
    const std::optional<double> step = evenStep(stamps, base, clock.rounding(), stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (step) {
        base.rate = 1.0 / *step;
        missing = countMissing(base, stamps, *step);
    } else {
        planResampling(base, stamps, clock.step(), lineOf);
        missing = missingIn(base, stamps);
    }
    if (missing > static_cast<double>(stamps.size()))
        return gapTooLong(clock.gap().line, clock.gap().extent);
    return checkRate(base.rate).map([&base] { return std::move(base); });
}

}  // namespace stillbay
