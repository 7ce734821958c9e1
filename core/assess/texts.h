// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/phrase.h"
#include "core/setup/setup.h"

#include <vector>

/// Plain sentences from an assessment, the same in the window and in the report.
namespace stillbay {

/// "order 1 (unbalance)", "order B (blade pass)", "order 2B (blade pass)", …
Phrase orderText(int order, int blades);

/// The same for labels: "order 1", "order B", …
Phrase orderName(int order, int blades);

/// "Clean from 31 % to 100 % throttle.", then one sentence for each hump of wobble with its bad
/// part, the excitation that makes it and what it meets, then where the hover lies.
std::vector<Phrase> findings(const Setup& setup, const Assessment& assessment);

/// "sags 2.1 mm", "rises 2.1 mm", and the tilt where it is worth saying, as one sentence.
Phrase restText(const RestFigures& rest);

/// Why the bay turns: how far above or below its centre of mass the tubes hold it, sideways and
/// fore and aft, and how far beside it up and down where that is worth saying.
std::vector<Phrase> turningTexts(const ElasticCentre& centre);

/// How far the bench modes are each one motion, as one sentence.
Phrase decouplingText(double decoupling);

/// The worst shake of whole frames over the cruise throttles and where it is; nothing is said where
/// no throttle lies in the window.
Phrase frameShakeText(const Flight& flight, const Assessment& assessment);

/// The verdict in one line, the worst of safety, feasibility and wobble at both packs, without a
/// full stop: "Do not fly: a tube goes slack", "Bad wobble in cruise: up to 1.98 px".
Phrase verdictText(const Assessment& assessment);

/// Which throttles of the cruise window have the worst grade that the verdict names, and what makes
/// it, as one sentence: "From 30 % to 31 % throttle order 1 (unbalance) meets 67 Hz (arms swing)."
/// Nothing is said of a clean window, or where no throttle lies in it.
Phrase causeText(const Setup& setup, const Assessment& assessment);

/// What the craft itself puts before any tune, as sentences without a grade; empty: nothing.
std::vector<Phrase> reservations(const Status& craft);

/// The worst wobble of both packs and where it stands, as one sentence.
Phrase cruiseText(const CruiseFigures& cruise);
/// The same for a narrow place.
Phrase packsText(const CruiseFigures& cruise);

/// What is said where an assessment has no `cruise`, without a full stop.
Phrase outsideCruiseText();

/// What to look after before bench work and flight; shown in the window and on paper.
std::vector<Phrase> safetyWarnings();

}  // namespace stillbay
