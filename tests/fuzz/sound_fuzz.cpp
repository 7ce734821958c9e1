// SPDX-License-Identifier: MIT
#include "tests/fuzz/recording_input.h"

#include <cstddef>
#include <cstdint>

// libvorbis 1.3.7 does not free its own when the headers of an Ogg are broken: 6 kB a file.
// NOLINTNEXTLINE(bugprone-reserved-identifier, readability-identifier-naming)
extern "C" const char* __lsan_default_suppressions()
{
    return "leak:libvorbis.so\n";
}

// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);  // bytes as text
    const bool isSound = bytes.starts_with("RIFF") || bytes.starts_with("RF64") ||
                         bytes.starts_with("fLaC") || bytes.starts_with("OggS");
    if (isSound)
        tryRecording(bytes);
    return 0;
}
