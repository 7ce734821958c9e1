// SPDX-License-Identifier: MIT
#include "core/calibrate/flight_notes.h"

#include "core/base/units.h"
#include "core/response/at_throttle.h"
#include "core/setup/fields.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

namespace stillbay {
namespace {

constexpr double kBeyond = 1.1;    // of the one end that the notes name
constexpr int kLimitDecimals = 3;  // as the form shows them

struct Extent_px {
    double least = std::numeric_limits<double>::infinity(), most = 0.0;

    void add(double wobble_px)
    {
        least = std::min(least, wobble_px);
        most = std::max(most, wobble_px);
    }
};

// The curve between two throttles, straight from point to point.
std::optional<Extent_px> extentOf(std::span<const WobbleAt> curve, double from, double to)
{
    if (curve.empty() || from > curve.back().throttle || to < curve.front().throttle)
        return {};
    Extent_px extent;
    for (const WobbleAt& point : curve)
        if (point.throttle >= from && point.throttle <= to)
            extent.add(point.wobble_px);
    for (const double at : {from, to})
        for (std::size_t i = 1; i < curve.size(); ++i) {
            const WobbleAt &a = curve[i - 1], &b = curve[i];
            if (at >= a.throttle && at <= b.throttle && b.throttle > a.throttle)
                extent.add(std::lerp(a.wobble_px, b.wobble_px,
                                     (at - a.throttle) / (b.throttle - a.throttle)));
        }
    return extent;
}

Seen seenAs(Grade grade)
{
    return grade == Grade::Clean ? Seen::Clean : grade == Grade::Faint ? Seen::Faint : Seen::Bad;
}

void raise(std::optional<double>& above_px, double px)
{
    above_px = std::max(above_px.value_or(px), px);
}

void lower(std::optional<double>& upTo_px, double px)
{
    upTo_px = std::min(upTo_px.value_or(px), px);
}

// To the form's decimals, if the range still holds it.
double tidy(const LimitRange& range, double limit_px)
{
    const double grain = std::pow(10.0, kLimitDecimals);
    const double round_px = std::round(limit_px * grain) / grain;
    return range.holds(round_px) && round_px > 0 ? round_px : limit_px;
}

double limitIn(const LimitRange& range, double now_px)
{
    if (range.holds(now_px))
        return now_px;
    if (range.above_px && range.upTo_px)
        return tidy(range, std::sqrt(std::max(*range.above_px, 1e-6) * *range.upTo_px));
    return tidy(range, range.above_px ? *range.above_px * kBeyond : *range.upTo_px / kBeyond);
}

Phrase seenText(Seen seen)
{
    switch (seen) {
        case Seen::Clean:
            return phrase("clean");
        case Seen::Faint:
            return phrase("faint");
        case Seen::Bad:
            break;
    }
    return phrase("bad");
}

Number px(double value)
{
    return rounded(value, 3);
}

Number percent(double throttle)
{
    return rounded(kPercent * throttle, 3);
}

Phrase rangeOf(const LimitRange& range)
{
    if (range.above_px && range.upTo_px)
        return phrase("between %1 and %2 px", px(*range.above_px), px(*range.upTo_px));
    return range.above_px ? phrase("above %1 px", px(*range.above_px))
                          : phrase("up to %1 px", px(*range.upTo_px));
}

Warning limitsAreTheEye()
{
    return {"limits-are-the-eye",
            phrase("Limits say how this camera and this eye grade a film. Where the curve itself "
                   "may be off, measure first; new limits would hide it.")};
}

CorrectedValue corrected(const char* key, Phrase label, double before_px, double after_px)
{
    return {key, std::move(label), "px", before_px, after_px, 0.0};
}

std::optional<Correction> limitsCorrection(const Setup& setup, const FlightNotesCheck& check)
{
    const auto agree = std::count_if(check.notes.begin(), check.notes.end(),
                                     [](const NoteCheck& note) { return note.agrees; });
    if (static_cast<std::size_t>(agree) == check.notes.size() || !check.canAgree)
        return {};
    const Limits& now = setup.limits;
    double faint_px = limitIn(check.faint_px, now.faint_px);
    double bad_px = limitIn(check.bad_px, now.bad_px);
    // The two ranges may overlap: the one that may move gives way.
    if (!(faint_px < bad_px)) {
        const double high_px = check.bad_px.upTo_px.value_or(2 * faint_px);
        const double low_px = check.faint_px.above_px.value_or(bad_px / 2);
        bad_px = std::max(bad_px, std::sqrt(faint_px * std::max(high_px, faint_px)));
        if (!(faint_px < bad_px) || !check.bad_px.holds(bad_px)) {
            bad_px = limitIn(check.bad_px, now.bad_px);
            faint_px = std::sqrt(std::max(low_px, 1e-6) * bad_px);
        }
        const double tidyFaint_px =
            faint_px == now.faint_px ? faint_px : tidy(check.faint_px, faint_px);
        const double tidyBad_px = bad_px == now.bad_px ? bad_px : tidy(check.bad_px, bad_px);
        if (tidyFaint_px < tidyBad_px) {
            faint_px = tidyFaint_px;
            bad_px = tidyBad_px;
        }
    }
    if (!(faint_px < bad_px) || !check.faint_px.holds(faint_px) || !check.bad_px.holds(bad_px))
        return {};
    Correction correction;
    correction.measurement = check.notes.size() == 1
                                 ? phrase("one flight note")
                                 : phrase("%1 flight notes", whole(check.notes.size()));
    if (faint_px != now.faint_px)
        correction.values.push_back(corrected(
            "limits.faint_px", phrase("limit from which wobble is faint"), now.faint_px, faint_px));
    if (bad_px != now.bad_px)
        correction.values.push_back(corrected(
            "limits.bad_px", phrase("limit from which wobble is bad"), now.bad_px, bad_px));
    const auto count = static_cast<double>(check.notes.size());
    correction.residualBefore = 1 - static_cast<double>(agree) / count;
    correction.mark = {Quality::Fair, phrase("what an eye saw, not a measurement")};
    correction.warnings.push_back(limitsAreTheEye());
    return correction;
}

}  // namespace

bool LimitRange::isPossible() const
{
    return !above_px || !upTo_px || *above_px < *upTo_px;
}

bool LimitRange::holds(double limit_px) const
{
    return (!above_px || limit_px > *above_px) && (!upTo_px || limit_px <= *upTo_px);
}

FlightNotesCheck checkFlightNotes(const Setup& setup, std::span<const WobbleAt> curve)
{
    FlightNotesCheck check;
    for (const FlightNote& note : setup.flight.notes) {
        const auto extent = extentOf(curve, note.from, note.to);
        if (!extent)
            continue;
        const Seen computed =
            seenAs(gradeOf(extent->most, setup.limits.faint_px, setup.limits.bad_px));
        check.notes.push_back({note, extent->least, extent->most, computed, computed == note.seen});
        if (note.seen == Seen::Clean)
            raise(check.faint_px.above_px, extent->most);
        else
            lower(check.faint_px.upTo_px, extent->most);
        if (note.seen == Seen::Bad)
            lower(check.bad_px.upTo_px, extent->most);
        else
            raise(check.bad_px.above_px, extent->most);
    }
    // Faint must lie below bad, which the ranges allow wherever both are possible: a lower end of
    // faint is one of bad as well, an upper end of bad one of faint.
    check.canAgree = check.faint_px.isPossible() && check.bad_px.isPossible();
    check.correction = limitsCorrection(setup, check);
    return check;
}

Phrase noteText(const NoteCheck& check)
{
    return check.agrees
               ? phrase("Seen %1 from %2 % to %3 %, as computed: %4 px.", seenText(check.note.seen),
                        percent(check.note.from), percent(check.note.to), px(check.most_px))
               : phrase("Seen %1 from %2 % to %3 %, computed %4 px there: %5.",
                        seenText(check.note.seen), percent(check.note.from), percent(check.note.to),
                        px(check.most_px), seenText(check.computed));
}

Phrase flightNotesText(const FlightNotesCheck& check)
{
    if (check.notes.empty())
        return phrase("There are no flight notes within the curve.");
    if (std::all_of(check.notes.begin(), check.notes.end(),
                    [](const NoteCheck& note) { return note.agrees; }))
        return phrase("The flight notes agree with the curve.");
    if (!check.canAgree)
        return phrase(
            "No limits agree with the flight notes: what was seen clean is computed as "
            "strong as what was seen worse. The craft's numbers, or a note, are off.");
    const bool isFaint = check.faint_px.above_px || check.faint_px.upTo_px;
    const bool isBad = check.bad_px.above_px || check.bad_px.upTo_px;
    if (isFaint && isBad)
        return phrase("For the flight notes to agree, faint would have to begin %1, and bad %2.",
                      rangeOf(check.faint_px), rangeOf(check.bad_px));
    return isFaint ? phrase("For the flight notes to agree, faint would have to begin %1.",
                            rangeOf(check.faint_px))
                   : phrase("For the flight notes to agree, bad would have to begin %1.",
                            rangeOf(check.bad_px));
}

}  // namespace stillbay
