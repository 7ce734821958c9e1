// SPDX-License-Identifier: MIT
#include "core/search/map.h"

#include "core/base/parallel.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <atomic>
#include <filesystem>
#include <iterator>
#include <set>
#include <stdexcept>
#include <thread>

namespace stillbay {
namespace {

const AssessOptions kFewThrottles{.throttle = Grid{0.25, 0.6, 0.05}};

struct Reedbed {
    Setup craft = test::sampleCraft("reedbed");
    Evaluator evaluator{craft, kFewThrottles};
    Design design = designOf(craft);
};

bool areAlike(const Evaluation& a, const Evaluation& b)
{
    const auto alike = [](const CruiseWobble& p, const CruiseWobble& q) {
        return p.worst_px == q.worst_px && p.mean_px == q.mean_px;
    };
    return a.violated == b.violated && alike(a.cruise.full, b.cruise.full) &&
           alike(a.cruise.empty, b.cruise.empty);
}

// Counted once there was a thread: with the first the thread sanitizer starts one of its own.
std::ptrdiff_t threadsOfThisProcess()
{
    std::thread([] {}).join();
    namespace fs = std::filesystem;
    return std::distance(fs::directory_iterator("/proc/self/task"), fs::directory_iterator());
}

// Oracle: definition; cell by cell from the evaluator itself, whatever the number of threads.
TEST(Map, CellsAreVerdictsOfTheirDesigns)
{
    const Reedbed bed;
    const MapAxis x{Variable::FreeLength, 10, 60, 9}, y{Variable::Stretch, 1.0, 1.7, 5};
    const DesignMap one = mapDesigns(bed.evaluator, bed.design, x, y, 1).value();
    const DesignMap three = mapDesigns(bed.evaluator, bed.design, x, y, 3).value();
    ASSERT_EQ(one.cells.size(), 45U);
    std::size_t feasible = 0;
    for (std::size_t i = 0; i < x.count; ++i)
        for (std::size_t j = 0; j < y.count; ++j) {
            Design design = bed.design;
            design.mounts.free_length_mm = 10 + 50 * static_cast<double>(i) / 8;
            design.mounts.stretch = y.at(j);
            EXPECT_EQ(one.design(bed.design, i, j), design);
            EXPECT_TRUE(areAlike(one.at(i, j), bed.evaluator.evaluate(design)));
            EXPECT_TRUE(areAlike(one.at(i, j), three.at(i, j)));
            feasible += one.at(i, j).feasible();
        }
    EXPECT_GT(feasible, 5U);
    EXPECT_LT(feasible, 45U);
    for (const Evaluation& cell : one.cells)
        EXPECT_FALSE(cell.isBetterThan(one.cells[*one.best()]));
}

// Oracle: definition; a coarse map is every second, fourth … cell of the whole one.
TEST(Map, RefinesFromCoarseToFine)
{
    const Reedbed bed;
    const MapAxis x{Variable::FreeLength, 10, 60, 33}, y{Variable::Stretch, 1.0, 1.5, 17};
    std::vector<DesignMap> levels;
    std::size_t last = 0, total = 0;
    const DesignMap whole = mapDesigns(
                                bed.evaluator, bed.design, x, y, 2, {},
                                [&](std::size_t done, std::size_t of) {
                                    EXPECT_GE(done, last);
                                    last = done;
                                    total = of;
                                },
                                [&](const DesignMap& level) { levels.push_back(level); })
                                .value();
    EXPECT_EQ(total, 33U * 17U);
    EXPECT_EQ(last, total);
    ASSERT_EQ(levels.size(), 2U);  // every fourth, every second
    for (std::size_t k = 0; k < levels.size(); ++k) {
        const DesignMap& level = levels[k];
        const std::size_t stride = k == 0 ? 4 : 2;
        ASSERT_EQ(level.x.count, 32 / stride + 1);
        ASSERT_EQ(level.y.count, 16 / stride + 1);
        for (std::size_t i = 0; i < level.x.count; ++i)
            for (std::size_t j = 0; j < level.y.count; ++j) {
                EXPECT_TRUE(areAlike(level.at(i, j), whole.at(i * stride, j * stride)));
                EXPECT_NEAR(level.x.at(i), whole.x.at(i * stride), 1e-12);
            }
    }
}

// Oracle: the operating system's list of this process's threads, and a count of what was evaluated.
TEST(Map, CancelLeavesNothingRunning)
{
    const Reedbed bed;
    const std::ptrdiff_t before = threadsOfThisProcess();
    std::size_t counted = 0;
    std::stop_source stop;
    const auto map = mapDesigns(bed.evaluator, bed.design, {Variable::FreeLength, 10, 60, 301},
                                {Variable::Stretch, 1.0, 1.5, 301}, 4, stop.get_token(),
                                [&](std::size_t, std::size_t) {
                                    if (++counted == 5)
                                        stop.request_stop();
                                });
    ASSERT_FALSE(map);
    EXPECT_EQ(map.error().code, Errc::NoAnswer);
    EXPECT_LT(counted, 5U + 4U);
    EXPECT_EQ(threadsOfThisProcess(), before);
}

// Oracle: definition.
TEST(Map, RefusesAxesThatAreNone)
{
    const Reedbed bed;
    const auto errorOf = [&](const Design& design, const MapAxis& x, const MapAxis& y) {
        const auto map = mapDesigns(bed.evaluator, design, x, y);
        return map ? Error{} : map.error();
    };
    const MapAxis length{Variable::FreeLength, 10, 60, 3}, stretch{Variable::Stretch, 1.0, 1.5, 3};
    EXPECT_EQ(errorOf(bed.design, length, length).code, Errc::BadInput);
    EXPECT_EQ(errorOf(bed.design, length, {Variable::Stretch, 1.5, 1.5, 3}).where, "stretch");
    EXPECT_EQ(errorOf(bed.design, {Variable::FreeLength, 60, 10, 3}, stretch).where,
              "free_length_mm");
    EXPECT_EQ(errorOf(bed.design, {Variable::FreeLength, 10, 60, 0}, stretch).where,
              "free_length_mm");
    const Design drilled = designOf(test::sampleCraft("quarry"));
    const Error error = errorOf(drilled, length, stretch);
    EXPECT_EQ(error.where, "stretch");
    EXPECT_NE(english(error.what).find("holes"), std::string::npos);
}

// Oracle: definition; an axis of one value is not turned.
TEST(Map, OneColumnLeavesItsVariable)
{
    const auto craft = test::sampleCraft("quarry");
    const Evaluator evaluator(craft, kFewThrottles);
    const DesignMap map = mapDesigns(evaluator, designOf(craft), {Variable::FreeLength, 24, 28, 5},
                                     {Variable::Stretch, 1.2, 1.2, 1})
                              .value();
    Design design = designOf(craft);
    design.mounts.free_length_mm = 25;
    EXPECT_EQ(map.design(designOf(craft), 1, 0), design);
    EXPECT_TRUE(areAlike(map.at(1, 0), evaluator.evaluate(design)));
}

// Oracle: definition.
TEST(InParallel, DoesEachOnce)
{
    for (const std::size_t threads : {0U, 1U, 2U, 7U}) {
        std::vector<std::atomic<int>> times(50);
        EXPECT_TRUE(inParallel(times.size(), threads, [&](std::size_t i) { ++times[i]; }, {}, {}));
        for (const auto& count : times)
            EXPECT_EQ(count, 1);
        EXPECT_TRUE(inParallel(0, threads, [](std::size_t) { FAIL(); }, {}, {}));
    }
}

TEST(InParallel, HandsOnAFault)
{
    const std::ptrdiff_t before = threadsOfThisProcess();
    for (const std::size_t threads : {1U, 3U})
        EXPECT_THROW(inParallel(100, threads,
                                [](std::size_t i) {
                                    if (i == 40)
                                        throw std::runtime_error("spoilt");
                                },
                                {}, {}),
                     std::runtime_error);
    EXPECT_EQ(threadsOfThisProcess(), before);
}

}  // namespace
}  // namespace stillbay
