// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"
#include "ui/document/file_stamp.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QUndoStack>

#include <functional>
#include <memory>
#include <vector>

namespace stillbay::ui {

struct Snapshot;

/// Owns the one craft being edited; its recordings have their whole paths here (recording_paths.h).
/// Widgets read it, observe it, and change it only by edit(). What it refuses is told where it was
/// tried (ProblemLabel).
class Document final : public QObject {
    Q_OBJECT
public:
    explicit Document(QObject* parent = nullptr);

    const Setup& setup() const { return m_setup; }
    bool hasCraft() const { return m_hasCraft; }     ///< false until the first open()
    quint64 revision() const { return m_revision; }  ///< grows with every change, undo included
    /// So many steps can be undone; of a craft that takes much memory fewer, so that all of them
    /// take some 256 MB.
    static constexpr int kMostSteps = 200;
    /// @param bytes  of the craft's text, about what it takes in memory too
    static int stepsOf(qsizetype bytes);
    QUndoStack& undoStack() { return m_undoStack; }
    bool isModified() const { return !m_undoStack.isClean(); }

    const QString& path() const { return m_path; }  ///< empty: never saved
    QString fileName() const;  ///< for titles; a name even before the first save
    /// The version of the file that the craft was read from or written to last; of none for a
    /// craft without a file.
    const FileStamp& stamp() const { return m_stamp; }
    const std::vector<Warning>& fileWarnings() const { return m_fileWarnings; }

    /// Runs change on a copy of the setup and records the step. Steps of one field (not empty)
    /// within one gesture become one; a step that changes nothing leaves no trace.
    ///
    /// @param text   what the undo menu calls the step
    /// @param field  path of the changed number, e.g. "tube.bore_mm"; empty: never merges
    /// @error BadInput  what validate() refuses; the setup stays as it was.
    [[nodiscard]] Result<void> edit(const QString& text, const QString& field,
                                    const std::function<void(Setup&)>& change);
    void endGesture() { ++m_gesture; }  ///< on mouse release, Enter or focus out

    /// Replaces the craft by the one in the file; on any error the craft at hand stays.
    Result<void> open(const QString& path);
    /// The same for text that has no file of its own: a sample.
    Result<void> openText(const QByteArray& text, const QString& title);
    /// Replaces it by a new one that has no file yet; it counts as unsaved.
    Result<void> openNew(const Setup& setup, const QString& title);
    /// Writes the file so that it is either the old one or the whole new one, and takes its path.
    /// @param replaced  as safeWrite() has it
    Result<void> save(const QString& path, const FileStamp* replaced = nullptr);

    /// Takes unsaved work of an earlier run; it counts as unsaved.
    Result<void> recover(const Snapshot& snapshot);
    /// What save() would write.
    Result<QByteArray> text() const;
    /// The file is another by now, and the builder knows and keeps this craft: unsaved again.
    void keepOver(const FileStamp& onDisk);

signals:
    void opened();  ///< another craft, or the same anew; setupChanged() follows
    void setupChanged();
    void fileChanged();  ///< path, title or the file's warnings

private:
    friend class EditSetup;
    void setSetup(std::shared_ptr<const Setup> setup);
    Result<QByteArray> textFor(const QString& path) const;
    Result<void> take(const QByteArray& text, const QString& path, const QString& title,
                      const FileStamp& stamp);

    Setup m_setup;
    std::shared_ptr<const Setup> m_kept = std::make_shared<const Setup>();  // the same, for undo
    QString m_path;
    QString m_title;
    FileStamp m_stamp;
    std::vector<Warning> m_fileWarnings;
    bool m_hasCraft = false;
    quint64 m_revision = 0;
    quint64 m_gesture = 0;
    QUndoStack m_undoStack;
};

}  // namespace stillbay::ui
