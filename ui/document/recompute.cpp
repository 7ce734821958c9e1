// SPDX-License-Identifier: MIT
#include "ui/document/recompute.h"

#include <QtConcurrent>

#include <exception>

namespace stillbay::ui {
namespace {

constexpr qint64 kSpacing_ms = 10;  // no screen shows more

// An exception out of core is a bug: say so instead of waiting for ever.
Result<Assessment> assessNoThrow(Assessor& assessor, const Setup& setup)
{
    try {
        return assessor.assess(setup);
    } catch (const std::exception& exception) {
        return faultInProgram(exception);
    }
}

}  // namespace

Recompute::Recompute(const Document& document, QObject* parent)
    : QObject(parent), m_document(document), m_assessor(std::make_shared<Assessor>())
{
    m_thread.setMaxThreadCount(1);
    m_coalesce.setSingleShot(true);
    m_coalesce.setTimerType(Qt::PreciseTimer);
    connect(&m_document, &Document::setupChanged, this, &Recompute::schedule);
    connect(&m_coalesce, &QTimer::timeout, this, &Recompute::start);
    connect(&m_watcher, &QFutureWatcherBase::finished, this, &Recompute::deliver);
}

Recompute::~Recompute()
{
    m_watcher.waitForFinished();
}

// At once where it may, so that the run is under way while the window still paints.
void Recompute::schedule()
{
    if (m_isBusy || m_coalesce.isActive())
        return;  // the timer is not restarted, so that a long drag still refreshes
    const qint64 since = m_sinceStart.isValid() ? m_sinceStart.elapsed() : kSpacing_ms;
    if (since >= kSpacing_ms)
        start();
    else
        m_coalesce.start(static_cast<int>(kSpacing_ms - since));
}

void Recompute::start()
{
    m_isBusy = true;
    m_sinceStart.start();
    m_watcher.setFuture(QtConcurrent::run(
        &m_thread, [assessor = m_assessor, outbox = m_outbox, setup = m_document.setup(),
                    revision = m_document.revision()] {
            outbox->give(std::make_shared<const Outcome>(
                Outcome{setup, assessNoThrow(*assessor, setup), revision}));
        }));
}

void Recompute::deliver()
{
    const std::shared_ptr<const Outcome> outcome = m_outbox->take();
    m_isBusy = false;
    m_doneRevision = outcome->revision;
    if (!isCurrent())
        schedule();
    emit finished(*outcome);
}

}  // namespace stillbay::ui
