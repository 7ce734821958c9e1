// SPDX-License-Identifier: MIT
#include "ui/recordings/film_finding.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/calibrate/craft_film.h"
#include "core/calibrate/film_readout.h"
#include "core/calibrate/film_sound.h"
#include "core/calibrate/film_unbalance.h"
#include "ui/recordings/recording_words.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QFileInfo>
#include <QObject>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kLeastShown_hz = 200.0;
constexpr double kBeyondLast = 1.15;   // of the highest line or order
constexpr double kShownOfFloor = 0.5;  // what is predicted below would stretch the chart
constexpr double kOtherThrottle = 0.01;
constexpr std::size_t kMostInSentence = 3;
constexpr std::size_t kFewestFilms = 3;
constexpr std::size_t kFilmedHue = 0, kPredictedHue = 1, kFloorHue = 2;

QString nameOf(const NamedFilm& film)
{
    return QFileInfo(QString::fromStdString(film.named.file)).fileName();
}

// What one film says beside the craft.
struct Said {
    CraftFilm film;
    FilmMatchOptions known;
    std::optional<FilmedMark> mark;
};

// A poor match tells no speed: only a throttle that was typed places such a film.
std::optional<FilmedMark> markOf(const NamedFilm& film, const CraftFilm& said)
{
    const auto& match = said.match;
    const bool isFound = match && match->mark.quality != Quality::Poor && match->throttle_full;
    const std::optional<double> throttle = isFound ? match->throttle_full : film.named.throttle;
    if (!throttle)
        return {};
    return FilmedMark{QString::fromStdString(film.named.file),
                      nameOf(film),
                      *throttle,
                      film.named.throttle,
                      said.reading.wobble_px,
                      isFound ? match->predicted_px : std::nullopt};
}

Result<Said> saidOf(const NamedFilm& film, const FilmQuestion& question,
                    const std::stop_token& stop, const Progress& progress = {})
{
    HeardOnFilm heard;
    if (film.film->sound()) {
        Result<HeardOnFilm> answer = heardOnFilm(question.setup, *film.film->sound(), stop);
        if (!answer)
            return tl::unexpected<Error>(answer.error());
        heard = *std::move(answer);
    }
    const FilmMatchOptions known{film.named.throttle, heard.speed};
    const Camera& camera = question.setup.camera;
    const Result<FilmReading> lines =
        film.film->lines({.readout_s = camera.readout_ms * unit::ms,
                          .exposure_s = camera.exposure_ms * unit::ms,
                          .highest_hz = soughtUpTo(question.setup, known)},
                         stop, progress);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (!lines)
        return tl::unexpected<Error>(lines.error());
    Result<CraftFilm> crafts = filmOfCraft(question.setup, film.film->clip().facts, *lines, known);
    if (!crafts)
        return tl::unexpected<Error>(crafts.error());
    if (heard.warning)
        crafts->warnings.insert(crafts->warnings.begin(), *heard.warning);
    Said said{*std::move(crafts), known, {}};
    said.mark = markOf(film, said.film);
    return said;
}

MeasuredShown linesShown(const CraftFilm& film, int blades)
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
            shown.predicted.push_back(
                {order.frequency_hz, displayText(orderName(order.order, blades))});
            last = std::max(last, kBeyondLast * order.frequency_hz);
        }
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

