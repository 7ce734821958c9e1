// SPDX-License-Identifier: MIT
#include "ui/find/find_words.h"

#include "ui/widgets/in_words.h"
#include "ui/widgets/plain_number.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

class Words final {
    Q_DECLARE_TR_FUNCTIONS(FindWords)
public:
    static QString tune(const Design& design, const Design& present);
    static QStringList robust(const Robustness& robust);
    static QString bestAsPlanned(const Candidate& best, const Design& present);
    static QStringList found(const FindAnswer& answer);
    static QStringList present(const Candidate& present);
    static QString tube(const StockTube& tube);
    static QString sturdy(const Robustness& robust);
    static QString clean(const Robustness& robust);
    static QString spread(const Spread& spread);
};

QString percent(double share)
{
    return plainDecimals(100.0 * share, 0);
}

// With a true minus sign.
QString signedNumber(double value)
{
    const QString number = plainNumber(std::abs(value), 3);
    return value < 0 ? u'−' + number : number;
}

/// What most often speaks against builds.
struct Commonest {
    double share = 0.0;
    QString words;
};

Commonest commonestOf(const Robustness& robust)
{
    const auto most = std::max_element(robust.refused.begin(), robust.refused.end());
    const auto objection = static_cast<Objection>(most - robust.refused.begin());
    return {static_cast<double>(*most) / static_cast<double>(robust.builds),
            inWords(objectionInWords(objection))};
}

QString Words::tube(const StockTube& tube)
{
    return tr("%1 × %2 mm, Shore %3")
        .arg(plainNumber(tube.outer_diameter_mm, 4), plainNumber(tube.bore_mm, 4),
             plainNumber(tube.hardness_shore_a, 3));
}

// Names what is the craft's own only where it changes.
QString Words::tune(const Design& design, const Design& present)
{
    QStringList parts{tr("%1 free length").arg(lengthText(design)),
                      tr("stretch %1").arg(stretchText(design))};
    if (std::abs(valueOf(design, Knob::Elevation) - valueOf(present, Knob::Elevation)) > 1e-9)
        parts << tr("rising %1").arg(elevationText(design));
    if (!(stockOf(design.tube) == stockOf(present.tube)))
        parts << tr("tube %1").arg(tubeText(stockOf(design.tube)));
    return parts.join(tr(", "));
}

QStringList Words::robust(const Robustness& robust)
{
    const Commonest against = commonestOf(robust);
    return {robust.p90_px
                ? tr("9 of 10 builds of it stay below %1 in cruise.").arg(pixelText(*robust.p90_px))
                : tr("%1 % of its builds are out of the question: %2.")
                      .arg(percent(against.share), against.words),
            inWords(robustInWords(robust))};
}

QString Words::bestAsPlanned(const Candidate& best, const Design& present)
{
    const QString worst = pixelText(best.verdict.worst_px());
    if (best.robust->p90_px)
        return tr("Best as planned, but not as sturdy: %1; at most %2, and 9 of 10 builds stay "
                  "below %3.")
            .arg(tune(best.design, present), worst, pixelText(*best.robust->p90_px));
    const Commonest against = commonestOf(*best.robust);
    return tr("Best as planned, but not as sturdy: %1; at most %2, but of %3 % of its builds %4.")
        .arg(tune(best.design, present), worst, percent(against.share), against.words);
}

