// SPDX-License-Identifier: MIT
#include "ui/recordings/recordings_view.h"

#include "core/calibrate/correction.h"
#include "core/calibrate/flight_notes.h"
#include "core/calibrate/hang.h"
#include "ui/recordings/column_pane.h"
#include "ui/recordings/correction_pane.h"
#include "ui/recordings/film_desk.h"
#include "ui/recordings/film_page.h"
#include "ui/recordings/flight_notes_pane.h"
#include "ui/recordings/hang_pane.h"
#include "ui/recordings/measured_craft.h"
#include "ui/recordings/name_files.h"
#include "ui/recordings/recording_list.h"
#include "ui/recordings/recording_page.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/result_part.h"
#include "ui/recordings/said_pane.h"
#include "ui/recordings/sample_recordings.h"
#include "ui/recordings/sensor_pane.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/message_bar.h"
#include "ui/widgets/tall_scroll.h"

#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kDragPause(250);  // lets a drag end before work begins

}  // namespace

RecordingsView::RecordingsView(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_messages(new MessageBar(tr("Recordings"))),
      m_list(new RecordingList),
      m_centre(new QStackedWidget),
      m_samples(new QPushButton(tr("Add the sample recordings"))),
      m_empty(makeEmpty()),
      m_page(new RecordingPage),
      m_film(new FilmPage),
      m_films(new FilmDesk(*m_film, this)),
      m_hang(new HangPane),
      m_notes(new FlightNotesPane),
      m_said(new SaidPane),
      m_read({.done = [this](const Result<ReadAnswer>& answer) { readArrived(answer); },
              .interim = [this](const ReadAnswer& answer) { m_page->showAnswer(answer); },
              .advanced =
                  [this](int step, int steps) {
                      m_page->advance(step, steps);
                  }}),
      m_find({.done =
                  [this](const Result<Finding>& finding) {
                      findingArrived(finding);
                  }},
             kDragPause)
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

    connect(m_list, &RecordingList::addWanted, this, &RecordingsView::askForFiles);
    connect(m_list, &RecordingList::chosenChanged, this, &RecordingsView::showChosen);
    connect(m_list, &RecordingList::removeWanted, this, [this](std::size_t index) {
        const auto at = static_cast<std::ptrdiff_t>(index);
        m_list->problem().display(m_document.edit(tr("remove a recording"), {}, [at](Setup& setup) {
            setup.recordings.erase(setup.recordings.begin() + at);
        }));
    });
    connect(m_list, &RecordingList::kindWanted, this, [this](std::size_t, RecordingKind kind) {
        change(tr("change what a recording is taken for"),
               [kind](NamedRecording& named) { named.kind = kind; });
    });
    connect(&m_page->columns(), &ColumnPane::changed, this,
            [this](const std::vector<ReadColumn>& columnsWanted, std::optional<double> rate_hz) {
                change(tr("change how a recording is read"), [&](NamedRecording& named) {
                    named.columns = columnsWanted;
                    named.rate_hz = rate_hz;
                });
            });
    connect(&m_page->sensor(), &SensorPane::changed, this, [this](const NamedRecording& sensor) {
        change(tr("say where the sensor sat"), [&](NamedRecording& named) {
            named.sensor_mm = sensor.sensor_mm;
            named.sensor_mass_g = sensor.sensor_mass_g;
            named.sensor_axes = sensor.sensor_axes;
            named.arm = sensor.arm;
        });
    });
    const auto takePart = [this](std::optional<double> from_s, std::optional<double> to_s) {
        change(tr("choose a part of a recording"), [&](NamedRecording& named) {
            named.from_s = from_s;
            named.to_s = to_s;
        });
    };
    connect(m_page, &RecordingPage::partWanted, this, takePart);
    connect(m_film, &FilmPage::partWanted, this, takePart);
    connect(m_film, &FilmPage::throttleWanted, this, [this](std::optional<double> throttle) {
        change(tr("say at which throttle was filmed"),
               [throttle](NamedRecording& named) { named.throttle = throttle; });
    });
    connect(m_films, &FilmDesk::said, this,
            [this](const Finding& finding) { m_said->setFinding(finding, m_document.setup()); });
    connect(m_films, &FilmDesk::saysNothing, this, [this](const Error& error) {
        m_said->say(tr("It says nothing: %1.").arg(reasonText(error)));
    });
    connect(m_films, &FilmDesk::failed, this,
            [this](const Error& error) { tellUnreadable(m_shownFilm->path, error); });
    connect(m_films, &FilmDesk::staleChanged, m_said, &SaidPane::setStale);
    connect(m_films, &FilmDesk::stopped, this, [this] { m_said->say({}); });
    connect(m_films, &FilmDesk::marksChanged, this,
            [this](const std::vector<FilmedMark>& marks, const Setup& craft) {
                m_marks = marks;
                m_marksCraft = craft;
                tellMarks();
            });
    connect(m_page, &RecordingPage::stopWanted, this, [this] {
        m_stopped = m_read.wanted();
        m_read.drop();
        m_page->showStopped();
        m_said->say({});
    });
    connect(m_page, &RecordingPage::readWanted, this, [this] {
        m_stopped.reset();
        showChosen();
    });
    connect(m_hang, &HangPane::changed, this, &RecordingsView::showChosen);
    connect(m_notes, &FlightNotesPane::notesWanted, this,
            [this](const std::vector<FlightNote>& notes) {
                m_notes->problem().display(
                    m_document.edit(tr("change the flight notes"), {},
                                    [&](Setup& setup) { setup.flight.notes = notes; }));
            });
    connect(m_said, &SaidPane::matchingWanted, this,
            [this](const std::vector<std::optional<std::size_t>>& matching) {
                m_matching = matching;
                if (const NamedRecording* const named = shownRecording())
                    m_matched = *named;
                ask();
            });
    connect(m_said, &SaidPane::acceptWanted, this, &RecordingsView::take);
    connect(&m_document, &Document::opened, this, [this] {
        m_messages->hide();
        m_stopped.reset();
        m_films->leave();
        m_shownFilm.reset();
        m_marks.clear();
        tellMarks();
        m_list->choose({});
    });
    connect(&m_document, &Document::setupChanged, this, &RecordingsView::tellMarks);
    connect(&m_document, &Document::setupChanged, this, &RecordingsView::refresh);
}

