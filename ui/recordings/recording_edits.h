// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "ui/document/document.h"

#include <QObject>
#include <QStringList>

#include <functional>
#include <optional>

class QWidget;

namespace stillbay::ui {

class FilmPage;
class RecordingList;
class RecordingPage;

/// Where the builder says something of a recording.
struct RecordingPages {
    RecordingList& list;
    RecordingPage& page;
    FilmPage& film;
};

/// What the builder says of the craft's recordings, into the document, each in one step to undo.
class RecordingEdits final : public QObject {
    Q_OBJECT
public:
    /// @param parent  over which files are asked for
    RecordingEdits(Document& document, const RecordingPages& pages, QWidget* parent);

    /// nameFiles(), and chooses the last of them.
    ///
    /// @param describe  of each that is new; empty: nothing more is known of it than its name
    void add(const QStringList& paths, const std::function<void(NamedRecording&)>& describe = {});
    void find(const QString& file);  ///< asks where the one that is chosen is now
    /// The one that is chosen; null: none is.
    const NamedRecording* shown() const;

private:
    void connectPages();
    void ask();
    void remove(std::size_t place);
    void takePart(std::optional<double> from_s, std::optional<double> to_s);
    void change(const QString& text, const std::function<void(NamedRecording&)>& how);

    Document& m_document;
    RecordingPages m_pages;
    QWidget* m_window;
};

}  // namespace stillbay::ui
