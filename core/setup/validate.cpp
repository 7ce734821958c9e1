// SPDX-License-Identifier: MIT
#include "core/setup/validate.h"

#include "core/base/printable.h"
#include "core/setup/fields.h"
#include "core/setup/members.h"
#include "core/setup/mount_layout.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr double kClosestEnds_mm = 0.1;    // nearer, a tube has no direction
constexpr double kFrameTimeSlack = 1.001;  // 16.67 ms is meant to fit 60 frames a second

// What was worked out rather than typed.
Number computed(double value)
{
    return rounded(value, 4);
}

double distance_mm(const Triple& a, const Triple& b)
{
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

bool isUtcTime(std::string_view text)
{
    constexpr std::string_view kPattern = "0000-00-00T00:00:00Z";
    const auto matches = [](char c, char pattern) {
        return pattern == '0' ? c >= '0' && c <= '9' : c == pattern;
    };
    return std::equal(text.begin(), text.end(), kPattern.begin(), kPattern.end(), matches);
}

/// A broken rule: under which key of its struct, and how.
struct Fault {
    std::string key;
    Phrase what;
};

// Sentences stand outside of classes and templates, under whose names the translation tools would
// file them.

Phrase tooLong(const char* key, std::size_t bytes, std::size_t maxBytes)
{
    return phrase("%1 has %2 bytes, allowed up to %3", labelOf(key), whole(bytes), whole(maxBytes));
}

Phrase notUtf8(const char* key)
{
    return phrase("%1 is not UTF-8 text", labelOf(key));
}

Phrase noSuchChoice(const Choice& choice)
{
    if (choice.words.size() == 4)
        return phrase("%1 is none of %2, %3, %4 and %5", phrase(choice.label),
                      quote(choice.words[0]), quote(choice.words[1]), quote(choice.words[2]),
                      quote(choice.words[3]));
    if (choice.words.size() == 3)
        return phrase("%1 is none of %2, %3 and %4", phrase(choice.label), quote(choice.words[0]),
                      quote(choice.words[1]), quote(choice.words[2]));
    if (choice.words.size() != 2)
        return phrase("%1 is none of %2", phrase(choice.label), quotedWords(choice));
    return phrase("%1 is neither %2 nor %3", phrase(choice.label), quote(choice.words[0]),
                  quote(choice.words[1]));
}

Phrase wrongCount(std::string_view key, std::size_t count, CountRange range)
{
    if (count == 1)
        return phrase("%1 has 1 entry, allowed %2", listLabelOf(key), rangeText(range));
    return phrase("%1 has %2 entries, allowed %3", listLabelOf(key), whole(count),
                  rangeText(range));
}

Phrase outsideOfCurve(std::size_t place, double value)
{
    return outOfRange(place == 0 ? translatable("Throttle") : translatable("Duty"), exact(value),
                      rangeText(0, 1, ""));
}

// The rules between fields.

template <class T>
std::optional<Fault> brokenRule(const T&)
{
    return {};
}

std::optional<Fault> brokenRule(const ArmSection& arm)
{
    const double limit_mm = std::min(arm.width_mm, arm.height_mm) / 2;
    if (!arm.wall_mm || *arm.wall_mm < limit_mm)
        return {};
    return Fault{"wall_mm",
                 phrase("Wall is %1, must be below half the smaller side, %2",
                        withUnit(exact(*arm.wall_mm), "mm"), withUnit(exact(limit_mm), "mm"))};
}

std::optional<Fault> brokenRule(const Battery& battery)
{
    if (battery.empty_v_per_cell <= battery.full_v_per_cell)
        return {};
    return Fault{"empty_v_per_cell",
                 phrase("Empty voltage is %1, must not exceed the full voltage, %2",
                        withUnit(exact(battery.empty_v_per_cell), "V"),
                        withUnit(exact(battery.full_v_per_cell), "V"))};
}

std::optional<Fault> brokenRule(const Camera& camera)
{
    if (camera.lens == Lens::Rectilinear && camera.horizontal_fov_deg > kWidestRectilinear_deg)
        return Fault{"horizontal_fov_deg",
                     phrase("Horizontal field of view is %1, must not exceed %2 unless the lens is "
                            "a fisheye",
                            withUnit(exact(camera.horizontal_fov_deg), "°"),
                            withUnit(exact(kWidestRectilinear_deg), "°"))};
    const double frame_ms = 1000.0 / camera.frame_rate_hz;
    const auto tooLongFor = [&](const char* key, const char* label, double time_ms) {
        return time_ms > frame_ms * kFrameTimeSlack
                   ? std::optional(Fault{key, phrase("%1 is %2, must fit into one frame, %3",
                                                     phrase(label), withUnit(exact(time_ms), "ms"),
                                                     withUnit(computed(frame_ms), "ms"))})
                   : std::nullopt;
    };
    if (auto fault = tooLongFor("readout_ms", translatable("Readout time"), camera.readout_ms))
        return fault;
    return tooLongFor("exposure_ms", translatable("Exposure"), camera.exposure_ms);
}

std::optional<Fault> brokenRule(const TubeKind& tube)
{
    if (tube.bore_mm < tube.outer_diameter_mm)
        return {};
    return Fault{"bore_mm", phrase("Bore is %1, must be smaller than the outer diameter, %2",
                                   withUnit(exact(tube.bore_mm), "mm"),
                                   withUnit(exact(tube.outer_diameter_mm), "mm"))};
}

std::optional<Fault> brokenRule(const Flight& flight)
{
    const auto& [from, to] = flight.cruise_throttle;
    if (from < to)
        return {};
    return Fault{"cruise_throttle",
                 phrase("Cruise throttle runs from %1 to %2, the first must be the smaller",
                        exact(from), exact(to))};
}

std::optional<Fault> brokenRule(const FlightNote& note)
{
    if (note.from <= note.to)
        return {};
    return Fault{"from", phrase("A flight note runs from %1 to %2, the first must not be larger",
                                exact(note.from), exact(note.to))};
}

std::optional<Fault> brokenRule(const Drive& drive)
{
    const ThrottleCurve& curve = drive.throttle_curve;
    for (std::size_t i = 1; i < curve.size(); ++i)
        if (!(curve[i][0] > curve[i - 1][0] && curve[i][1] > curve[i - 1][1]))
            return Fault{joinPath("throttle_curve", i),
                         phrase("The throttle curve goes from %1, %2 to %3, %4; throttle and duty "
                                "must both rise from pair to pair",
                                exact(curve[i - 1][0]), exact(curve[i - 1][1]), exact(curve[i][0]),
                                exact(curve[i][1]))};
    return {};
}

std::optional<Fault> brokenRule(const Limits& limits)
{
    if (limits.faint_px < limits.bad_px)
        return {};
    return Fault{"faint_px", phrase("Faint from is %1, must be below bad from, %2",
                                    withUnit(exact(limits.faint_px), "px"),
                                    withUnit(exact(limits.bad_px), "px"))};
}

std::optional<Fault> brokenRule(const Tune& tune)
{
    if (tune.saved.empty() || isUtcTime(tune.saved))
        return {};
    return Fault{
        "saved",
        phrase("The time of keeping is %1, must read like 2026-05-01T10:00:00Z or be empty",
               quote(tune.saved))};
}

std::optional<Fault> brokenRule(const NamedRecording& recording)
{
    if (recording.file.empty())
        return Fault{"file", phrase("A recording names no file")};
    if (!recording.from_s || !recording.to_s || *recording.from_s < *recording.to_s)
        return {};
    return Fault{"from_s", phrase("The part of a recording runs from %1 to %2, the first must be "
                                  "the smaller",
                                  withUnit(exact(*recording.from_s), "s"),
                                  withUnit(exact(*recording.to_s), "s"))};
}

std::optional<Fault> brokenRule(const Setup& setup)
{
    const std::vector<Source>& sources = setup.sources;
    for (auto source = sources.begin(); source != sources.end(); ++source) {
        if (std::any_of(sources.begin(), source,
                        [&](const Source& other) { return other.key == source->key; }))
            return Fault{joinPath("sources", shorten(source->key)),
                         phrase("Two sources are of the same number")};
    }
    return {};
}

const Field<Mounts>& stretchField()
{
    const auto fields = fieldsOf<Mounts>();
    return *std::find_if(fields.begin(), fields.end(), [](const Field<Mounts>& field) {
        return std::string_view(field.key) == "stretch";
    });
}

// The holes of a drilled craft decide its stretch.
Phrase decidedByHoles(double stretch)
{
    return phrase("Stretch is %1, must be left out in a drilled craft, whose holes decide it",
                  exact(stretch));
}

std::optional<Phrase> faultOfHole(double freeLength_mm, double length_mm)
{
    const Field<Mounts>& stretch = stretchField();
    const double ratio = length_mm / freeLength_mm;
    if (length_mm < kClosestEnds_mm)
        return phrase("Airframe hole lies %1 from its bay point, must be at least %2 away",
                      withUnit(computed(length_mm), "mm"), withUnit(exact(kClosestEnds_mm), "mm"));
    if (ratio < stretch.min || ratio > stretch.max)
        return phrase("Stretch to this hole is %1 (%2 on a free length of %3), allowed %4",
                      computed(ratio), withUnit(computed(length_mm), "mm"),
                      withUnit(exact(freeLength_mm), "mm"), rangeText(stretch));
    return {};
}

std::optional<Fault> brokenRule(const Mounts& mounts)
{
    for (std::size_t i = 0; i < mounts.points.size(); ++i) {
        const MountPoint& place = mounts.points[i];
        const std::optional<Triple>& anchor = place.anchor_mm;
        const std::string point = joinPath("points", i);
        if (anchor.has_value() != mounts.drilled())
            return Fault{point,
                         phrase("Some tubes have an airframe hole and others a direction and "
                                "an elevation; all must have the same")};
        if (!anchor)
            continue;
        if (place.stretch)
            return Fault{joinPath(point, "stretch"), decidedByHoles(*place.stretch)};
        if (auto fault =
                faultOfHole(freeLength_mm(mounts, place), distance_mm(*anchor, place.bay_mm)))
            return Fault{joinPath(point, "anchor_mm"), *std::move(fault)};
    }
    if (mounts.drilled() && mounts.stretch)
        return Fault{"stretch", decidedByHoles(*mounts.stretch)};
    if (!mounts.drilled() && !mounts.stretch)
        return Fault{"stretch",
                     phrase("Stretch is missing, allowed %1", rangeText(stretchField()))};
    return {};
}

/// Walks a setup in file order and keeps the first fault.
class Validator {
public:
    template <class T>
    void check(const T& owner, std::string path)
    {
        std::swap(path, m_path);
        visitMembers(*this, owner);
        if (std::optional<Fault> fault = brokenRule(owner))
            refuse(fault->key, std::move(fault->what));
        std::swap(path, m_path);
    }

    Result<void> verdict()
    {
        if (m_fault)
            return tl::unexpected<Error>(*std::move(m_fault));
        return {};
    }

    void text(const char* key, const std::string& value, std::size_t maxBytes)
    {
        if (value.size() > maxBytes)
            refuse(key, tooLong(key, value.size(), maxBytes));
        else if (findNonUtf8(value) != std::string::npos)
            refuse(key, notUtf8(key));
    }

    template <class Enum>
    void choice(const char* key, Enum value)
    {
        const Choice& offered = choiceOf<Enum>();
        if (static_cast<std::size_t>(value) >= offered.words.size())
            refuse(key, noSuchChoice(offered));
    }

    template <class T>
    void object(const char* key, const T& member)
    {
        check(member, joinPath(m_path, key));
    }

    template <class T>
    void list(const char* key, const std::vector<T>& entries, CountRange range)
    {
        checkCount(key, entries.size(), range);
        const std::string path = joinPath(m_path, key);
        for (std::size_t i = 0; i < entries.size() && !m_fault; ++i)
            check(entries[i], joinPath(path, i));
    }

    void curve(const char* key, const ThrottleCurve& pairs, CountRange range)
    {
        if (!pairs.empty())
            checkCount(key, pairs.size(), range);
        for (std::size_t i = 0; i < pairs.size(); ++i)
            for (std::size_t k = 0; k < 2; ++k)
                if (!(pairs[i][k] >= 0 && pairs[i][k] <= 1))  // NaN fails as well
                    refuse(joinPath(joinPath(key, i), k), outsideOfCurve(k, pairs[i][k]));
    }

    template <class T>
    void keyed(const char* key, const std::vector<T>& entries, CountRange range)
    {
        checkCount(key, entries.size(), range);
        const std::string path = joinPath(m_path, key);
        for (std::size_t i = 0; i < entries.size() && !m_fault; ++i) {
            text(key, entries[i].key, kMaxNotesBytes);
            check(entries[i], joinPath(path, shorten(entries[i].key)));
        }
    }

    template <class Owner>
    void numbers(const Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            std::visit([&](auto member) { checkNumber(field, owner.*member, field.key); },
                       field.member);
    }

private:
    void refuse(std::string_view key, Phrase what)
    {
        if (!m_fault)
            m_fault = Error{Errc::BadInput, std::move(what), joinPath(m_path, key)};
    }

    void checkCount(std::string_view key, std::size_t count, CountRange range)
    {
        if (count < range.min || count > range.max)
            refuse(key, wrongCount(key, count, range));
    }

    template <class Owner>
    void checkNumber(const Field<Owner>& field, double value, std::string_view key)
    {
        if (!(value >= field.min && value <= field.max))  // NaN fails as well
            refuse(key,
                   outOfRange(field.label, withUnit(exact(value), field.unit), rangeText(field)));
    }

    template <class Owner>
    void checkNumber(const Field<Owner>& field, const std::optional<double>& value,
                     std::string_view key)
    {
        if (value)
            checkNumber(field, *value, key);
    }

    template <class Owner>
    void checkNumber(const Field<Owner>& field, const std::optional<Triple>& value,
                     std::string_view key)
    {
        if (value)
            checkNumber(field, *value, key);
    }

    template <class Owner, std::size_t N>
    void checkNumber(const Field<Owner>& field, const std::array<double, N>& values,
                     std::string_view key)
    {
        for (std::size_t i = 0; i < N; ++i)
            checkNumber(field, values[i], joinPath(key, i));
    }

    template <class Owner>
    void checkNumber(const Field<Owner>& field, const std::vector<double>& values,
                     std::string_view key)
    {
        checkCount(key, values.size(), kBladePassCount);
        for (std::size_t i = 0; i < values.size(); ++i)
            checkNumber(field, values[i], joinPath(key, i));
    }

    std::string m_path;
    std::optional<Error> m_fault;
};

}  // namespace

Result<void> validate(const Setup& setup)
{
    Validator validator;
    validator.check(setup, "");
    return validator.verdict();
}

Result<void> validate(const TubeKind& tube, const Mounts& mounts)
{
    Validator validator;
    validator.check(tube, "tube");
    validator.check(mounts, "mounts");
    return validator.verdict();
}

}  // namespace stillbay
