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

}  // namespace stillbay::ui
