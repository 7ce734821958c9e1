// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/film/rows.h"

#include <vector>

/// From the assessment to what moves the picture.
namespace stillbay {

enum class Hold { Tubes, Bolted };

/// The camera's swings at a throttle, one for each order that shakes it, the motors out of step:
/// filmed over many frames their wobble is wobble_px, or bolted_px.
///
/// @return empty while the motors stand still, and bolted where there is no bolted_px
std::vector<Shake> shakesAt(const ThrottlePoint& point, const CameraModel& camera, Hold hold);

}  // namespace stillbay
