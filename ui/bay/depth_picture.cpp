// SPDX-License-Identifier: MIT
#include "ui/bay/depth_picture.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr float kSame_mm = 1e-3F;  // of two faces that lie in one plane the first is seen
constexpr float kEdge_mm = 0.05F;
constexpr double kLeastArea_px = 1e-3;

// All four channels times share / 255, two at a time.
QRgb scaled(QRgb pixel, QRgb share)
{
    constexpr QRgb kPair = 0x00FF00FF, kHalf = 0x00800080;
    const auto times = [share](QRgb pair) {
        const QRgb product = pair * share;
        return (product + ((product >> 8) & kPair) + kHalf) >> 8;
    };
    return (times(pixel & kPair) & kPair) | ((times((pixel >> 8) & kPair) & kPair) << 8);
}

}  // namespace

// The memory is kept: to ask for it anew costs more than the drawing.
void DepthPicture::begin(const QSize& size_px)
{
    m_width = std::max(1, size_px.width());
    m_height = std::max(1, size_px.height());
    if (m_image.size() != QSize(m_width, m_height))
        m_image = QImage(m_width, m_height, QImage::Format_ARGB32_Premultiplied);
    m_image.fill(Qt::transparent);
    m_near.assign(at(0, m_height), -std::numeric_limits<float>::infinity());
}

// Every pixel whose middle lies in the face, with how near the face is there: in a parallel
// projection that is linear in the place.
template <class Act>
void DepthPicture::eachPixel(std::span<const DrawnCorner> face, const Act& act)
{
    if (face.size() < 3)
        return;
    double nx = 0.0, ny = 0.0, nz = 0.0, top = face[0].y, bottom = top;
    for (std::size_t k = 0; k < face.size(); ++k) {
        const DrawnCorner &a = face[k], &b = face[(k + 1) % face.size()];
        nx += (a.y - b.y) * (a.near + b.near);
        ny += (a.near - b.near) * (a.x + b.x);
        nz += (a.x - b.x) * (a.y + b.y);
        top = std::min(top, a.y);
        bottom = std::max(bottom, a.y);
    }
    if (!(std::abs(nz) > kLeastArea_px))
        return;
    const double perX = -nx / nz, perY = -ny / nz;
    const auto pixel = [](double place, int most) {
        return static_cast<int>(std::clamp(std::ceil(place - 0.5), 0.0, static_cast<double>(most)));
    };
    const int lastRow = pixel(bottom, m_height);
    for (int y = pixel(top, m_height); y < lastRow; ++y) {
        const double middle = y + 0.5;
        double left = std::numeric_limits<double>::max(), right = -left;
        for (std::size_t k = 0; k < face.size(); ++k) {
            const DrawnCorner &a = face[k], &b = face[(k + 1) % face.size()];
            if ((a.y <= middle) == (b.y <= middle))
                continue;
            const double x = a.x + (middle - a.y) / (b.y - a.y) * (b.x - a.x);
            left = std::min(left, x);
            right = std::max(right, x);
        }
        if (!(left < right))
            continue;
        const int from = pixel(left, m_width), to = pixel(right, m_width);
        auto* const row = reinterpret_cast<QRgb*>(m_image.scanLine(y));
        float* const near = m_near.data() + at(0, y);
        const double start = face[0].near + perY * (middle - face[0].y) - perX * face[0].x;
        for (int x = from; x < to; ++x)
            act(row[x], near[x], static_cast<float>(start + perX * (x + 0.5)));
    }
}

void DepthPicture::fill(std::span<const DrawnCorner> face, const QColor& colour)
{
    const QRgb opaque = colour.rgb();
    eachPixel(face, [opaque](QRgb& pixel, float& nearest, float near) {
        if (near > nearest + kSame_mm) {
            pixel = opaque;
            nearest = near;
        }
    });
}

void DepthPicture::glaze(std::span<const DrawnCorner> face, const QColor& colour)
{
    const QRgb tint = qPremultiply(colour.rgba());
    const QRgb rest = 255U - static_cast<QRgb>(colour.alpha());
    eachPixel(face, [tint, rest](QRgb& pixel, float& nearest, float near) {
        if (near > nearest + kSame_mm)
            pixel = tint + scaled(pixel, rest);
    });
}

bool DepthPicture::hides(const DrawnCorner& place) const
{
    const int x = static_cast<int>(std::floor(place.x)), y = static_cast<int>(std::floor(place.y));
    if (x < 1 || y < 1 || x + 1 >= m_width || y + 1 >= m_height)
        return false;
    const float limit = static_cast<float>(place.near) + kEdge_mm;
    for (int row = y - 1; row <= y + 1; ++row)
        for (int column = x - 1; column <= x + 1; ++column)
            if (!(m_near[at(column, row)] > limit))
                return false;
    return true;
}

}  // namespace stillbay::ui
