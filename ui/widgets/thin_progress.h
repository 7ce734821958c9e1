// SPDX-License-Identifier: MIT
#pragma once

#include <QProgressBar>

namespace stillbay::ui {

/// A line that fills while a job in the background runs. It keeps its place when hidden, which it
/// is at first.
class ThinProgress : public QProgressBar {
    Q_OBJECT
public:
    /// @param name  for those who hear the window
    ThinProgress(const QString& name, int height, QWidget* parent = nullptr);

    void advance(int step, int steps);  ///< shows it
};

}  // namespace stillbay::ui
