// SPDX-License-Identifier: MIT
#include "ui/find/find_text.h"

#include "core/assess/texts.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

class Texts final {
    Q_DECLARE_TR_FUNCTIONS(FindTexts)
public:
    static QString tune(const Design& design, const Design& present);
    static QStringList robust(const Robustness& robust);
    static QString bestAsPlanned(const Candidate& best, const Design& present);
    static QStringList found(const Recommendation& answer);
    static QString alone(const std::vector<VariableEffect>& effects);
    static QStringList present(const Candidate& present);
    static QString shortRobust(const Robustness& robust);
    static QString clean(const Robustness& robust);
    static QString tolerances(const Tolerances& tolerances);
};

// With a true minus sign.
QString signedNumber(double value)
{
    const QString number = plainNumber(std::abs(value), 3);
    return value < 0 ? u'−' + number : number;
}

// Two digits tell all of less than a pixel.
QString pixelText(double wobble_px)
{
    return wobbleText(wobble_px, wobble_px < 1.0 ? 2 : 3);
}

/// What most often speaks against builds.
struct Commonest {
    double share = 0.0;
    QString text;
};

Commonest commonestOf(const Robustness& robust)
{
    const auto most = std::max_element(robust.violations.begin(), robust.violations.end());
    const auto violated = static_cast<Constraint>(most - robust.violations.begin());
    return {static_cast<double>(*most) / static_cast<double>(robust.samples),
            displayText(violationText(violated))};
}

// Names what is the craft's own only where it changes.
QString Texts::tune(const Design& design, const Design& present)
{
    QStringList parts{tr("%1 free length").arg(lengthText(design.mounts.free_length_mm)),
                      tr("stretch %1").arg(stretchText(valueOf(design, Variable::Stretch)))};
    if (std::abs(valueOf(design, Variable::Elevation) - valueOf(present, Variable::Elevation)) >
        1e-9)
        parts << tr("elevation %1").arg(elevationText(design));
    if (const QString place = placeText(design, present); !place.isEmpty())
        parts << place;
    if (!(stockOf(design.tube) == stockOf(present.tube)))
        parts << tr("tube %1").arg(tubeText(stockOf(design.tube)));
    return parts.join(tr(", "));
}

QStringList Texts::robust(const Robustness& robust)
{
    const Commonest against = commonestOf(robust);
    return {robust.p90_px
                ? tr("9 of 10 builds of it stay below %1 in cruise.").arg(pixelText(*robust.p90_px))
                : tr("%1 % of its builds are out of the question: %2.")
                      .arg(percentNumber(against.share), against.text),
            displayText(robustText(robust))};
}

QString Texts::bestAsPlanned(const Candidate& best, const Design& present)
{
    const QString worst = pixelText(best.evaluation.cruise.worst_px());
    if (best.robust->p90_px)
        return tr("Best as planned, but not as robust: %1; at most %2, and 9 of 10 builds stay "
                  "below %3.")
            .arg(tune(best.design, present), worst, pixelText(*best.robust->p90_px));
    const Commonest against = commonestOf(*best.robust);
    return tr("Best as planned, but not as robust: %1; at most %2, but of %3 % of its builds %4.")
        .arg(tune(best.design, present), worst, percentNumber(against.share), against.text);
}

// What each variable brings by itself, the largest gain first.
QString Texts::alone(const std::vector<VariableEffect>& effects)
{
    QStringList parts;
    for (const VariableEffect& effect : effects) {
        const QString value =
            effect.variable == Variable::Stretch ? stretchText(effect.to)
            : effect.variable == Variable::Direction || effect.variable == Variable::Elevation
                ? degreesText(effect.to, 3)
                : lengthText(effect.to);
        parts << tr("%1 %2: %3")
                     .arg(displayText(fieldOf(effect.variable).label), value,
                          effect.evaluation.feasible()
                              ? pixelText(effect.evaluation.cruise.worst_px())
                              : displayText(violationText(*effect.evaluation.violated)));
    }
    return tr("One at a time from the present tune, worst wobble in cruise: %1.")
        .arg(parts.join(tr("; ")));
}

