// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/presets/presets.h"
#include "tests/setup/page_table.h"
#include "tests/setup/setup_text.h"

#include <map>
#include <vector>

namespace stillbay {
namespace {

const std::filesystem::path kPage = std::filesystem::path(STILLBAY_DOCS_DIR) / "presets.md";

std::string text(const Typical& typical)
{
    return toText(typical.value) +
           (typical.spread ? " ± " + formatted("%.3g", 100 * *typical.spread) + " %" : "");
}

std::string text(double value)
{
    return toText(value);
}

std::string text(const std::string& words)
{
    return words;
}

std::string rounded(double value)
{
    return formatted("%.3g", value / 1000);
}

std::string text(const Triple& size_mm)
{
    return toText(size_mm[0]) + " × " + toText(size_mm[1]) + " × " + toText(size_mm[2]);
}

std::string row(const auto&... cells)
{
    std::string line = "|";
    ((line += ' ' + text(cells) + " |"), ...);
    return line + '\n';
}

std::string headed(const std::vector<std::string>& columns)
{
    std::string head = "|", rule = "|";
    for (const std::string& column : columns) {
        head += ' ' + column + " |";
        rule += " --- |";
    }
    return head + '\n' + rule + '\n';
}

std::string name(const auto& preset)
{
    return english(nameOf(preset));
}

// Each source once, where there are several with what it is the source of.
std::string sources(const auto& presets)
{
    std::vector<std::string> order;
    std::map<std::string, std::string> names;
    for (const auto& preset : presets) {
        std::string& list = names[preset.source];
        if (list.empty())
            order.emplace_back(preset.source);
        list += (list.empty() ? "" : "; ") + name(preset);
    }
    std::string lines = "\n";
    for (const std::string& source : order)
        lines += (order.size() == 1 ? "" : "- *" + names[source] + ":* ") + source + ".\n";
    return lines;
}

std::string armTable()
{
    std::string table = headed({"material", "density, kg/m³", "Young's modulus, GPa",
                                "shear modulus, GPa", "loss factor"});
    for (const ArmPreset& arm : armPresets())
        table += row(name(arm), arm.density_kg_m3, arm.youngs_modulus_gpa, arm.shear_modulus_gpa,
                     arm.loss_factor);
    return table + sources(armPresets());
}

std::string motorTable()
{
    std::string table = headed({"motor", "KV, rpm/V", "of the class", "resistance, mΩ",
                                "no-load current, A", "mass, g", "diameter, mm", "height, mm"});
    for (const MotorPreset& motor : motorPresets())
        table += row(name(motor), motor.kv_rpm_per_v,
                     toText(motor.lowest_kv_rpm_per_v.value()) + " to " +
                         toText(motor.highest_kv_rpm_per_v.value()),
                     motor.resistance_mohm, motor.no_load_current_a, motor.mass_g,
                     motor.diameter_mm, motor.height_mm);
    return table + sources(motorPresets());
}

std::string propellerTable()
{
    std::string table = headed({"propeller", "mass, g", "moment of inertia, 1000 g·mm²"});
    for (const PropellerPreset& propeller : propellerPresets())
        table += row(name(propeller), propeller.mass_g, rounded(inertia_g_mm2(propeller)));
    return table + sources(propellerPresets());
}

std::string packTable()
{
    std::string table = headed({"pack", "full to empty, V per cell", "resistance, mΩ", "mass, g",
                                "along × across × high, mm"});
    for (const PackPreset& pack : packPresets())
        table +=
            row(name(pack), toText(pack.full_v_per_cell) + " to " + toText(pack.empty_v_per_cell),
                pack.resistance_mohm, pack.mass_g, pack.size_mm);
    return table + sources(packPresets());
}

std::string cameraTable()
{
    std::string table =
        headed({"camera", "picture, px", "frame rate, Hz", "readout, ms", "exposure, ms",
                "horizontal view, °", "lens", "mass, g", "along × across × high, mm"});
    for (const CameraPreset& camera : cameraPresets())
        table += row(name(camera), toText(camera.width_px) + " × " + toText(camera.height_px),
                     camera.frame_rate_hz, camera.readout_ms,
                     camera.exposure_ms ? toText(*camera.exposure_ms) : std::string("as chosen"),
                     camera.horizontal_fov_deg,
                     std::string(camera.lens == Lens::Fisheye ? "fisheye" : "straight"),
                     camera.mass_g, camera.size_mm);
    return table + sources(cameraPresets());
}

std::string tubeTable()
{
    std::string table =
        headed({"tube", "dynamic ratio", "loss factor", "density, kg/m³", "stretch limit"});
    for (const TubePreset& tube : tubePresets())
        table += row(name(tube), tube.dynamic_ratio, tube.loss_factor, tube.density_kg_m3,
                     tube.max_stretch);
    return table + sources(tubePresets());
}

// The page's tables are made from those of the program. After changing a preset, run this test once
// with STILLBAY_UPDATE_DOCS=1 in the environment: it then writes the page instead of comparing it.
TEST(PresetsPage, ListsEveryPresetWithItsSource)
{
    const std::string written = test::readFile(kPage);
    std::string page = written;
    test::putTable(page, "presets: arms", armTable());
    test::putTable(page, "presets: motors", motorTable());
    test::putTable(page, "presets: propellers", propellerTable());
    test::putTable(page, "presets: packs", packTable());
    test::putTable(page, "presets: cameras", cameraTable());
    test::putTable(page, "presets: tubes", tubeTable());
    test::expectPage(kPage, written, page);
}

}  // namespace
}  // namespace stillbay
