// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QString>

namespace stillbay::ui {

/// What the verdict is about: "Cruise is 25 to 60 % throttle; faint from 0.3 px, bad from 1 px."
QString cruiseWindowText(const Setup& setup);

}  // namespace stillbay::ui
