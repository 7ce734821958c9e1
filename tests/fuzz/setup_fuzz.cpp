// SPDX-License-Identifier: MIT
#include "core/setup/text.h"
#include "tests/fuzz/demand.h"

#include <cstddef>
#include <cstdint>

/// Any bytes are refused with a sentence, or read into a setup that saves and loads unchanged.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const auto loaded =
        stillbay::readSetup({reinterpret_cast<const char*>(data), size});  // bytes as text
    if (!loaded) {
        demandReason(english(loaded.error().what));
        return 0;
    }
    const auto text = stillbay::writeSetup(loaded->setup);
    demand(text.has_value(), "what was read can be written");
    const auto again = stillbay::readSetup(*text);
    demand(again && again->setup == loaded->setup, "what was written reads back alike");
    return 0;
}
