// SPDX-License-Identifier: MIT
#include "ui/map/map_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr std::size_t kColours = 256;

/// Colours over the logarithm of the wobble.
class Ramp {
public:
    explicit Ramp(const WobbleScale& scale)
        : m_low(std::log(scale.range_px().minValue())),
          m_perLog(static_cast<double>(kColours - 1) /
                   (std::log(scale.range_px().maxValue()) - m_low))
    {
        for (std::size_t k = 0; k < kColours; ++k)
            m_colours[k] = scale.colour(std::exp(m_low + static_cast<double>(k) / m_perLog)).rgb();
    }

    QRgb operator()(double logWobble) const
    {
        const double place =
            std::clamp((logWobble - m_low) * m_perLog, 0.0, static_cast<double>(kColours - 1));
        return m_colours[static_cast<std::size_t>(std::lround(place))];
    }

private:
    double m_low, m_perLog;
    std::array<QRgb, kColours> m_colours;
};

bool isMultiple(int value, int spacing)
{
    return ((value % spacing) + spacing) % spacing == 0;
}

std::size_t nearest(double place, std::size_t count)
{
    return static_cast<std::size_t>(
        std::clamp(std::round(place), 0.0, static_cast<double>(count - 1)));
}

}  // namespace

bool isHatched(Constraint reason, int x, int y)
{
    switch (reason) {
        case Constraint::OutsideLimits:
            return false;
        case Constraint::NoRest:
            return isMultiple(x, 8) || isMultiple(y, 8);
        case Constraint::Buckled:
            return isMultiple(x, 6);
        case Constraint::Slack:
            return isMultiple(x + y, 8);
        case Constraint::RestShift:  // upright dashes
            return isMultiple(x, 6) && ((y % 12) + 12) % 12 < 6;
        case Constraint::Bent:
            return isMultiple(x / 2, 4) && isMultiple(y / 2, 4);
        case Constraint::OverStretched:
            return isMultiple(x - y, 8);
        case Constraint::OverStretchedAt3g:
            return isMultiple(x - y, 4);
        case Constraint::NoRestAt3g:
            return isMultiple(x + y, 10) || isMultiple(x - y, 10);
        case Constraint::HitsTravel:
            return isMultiple(y, 6);
        case Constraint::SwingsWithCraft:
            return isMultiple(y + std::abs(((x % 12) + 12) % 12 - 6), 8);  // waves
        case Constraint::CannotHover:
            return isMultiple(x, 4) && isMultiple(y, 4);
        case Constraint::PropellersTouch:  // dots in fours
            return isMultiple(x / 2, 6) && isMultiple(y / 2, 6);
        case Constraint::CruiseWithoutHover:  // level dashes
            return isMultiple(y, 6) && ((x % 12) + 12) % 12 < 6;
    }
    return false;
}

QImage drawMap(const MapField& field, const WobbleScale& scale, const RefusedColours& refused,
               const QRectF& area, const QSize& size)
{
    QImage image(size, QImage::Format_RGB32);
    const Ramp ramp(scale);
    const QRgb ground = refused.ground.rgb(), hatch = refused.hatch.rgb();
    for (int py = 0; py < size.height(); ++py) {
        auto* const line = reinterpret_cast<QRgb*>(image.scanLine(py));
        const double j = area.bottom() - area.height() * (py + 0.5) / size.height();
        const std::size_t nearJ = nearest(j, field.y.count);
        for (int px = 0; px < size.width(); ++px) {
            const double i = area.left() + area.width() * (px + 0.5) / size.width();
            const std::size_t node = field.index(nearest(i, field.x.count), nearJ);
            if (const auto& reason = field.reasons[node]) {
                line[px] = isHatched(*reason, px, py) ? hatch : ground;
                continue;
            }
            const double between = field.logAt(i, j);
            line[px] = ramp(std::isnan(between) ? field.logWobble[node] : between);
        }
    }
    return image;
}

}  // namespace stillbay::ui
