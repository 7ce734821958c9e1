// SPDX-License-Identifier: MIT
#include "ui/widgets/number_box.h"

#include "ui/widgets/parse_number.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <QWheelEvent>
#include <gtest/gtest.h>

#include <memory>
#include <optional>

namespace stillbay::ui {
namespace {

struct Typed {
    const char* keys;
    double value;
};

// What the keys say, in every language of the desktop.
constexpr Typed kTyped[] = {
    {"1.5", 1.5},        {"1,5", 1.5},        {"1e3", 1000.0},    {"-0.5", -0.5}, {"-0,25", -0.25},
    {"2.5e-1", 0.25},    {" 12 ", 12.0},      {"1234.5", 1234.5}, {"+3", 3.0},    {".5", 0.5},
    {"1,234.5", 1234.5}, {"1.234,5", 1234.5}, {"1'234", 1234.0}};

constexpr const char* kLocales[] = {"C", "en_US", "de_DE", "fr_FR", "ar_EG", "de_CH", "tr_TR"};

class NumberBoxInLocale : public testing::TestWithParam<const char*> {
protected:
    NumberBoxInLocale()
    {
        box.setLocale(QLocale(QString::fromLatin1(GetParam())));
        box.setRange(-1e4, 1e4);
        box.setUnit(QStringLiteral("mm"));
        box.show(7.0);
    }

    void type(const char* keys)
    {
        box.selectAll();
        QTest::keyClicks(&box, QString::fromLatin1(keys));
        QTest::keyClick(&box, Qt::Key_Return);
    }

    NumberBox box;
};

TEST_P(NumberBoxInLocale, TakesTypedNumbersAtTheirValue)
{
    for (const Typed& typed : kTyped) {
        box.show(7.0);
        type(typed.keys);
        EXPECT_EQ(box.value(), typed.value) << typed.keys;
    }
}

TEST_P(NumberBoxInLocale, ShowsANumberThatReadsBackTheSame)
{
    for (const double value : {0.5, -1234.5, 0.000125, 9999.75, 3.0}) {
        box.show(value);
        EXPECT_EQ(parseNumber(box.cleanText()), std::optional(value)) << qPrintable(box.text());
    }
}

INSTANTIATE_TEST_SUITE_P(Locales, NumberBoxInLocale, testing::ValuesIn(kLocales));

TEST(ParseNumber, UnderstandsPastedThousandsOfAllKinds)
{
    const struct {
        const char16_t* text;
        std::optional<double> value;
    } cases[] = {{u"1,234,567", 1234567.0},
                 {u"1.234.567", 1234567.0},
                 {u"1 234 567,25", 1234567.25},
                 {u"1\u202f234,5", 1234.5},
                 {u"1\u2019234.5", 1234.5},
                 {u"12,34,567.5", 1234567.5},
                 {u"\u0661\u066c\u0662\u0663\u0664\u066b\u0665", 1234.5},  // Arabic digits
                 {u"\u22125", -5.0},
                 {u"1.2.3", std::nullopt},
                 {u"1,23.4,5", std::nullopt},
                 {u"", std::nullopt},
                 {u"-", std::nullopt},
                 {u"1e", std::nullopt},
                 {u"1x5", std::nullopt},
                 {u"nan", std::nullopt},
                 {u"inf", std::nullopt},
                 {u"1e999", std::nullopt}};
    for (const auto& c : cases)
        EXPECT_EQ(parseNumber(c.text), c.value) << qPrintable(QString::fromUtf16(c.text));
}

// Oracle: an inch is 25.4 mm; a third of one in ten digits by hand.
TEST(ParseLength, UnderstandsFractionsAndTheOtherUnit)
{
    constexpr auto mm = LengthUnit::Millimetre;
    constexpr auto in = LengthUnit::Inch;
    const struct {
        const char16_t* text;
        LengthUnit unit;
        std::optional<double> value;
    } cases[] = {{u"8", mm, 8.0},
                 {u"0,5 in", mm, 12.7},
                 {u"1/2 in", mm, 12.7},
                 {u"½″", mm, 12.7},
                 {u"1/3 inch", mm, 8.466666667},
                 {u"4½", in, 4.5},
                 {u"4 1/2", in, 4.5},
                 {u"4-1/2 Zoll", in, 4.5},
                 {u"-1 1/2", in, -1.5},
                 {u"\u22121 1/2", in, -1.5},
                 {u"254 mm", in, 10.0},
                 {u"25.4 cm", in, 10.0},
                 {u"2.5 cm", mm, 25.0},
                 {u"0.19 m", mm, 190.0},
                 {u"1/0", in, std::nullopt},
                 {u"1/2/3", in, std::nullopt},
                 {u"1 2 1/2", in, std::nullopt},
                 {u"/2", in, std::nullopt},
                 {u"in", mm, std::nullopt},
                 {u"5 ft", mm, std::nullopt},
                 {u"", mm, std::nullopt}};
    for (const auto& c : cases)
        EXPECT_EQ(parseLength(c.text, c.unit), c.value) << qPrintable(QString::fromUtf16(c.text));
}

struct RefusingBox : testing::Test {
    RefusingBox()
    {
        box.setRange(1.0, 500.0);
        box.setUnit(QStringLiteral("mm"));
        box.show(20.0);
        QObject::connect(&box, &NumberBox::refused, [this](const QString& text) { reason = text; });
        QObject::connect(&box, &NumberBox::valueChanged, [this](double) { ++edits; });
    }

