// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

class QPushButton;

namespace stillbay::ui {

/// What the tab is for, while nothing of it is chosen.
class EmptyPage final : public QWidget {
    Q_OBJECT
public:
    explicit EmptyPage(QWidget* parent = nullptr);

    void offerSamples(bool areThere);  ///< of this craft

signals:
    void samplesWanted();

private:
    QPushButton* m_samples;
};

}  // namespace stillbay::ui
