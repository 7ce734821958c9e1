// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/figures.h"

#include <vector>

namespace stillbay {

/// The computed point nearest to a throttle; none only when there are no points.
const ThrottlePoint* pointAt(const std::vector<ThrottlePoint>& points, double throttle);

/// Clean below faint_px, faint below bad_px, then bad.
Grade gradeOf(double wobble_px, double faint_px, double bad_px);

}  // namespace stillbay
