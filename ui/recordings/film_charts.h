// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/calibrate/craft_film.h"
#include "ui/charts/filmed_mark.h"
#include "ui/charts/measured_chart.h"

#include <vector>

namespace stillbay::ui {

/// A film's lines and, where it has a match, the craft's orders, over the frequency.
MeasuredShown filmLinesShown(const CraftFilm& film, int blades);

/// The films over the throttle, with what is predicted.
///
/// @param isFirstChosen  the first mark is of the film that is shown; else it has none
MeasuredShown filmedWobbleShown(const std::vector<FilmedMark>& marks, bool isFirstChosen,
                                const Assessment& prediction);

}  // namespace stillbay::ui
