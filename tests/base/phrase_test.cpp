// SPDX-License-Identifier: MIT
#include "core/base/phrase.h"

#include <gtest/gtest.h>

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
        std::string text = english({"%1", {PhraseArgument{number}}});
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

TEST(Phrase, AnotherLanguageOrdersAndCountsItsOwnWay)
{
    const Phrase said =
        phrase("[%1]", phrase("%1 of %2", fixed(2.345, 1), phrase("%1", fixed(0.25, 2))));
    EXPECT_EQ(say(said, Mirrored()), "[0,25: 2,3]");
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
