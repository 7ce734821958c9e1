// SPDX-License-Identifier: MIT
#include "ui/tunes/tune_chip.h"

#include "ui/widgets/colours.h"
#include "ui/widgets/grade_flag.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOption>

namespace stillbay::ui {
namespace {

constexpr int kFlagWidth = 12, kPadding = 6;
constexpr int kLongestName = 26;  // characters

}  // namespace

TuneChip::TuneChip(QWidget* parent) : QAbstractButton(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAttribute(Qt::WA_Hover);
}

void TuneChip::display(const QString& name, const QString& figures, Verdict::Kind kind, bool late)
{
    m_name = name;
    m_figures = figures;
    m_kind = kind;
    m_late = late;
    setAccessibleName(figures.isEmpty() ? tr("Kept tune %1").arg(name)
                                        : tr("Kept tune %1: %2").arg(name, figures));
    setToolTip(tr("%1\n%2\nClick to open the list of kept tunes at this one.")
                   .arg(name, figures.isEmpty() ? tr("being worked out") : figures));
    updateGeometry();
    update();
}

QString TuneChip::shownName() const
{
    return fontMetrics().elidedText(m_name, Qt::ElideRight,
                                    kLongestName * fontMetrics().averageCharWidth());
}

QSize TuneChip::sizeHint() const
{
    const QFontMetrics metrics = fontMetrics();
    int width = kFlagWidth + 3 * kPadding + metrics.horizontalAdvance(shownName());
    if (!m_figures.isEmpty())
        width += kPadding + metrics.horizontalAdvance(m_figures);
    return {width, metrics.height() + 6};
}

void TuneChip::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool isLit = underMouse() || isDown();
    painter.setPen(QPen(palette().color(isLit ? QPalette::Text : QPalette::Mid), 1.0));
    painter.setBrush(isDown() ? palette().midlight() : palette().base());
    const QRectF frame = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.drawRoundedRect(frame, 4.0, 4.0);
    if (!m_figures.isEmpty()) {
        painter.setOpacity(m_late ? 0.4 : 1.0);
        drawGradeFlag(painter, QRectF(2.0, 2.0, kFlagWidth, height() - 4.0), m_kind, palette());
        painter.setOpacity(1.0);
    }
    const QRect text = rect().adjusted(kFlagWidth + kPadding, 0, -kPadding, 0);
    const QString name = shownName();
    painter.setPen(palette().color(QPalette::Text));
    painter.drawText(text, Qt::AlignLeft | Qt::AlignVCenter, name);
    painter.setPen(m_late ? palette().color(QPalette::Disabled, QPalette::Text)
                          : quietColour(palette()));
    painter.drawText(text.adjusted(fontMetrics().horizontalAdvance(name) + kPadding, 0, 0, 0),
                     Qt::AlignLeft | Qt::AlignVCenter, m_figures);
    if (hasFocus()) {
        QStyleOptionFocusRect option;
        option.initFrom(this);
        option.rect = rect().adjusted(2, 2, -2, -2);
        option.backgroundColor = palette().color(QPalette::Base);
        style()->drawPrimitive(QStyle::PE_FrameFocusRect, &option, &painter, this);
    }
}

}  // namespace stillbay::ui
