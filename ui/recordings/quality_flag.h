// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <QString>
#include <QWidget>

namespace stillbay::ui {

QString qualityName(Quality quality);  ///< "good"

/// A quality as a sign: a disc, a triangle or a square, each with its colour. The word stands
/// beside it.
class QualityFlag final : public QWidget {
    Q_OBJECT
public:
    explicit QualityFlag(QWidget* parent = nullptr);

    void display(Quality quality);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Quality m_quality = Quality::Good;
};

}  // namespace stillbay::ui
