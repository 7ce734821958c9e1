// SPDX-License-Identifier: MIT
#include "core/calibrate/film_match.h"

#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

namespace stillbay {
namespace {

constexpr double kSlowestFlight = 0.5;   // of the hover's speed: a quarter of the weight is held
constexpr double kThrottleWidth = 0.05;  // of the speed that a known throttle gives
constexpr double kNearlyAsGood = 0.2;    // below the best score, which is 1 at most
constexpr double kAsPredicted = 0.6;     // of the share that is explained: score
constexpr double kWellExplained = 0.8;   // of the lines' power
constexpr double kStrange = 4.0;         // times stronger or weaker than predicted
constexpr double kRings = 0.03;          // of its frequency, about a resonance
constexpr double kMatters = 0.02;        // of the power of all lines
constexpr double kBends_px = 0.01;       // wobble of lines that is as good as none
constexpr double kOneSpeed = 0.01;       // of the speed: orders of one rotor lie closer together

double squared(double x)
{
    return x * x;
}

// The craft's orders as far as matching asks for them.
class Orders final {
public:
    Orders(const Setup& setup, const Assessment& assessment)
        : m_craft(makeExcitedAirframe(setup)),
          m_points(assessment.throttle),
          m_slowest(kSlowestFlight * assessment.hover.speed_rpm * unit::rpm)
    {
        for (const ThrottlePoint& point : m_points)
            if (!point.orders.empty()) {
                for (const OrderPoint& order : point.orders)
                    m_orders.push_back(order.order);
                break;
            }
    }

    const std::vector<int>& orders() const { return m_orders; }
    const ExcitedAirframe& craft() const { return m_craft; }

    // Of what flies, and of the full pack.
    double slowest() const { return m_slowest; }
    double fastest() const { return rotorSpeed(m_craft.drive, 1.0, m_craft.fullVoltage); }

