// SPDX-License-Identifier: MIT
#include "ui/widgets/chart_theme.h"

#include "ui/widgets/colours.h"

namespace stillbay::ui {
namespace {

// Okabe & Ito, Color Universal Design, jfly.uni-koeln.de/color
const QColor kOrange(0xE6, 0x9F, 0x00);
const QColor kSkyBlue(0x56, 0xB4, 0xE9);
const QColor kGreen(0x00, 0x9E, 0x73);
const QColor kYellow(0xF0, 0xE4, 0x42);
const QColor kBlue(0x00, 0x72, 0xB2);
const QColor kVermilion(0xD5, 0x5E, 0x00);
const QColor kPurple(0xCC, 0x79, 0xA7);

constexpr double kStaleFade = 0.6;

QColor translucent(QColor colour, int alpha)
{
    colour.setAlpha(alpha);
    return colour;
}

}  // namespace

ChartTheme chartTheme(const QPalette& palette, bool stale)
{
    const bool dark = isDark(palette);
    const QColor canvas = palette.color(QPalette::Base);
    const QColor text = palette.color(QPalette::Text);
    const auto ink = [&](const QColor& colour) {
        return stale ? mixed(colour, canvas, kStaleFade) : colour;
    };
    const auto ground = [&](const QColor& colour, double share) {
        return mixed(canvas, colour, stale ? share * (1.0 - kStaleFade) : share);
    };

    ChartTheme theme;
    theme.canvas = canvas;
    theme.text = ink(text);
    theme.quiet = ink(mixed(text, canvas, 0.35));
    theme.grid = mixed(canvas, text, dark ? 0.16 : 0.12);
    theme.axes = dark
                     ? std::array{ink(kSkyBlue), ink(mixed(kGreen, Qt::white, 0.3)), ink(kOrange)}
                     : std::array{ink(kBlue), ink(mixed(kGreen, Qt::black, 0.15)), ink(kVermilion)};
    theme.clean = ground(kGreen, dark ? 0.14 : 0.08);
    theme.faint = ground(dark ? kOrange : kYellow, dark ? 0.20 : 0.28);
    theme.bad = ground(kVermilion, dark ? 0.36 : 0.28);
    theme.cleanHatch = theme.clean;
    theme.faintHatch = ground(kOrange, dark ? 0.42 : 0.55);
    theme.badHatch = ground(kVermilion, dark ? 0.62 : 0.55);
    theme.mode = ink(mixed(text, canvas, 0.25));
    theme.hover = ink(dark ? kPurple : mixed(kPurple, Qt::black, 0.3));
    theme.cruise = ink(dark ? kSkyBlue : kBlue);
    theme.cursor = ink(mixed(text, canvas, 0.1));
    theme.compared = dark ? std::array{ink(kPurple), ink(kYellow), ink(kSkyBlue)}
                          : std::array{ink(mixed(kPurple, Qt::black, 0.25)),
                                       ink(mixed(kOrange, Qt::black, 0.25)), ink(kBlue)};
    theme.orders = {translucent(kPurple, stale ? 18 : 48), translucent(kSkyBlue, stale ? 18 : 48),
                    translucent(kYellow, stale ? 18 : 48), translucent(kGreen, stale ? 14 : 36)};
    theme.orderHatches = {
        translucent(kPurple, stale ? 50 : 130), translucent(kSkyBlue, stale ? 50 : 130),
        translucent(kOrange, stale ? 50 : 120), translucent(kGreen, stale ? 50 : 110)};
    // Told apart by lightness alone, so that no kind of colour blindness matters; in no colour that
    // the zones have.
    theme.wobble = dark ? std::array{ink({0x45, 0x4B, 0x66}), ink({0x6A, 0x6F, 0xB4}),
                                     ink({0xA3, 0xAB, 0xE8}), ink({0xEC, 0xEE, 0xFF})}
                        : std::array{ink({0xA9, 0xBC, 0xE2}), ink({0x6F, 0x84, 0xC8}),
                                     ink({0x4A, 0x3F, 0x9A}), ink({0x22, 0x10, 0x4C})};
    return theme;
}

}  // namespace stillbay::ui
