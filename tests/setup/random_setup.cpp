// SPDX-License-Identifier: MIT
#include "tests/setup/random_setup.h"

#include "core/setup/fields.h"
#include "core/setup/members.h"
#include "core/setup/mount_layout.h"

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace stillbay::test {
namespace {

constexpr double kPi = 3.14159265358979323846;

int drawInt(int min, int max)
{
    return *rc::gen::inRange(min, max + 1);
}

double drawFraction()
{
    return static_cast<double>(*rc::gen::inRange<std::uint64_t>(0, 1ULL << 53U)) / 0x1p53;
}

/// Ends, whole numbers and numbers with all their digits.
double drawNumber(double min, double max)
{
    switch (drawInt(0, 4)) {
        case 0:
            return min;
        case 1:
            return max;
        case 2:
            return std::clamp(std::floor(min + (max - min) * drawFraction()), min, max);
        default:
            return std::clamp(min + (max - min) * drawFraction(), min, max);
    }
}

std::string drawText()
{
    static const std::vector<std::string> kPieces{"a",    "Z",    " ", "\"",   "\\",  "\n",
                                                  "\t",   "\x01", "/", "é",    "π",   "鳥",
                                                  "🪁", "{",    "}", "null", "\x7F"};
    std::string text;
    for (int i = drawInt(0, 8); i > 0; --i)
        text += *rc::gen::elementOf(kPieces);
    return text;
}

Extras drawExtras()
{
    static const std::vector<std::string> kValues{"null",
                                                  "true",
                                                  "0",
                                                  "-7",
                                                  "0.1",
                                                  "1e+300",
                                                  "\"\"",
                                                  "[]",
                                                  "{}",
                                                  "\"ä\\n\\\"\"",
                                                  "[1,[2,{\"b\":null}]]",
                                                  "{\"a\":{\"a\":[]},\"ends\":1}",
                                                  "18446744073709551615"};
    Extras extras;
    if (drawInt(0, 3) == 0)
        for (int i = drawInt(1, 3); i > 0; --i)
            extras.emplace_back("x" + std::to_string(i) + drawText(), *rc::gen::elementOf(kValues));
    return extras;
}

/// A visitor that fills every member within its range.
class Stock {
public:
    template <class T>
    void draw(T& owner)
    {
        visitMembers(*this, owner);
        obeyRules(owner);
        owner.extras = drawExtras();
    }

    void text(const char*, std::string& value, std::size_t) { value = drawText(); }

    template <class Enum>
    void choice(const char*, Enum& value)
    {
        value = static_cast<Enum>(drawInt(0, static_cast<int>(choiceOf<Enum>().words.size()) - 1));
    }

    template <class T>
    void object(const char*, T& member)
    {
        draw(member);
    }

    template <class T>
    void list(const char*, std::vector<T>& entries, CountRange range)
    {
        const int few = static_cast<int>(range.min) + 2;
        entries.resize(static_cast<std::size_t>(drawInt(static_cast<int>(range.min), few)));
        for (T& entry : entries)
            draw(entry);
    }

    void curve(const char*, ThrottleCurve& pairs, CountRange)
    {
        pairs.clear();
        if (drawInt(0, 1) == 0)
            return;
        const int count = drawInt(2, 5);
        for (int i = 0; i < count; ++i) {
            const double least = i, step = 0.9 / count;
            pairs.push_back(
                {step * (least + drawNumber(0.1, 1.0)), step * (least + drawNumber(0.1, 1.0))});
        }
    }

    template <class T>
    void keyed(const char*, std::vector<T>& entries, CountRange)
    {
        static const std::vector<std::string> kKeys{
            "tube.youngs_modulus_mpa", "drive.unbalance_g_mm", "airframe.arms[1].length_mm"};
        entries.resize(static_cast<std::size_t>(drawInt(0, 3)));
        for (std::size_t i = 0; i < entries.size(); ++i) {
            draw(entries[i]);
            entries[i].key = kKeys[i];
        }
    }

    template <class Owner>
    void numbers(Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            std::visit([&](auto member) { number(field, owner.*member); }, field.member);
    }

private:
    template <class Owner, class T>
    void number(const Field<Owner>& field, T& value)
    {
        if constexpr (std::is_same_v<T, int>) {
            value = drawInt(static_cast<int>(field.min), static_cast<int>(field.max));
        } else if constexpr (std::is_same_v<T, double>) {
            value = drawNumber(field.min, field.max);
        } else if constexpr (requires { value.has_value(); }) {
            value.reset();
            if (drawInt(0, 1) == 0)
                number(field, value.emplace());
        } else {
            if constexpr (requires { value.resize(1); })
                value.resize(static_cast<std::size_t>(drawInt(0, 3)));
            for (double& entry : value)
                number(field, entry);
        }
    }

    template <class T>
    void obeyRules(T&)
    {
    }

    void obeyRules(ArmSection& arm)
    {
        if (arm.wall_mm)
            arm.wall_mm = std::min(*arm.wall_mm, 0.3 * std::min(arm.width_mm, arm.height_mm));
    }

    void obeyRules(Battery& battery)
    {
        battery.empty_v_per_cell = std::min(battery.empty_v_per_cell, battery.full_v_per_cell);
    }

    void obeyRules(Camera& camera)
    {
        const double frame_ms = 1000.0 / camera.frame_rate_hz;
        camera.readout_ms = std::min(camera.readout_ms, frame_ms);
        camera.exposure_ms = std::min(camera.exposure_ms, frame_ms);
        if (camera.lens == Lens::Rectilinear)
            camera.horizontal_fov_deg = std::min(camera.horizontal_fov_deg, kWidestRectilinear_deg);
    }

    void obeyRules(TubeKind& tube)
    {
        tube.bore_mm = std::min(tube.bore_mm, 0.9 * tube.outer_diameter_mm);
    }

    void obeyRules(Flight& flight)
    {
        auto& [from, to] = flight.cruise_throttle;
        if (from > to)
            std::swap(from, to);
        if (from == to)
            flight.cruise_throttle = {0.2, 0.7};
    }

    void obeyRules(FlightNote& note)
    {
        if (note.from > note.to)
            std::swap(note.from, note.to);
    }

    void obeyRules(Limits& limits)
    {
        if (limits.faint_px > limits.bad_px)
            std::swap(limits.faint_px, limits.bad_px);
        if (limits.faint_px == limits.bad_px)
            limits = {.faint_px = 0.1, .bad_px = 0.1 + 1e-9};
    }

    void obeyRules(NamedRecording& recording)
    {
        if (recording.file.empty())
            recording.file = "recordings/pluck 1.csv";
        if (recording.from_s && recording.to_s && *recording.from_s >= *recording.to_s) {
            recording.from_s = 0.125;
            recording.to_s = 7.5;
        }
    }

    void obeyRules(Tune& tune) { tune.saved = drawInt(0, 1) == 0 ? "" : "2024-02-29T23:59:60Z"; }

    void obeyRules(Mounts& mounts)
    {
        const bool drilled = drawInt(0, 1) == 0;
        mounts.stretch = drilled ? std::nullopt : std::optional(drawNumber(0.7, 3.0));
        for (MountPoint& point : mounts.points) {
            point.anchor_mm.reset();
            if (drilled) {
                point.stretch.reset();
                drill(point, freeLength_mm(mounts, point) * drawNumber(0.75, 2.9));
            }
        }
    }

    void drill(MountPoint& point, double length_mm)
    {
        for (double& coordinate : point.bay_mm)
            coordinate *= 0.25;  // so that the hole stays in range
        const double azimuth = 2 * kPi * drawFraction();
        const double rise = kPi * (drawFraction() - 0.5);
        point.anchor_mm = {point.bay_mm[0] + length_mm * std::cos(rise) * std::cos(azimuth),
                           point.bay_mm[1] + length_mm * std::cos(rise) * std::sin(azimuth),
                           point.bay_mm[2] + length_mm * std::sin(rise)};
        point.azimuth_deg = point.elevation_deg = 0.0;  // a file with holes has no angles
    }
};

/// A visitor that looks for extras.
class ExtrasSearch {
public:
    bool found = false;

    void look(const auto& owner)
    {
        found = found || !owner.extras.empty();
        visitMembers(*this, owner);
    }

    void text(const char*, const std::string&, std::size_t) {}
    void choice(const char*, auto) {}
    void curve(const char*, const auto&, CountRange) {}
    void numbers(const auto&) {}
    void object(const char*, const auto& member) { look(member); }
    void list(const char*, const auto& entries, CountRange)
    {
        for (const auto& entry : entries)
            look(entry);
    }
    void keyed(const char* key, const auto& entries, CountRange range)
    {
        list(key, entries, range);
    }
};

template <class Owner>
void distort(Owner& owner, std::mt19937& random, double spread)
{
    std::uniform_real_distribution<double> exponent(-std::log(spread), std::log(spread));
    for (const Field<Owner>& field : fieldsOf<Owner>()) {
        const auto moved = [&](double value) {
            return std::clamp(value * std::exp(exponent(random)), field.min, field.max);
        };
        if (const auto* number = std::get_if<double Owner::*>(&field.member))
            owner.*(*number) = moved(owner.*(*number));
        if (const auto* triple = std::get_if<Triple Owner::*>(&field.member))
            for (double& entry : owner.*(*triple))
                entry = moved(entry);
    }
}

}  // namespace

Setup drawSetup()
{
    Setup setup;
    Stock().draw(setup);
    return setup;
}

Setup drawSetup(std::uint64_t seed)
{
    const auto setups = rc::gen::exec([] { return drawSetup(); });
    return setups(rc::Random(seed), rc::kNominalSize).value();
}

Setup distorted(Setup setup, std::mt19937& random, double spread)
{
    for (Part& part : setup.airframe.parts)
        distort(part, random, spread);
    for (Part& part : setup.bay.parts)
        distort(part, random, spread);
    for (Arm& arm : setup.airframe.arms)
        distort(arm, random, spread);
    for (MountPoint& point : setup.mounts.points)
        distort(point, random, spread);
    distort(setup.airframe.arm, random, spread);
    distort(setup.drive, random, spread);
    distort(setup.drive.motor, random, spread);
    distort(setup.drive.propeller, random, spread);
    distort(setup.camera, random, spread);
    distort(setup.tube, random, spread);
    distort(setup.mounts, random, spread);
    if (setup.mounts.stretch)
        setup.mounts.stretch = std::uniform_real_distribution<double>(0.9, 2.0)(random);
    return setup;
}

bool hasExtras(const Setup& setup)
{
    ExtrasSearch search;
    search.look(setup);
    return search.found;
}

}  // namespace stillbay::test
