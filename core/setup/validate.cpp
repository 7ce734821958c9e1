// SPDX-License-Identifier: MIT
#include "core/setup/validate.h"

#include "core/setup/fields.h"
#include "core/setup/members.h"
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

std::string valueText(double value, std::string_view unit)
{
    return withUnit(toText(value), unit);
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

/// Walks a setup in file order and keeps the first fault.
class Validator {
public:
    template <class T>
    void check(const T& owner, std::string path)
    {
        std::swap(path, m_path);
        visitMembers(*this, owner);
        checkRules(owner);
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
            refuse(key, quote(key) + " is " + std::to_string(value.size()) +
                            " bytes long, allowed up to " + std::to_string(maxBytes));
        else if (findNonUtf8(value) != std::string::npos)
            refuse(key, quote(key) + " is not UTF-8 text");
    }

    void ends(const char* key, Ends value)
    {
        if (value != Ends::Clamped && value != Ends::Hinged)
            refuse(key, "Ends are neither clamped nor hinged");
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

    template <class Owner>
    void numbers(const Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            std::visit([&](auto member) { checkNumber(field, owner.*member, field.key); },
                       field.member);
    }

private:
    void refuse(std::string_view key, std::string what)
    {
        if (!m_fault)
            m_fault = Error{Errc::BadInput, std::move(what), joinPath(m_path, key)};
    }

    void checkCount(std::string_view key, std::size_t count, CountRange range)
    {
        if (count < range.min || count > range.max)
            refuse(key, quote(key) + " has " + std::to_string(count) + " entries, allowed " +
                            rangeText(range));
    }

    template <class Owner>
    void checkNumber(const Field<Owner>& field, double value, std::string_view key)
    {
        if (!(value >= field.min && value <= field.max))  // NaN fails as well
            refuse(key, std::string(field.label) + " is " + valueText(value, field.unit) +
                            ", allowed " + rangeText(field));
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

    // The rules between fields.

    template <class T>
    void checkRules(const T&)
    {
    }

    void checkRules(const ArmSection& arm)
    {
        const double limit_mm = std::min(arm.width_mm, arm.height_mm) / 2;
        if (arm.wall_mm && *arm.wall_mm >= limit_mm)
            refuse("wall_mm", "Wall is " + valueText(*arm.wall_mm, "mm") +
                                  ", must be below half the smaller side, " +
                                  valueText(limit_mm, "mm"));
    }

    void checkRules(const Battery& battery)
    {
        if (battery.empty_v_per_cell > battery.full_v_per_cell)
            refuse("empty_v_per_cell", "Empty voltage is " +
                                           valueText(battery.empty_v_per_cell, "V") +
                                           ", must not exceed the full voltage, " +
                                           valueText(battery.full_v_per_cell, "V"));
    }

    void checkRules(const Camera& camera)
    {
        const double frame_ms = 1000.0 / camera.frame_rate_hz;
        const auto fits = [&](const char* key, const char* label, double time_ms) {
            if (time_ms > frame_ms * kFrameTimeSlack)
                refuse(key, std::string(label) + " is " + valueText(time_ms, "ms") +
                                ", must fit into one frame, " +
                                withUnit(toRoundedText(frame_ms), "ms"));
        };
        fits("readout_ms", "Readout time", camera.readout_ms);
        fits("exposure_ms", "Exposure", camera.exposure_ms);
    }

    void checkRules(const TubeStock& tube)
    {
        if (tube.bore_mm >= tube.outer_diameter_mm)
            refuse("bore_mm", "Bore is " + valueText(tube.bore_mm, "mm") +
                                  ", must be smaller than the outer diameter, " +
                                  valueText(tube.outer_diameter_mm, "mm"));
    }

    void checkRules(const Flight& flight)
    {
        const auto& [from, to] = flight.cruise_throttle;
        if (from >= to)
            refuse("cruise_throttle", "Cruise throttle runs from " + toText(from) + " to " +
                                          toText(to) + ", the first must be the smaller");
    }

    void checkRules(const Limits& limits)
    {
        if (limits.faint_px >= limits.bad_px)
            refuse("faint_px", "Faint from is " + valueText(limits.faint_px, "px") +
                                   ", must be below bad from, " + valueText(limits.bad_px, "px"));
    }

    void checkRules(const Tune& tune)
    {
        if (!tune.saved.empty() && !isUtcTime(tune.saved))
            refuse("saved", "Saved is " + quote(tune.saved) +
                                ", must read like 2026-05-01T10:00:00Z or be empty");
    }

    void checkRules(const Mounts& mounts)
    {
        for (std::size_t i = 0; i < mounts.points.size() && !m_fault; ++i) {
            const std::optional<Triple>& anchor = mounts.points[i].anchor_mm;
            const std::string point = joinPath("points", i);
            if (anchor.has_value() != mounts.drilled())
                refuse(point,
                       "Points mix drilled ones, which have anchor_mm, with planned ones, which "
                       "have azimuth_deg and elevation_deg");
            else if (anchor)
                checkHole(mounts, distance_mm(*anchor, mounts.points[i].bay_mm),
                          joinPath(point, "anchor_mm"));
        }
        const Field<Mounts>& stretch = stretchField();
        if (mounts.drilled() && mounts.stretch)
            refuse("stretch", "Stretch is " + toText(*mounts.stretch) +
                                  ", must be null in a drilled craft, whose holes decide it");
        if (!mounts.drilled() && !mounts.stretch)
            refuse("stretch", "Stretch is missing, allowed " + rangeText(stretch));
    }

    void checkHole(const Mounts& mounts, double length_mm, std::string_view key)
    {
        const Field<Mounts>& stretch = stretchField();
        const double ratio = length_mm / mounts.free_length_mm;
        if (length_mm < kClosestEnds_mm)
            refuse(key, "Airframe hole lies " + withUnit(toRoundedText(length_mm), "mm") +
                            " from its bay point, must be at least " +
                            valueText(kClosestEnds_mm, "mm") + " away");
        else if (ratio < stretch.min || ratio > stretch.max)
            refuse(key, "Stretch to this hole is " + toRoundedText(ratio) + " (" +
                            withUnit(toRoundedText(length_mm), "mm") + " on a free length of " +
                            valueText(mounts.free_length_mm, "mm") + "), allowed " +
                            rangeText(stretch));
    }

    static const Field<Mounts>& stretchField()
    {
        const auto fields = fieldsOf<Mounts>();
        return *std::find_if(fields.begin(), fields.end(), [](const Field<Mounts>& field) {
            return std::string_view(field.key) == "stretch";
        });
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

Result<void> validate(const TubeStock& tube, const Mounts& mounts)
{
    Validator validator;
    validator.check(tube, "tube");
    validator.check(mounts, "mounts");
    return validator.verdict();
}

}  // namespace stillbay
