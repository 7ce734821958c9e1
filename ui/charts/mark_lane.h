// SPDX-License-Identifier: MIT
#pragma once

#include <QFont>
#include <QPen>
#include <QRectF>
#include <QString>
#include <qwt_plot_item.h>

#include <utility>
#include <vector>

namespace stillbay::ui {

/// Something at a place (or over a stretch) of the x axis, with a label.
struct Mark {
    double from = 0.0;
    double to = 0.0;  ///< equal to from: a place
    QString text;
    QPen line;  ///< full height at a place, along the lane over a stretch; NoPen: none
};

/// Marks with their labels side by side in one lane at the top or bottom of the plot; labels that
/// would overlap move apart and keep a thin tie to their place.
class MarkLane final : public QwtPlotItem {
public:
    enum class Edge { Top, Bottom };

    /// @param row  0: the lane at the very edge; 1: the next one towards the middle; …
    MarkLane(const QString& title, Edge edge, double z, int row = 0);

    /// Labels that would hide a curve go to one of these rows of the other edge where they hide
    /// less of curves and of the labels there.
    void setOtherRows(std::vector<int> rows) { m_otherRows = std::move(rows); }
    void setMarks(std::vector<Mark> marks);  ///< rising in their middle
    const std::vector<Mark>& marks() const { return m_marks; }
    void setCaption(const QString& caption) { m_caption = caption; }  ///< left of the first label
    void setColours(const QColor& text, const QColor& ground);
    void setFont(const QFont& font) { m_font = font; }

    double height() const;  ///< of the lane [logical pixels]

    /// Where the labels were drawn last, left to right.
    const std::vector<QRectF>& labelRects() const { return m_labelRects; }

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    void drawCaption(QPainter& painter, const QRectF& firstLabel, const QRectF& canvas) const;
    void drawMark(QPainter& painter, const Mark& mark, double from, double to, const QRectF& label,
                  const QRectF& canvas, bool atTop) const;
    double topOf(const QRectF& canvas, bool atTop, int row) const;  // of a label

    Edge m_edge;
    int m_row;
    std::vector<int> m_otherRows;
    std::vector<Mark> m_marks;
    QColor m_text, m_ground;
    QFont m_font;
    QString m_caption;
    mutable std::vector<QRectF> m_labelRects;
};

}  // namespace stillbay::ui
