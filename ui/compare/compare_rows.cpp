// SPDX-License-Identifier: MIT
#include "ui/compare/compare_rows.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/design/design.h"
#include "core/setup/mount_layout.h"
#include "ui/charts/point_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/distinct_numbers.h"
#include "ui/widgets/quantity.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

namespace stillbay::ui {
namespace {

class CompareTexts {
    Q_DECLARE_TR_FUNCTIONS(CompareTexts)
};

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr int kMostDecimals = 3;
constexpr double kGramPerKilogram = 1e3, kMillimetrePerMetre = 1e3;

using Value = std::function<double(const ComparedCraft&)>;

/// How the numbers of a line are written.
struct Unit {
    QString pattern;  ///< "%1 mm"
    int decimals;     ///< at least
};

CompareRow numbersOf(const QString& name, const std::vector<ComparedCraft>& crafts,
                     const Unit& unit, const Value& value)
{
    std::vector<double> values;
    for (const ComparedCraft& craft : crafts)
        values.push_back(value(craft));
    CompareRow row{name, distinctNumbers(values, unit.decimals, kMostDecimals)};
    for (std::size_t k = 0; k < values.size(); ++k)
        if (std::isfinite(values[k]))
            row.cells[static_cast<int>(k)] = unit.pattern.arg(row.cells[static_cast<int>(k)]);
    return row;
}

Value figure(const std::function<double(const TuneFigures&)>& of)
{
    return [of](const ComparedCraft& craft) {
        const TuneFigures* const known = craft.known();
        return known ? of(*known) : kNone;
    };
}

CompareRow wordsOf(const QString& name, const std::vector<ComparedCraft>& crafts,
                   const std::function<QString(const ComparedCraft&)>& word)
{
    CompareRow row{name, {}, {}, false};
    for (const ComparedCraft& craft : crafts)
        row.cells << word(craft);
    return row;
}

QString unitText(const QString& unit)
{
    return unit == QStringLiteral("°") ? CompareTexts::tr("%1°")
                                       : CompareTexts::tr("%1\u00a0%2").arg(u"%1", unit);
}

// Of all tubes where they are alike, else each angle once, rising.
QString elevationsText(const Mounts& mounts)
{
    std::vector<double> angles_deg;
    for (const MountPoint& point : mounts.points) {
        const Triple anchor = anchorOf(mounts, point);
        const double up = anchor[2] - point.bay_mm[2];
        const double out = std::hypot(anchor[0] - point.bay_mm[0], anchor[1] - point.bay_mm[1]);
        angles_deg.push_back(std::round(10.0 * std::atan2(up, out) * 180.0 / std::numbers::pi) /
                             10.0);
    }
    std::sort(angles_deg.begin(), angles_deg.end());
    angles_deg.erase(std::unique(angles_deg.begin(), angles_deg.end()), angles_deg.end());
    QStringList texts;
    for (const QString& number : distinctNumbers(angles_deg, 1, 1))
        texts << CompareTexts::tr("%1°").arg(number);
    return texts.join(QStringLiteral(" / "));
}

QString verdictText(const ComparedCraft& craft)
{
    if (!craft.figures)
        return CompareTexts::tr("…");
    const TuneFigures* const known = craft.known();
    if (!known)
        return CompareTexts::tr("no answer");
    if (known->status.violated.empty())
        return known->cruise ? gradeWord(craft.limits, known->cruise->worst_px())
                             : displayText(outsideCruiseText());
    QStringList texts;
    for (const Warning& violated : known->status.violated)
        texts << displayText(violated.text);
    return texts.join(CompareTexts::tr(", "));
}

double leastTension(const TuneFigures& figures)
{
    double least = std::numeric_limits<double>::infinity();
    for (const TubeAtRest& tube : figures.rest.tubes)
        least = std::min(least, tube.tension);
    return least;
}

void addTube(std::vector<CompareRow>& rows, const std::vector<ComparedCraft>& crafts)
{
    rows.push_back(wordsOf(CompareTexts::tr("Tube"), crafts, [](const ComparedCraft& craft) {
        return tubeText(stockOf(craft.design.tube));
    }));
    rows.push_back(
        numbersOf(CompareTexts::tr("Free length"), crafts, {CompareTexts::tr("%1\u00a0mm"), 1},
                  [](const ComparedCraft& craft) { return craft.design.mounts.free_length_mm; }));
    rows.push_back(numbersOf(CompareTexts::tr("Stretch"), crafts,
                             {CompareTexts::tr("%1\u00a0%"), 1}, [](const ComparedCraft& craft) {
                                 return kPercent * (valueOf(craft.design, Variable::Stretch) - 1.0);
                             }));
    rows.push_back(wordsOf(CompareTexts::tr("Elevation"), crafts, [](const ComparedCraft& craft) {
        return elevationsText(craft.design.mounts);
    }));
}

void addPlace(std::vector<CompareRow>& rows, const std::vector<ComparedCraft>& crafts)
{
    for (const Variable variable : kVariables) {
        if (!placesBay(variable))
            continue;
        const VariableField field = fieldOf(variable);
        rows.push_back(numbersOf(
            displayText(field.label), crafts,
            {unitText(QString::fromUtf8(field.unit)), field.decimals},
            [variable](const ComparedCraft& craft) { return valueOf(craft.design, variable); }));
    }
}

void addFlight(std::vector<CompareRow>& rows, const std::vector<ComparedCraft>& crafts)
{
    const Unit pixels{CompareTexts::tr("%1\u00a0px"), 2};
    rows.push_back(numbersOf(CompareTexts::tr("Worst in cruise, full pack"), crafts, pixels,
                             figure([](const TuneFigures& known) {
                                 return known.cruise ? known.cruise->full.worst_px : kNone;
                             })));
    rows.push_back(numbersOf(CompareTexts::tr("Worst in cruise, empty pack"), crafts, pixels,
                             figure([](const TuneFigures& known) {
                                 return known.cruise ? known.cruise->empty.worst_px : kNone;
                             })));
    CompareRow verdict = wordsOf(CompareTexts::tr("Verdict"), crafts, verdictText);
    for (const ComparedCraft& craft : crafts)
        verdict.meanings << (craft.figures && !*craft.figures
                                 ? displayText(craft.figures->error().what)
                                 : QString());
    rows.push_back(std::move(verdict));
}

void addBench(std::vector<CompareRow>& rows, const std::vector<ComparedCraft>& crafts)
{
    const Unit newton{CompareTexts::tr("%1\u00a0N"), 2};
    rows.push_back(numbersOf(CompareTexts::tr("Tension, as fitted"), crafts, newton,
                             figure([](const TuneFigures& known) { return known.tube.tension; })));
    rows.push_back(
        numbersOf(CompareTexts::tr("Least tension at rest"), crafts, newton, figure(leastTension)));
    rows.push_back(numbersOf(CompareTexts::tr("Bay leaves its drawn place by"), crafts,
                             {CompareTexts::tr("%1\u00a0mm"), 1},
                             figure([](const TuneFigures& known) {
                                 return kMillimetrePerMetre * known.rest.shift.norm();
                             })));
    rows.push_back(numbersOf(
        CompareTexts::tr("Mass of the bay"), crafts, {CompareTexts::tr("%1\u00a0g"), 0},
        figure([](const TuneFigures& known) { return kGramPerKilogram * known.bay.mass; })));
    for (std::size_t mode = 0; mode < std::tuple_size_v<decltype(TuneFigures::bench)>; ++mode) {
        CompareRow row = numbersOf(
            CompareTexts::tr("Bench mode %1").arg(mode + 1), crafts,
            {CompareTexts::tr("%1\u00a0Hz"), 1},
            figure([mode](const TuneFigures& known) { return known.bench.at(mode).frequency_hz; }));
        for (const ComparedCraft& craft : crafts)
            row.meanings << (craft.known() ? displayText(craft.known()->bench.at(mode).text)
                                           : QString());
        rows.push_back(std::move(row));
    }
}

}  // namespace

std::vector<CompareRow> compareRows(const std::vector<ComparedCraft>& crafts)
{
    std::vector<CompareRow> rows;
    if (crafts.empty())
        return rows;
    addFlight(rows, crafts);
    addTube(rows, crafts);
    addPlace(rows, crafts);
    addBench(rows, crafts);
    return rows;
}

}  // namespace stillbay::ui
