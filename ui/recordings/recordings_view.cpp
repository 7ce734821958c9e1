// SPDX-License-Identifier: MIT
#include "ui/recordings/recordings_view.h"

#include "core/calibrate/correction.h"
#include "ui/recordings/correction_pane.h"
#include "ui/recordings/empty_page.h"
#include "ui/recordings/film_desk.h"
#include "ui/recordings/film_page.h"
#include "ui/recordings/flight_notes_pane.h"
#include "ui/recordings/hang_pane.h"
#include "ui/recordings/recording_desk.h"
#include "ui/recordings/recording_edits.h"
#include "ui/recordings/recording_list.h"
#include "ui/recordings/recording_page.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/said_pane.h"
#include "ui/recordings/sample_recordings.h"
#include "ui/recordings/without_recording.h"
#include "ui/widgets/message_bar.h"
#include "ui/widgets/tall_scroll.h"

#include <QDate>
#include <QDir>
#include <QFileInfo>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {

RecordingsView::RecordingsView(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_messages(new MessageBar(tr("Recordings"))),
      m_list(new RecordingList),
      m_centre(new QStackedWidget),
      m_empty(new EmptyPage),
      m_page(new RecordingPage),
      m_desk(new RecordingDesk(*m_page, this)),
      m_film(new FilmPage),
      m_films(new FilmDesk(*m_film, this)),
      m_edits(new RecordingEdits(m_document, RecordingPages{*m_list, *m_page, *m_film}, this)),
      m_hang(new HangPane),
      m_notes(new FlightNotesPane),
      m_said(new SaidPane)
{
    m_list->setMinimumWidth(22 * fontMetrics().averageCharWidth());
    auto* const right = new TallScroll(m_said);
    m_said->setMinimumWidth(28 * fontMetrics().averageCharWidth());
    auto* const columns = new QSplitter(Qt::Horizontal);
    columns->setObjectName(QStringLiteral("view.recordingsColumns"));
    columns->addWidget(m_list);
    columns->addWidget(makeCentre());
    columns->addWidget(right);
    columns->setChildrenCollapsible(false);
    columns->setStretchFactor(1, 1);
    columns->setSizes({200, 780, 300});
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_messages);
    layout->addWidget(columns, 1);

    connectRecordings();
    connectFilms();
    connectSaid();
    connect(&m_document, &Document::opened, this, [this] {
        m_messages->hide();
        m_desk->forget();
        m_films->leave();
        m_shown.reset();
        m_shownFilm.reset();
        m_marks.clear();
        tellMarks();
        m_list->choose({});
    });
    connect(&m_document, &Document::setupChanged, this, &RecordingsView::tellMarks);
    connect(&m_document, &Document::setupChanged, this, &RecordingsView::refresh);
}

void RecordingsView::connectRecordings()
{
    connect(m_empty, &EmptyPage::samplesWanted, this, &RecordingsView::takeSamples);
    connect(m_list, &RecordingList::chosenChanged, this, &RecordingsView::showChosen);
    connect(m_desk, &RecordingDesk::failed, this,
            [this](const Error& error) { tellUnreadable(m_shown->path, error); });
    connectDesk(m_desk);
}

void RecordingsView::connectFilms()
{
    connect(m_films, &FilmDesk::failed, this,
            [this](const Error& error) { tellUnreadable(m_shownFilm->path, error); });
    connectDesk(m_films);
    connect(m_films, &FilmDesk::working, m_said, &SaidPane::setWorking);
    connect(m_films, &FilmDesk::marksChanged, this,
            [this](const std::vector<FilmedMark>& marks, const Setup& craft) {
                m_marks = marks;
                m_marksCraft = craft;
                tellMarks();
            });
}

// What recordings and films say alike.
template <class Desk>
void RecordingsView::connectDesk(Desk* desk)
{
    connect(desk, &Desk::said, this,
            [this](const Finding& finding) { m_said->setFinding(finding, m_document.setup()); });
    connect(desk, &Desk::saysNothing, this, [this](const Error& error) {
        m_said->say(tr("It says nothing: %1.").arg(reasonText(error)));
    });
    connect(desk, &Desk::staleChanged, m_said, &SaidPane::setStale);
    connect(desk, &Desk::stopped, this, [this] { m_said->say({}); });
}

void RecordingsView::connectSaid()
{
    connect(m_hang, &HangPane::changed, this, &RecordingsView::showChosen);
    connect(m_notes, &FlightNotesPane::notesWanted, this,
            [this](const std::vector<FlightNote>& notes) {
                m_notes->problem().display(
                    m_document.edit(tr("change the flight notes"), {},
                                    [&](Setup& setup) { setup.flight.notes = notes; }));
            });
    connect(m_said, &SaidPane::matchingWanted, m_desk, &RecordingDesk::match);
    connect(m_said, &SaidPane::acceptWanted, this, &RecordingsView::take);
}

QWidget* RecordingsView::makeCentre()
{
    m_centre->addWidget(m_empty);
    m_centre->addWidget(m_page);
    m_centre->addWidget(m_film);
    m_centre->addWidget(m_hang);
    m_centre->addWidget(m_notes);
    m_centre->setMinimumWidth(260);
    return m_centre;
}