QWidget* RecordingsView::makeEmpty()
{
    auto* const empty = new QWidget;
    auto* const layout = new QVBoxLayout(empty);
    layout->setContentsMargins(24, 24, 24, 24);
    layout->addStretch(1);
    auto* const text = new QuietLabel(
        tr("Add what a sensor, a microphone, a camera or a flight log took of this craft, by the "
           "button on the left or by dropping the file here: the tab lays it over the prediction "
           "and offers better numbers."));
    text->setAlignment(Qt::AlignCenter);
    layout->addWidget(text);
    m_samples->setToolTip(
        tr("Invented recordings of this sample craft, as if it had been built "
           "and differed from its file."));
    m_samples->setAutoDefault(true);
    layout->addWidget(m_samples, 0, Qt::AlignHCenter);
    layout->addStretch(2);
    connect(m_samples, &QPushButton::clicked, this, &RecordingsView::takeSamples);
    return empty;
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

const NamedRecording* RecordingsView::shownRecording() const
{
    const Chosen chosen = m_list->chosen();
    const auto& recordings = m_document.setup().recordings;
    return chosen.what == Chosen::What::Recording && chosen.index < recordings.size()
               ? &recordings[chosen.index]
               : nullptr;
}

// A sweep has one where the craft has exactly two.
std::optional<NamedRecording> RecordingsView::partnerOf(const NamedRecording& sweep) const
{
    std::vector<NamedRecording> others;
    for (const NamedRecording& other : m_document.setup().recordings)
        if (other.kind == RecordingKind::Sweep && other.file != sweep.file)
            others.push_back(other);
    if (sweep.kind != RecordingKind::Sweep || others.size() != 1)
        return {};
    return others.front();
}

void RecordingsView::takeSamples()
{
    const QStringList paths = laidOutSamples();
    if (paths.isEmpty())
        m_list->problem().refuse(tr("the samples cannot be written to the program's own folder"));
    else
        addFiles(paths, describeSample);
}

void RecordingsView::askForFiles()
{
    const QString folder =
        m_document.path().isEmpty() ? QString() : QFileInfo(m_document.path()).absolutePath();
    const QStringList paths =
        QFileDialog::getOpenFileNames(this, tr("Add recordings"), folder, recordingFilter());
    if (!paths.isEmpty())
        addFiles(paths);
}

void RecordingsView::addFiles(const QStringList& paths,
                              const std::function<void(NamedRecording&)>& describe)
{
    const auto last = nameFiles(m_document, paths, describe);
    const bool isTaken = m_list->problem().display(
        last ? Result<void>() : Result<void>(tl::unexpected<Error>(last.error())));
    if (isTaken && *last)
        m_list->choose({Chosen::What::Recording, **last});
}

// A recording that was moved gets its new place.
void RecordingsView::find(const QString& file)
{
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Where is %1?").arg(file), {}, recordingFilter());
    if (!path.isEmpty())
        change(tr("name the recording's new place"),
               [&path](NamedRecording& named) { named.file = namedPlace(path); });
}

void RecordingsView::change(const QString& text, const std::function<void(NamedRecording&)>& how)
{
    const Chosen chosen = m_list->chosen();
    if (!shownRecording())
        return;
    m_list->problem().display(
        m_document.edit(text, {}, [&](Setup& setup) { how(setup.recordings[chosen.index]); }));
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
    const NamedRecording* const named = shownRecording();
    if (!named || named->kind != RecordingKind::Film) {
        m_films->leave();
        m_shownFilm.reset();
    }
    if (named && named->kind != RecordingKind::Film)
        return showRecording(*named);
    m_read.drop();
    m_find.drop();
    m_shown.reset();
    m_recording.reset();
    if (named)
        return showFilm(*named);
    m_messages->hide();
    if (m_list->chosen().what == Chosen::What::HangTest)
        return showHang();
    if (m_list->chosen().what == Chosen::What::FlightNotes)
        return showNotes();
    m_centre->setCurrentWidget(m_empty);
    m_samples->setVisible(areSamplesOf(m_document.setup()));
    m_said->say({});
}

void RecordingsView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    refresh();
}

