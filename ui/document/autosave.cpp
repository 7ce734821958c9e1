// SPDX-License-Identifier: MIT
#include "ui/document/autosave.h"

#include "ui/document/safe_write.h"

#include <QFile>
#include <QUuid>

namespace stillbay::ui {
namespace {

constexpr int kPause_ms = 2000;    // writing waits for the disk: not in the middle of a drag
constexpr int kLatest_ms = 15000;  // the most work that a crash may cost

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
    Result<void> written = placeIsTaken();
    if (m_place.lock->isLocked() || m_place.lock->tryLock(0)) {
        const Result<QByteArray> craft = m_document.text();
        written = craft ? safeWrite(m_place.file,
                                    snapshotText({m_document.path(), m_document.fileName(),
                                                  QDateTime::currentDateTime(), m_document.stamp(),
                                                  *craft}),
                                    QFile::ReadOwner | QFile::WriteOwner)
                        : Result<void>(tl::unexpected<Error>(craft.error()));
    }
    if (!written && !m_failing)
        emit failed(written.error().what);
    m_failing = !written;
    return !m_failing;
}

void Autosave::drop()
{
    m_pause.stop();
    m_latest.stop();
    if (!m_place.lock->isLocked())
        return;
    QFile::remove(m_place.file);
    m_place.lock->unlock();
}

}  // namespace stillbay::ui
