// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <QLabel>

namespace stillbay::ui {

/// A wrapped label beside what was tried: the one way to tell that it was refused, and why. Hidden
/// while there is nothing to tell.
class ProblemLabel final : public QLabel {
    Q_OBJECT
public:
    explicit ProblemLabel(QWidget* parent = nullptr);

    void format(const QString& problem);  ///< whole sentences; empty: nothing
    void refuse(const QString& why);      ///< "Not taken: why."; empty: nothing
    /// Tells why an edit was refused, or nothing where it was not.
    ///
    /// @return whether it was taken
    bool display(const Result<void>& edit);

protected:
    void changeEvent(QEvent* event) override;

private:
    void recolour();
};

/// A wrapped label for side notes.
class QuietLabel final : public QLabel {
    Q_OBJECT
public:
    explicit QuietLabel(const QString& text = {}, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;

private:
    void recolour();
};

/// One line of a side note, cut with an ellipsis where there is no room; whole in its tool tip.
class ElidedLabel final : public QWidget {
    Q_OBJECT
public:
    explicit ElidedLabel(Qt::Alignment alignment, QWidget* parent = nullptr);

    void setText(const QString& text);
    const QString& text() const { return m_text; }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_text;
    Qt::Alignment m_alignment;
};

}  // namespace stillbay::ui
