// SPDX-License-Identifier: MIT
#include "ui/recordings/film_desk.h"

#include "ui/recordings/film_page.h"
#include "ui/recordings/reading_strip.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/result_part.h"

#include <QFileInfo>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kFilmPause(
    250);  // lets a drag or typing end before work begins
constexpr std::size_t kMostFilmsKept = 12;

QString fileName(const QString& path)
{
    return QFileInfo(path).fileName();
}

}  // namespace

FilmDesk::FilmDesk(FilmPage& page, QObject* parent)
    : QObject(parent),
      m_page(page),
      m_read({.done = [this](const Result<FilmAnswer>& answer) { readArrived(answer); },
              .advanced =
                  [this](int step, int steps) {
                      m_page.strip().advance(step, steps);
                  }},
             kFilmPause),
      m_find({.done = [this](const Result<FilmFinding>& finding) { findingArrived(finding); },
              .advanced =
                  [this](int step, int steps) {
                      findAdvanced(step, steps);
                  }},
             kFilmPause)
{
    connect(&m_page.strip(), &ReadingStrip::stopWanted, this, &FilmDesk::stop);
    connect(&m_page.strip(), &ReadingStrip::readWanted, this, &FilmDesk::begin);
}

const FilmAnswer* FilmDesk::kept(const FilmKey& key) const
{
    const auto found = std::find_if(m_kept.begin(), m_kept.end(),
                                    [&](const Kept& kept) { return kept.key == key; });
    return found == m_kept.end() ? nullptr : &found->answer;
}

bool FilmDesk::isStopped(const FilmKey& key) const
{
    return std::find(m_stopped.begin(), m_stopped.end(), key) != m_stopped.end();
}

std::vector<FilmKey> FilmDesk::filmsOfCraft() const
{
    std::vector<FilmKey> keys;
    for (const NamedRecording& film : m_craft.setup.recordings)
        if (film.kind == RecordingKind::Film)
            keys.push_back(filmKeyOf(film));
    return keys;
}

// Instead of what is no film of the craft any more, then of what was read longest ago.
void FilmDesk::keep(const FilmKey& key, const FilmAnswer& answer)
{
    std::erase_if(m_kept, [&](const Kept& kept) { return kept.key == key; });
    if (m_kept.size() >= kMostFilmsKept) {
        const std::vector<FilmKey> films = filmsOfCraft();
        const auto isSpare = [&](const Kept& kept) {
            return kept.key != m_shown;
        };
        auto gone = std::find_if(m_kept.begin(), m_kept.end(), [&](const Kept& kept) {
            return isSpare(kept) && std::find(films.begin(), films.end(), kept.key) == films.end();
        });
        if (gone == m_kept.end())
            gone = std::find_if(m_kept.begin(), m_kept.end(), isSpare);
        m_kept.erase(gone);
    }
    m_kept.push_back({key, answer});
}

void FilmDesk::show(std::size_t place, const PredictedCraft& craft)
{
    m_chosen = craft.setup.recordings.at(place);
    m_place = place;
    m_craft = craft;
    showChosen();
}

void FilmDesk::leave()
{
    m_chosen.reset();
    m_shown.reset();
    m_stopped.clear();
    m_read.drop();
    dropFinding();
}

void FilmDesk::dropFinding()
{
    m_find.drop();
    tellWorking({});
}

// The builder wants what was stopped or failed once more.
void FilmDesk::begin()
{
    m_stopped.clear();
    m_isFindStopped = false;
    std::erase_if(m_kept, [](const Kept& kept) { return !kept.answer.film; });
    ++m_attempt;
    showChosen();
}

void FilmDesk::showChosen()
{
    if (!m_chosen)
        return;
    const FilmKey key = filmKeyOf(*m_chosen);
    if (m_shown != key) {
        if (!m_shown || m_shown->path != key.path) {
            m_page.showNothing();
            m_page.setFound({});
            if (std::erase_if(m_kept, [](const Kept& kept) { return !kept.answer.film; }) > 0)
                ++m_attempt;
        }
        m_shown = key;
        m_isFindStopped = false;
        dropFinding();
        if (const FilmAnswer* const answer = kept(key))
            showKept(*answer);
        else
            m_page.setLength(m_length_s[key.path], 0.0);
    }
    m_page.setNamed(*m_chosen, m_craft.setup.camera);
    if (kept(key)) {
        ask();
        readOthers();
    } else if (!isStopped(key) &&
               !(m_read.isDue() && m_read.wanted() == std::pair(key, m_attempt))) {
        m_page.result().setStale(true);
        read(*m_chosen, key);
    }
    showStrip();
}

void FilmDesk::showKept(const FilmAnswer& answer)
{
    double& length_s = m_length_s[m_shown->path];
    length_s = std::max(length_s, answer.length_s);  // of a part it may be told too short
    if (!answer.film) {
        m_page.showNothing();
        m_page.setLength(length_s, 0.0);
        emit failed(*answer.failure);
        return;
    }
    m_page.setLength(length_s, 1.0 / std::max(answer.film->clip().facts.frameRate_hz, 1.0));
    m_page.showFilm(*answer.film);
}

void FilmDesk::read(const NamedRecording& film, const FilmKey& key)
{
    m_read.want({key, m_attempt},
                [film](const Caller<FilmAnswer>& caller) { return readFilmFile(film, caller); });
}

