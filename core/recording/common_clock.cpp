// SPDX-License-Identifier: MIT
#include "core/recording/common_clock.h"

#include "core/recording/fourier.h"
#include "core/recording/interpolate.h"
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kMostDrift = 500e-6;
constexpr double kShortest = 1.0;           // [s]
constexpr std::size_t kClockBlocks = 12;    // of b, in the first pass
constexpr std::size_t kFewestAgreeing = 4;  // a line goes through any two
constexpr double kClear = 10;               // contrast of the whole; noise has some 5
constexpr int kPeakPasses = 3;
constexpr double kWhitening = 0.5;  // of the cross spectrum: 0 plain, 1 phase alone

// Where a block of b was found in a, both on their own clocks, at its middle.
struct Sighting {
    double time = 0.0;    // [s] by b's clock
    double offset = 0.0;  // [s] a's clock less b's
    double weight = 0.0;  // how far the peak stands out
};

std::vector<double> withoutMean(std::span<const double> x)
{
    double mean = 0;
    for (const double value : x)
        mean += value / static_cast<double>(x.size());
    std::vector<double> result(x.begin(), x.end());
    for (double& value : result)
        value -= mean;
    return result;
}

// Correlates blocks with one stretch of a, whose transform is kept.
class Correlator {
public:
    Correlator(std::span<const double> a, std::size_t block)
        : m_lags(a.size()),
          m_fourier(fastLength(a.size() + block)),
          m_A(m_fourier.bins()),
          m_B(m_fourier.bins()),
          m_x(m_fourier.length())
    {
        const std::vector<double> centred = withoutMean(a);
        std::copy(centred.begin(), centred.end(), m_x.begin());
        m_fourier.forward(m_x, m_A);
    }

    struct Peak {
        double lag = 0.0;       // [samples] of the block's first sample within a, between samples
        double contrast = 0.0;  // over the root mean square of the correlation
        double reach = 0.0;     // [samples] within which others come near it
    };

