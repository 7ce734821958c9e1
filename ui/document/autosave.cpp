// SPDX-License-Identifier: MIT
#include "ui/document/autosave.h"

#include "ui/document/safe_write.h"

#include <QFile>
#include <QUuid>

#include <utility>

namespace stillbay::ui {
namespace {

constexpr mode_t kMineAlone = 0600;
constexpr int kPause_ms = 2000;    // writing waits for the disk: not in the middle of a drag
constexpr int kLatest_ms = 15000;  // the most work that a crash may cost

// Outside the class, so that the translation tools file the sentence under the namespace.
tl::unexpected<Error> placeIsTaken()
{
    return fail(Errc::BadInput, phrase("another program holds its place"));
}

}  // namespace

Autosave::Autosave(Document& document, QObject* parent)
    : QObject(parent),
      m_document(document),
      m_place(QUuid::createUuid().toString(QUuid::WithoutBraces))
{
    m_pause.setSingleShot(true);
    m_pause.setInterval(kPause_ms);
    m_latest.setSingleShot(true);
    m_latest.setInterval(kLatest_ms);
    for (QTimer* timer : {&m_pause, &m_latest})
        connect(timer, &QTimer::timeout, this, &Autosave::writeNow);
    connect(&m_document, &Document::setupChanged, this, &Autosave::changed);
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this, &Autosave::changed);
}

void Autosave::changed()
{
    if (!m_document.isModified()) {
        drop();
        return;
    }
    m_pause.start();
    if (!m_latest.isActive())
        m_latest.start();
}

bool Autosave::writeNow()
{
    m_pause.stop();
    m_latest.stop();
    if (!m_document.isModified())
        return true;
    const Result<void> written = write();
    const bool failedBefore = std::exchange(m_failing, !written);
    if (m_failing && !failedBefore)
        emit failed(written.error().what);
    if (!m_failing && failedBefore)
        emit worksAgain();
    return !m_failing;
}

// Where the lock cannot be made for want of room or rights, the work itself is tried all the same:
// it may just fit, and otherwise tells the reason.
Result<void> Autosave::write()
{
    if (!m_place.lock->isTaken() && m_place.lock->take() == FileLock::Taken::ByAnother)
        return placeIsTaken();
    const Result<QByteArray> craft = m_document.text();
    if (!craft)
        return tl::unexpected<Error>(craft.error());
    return safeWrite(m_place.file,
                     snapshotText({m_document.path(), m_document.fileName(),
                                   QDateTime::currentDateTime(), m_document.stamp(), *craft}),
                     kMineAlone);
}

void Autosave::drop()
{
    m_pause.stop();
    m_latest.stop();
    QFile::remove(m_place.file);
    m_place.lock->release();
    if (std::exchange(m_failing, false))
        emit worksAgain();
}

}  // namespace stillbay::ui
