// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QImage>
#include <qwt_color_map.h>
#include <qwt_interval.h>
#include <qwt_plot_item.h>

#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace stillbay::ui {

/// Densities over an evenly divided area, as colours of a logarithmic scale.
struct DensityPicture {
    std::vector<double> x, y;  ///< middles of columns and rows, rising in even steps
    std::vector<float> value;  ///< above 0, one column after another
    QString title;             ///< of the colour scale, with its unit
    QwtInterval range;         ///< of the colours, both ends above 0

    float at(std::size_t column, std::size_t row) const { return value[column * y.size() + row]; }
    QwtInterval across() const;  ///< with half a step at each end
    QwtInterval up() const;
    std::optional<float> near(double x, double y) const;  ///< none: outside
    std::map<double, double> strongest() const;           ///< y of each column's greatest, by x
};

/// From little to much, logarithmic.
class DensityColourMap final : public QwtColorMap {
public:
    DensityColourMap(const QColor& little, const QColor& much);

    QRgb rgb(const QwtInterval& range, double value) const override;

private:
    QColor m_little, m_much;
};

/// Draws a picture of densities below the curves of its chart.
class DensityItem final : public QwtPlotItem {
public:
    explicit DensityItem(double z);

    void setPicture(std::shared_ptr<const DensityPicture> picture);
    const DensityPicture* picture() const { return m_picture.get(); }
    void setColours(const QColor& little, const QColor& much);

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    void paint();

    std::shared_ptr<const DensityPicture> m_picture;
    QColor m_little, m_much;
    QImage m_image;
};

}  // namespace stillbay::ui