    Peak find(std::span<const double> block)
    {
        const std::vector<double> centred = withoutMean(block);
        std::fill(m_x.begin(), m_x.end(), 0.0);
        std::copy(centred.begin(), centred.end(), m_x.begin());
        m_fourier.forward(m_x, m_B);
        for (std::size_t k = 0; k < m_B.size(); ++k) {
            const Complex cross = m_A[k] * std::conj(m_B[k]);
            const double size = std::abs(cross);
            m_B[k] = size > 0 ? cross / std::pow(size, kWhitening) : Complex();
        }
        m_fourier.inverse(m_B, m_x);
        // Of either sign: above their resonance tubes turn the motion round.
        const auto best = std::max_element(
            m_x.begin(), m_x.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
        const auto at = static_cast<std::size_t>(best - m_x.begin());
        double squares = 0;
        for (const double value : m_x)
            squares += value * value / static_cast<double>(m_x.size());
        const std::size_t n = m_x.size();
        const double height = std::abs(*best);
        // A block that begins before a does wraps round.
        const double whole = at < m_lags ? static_cast<double>(at)
                                         : static_cast<double>(at) - static_cast<double>(n);
        return {whole + fromSampleToPeak(at), squares > 0 ? height / std::sqrt(squares) : 0,
                reachOf(at, height)};
    }

private:
    // [samples] from the sample `at` to the extreme of the correlation's Fourier series beside it,
    // by Newton's method. A parabola through three samples tells too little where the motion
    // reaches towards half the rate.
    double fromSampleToPeak(std::size_t at) const
    {
        const std::size_t n = m_x.size();
        const double turn = 2 * std::numbers::pi / static_cast<double>(n);
        double place = 0;
        for (int pass = 0; pass < kPeakPasses; ++pass) {
            double slope = 0, bend = 0;
            for (std::size_t k = 1; 2 * k < n; ++k) {
                const double omega = turn * static_cast<double>(k);
                const double angle = turn * static_cast<double>(k * at % n) + omega * place;
                const Complex part = m_B[k] * std::polar(1.0, angle);
                slope -= omega * part.imag();
                bend -= omega * omega * part.real();
            }
            if (!(bend * m_x[at] < 0))
                break;
            place = std::clamp(place - slope / bend, -0.5, 0.5);
        }
        return place;
    }

    // How far from the peak at `at` the last is that has four fifths of its height.
    double reachOf(std::size_t at, double height) const
    {
        const std::size_t n = m_x.size();
        std::size_t reach = 1;
        for (std::size_t d = 1; d < n / 64; ++d)
            if (std::max(std::abs(m_x[(at + d) % n]), std::abs(m_x[(at + n - d) % n])) >
                0.8 * height)
                reach = d;
        return static_cast<double>(reach);
    }

    std::size_t m_lags;
    RealFourier m_fourier;
    std::vector<Complex> m_A, m_B;
    std::vector<double> m_x;
};

// Both at the same rate, whole.
std::vector<Sighting> sightings(std::span<const double> a, std::span<const double> b, double rate)
{
    const std::size_t length = b.size() / kClockBlocks;
    Correlator correlator(a, length);
    std::vector<Sighting> seen;
    for (std::size_t k = 0; k < kClockBlocks; ++k) {
        const Correlator::Peak peak = correlator.find(b.subspan(k * length, length));
        const double begin = static_cast<double>(k * length) / rate;
        seen.push_back({begin + static_cast<double>(length) / (2 * rate), peak.lag / rate - begin,
                        peak.contrast});
    }
    return seen;
}

bool liesOn(const Sighting& sighting, const ClockMatch& line, double tolerance)
{
    return std::abs(line.offset + line.drift * sighting.time - sighting.offset) < tolerance;
}

// The line through two sightings on which most of the weight lies.
ClockMatch consensus(const std::vector<Sighting>& seen, double tolerance)
{
    ClockMatch best;
    double most = 0;
    for (const Sighting& p : seen)
        for (const Sighting& q : seen) {
            if (q.time <= p.time)
                continue;
            ClockMatch line;
            line.drift = (q.offset - p.offset) / (q.time - p.time);
            if (std::abs(line.drift) > kMostDrift)
                continue;
            line.offset = p.offset - line.drift * p.time;
            double weight = 0;
            for (const Sighting& sighting : seen)
                if (liesOn(sighting, line, tolerance)) {
                    weight += sighting.weight;
                    ++line.agreeing;
                }
            if (weight > most) {
                most = weight;
                best = line;
            }
        }
    best.blocks = seen.size();
    return best;
}

// Least squares through the sightings on the line.
ClockMatch fitted(const std::vector<Sighting>& seen, const ClockMatch& line, double tolerance)
{
    double count = 0, t = 0, d = 0, tt = 0, td = 0, squares = 0;
    for (const bool isSum : {true, false})
        for (const Sighting& sighting : seen) {
            if (!liesOn(sighting, line, tolerance))
                continue;
            if (isSum) {
                ++count;
                t += sighting.time;
                d += sighting.offset;
            } else {
                const double dt = sighting.time - t / count, dd = sighting.offset - d / count;
                tt += dt * dt;
                td += dt * dd;
                squares += dd * dd;
            }
        }
    ClockMatch match = line;
    match.agreeing = static_cast<std::size_t>(count);
    match.blocks = seen.size();
    if (count < 3 || !(tt > 0))
        return match;
    match.drift = td / tt;
    match.offset = d / count - match.drift * t / count;
    const double variance = std::max(0.0, squares - td * td / tt) / (count - 2);
    match.driftSpread = std::sqrt(variance / tt);
    match.offsetSpread = std::sqrt(variance / count);
    return match;
}

// b as a's clock would have sampled it, from a's sample `from` on.
std::vector<double> onClockOf(std::span<const double> b, double rateB, const ClockMatch& match,
                              double rate, double from, std::size_t count)
{
    const Interpolator interpolator(std::min(1.0, rate / rateB));
    std::vector<double> result(count);
    for (std::size_t n = 0; n < count; ++n) {
        const double t = from + static_cast<double>(n) / rate;
        result[n] = interpolator.at(b, (t - match.offset) / (1 + match.drift) * rateB);
    }
    return result;
}

// What both recorded, [s] on a's clock.
struct Shared {
    double from, to;
};

Shared sharedTime(double durationA, double durationB, const ClockMatch& match)
{
    return {std::max(0.0, match.offset),
            std::min(durationA, match.offset + (1 + match.drift) * durationB)};
}

// A second look with b stretched as the first found: blocks no longer smear.
ClockMatch refined(std::span<const double> a, std::span<const double> b, double rateB, double rate,
                   const ClockMatch& first, double tolerance)
{
    const Shared shared = sharedTime(static_cast<double>(a.size()) / rate,
                                     static_cast<double>(b.size()) / rateB, first);
    const auto begin = static_cast<std::size_t>(std::ceil(shared.from * rate));
    const auto end = std::min(a.size(), static_cast<std::size_t>(shared.to * rate));
    const std::size_t length = (end - begin) / kClockBlocks;
    const std::vector<double> stretched =
        onClockOf(b, rateB, first, rate, static_cast<double>(begin) / rate, end - begin);
    std::vector<Sighting> seen;
    for (std::size_t k = 0; k < kClockBlocks; ++k) {
        const std::size_t from = k * length;
        Correlator correlator(a.subspan(begin + from, length), length);
        const auto peak = correlator.find(std::span(stretched).subspan(from, length));
        const double t =
            (static_cast<double>(begin + from) + static_cast<double>(length) / 2) / rate;
        seen.push_back({t, peak.lag / rate, peak.contrast});
    }
    const ClockMatch rest = fitted(seen, ClockMatch{.blocks = seen.size()}, tolerance);
    // t_a = rest.offset + (1 + rest.drift) t' with t' = first.offset + (1 + first.drift) t_b
    ClockMatch match = rest;
    match.offset = rest.offset + (1 + rest.drift) * first.offset;
    match.drift = (1 + rest.drift) * (1 + first.drift) - 1;
    return match;
}

std::vector<const Channel*> accelerationsOf(const Recording& recording)
{
    std::vector<const Channel*> channels;
    for (const Channel& channel : recording.channels)
        if (channel.quantity == Quantity::Acceleration)
            channels.push_back(&channel);
    return channels;
}

}  // namespace

