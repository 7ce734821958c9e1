// SPDX-License-Identifier: MIT
#include "tests/calibrate/unknown_craft.h"

#include "core/response/bay_at_rest.h"
#include "tests/assess/crafts.h"

#include <numbers>

namespace stillbay::test {

UnknownCraft unknownCraft(unsigned seed)
{
    PluckDice dice(1000 + seed);
    UnknownCraft unknown;
    unknown.file = seed % 2 == 0 ? sampleCraft("reedbed") : skewCraft(seed);
    Setup& file = unknown.file;
    if (seed % 2 == 0) {
        for (Part& part : file.bay.parts)
            part.mass_g *= dice.between(0.7, 1.3);
        file.mounts.free_length_mm = dice.between(16, 30);
        file.mounts.stretch = dice.between(1.06, 1.25);
        file.tube.youngs_modulus_mpa = dice.between(2.2, 4.5);
    }
    Setup& craft = unknown.truth.craft;
    craft = file;
    craft.tube.youngs_modulus_mpa = *file.tube.youngs_modulus_mpa * dice.between(0.8, 1.25);
    craft.tube.dynamic_ratio = dice.between(1.1, 1.5);
    craft.tube.loss_factor = dice.between(0.05, 0.2);
    const Vector3d centre = makeMountedBay(craft).value().suspension.bay.centre * 1e3;
    unknown.truth.sensor = {
        .mass_g = dice.between(20, 190),
        .centre_mm = {centre.x() + dice.between(-30, 40), centre.y() + dice.between(-20, 20),
                      centre.z() + dice.between(5, 25)},
        .size_mm = {65, 130, 8}};
    unknown.truth.sensor.axes = axesFromText(seed % 3 == 0   ? "x:y:z"
                                             : seed % 3 == 1 ? "-y:x:z"
                                                             : "z:x:y")
                                    .value();
    unknown.withAxes = seed % 4 != 3;
    const double far_mm = 0.06 * craft.mounts.free_length_mm;
    unknown.truth.plucks = {{.shift_mm = {far_mm, 0, 0}},
                            {.shift_mm = {0, far_mm, 0}},
                            {.shift_mm = {0, 0, -far_mm}},
                            {.turn_deg = {0, 0, 1.5}},
                            {.turn_deg = {1.0, 1.0, 0}}};
    unknown.truth.seed = seed;
    return unknown;
}

std::vector<HungMass> hungOn(const Setup& craft, unsigned seed)
{
    PluckDice dice(9000 + seed);
    const double D = craft.tube.outer_diameter_mm, d = craft.tube.bore_mm;
    const double area_mm2 = std::numbers::pi / 4 * (D * D - d * d);
    std::vector<HungMass> masses;
    for (const double stretch : {1.1, 1.2, 1.3}) {
        const double force =
            *craft.tube.youngs_modulus_mpa / 3 * area_mm2 * (stretch - 1 / (stretch * stretch));
        masses.push_back({force / 9.80665e-3, 150, 150 * stretch + dice.between(-0.05, 0.05)});
    }
    return masses;
}

Setup hungFile(const Setup& file, const UnknownCraft& unknown, unsigned seed)
{
    const auto hung = hangTest(file, hungOn(unknown.truth.craft, seed),
                               {.length_mm = 0.1, .mass_g = 0.1, .massShare = 0.001});
    return accept(file, hung.value(), "2026-05-01").value();
}

BaySensor sensorOf(const PluckedBay& plucked, bool withAxes)
{
    const SensorOnBay& sensor = plucked.sensor;
    return {sensor.mass_g, sensor.centre_mm, sensor.size_mm,
            withAxes ? std::optional(sensor.axes) : std::nullopt};
}

}  // namespace stillbay::test
