// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/calibrate/film_match.h"
#include "core/clip/film_lines.h"
#include "core/setup/setup.h"

#include <vector>

namespace stillbay {

/// "The film wobbles at 73.4 Hz: order 1 (unbalance) at 4404 rpm, 1.4 px; predicted 1.2 px." One
/// sentence an order or line, the strongest first. Where the speed is not settled an order is said
/// with an if, and a poor match names none. A line below 0.01 px that no order explains has none.
std::vector<Phrase> filmTexts(const Setup& setup, const FilmReading& reading,
                              const FilmMatch& match);

}  // namespace stillbay
