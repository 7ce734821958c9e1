// SPDX-License-Identifier: MIT
#pragma once

#include <QLabel>

namespace stillbay::ui {

/// A wrapped label, hidden at first, for why something was refused.
class ProblemLabel final : public QLabel {
    Q_OBJECT
public:
    explicit ProblemLabel(QWidget* parent = nullptr);

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
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_text;
    Qt::Alignment m_alignment;
};

}  // namespace stillbay::ui
