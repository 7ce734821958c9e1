// SPDX-License-Identifier: MIT
#include "core/setup/strict_json.h"
#include "core/setup/validate.h"
#include "tests/setup/setup_text.h"

#include <chrono>

namespace stillbay {
namespace {

using test::expectStable;
using test::faultOf;
using test::faultOfJson;
using test::sampleJson;
using test::sampleText;

/// A text may be refused with a sentence or be read into a valid, stable setup; nothing else.
void expectCleanAnswer(const std::string& text)
{
    const auto loaded = readSetup(text);
    if (!loaded) {
        const std::string what = english(loaded.error().what);
        EXPECT_FALSE(what.empty());
        EXPECT_EQ(what.find('\n'), std::string::npos);
        EXPECT_LT(what.size() + english(whereText(loaded.error())).size(), 400U);
        EXPECT_EQ(loaded.error().code, Errc::BadInput);
        return;
    }
    EXPECT_TRUE(validate(loaded->setup));
    expectStable(loaded->setup);
}

TEST(HostileText, EveryPrefixOfTheSamples)
{
    for (const char* name : test::kSamples) {
        const std::string text = sampleText(name);
        const std::size_t end = text.find_last_of('}');
        for (std::size_t size = 0; size <= end; ++size)
            ASSERT_FALSE(readSetup(std::string_view(text).substr(0, size))) << name << ' ' << size;
        EXPECT_TRUE(readSetup(std::string_view(text).substr(0, end + 1)));
    }
}

TEST(HostileText, EveryByteOfASetupChangedEightWays)
{
    const std::string text = sampleJson().dump();
    ASSERT_GT(text.size(), 1500U);
    for (std::size_t i = 0; i < text.size(); ++i)
        for (const char replacement : {'\0', ' ', '"', '0', '9', '-', '}', '\xFF'}) {
            std::string changed = text;
            changed[i] = replacement;
            expectCleanAnswer(changed);
        }
}

TEST(HostileText, EveryByteOfASetupLeftOutOrDoubled)
{
    const std::string text = sampleJson("quarry").dump();
    for (std::size_t i = 0; i < text.size(); ++i) {
        expectCleanAnswer(text.substr(0, i) + text.substr(i + 1));
        expectCleanAnswer(text.substr(0, i) + text[i] + text.substr(i));
    }
}

struct BadText {
    const char* name;
    std::string text;
    std::string where;
    std::string what;
};

std::ostream& operator<<(std::ostream& out, const BadText& bad)
{
    return out << bad.name;
}

std::string repeat(std::string_view text, std::size_t times)
{
    std::string result;
    for (std::size_t i = 0; i < times; ++i)
        result += text;
    return result;
}

class BadTexts : public testing::TestWithParam<BadText> {};

TEST_P(BadTexts, AreRefusedWithTheirPlace)
{
    const Error fault = faultOf(GetParam().text);
    EXPECT_EQ(english(whereText(fault)), GetParam().where);
    EXPECT_EQ(english(fault.what), GetParam().what);
}

INSTANTIATE_TEST_SUITE_P(
    Json, BadTexts,
    testing::Values(
        BadText{"Nothing", "", "", "The file is empty"},
        BadText{"Blanks", " \n\t ", "", "The file is empty"},
        BadText{"OnlyByteOrderMark", "\xEF\xBB\xBF", "", "The file is empty"},
        BadText{"Words", "hello world", "line 1, column 1",
                "The file is not JSON: unexpected \"hello\""},
        BadText{"Picture", "\x89PNG\r\n", "line 1, column 1", "The file is not UTF-8 text"},
        BadText{"Utf16", std::string("\xFF\xFE{\0}\0", 6), "line 1, column 1",
                "The file is not UTF-8 text"},
        BadText{"Utf16WithoutMark", std::string("{\0}\0", 4), "line 1, column 2",
                "The file is not UTF-8 text"},
        BadText{"InvalidUtf8", "{\"a\":\n\"é\xC3(\"}", "line 2, column 3",
                "The file is not UTF-8 text"},
        BadText{"NulAfterTheEnd", std::string("{}\0x", 4), "line 1, column 3",
                "The file is not UTF-8 text"},
        BadText{"NotANumber", "{\"a\":\n NaN}", "line 2, column 2",
                "The file holds \"NaN\", which is no number in JSON"},
        BadText{"Infinity", "{\"a\": Infinity}", "line 1, column 7",
                "The file holds \"Infinity\", which is no number in JSON"},
        BadText{"MinusInfinity", "{\"ä\":-Infinity}", "line 1, column 6",
                "The file holds \"-Infinity\", which is no number in JSON"},
        BadText{"TooLarge", "{\"a\": [1, 1e999]}", "line 1, column 11",
                "The file holds the number \"1e999\", which is too large"},
        BadText{"MinusTooLarge", "[-1e400]", "line 1, column 2",
                "The file holds the number \"-1e400\", which is too large"},
        BadText{"HexNumber", "[0x10]", "line 1, column 2",
                "The file is not JSON: unexpected \"0x10\""},
        BadText{"LeadingZero", "[01]", "line 1, column 2",
                "The file is not JSON: unexpected \"01\""},
        BadText{"LeadingPlus", "[+1]", "line 1, column 2",
                "The file is not JSON: unexpected \"+1\""},
        BadText{"DecimalComma", "[1,5,]", "line 1, column 6",
                "The file is not JSON: unexpected \"]\""},
        BadText{"TrailingText", "{} {}", "line 1, column 4",
                "The file is not JSON: unexpected \"{\""},
        BadText{"SingleQuotes", "{'a': 1}", "line 1, column 2",
                "The file is not JSON: unexpected \"'\""},
        BadText{"Comment", "{} // done", "line 1, column 4",
                "The file is not JSON: unexpected \"/\""},
        BadText{"LineBreakInText", "{\"a\": \"x\ny\"}", "line 1, column 9",
                "The file is not JSON: unexpected line break or control character"},
        BadText{"LoneSurrogate", R"({"a": "\uD800"})", "line 1, column 14",
                "The file is not JSON: unexpected \"\"\""},
        BadText{"CutOff", "{\"a\":\n  tru", "line 2, column 6",
                "The file is cut off: its text ends before the last bracket closes"},
        BadText{"CutOffInText", "{\"a", "line 1, column 4",
                "The file is cut off: its text ends before the last bracket closes"},
        BadText{"DuplicateKey", R"({"bay": {"parts": [{}, {"mass_g": 1, "mass_g": 2}]}})",
                "bay.parts[1].mass_g", "Key \"mass_g\" appears twice"},
        BadText{"DuplicateKeyInDisguise", R"({"a": 1, "\u0061": 2})", "a",
                "Key \"a\" appears twice"},
        BadText{"Depth65", repeat("[", 65) + repeat("]", 65), repeat("[0]", 20) + "…",
                "The file nests deeper than 64 levels"},
        BadText{"Depth1025", repeat("{\"a\":", 1025) + "1" + repeat("}", 1025),
                repeat("a.", 30) + "…", "The file nests deeper than 64 levels"},
        BadText{"Depth100000", repeat("[", 100000), repeat("[0]", 20) + "…",
                "The file nests deeper than 64 levels"}),
    [](const auto& text) { return text.param.name; });

TEST(HostileText, DepthWithinTheBoundIsRead)
{
    auto root = sampleJson();
    root["x"] = test::Json::parse(repeat("[", 63) + repeat("]", 63));
    const auto loaded = readSetup(root.dump());
    ASSERT_TRUE(loaded) << english(loaded.error().what);
    expectStable(loaded->setup);
}

TEST(HostileText, SmallAndNegativeZeroNumbersAreNumbers)
{
    auto root = sampleJson();
    root["bay"]["parts"][0]["mass_g"] = 5e-324;
    EXPECT_EQ(english(faultOfJson(root).what), "Mass is 5e-324 g, allowed 0.1 to 20000 g");

    std::string text = sampleJson().dump();
    const std::string key = "\"tilt_down_deg\":";
    text.insert(text.find(key) + key.size(), 1, '-');
    const auto loaded = readSetup(text);
    ASSERT_TRUE(loaded) << english(loaded.error().what);
    EXPECT_EQ(loaded->setup.camera.tilt_down_deg, 0.0);
    EXPECT_EQ(writeSetup(loaded->setup)->find("-0,"), std::string::npos);
}

TEST(HostileText, ByteOrderMarkIsTaken)
{
    EXPECT_TRUE(readSetup("\xEF\xBB\xBF" + sampleText("reedbed")));
}

TEST(HostileText, WindowsLineEndsAreTaken)
{
    std::string text;
    for (const char c : sampleText("reedbed")) {
        if (c == '\n')
            text += '\r';
        text += c;
    }
    EXPECT_TRUE(readSetup(text));
}

TEST(HostileText, HugeTextIsRefusedUnread)
{
    const std::string text = std::string("{\"a\": \"").append(100'000'000, 'x').append("\"}");
    EXPECT_EQ(english(faultOf(text).what),
              "The file is larger than 8 MB, far more than a setup needs");
}

/// `"7":0,`
std::string zeroMember(int key)
{
    return std::string(1, '"').append(std::to_string(key)).append("\":0,");
}

TEST(HostileText, ManyKeysAreRefusedInTime)
{
    std::string text = "{";
    for (int i = 0; text.size() < kMaxJsonBytes - 100; ++i)
        text += zeroMember(i);
    text += "\"z\":0}";
    const auto begin = std::chrono::steady_clock::now();
    EXPECT_EQ(english(faultOf(text).what),
              "Key \"200\" is one too many, allowed up to 200 in an object");
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(5));
}

TEST(HostileText, LargestTextOfWideObjectsIsAnsweredInTime)
{
    std::string wide = "{";
    for (int i = 0; i < 199; ++i)
        wide += zeroMember(i);
    wide += "\"z\":0},";
    std::string text = "[";
    while (text.size() + wide.size() < kMaxJsonBytes)
        text += wide;
    text.back() = ']';
    const auto begin = std::chrono::steady_clock::now();
    EXPECT_NE(english(faultOf(text).what).find("no Stillbay setup"), std::string::npos);
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(30));
}

TEST(HostileText, LongForeignWordsAreCutInMessages)
{
    auto root = sampleJson();
    root["mounts"]["ends"] = std::string(5000, 'x');
    EXPECT_LT(english(faultOfJson(root).what).size(), 200U);
    root = sampleJson();
    root[std::string(5000, 'k') + "\n"] = 1;
    const auto loaded = readSetup(root.dump());
    ASSERT_TRUE(loaded);
    EXPECT_LT(english(loaded->warnings.at(0).text).size(), 200U);
    EXPECT_EQ(english(loaded->warnings.at(0).text).find('\n'), std::string::npos);
}

}  // namespace
}  // namespace stillbay
