// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/linalg.h"
#include "core/setup/setup.h"

#include <array>

namespace stillbay::ui {

/// Where the tubes hold the bay at rest, fixed to the bay: in millimetres and the craft's axes, of
/// the bay as it is drawn.
struct ElasticMarks {
    Vector3d centre_mm = Vector3d::Zero();   ///< the elastic centre
    std::array<Vector3d, 2> rollAxis_mm{};   ///< forces sideways through it have no arm to roll
    std::array<Vector3d, 2> pitchAxis_mm{};  ///< forces fore and aft through it none to pitch
};

/// The axes lie along the airframe's and are as long as the points that hold the bay are apart.
ElasticMarks elasticMarks(const Setup& setup, const Assessment& assessment);

}  // namespace stillbay::ui
