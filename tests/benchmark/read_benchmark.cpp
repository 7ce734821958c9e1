// SPDX-License-Identifier: MIT
// What reading a recording costs. `read_benchmark --write ROWS FILE` invents a log of four columns;
// `read_benchmark FILE` reads it once and prints what read_beside_pandas.py compares.
#include "core/recording/read_recording.h"

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <random>
#include <string>

namespace {

double cpuTime()
{
    timespec time = {};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

int writeLog(long rows, const char* name)
{
    std::FILE* const file = std::fopen(name, "wb");
    if (file == nullptr)
        return 1;
    std::mt19937 random(1);
    std::normal_distribution<double> noise(0.0, 0.3);
    std::fputs("time_us,ax (g),ay (g),az (g)\n", file);
    for (long i = 0; i < rows; ++i)
        std::fprintf(file, "%ld,%.6f,%.6f,%.6f\n", 1'000'000 + 125 * i, noise(random),
                     noise(random), 1.0 + noise(random));
    return std::fclose(file);
}

}  // namespace

int main(int count, char** arguments)
{
    if (count == 4 && std::string(arguments[1]) == "--write")
        return writeLog(std::atol(arguments[2]), arguments[3]);
    if (count != 2)
        return 2;
    const double begin = cpuTime();
    const auto read = stillbay::readRecording(arguments[1]);
    const double took = cpuTime() - begin;
    if (!read) {
        std::fprintf(stderr, "%s\n", english(read.error().what).c_str());
        return 1;
    }
    double sum = 0.0;
    for (const double value : read->channels.front().values)
        sum += value;
    std::printf("%.4f s, %zu samples of %zu channels at %.6g Hz, %zu flaws, sum %.9g\n", took,
                read->samples(), read->channels.size(), read->rate, read->flaws.size(), sum);
    return 0;
}
