// SPDX-License-Identifier: MIT
#include "core/setup/text.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>

/// Any bytes are refused with a sentence, or read into a setup that saves and loads unchanged.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const auto loaded =
        stillbay::readSetup({reinterpret_cast<const char*>(data), size});  // bytes as text
    if (!loaded) {
        if (english(loaded.error().what).empty())
            std::abort();
        return 0;
    }
    const auto text = stillbay::writeSetup(loaded->setup);
    if (!text)
        std::abort();
    const auto again = stillbay::readSetup(*text);
    if (!again || !(again->setup == loaded->setup))
        std::abort();
    return 0;
}
