// SPDX-License-Identifier: MIT
#include "core/base/phrase.h"

#include "core/base/format.h"

#include <utility>

namespace stillbay {
namespace {

class English final : public Language {
public:
    std::string pattern(std::string_view english) const override { return std::string(english); }

    std::string number(const Number& number) const override
    {
        switch (number.form) {
            case Number::Form::Decimals:
                return formatted("%.*f", number.digits, number.value);
            case Number::Form::Significant:
                return formatted("%.*g", number.digits, number.value);
            case Number::Form::Exact:
                return toText(number.value);
        }
        return {};
    }
};

std::string said(const PhraseArgument& argument, const Language& language)
{
    if (const auto* text = std::get_if<std::string>(&argument.value))
        return *text;
    if (const auto* number = std::get_if<Number>(&argument.value))
        return language.number(*number);
    return format(std::get<Phrase>(argument.value), language);
}

}  // namespace

Phrase verbatim(std::string text)
{
    return {"%1", {std::move(text)}};
}

Phrase listOf(std::vector<Phrase> phrases)
{
    if (phrases.empty())
        return {};
    Phrase list = std::move(phrases.front());
    for (std::size_t i = 1; i < phrases.size(); ++i)
        list = i + 1 == phrases.size() ? phrase("%1 and %2", std::move(list), std::move(phrases[i]))
                                       : phrase("%1, %2", std::move(list), std::move(phrases[i]));
    return list;
}

std::string format(const Phrase& phrase, const Language& language)
{
    const std::string pattern =
        phrase.pattern.empty() ? std::string() : language.pattern(phrase.pattern);
    std::string text;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const bool place = pattern[i] == '%' && i + 1 < pattern.size() && pattern[i + 1] >= '1' &&
                           pattern[i + 1] <= '9';
        const std::size_t which = place ? static_cast<std::size_t>(pattern[i + 1] - '1') : 0;
        if (!place || which >= phrase.arguments.size()) {
            text += pattern[i];
            continue;
        }
        text += said(phrase.arguments[which], language);
        ++i;
    }
    return text;
}

std::string english(const Phrase& phrase)
{
    return format(phrase, English());
}

}  // namespace stillbay
