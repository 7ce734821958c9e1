// SPDX-License-Identifier: MIT
#pragma once

#include <QFrame>
#include <QString>

class QLabel;

namespace stillbay::ui {

/// The answer at a glance: a word and a number, with the zone's colour and hatch beside them.
class Verdict final : public QFrame {
    Q_OBJECT
public:
    enum class Kind { None, Clean, Faint, Bad, Failure };

    explicit Verdict(QWidget* parent = nullptr);

    void display(Kind kind, const QString& headline, const QString& detail);
    void setStale(bool stale);
    QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QLabel* m_headline;
    QLabel* m_detail;
    Kind m_kind = Kind::None;
    bool m_stale = false;
};

}  // namespace stillbay::ui
