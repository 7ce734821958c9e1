// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/text.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace stillbay::test {

using Json = nlohmann::ordered_json;

inline constexpr const char* kSamples[] = {"reedbed", "saltmarsh", "quarry"};

inline std::string readFile(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary);
    EXPECT_TRUE(file) << path;
    return {std::istreambuf_iterator<char>(file), {}};
}

inline std::string sampleText(const std::string& name)
{
    return readFile(std::filesystem::path(STILLBAY_SAMPLES_DIR) / (name + ".stillbay"));
}

/// A planned craft, to be changed by the test.
inline Json sampleJson(const std::string& name = "reedbed")
{
    return Json::parse(sampleText(name));
}

inline Setup sampleSetup(const std::string& name = "reedbed")
{
    return readSetup(sampleText(name)).value().setup;
}

/// The fault of a text that must not be read.
inline Error faultOf(std::string_view text)
{
    const auto loaded = readSetup(text);
    EXPECT_FALSE(loaded) << "read without a fault: " << text.substr(0, 200);
    return loaded ? Error{} : loaded.error();
}

inline Error faultOfJson(const Json& root)
{
    return faultOf(root.dump());
}

/// Reads a text and expects it back unchanged from saving and loading again.
inline void expectStable(const Setup& setup)
{
    const auto text = writeSetup(setup);
    ASSERT_TRUE(text) << english(text.error().what) << ": " << text.error().where;
    const auto again = readSetup(*text);
    ASSERT_TRUE(again) << english(again.error().what) << ": " << again.error().where << '\n'
                       << *text;
    EXPECT_EQ(again->setup, setup) << *text;
    EXPECT_EQ(writeSetup(again->setup), text);
}

}  // namespace stillbay::test
