// SPDX-License-Identifier: MIT
#include "tests/fuzz/recording_input.h"

#include <cstddef>
#include <cstdint>

// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);  // bytes as text
    const bool isSound = bytes.starts_with("RIFF") || bytes.starts_with("RF64") ||
                         bytes.starts_with("fLaC") || bytes.starts_with("OggS");
    if (!isSound)
        tryRecording(bytes);
    return 0;
}
