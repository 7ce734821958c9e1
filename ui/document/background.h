// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <QFutureWatcher>
#include <QPromise>
#include <QtConcurrent>

#include <exception>
#include <functional>
#include <memory>
#include <utility>

namespace stillbay::ui {

/// A computation that takes longer than a frame, off the GUI thread: one at a time, with progress.
/// Starting anew, cancelling or destroying drops the one under way; its answer never arrives.
///
/// The work must own what it reads (capture values, not the window): it may still be finishing a
/// step when its owner is gone.
template <class Answer>
class Background final {
public:
    using Work = std::function<Result<Answer>(const Progress&)>;
    /// Hands over what is known so far, a whole answer of its own.
    using Interim = std::function<void(Answer)>;
    using WorkInSteps = std::function<Result<Answer>(const Progress&, const Interim&)>;

    Background() = default;
    ~Background() { cancel(); }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    /// @param work      runs elsewhere; asks its Progress after each step whether to go on
    /// @param done      gets the answer, on this thread; an exception out of work arrives as
    /// Internal
    /// @param advanced  gets (steps done, steps in all), on this thread
    void start(Work work, std::function<void(const Result<Answer>&)> done,
               std::function<void(int, int)> advanced = {})
    {
        startInSteps([work = std::move(work)](const Progress& progress,
                                              const Interim&) { return work(progress); },
                     std::move(done), {}, std::move(advanced));
    }

    /// The same for work that has something to show on its way.
    ///
    /// @param interim  gets it, on this thread, before done
    void startInSteps(WorkInSteps work, std::function<void(const Result<Answer>&)> done,
                      std::function<void(const Answer&)> interim,
                      std::function<void(int, int)> advanced = {})
    {
        cancel();
        m_watcher = std::make_unique<QFutureWatcher<Shared>>();
        QFutureWatcher<Shared>* const watcher = m_watcher.get();
        const auto last = std::make_shared<Final>();
        QObject::connect(watcher, &QFutureWatcherBase::finished, watcher,
                         [watcher, last, done = std::move(done)] {
                             if (!watcher->isCanceled() && *last)
                                 done(**last);
                         });
        if (interim)
            QObject::connect(watcher, &QFutureWatcherBase::resultReadyAt, watcher,
                             [watcher, interim = std::move(interim)](int index) {
                                 interim(*watcher->resultAt(index));
                             });
        if (advanced)
            QObject::connect(watcher, &QFutureWatcherBase::progressValueChanged, watcher,
                             [watcher, advanced = std::move(advanced)](int value) {
                                 advanced(value, watcher->progressMaximum());
                             });
        watcher->setFuture(
            QtConcurrent::run([work = std::move(work), last](QPromise<Shared>& promise) {
                const Progress progress = [&promise](std::size_t step, std::size_t steps) {
                    promise.setProgressRange(0, static_cast<int>(steps));
                    promise.setProgressValue(static_cast<int>(step));
                    return !promise.isCanceled();
                };
                const Interim show = [&promise](Answer answer) {
                    promise.addResult(std::make_shared<const Answer>(std::move(answer)));
                };
                *last = runWithoutThrowing(work, progress, show);
            }));
    }

    void cancel()
    {
        if (!m_watcher)
            return;
        m_watcher->disconnect();
        m_watcher->cancel();
        m_watcher.release()->deleteLater();  // this may be a slot of its own
    }

    bool isRunning() const { return m_watcher && m_watcher->isRunning(); }

private:
    using Shared = std::shared_ptr<const Answer>;         // on the way
    using Final = std::shared_ptr<const Result<Answer>>;  // written before the future finishes

    static Final runWithoutThrowing(const WorkInSteps& work, const Progress& progress,
                                    const Interim& interim)
    {
        try {
            return std::make_shared<const Result<Answer>>(work(progress, interim));
        } catch (const std::exception& exception) {
            return std::make_shared<const Result<Answer>>(faultInProgram(exception));
        }
    }

    std::unique_ptr<QFutureWatcher<Shared>> m_watcher;
};

}  // namespace stillbay::ui
