// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// Sentences that have not chosen their language yet.
namespace stillbay {

/// A number inside a sentence.
struct Number {
    enum class Form {
        Decimals,     ///< so many `digits` behind the point
        Significant,  ///< at most so many `digits`, without trailing zeros
        Exact,        ///< the fewest digits that read back to the same double
    };

    double value = 0.0;
    int digits = 0;
    Form form = Form::Decimals;

    bool operator==(const Number&) const = default;
};

/// With so many decimals.
constexpr Number fixed(double value, int decimals)
{
    return {value, decimals, Number::Form::Decimals};
}

/// With at most so many significant digits, without trailing zeros.
constexpr Number rounded(double value, int digits)
{
    return {value, digits, Number::Form::Significant};
}

/// As it was typed, with the digits of toText().
constexpr Number exact(double value)
{
    return {value, 0, Number::Form::Exact};
}

/// How many.
constexpr Number whole(std::size_t count)
{
    return fixed(static_cast<double>(count), 0);
}

struct PhraseArgument;

/// A pattern in English with places %1 … %9, and what goes there. The command line says it in
/// English; the window looks the pattern up in its language's table.
struct Phrase {
    std::string_view pattern;  ///< a literal; empty: nothing is said
    std::vector<PhraseArgument> arguments;

    bool operator==(const Phrase& other) const;
};

/// Text goes as it is (a name out of the craft's file); a phrase is said in the same language.
struct PhraseArgument {
    std::variant<std::string, Number, Phrase> value;

    PhraseArgument(std::string text) : value(std::move(text)) {}
    PhraseArgument(Number number) : value(number) {}
    PhraseArgument(Phrase phrase) : value(std::move(phrase)) {}

    bool operator==(const PhraseArgument&) const = default;
};

inline bool Phrase::operator==(const Phrase& other) const
{
    return pattern == other.pattern && arguments == other.arguments;
}

/// Makes a phrase; the translation tools find the literal by this function's name.
template <class... Arguments>
Phrase phrase(const char* literal, Arguments... arguments)
{
    return {literal, {PhraseArgument{std::move(arguments)}...}};
}

/// Marks a literal of a table for the translation tools.
constexpr const char* translatable(const char* literal)
{
    return literal;
}

/// What is the same in every language: the system's own words, a path.
Phrase verbatim(std::string text);

/// "a, b and c"; an empty list says nothing.
Phrase listOf(std::vector<Phrase> phrases);

/// How one language says things.
class Language {
public:
    virtual ~Language() = default;
    virtual std::string pattern(std::string_view english) const = 0;
    virtual std::string number(const Number& number) const = 0;

protected:
    Language() = default;
    Language(const Language&) = default;
    Language& operator=(const Language&) = default;
};

/// The sentence in a language. A place without an argument stays as it is written.
std::string format(const Phrase& phrase, const Language& language);

/// The sentence in English, numbers with a decimal point.
std::string english(const Phrase& phrase);

}  // namespace stillbay
