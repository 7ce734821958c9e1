// SPDX-License-Identifier: MIT
#pragma once

#include <QFrame>

#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;
class QToolButton;

namespace stillbay::ui {

/// A line across the window for what went wrong or should be known; never in the way of work.
class MessageBar final : public QFrame {
    Q_OBJECT
public:
    enum class Kind { Problem, Note };

    /// What the builder may do about it: a button.
    struct Action {
        QString text;
        QString meaning;  ///< for the hover text
        std::function<void()> run;
        bool settles = true;  ///< the message goes away
    };

    /// @param topic  what a screen reader says of the bar; unique in its window
    explicit MessageBar(const QString& topic, QWidget* parent = nullptr);

    void display(Kind kind, const QString& title, const QString& detail,
                 const std::vector<Action>& actions = {});
    QString text() const;

signals:
    void dismissed();  ///< by its own button

protected:
    void changeEvent(QEvent* event) override;

private:
    void recolour();
    void showActions(const std::vector<Action>& actions);

    QLabel* m_title;
    QLabel* m_detail;
    QToolButton* m_close;
    QHBoxLayout* m_buttons;
    Kind m_kind = Kind::Note;
};

}  // namespace stillbay::ui
