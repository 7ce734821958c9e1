// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

/// Small pictures of recordings for the docs, as SVG text.
namespace stillbay::test {

struct Trace {
    std::string name;  ///< written in the trace's colour; may be empty
    std::vector<double> x, y;
};

/// Words that stand over the traces from one x to the other.
struct TraceMark {
    double from = 0.0, to = 0.0;
    std::string text;
};

struct TracePanel {
    std::string x, y;  ///< what the axes show, with units
    std::vector<Trace> traces;
    std::vector<TraceMark> marks;
    bool isLogarithmic = false;  ///< y
};

/// The panels one below the other, each as wide as the picture. Long traces are drawn as what they
/// cover in each column of pixels.
std::string tracePicture(const std::vector<TracePanel>& panels);

}  // namespace stillbay::test
