// SPDX-License-Identifier: MIT
#include "ui/document/background.h"

#include "tests/ui/window_fixture.h"

#include <QSemaphore>

#include <algorithm>
#include <atomic>
#include <memory>
#include <stdexcept>
#include <vector>

namespace stillbay::ui {
namespace {

using Job = Background<int, int>;

// What a job and its test tell each other.
struct Gate {
    QSemaphore begun, mayEnd;
    std::atomic<bool> stopped = false;
};

// Goes on until it is told to stop or let through.
Job::Work gated(const std::shared_ptr<Gate>& gate, int answer)
{
    return [gate, answer](const Caller<int>& caller) -> Result<int> {
        gate->begun.release();
        while (!gate->mayEnd.tryAcquire(1, 1))
            if (caller.stop.stop_requested()) {
                gate->stopped = true;
                return tl::unexpected(stoppedOnRequest());
            }
        return answer;
    };
}

Job::Work answering(int answer)
{
    return [answer](const Caller<int>&) -> Result<int> {
        return answer;
    };
}

struct Answers {
    std::vector<int> values;
    Job job{{.done = [this](const Result<int>& answer) {
        values.push_back(answer.value());
    }}};

    bool await(std::size_t count)
    {
        return QTest::qWaitFor([&] { return values.size() == count; }, kPatience_ms);
    }
};

TEST(Background, DeliversTheAnswerAndTheStepsOnThisThread)
{
    QThread* const home = QThread::currentThread();
    int answer = 0;
    std::vector<std::pair<int, int>> steps;
    Job job({.done =
                 [&](const Result<int>& result) {
                     EXPECT_EQ(QThread::currentThread(), home);
                     answer = result.value();
                 },
             .advanced =
                 [&](int step, int total) {
                     EXPECT_EQ(QThread::currentThread(), home);
                     steps.emplace_back(step, total);
                 }});
    EXPECT_FALSE(job.isDue());
    job.want(1, [](const Caller<int>& caller) -> Result<int> {
        for (std::size_t step = 1; step <= 4; ++step)
            caller.progress(step, 4);
        return 42;
    });
    EXPECT_TRUE(job.isDue());
    EXPECT_FALSE(job.isCurrent());
    ASSERT_TRUE(QTest::qWaitFor([&] { return answer != 0; }, kPatience_ms));
    EXPECT_EQ(answer, 42);
    ASSERT_FALSE(steps.empty());
    EXPECT_EQ(steps.back(), std::pair(4, 4));
    EXPECT_FALSE(job.isDue());
    EXPECT_TRUE(job.isCurrent());
}

TEST(Background, WantingAnotherDropsTheFirst)
{
    const auto first = std::make_shared<Gate>(), second = std::make_shared<Gate>();
    Answers answers;
    answers.job.want(1, gated(first, 10));
    first->begun.acquire();
    answers.job.want(2, gated(second, 20));
    second->mayEnd.release();
    ASSERT_TRUE(answers.await(1));
    ASSERT_TRUE(QTest::qWaitFor([&] { return first->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_EQ(answers.values, std::vector{20});
}

TEST(Background, WantingTheSameLetsItGoOn)
{
    const auto gate = std::make_shared<Gate>();
    Answers answers;
    answers.job.want(1, gated(gate, 10));
    gate->begun.acquire();
    answers.job.want(1, answering(11));
    gate->mayEnd.release();
    ASSERT_TRUE(answers.await(1));
    answers.job.want(1, answering(12));
    EXPECT_EQ(answers.values, std::vector{10});
}

// There and back before the other's answer has come: what stands is the first one's, at once, and
// the other's never arrives.
TEST(Background, GoingBackBringsTheAnswerAtHandAndNoOther)
{
    const auto other = std::make_shared<Gate>();
    Answers answers;
    answers.job.want(1, answering(10));
    ASSERT_TRUE(answers.await(1));
    answers.job.want(2, gated(other, 20));
    other->begun.acquire();
    answers.job.want(1, answering(11));
    EXPECT_EQ(answers.values, (std::vector{10, 10}));
    EXPECT_TRUE(answers.job.isCurrent());
    ASSERT_TRUE(QTest::qWaitFor([&] { return other->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_EQ(answers.values, (std::vector{10, 10}));
}

TEST(Background, WorkBeginsAfterThePause)
{
    std::vector<int> begun;
    int answer = 0;
    Job job({.done =
                 [&](const Result<int>& result) {
                     answer = result.value();
                 }},
            std::chrono::milliseconds(60));
    for (int key = 1; key <= 5; ++key)
        job.want(key, [key](const Caller<int>&) -> Result<int> { return key; });
    EXPECT_EQ(jobThreads().activeThreadCount(), 0);
    EXPECT_TRUE(job.isDue());
    ASSERT_TRUE(QTest::qWaitFor([&] { return answer != 0; }, kPatience_ms));
    EXPECT_EQ(answer, 5);
}

TEST(Background, DestroyingStopsTheJobWithoutAnAnswer)
{
    const auto gate = std::make_shared<Gate>();
    bool arrived = false;
    {
        Job job({.done = [&](const Result<int>&) {
            arrived = true;
        }});
        job.want(1, gated(gate, 1));
        gate->begun.acquire();
    }
    ASSERT_TRUE(QTest::qWaitFor([&] { return gate->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_FALSE(arrived);
}

TEST(Background, ShowsWhatIsKnownBeforeTheAnswer)
{
    std::vector<int> shown;
    Job job({.done = [&](const Result<int>& answer) { shown.push_back(answer.value()); },
             .interim =
                 [&](int part) {
                     EXPECT_EQ(QThread::currentThread(), qApp->thread());
                     shown.push_back(part);
                 }});
    job.want(1, [](const Caller<int>& caller) -> Result<int> {
        for (const int part : {1, 2, 3})
            caller.interim(part);
        return 4;
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return shown.size() == 4; }, kPatience_ms));
    EXPECT_EQ(shown, (std::vector{1, 2, 3, 4}));
}

TEST(Background, ADroppedJobShowsNothingMore)
{
    const auto gate = std::make_shared<Gate>();
    bool arrived = false;
    Job job({.done = [&](const Result<int>&) { arrived = true; },
             .interim =
                 [&](int) {
                     arrived = true;
                 }});
    job.want(1, [gate](const Caller<int>& caller) -> Result<int> {
        gate->begun.release();
        gate->mayEnd.acquire();
        caller.interim(1);
        gate->stopped = true;
        return 2;
    });
    gate->begun.acquire();
    job.drop();
    EXPECT_FALSE(job.isDue());
    gate->mayEnd.release();
    ASSERT_TRUE(QTest::qWaitFor([&] { return gate->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_FALSE(arrived);
}

TEST(Background, AnExceptionArrivesAsAFaultOfTheProgram)
{
    Errc code = Errc::BadInput;
    Job job({.done = [&](const Result<int>& result) {
        code = result.error().code;
    }});
    job.want(1, [](const Caller<int>&) -> Result<int> { throw std::logic_error("seen"); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return code != Errc::BadInput; }, kPatience_ms));
    EXPECT_EQ(code, Errc::Internal);
}

struct BusyWindow : Window {
    BusyWindow()
    {
        for (int k = 0; k < 2 * QThreadPool::globalInstance()->maxThreadCount() + 1; ++k) {
            gates.push_back(std::make_shared<Gate>());
            jobs.push_back(std::make_unique<Answers>());
        }
    }

    std::vector<std::shared_ptr<Gate>> gates;
    std::vector<std::unique_ptr<Answers>> jobs;
};

// Jobs that do not end, more than there are threads in the pool that Qt paints over: each of them
// runs, no thread of that pool is taken, and the window goes on painting and assessing.
TEST_F(BusyWindow, PaintsAndAssessesBesideAnyNumberOfJobs)
{
    open("reedbed");
    ASSERT_TRUE(
        QTest::qWaitFor([] { return jobThreads().activeThreadCount() == 0; }, kPatience_ms));
    for (std::size_t k = 0; k < jobs.size(); ++k) {
        jobs[k]->job.want(1, gated(gates[k], 1));
        ASSERT_TRUE(gates[k]->begun.tryAcquire(1, kPatience_ms)) << k;
    }
    ASSERT_EQ(QThreadPool::globalInstance()->activeThreadCount(), 0);
    const QImage before = window.grab().toImage();
    change([](auto& s) { s.mounts.free_length_mm = 31.0; });
    settle();
    EXPECT_NE(window.grab().toImage(), before);
    EXPECT_TRUE(std::all_of(jobs.begin(), jobs.end(),
                            [](const auto& answers) { return answers->job.isDue(); }));
}

}  // namespace
}  // namespace stillbay::ui
