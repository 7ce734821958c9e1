// SPDX-License-Identifier: MIT
#include "ui/document/recompute.h"

#include <QtConcurrent>

#include <exception>
#include <string>

namespace stillbay::ui {
namespace {

constexpr int kCoalesce_ms = 10;

// An exception out of core is a bug: say so instead of waiting for ever.
Result<Assessment> assessNoThrow(Assessor& assessor, const Setup& setup)
{
    try {
        return assessor.assess(setup);
    } catch (const std::exception& exception) {
        return fail(Errc::Internal, std::string("a fault in the program: ") + exception.what());
    }
}

}  // namespace

Recompute::Recompute(const Document& document, QObject* parent)
    : QObject(parent), m_document(document), m_assessor(std::make_shared<Assessor>())
{
    m_coalesce.setSingleShot(true);
    m_coalesce.setInterval(kCoalesce_ms);
    connect(&m_document, &Document::setupChanged, this, &Recompute::schedule);
    connect(&m_coalesce, &QTimer::timeout, this, &Recompute::start);
    connect(&m_watcher, &QFutureWatcherBase::finished, this, &Recompute::deliver);
}

Recompute::~Recompute()
{
    m_watcher.waitForFinished();
}

void Recompute::schedule()
{
    if (!m_coalesce.isActive())  // not restarted, so that a long drag still refreshes
        m_coalesce.start();
}

void Recompute::start()
{
    if (m_watcher.isRunning())
        return;  // deliver() schedules again when the run is out of date
    m_watcher.setFuture(QtConcurrent::run(
        [assessor = m_assessor, setup = m_document.setup(), revision = m_document.revision()] {
            return std::make_shared<const Outcome>(
                Outcome{setup, assessNoThrow(*assessor, setup), revision});
        }));
}

void Recompute::deliver()
{
    const std::shared_ptr<const Outcome> outcome = m_watcher.result();
    m_doneRevision = outcome->revision;
    emit finished(*outcome);
    if (!isCurrent())
        schedule();
}

}  // namespace stillbay::ui
