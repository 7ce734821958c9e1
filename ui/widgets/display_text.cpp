// SPDX-License-Identifier: MIT
#include "ui/widgets/display_text.h"

#include "ui/widgets/plain_number.h"

#include <QCoreApplication>

namespace stillbay::ui {
namespace {

// The translation tools file a sentence under the namespace it stands in: core's, or the window's.
constexpr const char* kContexts[] = {"stillbay", "stillbay::ui"};

QString translated(const char* english)
{
    const QString unchanged = QString::fromUtf8(english);
    for (const char* context : kContexts)
        if (const QString text = QCoreApplication::translate(context, english); text != unchanged)
            return text;
    return unchanged;
}

class WindowLanguage final : public Language {
public:
    std::string pattern(std::string_view english) const override
    {
        return translated(std::string(english).c_str()).toStdString();
    }

    std::string number(const Number& number) const override
    {
        switch (number.form) {
            case Number::Form::Decimals:
                return plainDecimals(number.value, number.digits).toStdString();
            case Number::Form::Significant:
                return plainNumber(number.value, number.digits).toStdString();
            case Number::Form::Exact:
                return exactNumber(number.value).toStdString();
        }
        return {};
    }
};

}  // namespace

QString displayText(const Phrase& phrase)
{
    return QString::fromStdString(format(phrase, WindowLanguage()));
}

QString displayText(const char* literal)
{
    return *literal == '\0' ? QString() : translated(literal);
}

QString withinSentence(const QString& label)
{
    const bool small = QObject::tr("small", "labels inside a sentence: small or as they are") ==
                       QStringLiteral("small");
    return small ? label.toLower() : label;
}

QString capitalised(const QString& text)
{
    return text.left(1).toUpper() + text.mid(1);
}

}  // namespace stillbay::ui
