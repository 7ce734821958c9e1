// SPDX-License-Identifier: MIT
#include "app/commands/report_page.h"

#include "app/commands/paragraph.h"
#include "app/commands/uncertainty_report.h"
#include "core/assess/texts.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/base/units.h"
#include "core/suspension/motion_text.h"

#include <cmath>
#include <sstream>

namespace stillbay {
namespace {

void modesTable(std::ostream& page, const char* title, const std::array<ModeFigures, 6>& modes)
{
    page << '\n' << title << '\n';
    page << "    Hz       loss    motion\n";
    for (const ModeFigures& mode : modes)
        page << formatted("  %7.2f   %6.3f    ", mode.frequency_hz, mode.loss_factor)
             << english(mode.text) << '\n';
}

void tubeTable(std::ostream& page, const Assessment& a)
{
    const TubeFigures& t = a.tube;
    page << "\nThe tube as drawn\n";
    page << formatted("  length %.2f mm, stretch %.3f, tension %.2f N (%.0f gf)\n",
                      t.length / unit::mm, t.stretch, t.tension, t.tension / kGravity / unit::g);
    page << formatted(
        "  Young's modulus %.2f MPa%s\n", t.youngs_modulus / unit::mpa,
        t.modulus_from_hardness ? " (from the hardness: a factor of 1.5 either way)" : "");
    page << formatted("  stiffness along %.2f N/mm, across %.2f N/mm", t.axial_stiffness * unit::mm,
                      t.lateral_stiffness * unit::mm);
    if (t.own_resonance_hz)
        page << formatted(", own resonance %.0f Hz", *t.own_resonance_hz);
    page << '\n';
}

const char* stateWord(TubeState state)
{
    switch (state) {
        case TubeState::Taut:
            return "taut";
        case TubeState::Slack:
            return "slack";
        case TubeState::Buckled:
            break;
    }
    return "buckled";
}

void restTable(std::ostream& page, const Assessment& a)
{
    page << "\nAt rest\n";
    paragraph(page, english(restText(a.rest)), "  ");
    page << "  tube   stretch    tension\n";
    for (std::size_t i = 0; i < a.rest.tubes.size(); ++i)
        page << formatted("  %4zu   %7.3f   %6.2f N   %s\n", i + 1, a.rest.tubes[i].stretch,
                          a.rest.tubes[i].tension, stateWord(a.rest.tubes[i].state));
}

void massTable(std::ostream& page, const Assessment& a)
{
    const auto row = [&](const char* name, const MassFigures& body) {
        // Adding 0 keeps a rounded −0 out.
        const Vector3d c = (body.centre / unit::mm * 10).array().round() / 10 + 0.0;
        page << formatted("  %-10s %7.1f g   centre %6.1f, %6.1f, %6.1f mm\n", name,
                          body.mass / unit::g, c.x(), c.y(), c.z());
    };
    page << "\nMasses\n";
    row("bay", a.bay);
    row("airframe", a.airframe);
}

// Why the bay turns: where the tubes hold it, and what part each motion has in each bench mode.
void turningSection(std::ostream& page, const Assessment& a)
{
    page << "\nWhy the bay turns\n";
    for (const Phrase& sentence : turningTexts(a.elastic_centre))
        paragraph(page, english(sentence), "  ");
    paragraph(page, english(decouplingText(a.bench_decoupling)), "  ");
    page << "  Energy of the bench modes, %\n    Hz      ";
    for (Eigen::Index motion = 0; motion < 6; ++motion)
        page << formatted("%7s", english(motionName(motion)).c_str());
    page << '\n';
    for (const ModeFigures& mode : a.bench) {
        page << formatted("  %7.2f   ", mode.frequency_hz);
        for (const double share : mode.energy)  // adding 0 keeps a rounded −0 out
            page << formatted("%7.0f", std::round(100 * share) + 0.0);
        page << '\n';
    }
}

const char* origin(bool estimated)
{
    return estimated ? "estimated" : "given";
}

void driveLines(std::ostream& page, const Assessment& a)
{
    page << formatted("Motors: diameter %.1f mm (%s), height %.1f mm (%s)\n",
                      a.motor.diameter / unit::mm, origin(a.motor.diameter_estimated),
                      a.motor.height / unit::mm, origin(a.motor.height_estimated));
    page << formatted("Propellers: moment of inertia %.0f g·mm² (%s)\n",
                      a.propeller.inertia / unit::g_mm2, origin(a.propeller.inertia_estimated));
    page << formatted(
        "Balance of each bell with its propeller at hover: grade G %.0f "
        "(ISO 21940-11)\n",
        a.hover.balance_grade_mm_s);
}

std::string cruiseSentence(const Assessment& a)
{
    return a.cruise ? english(cruiseText(*a.cruise)) : english(outsideCruiseText()) + '.';
}

void suggestionsList(std::ostream& page, const Suggestions& suggestions)
{
    const std::vector<Suggestion> best = suggestions.best(kShownSuggestions);
    if (best.empty())
        return;
    page << "\nSuggestions, one step at a time\n";
    for (const Suggestion& suggestion : best) {
        std::string text = english(suggestion.step.text) +
                           formatted(". Wobble %.2f px instead of %.2f px (%+.0f %%)",
                                     suggestion.after_px, *suggestions.before_px,
                                     100 * (suggestion.after_px / *suggestions.before_px - 1));
        if (suggestion.mends)
            text += ", and the craft may fly then";
        else if (!suggestion.mayFly)
            text += ", but the craft must not fly then";
        for (const Warning& warning : suggestion.newWarnings)
            if (const Phrase danger = dangerText(warning); !danger.pattern.empty())
                text += ", but " + english(danger);
        if (suggestion.movedTo)
            text += ", but " + english(movedText(*suggestion.movedTo));
        paragraph(page, text + ".", "  - ");
    }
}

}  // namespace

std::string reportPage(const Setup& setup, const Assessment& a, const Suggestions& suggestions,
                       const Uncertainty* uncertainty)
{
    std::ostringstream page;
    page << (setup.name.empty() ? "Unnamed craft" : printable(setup.name)) << "\n\n";
    paragraph(page, english(verdictText(a)) + '.', "  ");
    for (const Phrase& sentence : findings(setup, a))
        paragraph(page, english(sentence), "  ");
    paragraph(page, cruiseSentence(a), "  ");
    if (const Phrase shake = frameShakeText(setup.flight, a); !shake.pattern.empty())
        paragraph(page, english(shake), "  ");
    if (!a.warnings.empty())
        page << "\nWarnings\n";
    for (const Warning& warning : a.warnings)
        paragraph(page, english(warning.text), "  - ");
    suggestionsList(page, suggestions);
    if (uncertainty)
        uncertaintySection(page, *uncertainty);
    massTable(page, a);
    tubeTable(page, a);
    restTable(page, a);
    modesTable(page, "Modes on the bench, airframe held", a.bench);
    modesTable(page, "Modes in flight, airframe free", a.flight);
    turningSection(page, a);
    page << formatted("\nArms with their motors: %.1f Hz up and down, %.1f Hz sideways\n",
                      a.arm_vertical_hz, a.arm_horizontal_hz);
    driveLines(page, a);
    page << "\nBefore you fly\n";
    for (const Phrase& warning : safetyWarnings())
        paragraph(page, english(warning), "  - ");
    return page.str();
}

}  // namespace stillbay
