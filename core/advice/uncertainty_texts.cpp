// SPDX-License-Identifier: MIT
#include "core/advice/uncertainty_texts.h"

#include "core/base/units.h"

#include <cmath>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

// So many crafts of 100.
Number ofHundred(std::size_t count, const Uncertainty& u)
{
    return fixed(kPercent * static_cast<double>(count) / static_cast<double>(u.crafts), 0);
}

double percent(double share)
{
    return kPercent * share;
}

bool isSmall(const std::optional<VarianceShare>& share)
{
    return !share || share->share < kSmallestShare;
}

// "41 %", or what can be said of less.
Phrase shareText(const std::optional<VarianceShare>& share)
{
    if (isSmall(share))
        return phrase("less than %1 %", fixed(percent(kSmallestShare), 0));
    return phrase("%1 %", fixed(percent(share->share), 0));
}

Phrase worstSentence(const Percentiles& worst_px)
{
    if (worst_px.p10 && worst_px.p50 && worst_px.p90)
        return phrase(
            "Worst wobble in cruise, from full to empty pack: %1 px in the middle; 1 of "
            "10 stays below %2 px, and 9 of 10 stay below %3 px.",
            rounded(*worst_px.p50, 3), rounded(*worst_px.p10, 3), rounded(*worst_px.p90, 3));
    if (worst_px.p10 && worst_px.p50)
        return phrase(
            "Worst wobble in cruise, from full to empty pack: %1 px in the middle; 1 of "
            "10 stays below %2 px, and more than 1 of 10 cannot be flown.",
            rounded(*worst_px.p50, 3), rounded(*worst_px.p10, 3));
    return phrase("Half of the crafts or more cannot be flown.");
}

Phrase badSentence(const Uncertainty& u)
{
    if (!(u.badFrom.p10 && u.badFrom.p50 && u.badFrom.p90 && u.badTo.p10 && u.badTo.p50 &&
          u.badTo.p90))
        return phrase("No throttle in cruise is bad.");
    return phrase(
        "Where it is bad, that begins at %1 % throttle in the middle, at %2 % to %3 % in 8 "
        "of 10, and ends at %4 % in the middle, at %5 % to %6 % in 8 of 10.",
        fixed(percent(*u.badFrom.p50), 0), fixed(percent(*u.badFrom.p10), 0),
        fixed(percent(*u.badFrom.p90), 0), fixed(percent(*u.badTo.p50), 0),
        fixed(percent(*u.badTo.p10), 0), fixed(percent(*u.badTo.p90), 0));
}

Phrase edgesText(const AnswerShares& shares)
{
    return phrase("%1 of where bad begins, %2 of where it ends", shareText(shares.badFrom),
                  shareText(shares.badTo));
}

}  // namespace

std::vector<Phrase> uncertaintySentences(const Uncertainty& u)
{
    std::vector<Phrase> sentences{
        phrase("Of 100 crafts that fit what is known of this one, %1 are clean in cruise, %2 faint "
               "and %3 bad; %4 cannot be flown.",
               ofHundred(u.clean, u), ofHundred(u.faint, u), ofHundred(u.bad, u),
               ofHundred(u.unflyable, u))};
    sentences.push_back(worstSentence(u.worst_px));
    sentences.push_back(badSentence(u));
    return sentences;
}

Phrase cleanShareText(const Uncertainty& u)
{
    const Number clean = ofHundred(u.clean, u);
    return u.unflyable == 0 ? phrase("%1 of 100 crafts like it are clean", clean)
                            : phrase("%1 of 100 crafts like it are clean, %2 cannot be flown",
                                     clean, ofHundred(u.unflyable, u));
}

std::vector<Phrase> measureFirst(const Uncertainty& u)
{
    std::vector<Phrase> lines;
    for (const NotKnown& input : u.notKnown) {
        const AnswerShares& shares = input.shares;
        if (isSmall(shares.worst) && isSmall(shares.badFrom) && isSmall(shares.badTo))
            continue;
        Phrase line = phrase("%1: %2: takes away %3 of the uncertainty", input.label,
                             input.measurement, shareText(shares.worst));
        const bool hasEdges = !isSmall(shares.badFrom) || !isSmall(shares.badTo);
        lines.push_back(hasEdges ? phrase("%1 (%2)", std::move(line), edgesText(shares))
                                 : std::move(line));
    }
    return lines;
}

Phrase buildToBuildText(const Uncertainty& u)
{
    if (!u.buildToBuild.worst)
        return {};
    return phrase(
        "From build to build (cut, masses, battery, temperature): %1, which no "
        "measurement takes away.",
        shareText(u.buildToBuild.worst));
}

}  // namespace stillbay
