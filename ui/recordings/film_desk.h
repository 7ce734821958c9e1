// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/background.h"
#include "ui/recordings/film_finding.h"
#include "ui/recordings/film_read.h"
#include "ui/recordings/measured_craft.h"

#include <QObject>

#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace stillbay::ui {

class FilmPage;

/// Reads the chosen film, then the craft's others one after the other, and finds what they say.
/// What was read is kept while this lives, for a dozen films.
class FilmDesk final : public QObject {
    Q_OBJECT
public:
    explicit FilmDesk(FilmPage& page, QObject* parent = nullptr);

    /// The film that is shown, as its craft is now.
    ///
    /// @param place  of the film among the craft's recordings
    void show(std::size_t place, const PredictedCraft& craft);
    void leave();  ///< no film is shown; what was read of them stays
    bool isBusy() const { return m_read.isDue() || m_find.isDue(); }

signals:
    void said(const stillbay::ui::Finding& finding);
    void saysNothing(const stillbay::Error& error);  ///< it was read, but shows nothing
    void failed(const stillbay::Error& error);       ///< it cannot be read
    void stopped();                                  ///< by the builder, before it said anything
    void staleChanged(bool isStale);                 ///< what was said is being worked out anew
    void working(const QString& text);               ///< how far that is; empty: nothing to say
    /// What all films that were read showed, and of which craft that is.
    void marksChanged(const std::vector<stillbay::ui::FilmedMark>& marks,
                      const stillbay::Setup& craft);

private:
    struct Kept {
        FilmKey key;
        FilmAnswer answer;
    };
    struct FindKey {
        Setup craft;
        bool isPredicted = false;
        std::vector<std::pair<FilmKey, std::optional<double>>> films;  // with throttles
        std::size_t chosen = 0;                                        // its place among them
        bool operator==(const FindKey&) const = default;
    };

    const FilmAnswer* kept(const FilmKey& key) const;
    bool isStopped(const FilmKey& key) const;
    std::vector<FilmKey> filmsOfCraft() const;
    void keep(const FilmKey& key, const FilmAnswer& answer);
    void read(const NamedRecording& film, const FilmKey& key);
    void readOthers();
    void readArrived(const Result<FilmAnswer>& answer);
    void begin();
    void stop();
    void ask();
    void dropFinding();
    void showChosen();
    void showKept(const FilmAnswer& answer);
    void showStrip();
    void findAdvanced(int step, int steps);
    void findingArrived(const Result<FilmFinding>& finding);
    void tellWorking(const QString& text);

    FilmPage& m_page;
    std::optional<NamedRecording> m_chosen;
    std::size_t m_place = 0;         // of it among the craft's recordings
    std::optional<FilmKey> m_shown;  // on the page
    PredictedCraft m_craft;
    std::vector<Kept> m_kept;              // the one that was read last is last
    std::map<QString, double> m_length_s;  // of whole films, by path
    std::vector<FilmKey> m_stopped;        // by the builder
    bool m_isFindStopped = false;          // likewise: what the chosen film says
    QString m_working;                     // how far what is sought is
    unsigned m_attempt = 0;                // one that failed is tried again when asked for
    Background<std::pair<FilmKey, unsigned>, FilmAnswer> m_read;  // last: they are gone before …
    Background<FindKey, FilmFinding> m_find;                      // … what they report to
};

}  // namespace stillbay::ui
