// SPDX-License-Identifier: MIT
#include "core/assess/tune_figures.h"

#include "core/assess/assess.h"
#include "core/base/progress.h"
#include "core/setup/tunes.h"

#include <utility>

namespace stillbay {

TuneFigures figuresOf(Assessment assessment)
{
    return {assessment.cruise,
            std::move(assessment.status),
            std::move(assessment.curve),
            std::move(assessment.transmissibility),
            assessment.bay,
            assessment.tube,
            std::move(assessment.rest),
            std::move(assessment.bench)};
}

Result<std::vector<Result<TuneFigures>>> figuresOfTunes(const Setup& setup,
                                                        const std::stop_token& stop)
{
    Assessor assessor;  // the airframe is the same for all
    std::vector<Result<TuneFigures>> all;
    for (const Tune& tune : setup.tunes) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (Result<Assessment> assessment = assessor.assess(withDesign(setup, tune.design)))
            all.push_back(figuresOf(*std::move(assessment)));
        else
            all.push_back(tl::unexpected<Error>(assessment.error()));
    }
    return all;
}

Setup tuneFiguresKey(Setup setup)
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

}  // namespace stillbay
