// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>
#include <functional>

namespace stillbay {

/// What a microphone on a craft hears of rotors that turn at a speed [rev/s]: the blade pass with
/// its multiples, each turn faintly, and the air. Of full scale, at a time [s].
double soundOfRotors(double speed, double blades, double time_s);

/// The film once more with a sound of its own, coded as cameras do.
///
/// @param sound  of full scale, at a time [s]
void addSound(const std::filesystem::path& film, const std::filesystem::path& file,
              const std::function<double(double)>& sound, double seconds);

}  // namespace stillbay
