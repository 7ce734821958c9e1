// SPDX-License-Identifier: MIT
// Spectra of long records, and the same written on FFTW as a yardstick in the same run.
#include "core/recording/rotor_speed.h"
#include "core/recording/segments.h"
#include "core/recording/spectrogram.h"
#include "core/recording/spectrum.h"
#include "tests/recording/noise.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <complex>
#include <fftw3.h>
#include <numeric>
#include <vector>

namespace stillbay {
namespace {

constexpr std::size_t kSamples = 10'000'000;

const std::vector<double>& longRecord()
{
    static const std::vector<double> record = noise(1, kSamples);
    return record;
}

void welchOurs(benchmark::State& state)
{
    const auto segment = static_cast<std::size_t>(state.range(0));
    for ([[maybe_unused]] auto run : state)
        benchmark::DoNotOptimize(welch(longRecord(), 1000, {segment}));
}

// The same estimate, one segment after the other, by a plan that FFTW measured.
std::vector<double> welchByFftw(const std::vector<double>& x, double rate, int segment,
                                fftw_plan plan, double* in, fftw_complex* out)
{
    const auto length = static_cast<std::size_t>(segment), bins = length / 2 + 1;
    const std::vector<double> window = hannWindow(length);
    std::vector<double> density(bins);
    std::size_t count = 0;
    for (std::size_t from = 0; from + length <= x.size(); from += length - length / 2, ++count) {
        const double* const part = x.data() + from;
        const double mean = std::accumulate(part, part + length, 0.0) / segment;
        for (std::size_t n = 0; n < length; ++n)
            in[n] = (part[n] - mean) * window[n];
        fftw_execute(plan);
        for (std::size_t k = 0; k < bins; ++k)
            density[k] += out[k][0] * out[k][0] + out[k][1] * out[k][1];
    }
    for (double& value : density)
        value *= densityScale(window, rate) / static_cast<double>(count);
    return density;
}

void welchFftw(benchmark::State& state)
{
    const auto segment = static_cast<int>(state.range(0));
    double* const in = fftw_alloc_real(static_cast<std::size_t>(segment));
    fftw_complex* const out = fftw_alloc_complex(static_cast<std::size_t>(segment) / 2 + 1);
    const fftw_plan plan = fftw_plan_dft_r2c_1d(segment, in, out, FFTW_MEASURE);
    for ([[maybe_unused]] auto run : state)
        benchmark::DoNotOptimize(welchByFftw(longRecord(), 1000, segment, plan, in, out));
    fftw_destroy_plan(plan);
    fftw_free(in);
    fftw_free(out);
}

void spectrogramOfLongRecord(benchmark::State& state)
{
    for ([[maybe_unused]] auto run : state)
        benchmark::DoNotOptimize(spectrogram(longRecord(), 44100));
}

// Ten seconds of sound; noise, in which nothing turns, costs as much as a rotor.
void rotorSpeedOfTenSeconds(benchmark::State& state)
{
    const std::span<const double> part = std::span(longRecord()).first(441'000);
    for ([[maybe_unused]] auto run : state)
        benchmark::DoNotOptimize(followRotorSpeed(part, 44100));
}

BENCHMARK(welchOurs)->Arg(1024)->Arg(4096)->Arg(1000)->Arg(1500)->Unit(benchmark::kMillisecond);
BENCHMARK(welchFftw)->Arg(1024)->Arg(4096)->Arg(1000)->Arg(1500)->Unit(benchmark::kMillisecond);
BENCHMARK(spectrogramOfLongRecord)->Unit(benchmark::kMillisecond);
BENCHMARK(rotorSpeedOfTenSeconds)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stillbay

BENCHMARK_MAIN();