void RecordingsView::showHang()
{
    m_centre->setCurrentWidget(m_hang);
    const std::vector<HungMass> masses = m_hang->masses();
    if (masses.empty())
        return m_said->say(tr("Fill in one row or more: the tube's Young's modulus follows."));
    const Result<Correction> correction = hangTest(m_document.setup(), masses, m_hang->readings());
    if (!correction)
        return m_said->say(tr("No answer: %1.").arg(reasonText(correction.error())));
    m_said->display(tr("So stiff is the tube by the masses hung on it."), correction->mark,
                    *correction, {});
}

void RecordingsView::showNotes()
{
    m_centre->setCurrentWidget(m_notes);
    const std::vector<FlightNote>& notes = m_document.setup().flight.notes;
    m_notes->setNotes(notes);
    if (notes.empty())
        return m_said->say(tr("Notes say where the prediction and what the films show differ."));
    if (!m_prediction || m_predicted != m_document.setup())
        return m_said->setStale(true);  // it is on the way
    const FlightNotesCheck check = checkFlightNotes(m_document.setup(), m_prediction->curve);
    QStringList each;
    for (const NoteCheck& note : check.notes)
        each << displayText(noteText(note));
    m_said->display(displayText(flightNotesText(check)),
                    check.correction ? std::optional(check.correction->mark) : std::nullopt,
                    check.correction, each);
}

