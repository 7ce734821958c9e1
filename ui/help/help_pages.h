// SPDX-License-Identifier: MIT
#pragma once

#include <QList>
#include <QString>
#include <QTextBlock>
#include <QUrl>

class QMainWindow;
class QTextDocument;

namespace stillbay::ui {

/// A page of the help: Markdown that is part of the program.
struct HelpPage {
    QString title;
    QUrl url;
};

inline const QUrl kShortcutsUrl(QStringLiteral("help:keyboard-shortcuts.md"));
inline const QUrl kSetupFileUrl(QStringLiteral("qrc:/docs/setup-file.md"));
inline const QUrl kFirstPageUrl(QStringLiteral("qrc:/docs/quick-start.md"));
inline const QUrl kSearchUrl(QStringLiteral("qrc:/docs/search.md"));
inline const QUrl kRecordingsUrl(QStringLiteral("qrc:/docs/window.md#recordings"));
inline const QUrl kGlossaryUrl(QStringLiteral("qrc:/docs/glossary.md"));

/// All pages: the quick start, the glossary, the keyboard shortcuts, which are written from the
/// window itself, then the others by title.
QList<HelpPage> helpPages();

/// Every command of the window that has keys, as Markdown.
QString shortcutsPage(const QMainWindow& window);

/// The heading that a link's fragment means: small letters, hyphens for blanks, no other signs.
/// Not valid: there is none.
QTextBlock headingOf(const QTextDocument& page, const QString& fragment);

/// Where the page on the setup file explains a field.
///
/// @param path  of a field in a setup: "drive.motor.mass_g". Not valid: the page does not have it.
QTextBlock fieldIn(const QTextDocument& page, const QString& path);

}  // namespace stillbay::ui
