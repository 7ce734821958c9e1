// SPDX-License-Identifier: MIT
#include "ui/document/document.h"

#include "core/disk/whole_file.h"
#include "core/setup/text.h"
#include "core/setup/validate.h"
#include "ui/document/edit_setup.h"
#include "ui/document/file_status.h"
#include "ui/document/native_path.h"
#include "ui/document/read_file.h"
#include "ui/document/recording_paths.h"
#include "ui/document/safe_write.h"
#include "ui/document/snapshot.h"

#include <QFileInfo>

#include <algorithm>
#include <string_view>
#include <utility>

namespace stillbay::ui {
namespace {

std::string_view viewOf(const QByteArray& bytes)
{
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

QDateTime modifiedAt(const QString& path)
{
    return statusOf(path).value_or(FileStatus{}).modified;
}

tl::unexpected<Error> doesNotReadBack()
{
    return fail(Errc::Internal, phrase("the text to be written does not read back as this craft"));
}

}  // namespace

Document::Document(QObject* parent) : QObject(parent)
{
    m_undoStack.setUndoLimit(kMostSteps);
}

int Document::stepsOf(qsizetype bytes)
{
    constexpr qsizetype kUndoMemory = qsizetype{256} << 20;
    return static_cast<int>(
        std::min<qsizetype>(kMostSteps, kUndoMemory / std::max<qsizetype>(bytes, 1)));
}

QString Document::fileName() const
{
    return m_path.isEmpty() ? m_title : QFileInfo(m_path).fileName();
}

Result<void> Document::edit(const QString& text, const QString& field,
                            const std::function<void(Setup&)>& change)
{
    Setup next = m_setup;
    change(next);
    if (next == m_setup)
        return {};
    if (const Result<void> valid = validate(next); !valid)
        return valid;
    m_undoStack.push(new EditSetup(*this, std::move(next), field, text));
    return {};
}

Result<void> Document::open(const QString& path)
{
    sweepBeside(nativePath(path));
    const QDateTime modified = modifiedAt(path);  // before: at worst it is too old
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    return take(*bytes, path, {}, stampOf(*bytes, modified));
}

Result<void> Document::openText(const QByteArray& text, const QString& title)
{
    return take(text, {}, title, {});
}

Result<void> Document::recover(const Snapshot& snapshot)
{
    const Result<void> taken =
        take(snapshot.craft, snapshot.path, snapshot.title, snapshot.original);
    if (taken)
        m_undoStack.resetClean();
    return taken;
}

Result<void> Document::openNew(const Setup& setup, const QString& title)
{
    const Result<std::string> text = writeSetup(setup);
    if (!text)
        return tl::unexpected<Error>(text.error());
    const Result<void> taken = take(QByteArray::fromStdString(*text), {}, title, {});
    if (taken)
        m_undoStack.resetClean();
    return taken;
}

Result<QByteArray> Document::text() const
{
    return textFor(m_path);
}

Result<QByteArray> Document::textFor(const QString& path) const
{
    const Setup written = withPathsSeenFrom(m_setup, path);
    const Result<std::string> text = writeSetup(written);
    if (!text)
        return tl::unexpected<Error>(text.error());
    const Result<LoadedSetup> back = readSetup(*text);
    if (!back || back->setup != written)
        return doesNotReadBack();
    return QByteArray::fromStdString(*text);
}

Result<void> Document::save(const QString& path, const FileStamp* replaced)
{
    const Result<QByteArray> bytes = textFor(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    if (const Result<void> written = safeWrite(path, *bytes, {}, replaced); !written)
        return written;
    m_path = path;
    m_stamp = stampOf(*bytes, modifiedAt(path));
    m_undoStack.setClean();
    endGesture();
    emit fileChanged();
    return {};
}

void Document::keepOver(const FileStamp& onDisk)
{
    m_stamp = onDisk;
    m_undoStack.resetClean();
    emit fileChanged();
}

Result<void> Document::take(const QByteArray& text, const QString& path, const QString& title,
                            const FileStamp& stamp)
{
    Result<LoadedSetup> loaded = readSetup(viewOf(text));
    if (!loaded)
        return tl::unexpected<Error>(loaded.error());
    m_path = path;
    m_title = title;
    m_stamp = stamp;
    m_fileWarnings = std::move(loaded->warnings);
    m_hasCraft = true;
    endGesture();
    m_undoStack.clear();
    m_undoStack.setUndoLimit(stepsOf(text.size()));
    emit opened();
    setSetup(std::make_shared<const Setup>(withWholePaths(std::move(loaded->setup), path)));
    emit fileChanged();
    return {};
}

void Document::setSetup(std::shared_ptr<const Setup> setup)
{
    m_kept = std::move(setup);
    m_setup = *m_kept;  // in place: who reads it goes on reading it
    ++m_revision;
    emit setupChanged();
}

}  // namespace stillbay::ui
