// SPDX-License-Identifier: MIT
#include "ui/widgets/bind_text.h"

#include "ui/widgets/field_path.h"
#include "ui/widgets/labels.h"

#include <QFocusEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <utility>

namespace stillbay::ui {

TextRow::TextRow(Document& document, TextAccess access, QWidget* editor)
    : m_document(document),
      m_access(std::move(access)),
      m_editor(editor),
      m_refusal(new ProblemLabel(this))
{
    setFieldPath(*this, m_access.path);
    m_editor->setAccessibleName(m_access.spoken);
    m_editor->setAcceptDrops(false);  // a dropped file is for the window
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(m_editor);
    layout->addWidget(m_refusal);
    connect(&m_document, &Document::opened, this, [this] { m_isRefused = false; });
    connect(&m_document, &Document::setupChanged, this, &TextRow::refresh);
}

TextRow::TextRow(Document& document, TextAccess access, QLineEdit* editor)
    : TextRow(document, std::move(access), static_cast<QWidget*>(editor))
{
    m_typed = [editor] {
        return editor->text();
    };
    m_show = [editor](const QString& text) {
        editor->setText(text);
    };
    connect(editor, &QLineEdit::textEdited, this, &TextRow::write);
    connect(editor, &QLineEdit::editingFinished, &m_document, &Document::endGesture);
    refresh();
}

TextRow::TextRow(Document& document, TextAccess access, QPlainTextEdit* editor)
    : TextRow(document, std::move(access), static_cast<QWidget*>(editor))
{
    editor->setTabChangesFocus(true);
    m_typed = [editor] {
        return editor->toPlainText();
    };
    m_show = [editor](const QString& text) {
        const QSignalBlocker quiet(editor);
        editor->setPlainText(text);
    };
    connect(editor, &QPlainTextEdit::textChanged, this, &TextRow::write);
    refresh();
}

// Not by a focus proxy: with one the row would be a stop of its own in the chain of Tab.
void TextRow::focusInEvent(QFocusEvent* event)
{
    m_editor->setFocus(event->reason());
}

void TextRow::write()
{
    m_isRefused = !m_refusal->display(
        m_document.edit(tr("change %1").arg(m_access.spoken), m_access.path, [this](Setup& setup) {
            if (const std::string* old = m_access.find(setup))
                *const_cast<std::string*>(old) = m_typed().toStdString();
        }));
}

void TextRow::refresh()
{
    const std::string* const text = m_access.find(m_document.setup());
    const QString now = text ? QString::fromStdString(*text) : QString();
    if (m_isRefused && now == m_known)
        return;  // an edit elsewhere must not wipe what is typed here
    m_known = now;
    m_isRefused = false;
    m_refusal->format({});
    if (m_typed() != now)
        m_show(now);
}

}  // namespace stillbay::ui
