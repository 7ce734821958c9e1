// SPDX-License-Identifier: MIT
#include "ui/window/marks_style.h"

#include "ui/widgets/colours.h"

#include <QApplication>
#include <QPainter>
#include <QStyleOption>

namespace stillbay::ui {
namespace {

constexpr double kGroundShare = 0.45;   // of the ground in the frame's colour: 3:1 against it
constexpr double kDisabledShare = 0.7;  // quieter

}  // namespace

void MarksStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const
{
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    const bool isBox = element == PE_IndicatorCheckBox;
    if ((!isBox && element != PE_IndicatorRadioButton) || !isDark(option->palette))
        return;
    if (option->state.testFlag(State_HasFocus) && option->state.testFlag(State_KeyboardFocusChange))
        return;  // the style's own frame tells where the focus is
    const bool isEnabled = option->state.testFlag(State_Enabled);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing, !isBox);
    painter->setPen(mixed(option->palette.color(QPalette::Active, QPalette::WindowText),
                          option->palette.color(QPalette::Window),
                          isEnabled ? kGroundShare : kDisabledShare));
    painter->setBrush(Qt::NoBrush);
    const QRectF frame = QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5);
    if (isBox)
        painter->drawRect(frame);
    else
        painter->drawEllipse(frame);
    painter->restore();
}

void frameMarks()
{
    const QString name = QApplication::style()->name();
    if (name.compare(QLatin1String("fusion"), Qt::CaseInsensitive) == 0)
        QApplication::setStyle(new MarksStyle(name));
}

}  // namespace stillbay::ui
