// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;
class QListWidget;
class QMainWindow;
class QSplitter;

namespace stillbay::ui {

class HelpBrowser;

/// The program's pages, offline, beside the window they explain: list of pages, the page, and a
/// search in it.
class HelpWindow final : public QWidget {
    Q_OBJECT
public:
    explicit HelpWindow(QMainWindow& explained);
    ~HelpWindow() override;  ///< remembers size and place

    void showPage(const QUrl& url);
    /// The page on the setup file, where it explains the field. @param path  "drive.motor.mass_g"
    void showField(const QString& path);
    HelpBrowser& browser() { return *m_browser; }

private:
    QWidget* makeSearch();
    void find(bool backwards);
    void listed(const QUrl& url);

    QListWidget* m_pages;
    HelpBrowser* m_browser;
    QLineEdit* m_text;
    QLabel* m_note;
    QSplitter* m_columns;
};

}  // namespace stillbay::ui
