// SPDX-License-Identifier: MIT
#include "app/commands/uncertainty_report.h"

#include "app/commands/paragraph.h"
#include "core/advice/uncertainty_texts.h"

namespace stillbay {
namespace {

Json percentilesJson(const Percentiles& percentiles)
{
    return {{"p10", number(percentiles.p10)},
            {"p50", number(percentiles.p50)},
            {"p90", number(percentiles.p90)}};
}

Json shareJson(const std::optional<VarianceShare>& share)
{
    if (!share)
        return nullptr;
    return {{"share", number(share->share)}, {"standard_error", number(share->standard_error)}};
}

Json sharesJson(const AnswerShares& shares)
{
    return {{"worst", shareJson(shares.worst)},
            {"bad_from", shareJson(shares.badFrom)},
            {"bad_to", shareJson(shares.badTo)}};
}

}  // namespace

Json uncertaintyJson(const Uncertainty& u)
{
    return {{"crafts", u.crafts},
            {"clean", u.clean},
            {"faint", u.faint},
            {"bad", u.bad},
            {"unflyable", u.unflyable},
            {"worst_px", percentilesJson(u.worst_px)},
            {"bad_from", percentilesJson(u.badFrom)},
            {"bad_to", percentilesJson(u.badTo)},
            {"not_known", array(u.notKnown,
                                [](const NotKnown& input) {
                                    return Json{{"key", input.key},
                                                {"label", english(input.label)},
                                                {"measurement", english(input.measurement)},
                                                {"shares", sharesJson(input.shares)}};
                                })},
            {"build_to_build", sharesJson(u.buildToBuild)}};
}

void uncertaintySection(std::ostream& page, const Uncertainty& u)
{
    page << "\nWhat is not known\n";
    for (const Phrase& sentence : uncertaintySentences(u))
        paragraph(page, english(sentence), "  ");
    const std::vector<Phrase> lines = measureFirst(u);
    if (!lines.empty())
        page << "\nWhat to measure first\n";
    for (const Phrase& line : lines)
        paragraph(page, english(line) + '.', "  - ");
    if (const Phrase builds = buildToBuildText(u); !builds.pattern.empty())
        paragraph(page, english(builds), "  ");
}

}  // namespace stillbay
