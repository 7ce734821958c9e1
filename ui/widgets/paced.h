// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>
#include <QTimer>

#include <functional>

namespace stillbay::ui {

/// Writes words at once, and again no more often than ten times a second. While the charts follow a
/// drag frame by frame, nobody reads words that change as often, and to lay them out takes as long
/// as a chart.
class Paced final : public QObject {
    Q_OBJECT
public:
    explicit Paced(std::function<void()> write, QObject* parent = nullptr);

    void ask();                           ///< there is something new to write
    bool isDue() const { return m_due; }  ///< and it has not been written yet

private:
    void run();

    std::function<void()> m_write;
    QTimer m_pause;  // runs until it may be written again
    bool m_due = false;
};

}  // namespace stillbay::ui
