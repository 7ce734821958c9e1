// SPDX-License-Identifier: MIT
#include "ui/widgets/labels.h"

#include "ui/widgets/colours.h"
#include "ui/widgets/display_text.h"

#include <QApplication>
#include <QEvent>
#include <QPainter>

namespace stillbay::ui {
namespace {

// Sets the text colour once per change: setting the palette is itself a palette change.
void setTextColour(QLabel& label, const QColor& colour)
{
    if (label.palette().color(QPalette::Active, QPalette::WindowText) == colour)
        return;
    QPalette palette = label.palette();
    palette.setColor(QPalette::Active, QPalette::WindowText, colour);
    palette.setColor(QPalette::Inactive, QPalette::WindowText, colour);
    label.setPalette(palette);
}

bool changesColours(const QEvent& event)
{
    return event.type() == QEvent::PaletteChange ||
           event.type() == QEvent::ApplicationPaletteChange;
}

}  // namespace

ProblemLabel::ProblemLabel(QWidget* parent) : QLabel(parent)
{
    setWordWrap(true);
    hide();
    recolour();
}

void ProblemLabel::format(const QString& problem)
{
    setText(problem);
    setHidden(problem.isEmpty());
}

void ProblemLabel::refuse(const QString& why)
{
    format(why.isEmpty() ? QString() : tr("Not taken: %1.").arg(why));
}

bool ProblemLabel::display(const Result<void>& edit)
{
    refuse(edit ? QString() : displayText(edit.error().what));
    return edit.has_value();
}

void ProblemLabel::recolour()
{
    setTextColour(*this, problemColour(QApplication::palette()));
}

void ProblemLabel::changeEvent(QEvent* event)
{
    if (changesColours(*event))
        recolour();
    QLabel::changeEvent(event);
}

QuietLabel::QuietLabel(const QString& text, QWidget* parent) : QLabel(text, parent)
{
    setWordWrap(true);
    recolour();
}

void QuietLabel::recolour()
{
    setTextColour(*this, quietColour(QApplication::palette()));
}

void QuietLabel::changeEvent(QEvent* event)
{
    if (changesColours(*event))
        recolour();
    QLabel::changeEvent(event);
}

ElidedLabel::ElidedLabel(Qt::Alignment alignment, QWidget* parent)
    : QWidget(parent), m_alignment(alignment)
{
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
}

void ElidedLabel::setText(const QString& text)
{
    if (text == m_text)
        return;
    m_text = text;
    setToolTip(text);
    update();
}

QSize ElidedLabel::sizeHint() const
{
    return {60, fontMetrics().height()};
}

void ElidedLabel::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setPen(quietColour(QApplication::palette()));
    painter.drawText(rect(), static_cast<int>(m_alignment | Qt::AlignVCenter),
                     fontMetrics().elidedText(m_text, Qt::ElideRight, width()));
}

}  // namespace stillbay::ui
