// SPDX-License-Identifier: MIT
#include "core/calibrate/film_texts.h"

#include "core/assess/texts.h"
#include "core/base/units.h"

#include <algorithm>
#include <utility>

namespace stillbay {
namespace {

constexpr double kLeastSize_px = 0.01;  // in words; less is as good as none

Phrase sizeText(double px)
{
    return px < kLeastSize_px ? phrase("below %1", rounded(kLeastSize_px, 1))
                              : phrase("%1", rounded(px, 2));
}

// Of an order that is predicted and does not show.
Phrase missingText(const Phrase& name, const FilmReading& reading, const OrderOnFilm& order)
{
    const Number at = fixed(order.frequency_hz, 1), size = rounded(*order.predicted_px, 2);
    if (isLookedAt(reading, order.frequency_hz))
        return phrase("Nothing shows at %1\u00A0Hz, where %2 is predicted with %3\u00A0px.", at,
                      name, size);
    if (isBlindAt(reading.blind_hz, order.frequency_hz))
        return phrase("The film is blind at %1\u00A0Hz, where %2 is predicted with %3\u00A0px.", at,
                      name, size);
    return phrase("Nothing was looked for at %1\u00A0Hz, where %2 is predicted with %3\u00A0px.",
                  at, name, size);
}

// A sentence about an order with its size, where there is something to say.
void addOrderText(const Phrase& name, const FilmReading& reading, const FilmMatch& match,
                  const OrderOnFilm& order, std::vector<std::pair<double, Phrase>>& texts)
{
    const Number at = fixed(order.frequency_hz, 1);
    const Phrase turns = phrase("%1 rpm", fixed(match.speed / unit::rpm, 0));
    if (order.filmed_px && order.predicted_px && !isSpeedSettled(match))
        texts.emplace_back(
            *order.filmed_px,
            phrase("The film wobbles at %1\u00A0Hz by %4\u00A0px: %2, if the rotors turn at %3; "
                   "predicted %5\u00A0px.",
                   at, name, turns, sizeText(*order.filmed_px), sizeText(*order.predicted_px)));
    else if (order.filmed_px && order.predicted_px)
        texts.emplace_back(
            *order.filmed_px,
            phrase("The film wobbles at %1\u00A0Hz: %2 at %3, %4\u00A0px; predicted %5\u00A0px.",
                   at, name, turns, sizeText(*order.filmed_px), sizeText(*order.predicted_px)));
    else if (order.filmed_px)
        texts.emplace_back(
            *order.filmed_px,
            isSpeedSettled(match)
                ? phrase("The film wobbles at %1\u00A0Hz: %2 at %3, %4\u00A0px.", at, name, turns,
                         sizeText(*order.filmed_px))
                : phrase("The film wobbles at %1\u00A0Hz by %4\u00A0px: %2, if the rotors turn at "
                         "%3.",
                         at, name, turns, sizeText(*order.filmed_px)));
    else if (order.predicted_px && *order.predicted_px > kShowsOnFilm * reading.floor_px)
        texts.emplace_back(*order.predicted_px, missingText(name, reading, order));
}

// A line that no order explains, or of a film whose speed is not to be relied on.
Phrase lineText(const FilmLine& line, const MatchedLine& matched, bool isPoor)
{
    const Number at = fixed(line.frequency_hz, 1), size = rounded(line.wobble_px, 2);
    if (isPoor)
        return phrase("The film wobbles at %1\u00A0Hz by %2\u00A0px.", at, size);
    if (matched.resonance)
        return phrase(
            "The film wobbles at %1\u00A0Hz by %2\u00A0px, which no order explains; the "
            "craft rings at %3\u00A0Hz (%4).",
            at, size, fixed(matched.resonance->frequency_hz, 0), matched.resonance->text);
    return phrase("The film wobbles at %1\u00A0Hz by %2\u00A0px, which no order explains.", at,
                  size);
}

}  // namespace

std::vector<Phrase> filmTexts(const Setup& setup, const FilmReading& reading,
                              const FilmMatch& match)
{
    std::vector<std::pair<double, Phrase>> texts;
    const bool isPoor = match.mark.quality == Quality::Poor;
    for (const OrderOnFilm& order : match.orders)
        if (!isPoor)
            addOrderText(orderText(order.order, setup.drive.propeller.blades), reading, match,
                         order, texts);
    for (const MatchedLine& matched : match.lines)
        if ((isPoor || !matched.order) && reading.lines[matched.line].wobble_px >= kLeastSize_px)
            texts.emplace_back(reading.lines[matched.line].wobble_px,
                               lineText(reading.lines[matched.line], matched, isPoor));
    std::stable_sort(texts.begin(), texts.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<Phrase> sentences;
    for (auto& [size, text] : texts)
        sentences.push_back(std::move(text));
    return sentences;
}

}  // namespace stillbay
