// SPDX-License-Identifier: MIT
#include "core/search/minimize.h"

#include "core/base/check.h"

#include <exception>
#include <limits>
#include <memory>
#include <nlopt.h>

namespace stillbay {
namespace {

constexpr double kClose = 1e-5;  // of the cube's edge: nearer points are one

/// One run: calls the objective from C and keeps the best point and any exception.
struct Run {
    Run(nlopt_algorithm algorithm, const Objective& function, std::size_t dimensions,
        std::size_t evaluations)
        : objective(function),
          best(dimensions),
          optimiser(nlopt_create(algorithm, static_cast<unsigned>(dimensions)), nlopt_destroy)
    {
        check(optimiser != nullptr, "minimise: an optimiser");
        nlopt_set_lower_bounds1(optimiser.get(), 0.0);
        nlopt_set_upper_bounds1(optimiser.get(), 1.0);
        nlopt_set_maxeval(optimiser.get(), static_cast<int>(evaluations));
        nlopt_set_min_objective(optimiser.get(), &Run::evaluate, this);
    }

    void from(UnitPoint x)
    {
        double value = 0.0;
        nlopt_optimize(optimiser.get(), x.data(), &value);  // what it found is in `best`
        if (fault)
            std::rethrow_exception(fault);
    }

    static double evaluate(unsigned n, const double* x, double*, void* data)
    {
        Run& run = *static_cast<Run*>(data);
        const UnitPoint point(x, x + n);
        try {
            if (const auto value = run.objective(point)) {
                if (*value < run.bestValue) {
                    run.bestValue = *value;
                    run.best = point;
                }
                return *value;
            }
        } catch (...) {
            run.fault = std::current_exception();
        }
        nlopt_force_stop(run.optimiser.get());
        return 0.0;
    }

    const Objective& objective;
    UnitPoint best;
    double bestValue = std::numeric_limits<double>::infinity();
    std::exception_ptr fault;
    std::unique_ptr<std::remove_pointer_t<nlopt_opt>, decltype(&nlopt_destroy)> optimiser;
};

}  // namespace

void minimizeGlobal(const Objective& objective, std::size_t dimensions, std::size_t evaluations)
{
    Run(NLOPT_GN_DIRECT_L, objective, dimensions, evaluations).from(UnitPoint(dimensions, 0.5));
}

UnitPoint minimizeLocal(const Objective& objective, const UnitPoint& start, double firstStep,
                        std::size_t evaluations)
{
    Run run(NLOPT_LN_SBPLX, objective, start.size(), evaluations);
    run.best = start;
    nlopt_set_initial_step1(run.optimiser.get(), firstStep);
    nlopt_set_xtol_abs1(run.optimiser.get(), kClose);
    run.from(start);
    return run.best;
}

}  // namespace stillbay
