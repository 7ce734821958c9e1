// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>
#include <QTimer>

#include <functional>

namespace stillbay::ui {

/// Writes words at once where none were written lately. While the charts follow a drag frame by
/// frame, nobody reads words that change as often, and to lay them out takes as long as a chart:
/// then they come ten times a second, or once the hand rests, and never two pieces in one frame.
class Paced final : public QObject {
    Q_OBJECT
public:
    enum class Pace {
        TenASecond,  ///< for a few words beside the hand
        AtRest,      ///< for a page that is read
    };

    explicit Paced(Pace pace, std::function<void()> write, QObject* parent = nullptr);

    void ask();                           ///< there is something new to write
    bool isDue() const { return m_due; }  ///< and it has not been written yet

private:
    void run();

    Pace m_pace;
    std::function<void()> m_write;
    QTimer m_pause;  // runs until it may be written again
    bool m_due = false;
};

}  // namespace stillbay::ui
