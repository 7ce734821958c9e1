// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck.h"
#include "tests/calibrate/unknown_craft.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

namespace stillbay {
namespace {

/// A file that is not as the craft is.
struct OtherFile {
    const char* name;
    bool isCareful;  ///< as a builder measures who takes care
    std::function<void(Setup& file, test::PluckDice& dice)> change;
};

Part& heaviestPart(Setup& file)
{
    return *std::max_element(file.bay.parts.begin(), file.bay.parts.end(),
                             [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
}

// Scales, calipers and a drill: masses to 2 %, places to 1.5 mm, holes to 0.5 mm, lengths to 1 %,
// the bore to 0.1 mm.
void measureAgain(Setup& file, test::PluckDice& dice)
{
    for (Part& part : file.bay.parts) {
        part.mass_g *= dice.between(0.98, 1.02);
        for (double& x : part.centre_mm)
            x += dice.between(-1.5, 1.5);
    }
    for (MountPoint& point : file.mounts.points)
        for (double& x : point.bay_mm)
            x += dice.between(-0.5, 0.5);
    file.mounts.free_length_mm *= dice.between(0.99, 1.01);
    *file.mounts.stretch *= dice.between(0.995, 1.005);
    file.tube.bore_mm += dice.between(-0.1, 0.1);
}

std::vector<OtherFile> otherFiles()
{
    using Dice = test::PluckDice;
    const auto heavier = [](double factor) {
        return [factor](Setup& file, Dice&) {
            for (Part& part : file.bay.parts)
                part.mass_g *= factor;
        };
    };
    const auto longer = [](double factor) {
        return [factor](Setup& file, Dice&) {
            file.mounts.free_length_mm *= factor;
        };
    };
    const auto moved = [](std::size_t axis) {
        return [axis](Setup& file, Dice&) {
            heaviestPart(file).centre_mm[axis] += 10;
        };
    };
    const auto wider = [](std::size_t axis) {
        return [axis](Setup& file, Dice&) {
            for (MountPoint& point : file.mounts.points)
                point.bay_mm[axis] += std::copysign(8.0, point.bay_mm[axis]);
        };
    };
    return {
        {"careful", true, measureAgain},
        {"heavy part 10 mm up", false, moved(2)},
        {"a tube missing", false,
         [](Setup& file, Dice&) {
             file.mounts.points.pop_back();
         }},
        {"careful again", true, measureAgain},
        {"bay 15 % heavier", false, heavier(1.15)},
        {"bay 15 % lighter", false, heavier(0.85)},
        {"heavy part 10 mm ahead", false, moved(0)},
        {"points 8 mm up", false,
         [](Setup& file, Dice&) {
             for (MountPoint& point : file.mounts.points)
                 point.bay_mm[2] += 8;
         }},
        {"points 8 mm wider", false, wider(1)},
        {"bore 1 mm less", false,
         [](Setup& file, Dice&) {
             file.tube.bore_mm -= 1;
         }},
        {"stretch 10 % more", false,
         [](Setup& file, Dice&) {
             *file.mounts.stretch *= 1.1;
         }},
        {"tubes 10 % longer", false, longer(1.1)},
        {"tubes 10 % shorter", false, longer(0.9)},
        {"sensor not weighed", false,
         [](Setup&, Dice&) {
         }},
    };
}

struct Verdict {
    bool isRefused = true;
    double ratio = 0.0, loss = 0.0;                // over the truth, less 1
    double ratioSpreads = 0.0, lossSpreads = 0.0;  // how many of those told
    std::string reason;
};

Verdict verdictOf(const Setup& file, const test::UnknownCraft& unknown, const Recording& recording,
                  const BaySensor& sensor)
{
    const auto answer = pluckTest(file, recording, {.sensor = sensor});
    if (!answer)
        return {true, 0, 0, 0, 0, english(answer.error().what)};
    const auto& values = answer->correction.values;
    const TubeKind& rubber = unknown.truth.craft.tube;
    Verdict verdict{answer->correction.mark.quality == Quality::Poor,
                    values[0].after / rubber.dynamic_ratio - 1,
                    values[1].after / rubber.loss_factor - 1,
                    0,
                    0,
                    english(answer->correction.mark.reason)};
    verdict.ratioSpreads = std::abs(verdict.ratio) / values[0].spread;
    verdict.lossSpreads = std::abs(verdict.loss) / values[1].spread;
    return verdict;
}

// Oracle: independent method, integration in time with the tubes' nonlinear forces; the file is
// changed and the craft is not. A file measured with care is taken and its spreads hold the truth;
// STILLBAY_OTHER_FILES=12 looks at so many crafts and at every way to be wrong, and prints them.
TEST(PluckTest, TakesACarefulFileAndRefusesThatOfAnotherCraft)
{
    const char* const wanted = std::getenv("STILLBAY_OTHER_FILES");
    const unsigned count = wanted ? static_cast<unsigned>(std::atoi(wanted)) : 1;
    const std::vector<OtherFile> files = otherFiles();
    for (unsigned i = 0; i < count; ++i) {
        const unsigned seed = 2 + i;
        const test::UnknownCraft unknown = test::unknownCraft(seed);
        const Recording recording =
            test::pluckInTime(unknown.truth).recording(unknown.truth.rate_hz);
        test::PluckDice dice(7000 + seed);
        for (std::size_t k = 0; k < (wanted ? files.size() : 2); ++k) {
            auto file = unknown.file;
            files[k].change(file, dice);
            BaySensor sensor = test::sensorOf(unknown.truth, unknown.withAxes);
            if (k + 1 == files.size())
                sensor.mass_g = 0;
            const Verdict verdict =
                verdictOf(test::hungFile(file, unknown, seed), unknown, recording, sensor);
            if (wanted)
                std::printf("craft %2u, %-22s: %s ratio %+.1f %% (%.1f) loss %+.1f %% (%.1f), %s\n",
                            seed, files[k].name, verdict.isRefused ? "refused" : "taken  ",
                            100 * verdict.ratio, verdict.ratioSpreads, 100 * verdict.loss,
                            verdict.lossSpreads, verdict.reason.c_str());
            if (files[k].isCareful) {
                EXPECT_FALSE(verdict.isRefused) << seed << ' ' << verdict.reason;
                EXPECT_LT(verdict.ratioSpreads, 3) << seed << ' ' << files[k].name;
                EXPECT_LT(verdict.lossSpreads, 3) << seed << ' ' << files[k].name;
            } else if (!wanted) {
                EXPECT_TRUE(verdict.isRefused) << files[k].name << ' ' << verdict.reason;
            }
        }
    }
}

}  // namespace
}  // namespace stillbay
