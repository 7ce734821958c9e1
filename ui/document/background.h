// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "ui/document/handover.h"

#include <QFutureWatcher>
#include <QPromise>
#include <QThreadPool>
#include <QTimer>
#include <QtConcurrent>

#include <chrono>
#include <exception>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <utility>

namespace stillbay::ui {

/// Where jobs run: one thread each, so that none waits for another. Not the global pool: Qt paints
/// over that one, and the window would wait for a thread as long as a job takes.
QThreadPool& jobThreads();

/// Who waits for a job: until when, and how to tell of steps and of what is known so far.
template <class Answer>
struct Caller {
    std::stop_token stop;
    Progress progress;
    std::function<void(Answer)> interim;  ///< hands over a whole answer of its own
};

/// The newest answer to one kind of question that takes longer than a frame, off the GUI thread.
/// A question goes with the key of what its answer depends on; only the answer to the key that is
/// wanted last arrives. Dropping a job or destroying this stops it, and nothing waits for it.
///
/// The work must own what it reads (capture values, not the window): it may still be finishing a
/// step when its owner is gone.
template <class Key, class Answer>
class Background final {
public:
    using Work = std::function<Result<Answer>(const Caller<Answer>&)>;

    /// Called on this thread.
    struct Listener {
        /// Gets each answer; an exception out of work arrives as Internal.
        std::function<void(const Result<Answer>&)> done;
        std::function<void(const Answer&)> interim = {};  ///< before done; may be empty
        std::function<void(int, int)> advanced = {};  ///< (steps done, steps in all); may be empty
    };

    /// @param pause  for which one key has to be wanted before work begins
    explicit Background(Listener listener, std::chrono::milliseconds pause = {})
        : m_listener(std::move(listener))
    {
        m_pause.setSingleShot(true);
        m_pause.setInterval(pause);
        QObject::connect(&m_pause, &QTimer::timeout, &m_pause, [this] { start(); });
    }
    ~Background() { drop(); }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    /// From now on the answer to this key is wanted. The same as before: all goes on as it was.
    /// The one that was answered last: that answer arrives again, at once. Another: what is under
    /// way is dropped, and work begins.
    ///
    /// @param work  runs elsewhere; heeds its caller's stop within one step
    void want(Key key, Work work)
    {
        if (m_wanted == key)
            return;
        drop();
        m_wanted = std::move(key);
        if (m_answered == m_wanted) {
            m_listener.done(*m_answer);
            return;
        }
        m_work = std::move(work);
        if (m_pause.interval() > 0)
            m_pause.start();
        else
            start();
    }

    void drop()  ///< nothing is wanted
    {
        m_pause.stop();
        m_wanted.reset();
        m_work = {};
        if (!m_watcher)
            return;
        m_stop.request_stop();
        m_watcher->disconnect();
        m_watcher.release()->deleteLater();  // this may be a slot of its own
    }

    const std::optional<Key>& wanted() const { return m_wanted; }
    /// What is wanted is on its way.
    bool isDue() const { return m_wanted && m_answered != m_wanted; }
    bool isRunning() const { return m_watcher != nullptr; }
    /// What is wanted has arrived.
    bool isCurrent() const { return m_wanted && m_answered == m_wanted; }

private:
    using Shared = std::shared_ptr<const Answer>;
    using Final = std::shared_ptr<const Result<Answer>>;
    struct Outbox {
        Handover<Shared> interim;
        Handover<Final> last;
    };
    struct Bell {};  // one more interim answer lies in the outbox

    void start()
    {
        m_watcher = std::make_unique<QFutureWatcher<Bell>>();
        QFutureWatcher<Bell>* const watcher = m_watcher.get();
        const auto outbox = std::make_shared<Outbox>();
        QObject::connect(watcher, &QFutureWatcherBase::finished, watcher,
                         [this, outbox] { deliver(outbox->last.take()); });
        if (m_listener.interim)
            QObject::connect(watcher, &QFutureWatcherBase::resultReadyAt, watcher,
                             [this, outbox] { m_listener.interim(*outbox->interim.take()); });
        if (m_listener.advanced)
            QObject::connect(watcher, &QFutureWatcherBase::progressValueChanged, watcher,
                             [this, watcher](int value) {
                                 m_listener.advanced(value, watcher->progressMaximum());
                             });
        m_stop = std::stop_source();
        watcher->setFuture(QtConcurrent::run(
            &jobThreads(), [work = std::exchange(m_work, {}), stop = m_stop.get_token(),
                            outbox](QPromise<Bell>& promise) {
                const Caller<Answer> caller{
                    stop,
                    [&promise, told = std::size_t{0}](std::size_t step, std::size_t steps) mutable {
                        if (steps != told)  // each time costs the window an event
                            promise.setProgressRange(0, static_cast<int>(steps));
                        told = steps;
                        promise.setProgressValue(static_cast<int>(step));
                    },
                    [&promise, &outbox](Answer answer) {
                        outbox->interim.give(std::make_shared<const Answer>(std::move(answer)));
                        promise.addResult(Bell{});
                    }};
                outbox->last.give(runWithoutThrowing(work, caller));
            }));
    }

    void deliver(Final answer)
    {
        m_watcher.release()->deleteLater();  // this is a slot of its own
        m_answered = m_wanted;
        m_answer = std::move(answer);
        m_listener.done(*Final(m_answer));  // which may want the next
    }

    static Final runWithoutThrowing(const Work& work, const Caller<Answer>& caller)
    {
        try {
            return std::make_shared<const Result<Answer>>(work(caller));
        } catch (const std::exception& exception) {
            return std::make_shared<const Result<Answer>>(faultInProgram(exception));
        }
    }

    Listener m_listener;
    QTimer m_pause;
    std::optional<Key> m_wanted, m_answered;
    Work m_work;     // for the wanted one, until it begins
    Final m_answer;  // to the answered one
    std::stop_source m_stop;
    std::unique_ptr<QFutureWatcher<Bell>> m_watcher;  // while a job runs
};

}  // namespace stillbay::ui
