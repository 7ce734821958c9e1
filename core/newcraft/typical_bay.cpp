// SPDX-License-Identifier: MIT
#include "core/newcraft/typical_bay.h"

#include "core/presets/apply.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stillbay {
namespace {

constexpr double kCameraShare = 0.22;  // of the bay's weight
constexpr double kCameraPerPack = 0.3;
constexpr double kTrayShare = 0.11;  // of the bay's weight
constexpr double kLeastTray = 0.05, kMostTray = 0.35;
constexpr double kTray_mm = 4.0;
constexpr double kGap_mm = 5.0;  // between battery and camera, and beside them

// For people who film: rows that are read in turn, a straight view, a picture of today.
bool isUsual(const CameraPreset& camera)
{
    return camera.readout_ms > 0 && camera.lens == Lens::Rectilinear && camera.width_px >= 3840;
}

double wholeGrams(double mass_g)
{
    return mass_g < 20 ? std::round(10 * mass_g) / 10 : std::round(mass_g);
}

// Masses of battery, camera and tray.
Triple sharesOf(double pack_g, double camera_g, std::optional<double> bay_mass_g)
{
    if (!bay_mass_g) {
        const double tray_g = wholeGrams(kTrayShare / (1 - kTrayShare) * (pack_g + camera_g));
        return {wholeGrams(pack_g), wholeGrams(camera_g), tray_g};
    }
    // What battery and camera leave is the tray's where a tray can weigh that.
    const double rest = (*bay_mass_g - pack_g - camera_g) / *bay_mass_g;
    const double scale = rest >= kLeastTray && rest <= kMostTray
                             ? 1.0
                             : (1 - kTrayShare) * *bay_mass_g / (pack_g + camera_g);
    const double battery_g = wholeGrams(scale * pack_g), film_g = wholeGrams(scale * camera_g);
    return {battery_g, film_g, *bay_mass_g - battery_g - film_g};
}

// As dense as before.
Triple scaled(const Triple& size_mm, double massRatio)
{
    const double factor = std::cbrt(massRatio);
    Triple result{};
    std::transform(size_mm.begin(), size_mm.end(), result.begin(),
                   [&](double side) { return std::max(1.0, std::round(side * factor)); });
    return result;
}

double toHalf(double value)
{
    return std::round(2 * value) / 2;
}

}  // namespace

std::size_t cameraFor(const CraftAnswers& answers, const PackPreset& pack)
{
    if (answers.camera)
        return *answers.camera;
    const double mass_g =
        answers.bay_mass_g ? kCameraShare * *answers.bay_mass_g : kCameraPerPack * pack.mass_g;
    const auto cameras = cameraPresets();
    const auto unlike = [&](const CameraPreset& camera) {
        return std::abs(std::log(camera.mass_g / mass_g)) + (isUsual(camera) ? 0.0 : 1000.0);
    };
    const auto found = std::min_element(
        cameras.begin(), cameras.end(),
        [&](const CameraPreset& a, const CameraPreset& b) { return unlike(a) < unlike(b); });
    return static_cast<std::size_t>(found - cameras.begin());
}

Setup withBay(Setup setup, const PackPreset& pack, const CameraPreset& camera,
              const CraftAnswers& answers)
{
    const Triple mass_g = sharesOf(pack.mass_g, camera.mass_g, answers.bay_mass_g);
    const Triple battery_mm = scaled(pack.size_mm, mass_g[0] / pack.mass_g);
    const Triple film_mm = scaled(camera.size_mm, mass_g[1] / camera.mass_g);
    const double span_mm = battery_mm[0] + kGap_mm + film_mm[0];
    const double width_mm = std::max(battery_mm[1], film_mm[1]) + 2 * kGap_mm;

    setup.bay.travel_mm = answers.travel_mm.value_or(setup.bay.travel_mm);
    const double plates_mm = setup.airframe.parts.front().size_mm[2];
    const double tray_mm = -std::round(plates_mm / 2 + setup.bay.travel_mm + kTray_mm);
    const double under_mm = tray_mm - kTray_mm / 2;
    // Battery behind, camera in front, tray over both; then all of it moved under the middle.
    const double battery = 0.0, film = battery_mm[0] / 2 + kGap_mm + film_mm[0] / 2,
                 tray = (span_mm - battery_mm[0]) / 2;
    const double mass = mass_g[0] + mass_g[1] + mass_g[2];
    const double middle = (mass_g[0] * battery + mass_g[1] * film + mass_g[2] * tray) / mass;
    const auto part = [](const char* name, double grams, const Triple& centre_mm,
                         const Triple& size_mm) {
        return Part{.name = name,
                    .mass_g = grams,
                    .centre_mm = centre_mm,
                    .size_mm = size_mm,
                    .extras = {}};
    };
    setup.bay.parts = {
        part("battery", mass_g[0],
             {toHalf(battery - middle), 0, toHalf(under_mm - battery_mm[2] / 2)}, battery_mm),
        part("camera", mass_g[1], {toHalf(film - middle), 0, toHalf(under_mm - film_mm[2] / 2)},
             film_mm),
        part("tray", mass_g[2], {toHalf(tray - middle), 0, tray_mm},
             {span_mm, width_mm, kTray_mm})};

    setup.camera.exposure_ms = 2.0;
    setup = withCamera(std::move(setup), camera);
    const Part& body = setup.bay.parts[1];
    setup.camera.centre_mm = {body.centre_mm[0] + body.size_mm[0] / 2, 0, body.centre_mm[2]};
    setup.camera.frame_rate_hz = answers.frame_rate_hz.value_or(setup.camera.frame_rate_hz);
    setup.camera.tilt_down_deg = answers.tilt_down_deg.value_or(0.0);
    const double frame_ms = 1000 / setup.camera.frame_rate_hz;
    const double shortened_ms = std::floor(95 * frame_ms) / 100;
    if (setup.camera.readout_ms > frame_ms)
        setup.camera.readout_ms = shortened_ms;
    setup.camera.exposure_ms = answers.exposure_ms.value_or(
        setup.camera.exposure_ms > frame_ms ? shortened_ms : setup.camera.exposure_ms);
    return setup;
}

}  // namespace stillbay
