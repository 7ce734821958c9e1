// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

namespace stillbay::ui {

/// The craft without what no finding depends on.
Setup measuredCraft(Setup setup);

}  // namespace stillbay::ui
