// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>
#include <qwt_plot_item.h>

#include <vector>

namespace stillbay::ui {

/// What lies at a height of the plot.
struct HeightName {
    double y = 0.0;
    QString text;
    bool strong = false;
};

/// A column at the right edge of the plot that names what lies at which height. Names that would
/// overlap move apart and keep a thin tie to their height.
class NameGutter final : public QwtPlotItem {
public:
    NameGutter(const QString& title, double z);

    void setNames(std::vector<HeightName> names) { m_names = std::move(names); }
    const std::vector<HeightName>& names() const { return m_names; }
    void setColours(const QColor& text, const QColor& quiet, const QColor& ground);
    void setFont(const QFont& font) { m_font = font; }
    void setWidth(double width)
    {
        m_width = width;
    }                            ///< that the plot leaves free [logical pixels]
    double wishedWidth() const;  ///< at which no name is cut

    /// Where the names were drawn last, from the top down.
    const std::vector<QRectF>& labelRects() const { return m_labelRects; }

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    QFont fontOf(const HeightName& name) const;

    std::vector<HeightName> m_names;
    QColor m_text, m_quiet, m_ground;
    QFont m_font;
    double m_width = 0.0;
    mutable std::vector<QRectF> m_labelRects;
};

}  // namespace stillbay::ui
