// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_mark.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

// Files measured with care lie within 1.6 %, masses and lengths that are 15 and 10 % wrong too.
constexpr double kOtherCraft = 0.02, kFairMisfit = 0.007;
constexpr double kNotOfModes = 0.35, kWideSwings = 0.15;  // left unexplained by free modes
constexpr double kForeignShare = 0.30;
constexpr double kOtherTension = 3.0;  // spreads
constexpr double kLeastOfRubber = 1.0, kMostOfSilicone = 1.6, kMostOfRubber = 3.0;
constexpr unsigned kEnoughModes = 3;

Phrase sharePercent(double share)
{
    return phrase("%1 %", rounded(kPercent * share, 2));
}

Phrase ofMisfit(const PluckDoubts& doubts)
{
    return phrase("what rings lies %1 off this craft's modes", sharePercent(doubts.free.misfit));
}

// Where the ratio or the tension takes up what is wrong: axes tell nothing of that.
Phrase measureStep(const PluckDoubts& doubts)
{
    return doubts.isSensorWeighed && doubts.isModulusMeasured
               ? phrase("weigh the bay and measure its tubes again")
               : pluckNextStep(doubts);
}

}  // namespace

Phrase pluckNextStep(const PluckDoubts& doubts)
{
    if (!doubts.isSensorWeighed)
        return phrase("say what the sensor weighs, unless it is among the bay's parts");
    if (!doubts.isModulusMeasured)
        return phrase("do the hang test first");
    if (!doubts.areAxesTold)
        return phrase("say how the sensor's axes lie");
    return phrase(
        "see whether masses, places and tubes are as in the file, or take the file of "
        "the craft that was plucked");
}

QualityMark pluckMark(const PluckDoubts& doubts)
{
    const auto mark = [](Quality quality, Phrase why, Phrase next) {
        return QualityMark{quality, phrase("%1: %2", std::move(why), std::move(next))};
    };
    const double ratio = doubts.rubber.ratio;
    if (doubts.free.residual > kNotOfModes)
        return {Quality::Poor,
                phrase("%1 of the record are no ringing of six modes: clamp the airframe, take off "
                       "what else may ring, and pluck again",
                       sharePercent(doubts.free.residual))};
    if (doubts.free.misfit > kOtherCraft)
        return mark(Quality::Poor, ofMisfit(doubts), pluckNextStep(doubts));
    if (doubts.otherRatio)
        return {Quality::Poor,
                phrase("dynamic ratios of %1 and %2 explain the record alike: pluck the bay in "
                       "other ways too, and say how the sensor's axes lie",
                       fixed(ratio, 2), fixed(*doubts.otherRatio, 2))};
    if (ratio < kLeastOfRubber || ratio > kMostOfRubber)
        return mark(Quality::Poor,
                    phrase("a dynamic ratio of %1 is none of rubber", fixed(ratio, 2)),
                    measureStep(doubts));
    if (doubts.foreign > kForeignShare)
        return mark(Quality::Poor, phrase("most of what rings is none of the bay's modes"),
                    pluckNextStep(doubts));
    if (std::abs(std::log(doubts.rubber.tension)) > kOtherTension * doubts.tensionSpread)
        return mark(Quality::Poor,
                    doubts.rubber.tension > 1.0 ? phrase("the tubes pull %1 more than this craft's",
                                                         sharePercent(doubts.rubber.tension - 1))
                                                : phrase("the tubes pull %1 less than this craft's",
                                                         sharePercent(1 - doubts.rubber.tension)),
                    measureStep(doubts));
    if (doubts.excited < 2)
        return {
            Quality::Poor,
            phrase("one mode alone rang, and one fits many crafts: pluck it in other ways too")};
    if (doubts.axesMisfit)
        return {Quality::Fair, phrase("the sensor's axes do not lie as stated")};
    if (doubts.free.compared == 0)
        return {Quality::Fair, phrase("what rings is too short or too noisy to compare its modes "
                                      "with this craft's: pluck again")};
    if (!doubts.isModulusMeasured)
        return {Quality::Fair, phrase("the tube's modulus is not measured: do the hang test")};
    if (ratio > kMostOfSilicone + 2 * doubts.ratioSpread)
        return mark(Quality::Fair,
                    phrase("a dynamic ratio of %1 is high for silicone", fixed(ratio, 2)),
                    measureStep(doubts));
    if (doubts.free.misfit > kFairMisfit)
        return mark(Quality::Fair, ofMisfit(doubts), pluckNextStep(doubts));
    if (doubts.free.residual > kWideSwings)
        return {Quality::Fair, phrase("%1 of the record are no ringing of six modes: pluck less "
                                      "far",
                                      sharePercent(doubts.free.residual))};
    if (doubts.excited < kEnoughModes)
        return {Quality::Fair, phrase("two modes alone rang: pluck it in other ways too")};
    return {Quality::Good,
            phrase("%1 of six modes rang, within %2 of this craft's", whole(doubts.excited),
                   sharePercent(std::max(doubts.free.misfit, 0.001)))};
}

std::vector<Warning> pluckWarnings(const PluckDoubts& doubts, const std::vector<Phrase>& toAdd)
{
    std::vector<Warning> warnings;
    if (!doubts.isModulusMeasured)
        warnings.push_back(
            {"pluck-modulus", phrase("A pluck cannot tell a stiff tube from a high dynamic ratio, "
                                     "and the tube's modulus is not measured: do the hang test "
                                     "first.")});
    if (doubts.axesMisfit)
        warnings.push_back({"pluck-axes", phrase("What the sensor shows does not fit its stated "
                                                 "axes or its place: directions were left out.")});
    if (!toAdd.empty())
        warnings.push_back({"pluck-modes", phrase("%1 of six modes have hardly rung. Pluck again: "
                                                  "%2.",
                                                  whole(6 - doubts.excited), listOf(toAdd))});
    return warnings;
}

}  // namespace stillbay
