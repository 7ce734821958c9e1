// SPDX-License-Identifier: MIT
#pragma once

#include "ui/sheet/build_sheet.h"

#include <QObject>
#include <QSizeF>
#include <QTextObjectInterface>

namespace stillbay::ui {

/// The wobble's chart as a character of the sheet's text.
class ChartObject final : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)
public:
    ChartObject(const BuildSheet& sheet, const QSizeF& size_mm, double dotsPerMm, QObject* parent);

    QSizeF intrinsicSize(QTextDocument* document, int place, const QTextFormat& format) override;
    void drawObject(QPainter* painter, const QRectF& rect, QTextDocument* document, int place,
                    const QTextFormat& format) override;

private:
    const BuildSheet& m_sheet;
    QSizeF m_size_mm;
    double m_dotsPerMm;
};

}  // namespace stillbay::ui
