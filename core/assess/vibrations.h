// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/film/rows.h"

#include <vector>

/// From the assessment to what moves the picture.
namespace stillbay {

enum class Hold { Tubes, Rigid };

/// The camera's swings at a throttle, one for each order that excites it, the motors out of
/// step: filmed over many frames their wobble is wobble_px, or rigid_px; their frame shake is near
/// frame_shake_px, since one angle between two motors cannot serve both.
///
/// @return empty while the motors stand still, and for Hold::Rigid where there is no rigid_px
std::vector<CameraVibration> vibrationsAt(const ThrottlePoint& point, const CameraModel& camera,
                                          Hold hold);

}  // namespace stillbay
