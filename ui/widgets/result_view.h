// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

namespace stillbay::ui {

/// A part of the window that shows the newest assessment. The window hands every answer to each of
/// them; none computes or asks for one.
class ResultView {
public:
    virtual ~ResultView() = default;

    /// @param assessment  of exactly this setup, or why there is none
    virtual void setResult(const Setup& setup, const Result<Assessment>& assessment) = 0;
    /// What is shown belongs to an older setup while a new answer is late: fade it.
    virtual void setStale(bool stale) = 0;

protected:
    ResultView() = default;
    ResultView(const ResultView&) = default;
    ResultView& operator=(const ResultView&) = default;
};

}  // namespace stillbay::ui
