// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"

namespace stillbay {

/// The computed point nearest to a throttle; none only when there are no points.
const ThrottlePoint* pointAt(const Assessment& assessment, double throttle);

}  // namespace stillbay
