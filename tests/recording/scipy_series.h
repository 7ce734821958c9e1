// SPDX-License-Identifier: MIT
#pragma once

#include "tests/recording/noise.h"

#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

/// What tests/reference/spectra.py made spectra.csv of, and the rows of that file.
namespace stillbay {

inline constexpr double kScipyRate = 997.3;

struct ScipySeries {
    std::vector<double> x, y;
};

inline ScipySeries scipySeries()
{
    constexpr std::size_t kSamples = 1900;
    ScipySeries series{noise(1, kSamples), std::vector<double>(kSamples)};
    const std::vector<double> own = noise(2, kSamples);
    for (std::size_t n = 0; n < kSamples; ++n) {
        const auto t = static_cast<double>(n);
        series.x[n] += 40 + 0.3 * std::sin(0.61 * t + 0.2) + 1e-3 * t;
        series.y[n] = 0.2 * series.x[n] + 0.3 * own[n];
        if (n >= 1)
            series.y[n] += 1.5 * series.y[n - 1];
        if (n >= 2)
            series.y[n] -= 0.9 * series.y[n - 2];
    }
    return series;
}

struct ScipyRow {
    double segment, frequency_hz, density, magnitude, phase_deg, coherence;
};

inline std::vector<ScipyRow> scipyRows(std::size_t segment)
{
    std::ifstream in(STILLBAY_REFERENCE_DIR "/spectra.csv");
    std::vector<ScipyRow> rows;
    for (std::string line; std::getline(in, line);) {
        std::istringstream cells(line);
        ScipyRow row{};
        char comma = 0;
        if (cells >> row.segment >> comma >> row.frequency_hz >> comma >> row.density >> comma >>
                row.magnitude >> comma >> row.phase_deg >> comma >> row.coherence &&
            row.segment == static_cast<double>(segment))
            rows.push_back(row);
    }
    return rows;
}

}  // namespace stillbay
