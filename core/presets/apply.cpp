// SPDX-License-Identifier: MIT
#include "core/presets/apply.h"

#include "core/setup/sources.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <type_traits>
#include <utility>

namespace stillbay {
namespace {

constexpr double kTubeWall_mm = 1.0;  // common practice, no source

/// Fills the numbers of one object of a setup and says where they are from.
class Filling {
public:
    Filling(Setup& setup, std::string_view object, const char* note)
        : m_setup(setup), m_object(object), m_note(note)
    {
    }

    template <class Number>
    void fill(const char* key, Number& number, double value, std::optional<double> spread = {})
    {
        if constexpr (std::is_same_v<Number, int>)
            number = static_cast<int>(value);
        else
            number = value;
        putSource(m_setup, {.key = joinPath(m_object, key),
                            .from = Origin::Typical,
                            .spread = spread,
                            .note = m_note,
                            .date = {},
                            .extras = {}});
    }

    void fill(const char* key, double& number, const Typical& typical)
    {
        fill(key, number, typical.value, typical.spread);
    }

    void empty(const char* key, std::optional<double>& number)
    {
        number.reset();
        dropSource(m_setup, joinPath(m_object, key));
    }

private:
    Setup& m_setup;
    std::string_view m_object;
    const char* m_note;
};

}  // namespace

Setup withArm(Setup setup, const ArmPreset& preset)
{
    ArmSection& arm = setup.airframe.arm;
    Filling filling(setup, "airframe.arm", preset.source);
    filling.fill("density_kg_m3", arm.density_kg_m3, preset.density_kg_m3);
    filling.fill("youngs_modulus_gpa", arm.youngs_modulus_gpa, preset.youngs_modulus_gpa);
    filling.fill("shear_modulus_gpa", arm.shear_modulus_gpa, preset.shear_modulus_gpa);
    filling.fill("loss_factor", arm.loss_factor, preset.loss_factor);
    if (preset.isTube && !arm.wall_mm && 2 * kTubeWall_mm < std::min(arm.width_mm, arm.height_mm))
        filling.fill("wall_mm", arm.wall_mm, kTubeWall_mm);
    return setup;
}

Setup withMotor(Setup setup, const MotorPreset& preset)
{
    Motor& motor = setup.drive.motor;
    Filling filling(setup, "drive.motor", preset.source);
    filling.fill("kv_rpm_per_v", motor.kv_rpm_per_v, preset.kv_rpm_per_v, kvSpread(preset));
    filling.fill("resistance_mohm", motor.resistance_mohm, preset.resistance_mohm);
    filling.fill("no_load_current_a", motor.no_load_current_a, preset.no_load_current_a);
    filling.fill("mass_g", motor.mass_g, preset.mass_g);
    filling.fill("diameter_mm", motor.diameter_mm, preset.diameter_mm);
    filling.fill("height_mm", motor.height_mm, preset.height_mm);
    return setup;
}

Setup withPropeller(Setup setup, const PropellerPreset& preset)
{
    Propeller& propeller = setup.drive.propeller;
    Filling filling(setup, "drive.propeller", preset.source);
    filling.fill("diameter_in", propeller.diameter_in, preset.diameter_in);
    filling.fill("pitch_in", propeller.pitch_in, preset.pitch_in);
    filling.fill("blades", propeller.blades, preset.blades);
    filling.fill("mass_g", propeller.mass_g, preset.mass_g);
    filling.empty("thrust_coefficient", propeller.thrust_coefficient);
    filling.empty("power_coefficient", propeller.power_coefficient);
    filling.empty("inertia_g_mm2", propeller.inertia_g_mm2);
    return setup;
}

Setup withPack(Setup setup, const PackPreset& preset)
{
    Battery& battery = setup.drive.battery;
    Filling filling(setup, "drive.battery", preset.source);
    filling.fill("cells", battery.cells, preset.cells);
    filling.fill("full_v_per_cell", battery.full_v_per_cell, preset.full_v_per_cell);
    filling.fill("empty_v_per_cell", battery.empty_v_per_cell, preset.empty_v_per_cell);
    filling.fill("resistance_mohm", battery.resistance_mohm, preset.resistance_mohm);
    return setup;
}

Setup withCamera(Setup setup, const CameraPreset& preset)
{
    Camera& camera = setup.camera;
    Filling filling(setup, "camera", preset.source);
    filling.fill("width_px", camera.width_px, preset.width_px);
    filling.fill("height_px", camera.height_px, preset.height_px);
    filling.fill("horizontal_fov_deg", camera.horizontal_fov_deg, preset.horizontal_fov_deg);
    filling.fill("frame_rate_hz", camera.frame_rate_hz, preset.frame_rate_hz);
    filling.fill("readout_ms", camera.readout_ms, preset.readout_ms);
    camera.lens = preset.lens;
    const double frame_ms = 1000 / preset.frame_rate_hz;
    if (preset.exposure_ms)
        filling.fill("exposure_ms", camera.exposure_ms, *preset.exposure_ms);
    else if (camera.exposure_ms > frame_ms)
        filling.fill("exposure_ms", camera.exposure_ms, frame_ms);
    return setup;
}

Setup withTube(Setup setup, const TubePreset& preset)
{
    TubeKind& tube = setup.tube;
    Filling filling(setup, "tube", preset.source);
    filling.fill("outer_diameter_mm", tube.outer_diameter_mm, preset.outer_diameter_mm);
    filling.fill("bore_mm", tube.bore_mm, preset.bore_mm);
    filling.fill("hardness_shore_a", tube.hardness_shore_a, preset.hardness_shore_a);
    filling.empty("youngs_modulus_mpa", tube.youngs_modulus_mpa);
    filling.fill("dynamic_ratio", tube.dynamic_ratio, preset.dynamic_ratio);
    filling.fill("loss_factor", tube.loss_factor, preset.loss_factor);
    filling.fill("density_kg_m3", tube.density_kg_m3, preset.density_kg_m3);
    filling.fill("max_stretch", tube.max_stretch, preset.max_stretch);
    return setup;
}

Part packPart(const PackPreset& preset, std::string name, const Triple& centre_mm)
{
    return {.name = std::move(name),
            .mass_g = preset.mass_g,
            .centre_mm = centre_mm,
            .size_mm = preset.size_mm,
            .extras = {}};
}

Part cameraPart(const CameraPreset& preset, std::string name, const Triple& centre_mm)
{
    return {.name = std::move(name),
            .mass_g = preset.mass_g,
            .centre_mm = centre_mm,
            .size_mm = preset.size_mm,
            .extras = {}};
}

const char* pathOf(PartList list)
{
    return list == PartList::Airframe ? "airframe.parts" : "bay.parts";
}

std::vector<Part>& partsOf(Setup& setup, PartList list)
{
    return list == PartList::Airframe ? setup.airframe.parts : setup.bay.parts;
}

Setup withPart(Setup setup, PartList list, Part part, const char* source)
{
    std::vector<Part>& parts = partsOf(setup, list);
    parts.push_back(std::move(part));
    const std::string path = joinPath(pathOf(list), parts.size() - 1);
    for (const char* key : {"mass_g", "size_mm"})
        putSource(setup, {.key = joinPath(path, key),
                          .from = Origin::Typical,
                          .spread = {},
                          .note = source,
                          .date = {},
                          .extras = {}});
    return setup;
}

Setup withPlate(Setup setup, PartList list, Part plate, const ArmPreset& material)
{
    std::vector<Part>& parts = partsOf(setup, list);
    parts.push_back(std::move(plate));
    putSource(setup, {.key = joinPath(joinPath(pathOf(list), parts.size() - 1), "mass_g"),
                      .from = Origin::Estimated,
                      .spread = material.density_kg_m3.spread,
                      .note = material.source,
                      .date = {},
                      .extras = {}});
    return setup;
}

}  // namespace stillbay
