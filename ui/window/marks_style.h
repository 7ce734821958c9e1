// SPDX-License-Identifier: MIT
#pragma once

#include <QProxyStyle>

namespace stillbay::ui {

/// Fusion frames check boxes and radio buttons darker than the window, which hides them on a dark
/// desktop; this style gives them a frame that is seen there. On a light one it changes nothing.
class MarksStyle final : public QProxyStyle {
    Q_OBJECT
public:
    using QProxyStyle::QProxyStyle;

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;
};

/// Puts it over the application's style where that is Fusion; other styles frame their own.
void frameMarks();

}  // namespace stillbay::ui
