// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/grid.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <memory>
#include <optional>
#include <vector>

namespace stillbay {

struct AssessOptions {
    std::optional<Grid> throttle;  ///< none: the craft's own, CruiseWindow::sweep()
    Grid frequency_hz{1.0, 400.0, 0.5};
    bool flexible_airframe = true;

    bool operator==(const AssessOptions&) const = default;
};

/// The throttles that an assessment is asked for, rising.
std::vector<double> throttlesOf(const Setup& setup, const AssessOptions& options);

/// Hover at the craft's weight.
HoverFigures hoverFigures(const ExcitedAirframe& craft, const MassFigures& airframe,
                          const MassFigures& bay);

/// The one door to the numbers: assess(Setup) → Assessment.
///
/// Keeps, by value, the part that tubes, mounts and bay do not touch (speeds, airframe receptance
/// and motor maps over the throttle grid), and reuses it while that part's inputs stay the same.
/// The answer never depends on what was kept. Not thread-safe: one Assessor per thread or job.
class Assessor {
public:
    Assessor();
    ~Assessor();
    Assessor(Assessor&&) noexcept;
    Assessor& operator=(Assessor&&) noexcept;

    /// @error BadInput  what validate() refuses, or a tube outside the model (L₀ ≤ 4δ).
    /// @error NoAnswer  no stable rest, a free motion (named), or an iteration that did not
    /// converge.
    Result<Assessment> assess(const Setup& setup, const AssessOptions& options = {});

private:
    struct Kept;
    std::unique_ptr<Kept> m_kept;
};

/// One assessment with nothing kept.
Result<Assessment> assess(const Setup& setup, const AssessOptions& options = {});

}  // namespace stillbay
