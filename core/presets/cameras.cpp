// SPDX-License-Identifier: MIT
#include "core/presets/presets.h"

#include <optional>

namespace stillbay {
namespace {

constexpr Lens kStraight = Lens::Rectilinear;
constexpr Lens kFisheye = Lens::Fisheye;
constexpr std::optional<double> kAsChosen = {};

constexpr const char* kPractice =
    translatable("Common practice, no source; readout of consumer cameras is 5 to 30 ms");
constexpr const char* kWithLens = translatable(
    "Common practice, no source; readout of consumer cameras is 5 to 30 ms, the view is that of a "
    "lens two thirds as long as the sensor is wide");
constexpr const char* kAllAtOnce =
    translatable("Common practice, no source; all rows are read at once");
constexpr const char* kUncooled = translatable(
    "Common practice, no source; an uncooled sensor reads its rows through most of the frame and "
    "warms up over about 10 ms, which stands for the exposure");

// clang-format off
constexpr CameraPreset kCameras[] = {
    // name; picture, px; frame rate, Hz; readout, ms; view, °; lens; exposure, ms; mass, g; size, mm
    {translatable("Board camera, wide view"), 1920, 1080, 60, 12, 120, kFisheye, kAsChosen, 12, {22, 20, 20}, kPractice},
    {translatable("Small action camera"), 3840, 2160, 30, 16, 80, kStraight, kAsChosen, 40, {25, 55, 30}, kPractice},
    {translatable("Action camera, straight view"), 3840, 2160, 60, 14, 85, kStraight, kAsChosen, 150, {35, 70, 50}, kPractice},
    {translatable("Action camera, wide fisheye view"), 3840, 2160, 60, 14, 120, kFisheye, kAsChosen, 150, {35, 70, 50}, kPractice},
    {translatable("Compact camera"), 3840, 2160, 30, 25, 72, kStraight, kAsChosen, 300, {45, 105, 60}, kPractice},
    {translatable("Mirrorless camera, sensor 24 mm wide"), 3840, 2160, 30, 24, 73.7, kStraight, kAsChosen, 550, {105, 120, 70}, kWithLens},
    {translatable("Mirrorless camera, sensor 36 mm wide"), 3840, 2160, 30, 22, 73.7, kStraight, kAsChosen, 950, {130, 130, 95}, kWithLens},
    {translatable("Mapping camera, global shutter"), 2448, 2048, 15, 0, 60, kStraight, kAsChosen, 120, {60, 40, 40}, kAllAtOnce},
    {translatable("Thermal camera"), 640, 512, 30, 30, 45, kStraight, 10, 100, {50, 45, 45}, kUncooled},
};
// clang-format on

}  // namespace

std::span<const CameraPreset> cameraPresets()
{
    return kCameras;
}

Phrase nameOf(const CameraPreset& preset)
{
    return phrase(preset.name);
}

}  // namespace stillbay
