// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/film_read.h"

#include <QWidget>

namespace stillbay::ui {

/// One frame of a film, and beside it how its rows stand against a straight line, drawn larger.
class FilmFrame final : public QWidget {
    Q_OBJECT
public:
    explicit FilmFrame(QWidget* parent = nullptr);

    /// @param cameraWidth  in whose pixels lengths are told
    /// @param largest_px   of the film, of any frame's rows: all frames are drawn to one scale
    void setStill(const FilmStill& still, unsigned filmWidth, double cameraWidth,
                  double largest_px);
    void clear();
    /// What is drawn, in words; for those who hear the window too.
    QString text() const;
    int gain() const { return m_gain; }  ///< rows are drawn so many times further apart

    QSize sizeHint() const override { return {480, 200}; }
    QSize minimumSizeHint() const override { return {240, 90}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Places {
        QRectF picture, rows;
        double scale = 0.0;  // of the widget's pixels for one of the film's
    };
    Places places() const;
    void chooseGain();
    void drawRows(QPainter& painter, const Places& at) const;
    void drawPlumbLine(QPainter& painter, const Places& at) const;

    FilmStill m_still;
    unsigned m_filmWidth = 0;
    double m_cameraWidth = 0.0;
    double m_largest_px = 0.0;
    int m_gain = 10;
};

}  // namespace stillbay::ui
