// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/document/recent_files.h"

#include <QObject>
#include <QSet>

#include <optional>

class QAction;
class QMenu;
class QWidget;

namespace stillbay::ui {

class MessageBar;
struct Sample;

/// The file side of one window: opening, saving, and the question before work is lost. What goes
/// wrong is told in the message bar; the craft at hand stays.
class FileActions final : public QObject {
    Q_OBJECT
public:
    FileActions(Document& document, MessageBar& messages, QWidget& window);

    RecentFiles& recent() { return m_recent; }
    QAction* openAction() const { return m_open; }
    QAction* saveAction() const { return m_save; }
    void fillMenu(QMenu& menu);

    void askAndOpen();
    /// As askAndOpen(), for a file that is known.
    void openAfterAsking(const QString& path);
    void openSample(const Sample& sample);
    bool openFile(const QString& path);      ///< does not ask about unsaved changes
    void openNew(const Setup& setup);        ///< likewise, a craft without a file
    bool restore(const Snapshot& snapshot);  ///< unsaved work; asks about what is at hand
    bool saveFile(const QString& path);
    /// Asks whether to keep unsaved changes. False: the builder wants to go on editing.
    bool maybeSave();
    /// A number that is typed but not yet entered belongs to the craft too.
    void commitTyping();

signals:
    void opened();  ///< a craft, from wherever
    void saved(const QString& path);

private:
    bool save();
    bool askAndSave();
    enum class Replace { Yes, No, SaveElsewhere };
    /// @param now  takes the version that may go; none: whatever is there
    Replace askToReplace(const QString& path, std::optional<FileStamp>& now);
    void showOpened();

    Document& m_document;
    MessageBar& m_messages;
    QWidget& m_window;
    RecentFiles m_recent;
    QSet<QString> m_backedUp;  // files whose version before this session is kept
    QAction* m_open;
    QAction* m_save;
    QAction* m_saveAs;
};

}  // namespace stillbay::ui