QStringList Texts::found(const Recommendation& answer)
{
    const std::vector<Candidate> rows = rowsOf(answer);
    const Candidate& mostRobust = rows[mostRobustOf(rows)];
    const Evaluation& before = answer.present.evaluation;
    QStringList lines;
    for (const Phrase& sentence : reservations(answer.craft))
        lines << displayText(sentence);
    if (mostRobust.design == answer.present.design)
        lines << tr("Stay with the present tune: nothing found is more robust.");
    else
        lines << tr("Take %1.").arg(tune(mostRobust.design, answer.present.design))
              << (before.feasible()
                      ? tr("At most %1 in cruise from full to empty pack, instead of %2.")
                            .arg(pixelText(mostRobust.evaluation.cruise.worst_px()),
                                 pixelText(before.cruise.worst_px()))
                      : tr("At most %1 in cruise from full to empty pack; as it is, %2.")
                            .arg(pixelText(mostRobust.evaluation.cruise.worst_px()),
                                 displayText(violationText(*before.violated))));
    lines << robust(*mostRobust.robust);
    lines = {lines.takeFirst(), lines.join(u' ')};
    if (!(mostRobust.design == answer.best.design)) {
        const auto best = std::find_if(rows.begin(), rows.end(), [&](const Candidate& row) {
            return row.design == answer.best.design;
        });
        lines << bestAsPlanned(*best, answer.present.design);
    }
    if (answer.alone.size() > 1)
        lines << alone(answer.alone);
    for (const Phrase& sentence : widenTexts(answer))
        lines << displayText(sentence);
    return lines;
}

QStringList Texts::present(const Candidate& present)
{
    const QString planned =
        present.evaluation.feasible()
            ? tr("The present tune: at most %1 in cruise from full to empty pack.")
                  .arg(pixelText(present.evaluation.cruise.worst_px()))
            : tr("The present tune is out of the question even as planned: %1.")
                  .arg(displayText(violationText(*present.evaluation.violated)));
    return {planned, robust(*present.robust).join(u' ')};
}

QString Texts::shortRobust(const Robustness& robust)
{
    if (robust.p90_px)
        return pixelText(*robust.p90_px);
    const Commonest against = commonestOf(robust);
    return tr("— %1 % of builds: %2").arg(percentNumber(against.share), against.text);
}

QString Texts::clean(const Robustness& robust)
{
    return robust.clean
               ? tr("%1 % to %2 %")
                     .arg(percentNumber(robust.clean->from), percentNumber(robust.clean->to))
               : tr("nowhere");
}

QString Texts::tolerances(const Tolerances& tolerances)
{
    return tr("Builds differ in the cut of each tube by ±%1 mm, in where it is by ±%9 mm, in its "
              "direction by ±%10°, in hardness by ±%2 Shore (where "
              "the "
              "modulus was measured, by ±%3 %), in the bay's mass by ±%4 %, in the battery's by "
              "±%5 %, in temperature from %6 to %7 °C, and in unbalance from 1/%8 to %8 times.")
        .arg(plainNumber(tolerances.cut_mm, 3), plainNumber(tolerances.hardness_shore, 3),
             percentNumber(tolerances.measuredModulus), percentNumber(tolerances.bay),
             percentNumber(tolerances.battery), signedNumber(tolerances.coldest_c),
             signedNumber(tolerances.warmest_c), plainNumber(tolerances.unbalance, 3),
             plainNumber(tolerances.hole_mm, 3), plainNumber(tolerances.direction_deg, 3));
}

}  // namespace

QString placeText(const Design& design, const Design& present)
{
    QStringList moved;
    for (const Variable variable : kVariables) {
        const double value = valueOf(design, variable);
        if (!placesBay(variable) || std::abs(value - valueOf(present, variable)) < 1e-9)
            continue;
        moved << Texts::tr("%1 %2").arg(
            displayText(fieldOf(variable).label),
            variable == Variable::Direction ? degreesText(value, 3) : lengthText(value));
    }
    return moved.join(Texts::tr(", "));
}

QString elevationText(const Design& design)
{
    return degreesText(valueOf(design, Variable::Elevation), 3);
}

QString verdictText(const CruiseWobble& wobble, const Evaluation& evaluation)
{
    return evaluation.feasible() ? pixelText(wobble.worst_px) : QStringLiteral("—");
}

QString p90Text(const Robustness& robust)
{
    return Texts::shortRobust(robust);
}

QString cleanText(const Robustness& robust)
{
    return Texts::clean(robust);
}

QStringList answerTexts(const Recommendation& answer)
{
    return answer.candidates.empty() ? Texts::present(answer.present) : Texts::found(answer);
}

QString tolerancesText(const Tolerances& tolerances)
{
    return Texts::tolerances(tolerances);
}

}  // namespace stillbay::ui
