// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/hang.h"
#include "core/calibrate/pluck.h"
#include "tests/recordings/pluck_in_time.h"

#include <random>
#include <vector>

/// Crafts whose rubber is not that of their file, for tests of the pluck.
namespace stillbay::test {

/// Built from the engine's bits alone, so that every machine draws the same.
class PluckDice {
public:
    explicit PluckDice(unsigned seed) : m_random(seed) {}
    double between(double from, double to)
    {
        return from + (to - from) * (static_cast<double>(m_random()) / 4294967296.0);
    }

private:
    std::mt19937 m_random;
};

/// Half of them like the sample, half without any symmetry; the rubber of the file is another.
struct UnknownCraft {
    Setup file;
    PluckedBay truth;
    bool withAxes = true;
};

UnknownCraft unknownCraft(unsigned seed);

/// Three masses on the true tube, marks 150 mm apart read to a
/// tenth: lengths by bisection of the tension's law, off as a reading is.
std::vector<HungMass> hungOn(const Setup& craft, unsigned seed);

/// The file with the modulus of hungOn() accepted.
Setup hungFile(const Setup& file, const UnknownCraft& unknown, unsigned seed);

BaySensor sensorOf(const PluckedBay& plucked, bool withAxes = true);

}  // namespace stillbay::test
