// SPDX-License-Identifier: MIT
#include "ui/widgets/bind_text.h"

#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSignalBlocker>

namespace stillbay::ui {
namespace {

QString textIn(const Document& document, const TextAccess& access)
{
    const std::string* text = access.find(document.setup());
    return text ? QString::fromStdString(*text) : QString();
}

void write(Document& document, const TextAccess& access, const QString& text)
{
    // What the setup refuses stays in the field until it is left; then the field shows the old
    // text.
    (void)document.edit(QObject::tr("change %1").arg(access.spoken), access.path,
                        [&](Setup& setup) {
                            if (const std::string* old = access.find(setup))
                                *const_cast<std::string*>(old) = text.toStdString();
                        });
}

}  // namespace

QLineEdit* bindLine(Document& document, const TextAccess& access)
{
    auto* const line = new QLineEdit;
    line->setAccessibleName(access.spoken);
    line->setAcceptDrops(false);  // a dropped file is for the window
    const auto show = [line, &document, access] {
        const QString text = textIn(document, access);
        if (line->text() != text)
            line->setText(text);
    };
    show();
    QObject::connect(&document, &Document::setupChanged, line, show);
    QObject::connect(line, &QLineEdit::textEdited, &document,
                     [&document, access](const QString& text) { write(document, access, text); });
    QObject::connect(line, &QLineEdit::editingFinished, &document, [&document, show] {
        document.endGesture();
        show();
    });
    return line;
}

QPlainTextEdit* bindNotes(Document& document, const TextAccess& access)
{
    auto* const notes = new QPlainTextEdit;
    notes->setAccessibleName(access.spoken);
    notes->setAcceptDrops(false);
    notes->setTabChangesFocus(true);
    const auto show = [notes, &document, access] {
        const QString text = textIn(document, access);
        const QSignalBlocker quiet(notes);
        if (notes->toPlainText() != text)
            notes->setPlainText(text);
    };
    show();
    QObject::connect(&document, &Document::setupChanged, notes, show);
    QObject::connect(notes, &QPlainTextEdit::textChanged, &document,
                     [&document, access, notes] { write(document, access, notes->toPlainText()); });
    return notes;
}

}  // namespace stillbay::ui
