// SPDX-License-Identifier: MIT
#include "ui/recordings/film_desk.h"

#include "ui/recordings/film_page.h"
#include "ui/recordings/measured_craft.h"

#include <QFileInfo>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kFilmDragPause(250);  // lets a drag end before work begins
constexpr std::size_t kMostFilmsKept = 12;

QString fileName(const NamedRecording& film)
{
    return QFileInfo(QString::fromStdString(film.file)).fileName();
}

}  // namespace

FilmDesk::FilmDesk(FilmPage& page, QObject* parent)
    : QObject(parent),
      m_page(page),
      m_read({.done = [this](const Result<SharedFilm>& film) { readArrived(film); },
              .advanced =
                  [this](int step, int steps) {
                      m_page.advance(step, steps);
                  }}),
      m_find({.done =
                  [this](const Result<FilmFinding>& finding) {
                      findingArrived(finding);
                  }},
             kFilmDragPause)
{
    connect(&m_page, &FilmPage::stopWanted, this, &FilmDesk::stop);
    connect(&m_page, &FilmPage::readWanted, this, [this] {
        m_stopped.clear();
        showChosen();
    });
}

const Result<SharedFilm>* FilmDesk::kept(const FilmKey& key) const
{
    const auto found = std::find_if(m_kept.begin(), m_kept.end(),
                                    [&](const Kept& kept) { return kept.key == key; });
    return found == m_kept.end() ? nullptr : &found->film;
}

void FilmDesk::show(const NamedRecording& film, const FilmCraft& craft)
{
    m_chosen = film;
    m_craft = craft;
    m_page.setNamed(film, craft.setup.camera);
    showChosen();
}

void FilmDesk::leave()
{
    m_chosen.reset();
    m_shown.reset();
    m_read.drop();
    m_find.drop();
}

void FilmDesk::showChosen()
{
    if (!m_chosen)
        return;
    const FilmKey key = filmKeyOf(*m_chosen);
    if (m_shown != key) {
        m_page.showNothing();
        m_shown = key;
        m_find.drop();
        forgetFailure(key);
        if (const auto* const film = kept(key))
            m_page.showFilm(***film);
        m_page.setNamed(*m_chosen, m_craft.setup.camera);
    }
    if (!kept(key)) {
        if (std::find(m_stopped.begin(), m_stopped.end(), key) != m_stopped.end())
            return m_page.showStopped();
        if (m_read.wanted() != std::pair(key, m_attempt) || !m_read.isDue())
            read(*m_chosen, key, tr("Reading the film…"));
        return;
    }
    ask();
    readOthers();
}

void FilmDesk::forgetFailure(const FilmKey& key)
{
    const auto failed =
        std::erase_if(m_kept, [&](const Kept& kept) { return kept.key == key && !kept.film; });
    if (failed > 0)
        ++m_attempt;
}

void FilmDesk::read(const NamedRecording& film, const FilmKey& key, const QString& text)
{
    m_page.showReading(text);
    m_read.want({key, m_attempt},
                [film](const Caller<SharedFilm>& caller) { return readFilmFile(film, caller); });
}

void FilmDesk::readOthers()
{
    if (m_read.isDue())
        return;
    for (const NamedRecording& film : m_craft.setup.recordings) {
        if (film.kind != RecordingKind::Film)
            continue;
        const FilmKey key = filmKeyOf(film);
        if (key.size >= 0 && !kept(key) &&
            std::find(m_stopped.begin(), m_stopped.end(), key) == m_stopped.end())
            return read(film, key, tr("Reading %1, too…").arg(fileName(film)));
    }
}

void FilmDesk::stop()
{
    if (!m_read.isDue())
        return;
    m_stopped.push_back(m_read.wanted()->first);
    const bool wasShown = m_stopped.back() == m_shown;
    for (const NamedRecording& film : m_craft.setup.recordings)  // nor any that waits
        if (film.kind == RecordingKind::Film)
            if (FilmKey key = filmKeyOf(film); !kept(key))
                m_stopped.push_back(std::move(key));
    m_read.drop();
    if (wasShown)
        return m_page.showStopped();
    if (const auto* const film = m_shown ? kept(*m_shown) : nullptr; film && *film)
        m_page.showFilmState(***film);
}

void FilmDesk::readArrived(const Result<SharedFilm>& film)
{
    const FilmKey key = m_read.wanted()->first;
    if (!kept(key)) {
        if (m_kept.size() == kMostFilmsKept)
            m_kept.erase(m_kept.begin());
        m_kept.push_back({key, film});
    }
    if (key == m_shown) {
        if (film)
            m_page.showFilm(**film);
        else
            m_page.showNothing();
        m_page.setNamed(*m_chosen, m_craft.setup.camera);
        if (!film)
            emit failed(film.error());
    } else if (const auto* const shown = m_shown ? kept(*m_shown) : nullptr; shown && *shown) {
        m_page.showFilmState(***shown);
    }
    ask();
    readOthers();
}

void FilmDesk::ask()
{
    if (!m_chosen || !m_shown)
        return;
    const auto* const chosen = kept(*m_shown);
    if (!chosen || !*chosen)
        return;  // not yet, or it cannot be read
    const auto tellStale = [this](bool isStale) {
        m_page.setStale(isStale);
        emit staleChanged(isStale);
    };
    if (!m_craft.isCurrent)  // its prediction is on the way
        return tellStale(true);
    FilmQuestion question{m_craft.setup, m_craft.prediction, {*m_chosen, **chosen}, {}};
    FindKey key{measuredCraft(m_craft.setup),
                m_craft.prediction != nullptr,
                {{*m_shown, m_chosen->throttle}}};
    for (const NamedRecording& other : m_craft.setup.recordings) {
        if (other.kind != RecordingKind::Film || other.file == m_chosen->file)
            continue;
        const FilmKey otherKey = filmKeyOf(other);
        if (const auto* const film = kept(otherKey); film && *film) {
            question.others.push_back({other, **film});
            key.films.emplace_back(otherKey, other.throttle);
        }
    }
    if (m_find.wanted() == key)
        return tellStale(m_find.isDue());
    tellStale(true);
    m_find.want(std::move(key), [question](const Caller<FilmFinding>& caller) {
        return filmFinding(question, caller.stop);
    });
}

void FilmDesk::findingArrived(const Result<FilmFinding>& finding)
{
    m_page.setStale(false);
    emit staleChanged(false);
    if (!finding) {
        m_page.setCharts({});
        emit saysNothing(finding.error());
        return;
    }
    m_page.setCharts(finding->finding.charts);
    emit said(finding->finding);
    emit marksChanged(finding->marks);
}

}  // namespace stillbay::ui
