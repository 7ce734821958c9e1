// SPDX-License-Identifier: MIT
#include "core/newcraft/new_craft.h"

#include "core/base/check.h"
#include "core/newcraft/holding.h"
#include "core/newcraft/typical_bay.h"
#include "core/newcraft/typical_drive.h"
#include "core/newcraft/typical_frame.h"
#include "core/presets/presets.h"
#include "core/response/level.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr const char* kNote = translatable(
    "Common practice, no source: follows from what was entered when the craft was begun");

/// The numbers of a setup that answers went into as they are.
class Entered {
public:
    explicit Entered(const CraftAnswers& answers, const Setup& setup)
    {
        const bool placed =
            answers.mount_height_mm && answers.mounts_along_mm && answers.mounts_across_mm;
        for (std::size_t i = 0; i < setup.airframe.arms.size(); ++i) {
            const std::string arm = joinPath("airframe.arms", i);
            add(joinPath(arm, "azimuth_deg"), answers.layout.has_value());
            add(joinPath(arm, "length_mm"), answers.arm_length_mm.has_value());
        }
        add("airframe.arm.width_mm", answers.arm_width_mm.has_value());
        add("airframe.arm.height_mm", answers.arm_height_mm.has_value());
        add("drive.propeller.diameter_in", answers.propeller_diameter_in.has_value());
        add("drive.propeller.pitch_in", answers.propeller_pitch_in.has_value());
        add("drive.propeller.blades", answers.blades.has_value());
        add("drive.motor.kv_rpm_per_v", answers.kv_rpm_per_v.has_value());
        add("drive.battery.cells", answers.cells.has_value());
        add("bay.travel_mm", answers.travel_mm.has_value());
        add("camera.frame_rate_hz", answers.frame_rate_hz.has_value());
        add("camera.exposure_ms", answers.exposure_ms.has_value());
        add("camera.tilt_down_deg", answers.tilt_down_deg.has_value());
        add("mounts.free_length_mm", answers.free_length_mm.has_value());
        add("mounts.stretch", answers.stretch.has_value());
        for (std::size_t i = 0; i < setup.mounts.points.size(); ++i)
            add(joinPath(joinPath("mounts.points", i), "bay_mm"), placed);
    }

    bool has(const std::string& key) const { return m_keys.contains(key); }

private:
    void add(std::string key, bool isEntered)
    {
        if (isEntered)
            m_keys.insert(std::move(key));
    }

    std::set<std::string> m_keys;
};

// In the order of the file, so that a list of them reads like the form.
void tellSources(Setup& setup, const CraftAnswers& answers)
{
    const Entered entered(answers, setup);
    std::vector<Source> sources;
    for (const std::string& key : numbersOf(setup)) {
        if (entered.has(key))
            continue;
        const Source* const known = sourceOf(setup, key);
        sources.push_back(known ? *known
                                : Source{.key = key,
                                         .from = Origin::Typical,
                                         .spread = {},
                                         .note = kNote,
                                         .date = {},
                                         .extras = {}});
    }
    setup.sources = std::move(sources);
}

// What has a place in no single field of the setup.
std::optional<Error> outside(const char* label, std::optional<double> value, const char* unit,
                             const AnswerRange& range, const char* where)
{
    if (!value || (*value >= range.min && *value <= range.max))  // NaN is outside as well
        return {};
    return Error{
        Errc::BadInput,
        outOfRange(label, withUnit(exact(*value), unit), rangeText(range.min, range.max, unit)),
        where};
}

template <class Owner>
std::optional<Error> outside(std::string_view key, std::optional<double> value, const char* where)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (field.key == key)
            return outside(field.label, value, field.unit, {field.min, field.max}, where);
    return {};
}

