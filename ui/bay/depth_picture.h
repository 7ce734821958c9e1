// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QImage>
#include <QSize>

#include <span>
#include <vector>

namespace stillbay::ui {

/// A corner as it is drawn.
struct DrawnCorner {
    double x = 0.0, y = 0.0;  ///< [device pixels]
    double near = 0.0;        ///< towards the viewer [mm]
};

/// A picture of flat faces in which the nearer hides the farther, pixel by pixel, so that faces
/// may cut through each other.
class DepthPicture {
public:
    void begin(const QSize& size_px);  ///< anew: transparent

    /// @param face  convex; without area it leaves no trace
    void fill(std::span<const DrawnCorner> face, const QColor& colour);
    /// Like glass: tints what is behind it and hides nothing.
    void glaze(std::span<const DrawnCorner> face, const QColor& colour);

    /// Something that fills is nearer, there and at the pixels around: an edge is not hidden by
    /// the faces that meet in it.
    bool hides(const DrawnCorner& place) const;

    const QImage& image() const { return m_image; }

private:
    template <class Act>
    void eachPixel(std::span<const DrawnCorner> face, const Act& act);
    std::size_t at(int x, int y) const
    {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(m_width) +
               static_cast<std::size_t>(x);
    }

    int m_width = 0, m_height = 0;
    QImage m_image;
    std::vector<float> m_near;
};

}  // namespace stillbay::ui
