// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assess.h"
#include "core/assess/constraints.h"
#include "core/design/design.h"
#include "core/response/cruise.h"
#include "core/response/flight_sweep.h"

#include <optional>
#include <vector>

/// One craft's answer to many designs of tubes: a small part of an assessment, the same numbers.
namespace stillbay {

/// How one sample differs from the plan.
struct ToleranceSample {
    std::vector<double> cuts_mm;   ///< tube by tube, so much longer; empty: as planned
    std::vector<Triple> holes_mm;  ///< tube by tube, both its holes so far off; empty: as planned
    std::vector<double> directions_deg;  ///< tube by tube, while planning; empty: as planned
    double modulus = 1.0;                ///< factor on the rubber's modulus
    double bay = 1.0;                    ///< factor on all masses of the bay
    double battery = 1.0;                ///< factor on the bay's heaviest part, beside that
    double unbalance = 1.0;              ///< factor on the propellers' unbalance
};

/// What a design is worth.
struct Evaluation {
    std::optional<Constraint> violated;  ///< none: feasible, and only then the figures hold
    CruiseFigures cruise;                ///< its worst is what a search lowers

    bool feasible() const { return !violated; }
    /// By the worst, then by the mean of both packs; anything feasible before anything that is not.
    bool isBetterThan(const Evaluation& other) const;
};

/// Wobble of one sample.
struct SampleWobble {
    std::optional<Constraint> violated;
    FlightWobble flight;  ///< nothing with a violated constraint; lives as long as the evaluator
};

/// Prepared once for a craft; evaluating is const and safe from several threads at once.
class Evaluator {
public:
    /// @param setup     a craft that validate() takes; its own design does not matter
    /// @param options   of the assessment that the figures agree with; a throttle grid of their own
    ///                  must meet the cruise window
    /// @param throttles the part of its throttles that is computed
    explicit Evaluator(const Setup& setup, const AssessOptions& options = {},
                       Throttles throttles = Throttles::Cruise);

    const std::vector<double>& throttle() const { return m_flight.throttle(); }

    /// What no design changes: whether the packs hold the craft, and in its cruise window.
    const Status& craft() const { return m_craft; }

    /// The wobble agrees with Assessment::cruise, to rounding.
    Evaluation evaluate(const Design& design) const;

    SampleWobble wobbleOf(const Design& design, const ToleranceSample& sample) const;

    /// The largest and the mean inside the cruise window.
    CruiseFigures overCruise(const FlightWobble& flight) const;

private:
    tl::expected<BayAtRest, Constraint> mount(const Design& design,
                                              const ToleranceSample& sample) const;

    Bay m_bay;
    Status m_craft;
    CruiseWindow m_cruise;
    FilmedFlight m_flight;
};

}  // namespace stillbay