// Before anything is computed from them: the rest is left to validate().
std::optional<Error> faultOf(const CraftAnswers& a)
{
    for (auto error :
         {outside<Arm>("length_mm", a.arm_length_mm, "airframe.arms[0].length_mm"),
          outside<ArmSection>("width_mm", a.arm_width_mm, "airframe.arm.width_mm"),
          outside<ArmSection>("height_mm", a.arm_height_mm, "airframe.arm.height_mm"),
          outside<Propeller>("diameter_in", a.propeller_diameter_in, "drive.propeller.diameter_in"),
          outside<Propeller>("pitch_in", a.propeller_pitch_in, "drive.propeller.pitch_in"),
          outside<Propeller>("blades", a.blades, "drive.propeller.blades"),
          outside<Motor>("kv_rpm_per_v", a.kv_rpm_per_v, "drive.motor.kv_rpm_per_v"),
          outside<Battery>("cells", a.cells, "drive.battery.cells"),
          outside(translatable("Bay mass"), a.bay_mass_g, "g", kBayMass_g, "bay.parts"),
          outside<Bay>("travel_mm", a.travel_mm, "bay.travel_mm"),
          outside<Camera>("frame_rate_hz", a.frame_rate_hz, "camera.frame_rate_hz"),
          outside<Camera>("exposure_ms", a.exposure_ms, "camera.exposure_ms"),
          outside<Camera>("tilt_down_deg", a.tilt_down_deg, "camera.tilt_down_deg"),
          outside<Mounts>("free_length_mm", a.free_length_mm, "mounts.free_length_mm"),
          outside<Mounts>("stretch", a.stretch, "mounts.stretch"),
          outside<MountPoint>("bay_mm", a.mount_height_mm, "mounts.points[0].bay_mm"),
          outside(translatable("Tubes fore and aft"), a.mounts_along_mm, "mm", kMountSpacing_mm,
                  "mounts.points[0].bay_mm"),
          outside(translatable("Tubes left and right"), a.mounts_across_mm, "mm", kMountSpacing_mm,
                  "mounts.points[0].bay_mm")})
        if (error)
            return error;
    return {};
}

}  // namespace

Result<Setup> newCraft(const CraftAnswers& answers)
{
    if (auto fault = faultOf(answers))
        return tl::unexpected<Error>(*std::move(fault));
    const CraftSize size = sizeOf(answers);
    const PackPreset pack = wiredPack(answers, size);
    Setup setup;
    setup = withFrame(std::move(setup), size, answers);
    setup = withDrive(std::move(setup), size, pack, answers);
    addElectronics(setup);
    setup = withBay(std::move(setup), pack, cameraPresets()[cameraFor(answers, pack)], answers);
    if (!answers.kv_rpm_per_v)
        addThrustMargin(setup);
    setCruiseAroundHover(setup);
    setup = withTubes(std::move(setup), answers);
    tellSources(setup, answers);
    if (auto valid = validate(setup); !valid)
        return tl::unexpected<Error>(std::move(valid.error()));
    return setup;
}

CraftChoices choicesOf(const CraftAnswers& answers, const Setup& setup)
{
    const CraftSize size = sizeOf(answers);
    const auto tubes = tubePresets();
    const auto tube = std::find_if(tubes.begin(), tubes.end(), [&](const TubePreset& preset) {
        return preset.outer_diameter_mm == setup.tube.outer_diameter_mm &&
               preset.bore_mm == setup.tube.bore_mm &&
               preset.hardness_shore_a == setup.tube.hardness_shore_a;
    });
    check(tube != tubes.end(), "new craft: its tube is of the list");
    return {armMaterialFor(answers, size), motorFor(answers, size), packFor(answers, size),
            cameraFor(answers, wiredPack(answers, size)),
            static_cast<std::size_t>(tube - tubes.begin())};
}

std::optional<Phrase> whyNotLevel(const Setup& setup)
{
    const auto levelled = level(setup);
    return levelled && levelled->why ? std::optional(levelled->why->text) : std::nullopt;
}

}  // namespace stillbay
