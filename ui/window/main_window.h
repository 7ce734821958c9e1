// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/autosave.h"
#include "ui/document/document.h"
#include "ui/document/recompute.h"
#include "ui/document/throttle_cursor.h"

#include <QMainWindow>
#include <QTimer>

#include <memory>
#include <vector>

class QLabel;
class QStackedWidget;
class QTabWidget;

namespace stillbay::ui {

class CompareView;
class FileActions;
class HelpWindow;
class MapPage;
class MessageBar;
class NewCraftDesk;
class RecordingsView;
class ResultView;
class Session;
class SheetDesk;
class TunesPanel;
class TuningView;
class VerdictStrip;

/// One window, one craft.
class MainWindow final : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    Document& document() { return m_document; }
    Recompute& recompute() { return m_recompute; }
    ThrottleCursor& cursor() { return m_cursor; }
    TuningView& tuning() { return *m_tuning; }
    TunesPanel& tunes() { return *m_tunes; }
    VerdictStrip& verdict() { return *m_verdict; }
    RecordingsView& recordings() { return *m_recordings; }
    QString message() const;  ///< what the bars across the window say; empty: they are hidden

    /// Opens the file; on failure says why and keeps the craft at hand. Does not ask about
    /// unsaved changes.
    bool openFile(const QString& path);
    bool saveFile(const QString& path);
    /// The desktop session or the program ends: unsaved work is brought to safety, and asked about
    /// where that is allowed. False: the builder wants to go on.
    bool prepareToEnd(bool mayAsk);

protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void makeActions();
    void makeViewMenu(QMenu& menu);
    void makePages();
    void makeBayPage();
    template <class View>
    void addView(View* view, const QString& title);
    void addTab(QWidget* page, const QString& title);
    void makeStatus();
    void restoreSession();
    void storeSession();

    void makeHelpMenu(QMenu& menu);
    HelpWindow& help();
    void showHelp();
    void about();

    void showCraft();
    void showTitle();
    void setupChanged();
    void resultArrived(const Outcome& outcome);
    void drawIcons();

    Document m_document;
    Recompute m_recompute;
    ThrottleCursor m_cursor;
    QTimer m_lateness;          // runs while a result is due
    bool m_freshCraft = false;  // the cursor goes to its hover with the first answer
    MessageBar* m_messages;
    FileActions* m_files;
    NewCraftDesk* m_new;
    SheetDesk* m_sheet = nullptr;
    Autosave m_autosave;
    QStackedWidget* m_pages;
    QTabWidget* m_tabs;
    MapPage* m_map;
    CompareView* m_compare;
    RecordingsView* m_recordings;
    TuningView* m_tuning;
    VerdictStrip* m_verdict;
    TunesPanel* m_tunes;
    std::vector<ResultView*> m_views;  // all that show the newest result
    QLabel* m_state;
    std::unique_ptr<Session> m_session;
    HelpWindow* m_help = nullptr;  // once it was wanted
    QAction* m_undo = nullptr;
    QAction* m_redo = nullptr;
};

}  // namespace stillbay::ui
