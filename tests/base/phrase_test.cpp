// SPDX-License-Identifier: MIT
#include "core/base/result.h"

#include <gtest/gtest.h>

#include <string>

namespace stillbay {
namespace {

// A language with its own patterns and a decimal comma.
class Mirrored final : public Language {
public:
    std::string pattern(std::string_view english) const override
    {
        return english == "%1 of %2" ? "%2: %1" : std::string(english);
    }

    std::string number(const Number& number) const override
    {
        std::string text = english(phrase("%1", number));
        for (char& c : text)
            c = c == '.' ? ',' : c;
        return text;
    }
};

TEST(Phrase, PutsNumbersTextsAndPhrasesInTheirPlaces)
{
    const Phrase inner = phrase("%1 of %2", fixed(2.345, 1), std::string("a 100 % name %1"));
    EXPECT_EQ(english(inner), "2.3 of a 100 % name %1");
    EXPECT_EQ(english(phrase("At %2 %: %1.", inner, rounded(30.0, 3))),
              "At 30 %: 2.3 of a 100 % name %1.");
    EXPECT_EQ(english(phrase("%1 and %3", fixed(1, 0))), "1 and %3");
    EXPECT_EQ(english(Phrase{}), "");
}

// Oracle: the number as typed. Plain digits below 1e15, no "-0", and every bit comes back.
TEST(Phrase, ExactNumbersAreWrittenAsTheyWereTyped)
{
    const auto said = [](double value) {
        return english(phrase("%1", exact(value)));
    };
    EXPECT_EQ(said(180), "180");
    EXPECT_EQ(said(0.7), "0.7");
    EXPECT_EQ(said(100000), "100000");
    EXPECT_EQ(said(-0.0), "0");
    EXPECT_EQ(said(20000.125), "20000.125");
    EXPECT_EQ(said(1e300), "1e+300");
    EXPECT_EQ(said(0.1 + 0.2), "0.30000000000000004");
    EXPECT_EQ(format(phrase("%1", exact(27.5)), Mirrored()), "27,5");
}

TEST(Phrase, VerbatimTextIsNeverLookedInto)
{
    EXPECT_EQ(english(verbatim("100 %1 used up")), "100 %1 used up");
}

TEST(Error, SaysWhereByPathOrPlaceInTheText)
{
    EXPECT_EQ(english(whereText({Errc::BadInput, phrase("what"), "bay.travel_mm"})),
              "bay.travel_mm");
    EXPECT_EQ(english(whereText({Errc::BadInput, phrase("what"), {}, TextPlace{3, 7}})),
              "line 3, column 7");
    EXPECT_EQ(english(whereText({Errc::BadInput, phrase("what"), {}})), "");
}

TEST(Phrase, AnotherLanguageOrdersAndCountsItsOwnWay)
{
    const Phrase said =
        phrase("[%1]", phrase("%1 of %2", fixed(2.345, 1), phrase("%1", fixed(0.25, 2))));
    EXPECT_EQ(format(said, Mirrored()), "[0,25: 2,3]");
    EXPECT_EQ(english(said), "[2.3 of 0.25]");
}

TEST(ListOf, PutsCommasAndOneAnd)
{
    const auto numbers = [](int count) {
        std::vector<Phrase> phrases;
        for (int i = 1; i <= count; ++i)
            phrases.push_back(phrase("%1", fixed(i, 0)));
        return english(listOf(phrases));
    };
    EXPECT_EQ(numbers(0), "");
    EXPECT_EQ(numbers(1), "1");
    EXPECT_EQ(numbers(2), "1 and 2");
    EXPECT_EQ(numbers(4), "1, 2, 3 and 4");
}

}  // namespace
}  // namespace stillbay
