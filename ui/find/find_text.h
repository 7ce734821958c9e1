// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/recommend.h"
#include "ui/widgets/quantity.h"

#include <QString>
#include <QStringList>

/// How the search for a tune talks.
namespace stillbay::ui {

/// Where a design holds the bay, as far as that is elsewhere than at present; empty: as at present.
QString placeText(const Design& design, const Design& present);

QString elevationText(const Design& design);  ///< "35.2°", the mean over the tubes
QString verdictText(const CruiseWobble& wobble,
                    const Evaluation& evaluation);  ///< "1.71 px", or "—"

/// What 9 of 10 builds do not exceed: "0.35 px"; or "— 54 % of builds: a tube goes slack".
QString p90Text(const Robustness& robust);
QString cleanText(const Robustness& robust);  ///< "28 % to 61 %", or "nowhere"

/// The answer: what to do, then what it brings, then what else there is to know, a line each.
QStringList answerTexts(const Recommendation& answer);

/// What is taken to differ from build to build.
QString tolerancesText(const Tolerances& tolerances);

}  // namespace stillbay::ui
