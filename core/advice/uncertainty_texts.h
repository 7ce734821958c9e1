// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/uncertainty.h"
#include "core/base/phrase.h"

#include <vector>

/// Plain sentences on what is not known, the same in the window and in the report.
namespace stillbay {

/// A share below this is not told as a number.
inline constexpr double kSmallestShare = 0.05;

/// How the crafts do, the worst wobble, and where the bad throttles begin and end.
std::vector<Phrase> uncertaintySentences(const Uncertainty& uncertainty);

/// The same in a few words: "24 of 100 crafts like it are clean, 6 cannot be flown".
Phrase cleanShareText(const Uncertainty& uncertainty);

/// What to measure first, one line a number, largest share first: "Young's modulus of the tube:
/// hang test, ten minutes: takes away 41 % of the uncertainty". Numbers with a small share of all
/// three answers are left out.
std::vector<Phrase> measureFirst(const Uncertainty& uncertainty);

/// What no measurement takes away; says nothing where the worst wobble has no shares.
Phrase buildToBuildText(const Uncertainty& uncertainty);

}  // namespace stillbay
