// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

namespace stillbay::ui {

class RecentFiles;

/// A craft that comes with the program.
struct Sample {
    QString title;     ///< the craft's own name
    QString notes;     ///< what it is, in a sentence
    QString resource;  ///< where its text is
};

/// The samples built into the program, by title.
QList<Sample> samples();

/// What the window shows while there is no craft.
class WelcomePage final : public QWidget {
    Q_OBJECT
public:
    explicit WelcomePage(RecentFiles& recent, QWidget* parent = nullptr);

signals:
    void newWanted();
    void openWanted();
    void fileWanted(const QString& path);
    void sampleWanted(const stillbay::ui::Sample& sample);
};

}  // namespace stillbay::ui
