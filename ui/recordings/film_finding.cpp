// SPDX-License-Identifier: MIT
#include "ui/recordings/film_finding.h"

#include "core/base/units.h"
#include "core/calibrate/film_beside.h"
#include "core/calibrate/film_sound.h"
#include "core/calibrate/film_unbalance.h"
#include "ui/recordings/film_charts.h"
#include "ui/recordings/recording_words.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <optional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kOtherThrottle = 0.01;
constexpr std::size_t kMostInSentence = 3;

// How far all films are. A film is asked for lines and for readouts, by the craft's readout and,
// rarely, by its own.
class FilmSteps final {
public:
    FilmSteps(std::size_t films, const Progress& progress)
        : m_all(films * kStepsAFilm), m_progress(progress)
    {
    }

    void beginFilm(std::size_t place) { m_from = place * kStepsAFilm; }

    // What is asked again, as a readout of another line is, goes on where it was.
    Progress ofPart(std::size_t part)
    {
        const std::size_t steps = kPartEnds[part + 1] - kPartEnds[part];
        return [this, steps, from = m_from + kPartEnds[part]](std::size_t done, std::size_t total) {
            const std::size_t step = from + steps * done / std::max(total, std::size_t{1});
            if (m_progress && step > m_told)
                m_progress(step, m_all);
            m_told = std::max(m_told, step);
        };
    }

private:
    static constexpr std::array<std::size_t, 5> kPartEnds{
        0, kStepsAFilm * 45 / 100, kStepsAFilm * 90 / 100, kStepsAFilm * 95 / 100, kStepsAFilm};

    std::size_t m_all, m_from = 0, m_told = 0;
    const Progress& m_progress;
};

// What one film says beside the craft.
struct Said {
    FilmBeside shown;  // by the craft's readout
    FilmBeside own;    // by its own, where that is another: this tells of the unbalance
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
                      film.named.from_s,
                      film.named.to_s,
                      recordingName(film.named),
                      *throttle,
                      film.named.throttle,
                      said.reading.wobble_px,
                      isFound ? match->predicted_px : std::nullopt};
}

Result<Said> saidOf(const NamedFilm& film, const FilmQuestion& question,
                    const std::stop_token& stop, FilmSteps& steps)
{
    const Result<HeardOnFilm> heard = film.film->heard(question.setup, stop);
    if (!heard)
        return tl::unexpected<Error>(heard.error());
    const FilmMatchOptions known{film.named.throttle, heard->speed};
    const Camera& camera = question.setup.camera;
    const FilmReadingOptions options{.readout_s = camera.readout_ms * unit::ms,
                                     .exposure_s = camera.exposure_ms * unit::ms,
                                     .highest_hz = soughtUpTo(question.setup, known)};
    std::size_t readings = 0;
    const AskedClip clip{film.film->clip().facts,
                         [&](const FilmReadingOptions& by) {
                             return film.film->lines(by, stop, steps.ofPart(2 * readings++));
                         },
                         [&](double about_hz, double tolerance_hz) {
                             return film.film->readout(about_hz, tolerance_hz, stop,
                                                       steps.ofPart(2 * readings - 1));
                         }};
    const Result<FilmReading> lines = clip.lines(options);
    if (!lines)
        return tl::unexpected<Error>(lines.error());
    Result<FilmBeside> shown = filmBeside(question.setup, clip, *lines, options, known, stop);
    if (!shown)
        return tl::unexpected<Error>(shown.error());
    if (heard->warning)
        shown->film.warnings.insert(shown->film.warnings.begin(), *heard->warning);
    Result<FilmBeside> own = withOwnReadout(question.setup, clip, *shown, options, known, stop);
    if (!own && stop.stop_requested())
        return tl::unexpected<Error>(own.error());
    if (!own) {  // read by the craft's readout it stands, and is left out of the unbalance
        own = *shown;
        own->film.warnings.insert(own->film.warnings.begin(), *shown->ofReadout);
    }
    Said said{*std::move(shown), *std::move(own), {}};
    said.mark = markOf(film, said.shown.film);
    return said;
}

