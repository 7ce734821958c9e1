// SPDX-License-Identifier: MIT
#include "ui/widgets/parse_number.h"

#include <QByteArray>
#include <QByteArrayList>
#include <QChar>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr QChar kArabicPoint(0x066B);
constexpr QChar kArabicThousands(0x066C);
constexpr QChar kTrueMinus(0x2212);
constexpr QChar kApostrophe(0x2019);

bool isSkipped(QChar c)
{
    return c.isSpace() || c == u'\'' || c == kApostrophe || c == kArabicThousands ||
           c.category() == QChar::Other_Format;
}

// The text in ASCII: digits, signs, e, points and commas; none when anything else is in it.
std::optional<QByteArray> toAscii(QStringView text)
{
    QByteArray ascii;
    for (const QChar c : text) {
        if (isSkipped(c))
            continue;
        if (c.isDigit())
            ascii += static_cast<char>('0' + c.digitValue());
        else if (c == kTrueMinus)
            ascii += '-';
        else if (c == kArabicPoint)
            ascii += '.';
        else if (c == u'E')
            ascii += 'e';
        else if (c == u'.' || c == u',' || c == u'-' || c == u'+' || c == u'e')
            ascii += static_cast<char>(c.unicode());
        else
            return std::nullopt;
    }
    return ascii;
}

// Digits as they are grouped in print: the last group of three, the ones before of two or three.
bool isGrouped(const QByteArray& digits, char separator)
{
    const QByteArrayList groups = digits.split(separator);
    for (qsizetype k = 1; k < groups.size(); ++k) {
        const qsizetype length = groups[k].size();
        if (length != 3 && (length != 2 || k == groups.size() - 1))
            return false;
    }
    return true;
}

// The mantissa with a point for its decimal point and nothing between thousands.
std::optional<QByteArray> withoutGroups(QByteArray mantissa)
{
    const qsizetype points = mantissa.count('.');
    const qsizetype commas = mantissa.count(',');
    if (points + commas <= 1)
        return mantissa.replace(',', '.');
    const char last = mantissa.lastIndexOf('.') > mantissa.lastIndexOf(',') ? '.' : ',';
    const char other = last == '.' ? ',' : '.';
    if (points == 0 || commas == 0) {
        if (!isGrouped(mantissa, last))
            return std::nullopt;
        return mantissa.replace(last, "");
    }
    if (mantissa.count(last) > 1 || !isGrouped(mantissa.left(mantissa.indexOf(last)), other))
        return std::nullopt;
    return mantissa.replace(other, "").replace(last, '.');
}

}  // namespace

std::optional<double> parseNumber(QStringView text)
{
    const std::optional<QByteArray> ascii = toAscii(text);
    if (!ascii)
        return std::nullopt;
    const qsizetype e = ascii->indexOf('e');
    const std::optional<QByteArray> mantissa = withoutGroups(e < 0 ? *ascii : ascii->left(e));
    if (!mantissa)
        return std::nullopt;
    bool isNumber = false;
    const double value = (e < 0 ? *mantissa : *mantissa + ascii->mid(e)).toDouble(&isNumber);
    if (!isNumber || !std::isfinite(value))
        return std::nullopt;
    return value;
}

}  // namespace stillbay::ui