Result<ClockMatch> matchClocks(std::span<const double> a, double rateA, std::span<const double> b,
                               double rateB)
{
    for (const double rate : {rateA, rateB})
        if (const auto valid = validateRate(rate); !valid)
            return tl::unexpected(valid.error());
    const auto fewest = [](double rate) {
        return static_cast<std::size_t>(kShortest * rate) + 1;
    };
    for (const auto& valid : {validateSeries(a, fewest(rateA)), validateSeries(b, fewest(rateB))})
        if (!valid)
            return tl::unexpected(valid.error());
    const double rate = std::min(rateA, rateB);
    const std::vector<double> evenA = resampled(a, rateA, rate), evenB = resampled(b, rateB, rate);
    if (evenB.size() < kClockBlocks * 8)
        return fail(Errc::BadInput,
                    phrase("the recordings are too short to be laid over each other"));
    // As a whole first, which holds where the blocks are too much alike within themselves, as in a
    // slow sweep; the drift stays unknown then.
    const Correlator::Peak whole = Correlator(evenA, evenB.size()).find(evenB);
    const ClockMatch coarse{whole.lag / rate, 0, whole.reach / rate, kMostDrift, 0, kClockBlocks};
    // Within a block of the first pass the clocks part by this much at most.
    const double smear = kMostDrift * static_cast<double>(evenB.size() / kClockBlocks) / rate;
    const double tolerance = 2 / rate + smear;
    const std::vector<Sighting> seen = sightings(evenA, evenB, rate);
    const ClockMatch first = fitted(seen, consensus(seen, tolerance), tolerance);
    const bool isClear = whole.contrast > kClear;
    const double apart = kMostDrift * static_cast<double>(evenB.size()) / rate;
    if (first.agreeing < kFewestAgreeing ||
        (isClear &&
         std::abs(first.offset - coarse.offset) > coarse.offsetSpread + apart + tolerance)) {
        if (isClear)
            return coarse;
        return fail(Errc::NoAnswer, phrase("the two recordings share no motion by which they could "
                                           "be laid over each other"));
    }
    const Shared shared = sharedTime(static_cast<double>(evenA.size()) / rate,
                                     static_cast<double>(evenB.size()) / rate, first);
    if (!(shared.to - shared.from > kShortest))
        return first;
    const ClockMatch match = refined(evenA, b, rateB, rate, first, tolerance);
    return match.agreeing >= kFewestAgreeing ? match : first;
}

Result<ClockMatch> matchClocks(const Recording& a, const Recording& b)
{
    const std::vector<const Channel*> ofA = accelerationsOf(a), ofB = accelerationsOf(b);
    if (ofA.empty() || ofB.empty())
        return fail(Errc::BadInput, phrase("one of the two recordings holds no acceleration"));
    std::vector<std::pair<const Channel*, const Channel*>> pairs;
    for (const Channel* channel : ofA)
        for (const Channel* other : ofB)
            if (channel->name == other->name)
                pairs.emplace_back(channel, other);
    for (std::size_t k = 0; pairs.empty() && k < std::min(ofA.size(), ofB.size()); ++k)
        pairs.emplace_back(ofA[k], ofB[k]);
    Result<ClockMatch> best = tl::unexpected(Error{});
    for (const auto& [channel, other] : pairs) {
        Result<ClockMatch> match = matchClocks(channel->values, a.rate, other->values, b.rate);
        const bool isFirst = channel == pairs.front().first;
        if (match ? !best || match->offsetSpread < best->offsetSpread : isFirst)
            best = std::move(match);
    }
    return best;
}

Result<Recording> onOneClock(const Recording& a, const Recording& b, const ClockMatch& match)
{
    const Shared shared = sharedTime(a.duration(), b.duration(), match);
    if (!(shared.to - shared.from >= kShortest))
        return fail(Errc::BadInput,
                    phrase("the two recordings overlap by less than %1 s", fixed(kShortest, 0)));
    Recording joined;
    joined.rate = std::min(a.rate, b.rate);
    joined.start = a.start + shared.from;
    const auto count = static_cast<std::size_t>((shared.to - shared.from) * joined.rate);
    const ClockMatch same;
    for (const Channel& channel : a.channels)
        joined.channels.push_back(
            {channel.name, channel.quantity,
             onClockOf(channel.values, a.rate, same, joined.rate, shared.from, count)});
    for (const Channel& channel : b.channels)
        joined.channels.push_back(
            {channel.name, channel.quantity,
             onClockOf(channel.values, b.rate, match, joined.rate, shared.from, count)});
    joined.flaws = a.flaws;
    joined.flaws.insert(joined.flaws.end(), b.flaws.begin(), b.flaws.end());
    joined.flaws.push_back({RecordingFlaw::Kind::Resampled, 0, 1,
                            phrase("two recordings were laid on one clock: the second begins "
                                   "%1 s after the first and its clock differs by %2 ppm",
                                   fixed(match.offset, 3), fixed(match.drift * 1e6, 1))});
    return joined;
}

}  // namespace stillbay