// Of each film in turn; the chosen one is asked first.
Result<std::vector<Result<Said>>> allSaid(const FilmQuestion& question, const std::stop_token& stop,
                                          const Progress& progress)
{
    FilmSteps steps(question.films.size(), progress);
    std::vector<Result<Said>> all(question.films.size());
    std::vector<std::size_t> order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto chosen = order.begin() + static_cast<std::ptrdiff_t>(question.chosen);
    std::rotate(order.begin(), chosen, chosen + 1);
    for (std::size_t asked = 0; asked < order.size(); ++asked) {
        Result<Said>& said = all[order[asked]];
        steps.beginFilm(asked);
        said = saidOf(question.films[order[asked]], question, stop, steps);
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (asked == 0 && !said)
            return tl::unexpected<Error>(said.error());
    }
    return all;
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

// What all films tell of the unbalance, together.
struct Together {
    std::vector<FilmMatch> matches;
    std::vector<FilmedPart> counted;
    QStringList leftOut, repeated;
    std::size_t asked = 0;
};

QString leftOutText(const QString& name, const Phrase& why)
{
    return QObject::tr("%1 is left out: %2.").arg(name, displayText(why));
}

// Whether it counts among those that were asked: it repeats none.
bool addFilm(Together& films, const NamedFilm& film, const Result<Said>& said)
{
    const QString name = recordingName(film.named);
    FilmedPart part = filmedPart(film.named.file, film.film->clip().facts, name.toStdString());
    if (const auto why = whyRepeated(part, films.counted)) {
        films.repeated << leftOutText(name, *why);
        return false;
    }
    ++films.asked;
    if (!said)
        return true;
    if (const auto why = whyLeftOut(said->own))
        films.leftOut << leftOutText(name, *why);
    else
        films.counted.push_back(std::move(part));
    if (const auto match = matchForUnbalance(said->own))
        films.matches.push_back(*match);
    return true;
}

// What is told of a film that is not the chosen one.
QStringList ofOther(const NamedFilm& film, const Result<Said>& said)
{
    const QString name = recordingName(film.named);
    if (!said)
        return {QObject::tr("%1 says nothing: %2.").arg(name, reasonText(said.error()))};
    if (!said->shown.ofReadout)
        return {};
    return {QObject::tr("%1: %2.").arg(  // the first warning of its own says so
        name, displayText(said->own.film.warnings.front().text))};
}

void offerUnbalance(Finding& finding, const Setup& setup, const Together& films)
{
    if (films.asked < kFewestFilms) {
        finding.notes << QObject::tr(
                             "Films at three throttles or more give the unbalance of the "
                             "propellers.")
                      << films.repeated;
        return;
    }
    Result<Correction> unbalance = unbalanceFromFilms(setup, films.matches, films.asked);
    if (unbalance)
        finding.unbalance =
            Offer{QObject::tr("So large is the unbalance by these films."), *std::move(unbalance)};
    else
        finding.notes
            << QObject::tr("No unbalance by these films: %1.").arg(reasonText(unbalance.error()));
    finding.notes << films.leftOut << films.repeated;
}

}  // namespace

Result<FilmFinding> filmFinding(const FilmQuestion& question, const std::stop_token& stop,
                                const Progress& progress)
{
    const NamedFilm& chosen = question.films[question.chosen];
    const auto all = allSaid(question, stop, progress);
    if (!all)
        return tl::unexpected<Error>(all.error());
    const Result<Said>& said = (*all)[question.chosen];
    const CraftFilm& film = said->shown.film;
    FilmFinding found;
    Finding& finding = found.finding;
    found.hasOwnMark = said->mark.has_value();
    Together together;
    QStringList ofOthers;
    for (const auto& [name, error] : question.unread) {
        ofOthers << QObject::tr("%1 cannot be read: %2.").arg(name, reasonText(error));
        ++together.asked;
    }
    for (std::size_t place = 0; place < question.films.size(); ++place) {
        const Result<Said>& one = (*all)[place];
        const bool isChosen = place == question.chosen;
        if (one && one->mark)
            found.marks.insert(isChosen ? found.marks.begin() : found.marks.end(), *one->mark);
        if (addFilm(together, question.films[place], one) && !isChosen)
            ofOthers << ofOther(question.films[place], one);
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
    const ClipShifts& clip = chosen.film->clip();
    if (said->shown.ofReadout)
        finding.notes << QObject::tr("%1.").arg(
            capitalised(displayText(said->shown.ofReadout->text)));
    addNotes(finding, film, clip, said->mark);
    if (auto readout = readoutCorrection(question.setup, said->shown))
        finding.readout =
            Offer{QObject::tr("Readout: of the camera, by this film."), *std::move(readout)};
    offerUnbalance(finding, question.setup, together);
    finding.notes << ofOthers;
    finding.charts.push_back(filmLinesShown(film, question.setup.drive.propeller.blades));
    if (question.prediction && !question.prediction->curve.empty())
        finding.charts.push_back(
            filmedWobbleShown(found.marks, found.hasOwnMark, *question.prediction));
    return found;
}

}  // namespace stillbay::ui
