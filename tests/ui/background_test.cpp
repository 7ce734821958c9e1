// SPDX-License-Identifier: MIT
#include "ui/document/background.h"

#include <QSemaphore>
#include <QTest>
#include <gtest/gtest.h>

#include <atomic>
#include <memory>
#include <stdexcept>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr int kPatience_ms = 20000;

// What a job and its test tell each other.
struct Gate {
    QSemaphore begun, mayEnd;
    std::atomic<bool> stopped = false;
};

// Steps until it is told to stop or let through.
Background<int>::Work gated(const std::shared_ptr<Gate>& gate, int answer)
{
    return [gate, answer](const Progress& progress) -> Result<int> {
        gate->begun.release();
        while (!gate->mayEnd.tryAcquire(1, 1))
            if (!progress(0, 1)) {
                gate->stopped = true;
                return tl::unexpected(stoppedOnRequest());
            }
        return answer;
    };
}

TEST(Background, DeliversTheAnswerAndTheStepsOnThisThread)
{
    Background<int> job;
    QThread* const home = QThread::currentThread();
    int answer = 0;
    std::vector<std::pair<int, int>> steps;
    job.start(
        [](const Progress& progress) -> Result<int> {
            for (std::size_t step = 1; step <= 4; ++step)
                progress(step, 4);
            return 42;
        },
        [&](const Result<int>& result) {
            EXPECT_EQ(QThread::currentThread(), home);
            answer = result.value();
        },
        [&](int step, int total) {
            EXPECT_EQ(QThread::currentThread(), home);
            steps.emplace_back(step, total);
        });
    ASSERT_TRUE(QTest::qWaitFor([&] { return answer != 0; }, kPatience_ms));
    EXPECT_EQ(answer, 42);
    ASSERT_FALSE(steps.empty());
    EXPECT_EQ(steps.back(), std::pair(4, 4));
    EXPECT_FALSE(job.isRunning());
}

TEST(Background, StartingAnewDropsTheFirst)
{
    const auto first = std::make_shared<Gate>(), second = std::make_shared<Gate>();
    std::vector<int> answers;
    const auto keep = [&](const Result<int>& result) {
        answers.push_back(result.value());
    };
    Background<int> job;
    job.start(gated(first, 1), keep);
    first->begun.acquire();
    job.start(gated(second, 2), keep);
    second->mayEnd.release();
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return !answers.empty() && first->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_EQ(answers, std::vector{2});
}

TEST(Background, DestroyingStopsTheJobWithoutAnAnswer)
{
    const auto gate = std::make_shared<Gate>();
    bool arrived = false;
    {
        Background<int> job;
        job.start(gated(gate, 1), [&](const Result<int>&) { arrived = true; });
        gate->begun.acquire();
    }
    ASSERT_TRUE(QTest::qWaitFor([&] { return gate->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_FALSE(arrived);
}

TEST(Background, ShowsWhatIsKnownBeforeTheAnswer)
{
    Background<int> job;
    std::vector<int> shown;
    job.startInSteps(
        [](const Progress&, const Background<int>::Interim& interim) -> Result<int> {
            for (const int part : {1, 2, 3})
                interim(part);
            return 4;
        },
        [&](const Result<int>& answer) { shown.push_back(answer.value()); },
        [&](int part) {
            EXPECT_EQ(QThread::currentThread(), qApp->thread());
            shown.push_back(part);
        });
    ASSERT_TRUE(QTest::qWaitFor([&] { return shown.size() == 4; }, kPatience_ms));
    EXPECT_EQ(shown, (std::vector{1, 2, 3, 4}));
}

TEST(Background, ACancelledJobShowsNothingMore)
{
    const auto gate = std::make_shared<Gate>();
    Background<int> job;
    bool arrived = false;
    job.startInSteps(
        [gate](const Progress&, const Background<int>::Interim& interim) -> Result<int> {
            gate->begun.release();
            gate->mayEnd.acquire();
            interim(1);
            gate->stopped = true;
            return 2;
        },
        [&](const Result<int>&) { arrived = true; }, [&](int) { arrived = true; });
    gate->begun.acquire();
    job.cancel();
    gate->mayEnd.release();
    ASSERT_TRUE(QTest::qWaitFor([&] { return gate->stopped.load(); }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_FALSE(arrived);
}

TEST(Background, AnExceptionArrivesAsAFaultOfTheProgram)
{
    Background<int> job;
    Errc code = Errc::BadInput;
    job.start([](const Progress&) -> Result<int> { throw std::logic_error("seen"); },
              [&](const Result<int>& result) { code = result.error().code; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return code != Errc::BadInput; }, kPatience_ms));
    EXPECT_EQ(code, Errc::Internal);
}

}  // namespace
}  // namespace stillbay::ui
