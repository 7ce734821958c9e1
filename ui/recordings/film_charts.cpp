// SPDX-License-Identifier: MIT
#include "ui/recordings/film_charts.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>
#include <QStringList>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kLeastShown_hz = 200.0;
constexpr double kBeyondLast = 1.15;   // of the highest line or order
constexpr double kShownOfFloor = 0.5;  // what is predicted below would stretch the chart
constexpr std::size_t kFilmedHue = 0, kPredictedHue = 1, kFloorHue = 2;

// The strongest line of an order, where the match may be relied on; null: none is of it.
const MatchedLine* lineOf(const FilmMatch& match, int order)
{
    if (match.mark.quality == Quality::Poor)
        return nullptr;
    const auto found =
        std::find_if(match.lines.begin(), match.lines.end(),
                     [order](const MatchedLine& line) { return line.order == order; });
    return found == match.lines.end() ? nullptr : &*found;
}

// An order's name at the line that it names, else where it is predicted. A line that is taken for
// one of its aliases stands elsewhere, and says which.
MeasuredShown::Place nameOf(const OrderOnFilm& order, const CraftFilm& film, int blades)
{
    const QString name = displayText(orderName(order.order, blades));
    const MatchedLine* const line = lineOf(*film.match, order.order);
    if (!line)
        return {order.frequency_hz, name};
    const double filmed_hz = film.reading.lines[line->line].frequency_hz;
    if (filmed_hz == line->frequency_hz)
        return {filmed_hz, name};
    return {filmed_hz, QObject::tr("%1, as %2 Hz", "an order and the alias that is meant")
                           .arg(name, plainNumber(line->frequency_hz, 4))};
}

}  // namespace

MeasuredShown filmLinesShown(const CraftFilm& film, int blades)
{
    MeasuredShown shown;
    shown.name = QObject::tr("Lines of the film");
    shown.across = {QObject::tr("Frequency (Hz)"), QStringLiteral("frequency_hz")};
    shown.up = {QObject::tr("Wobble (px)"), QStringLiteral("wobble_px"), true};
    double last = kLeastShown_hz;
    MeasuredCurve filmed{QObject::tr("filmed"), QStringLiteral("filmed_px"), {}, {}};
    filmed.isOfSticks = true;
    filmed.hue = kFilmedHue;
    std::vector<FilmLine> lines = film.reading.lines;
    std::sort(lines.begin(), lines.end(),
              [](const FilmLine& a, const FilmLine& b) { return a.frequency_hz < b.frequency_hz; });
    for (const FilmLine& line : lines) {
        filmed.x.push_back(line.frequency_hz);
        filmed.y.push_back(line.wobble_px);
        shown.measured.push_back({line.frequency_hz, plainNumber(line.frequency_hz, 4)});
        last = std::max(last, kBeyondLast * line.frequency_hz);
    }
    MeasuredCurve predicted{QObject::tr("predicted"), QStringLiteral("predicted_px"), {}, {}};
    predicted.isPredicted = predicted.isOfPoints = true;
    predicted.hue = kPredictedHue;
    if (film.match)
        for (const OrderOnFilm& order : film.match->orders) {
            if (order.predicted_px.value_or(0.0) > kShownOfFloor * film.reading.floor_px) {
                predicted.x.push_back(order.frequency_hz);
                predicted.y.push_back(*order.predicted_px);
            }
            shown.predicted.push_back(nameOf(order, film, blades));
            last = std::max(last, kBeyondLast * order.frequency_hz);
        }
    std::sort(shown.predicted.begin(), shown.predicted.end(),
              [](const auto& a, const auto& b) { return a.x < b.x; });
    shown.across.range = Span{0.0, last};
    MeasuredCurve floor{QObject::tr("floor"),
                        QStringLiteral("floor_px"),
                        {0.0, last},
                        {film.reading.floor_px, film.reading.floor_px}};
    floor.hue = kFloorHue;
    for (MeasuredCurve* const curve : {&filmed, &predicted, &floor})
        if (!curve->x.empty())
            shown.curves.push_back(std::move(*curve));
    shown.measuredCaption = QObject::tr("filmed (Hz):");
    shown.predictedCaption = QObject::tr("orders:");
    for (const BlindBand& band : film.reading.blind_hz)
        shown.blind.push_back({band.from_hz, band.to_hz, QObject::tr("blind")});
    QStringList sentences;
    for (const Phrase& text : film.texts)
        sentences << displayText(text);
    shown.summary = sentences.join(u' ');
    return shown;
}

MeasuredShown filmedWobbleShown(const std::vector<FilmedMark>& marks, bool isFirstChosen,
                                const Assessment& prediction)
{
    MeasuredShown shown;
    shown.name = QObject::tr("Wobble over the throttle");
    shown.across = {QObject::tr("Throttle (%)"), QStringLiteral("throttle_percent")};
    shown.up = {QObject::tr("Wobble (px)"), QStringLiteral("wobble_px"), true};
    MeasuredCurve predicted{QObject::tr("predicted"), QStringLiteral("predicted_px"), {}, {}, true};
    predicted.hue = kPredictedHue;
    for (const WobbleAt& at : prediction.curve) {
        predicted.x.push_back(kPercent * at.throttle);
        predicted.y.push_back(at.wobble_px);
    }
    std::vector<const FilmedMark*> rising;
    for (const FilmedMark& mark : marks)
        rising.push_back(&mark);
    std::sort(rising.begin(), rising.end(),
              [](const FilmedMark* a, const FilmedMark* b) { return a->throttle < b->throttle; });
    MeasuredCurve mine{QObject::tr("this film"), QStringLiteral("this_film_px"), {}, {}};
    MeasuredCurve others{QObject::tr("the other films"), QStringLiteral("other_films_px"), {}, {}};
    mine.isOfPoints = others.isOfPoints = true;
    mine.hue = kFilmedHue;
    others.hue = kFloorHue;
    QStringList sentences;
    for (const FilmedMark* const each : rising) {
        const FilmedMark& mark = *each;
        MeasuredCurve& curve = isFirstChosen && each == &marks.front() ? mine : others;
        curve.x.push_back(kPercent * mark.throttle);
        curve.y.push_back(mark.filmed_px);
        shown.measured.push_back({kPercent * mark.throttle, mark.name});
        sentences << (mark.predicted_px
                          ? QObject::tr("%1; predicted %2 px.")
                                .arg(filmedText(mark), plainNumber(*mark.predicted_px, 2))
                          : QObject::tr("%1.").arg(filmedText(mark)));
    }
    for (MeasuredCurve* const curve : {&predicted, &mine, &others})
        if (!curve->x.empty())
            shown.curves.push_back(std::move(*curve));
    shown.summary = sentences.join(u' ');
    return shown;
}

}  // namespace stillbay::ui
