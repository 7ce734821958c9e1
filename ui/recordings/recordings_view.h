// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/calibrate/correction.h"
#include "ui/charts/filmed_mark.h"
#include "ui/document/document.h"
#include "ui/recordings/film_read.h"
#include "ui/recordings/measured_craft.h"
#include "ui/recordings/reading.h"
#include "ui/widgets/result_view.h"

#include <QStringList>
#include <QWidget>

#include <functional>
#include <memory>
#include <optional>

class QStackedWidget;

namespace stillbay::ui {

class CorrectionPane;
class EmptyPage;
class FilmDesk;
class FilmPage;
class FlightNotesPane;
class HangPane;
class MessageBar;
class RecordingDesk;
class RecordingEdits;
class RecordingList;
class RecordingPage;
class SaidPane;

/// What was measured of the craft: its recordings, what each shows beside the prediction, and the
/// corrections they offer.
class RecordingsView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    explicit RecordingsView(Document& document, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    /// RecordingEdits::add()
    void addFiles(const QStringList& paths,
                  const std::function<void(NamedRecording&)>& describe = {});
    RecordingList& list() { return *m_list; }
    RecordingPage& page() { return *m_page; }
    FilmPage& film() { return *m_film; }
    HangPane& hang() { return *m_hang; }
    FlightNotesPane& flightNotes() { return *m_notes; }
    SaidPane& said() { return *m_said; }
    CorrectionPane& correction();
    MessageBar& messages() { return *m_messages; }
    bool isBusy() const;

signals:
    /// What the films that were read showed.
    ///
    /// @param isOfCraft  false: the craft has been changed since then
    void marksChanged(const std::vector<stillbay::ui::FilmedMark>& marks, bool isOfCraft);

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* makeCentre();
    void connectRecordings();
    void connectFilms();
    template <class Desk>
    void connectDesk(Desk* desk);
    void connectSaid();
    PredictedCraft craft() const;
    void takeSamples();
    void refresh();
    void showChosen();
    void showRecording(const NamedRecording& named);
    void showFilm(const NamedRecording& named);
    void tellMarks();
    void tellMissing(const QString& path);
    void tellUnreadable(const QString& path, const Error& error);
    void take(const Correction& correction);

    Document& m_document;
    MessageBar* m_messages;
    RecordingList* m_list;
    QStackedWidget* m_centre;
    EmptyPage* m_empty;
    RecordingPage* m_page;
    RecordingDesk* m_desk;
    FilmPage* m_film;
    FilmDesk* m_films;
    RecordingEdits* m_edits;
    HangPane* m_hang;
    FlightNotesPane* m_notes;
    SaidPane* m_said;
    std::shared_ptr<const Assessment> m_prediction;
    std::optional<Setup> m_predicted;    // what it belongs to
    std::optional<ReadKey> m_shown;      // on the page of recordings
    std::optional<FilmKey> m_shownFilm;  // on that of films
    std::vector<FilmedMark> m_marks;     // of films …
    Setup m_marksCraft;                  // … of this craft
};

}  // namespace stillbay::ui