// As many as are kept.
void FilmDesk::readOthers()
{
    if (m_read.isDue())
        return;
    const std::vector<FilmKey> films = filmsOfCraft();
    const auto read = std::count_if(films.begin(), films.end(),
                                    [this](const FilmKey& key) { return kept(key) != nullptr; });
    if (static_cast<std::size_t>(read) >= kMostFilmsKept)
        return;
    for (const NamedRecording& film : m_craft.setup.recordings) {
        if (film.kind != RecordingKind::Film)
            continue;
        const FilmKey key = filmKeyOf(film);
        if (key.size >= 0 && !kept(key) && !isStopped(key))
            return this->read(film, key);
    }
}

// One place says what goes on, so that what it says is what can be stopped.
void FilmDesk::showStrip()
{
    ReadingStrip& strip = m_page.strip();
    const FilmAnswer* const shown = m_shown ? kept(*m_shown) : nullptr;
    if (m_read.isDue())
        strip.showReading(m_read.wanted()->first == m_shown
                              ? tr("Reading the film…")
                              : tr("Reading %1, too…").arg(fileName(m_read.wanted()->first.path)));
    else if (m_find.isDue())
        strip.showReading(m_working.isEmpty() ? tr("Seeking what it shows…") : m_working);
    else if (m_isFindStopped || (m_shown && !shown && isStopped(*m_shown)))
        strip.showStopped();
    else if (shown && shown->film)
        m_page.showFilmState(*shown->film);
    else if (shown)
        strip.showAgain(tr("It cannot be read."));
    else
        strip.clear();
}

void FilmDesk::stop()
{
    if (m_read.isDue()) {
        for (FilmKey& key : filmsOfCraft())  // nor any that waits
            if (!kept(key))
                m_stopped.push_back(std::move(key));
        m_read.drop();
        if (m_shown && !kept(*m_shown)) {
            m_page.result().setStale(false);
            emit stopped();
        }
    } else if (m_find.isDue()) {
        m_isFindStopped = true;
        dropFinding();
        m_page.result().setStale(false);
        emit stopped();
    }
    showStrip();
}

void FilmDesk::readArrived(const Result<FilmAnswer>& answer)
{
    const FilmKey key = m_read.wanted()->first;
    if (!kept(key))
        keep(key, answer ? *answer : FilmAnswer{0.0, {}, answer.error()});
    const bool isShown = key == m_shown;
    if (isShown) {
        showKept(*kept(key));
        m_page.setNamed(*m_chosen, m_craft.setup.camera);
    }
    if (isShown || !m_find.isDue())  // else once that has arrived: it is not begun anew each time
        ask();
    readOthers();
    showStrip();
}

void FilmDesk::ask()
{
    if (!m_chosen || !m_shown || m_isFindStopped)
        return;
    const FilmAnswer* const chosen = kept(*m_shown);
    if (!chosen || !chosen->film)
        return;  // not yet, or it cannot be read
    const auto tellStale = [this](bool isStale) {
        m_page.result().setStale(isStale);
        emit staleChanged(isStale);
    };
    if (!m_craft.isCurrent) {  // its prediction is on the way
        dropFinding();
        return tellStale(true);
    }
    FilmQuestion question{m_craft.setup, m_craft.prediction, {}, 0, {}};
    FindKey key{measuredCraft(m_craft.setup), m_craft.prediction != nullptr, {}, 0};
    const std::vector<NamedRecording>& recordings = m_craft.setup.recordings;
    for (std::size_t k = 0; k < recordings.size(); ++k) {
        const NamedRecording& named = recordings[k];
        if (named.kind != RecordingKind::Film)
            continue;
        const FilmKey filmKey = k == m_place ? *m_shown : filmKeyOf(named);
        const FilmAnswer* const answer = kept(filmKey);
        if (!answer)
            continue;
        if (k == m_place) {
            question.chosen = question.films.size();
            key.chosen = key.films.size();
        }
        if (answer->film)
            question.films.push_back({named, answer->film});
        else
            question.unread.emplace_back(recordingName(named), *answer->failure);
        key.films.emplace_back(filmKey, named.throttle);
    }
    if (m_find.wanted() == key)
        return tellStale(m_find.isDue());
    tellStale(true);
    tellWorking({});
    m_find.want(std::move(key), [question](const Caller<FilmFinding>& caller) {
        return filmFinding(question, caller.stop, caller.progress);
    });
}

void FilmDesk::findAdvanced(int step, int steps)
{
    constexpr int kSteps = static_cast<int>(kStepsAFilm);
    const int films = steps / kSteps;
    if (films > 1) {
        tellWorking(tr("Working out what it shows: film %1 of %2…")
                        .arg(std::min(step / kSteps + 1, films))
                        .arg(films));
        showStrip();
    }
    if (!m_read.isDue())
        m_page.strip().advance(step, steps);
}

// Where it will stand, and where it can be stopped.
void FilmDesk::tellWorking(const QString& text)
{
    m_working = text;
    m_page.result().setWorking(text);
    emit working(text);
}

void FilmDesk::findingArrived(const Result<FilmFinding>& finding)
{
    m_page.result().setStale(false);
    emit staleChanged(false);
    tellWorking({});
    if (finding) {
        m_page.setFound(finding->hasOwnMark ? std::optional(finding->marks.front().throttle)
                                            : std::nullopt);
        m_page.result().setCharts(finding->finding.charts);
        emit said(finding->finding);
    } else {
        m_page.result().setCharts({});
        emit saysNothing(finding.error());
    }
    emit marksChanged(finding ? finding->marks : std::vector<FilmedMark>(),
                      measuredCraft(m_craft.setup));
    ask();  // a film may have been read meanwhile
    showStrip();
}

}  // namespace stillbay::ui
