// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "ui/charts/filmed_mark.h"
#include "ui/document/background.h"
#include "ui/document/document.h"
#include "ui/recordings/film_read.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/reading.h"
#include "ui/widgets/result_view.h"

#include <QStringList>
#include <QWidget>

#include <functional>
#include <memory>
#include <optional>

class QPushButton;
class QStackedWidget;

namespace stillbay::ui {

class CorrectionPane;
class FilmDesk;
class FilmPage;
class FlightNotesPane;
class HangPane;
class MessageBar;
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

    /// nameFiles(), and chooses the last of them.
    ///
    /// @param describe  of each that is new; empty: nothing more is known of it than its name
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
    /// What the finding depends on.
    struct FindKey {
        ReadKey read;
        NamedRecording named;
        std::optional<NamedRecording> partner;
        Setup craft;
        bool isPredicted = false;
        std::vector<std::optional<std::size_t>> matching;
        bool operator==(const FindKey&) const = default;
    };

    QWidget* makeCentre();
    QWidget* makeEmpty();
    const NamedRecording* shownRecording() const;
    std::optional<NamedRecording> partnerOf(const NamedRecording& sweep) const;
    void takeSamples();
    void askForFiles();
    void find(const QString& file);
    void change(const QString& text, const std::function<void(NamedRecording&)>& how);
    void refresh();
    void showChosen();
    void showRecording(const NamedRecording& named);
    void showOther(const ReadKey& key);
    void showFilm(const NamedRecording& named);
    void tellMarks();
    void tellMissing(const QString& path);
    void tellUnreadable(const QString& path, const Error& error);
    void showHang();
    void showNotes();
    void read(const NamedRecording& named, const ReadKey& key);
    void readArrived(const Result<ReadAnswer>& answer);
    void ask();
    void findingArrived(const Result<Finding>& finding);
    void take(const Correction& correction);

    Document& m_document;
    MessageBar* m_messages;
    RecordingList* m_list;
    QStackedWidget* m_centre;
    QPushButton* m_samples;
    QWidget* m_empty;
    RecordingPage* m_page;
    FilmPage* m_film;
    FilmDesk* m_films;
    HangPane* m_hang;
    FlightNotesPane* m_notes;
    SaidPane* m_said;
    std::vector<std::optional<std::size_t>> m_matching;  // by hand …
    NamedRecording m_matched;                            // … of this
    std::shared_ptr<const Assessment> m_prediction;
    std::optional<Setup> m_predicted;              // what it belongs to
    std::optional<ReadKey> m_stopped;              // the builder has stopped this reading
    std::optional<ReadKey> m_shown;                // on the page
    std::optional<FilmKey> m_shownFilm;            // on the films' page
    std::vector<FilmedMark> m_marks;               // of films …
    Setup m_marksCraft;                            // … of this craft
    std::shared_ptr<const Recording> m_recording;  // of m_shown
    Background<ReadKey, ReadAnswer> m_read;        // last: they are gone before what they
    Background<FindKey, Finding> m_find;           // report to
};

}  // namespace stillbay::ui
