// SPDX-License-Identifier: MIT
#include "core/base/check.h"
#include "core/presets/presets.h"

#include <cmath>

namespace stillbay {
namespace {

constexpr const char* kMotorPractice = translatable("Common practice, no source");

constexpr MotorPreset kMotors[] = {
    // name; KV, lowest and highest of the class, rpm/V; mΩ; A; g; diameter and height, mm
    {translatable("Stator 18 to 20 mm"), 2800, 2100, 3800, 120, 0.6, 18, 24, 15, kMotorPractice},
    {translatable("Stator 22 mm"), 2100, 1700, 2700, 60, 1.2, 32, 28, 19, kMotorPractice},
    {translatable("Stator 23 mm, tall"), 920, 800, 1050, 100, 0.5, 56, 28, 26, kMotorPractice},
    {translatable("Stator 28 mm, low"), 1350, 1100, 1700, 55, 1.3, 48, 34, 21, kMotorPractice},
    {translatable("Stator 28 mm, tall"), 760, 650, 900, 80, 0.9, 105, 35, 32, kMotorPractice},
    {translatable("Stator 35 mm"), 520, 380, 700, 100, 0.6, 95, 42, 26, kMotorPractice},
    {translatable("Stator 40 mm"), 420, 320, 550, 110, 0.6, 115, 46, 25, kMotorPractice},
};

}  // namespace

std::span<const MotorPreset> motorPresets()
{
    return kMotors;
}

Phrase nameOf(const MotorPreset& preset)
{
    return phrase(preset.name);
}

std::optional<double> kvSpread(const MotorPreset& preset)
{
    if (!preset.lowest_kv_rpm_per_v || !preset.highest_kv_rpm_per_v)
        return {};
    const double width = std::log(*preset.highest_kv_rpm_per_v / *preset.lowest_kv_rpm_per_v);
    return width / std::sqrt(12.0);  // standard deviation of what is spread evenly over a width
}

MotorPreset wound(const MotorPreset& preset, double kv_rpm_per_v)
{
    check(kv_rpm_per_v > 0, "a motor turns with voltage");
    const double ratio = kv_rpm_per_v / preset.kv_rpm_per_v;
    MotorPreset motor = preset;
    motor.kv_rpm_per_v = kv_rpm_per_v;
    motor.lowest_kv_rpm_per_v.reset();
    motor.highest_kv_rpm_per_v.reset();
    motor.resistance_mohm /= ratio * ratio;
    motor.no_load_current_a *= ratio;
    return motor;
}

}  // namespace stillbay