    // Wobble of the order with that place at a speed, straight between the points; none outside of
    // them, where nothing was computed.
    std::optional<double> predicted_px(std::size_t place, double speed) const
    {
        const double speed_rpm = speed / unit::rpm;
        const ThrottlePoint* before = nullptr;
        for (const ThrottlePoint& point : m_points) {
            if (point.orders.size() <= place)
                continue;
            if (point.speed_rpm >= speed_rpm && before != nullptr &&
                point.speed_rpm > before->speed_rpm)
                return std::lerp(
                    before->orders[place].wobble_px, point.orders[place].wobble_px,
                    (speed_rpm - before->speed_rpm) / (point.speed_rpm - before->speed_rpm));
            if (point.speed_rpm > speed_rpm)
                return {};
            before = &point;
        }
        return {};
    }

private:
    ExcitedAirframe m_craft;
    SharedList<ThrottlePoint> m_points;
    double m_slowest;
    std::vector<int> m_orders;
};

// Its own frequency, then those that the rows do not tell from it.
std::vector<double> frequenciesOf(const FilmLine& line)
{
    std::vector<double> all{line.frequency_hz};
    all.insert(all.end(), line.aliases_hz.begin(), line.aliases_hz.end());
    return all;
}

// One speed and how it explains the lines.
struct Try {
    double speed = 0.0, score = 0.0, explained = 0.0;  // of the lines' power
    std::vector<MatchedLine> lines;
    std::vector<double> filmed;  // power an order, 0: no line
};

MatchedLine matchedAt(double speed, const std::vector<int>& orders, const FilmReading& reading,
                      std::size_t line)
{
    const auto frequencies = frequenciesOf(reading.lines[line]);
    MatchedLine matched{line, {}, frequencies.front(), {}};
    double nearest = kOrderWidth;
    for (const double frequency : frequencies) {
        for (const int order : orders) {
            const double off = std::abs(frequency / (order * speed) - 1.0);
            if (off < nearest) {
                nearest = off;
                matched.order = order;
                matched.frequency_hz = frequency;
            }
        }
        if (matched.order)
            break;  // an alias is asked for only where the line's own frequency fits nothing
    }
    return matched;
}

// 0 as predicted … 1 many times stronger or weaker.
double strangeness(double filmed_px, std::optional<double> predicted_px)
{
    if (!(filmed_px > 0 && predicted_px && *predicted_px > 0))
        return 1.0;
    return std::min(1.0, squared(std::log(filmed_px / *predicted_px) / std::log(kStrange)));
}

Try triedAt(double speed, const Orders& craft, const FilmReading& reading)
{
    Try attempt{speed, 0, 0, {}, std::vector<double>(craft.orders().size(), 0.0)};
    double all = 0;
    for (std::size_t i = 0; i < reading.lines.size(); ++i) {
        const double power = squared(reading.lines[i].wobble_px);
        const MatchedLine matched = matchedAt(speed, craft.orders(), reading, i);
        all += power;
        if (matched.order) {
            const auto place =
                std::find(craft.orders().begin(), craft.orders().end(), *matched.order) -
                craft.orders().begin();
            attempt.filmed[static_cast<std::size_t>(place)] += power;
            attempt.explained += power;
        }
        attempt.lines.push_back(matched);
    }
    for (std::size_t k = 0; k < craft.orders().size(); ++k) {
        const auto predicted_px = craft.predicted_px(k, speed);
        if (attempt.filmed[k] > 0)
            attempt.score += attempt.filmed[k] *
                             (1.0 - 0.5 * strangeness(std::sqrt(attempt.filmed[k]), predicted_px));
        else if (predicted_px && *predicted_px > kShowsOnFilm * reading.floor_px &&
                 isLookedAt(reading, craft.orders()[k] * speed))
            attempt.score -= 0.5 * std::min(squared(*predicted_px), all);
    }
    if (all > 0) {
        attempt.score /= all;
        attempt.explained /= all;
    }
    return attempt;
}

// Where the lines that a speed explains put it, by how well each is known, and with which spread.
std::pair<double, double> refined(const Try& attempt, const FilmReading& reading)
{
    double sum = 0, weights = 0, scatter = 0;
    for (const MatchedLine& matched : attempt.lines) {
        if (!matched.order)
            continue;
        const FilmLine& line = reading.lines[matched.line];
        const double speed = matched.frequency_hz / *matched.order;
        const double spread = std::max(line.uncertainty_hz / *matched.order, 1e-4 * speed);
        const double weight = squared(line.wobble_px) / squared(spread);
        sum += weight * speed;
        weights += weight;
        scatter += weight * squared(spread);
    }
    if (!(weights > 0))
        return {attempt.speed, 0.0};
    const double speed = sum / weights;
    double apart = 0;
    for (const MatchedLine& matched : attempt.lines)
        if (matched.order) {
            const FilmLine& line = reading.lines[matched.line];
            const double spread = std::max(line.uncertainty_hz / *matched.order, 1e-4 * speed);
            apart += squared(line.wobble_px) / squared(spread) *
                     squared(matched.frequency_hz / *matched.order - speed);
        }
    return {speed, std::sqrt((scatter + apart) / weights)};
}

struct SpeedRange {
    double slowest = 0.0, fastest = 0.0;
};

// What the rotors turn at a throttle, from the empty pack to the full one.
SpeedRange rangeAt(const ExcitedAirframe& craft, double throttle)
{
    return {rotorSpeed(craft.drive, throttle, craft.emptyVoltage) * (1 - kThrottleWidth),
            rotorSpeed(craft.drive, throttle, craft.fullVoltage) * (1 + kThrottleWidth)};
}

SpeedRange searched(const Orders& craft, const FilmMatchOptions& options)
{
    if (options.heard) {
        const double reach = options.heard->tolerance + kOrderWidth * options.heard->speed;
        return {options.heard->speed - reach, options.heard->speed + reach};
    }
    if (options.throttle)
        return rangeAt(craft.craft(), *options.throttle);
    return {craft.slowest(), craft.fastest() * (1 + kOrderWidth)};
}

double linesPower(const std::vector<FilmLine>& lines)
{
    double power = 0;
    for (const FilmLine& line : lines)
        power += squared(line.wobble_px);
    return power;
}

// Whether a line's power counts among that of all.
bool matters(const FilmReading& reading, std::size_t line)
{
    return squared(reading.lines[line].wobble_px) > kMatters * linesPower(reading.lines);
}

// A speed that puts a line, or an alias of one, onto an order.
struct Candidate {
    double speed = 0.0;
    bool matters = false;  // the line
};

// All within what is known.
std::vector<Candidate> candidates(const Orders& craft, const FilmReading& reading,
                                  const FilmMatchOptions& options)
{
    const auto [slowest, fastest] = searched(craft, options);
    std::vector<Candidate> speeds;
    for (std::size_t i = 0; i < reading.lines.size(); ++i)
        for (const double frequency : frequenciesOf(reading.lines[i]))
            for (const int order : craft.orders())
                if (const double speed = frequency / order; speed >= slowest && speed <= fastest)
                    speeds.push_back({speed, matters(reading, i)});
    return speeds;
}

bool isOtherThan(double speed, double other)
{
    return std::abs(other / speed - 1) > 2 * kOrderWidth;
}

// By what was named or heard beside the film.
bool isKnown(double speed, const std::vector<Candidate>& all, const FilmMatchOptions& options)
{
    if (options.heard)
        return true;
    return options.throttle && std::none_of(all.begin(), all.end(), [&](const Candidate& each) {
               return each.matters && isOtherThan(speed, each.speed);
           });
}

Phrase rpmText(double speed)
{
    return phrase("%1 rpm", fixed(speed / unit::rpm, 0));
}

std::size_t ordersSeen(const FilmMatch& match)
{
    return static_cast<std::size_t>(
        std::count_if(match.orders.begin(), match.orders.end(),
                      [](const OrderOnFilm& order) { return order.filmed_px.has_value(); }));
}

// What would tell a speed from others.
Phrase otherSpeedText(double other, const FilmMatchOptions& options)
{
    return options.throttle
               ? phrase(
                     "%1 would explain the lines nearly as well: film at another throttle, or "
                     "with sound",
                     rpmText(other))
               : phrase(
                     "%1 would explain the lines nearly as well: name the throttle, or film at "
                     "another one",
                     rpmText(other));
}

Phrase singleLineText(const FilmMatchOptions& options)
{
    return options.throttle
               ? phrase(
                     "a single line is an order of some speed in any case, and at that throttle "
                     "of more than one: film with sound")
               : phrase("a single line is an order of some speed in any case: name the throttle");
}

// @param score  1: all is explained as predicted; below 0: more speaks against the speed than for
// it
QualityMark markOf(const FilmMatch& match, double score, const FilmReading& reading,
                   const FilmMatchOptions& options)
{
    if (match.isStabilised)
        return {Quality::Poor, phrase("the film was stabilised")};
    if (std::sqrt(linesPower(reading.lines)) < kBends_px)
        return {Quality::Poor, phrase("the lines shake whole frames and hardly bend their rows: "
                                      "nothing to hold against the predicted wobble")};
    const bool usesAlias = std::any_of(match.warnings.begin(), match.warnings.end(),
                                       [](const auto& w) { return w.code == "film_alias"; });
    if (score <= 0)
        return {Quality::Poor, phrase("orders that should be larger do not show, or what shows is "
                                      "many times stronger or weaker than predicted")};
    if (match.explained < 0.5)
        return {Quality::Poor, phrase("the rotors' orders explain only %1 % of what the lines show",
                                      fixed(kPercent * match.explained, 0))};
    if (match.otherSpeed)
        return {Quality::Fair, otherSpeedText(*match.otherSpeed, options)};
    if (match.explained < kWellExplained)
        return {Quality::Fair, phrase("the rotors' orders explain %1 % of what the lines show",
                                      fixed(kPercent * match.explained, 0))};
    if (!match.predicted_px)
        return {Quality::Fair, phrase("the craft is not computed to reach this speed")};
    if (score < kAsPredicted * match.explained)
        return {Quality::Fair, phrase("what shows is several times stronger or weaker than "
                                      "predicted, or an order that should show does not")};
    if (ordersSeen(match) < 2 && !match.isSpeedKnown)
        return {Quality::Fair, singleLineText(options)};
    if (match.spread > kOneSpeed * match.speed && !match.isSpeedKnown)
        return {Quality::Fair, phrase("the lines agree on a speed to %1 % only",
                                      rounded(kPercent * match.spread / match.speed, 2))};
    if (usesAlias)
        return {Quality::Fair, phrase("a line counts only where one of its aliases is meant")};
    return {Quality::Good, phrase("the rotors' orders explain %1 % of what the lines show",
                                  fixed(kPercent * match.explained, 0))};
}

Phrase linesAndSpeedsDisagree(const FilmMatchOptions& options)
{
    if (options.heard)
        return phrase(
            "at the %1 that are heard no order of this craft's rotors lies at a line of "
            "the film",
            rpmText(options.heard->speed));
    if (options.throttle)
        return phrase("at %1 % throttle no order of this craft's rotors lies at a line of the film",
                      rounded(kPercent * *options.throttle, 3));
    return phrase("no speed of this craft's rotors explains a line of the film");
}

Warning aliasMeant(double frequency_hz, double alias_hz)
{
    return {"film_alias", phrase("the line at %1\u00A0Hz is taken for its alias at %2\u00A0Hz",
                                 fixed(frequency_hz, 1), fixed(alias_hz, 1))};
}

Warning outOfReach(double speed, double fastest)
{
    return {"film_reach", phrase("%1 are more than this craft's rotors reach on a full pack, %2: "
                                 "nothing is predicted there",
                                 rpmText(speed), rpmText(fastest))};
}

// Where sound and throttle do not go together.
std::optional<Warning> heardBesideThrottle(const ExcitedAirframe& craft,
                                           const FilmMatchOptions& options)
{
    if (!options.heard || !options.throttle)
        return {};
    const auto [slowest, fastest] = rangeAt(craft, *options.throttle);
    if (options.heard->speed + options.heard->tolerance >= slowest &&
        options.heard->speed - options.heard->tolerance <= fastest)
        return {};
    return Warning{
        "film_throttle",
        phrase("the rotors are heard at %1; at %2 % throttle this craft is computed to turn them "
               "at %3 to %4",
               rpmText(options.heard->speed), rounded(kPercent * *options.throttle, 3),
               rpmText(slowest / (1 - kThrottleWidth)), rpmText(fastest / (1 + kThrottleWidth)))};
}

// The nearest of what rings there; none within kRings.
std::optional<Resonance> ringingAt(double frequency_hz, const std::vector<Resonance>& all)
{
    std::optional<Resonance> nearest;
    double off = kRings;
    for (const Resonance& resonance : all)
        if (const double away = std::abs(frequency_hz / resonance.frequency_hz - 1); away <= off) {
            off = away;
            nearest = resonance;
        }
    return nearest;
}

// What is predicted at the match's speed, into it; nothing where the full pack does not reach that.
Result<void> addPrediction(const Setup& setup, const Orders& craft, FilmMatch& match)
{
    std::vector<OrderPoint> predicted;
    if (match.throttle_full) {
        const Grid there{*match.throttle_full, *match.throttle_full, 1.0};
        const auto assessment = assess(setup, {.throttle = there});
        if (!assessment)
            return tl::unexpected(assessment.error());
        const ThrottlePoint& point = *assessment->throttle.begin();
        match.predicted_px = point.wobble_px;
        predicted = point.orders;
    } else {
        match.warnings.push_back(outOfReach(match.speed, craft.fastest()));
    }
    for (OrderOnFilm& order : match.orders)
        for (const OrderPoint& point : predicted)
            if (point.order == order.order)
                order.predicted_px = point.wobble_px;
    return {};
}

}  // namespace

Result<FilmMatch> matchFilm(const Setup& setup, const FilmReading& reading,
                            const FilmMatchOptions& options)
{
    if (options.throttle && !(*options.throttle > 0 && *options.throttle <= 1))
        return fail(Errc::BadInput, phrase("A throttle is %1, must be above 0 and up to 1",
                                           exact(*options.throttle)));
    if (reading.lines.empty())
        return fail(Errc::NoAnswer, phrase("the film shows no line above %1\u00A0px",
                                           rounded(reading.floor_px, 2)));
    if (options.heard && !(options.heard->speed > 0 && options.heard->tolerance >= 0))
        return fail(Errc::BadInput, phrase("A speed of rotors must be above 0"));
    const auto assessment = assess(setup);
    if (!assessment)
        return tl::unexpected(assessment.error());
    const Orders craft(setup, *assessment);

    std::vector<Try> tries;
    const std::vector<Candidate> all = candidates(craft, reading, options);
    for (const Candidate& candidate : all)
        tries.push_back(triedAt(candidate.speed, craft, reading));
    const auto best = std::max_element(
        tries.begin(), tries.end(), [](const Try& a, const Try& b) { return a.score < b.score; });
    if (best == tries.end())
        return fail(Errc::NoAnswer, linesAndSpeedsDisagree(options));

    FilmMatch match;
    std::tie(match.speed, match.spread) = refined(*best, reading);
    Try now = triedAt(match.speed, craft, reading);
    if (now.explained < best->explained) {  // a line at the edge of an order, lost on the way
        now = *best;
        match.speed = best->speed;
    }
    match.isSpeedKnown = isKnown(match.speed, all, options);
    match.isStabilised = reading.isStabilised;
    match.explained = now.explained;
    match.lines = now.lines;
    match.filmed_px = reading.wobble_px;
    double nearlyAsGood = best->score - kNearlyAsGood;
    for (const Try& other : tries)
        if (!options.heard && isOtherThan(match.speed, other.speed) && other.score > nearlyAsGood) {
            match.otherSpeed = other.speed;
            nearlyAsGood = other.score;
        }
    for (std::size_t k = 0; k < craft.orders().size(); ++k) {
        OrderOnFilm order{craft.orders()[k], craft.orders()[k] * match.speed, {}, {}};
        if (now.filmed[k] > 0)
            order.filmed_px = std::sqrt(now.filmed[k]);
        match.orders.push_back(order);
    }

    const DriveModel& drive = craft.craft().drive;
    match.throttle_full = throttleForSpeed(drive, match.speed, craft.craft().fullVoltage);
    match.throttle_empty = throttleForSpeed(drive, match.speed, craft.craft().emptyVoltage);
    if (const auto predicted = addPrediction(setup, craft, match); !predicted)
        return tl::unexpected(predicted.error());
    const std::vector<Resonance> ringing = resonances(*assessment);
    for (MatchedLine& matched : match.lines) {
        const double own_hz = reading.lines[matched.line].frequency_hz;
        if (!matched.order)
            matched.resonance = ringingAt(own_hz, ringing);
        else if (matched.frequency_hz != own_hz && matters(reading, matched.line))
            match.warnings.push_back(aliasMeant(own_hz, matched.frequency_hz));
    }
    if (auto warning = heardBesideThrottle(craft.craft(), options))
        match.warnings.push_back(*std::move(warning));
    match.mark = markOf(match, now.score, reading, options);
    return match;
}

bool isSpeedSettled(const FilmMatch& match)
{
    return match.mark.quality != Quality::Poor && !match.otherSpeed &&
           (match.isSpeedKnown || ordersSeen(match) >= 2);
}

}  // namespace stillbay