void RecordingsView::showRecording(const NamedRecording& named)
{
    m_centre->setCurrentWidget(m_page);
    const ReadKey key = readKeyOf(named);
    if (m_shown != key)
        showOther(key);
    m_page->setNamed(named, m_document.setup().airframe.arms);
    if (key.size < 0)
        return;
    if (!m_recording && !m_read.wanted())
        read(named, key);
    ask();
}

// Another file, another version of it, or read in another way.
void RecordingsView::showOther(const ReadKey& key)
{
    if (!m_shown || m_shown->path != key.path)
        m_page->showNothing();
    m_shown = key;
    m_recording.reset();
    m_matching.clear();
    m_read.drop();
    m_find.drop();
    m_messages->hide();
    if (key.size >= 0)
        return m_said->say(tr("What it says is being worked out…"));
    m_page->showNothing();
    tellMissing(key.path);
}

void RecordingsView::tellMissing(const QString& path)
{
    m_said->say({});
    const QString name = QFileInfo(path).fileName();
    m_messages->display(
        MessageBar::Kind::Problem, tr("%1 is missing").arg(name), QDir::toNativeSeparators(path),
        {{tr("Find it…"), tr("Names the place where the recording is now."), [this, name] {
              find(name);
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
        m_films->show(m_list->chosen().index,
                      {m_document.setup(), m_prediction, m_predicted == m_document.setup()});
}

bool RecordingsView::isBusy() const
{
    return m_read.isDue() || m_find.isDue() || m_films->isBusy();
}

void RecordingsView::read(const NamedRecording& named, const ReadKey& key)
{
    if (m_stopped == key) {
        m_said->say({});
        return m_page->showStopped();
    }
    m_page->showReading();
    m_read.want(key,
                [named](const Caller<ReadAnswer>& caller) { return readNamed(named, caller); });
}

void RecordingsView::readArrived(const Result<ReadAnswer>& answer)
{
    if (!answer) {
        m_page->showNothing();
        return tellUnreadable(m_shown->path, answer.error());
    }
    m_page->showAnswer(*answer);
    if (answer->failure)
        return tellUnreadable(m_shown->path, *answer->failure);
    m_recording = answer->recording;
    if (const NamedRecording* named = shownRecording())
        m_page->setNamed(*named, m_document.setup().airframe.arms);
    ask();
}

void RecordingsView::ask()
{
    const NamedRecording* const named = shownRecording();
    if (!named || !isVisible())
        return;
    if (!m_recording || !m_shown)
        return;
    if (m_predicted != m_document.setup()) {  // its prediction is on the way
        m_page->result().setStale(true);
        m_said->setStale(true);
        return;
    }
    if (m_matched != *named)  // other modes may be found
        m_matching.clear();
    const bool isPredicted = m_prediction != nullptr;
    FindKey key{*m_shown,    *named,    partnerOf(*named), measuredCraft(m_document.setup()),
                isPredicted, m_matching};
    if (m_find.wanted() == key) {
        m_page->result().setStale(m_find.isDue());
        m_said->setStale(m_find.isDue());
        return;
    }
    m_page->result().setStale(true);
    m_said->setStale(true);
    const FindingQuestion question{m_document.setup(), m_prediction, *named,
                                   m_recording,        key.partner,  m_matching};
    m_find.want(std::move(key), [question](const Caller<Finding>& caller) {
        return findingOf(question, caller.stop);
    });
}

void RecordingsView::findingArrived(const Result<Finding>& finding)
{
    m_page->result().setStale(false);
    if (!finding) {
        m_page->result().setCharts({});
        m_matching.clear();
        return m_said->say(tr("It says nothing: %1.").arg(reasonText(finding.error())));
    }
    m_page->result().setCharts(finding->charts);
    m_said->setFinding(*finding, m_document.setup());
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