    void type(const char* keys)
    {
        box.selectAll();
        QTest::keyClicks(&box, QString::fromLatin1(keys));
        QTest::keyClick(&box, Qt::Key_Return);
    }

    NumberBox box;
    QString reason;
    int edits = 0;
};

TEST_F(RefusingBox, KeepsTheOldValueAndSaysWhy)
{
    type("501");
    EXPECT_EQ(box.value(), 20.0);
    EXPECT_EQ(reason, QStringLiteral("501 is outside 1 to 500\u00a0mm"));
    type("1x5");
    EXPECT_EQ(box.value(), 20.0);
    EXPECT_EQ(reason, QStringLiteral("“1x5” is not a number"));
    EXPECT_EQ(edits, 0);
    EXPECT_EQ(box.text(), QStringLiteral("20\u00a0mm"));
}

TEST_F(RefusingBox, TakesOnlyWholeNumbersWhereOnlyTheyMakeSense)
{
    box.setWhole(true);
    type("2.5");
    EXPECT_EQ(box.value(), 20.0);
    EXPECT_EQ(reason, QStringLiteral("2.5 is not a whole number"));
    type("3");
    EXPECT_EQ(box.value(), 3.0);
}

TEST_F(RefusingBox, EntryIsOneEditAndShowingIsNone)
{
    type("123.25");
    EXPECT_EQ(edits, 1);
    box.show(44.0);
    EXPECT_EQ(edits, 1);
    EXPECT_EQ(box.text(), QStringLiteral("44\u00a0mm"));
}

TEST_F(RefusingBox, EnterOnALongNumberDoesNotCutItsTail)
{
    box.show(17.391304347826);
    QTest::keyClick(&box, Qt::Key_Return);
    box.selectAll();
    QTest::keyClicks(&box, box.cleanText());
    QTest::keyClick(&box, Qt::Key_Return);
    EXPECT_EQ(box.value(), 17.391304347826);
    EXPECT_EQ(edits, 0);
}

TEST_F(RefusingBox, PastedUnitIsTaken)
{
    box.findChild<QLineEdit*>()->setText(QStringLiteral("42 mm\u00a0mm"));
    QTest::keyClick(&box, Qt::Key_Return);
    EXPECT_EQ(box.value(), 42.0);
}

TEST_F(RefusingBox, WheelOverAnUnfocusedBoxChangesNothing)
{
    QWheelEvent wheel({5, 5}, {5, 5}, {}, {0, 120}, Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase,
                      false);
    QApplication::sendEvent(&box, &wheel);
    EXPECT_EQ(box.value(), 20.0);
    EXPECT_FALSE(wheel.isAccepted());
}

}  // namespace
}  // namespace stillbay::ui
