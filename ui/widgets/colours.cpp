// SPDX-License-Identifier: MIT
#include "ui/widgets/colours.h"

#include <cmath>

namespace stillbay::ui {

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() <
           palette.color(QPalette::WindowText).lightness();
}

QColor mixed(const QColor& a, const QColor& b, double share)
{
    const auto mix = [share](int from, int to) {
        return static_cast<int>(std::lround(from + share * (to - from)));
    };
    return {mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())};
}

QColor problemColour(const QPalette& palette)
{
    return isDark(palette) ? QColor(0xFF, 0xA0, 0x7A) : QColor(0xA8, 0x32, 0x00);
}

QColor quietColour(const QPalette& palette)
{
    return isDark(palette) ? QColor(0xAE, 0xB4, 0xBA) : QColor(0x55, 0x5B, 0x61);
}

}  // namespace stillbay::ui
