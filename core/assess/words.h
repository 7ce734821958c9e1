// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <vector>

/// Plain sentences from an assessment, the same in the window and in the report.
namespace stillbay {

/// "once-per-turn shake", "blade-pass shake", "twice-blade-pass shake", …
Phrase orderInWords(int order, int blades);

/// The same without the word "shake", for labels.
Phrase orderName(int order, int blades);

/// "Clean from 31 % to 100 % throttle.", then one sentence for each hump of wobble with its bad
/// part, the shake that makes it and what it meets, then where the hover lies.
std::vector<Phrase> findings(const Setup& setup, const Assessment& assessment);

/// "sags 2.1 mm", "rises 2.1 mm", and the tilt where it is worth saying, as one sentence.
Phrase restInWords(const RestFigures& rest);

/// What is said where an assessment has no `cruise`, without a full stop.
Phrase outsideCruiseInWords();

/// What to look after before bench work and flight; shown in the window and on paper.
std::vector<Phrase> safetyCautions();

}  // namespace stillbay
