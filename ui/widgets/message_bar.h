// SPDX-License-Identifier: MIT
#pragma once

#include <QFrame>

class QLabel;

namespace stillbay::ui {

/// A line across the window for what went wrong or should be known; never in the way of work.
class MessageBar final : public QFrame {
    Q_OBJECT
public:
    enum class Kind { Problem, Note };

    explicit MessageBar(QWidget* parent = nullptr);

    void tell(Kind kind, const QString& title, const QString& detail);
    QString text() const;

protected:
    void changeEvent(QEvent* event) override;

private:
    void recolour();

    QLabel* m_title;
    QLabel* m_detail;
    Kind m_kind = Kind::Note;
};

}  // namespace stillbay::ui
