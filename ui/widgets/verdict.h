// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"

#include <QFrame>
#include <QString>

class QHBoxLayout;
class QLabel;

namespace stillbay::ui {

/// The answer at a glance: a word and a number, with the zone's colour and hatch beside them.
class Verdict final : public QFrame {
    Q_OBJECT
public:
    enum class Kind { None, Clean, Faint, Bad, Failure };

    static Kind kindOf(Grade grade);
    /// The worst of safety, feasibility and wobble: clean only where no constraint is violated.
    static Kind kindOf(const Status& status);

    explicit Verdict(QWidget* parent = nullptr);

    void display(Kind kind, const QString& headline, const QString& detail);
    /// Puts it beside the words, in the same frame, and reserves less height for the headline: a
    /// wide verdict breaks no line.
    void addAside(QWidget* widget);
    void setStale(bool stale);
    Kind kind() const { return m_kind; }
    QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QHBoxLayout* m_row;
    QLabel* m_headline;
    QLabel* m_detail;
    Kind m_kind = Kind::None;
    bool m_stale = false;
};

}  // namespace stillbay::ui
