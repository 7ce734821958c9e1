// SPDX-License-Identifier: MIT
#include "ui/document/recompute.h"

#include "tests/ui/patience.h"
#include "tests/ui/samples.h"
#include "ui/document/background.h"

#include <QElapsedTimer>
#include <QSemaphore>
#include <QTest>
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <vector>

namespace stillbay::ui {
namespace {

void setLength(Document& document, double length_mm)
{
    ASSERT_TRUE(document.edit(QStringLiteral("x"), QStringLiteral("mounts.free_length_mm"),
                              [=](Setup& setup) { setup.mounts.free_length_mm = length_mm; }));
}

// Oracle: identity. What arrives last is what the core says of the last edit, to the bit.
TEST(Recompute, TheLastEditWinsAndEditsShareRuns)
{
    Document document;
    Recompute recompute(document);
    std::vector<quint64> revisions;
    Outcome last;
    QObject::connect(&recompute, &Recompute::finished, [&](const Outcome& outcome) {
        revisions.push_back(outcome.revision);
        last = outcome;
    });
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    QElapsedTimer clock;
    clock.start();
    for (int k = 0; k < 100; ++k) {
        setLength(document, 20.0 + 0.1 * k);
        QTest::qWait(1);
    }
    ASSERT_TRUE(QTest::qWaitFor([&] { return recompute.isCurrent(); }, kPatience_ms));

    // No run begins sooner than 10 ms after the one before.
    EXPECT_LE(static_cast<qint64>(revisions.size()), clock.elapsed() / 10 + 2);
    EXPECT_EQ(revisions.back(), document.revision());
    EXPECT_TRUE(std::is_sorted(revisions.begin(), revisions.end()));
    EXPECT_EQ(last.setup, document.setup());
    const auto direct = assess(document.setup());
    ASSERT_TRUE(direct && last.assessment);
    ASSERT_EQ(last.assessment->throttle.size(), direct->throttle.size());
    for (std::size_t k = 0; k < direct->throttle.size(); ++k)
        EXPECT_EQ(last.assessment->throttle[k].wobble_px, direct->throttle[k].wobble_px);
}

// The answer to a single edit is not kept waiting, and none is lost between two runs.
TEST(Recompute, ALoneEditStartsAtOnceAndEachRunIsDelivered)
{
    Document document;
    Recompute recompute(document);
    int results = 0;
    QObject::connect(&recompute, &Recompute::finished, [&] { ++results; });
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    ASSERT_TRUE(QTest::qWaitFor([&] { return recompute.isCurrent(); }, kPatience_ms));
    for (int k = 1; k <= 5; ++k) {
        QTest::qWait(20);
        setLength(document, 20.0 + k);
        EXPECT_TRUE(recompute.isRunning());
        ASSERT_TRUE(QTest::qWaitFor([&] { return recompute.isCurrent(); }, kPatience_ms));
        EXPECT_EQ(results, 1 + k);
        EXPECT_FALSE(recompute.isRunning());
    }
}

TEST(Recompute, UndoIsAssessedToo)
{
    Document document;
    Recompute recompute(document);
    double shown_mm = 0.0;
    QObject::connect(&recompute, &Recompute::finished, [&](const Outcome& outcome) {
        shown_mm = outcome.setup.mounts.free_length_mm;
    });
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    const double start_mm = document.setup().mounts.free_length_mm;
    setLength(document, 33.0);
    ASSERT_TRUE(QTest::qWaitFor([&] { return shown_mm == 33.0; }, kPatience_ms));
    document.undoStack().undo();
    EXPECT_TRUE(QTest::qWaitFor([&] { return shown_mm == start_mm; }, kPatience_ms));
}

TEST(Recompute, AFailureArrivesAsOne)
{
    Document document;
    Recompute recompute(document);
    Outcome last;
    QObject::connect(&recompute, &Recompute::finished,
                     [&](const Outcome& outcome) { last = outcome; });
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    setLength(document, 1.0);  // shorter than its own end effects: outside the model
    ASSERT_TRUE(QTest::qWaitFor([&] { return recompute.isCurrent(); }, kPatience_ms));
    EXPECT_FALSE(last.assessment);
}

// With every thread taken that Qt's own pool has, and a job beside.
TEST(Recompute, WaitsForNobody)
{
    const auto gate = std::make_shared<QSemaphore>();
    const int threads = QThreadPool::globalInstance()->maxThreadCount();
    for (int k = 0; k < threads; ++k)
        QThreadPool::globalInstance()->start([gate] { gate->acquire(); });
    jobThreads().start([gate] { gate->acquire(); });
    Document document;
    Recompute recompute(document);
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    EXPECT_TRUE(QTest::qWaitFor([&] { return recompute.isCurrent(); }, kPatience_ms));
    gate->release(threads + 1);
    QThreadPool::globalInstance()->waitForDone();
    jobThreads().waitForDone();
}

TEST(Recompute, MayBeTakenDownWhileAJobRuns)
{
    for (int k = 0; k < 40; ++k) {
        auto document = std::make_unique<Document>();
        auto recompute = std::make_unique<Recompute>(*document);
        ASSERT_TRUE(document->open(samplePath("reedbed")));
        QTest::qWait(28 + k % 8);
        recompute.reset();
    }
    QTest::qWait(50);  // nothing may arrive at the dead
}

}  // namespace
}  // namespace stillbay::ui
