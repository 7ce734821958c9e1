// SPDX-License-Identifier: MIT
#include "app/commands/search_page.h"

#include "app/commands/paragraph.h"
#include "core/assess/texts.h"
#include "core/base/format.h"
#include "core/base/printable.h"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace stillbay {
namespace {

constexpr std::size_t kMostRows = 21, kMostColumns = 9;

double points(double stretch)
{
    return 100 * (stretch - 1);
}

std::string tubeText(const StockTube& tube)
{
    return formatted("%g × %g mm, Shore %g", tube.outer_diameter_mm, tube.bore_mm,
                     tube.hardness_shore_a);
}

// "height of the points -48 mm"
std::string valueText(Variable variable, double value)
{
    const VariableField field = fieldOf(variable);
    if (variable == Variable::Stretch)
        return formatted("%s %+.1f %%", field.label, points(value));
    return formatted("%s %.*f%s%s", field.label, field.decimals, value,
                     std::string_view(field.unit) == "°" || !*field.unit ? "" : " ", field.unit);
}

// Where it holds the bay, as far as that is elsewhere than at present: ", Height … "
std::string placeText(const Design& design, const Design& present)
{
    std::string text;
    for (const Variable variable : kVariables)
        if (const double value = valueOf(design, variable);
            placesBay(variable) && std::abs(value - valueOf(present, variable)) > 1e-9)
            text += ", " + valueText(variable, value);
    return text;
}

std::string designText(const Candidate& candidate, const Design& present)
{
    return formatted("%.2f mm free, stretched %+.1f %%, rising %.1f°, tube %s",
                     candidate.design.mounts.free_length_mm,
                     points(valueOf(candidate.design, Variable::Stretch)),
                     valueOf(candidate.design, Variable::Elevation),
                     tubeText(stockOf(candidate.design.tube)).c_str()) +
           placeText(candidate.design, present);
}

// What most often speaks against builds of a design, with its share.
std::string refusedText(const Robustness& robust)
{
    const auto most = std::max_element(robust.violations.begin(), robust.violations.end());
    return formatted(
        "%.0f %%: %s", 100.0 * static_cast<double>(*most) / static_cast<double>(robust.samples),
        english(violationText(static_cast<Constraint>(most - robust.violations.begin()))).c_str());
}

void sentences(std::ostream& page, const Recommendation& answer)
{
    for (const Phrase& sentence : reservations(answer.craft))
        paragraph(page, english(sentence), "  ");
    const Candidate& best = answer.best;
    const Evaluation& present = answer.present.evaluation;
    const std::string before = present.feasible()
                                   ? formatted(", instead of %.3g px", present.cruise.worst_px())
                                   : "; as it is, " + english(violationText(*present.violated));
    paragraph(page,
              "Best as planned: " + designText(best, answer.present.design) +
                  formatted(". At most %.3g px in cruise from full to empty pack",
                            best.evaluation.cruise.worst_px()) +
                  before + ".",
              "  ");
    const Candidate& robust = answer.candidates.front();
    if (!robust.robust)
        return;
    if (!(robust.design == best.design))
        paragraph(page, "Most robust: " + designText(robust, answer.present.design) + ".", "  ");
    if (robust.robust->p90_px)
        paragraph(
            page,
            formatted("9 of 10 builds of it stay below %.3g px in cruise.", *robust.robust->p90_px),
            "  ");
    else
        paragraph(page, "Of its builds " + refusedText(*robust.robust) + ".", "  ");
    paragraph(page, english(robustText(*robust.robust)), "  ");
    for (const Phrase& sentence : widenTexts(answer))
        paragraph(page, english(sentence), "  ");
}

// What each variable brings by itself.
void aloneLines(std::ostream& page, const Recommendation& answer)
{
    if (answer.alone.size() < 2)
        return;
    page << "\nOne at a time from the present, worst wobble in cruise\n";
    for (const VariableEffect& effect : answer.alone)
        paragraph(page,
                  valueText(effect.variable, effect.to) + ": " +
                      (effect.evaluation.feasible()
                           ? formatted("%.3g px", effect.evaluation.cruise.worst_px())
                           : english(violationText(*effect.evaluation.violated))),
                  "  ");
}

void candidateRow(std::ostream& page, const Candidate& candidate, const char* mark)
{
    const Evaluation& evaluation = candidate.evaluation;
    page << formatted("  %-4s %7.2f  %+7.1f %%  %7.1f°  %-22s", mark,
                      candidate.design.mounts.free_length_mm,
                      points(valueOf(candidate.design, Variable::Stretch)),
                      valueOf(candidate.design, Variable::Elevation),
                      tubeText(stockOf(candidate.design.tube)).c_str());
    if (!evaluation.feasible()) {
        page << "  " << english(violationText(*evaluation.violated)) << '\n';
        return;
    }
    page << formatted(" %6.3f  %6.3f", evaluation.cruise.full.worst_px,
                      evaluation.cruise.empty.worst_px);
    if (candidate.robust)
        page << "  "
             << (candidate.robust->p90_px ? formatted("%6.3f", *candidate.robust->p90_px)
                                          : "     –");
    page << '\n';
    if (candidate.robust && !candidate.robust->p90_px)
        paragraph(page, "of its builds " + refusedText(*candidate.robust), "         ");
}

void candidateTable(std::ostream& page, const Recommendation& answer)
{
    page << "\nCandidates, the most robust first; worst wobble in cruise, px\n"
            "        free mm    stretch  elevation  tube                     full   empty  9 of "
            "10\n";
    for (const Candidate& candidate : answer.candidates)
        candidateRow(page, candidate, candidate.design == answer.best.design ? "best" : "");
    candidateRow(page, answer.present, "now");
}

std::string cellText(const Evaluation& evaluation)
{
    if (!evaluation.feasible())
        return std::string(8, ' ') +
               static_cast<char>('a' + static_cast<int>(*evaluation.violated));
    return formatted("%9.3f", evaluation.cruise.worst_px());
}

// Evenly spread indices, the first and the last among them.
std::vector<std::size_t> shown(std::size_t count, std::size_t most)
{
    const std::size_t stride = (count + most - 2) / (most - 1);
    std::vector<std::size_t> indices;
    for (std::size_t i = 0; i + 1 < count; i += std::max<std::size_t>(stride, 1))
        indices.push_back(i);
    indices.push_back(count - 1);
    return indices;
}

void mapTable(std::ostream& page, const Recommendation& answer)
{
    if (!answer.map)
        return;
    const DesignMap& map = *answer.map;
    const auto title = [](Variable variable) {
        const VariableField field = fieldOf(variable);
        return std::string(field.label) + ", " + (variable == Variable::Stretch ? "%" : field.unit);
    };
    page << "\nWorst wobble in cruise, full to empty pack, px\n  down: " << title(map.x.variable);
    if (map.y.count > 1)
        page << "; across: " << title(map.y.variable);
    page << "\n          ";
    const auto columns = shown(map.y.count, kMostColumns);
    for (const std::size_t j : columns)
        page << (map.y.count == 1                      ? std::string("       px")
                 : map.y.variable == Variable::Stretch ? formatted("%+9.1f", points(map.y.at(j)))
                                                       : formatted("%9.1f", map.y.at(j)));
    page << '\n';
    std::array<bool, kConstraints> met{};
    for (const std::size_t i : shown(map.x.count, kMostRows)) {
        page << formatted("  %7.2f ",
                          map.x.variable == Variable::Stretch ? points(map.x.at(i)) : map.x.at(i));
        for (const std::size_t j : columns) {
            page << cellText(map.at(i, j));
            if (const auto& violated = map.at(i, j).violated)
                met.at(static_cast<std::size_t>(*violated)) = true;
        }
        page << '\n';
    }
    for (std::size_t k = 0; k < met.size(); ++k)
        if (met[k])
            page << "  " << static_cast<char>('a' + static_cast<int>(k)) << "  "
                 << english(violationText(static_cast<Constraint>(k))) << '\n';
}

}  // namespace

std::string searchPage(const Recommendation& answer)
{
    std::ostringstream page;
    page << (answer.setup.name.empty() ? "Unnamed craft" : printable(answer.setup.name)) << "\n\n";
    sentences(page, answer);
    candidateTable(page, answer);
    aloneLines(page, answer);
    mapTable(page, answer);
    page << "\nBefore you fly\n";
    for (const Phrase& warning : safetyWarnings())
        paragraph(page, english(warning), "  - ");
    return page.str();
}

}  // namespace stillbay
