// SPDX-License-Identifier: MIT
#include "core/assess/tune_figures.h"

#include "core/assess/assess.h"
#include "core/setup/tunes.h"

#include <utility>

namespace stillbay {
namespace {

TuneFigures figuresFrom(Assessment assessment)
{
    TuneFigures figures;
    figures.cruise = assessment.cruise;
    for (const ThrottlePoint& point : assessment.throttle) {
        figures.throttle.push_back(point.throttle);
        figures.wobble_px.push_back(point.wobble_px);
    }
    figures.transmissibility = std::move(assessment.transmissibility);
    return figures;
}

// A setup without what the figures do not depend on.
Setup essence(Setup setup)
{
    setup.name.clear();
    setup.notes.clear();
    setup.tube = {};
    setup.mounts = {};
    for (Tune& tune : setup.tunes) {
        tune.name.clear();
        tune.saved.clear();
        tune.notes.clear();
    }
    return setup;
}

}  // namespace

Result<std::vector<Result<TuneFigures>>> figuresOfTunes(const Setup& setup,
                                                        const Progress& progress)
{
    Assessor assessor;  // the airframe is the same for all
    std::vector<Result<TuneFigures>> all;
    for (const Tune& tune : setup.tunes) {
        if (Result<Assessment> assessment = assessor.assess(withTune(setup, tune)))
            all.push_back(figuresFrom(*std::move(assessment)));
        else
            all.push_back(tl::unexpected<Error>(assessment.error()));
        if (progress && !progress(all.size(), setup.tunes.size()))
            return tl::unexpected(stoppedOnRequest());
    }
    return all;
}

bool sameTuneFigures(const Setup& a, const Setup& b)
{
    return essence(a) == essence(b);
}

}  // namespace stillbay
