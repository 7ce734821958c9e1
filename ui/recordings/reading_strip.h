// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/of_what.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace stillbay::ui {

class ThinProgress;

/// How far the reading of a recording is, what came of it, and a button that stops it.
class ReadingStrip final : public QWidget {
    Q_OBJECT
public:
    explicit ReadingStrip(OfWhat what, QWidget* parent = nullptr);

    void clear() { showState({}); }
    void showReading(const QString& text);  ///< under way; the button stops it
    void showAgain(const QString& text);    ///< ended without an answer; the button begins it again
    void showStopped() { showAgain(tr("Reading was stopped.")); }
    void showState(const QString& text, const QString& details = {});  ///< over
    void advance(int step, int steps);
    QPushButton& stopButton() { return *m_stop; }

signals:
    void stopWanted();
    void readWanted();  ///< once more

private:
    void offer(const QString& button);

    bool m_isAgain = false;
    QLabel* m_state;
    QPushButton* m_stop;
    ThinProgress* m_progress;
};

}  // namespace stillbay::ui
