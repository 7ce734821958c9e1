// SPDX-License-Identifier: MIT
#include "ui/charts/density_item.h"

#include "ui/widgets/colours.h"

#include <QPainter>
#include <qwt_scale_map.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::size_t kShades = 256;

QwtInterval extentOf(const std::vector<double>& middles)
{
    if (middles.size() < 2)
        return {};
    const double half = 0.5 * (middles[1] - middles[0]);
    return {middles.front() - half, middles.back() + half};
}

double densityShare(const QwtInterval& range, double value)
{
    if (!(value > range.minValue()))
        return 0.0;
    return std::min(
        1.0, std::log(value / range.minValue()) / std::log(range.maxValue() / range.minValue()));
}

}  // namespace

QwtInterval DensityPicture::across() const
{
    return extentOf(x);
}

QwtInterval DensityPicture::up() const
{
    return extentOf(y);
}

std::optional<float> DensityPicture::near(double placeX, double placeY) const
{
    const auto nearestOf = [](const std::vector<double>& middles, double place) {
        const double step = middles.size() > 1 ? middles[1] - middles[0] : 1.0;
        return std::lround((place - middles.front()) / step);
    };
    if (value.empty())
        return {};
    const long column = nearestOf(x, placeX), row = nearestOf(y, placeY);
    if (column < 0 || row < 0 || column >= static_cast<long>(x.size()) ||
        row >= static_cast<long>(y.size()))
        return {};
    return at(static_cast<std::size_t>(column), static_cast<std::size_t>(row));
}

std::map<double, double> DensityPicture::strongest() const
{
    std::map<double, double> places;
    for (std::size_t column = 0; column < x.size(); ++column) {
        std::size_t most = 0;
        for (std::size_t row = 1; row < y.size(); ++row)
            if (at(column, row) > at(column, most))
                most = row;
        places[x[column]] = y[most];
    }
    return places;
}

DensityColourMap::DensityColourMap(const QColor& little, const QColor& much)
    : m_little(little), m_much(much)
{
}

QRgb DensityColourMap::rgb(const QwtInterval& range, double value) const
{
    return mixed(m_little, m_much, densityShare(range, value)).rgb();
}

DensityItem::DensityItem(double z)
{
    setZ(z);
    setItemAttribute(QwtPlotItem::Legend, false);
}

void DensityItem::setPicture(std::shared_ptr<const DensityPicture> picture)
{
    m_picture = std::move(picture);
    setVisible(m_picture != nullptr);
    paint();
}

void DensityItem::setColours(const QColor& little, const QColor& much)
{
    if (m_little == little && m_much == much)
        return;
    m_little = little;
    m_much = much;
    paint();
}

void DensityItem::paint()
{
    m_image = {};
    if (!m_picture || !m_little.isValid())
        return;
    std::array<QRgb, kShades> shades;
    for (std::size_t k = 0; k < kShades; ++k)
        shades[k] = mixed(m_little, m_much, static_cast<double>(k) / (kShades - 1.0)).rgb();
    const auto columns = static_cast<int>(m_picture->x.size()),
               rows = static_cast<int>(m_picture->y.size());
    m_image = QImage(columns, rows, QImage::Format_RGB32);
    for (int row = 0; row < rows; ++row) {
        auto* const line = reinterpret_cast<QRgb*>(m_image.scanLine(rows - 1 - row));
        for (int column = 0; column < columns; ++column) {
            const double share =
                densityShare(m_picture->range,
                             static_cast<double>(m_picture->at(static_cast<std::size_t>(column),
                                                               static_cast<std::size_t>(row))));
            line[column] = shades[static_cast<std::size_t>(share * (kShades - 1.0))];
        }
    }
}

void DensityItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                       const QRectF& canvas) const
{
    if (m_image.isNull())
        return;
    const QwtInterval across = m_picture->across(), up = m_picture->up();
    const QRectF target(QPointF(xMap.transform(across.minValue()), yMap.transform(up.maxValue())),
                        QPointF(xMap.transform(across.maxValue()), yMap.transform(up.minValue())));
    painter->save();
    painter->setClipRect(canvas, Qt::IntersectClip);
    painter->setRenderHint(QPainter::SmoothPixmapTransform);
    painter->drawImage(target, m_image);
    painter->restore();
}

}  // namespace stillbay::ui
