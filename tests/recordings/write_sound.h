// SPDX-License-Identifier: MIT
#pragma once

#include "tests/recordings/samples.h"

#include <filesystem>

namespace stillbay::test {

enum class SoundForm { Flac, Wav };

/// 16 bits. Throws where it cannot.
void write(const SampleSound& sound, const std::filesystem::path& file, SoundForm form);

}  // namespace stillbay::test