MeasuredShown wobbleShown(const std::vector<FilmedMark>& marks, const QString& chosenFile,
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
    std::vector<FilmedMark> rising = marks;
    std::sort(rising.begin(), rising.end(),
              [](const FilmedMark& a, const FilmedMark& b) { return a.throttle < b.throttle; });
    MeasuredCurve mine{QObject::tr("this film"), QStringLiteral("this_film_px"), {}, {}};
    MeasuredCurve others{QObject::tr("the other films"), QStringLiteral("other_films_px"), {}, {}};
    mine.isOfPoints = others.isOfPoints = true;
    mine.hue = kFilmedHue;
    others.hue = kFloorHue;
    QStringList sentences;
    for (const FilmedMark& mark : rising) {
        MeasuredCurve& curve = mark.file == chosenFile ? mine : others;
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

void addNotes(Finding& finding, const CraftFilm& film, const ClipShifts& clip,
              const std::optional<FilmedMark>& mark)
{
    if (film.filmedPx != 1.0)
        finding.notes
            << QObject::tr(
                   "Lengths count pixels of the craft's camera; one is %1 of a pixel of the film.")
                   .arg(plainNumber(film.filmedPx, 3));
    for (const std::vector<Warning>* const warnings : {&film.warnings, &clip.warnings})
        for (const Warning& warning : *warnings) {
            QString text = displayText(warning.text);
            if (!text.endsWith(u'.'))
                text += u'.';
            finding.notes << capitalised(text);
        }
    if (mark && mark->flown && std::abs(mark->throttle - *mark->flown) > kOtherThrottle)
        finding.notes << QObject::tr(
                             "The film stands at %1 % throttle, where this craft is computed "
                             "to turn as fast; the stick stood at %2 %.")
                             .arg(plainNumber(kPercent * mark->throttle, 3),
                                  plainNumber(kPercent * *mark->flown, 3));
    if (!film.reading.blind_hz.empty())
        finding.notes << QObject::tr(
            "Where the chart is hatched the film is blind: nothing is said there.");
}

void offerUnbalance(Finding& finding, const Setup& setup, const std::vector<FilmMatch>& matches)
{
    if (matches.size() < kFewestFilms) {
        finding.notes << QObject::tr(
            "Films at three throttles or more give the unbalance of the propellers.");
        return;
    }
    Result<Correction> unbalance = unbalanceFromFilms(setup, matches);
    if (unbalance)
        finding.unbalance =
            Offer{QObject::tr("So large is the unbalance by these films."), *std::move(unbalance)};
    else
        finding.notes
            << QObject::tr("No unbalance by these films: %1.").arg(reasonText(unbalance.error()));
}

}  // namespace

Result<FilmFinding> filmFinding(const FilmQuestion& question, const std::stop_token& stop,
                                const Progress& progress)
{
    Result<Said> said = saidOf(question.chosen, question, stop, progress);
    if (!said)
        return tl::unexpected<Error>(said.error());
    const CraftFilm& film = said->film;
    FilmFinding found;
    Finding& finding = found.finding;
    std::vector<FilmMatch> matches;
    const auto take = [&](const Said& one) {
        if (one.mark)
            found.marks.push_back(*one.mark);
        if (one.film.match)
            matches.push_back(*one.film.match);
    };
    take(*said);
    QStringList silent;
    for (const auto& [name, error] : question.unread)
        silent << QObject::tr("%1 cannot be read: %2.").arg(name, reasonText(error));
    for (const NamedFilm& other : question.others) {
        const Result<Said> one = saidOf(other, question, stop);
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (one)
            take(*one);
        else
            silent
                << QObject::tr("%1 says nothing: %2.").arg(nameOf(other), reasonText(one.error()));
    }

    QStringList first{QObject::tr("The film wobbles by %1 px in all, whole frames shake by %2 px.")
                          .arg(plainNumber(film.reading.wobble_px, 3),
                               plainNumber(film.reading.frameShake_px, 2))};
    QStringList rest;
    for (std::size_t k = 0; k < film.texts.size(); ++k)
        (k < kMostInSentence ? first : rest) << displayText(film.texts[k]);
    finding.sentence = first.join(u'\n');
    if (!rest.isEmpty())
        finding.notes << rest.join(u'\n');
    if (film.match)
        finding.mark = film.match->mark;
    const ClipShifts& clip = question.chosen.film->clip();
    const auto readout = readoutOfFilm(question.setup, clip, film, said->known, stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (readout && *readout)
        if (auto other = otherReadout(question.setup, **readout,
                                      question.setup.camera.readout_ms * unit::ms))
            finding.notes << capitalised(displayText(other->text));
    addNotes(finding, film, clip, said->mark);
    offerUnbalance(finding, question.setup, matches);
    finding.notes << silent;
    finding.charts.push_back(linesShown(film, question.setup.drive.propeller.blades));
    if (question.prediction && !question.prediction->curve.empty())
        finding.charts.push_back(wobbleShown(
            found.marks, QString::fromStdString(question.chosen.named.file), *question.prediction));
    return found;
}

}  // namespace stillbay::ui
