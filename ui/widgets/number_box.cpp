// SPDX-License-Identifier: MIT
#include "ui/widgets/number_box.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStyle>
#include <QStyleOptionSpinBox>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kKeptDecimals = 12;  // what the box can hold
constexpr int kMostShown = 6;      // what it shows of a number with a long tail
constexpr int kTextMargin_px = 6;
constexpr double kSameNumber = 1e-9;  // relative; below the last decimal that is shown

}  // namespace

NumberBox::NumberBox(QWidget* parent) : QDoubleSpinBox(parent)
{
    setDecimals(kKeptDecimals);
    setKeyboardTracking(false);  // one edit per entry, not per key
    setFocusPolicy(Qt::StrongFocus);
    setCorrectionMode(QAbstractSpinBox::CorrectToPreviousValue);
    lineEdit()->setAcceptDrops(false);  // a dropped file is for the window
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    connect(this, &QDoubleSpinBox::valueChanged, this, [this](double value) { m_shown = value; });
}

void NumberBox::setUnit(const QString& unit, bool shown)
{
    m_unit = unit;
    m_lengthUnit = unit == QStringLiteral("mm")   ? std::optional(LengthUnit::Millimetre)
                   : unit == QStringLiteral("in") ? std::optional(LengthUnit::Inch)
                                                  : std::nullopt;
    setSuffix(unit.isEmpty() || !shown ? QString() : QChar::Nbsp + unit);
}

void NumberBox::setNoEditor(bool noEditor)
{
    setReadOnly(noEditor);
    setFrame(!noEditor);
    setFocusPolicy(noEditor ? Qt::NoFocus : Qt::StrongFocus);
}

void NumberBox::setLeastDecimals(int decimals)
{
    m_leastDecimals = decimals;
}

void NumberBox::setWhole(bool whole)
{
    m_whole = whole;
}

void NumberBox::show(double value)
{
    if (m_shown == value && this->value() == value)
        return;
    m_shown = value;
    const QSignalBlocker quiet(this);
    setValue(value);
}

// The text without its unit, even where a unit was pasted in front of the box's own.
QString NumberBox::withoutUnit(const QString& text) const
{
    QString bare = (text.startsWith(prefix()) ? text.sliced(prefix().size()) : text).trimmed();
    while (!m_unit.isEmpty() && bare.endsWith(m_unit))
        bare = bare.chopped(m_unit.size()).trimmed();
    return bare;
}

std::optional<double> NumberBox::typed(const QString& text) const
{
    const QString bare = withoutUnit(text);
    return m_lengthUnit ? parseLength(bare, *m_lengthUnit) : parseNumber(bare);
}

QValidator::State NumberBox::validate(QString& text, int&) const
{
    // Never Invalid: a key that is dropped in silence turns 1x5 into 15.
    return isReadOnly() || reasonAgainst(text).isEmpty() ? QValidator::Acceptable
                                                         : QValidator::Intermediate;
}

QString NumberBox::reasonAgainst(const QString& text) const
{
    const std::optional<double> value = typed(text);
    const QString seen = withoutUnit(text);
    if (!value)
        return tr("“%1” is not a number").arg(seen);
    if (m_whole && *value != std::floor(*value))
        return tr("%1 is not a whole number").arg(seen);
    if (*value < minimum() || *value > maximum())
        return tr("%1 is outside %2 to %3")
            .arg(seen, textFromValue(minimum()), textFromValue(maximum()) + suffix());
    return {};
}

double NumberBox::valueFromText(const QString& text) const
{
    const std::optional<double> value = typed(text);
    if (!value)
        return minimum();  // not reached: validate() comes first
    // The text of the value at hand means that value, however long its tail is.
    if (m_shown && typed(textFromValue(*m_shown)) == value)
        return *m_shown;
    return *value;
}

QString NumberBox::textFromValue(double value) const
{
    QLocale plain = locale();
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    int decimals = m_leastDecimals;
    const double tolerance = kSameNumber * std::max(1.0, std::abs(value));
    const auto rest = [&] {
        const double scale = std::pow(10.0, decimals);
        return std::abs(std::round(value * scale) / scale - value);
    };
    while (decimals < kMostShown && rest() > tolerance)
        ++decimals;
    return plain.toString(value == 0.0 ? 0.0 : value, 'f', decimals);  // never −0
}

void NumberBox::fixup(QString& text) const
{
    emit const_cast<NumberBox*>(this)->refused(reasonAgainst(text));  // the base resets the text
}

// Room for so much text and the unit. The style counts the arrows in, shown or not.
QSize NumberBox::sizeFor(const QString& digits) const
{
    QStyleOptionSpinBox option;
    initStyleOption(&option);
    const int text = fontMetrics().horizontalAdvance(digits + suffix());
    const QSize content(text + kTextMargin_px, lineEdit()->sizeHint().height());
    QSize size = style()->sizeFromContents(QStyle::CT_SpinBox, &option, content, this);
    if (buttonSymbols() == QAbstractSpinBox::NoButtons)
        size.setWidth(content.width() + 2 * style()->pixelMetric(QStyle::PM_SpinBoxFrameWidth));
    return size;
}

QSize NumberBox::sizeHint() const
{
    return sizeFor(QStringLiteral("00000.0"));
}

QSize NumberBox::minimumSizeHint() const
{
    return sizeFor(QStringLiteral("0000"));
}

// While nothing half-typed stands in the box, undo means the craft's undo, not the text's.
bool NumberBox::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && !lineEdit()->isUndoAvailable()) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            key->ignore();
            return true;
        }
    }
    return QDoubleSpinBox::event(event);
}

void NumberBox::wheelEvent(QWheelEvent* event)
{
    if (hasFocus())
        QDoubleSpinBox::wheelEvent(event);
    else
        event->ignore();  // scrolling past must not change a number
}

void NumberBox::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_shown && lineEdit()->isUndoAvailable()) {
        lineEdit()->setText(textFromValue(*m_shown) + suffix());
        return;
    }
    QDoubleSpinBox::keyPressEvent(event);
}

}  // namespace stillbay::ui
