// SPDX-License-Identifier: MIT
#include "ui/window/marks_style.h"

#include <QCheckBox>
#include <QImage>
#include <QPainter>
#include <QRadioButton>
#include <QStyleOptionButton>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

QPalette darkPalette()
{
    QPalette palette(QColor(49, 54, 59), QColor(49, 54, 59));
    palette.setColor(QPalette::WindowText, QColor(239, 240, 241));
    palette.setColor(QPalette::Text, QColor(239, 240, 241));
    palette.setColor(QPalette::Base, QColor(35, 38, 41));
    return palette;
}

double luminance(const QColor& colour)
{
    const auto linear = [](double share) {
        return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b)
{
    const auto [low, high] = std::minmax({luminance(a), luminance(b)});
    return (high + 0.05) / (low + 0.05);
}

// A mark that is not ticked, drawn large on its window's ground.
QImage drawn(const QStyle& style, QStyle::PrimitiveElement mark, const QPalette& palette)
{
    QImage image(40, 40, QImage::Format_RGB32);
    image.fill(palette.color(QPalette::Window));
    QPainter painter(&image);
    QStyleOptionButton option;
    option.palette = palette;
    option.state = QStyle::State_Enabled | QStyle::State_Active | QStyle::State_Off;
    option.rect = QRect(10, 10, 16, 16);
    style.drawPrimitive(mark, &option, &painter);
    return image;
}

// The strongest contrast with the ground along a line from the left into the mark's middle.
double edgeContrast(const QImage& image)
{
    double most = 0.0;
    for (int x = 8; x < 14; ++x)
        most = std::max(most, contrast(image.pixelColor(x, 18), image.pixelColor(0, 0)));
    return most;
}

// Oracle: relative luminance and the 3:1 that controls need, of the Web Content Accessibility
// Guidelines 2.1, 1.4.11, from memory.
TEST(MarksStyle, FramesAreSeenOnADarkDesktop)
{
    const MarksStyle style(QStringLiteral("Fusion"));
    for (const auto mark : {QStyle::PE_IndicatorCheckBox, QStyle::PE_IndicatorRadioButton})
        EXPECT_GE(edgeContrast(drawn(style, mark, darkPalette())), 3.0);
}

TEST(MarksStyle, ALightDesktopStaysAsItIs)
{
    const MarksStyle style(QStringLiteral("Fusion"));
    const QPalette light = style.standardPalette();
    for (const auto mark : {QStyle::PE_IndicatorCheckBox, QStyle::PE_IndicatorRadioButton})
        EXPECT_EQ(drawn(style, mark, light), drawn(*style.baseStyle(), mark, light));
}

}  // namespace
}  // namespace stillbay::ui
