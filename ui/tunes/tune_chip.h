// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/verdict.h"

#include <QAbstractButton>

namespace stillbay::ui {

/// A kept tune in a line of text: the hatch of its verdict, its name, its worst wobble and the
/// verdict's word.
class TuneChip final : public QAbstractButton {
    Q_OBJECT
public:
    explicit TuneChip(QWidget* parent = nullptr);

    /// @param figures  "0.35 px, faint"; empty: being worked out
    void display(const QString& name, const QString& figures, Verdict::Kind kind, bool late);
    QString figures() const { return m_figures; }

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString shownName() const;

    QString m_name, m_figures;
    Verdict::Kind m_kind = Verdict::Kind::None;
    bool m_late = false;
};

}  // namespace stillbay::ui
