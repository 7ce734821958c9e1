// SPDX-License-Identifier: MIT
#include "ui/widgets/labels.h"

#include "ui/widgets/colours.h"

#include <QApplication>
#include <QEvent>

namespace stillbay::ui {
namespace {

// Sets the text colour once per change: setting the palette is itself a palette change.
void setTextColour(QLabel& label, const QColor& colour)
{
    if (label.palette().color(QPalette::WindowText) == colour)
        return;
    QPalette palette = label.palette();
    palette.setColor(QPalette::WindowText, colour);
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

}  // namespace stillbay::ui
