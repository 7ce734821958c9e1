// SPDX-License-Identifier: MIT
#include "ui/widgets/parse_number.h"

#include <QByteArray>
#include <QByteArrayList>
#include <QChar>
#include <QRegularExpression>
#include <QString>

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

// "4½" written out: "4 1/2".
QString withPlainFractions(QStringView text)
{
    constexpr QChar kFractionSlash(0x2044);
    QString plain;
    for (const QChar c : text) {
        if (c.decompositionTag() == QChar::Fraction)
            plain += u' ' + c.decomposition();
        else
            plain += c;
    }
    return plain.replace(kFractionSlash, u'/');
}

std::optional<double> parseFraction(const QString& text)
{
    static const QRegularExpression kPattern(
        QStringLiteral("^\\s*([-+\u2212]?)\\s*(?:(\\d+)[\\s-]+)?(\\d+)\\s*/\\s*(\\d+)\\s*$"),
        QRegularExpression::UseUnicodePropertiesOption);
    const QRegularExpressionMatch match = kPattern.match(text);
    if (!match.hasMatch())
        return std::nullopt;
    const auto part = [&match](int index) {
        const QString digits = match.captured(index);
        return digits.isEmpty() ? std::optional(0.0) : parseNumber(digits);
    };
    const std::optional<double> all = part(2), above = part(3), below = part(4);
    if (!all || !above || !below || *below == 0)
        return std::nullopt;
    const double value = *all + *above / *below;
    const QString sign = match.captured(1);
    return sign.isEmpty() || sign == u'+' ? value : -value;
}

struct SpelledUnit {
    const char16_t* spelling;
    double length_mm;
};

constexpr double kInch_mm = 25.4;

// A longer spelling before one that ends it.
constexpr SpelledUnit kSpelledUnits[] = {{u"mm", 1.0},
                                         {u"cm", 10.0},
                                         {u"m", 1000.0},
                                         {u"inches", kInch_mm},
                                         {u"inch", kInch_mm},
                                         {u"in", kInch_mm},
                                         {u"in.", kInch_mm},
                                         {u"zoll", kInch_mm},
                                         {u"\"", kInch_mm},
                                         {u"''", kInch_mm},
                                         {u"\u2033", kInch_mm},
                                         {u"\u201D", kInch_mm},
                                         {u"\u2032\u2032", kInch_mm}};

double unitLength_mm(LengthUnit unit)
{
    return unit == LengthUnit::Inch ? kInch_mm : 1.0;
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

std::optional<double> parseLength(QStringView text, LengthUnit unit)
{
    QString number = withPlainFractions(text).trimmed();
    double given_mm = unitLength_mm(unit);
    for (const SpelledUnit& spelled : kSpelledUnits) {
        const QString spelling = QString::fromUtf16(spelled.spelling);
        if (!number.endsWith(spelling, Qt::CaseInsensitive))
            continue;
        number = number.chopped(spelling.size()).trimmed();
        given_mm = spelled.length_mm;
        break;
    }
    const std::optional<double> value =
        number.contains(u'/') ? parseFraction(number) : parseNumber(number);
    if (!value || given_mm == unitLength_mm(unit))
        return value;
    return std::round(1e9 * *value * given_mm / unitLength_mm(unit)) / 1e9;
}

}  // namespace stillbay::ui
