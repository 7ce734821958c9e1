// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"

#include <memory>

namespace stillbay::ui {

/// What a recording is laid over.
struct PredictedCraft {
    Setup setup;
    std::shared_ptr<const Assessment> prediction;  ///< null: there is none, or it is on the way
    bool isCurrent = false;                        ///< the prediction is of the setup
};

/// The craft without what no finding depends on.
Setup measuredCraft(Setup setup);

}  // namespace stillbay::ui
