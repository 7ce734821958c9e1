// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QColor>
#include <qwt_color_map.h>
#include <qwt_interval.h>

#include <array>

namespace stillbay::ui {

/// Wobble as a colour and as the width of a line, both on one logarithmic scale.
class WobbleScale {
public:
    using Ramp = std::array<QColor, 4>;  ///< from none to much, evenly stepped

    WobbleScale() = default;
    WobbleScale(const Limits& limits, const Ramp& ramp);
    WobbleScale(const QwtInterval& range_px, const Ramp& ramp) : m_range(range_px), m_ramp(ramp) {}

    /// From well below the faint limit to above the bad one [px].
    const QwtInterval& range_px() const { return m_range; }

    double share(double wobble_px) const;  ///< 0 … 1 within the range, clamped
    QColor colour(double wobble_px) const;
    double width(double wobble_px) const;  ///< [logical pixels]

private:
    QwtInterval m_range{0.01, 3.0};
    Ramp m_ramp;
};

/// The scale for Qwt's colour bar.
class WobbleColourMap final : public QwtColorMap {
public:
    explicit WobbleColourMap(const WobbleScale& scale) : m_scale(scale) {}

    QRgb rgb(const QwtInterval&, double wobble_px) const override
    {
        return m_scale.colour(wobble_px).rgb();
    }

private:
    WobbleScale m_scale;
};

}  // namespace stillbay::ui
