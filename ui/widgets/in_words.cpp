// SPDX-License-Identifier: MIT
#include "ui/widgets/in_words.h"

#include "ui/widgets/plain_number.h"

#include <QCoreApplication>

namespace stillbay::ui {
namespace {

// The translation tools file core's sentences under its namespace.
constexpr const char* kContext = "stillbay";

class WindowLanguage final : public Language {
public:
    std::string pattern(std::string_view english) const override
    {
        return QCoreApplication::translate(kContext, std::string(english).c_str()).toStdString();
    }

    std::string number(const Number& number) const override
    {
        return (number.significant ? plainNumber(number.value, number.digits)
                                   : plainDecimals(number.value, number.digits))
            .toStdString();
    }
};

}  // namespace

QString inWords(const Phrase& phrase)
{
    return QString::fromStdString(say(phrase, WindowLanguage()));
}

QString inWords(const char* literal)
{
    return QCoreApplication::translate(kContext, literal);
}

}  // namespace stillbay::ui
