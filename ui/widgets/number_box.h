// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/parse_number.h"

#include <QDoubleSpinBox>
#include <QString>

#include <optional>

namespace stillbay::ui {

/// A spin box that never changes a number behind the builder's back: point and comma both work,
/// nothing that is typed vanishes, a number out of range is refused with a reason instead of being
/// bent into it, and all digits of the value are kept and shown. Where the unit is a millimetre or
/// an inch, a length may be typed in the other one, and as a fraction (parseLength()). While it is
/// read only it is no editor: Tab passes it, and nothing in it is refused.
class NumberBox final : public QDoubleSpinBox {
    Q_OBJECT
public:
    explicit NumberBox(QWidget* parent = nullptr);

    /// What the number is in, and whether that is shown behind it.
    void setUnit(const QString& unit, bool shown = true);
    void setNoEditor(bool noEditor);
    void setLeastDecimals(int decimals);  ///< shown even when they are zeros
    void setWhole(bool whole);            ///< takes whole numbers only

    /// Shows a value without reporting it as an edit.
    void show(double value);
    using QDoubleSpinBox::show;

    QValidator::State validate(QString& text, int& position) const override;
    double valueFromText(const QString& text) const override;
    QString textFromValue(double value) const override;
    void fixup(QString& text) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    /// What was typed is not taken; the old value stays.
    void refused(const QString& reason);

protected:
    bool event(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QSize sizeFor(const QString& digits) const;
    QString withoutUnit(const QString& text) const;
    std::optional<double> typed(const QString& text) const;
    QString reasonAgainst(const QString& text) const;

    QString m_unit;
    std::optional<LengthUnit> m_lengthUnit;
    int m_leastDecimals = 0;
    bool m_whole = false;
    std::optional<double> m_shown;
};

}  // namespace stillbay::ui
