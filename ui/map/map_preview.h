// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <QWidget>

class QLabel;

namespace stillbay::ui {

class SparkLine;

/// How the design that is pointed at on the map would fly: verdict, worst wobble, how the bay
/// rests, and its wobble over the throttle. Of one height, whatever it shows.
class MapPreview final : public QWidget {
    Q_OBJECT
public:
    explicit MapPreview(QWidget* parent = nullptr);

    void clear();
    void showDue(const QString& design);
    void display(const QString& design, const Limits& limits, const Result<TuneFigures>& figures);
    QString text() const;

private:
    void write(const QString& design, const QStringList& lines);

    QLabel* m_text;
    SparkLine* m_curve;
};

}  // namespace stillbay::ui
