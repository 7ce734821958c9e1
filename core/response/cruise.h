// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/figures.h"
#include "core/setup/setup.h"

#include <optional>
#include <span>
#include <vector>

namespace stillbay {

/// The throttles that a builder films at: the one place that says which belong to them, which are
/// looked at, and what the wobble over them comes to.
class CruiseWindow {
public:
    explicit CruiseWindow(const Flight& flight);

    bool contains(double throttle) const;  ///< both ends belong to it

    /// The craft's own throttles, rising: from 10 % to 100 % in steps of half a percent, as far
    /// down as the window reaches, and the window's ends, which may lie between two steps.
    std::vector<double> sweep() const;

    /// The given throttles, rising, and those ends of the window that lie among them.
    std::vector<double> withEnds(std::vector<double> throttles) const;

    /// The largest is that of points and peaks; the mean is that of the lines between the points.
    ///
    /// @param throttle  rising; @param wobble_px one per throttle; @param peaks between them
    /// @return none where no throttle lies in the window.
    std::optional<CruiseWobble> over(std::span<const double> throttle,
                                     std::span<const double> wobble_px,
                                     std::span<const WobbleAt> peaks) const;

private:
    double m_from, m_to;
};

}  // namespace stillbay