QStringList Words::found(const FindAnswer& answer)
{
    const std::vector<Candidate> rows = rowsOf(answer);
    const Candidate& sturdiest = rows[sturdiestOf(rows)];
    const Judgement& before = answer.present.verdict;
    QStringList lines;
    if (sturdiest.design == answer.present.design)
        lines << tr("Stay with the present tune: nothing found is sturdier.");
    else
        lines << tr("Take %1.").arg(tune(sturdiest.design, answer.present.design))
              << (before.feasible()
                      ? tr("At most %1 in cruise from full to empty pack, instead of %2.")
                            .arg(pixelText(sturdiest.verdict.worst_px()),
                                 pixelText(before.worst_px()))
                      : tr("At most %1 in cruise from full to empty pack; as it is, %2.")
                            .arg(pixelText(sturdiest.verdict.worst_px()),
                                 inWords(objectionInWords(*before.objection))));
    lines << robust(*sturdiest.robust);
    lines = {lines.takeFirst(), lines.join(u' ')};
    if (!(sturdiest.design == answer.best)) {
        const auto best = std::find_if(rows.begin(), rows.end(), [&](const Candidate& row) {
            return row.design == answer.best;
        });
        lines << bestAsPlanned(*best, answer.present.design);
    }
    for (const Knob knob : answer.widen)
        lines << tr("The range of “%1” ends where it still gets sturdier: widen it and find again.")
                     .arg(inWords(fieldOf(knob).label));
    return lines;
}

QStringList Words::present(const Candidate& present)
{
    const QString planned =
        present.verdict.feasible()
            ? tr("The present tune: at most %1 in cruise from full to empty pack.")
                  .arg(pixelText(present.verdict.worst_px()))
            : tr("The present tune is out of the question even as planned: %1.")
                  .arg(inWords(objectionInWords(*present.verdict.objection)));
    return {planned, robust(*present.robust).join(u' ')};
}

QString Words::sturdy(const Robustness& robust)
{
    if (robust.p90_px)
        return pixelText(*robust.p90_px);
    const Commonest against = commonestOf(robust);
    return tr("— %1 % of builds: %2").arg(percent(against.share), against.words);
}

QString Words::clean(const Robustness& robust)
{
    return robust.clean
               ? tr("%1 % to %2 %").arg(percent(robust.clean->from), percent(robust.clean->to))
               : tr("nowhere");
}

QString Words::spread(const Spread& spread)
{
    return tr("Builds differ in the cut of each tube by ±%1 mm, in hardness by ±%2 Shore (where "
              "the "
              "modulus was measured, by ±%3 %), in the bay's mass by ±%4 %, in the battery's by "
              "±%5 %, in temperature from %6 to %7 °C, and in unbalance from 1/%8 to %8 times.")
        .arg(plainNumber(spread.cut_mm, 3), plainNumber(spread.hardness_shore, 3),
             percent(spread.measuredModulus), percent(spread.bay), percent(spread.battery),
             signedNumber(spread.coldest_c), signedNumber(spread.warmest_c),
             plainNumber(spread.unbalance, 3));
}

}  // namespace

QString tubeText(const StockTube& tube)
{
    return Words::tube(tube);
}

QString lengthText(const Design& design)
{
    return Words::tr("%1 mm").arg(plainNumber(design.mounts.free_length_mm, 4));
}

QString stretchText(const Design& design)
{
    const double points = 100.0 * (valueOf(design, Knob::Stretch) - 1.0);
    const QString number = plainNumber(std::abs(points), 3);
    return points < 0 ? Words::tr("−%1 %").arg(number) : Words::tr("+%1 %").arg(number);
}

QString elevationText(const Design& design)
{
    return Words::tr("%1°").arg(plainNumber(valueOf(design, Knob::Elevation), 3));
}

QString pixelText(double wobble_px)
{
    return Words::tr("%1 px").arg(plainNumber(wobble_px, wobble_px < 1.0 ? 2 : 3));
}

QString verdictText(const CruiseWobble& wobble, const Judgement& verdict)
{
    return verdict.feasible() ? pixelText(wobble.worst_px) : QStringLiteral("—");
}

QString sturdyText(const Robustness& robust)
{
    return Words::sturdy(robust);
}

QString cleanText(const Robustness& robust)
{
    return Words::clean(robust);
}

QStringList answerInWords(const FindAnswer& answer)
{
    return answer.candidates.empty() ? Words::present(answer.present) : Words::found(answer);
}

QString spreadInWords(const Spread& spread)
{
    return Words::spread(spread);
}

}  // namespace stillbay::ui
