// SPDX-License-Identifier: MIT
#pragma once

#include <QDoubleSpinBox>
#include <QString>

#include <optional>

namespace stillbay::ui {

/// A spin box that never changes a number behind the builder's back: point and comma both work,
/// nothing that is typed vanishes, a number out of range is refused with a reason instead of being
/// bent into it, and all digits of the value are kept and shown.
class NumberBox final : public QDoubleSpinBox {
    Q_OBJECT
public:
    explicit NumberBox(QWidget* parent = nullptr);

    void setUnit(const QString& unit);    ///< shown behind the number
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
    QString withoutUnit(const QString& text) const;
    std::optional<double> typed(const QString& text) const;
    QString reasonAgainst(const QString& text) const;

    QString m_unit;
    int m_leastDecimals = 0;
    bool m_whole = false;
    std::optional<double> m_shown;
};

}  // namespace stillbay::ui
