// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assess.h"
#include "core/assess/assessment.h"
#include "ui/document/document.h"
#include "ui/document/handover.h"

#include <QElapsedTimer>
#include <QFutureWatcher>
#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <memory>

namespace stillbay::ui {

/// One finished run: what was assessed, the answer or why there is none, and the document's
/// revision when the run began.
struct Outcome {
    Setup setup;
    Result<Assessment> assessment;
    quint64 revision = 0;
};

/// Keeps one assessment up to date with the document, on a thread of its own: it waits neither for
/// jobs (background.h) nor for what Qt does in the global pool. A run begins at once, but not
/// within 10 ms of the one before: edits in between share a run. One run at a time; the last edit
/// always wins.
class Recompute final : public QObject {
    Q_OBJECT
public:
    explicit Recompute(const Document& document, QObject* parent = nullptr);
    ~Recompute() override;  ///< waits for a run under way

    /// What is shown belongs to the setup as it is now.
    bool isCurrent() const { return m_doneRevision == m_document.revision(); }
    bool isRunning() const { return m_isBusy; }

signals:
    /// While the document has moved on, the views dim what they show until the next outcome.
    void finished(const stillbay::ui::Outcome& outcome);

private:
    void schedule();
    void start();
    void deliver();

    const Document& m_document;
    QTimer m_coalesce;
    QElapsedTimer m_sinceStart;            // of the last run
    std::shared_ptr<Assessor> m_assessor;  // used by the one run at a time; keeps the airframe
    QThreadPool m_thread;                  // of one
    QFutureWatcher<void> m_watcher;
    using Outbox = Handover<std::shared_ptr<const Outcome>>;
    std::shared_ptr<Outbox> m_outbox = std::make_shared<Outbox>();
    bool m_isBusy = false;       // from the start of a run until its answer is out
    quint64 m_doneRevision = 0;  // of the last outcome
};

}  // namespace stillbay::ui