CorrectionPane& RecordingsView::correction()
{
    return m_said->correction();
}

void RecordingsView::takeSamples()
{
    const QStringList paths = laidOutSamples();
    if (paths.isEmpty())
        m_list->problem().refuse(tr("the samples cannot be written to the program's own folder"));
    else
        addFiles(paths, describeSample);
}

void RecordingsView::addFiles(const QStringList& paths,
                              const std::function<void(NamedRecording&)>& describe)
{
    m_edits->add(paths, describe);
}

// What the document has; while nobody looks, a drag elsewhere must not pay for it.
void RecordingsView::refresh()
{
    if (!isVisible() || !m_document.hasCraft())
        return;
    m_list->setRecordings(m_document.setup().recordings);
    showChosen();
}

void RecordingsView::showChosen()
{
    if (!isVisible() || !m_document.hasCraft())
        return;
    const NamedRecording* const named = m_edits->shown();
    const bool isFilm = named && named->kind == RecordingKind::Film;
    if (!isFilm) {
        m_films->leave();
        m_shownFilm.reset();
    }
    if (!named || isFilm) {
        m_desk->leave();
        m_shown.reset();
    }
    if (named)
        return isFilm ? showFilm(*named) : showRecording(*named);
    m_messages->hide();
    if (m_list->chosen().what == Chosen::What::HangTest) {
        m_centre->setCurrentWidget(m_hang);
        return sayHang(*m_said, *m_hang, m_document.setup());
    }
    if (m_list->chosen().what == Chosen::What::FlightNotes) {
        m_centre->setCurrentWidget(m_notes);
        return showAndSayNotes(*m_said, *m_notes, craft());
    }
    m_centre->setCurrentWidget(m_empty);
    m_empty->offerSamples(areSamplesOf(m_document.setup()));
    m_said->say({});
}

PredictedCraft RecordingsView::craft() const
{
    return {m_document.setup(), m_prediction, m_predicted == m_document.setup()};
}

void RecordingsView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    refresh();
}

void RecordingsView::showRecording(const NamedRecording& named)
{
    m_centre->setCurrentWidget(m_page);
    const ReadKey key = readKeyOf(named);
    const bool isOther = m_shown != key;
    if (isOther) {
        m_shown = key;
        m_messages->hide();
        m_said->say(tr("What it says is being worked out…"));
    }
    m_desk->show(m_list->chosen().index, craft());
    if (isOther && key.size < 0)
        tellMissing(key.path);
}

void RecordingsView::tellMissing(const QString& path)
{
    m_said->say({});
    const QString name = QFileInfo(path).fileName();
    m_messages->display(
        MessageBar::Kind::Problem, tr("%1 is missing").arg(name), QDir::toNativeSeparators(path),
        {{tr("Find it…"), tr("Names the place where the recording is now."), [this, name] {
              m_edits->find(name);
          }}});
}

void RecordingsView::tellUnreadable(const QString& path, const Error& error)
{
    m_said->say({});
    m_messages->display(MessageBar::Kind::Problem,
                        tr("%1 cannot be read").arg(QFileInfo(path).fileName()),
                        tr("%1. Nothing else has changed.").arg(reasonText(error)));
}

// Of films that are still the craft's, whether the tab is looked at or not.
void RecordingsView::tellMarks()
{
    if (m_marks.empty() || !m_document.hasCraft())
        return emit marksChanged({}, true);
    std::erase_if(m_marks, [this](const FilmedMark& mark) {
        const auto& recordings = m_document.setup().recordings;
        return std::none_of(recordings.begin(), recordings.end(), [&](const auto& named) {
            return named.kind == RecordingKind::Film && named.file == mark.file.toStdString() &&
                   named.from_s == mark.from_s && named.to_s == mark.to_s;
        });
    });
    emit marksChanged(m_marks, m_marksCraft == measuredCraft(m_document.setup()));
}

void RecordingsView::showFilm(const NamedRecording& named)
{
    m_centre->setCurrentWidget(m_film);
    const FilmKey key = filmKeyOf(named);
    if (m_shownFilm != key) {
        m_shownFilm = key;
        m_messages->hide();
        if (key.size < 0) {
            m_films->leave();
            m_film->showNothing();
            m_film->setNamed(named, m_document.setup().camera);
            tellMissing(key.path);
        } else {
            m_said->say(tr("What it says is being worked out…"));
        }
    }
    if (key.size >= 0)
        m_films->show(m_list->chosen().index, craft());
}

bool RecordingsView::isBusy() const
{
    return m_desk->isBusy() || m_films->isBusy();
}

void RecordingsView::take(const Correction& correction)
{
    const std::string date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    Result<Setup> corrected = accept(m_document.setup(), correction, date);
    m_said->correction().problem().display(
        corrected ? m_document.edit(tr("accept a measurement"), {},
                                    [&](Setup& setup) { setup = *std::move(corrected); })
                  : Result<void>(tl::unexpected<Error>(corrected.error())));
}

void RecordingsView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_predicted = setup;
    m_prediction = assessment ? std::make_shared<const Assessment>(*assessment) : nullptr;
    if (isVisible())
        showChosen();
}

void RecordingsView::setStale(bool) {}

}  // namespace stillbay::ui
