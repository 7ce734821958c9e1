// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QString>

namespace stillbay::ui {

/// "clean", "faint" or "bad".
QString gradeWord(const Limits& limits, double wobble_px);

/// Short sign of an excitation: "1", "B" (blade pass), "2B", …
QString orderSign(int order, int blades);

}  // namespace stillbay::ui
