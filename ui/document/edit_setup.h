// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QUndoCommand>

#include <memory>
#include <utility>

namespace stillbay::ui {

/// The only undo command: the setup before and after one step, each shared with the step beside it.
/// A setup is a few kilobytes, so whole values cost less than a command class per field, and undo
/// cannot drift from redo.
class EditSetup final : public QUndoCommand {
public:
    EditSetup(Document& document, Setup after, const QString& field, const QString& text)
        : QUndoCommand(text),
          m_document(document),
          m_before(document.m_kept),
          m_after(std::make_shared<const Setup>(std::move(after))),
          m_field(field),
          m_gesture(document.m_gesture)
    {
    }

    int id() const override { return m_field.isEmpty() ? -1 : 1; }
    void redo() override { m_document.setSetup(m_after); }

    void undo() override
    {
        m_document.endGesture();  // what follows must not grow onto an older step
        m_document.setSetup(m_before);
    }

    bool mergeWith(const QUndoCommand* command) override
    {
        const auto& next = *static_cast<const EditSetup*>(command);  // the only class with an id
        if (next.m_field != m_field || next.m_gesture != m_gesture)
            return false;
        m_after = next.m_after;
        setObsolete(*m_after == *m_before);  // dragged back to the start: no step
        return true;
    }

private:
    Document& m_document;  // owns the stack that owns this command
    std::shared_ptr<const Setup> m_before;
    std::shared_ptr<const Setup> m_after;
    QString m_field;
    quint64 m_gesture;
};

}  // namespace stillbay::ui
