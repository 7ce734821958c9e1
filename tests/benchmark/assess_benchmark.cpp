// SPDX-License-Identifier: MIT
// What an assessment costs, beside bare 6×6 complex solves on the same machine in the same run.
#include "app/commands/command.h"
#include "core/assess/assess.h"
#include "core/craft/craft.h"
#include "core/response/excitation.h"
#include "core/response/wobble.h"
#include "core/response/wobble_powers.h"
#include "core/search/evaluator.h"
#include "core/suspension/modes.h"
#include "core/suspension/transmissibility.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <iostream>

namespace stillbay {
namespace {

constexpr int kMapThrottles = 41;
const Grid kMapGrid{0.25, 0.65, 0.01};
constexpr double kFirstLength_mm = 22, kLastLength_mm = 26;

stillbay::Setup reedbed()
{
    const auto loaded = loadSetup(STILLBAY_SAMPLES_DIR "/reedbed.stillbay");
    if (!loaded) {
        std::cerr << english(loaded.error().what) << '\n';
        std::exit(1);
    }
    return loaded->setup;
}

// The yardstick: one LU factorisation and one solve of a 6×6 complex system.
void bareSolve(benchmark::State& state)
{
    Matrix6cd A = Matrix6cd::Random() + 3 * Matrix6cd::Identity();
    Vector6cd b = Vector6cd::Random();
    for (auto _ : state) {
        for (int64_t k = 0; k < state.range(0); ++k) {
            benchmark::DoNotOptimize(A.data());
            const Vector6cd x = A.partialPivLu().solve(b);
            benchmark::DoNotOptimize(x.data());
        }
    }
    state.SetItemsProcessed(state.iterations() * state.range(0));
}
BENCHMARK(bareSolve)->Arg(1)->Arg(kMapThrottles * 3)->Arg(181 * 3)->Arg(181 * 3 + 799);

// Slider: tubes changed, airframe kept. Default grids: 181 × 3 coupled frequencies, 799 of the
// tubes.
void assessmentAirframeKept(benchmark::State& state)
{
    stillbay::Setup setup = reedbed();
    Assessor assessor;
    benchmark::DoNotOptimize(assessor.assess(setup));
    double length = 20;
    for (auto _ : state) {
        setup.mounts.free_length_mm = length = length < 30 ? length + 0.1 : 20;
        auto result = assessor.assess(setup);
        benchmark::DoNotOptimize(result);
    }
}
BENCHMARK(assessmentAirframeKept)->Unit(benchmark::kMillisecond);

void assessmentFresh(benchmark::State& state)
{
    const stillbay::Setup setup = reedbed();
    for (auto _ : state) {
        auto result = assess(setup);
        benchmark::DoNotOptimize(result);
    }
}
BENCHMARK(assessmentFresh)->Unit(benchmark::kMillisecond);

// One design of a map, evaluated: limits, rest at 1 g and 3 g, K*, bench modes, wobble at 41
// throttles at the full and at the empty pack. Threads share the evaluator.
void mapDesign(benchmark::State& state)
{
    static const Evaluator evaluator(reedbed(), {.throttle = kMapGrid});
    Design design = designOf(reedbed());
    double length = kFirstLength_mm;
    for (auto _ : state) {
        design.mounts.free_length_mm = length =
            length < kLastLength_mm ? length + 0.01 : kFirstLength_mm;
        const Evaluation verdict = evaluator.evaluate(design);
        if (!verdict.feasible())
            state.SkipWithError("a design that is not judged to the end");
        benchmark::DoNotOptimize(verdict);
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(mapDesign)->Unit(benchmark::kMicrosecond)->ThreadRange(1, 2)->UseRealTime();

// One design hung level and evaluated, over two variables each.
void levelDesign(benchmark::State& state, Variable x, double xFrom, double xTo, Variable y,
                 double yFrom, double yTo)
{
    static const Evaluator evaluator(reedbed(), {.throttle = kMapGrid});
    const Hanging hanging = hangingOf(reedbed(), true);
    const Design present = wholeDesignOf(reedbed());
    double share = 0.0;
    for (auto _ : state) {
        share = share < 1 ? share + 0.01 : 0.0;
        Design design = present;
        setValue(design, x, std::lerp(xFrom, xTo, share));
        setValue(design, y, std::lerp(yTo, yFrom, share));
        const Evaluation verdict = evaluator.evaluate(hanging.hung(std::move(design)));
        if (!verdict.feasible())
            state.SkipWithError("a design that is not judged to the end");
        benchmark::DoNotOptimize(verdict);
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK_CAPTURE(levelDesign, lengthAndStretch, Variable::FreeLength, 20, 26, Variable::Stretch,
                  1.12, 1.18)
    ->Unit(benchmark::kMicrosecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(levelDesign, heightAndDirection, Variable::Height, -46, -34, Variable::Direction,
                  20, 60)
    ->Unit(benchmark::kMicrosecond)
    ->UseRealTime();

// Levelling alone.
void levelOnly(benchmark::State& state)
{
    const Hanging hanging = hangingOf(reedbed(), true);
    Design design = wholeDesignOf(reedbed());
    double height = -46;
    for (auto _ : state) {
        height = height < -34 ? height + 0.1 : -46;
        setValue(design, Variable::Height, height);
        benchmark::DoNotOptimize(hanging.hung(design));
    }
}
BENCHMARK(levelOnly)->Unit(benchmark::kMicrosecond);

// The parts of a design, so that a change can be placed.
struct Prepared {
    stillbay::Setup setup = reedbed();
    Excitation excitation =
        prepareExcitation(makeExcitedAirframe(setup), throttlesOf(setup, {}), true);
    MountedBay mounted = makeMountedBay(setup).value();
    Pose rest = restPose(mounted.suspension, 1.0).value();
    Matrix6cd K = dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor);
};

void restOnly(benchmark::State& state)
{
    const Prepared p;
    for (auto _ : state)
        benchmark::DoNotOptimize(restPose(p.mounted.suspension, 1.0));
}
BENCHMARK(restOnly)->Unit(benchmark::kMicrosecond);

void stiffnessOnly(benchmark::State& state)
{
    const Prepared p;
    for (auto _ : state)
        benchmark::DoNotOptimize(
            dynamicStiffness(p.mounted.suspension, p.rest, p.mounted.dynamicFactor));
}
BENCHMARK(stiffnessOnly)->Unit(benchmark::kMicrosecond);

void modesOnly(benchmark::State& state)
{
    const Prepared p;
    const Matrix6d inverse = massMatrix(p.mounted.suspension.bay, p.rest.R).inverse();
    for (auto _ : state)
        benchmark::DoNotOptimize(solveModes(p.K, inverse));
}
BENCHMARK(modesOnly)->Unit(benchmark::kMicrosecond);

// Per item: one coupled frequency with all motors, shutter and grades in.
void coupledSweep(benchmark::State& state)
{
    const Prepared p;
    const CameraModel camera = makeCamera(p.setup.camera);
    for (auto _ : state)
        benchmark::DoNotOptimize(
            wobbleOverThrottle(p.excitation, p.mounted.suspension, p.rest, p.K, camera));
    state.SetItemsProcessed(state.iterations() * 181 * 3);
}
BENCHMARK(coupledSweep)->Unit(benchmark::kMicrosecond);

// Per item: one coupled frequency with all motors, as a map of designs takes it.
void powersOfDesign(benchmark::State& state)
{
    const Prepared p;
    const Excitation excitation =
        prepareExcitation(makeExcitedAirframe(p.setup), kMapGrid.values(), true);
    const FilmedExcitation filmed(excitation, makeCamera(p.setup.camera));
    std::vector<WobblePower> powers(filmed.throttles());
    for (auto _ : state) {
        benchmark::DoNotOptimize(filmed.powers(p.mounted.suspension.bay, p.rest, p.K, powers));
        benchmark::ClobberMemory();
    }
    state.SetItemsProcessed(state.iterations() * kMapThrottles * 3);
}
BENCHMARK(powersOfDesign)->Unit(benchmark::kMicrosecond)->ThreadRange(1, 2)->UseRealTime();

// Per item: one frequency of the transmissibility in three directions.
void transmissibilitySweep(benchmark::State& state)
{
    const Prepared p;
    const Modes bench =
        solveModes(p.K, massMatrix(p.mounted.suspension.bay, p.rest.R).inverse()).value();
    const std::vector<double> frequency = AssessOptions{}.frequency_hz.values();
    for (auto _ : state)
        benchmark::DoNotOptimize(transmissibility(p.K, bench, {0.1, 0, 0}, frequency));
    state.SetItemsProcessed(state.iterations() * static_cast<int64_t>(frequency.size()));
}
BENCHMARK(transmissibilitySweep)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace stillbay

BENCHMARK_MAIN();
