// SPDX-License-Identifier: MIT
#include "tests/clip/sound_files.h"

#include "tests/clip/clip_files.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <numbers>

namespace stillbay {

double soundOfRotors(double speed, double blades, double time_s)
{
    constexpr std::array<double, 4> kBladePass{0.1, 0.05, 0.03, 0.02};
    constexpr double kTurn = 0.01, kAir = 0.02;
    const double turns = 2 * std::numbers::pi * speed * time_s;
    double sound = kTurn * std::sin(turns + 0.4);
    for (std::size_t h = 0; h < kBladePass.size(); ++h)
        sound += kBladePass[h] *
                 std::sin(static_cast<double>(h + 1) * blades * turns + static_cast<double>(h));
    // Noise that is the same at the same time: the fraction of a large sine.
    const double wild = 43758.5453 * std::sin(12.9898 * 1e3 * time_s);
    return sound + kAir * (2 * (wild - std::floor(wild)) - 1);
}

void addSound(const std::filesystem::path& film, const std::filesystem::path& file,
              const std::function<double(double)>& sound, double seconds)
{
    constexpr int kRate = 44100;
    const std::filesystem::path raw = file.string() + ".raw";
    {
        std::ofstream out(raw, std::ios::binary);
        for (int k = 0; k < static_cast<int>(kRate * seconds); ++k) {
            const auto value = static_cast<std::int16_t>(32767 * sound(k / double{kRate}));
            out.put(static_cast<char>(value & 0xff)).put(static_cast<char>(value >> 8));
        }
    }
    makeClip(file,
             {"-i", "file:" + film.string(), "-f", "s16le", "-ar", std::to_string(kRate), "-ac",
              "1", "-i", "file:" + raw.string(), "-c:v", "copy", "-c:a", "aac", "-b:a", "96k"});
    std::filesystem::remove(raw);
}

}  // namespace stillbay
