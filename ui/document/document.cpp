// SPDX-License-Identifier: MIT
#include "ui/document/document.h"

#include "core/setup/text.h"
#include "core/setup/validate.h"
#include "ui/document/edit_setup.h"
#include "ui/document/safe_write.h"

#include <QFile>
#include <QFileInfo>

#include <string_view>

namespace stillbay::ui {
namespace {

constexpr qint64 kLargestFile = 16 << 20;  // [bytes]; a craft with a hundred kept tunes is 0.2 MB

Result<QByteArray> readFile(const QString& path)
{
    const QFileInfo info(path);
    if (info.exists() && !info.isFile())
        return fail(Errc::BadInput, "it is not a regular file");
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(Errc::BadInput, file.errorString().toStdString());
    const QByteArray bytes = file.read(kLargestFile + 1);
    if (file.error() != QFileDevice::NoError)
        return fail(Errc::BadInput, file.errorString().toStdString());
    if (bytes.size() > kLargestFile)
        return fail(Errc::BadInput, "the file is larger than 16 MB, too large for a setup");
    return bytes;
}

std::string_view viewOf(const QByteArray& bytes)
{
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

}  // namespace

Document::Document(QObject* parent) : QObject(parent) {}

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
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    return take(*bytes, path, {});
}

Result<void> Document::openText(const QByteArray& text, const QString& title)
{
    return take(text, {}, title);
}

Result<void> Document::save(const QString& path)
{
    const Result<std::string> text = writeSetup(m_setup);
    if (!text)
        return tl::unexpected<Error>(text.error());
    const Result<LoadedSetup> back = readSetup(*text);
    if (!back || back->setup != m_setup)
        return fail(Errc::Internal, "the text to be written does not read back as this craft");
    if (const Result<void> written = safeWrite(path, QByteArray::fromStdString(*text)); !written)
        return written;
    m_path = path;
    m_undoStack.setClean();
    endGesture();
    emit fileChanged();
    return {};
}

Result<void> Document::take(const QByteArray& text, const QString& path, const QString& title)
{
    Result<LoadedSetup> loaded = readSetup(viewOf(text));
    if (!loaded)
        return tl::unexpected<Error>(loaded.error());
    m_path = path;
    m_title = title;
    m_fileWarnings = std::move(loaded->warnings);
    m_hasCraft = true;
    endGesture();
    m_undoStack.clear();
    setSetup(loaded->setup);
    emit fileChanged();
    return {};
}

void Document::setSetup(const Setup& setup)
{
    m_setup = setup;
    ++m_revision;
    emit setupChanged();
}

}  // namespace stillbay::ui
