// SPDX-License-Identifier: MIT
#include "tests/clip/band_motion.h"

#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;
constexpr double kSway_hz = 0.3;

struct Motion {
    double across = 0, up = 0, roll = 0;
};

// What a hand or a gust does: slow, large, at phases of its own.
Motion flightAt(double t, const double* phase)
{
    const auto wave = [&](double f_hz, int k) {
        return std::sin(kTurn * f_hz * t + phase[k]);
    };
    return {10 * wave(0.3, 0) + 3 * wave(1.1, 1) + 0.6 * wave(2.7, 2) + 4 * t,
            8 * wave(0.4, 3) + 2 * wave(1.4, 4) + 0.4 * wave(3.1, 5), 0.01 * wave(0.5, 6)};
}

Motion linesAt(double t, const std::vector<TrueLine>& lines)
{
    Motion sum;
    for (const TrueLine& line : lines) {
        const double phase =
            kTurn * line.frequency_hz *
            (t - line.wander / (kTurn * kSway_hz) * std::cos(kTurn * kSway_hz * t));
        sum.across += line.across_px * std::cos(phase + line.acrossPhase);
        sum.up += line.up_px * std::cos(phase + line.upPhase);
        sum.roll += line.roll_rad * std::cos(phase + line.rollPhase);
    }
    return sum;
}

// Of a frame, what its stabiliser takes out.
Motion meanOf(double time, const ShakenBands& motion, const double* phase)
{
    constexpr int rows = 64;
    Motion mean;
    for (int k = 0; k < rows; ++k) {
        const double t = time + ((k + 0.5) / rows - 0.5) * motion.readout_s;
        const Motion lines = linesAt(t, motion.lines), flight = flightAt(t, phase);
        mean.across += (lines.across + motion.pan * flight.across) / rows;
        mean.up += (lines.up + motion.pan * flight.up) / rows;
        mean.roll += (lines.roll + motion.pan * flight.roll) / rows;
    }
    return mean;
}

}  // namespace

RowShifts rowShiftsOf(const ShakenBands& motion)
{
    std::mt19937_64 random(motion.seed);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> uniform;
    RowShifts shifts;
    shifts.width = 1920;
    shifts.height = 1080;
    shifts.frameRate_hz = motion.rate_hz;
    shifts.frames = static_cast<std::size_t>(motion.seconds * motion.rate_hz);
    shifts.references = 1;
    double phase[7];
    for (double& p : phase)
        p = kTurn * uniform(random);
    struct Band {
        double spread, acrossPattern, upPattern, zoom;
    };
    std::vector<Band> bands(motion.bands);
    for (Band& band : bands)
        band = {motion.noise_px * (0.6 + 0.9 * uniform(random)), 0.1 * normal(random),
                0.1 * normal(random), 0.02 * normal(random)};
    const int instants = motion.exposure_s > 0 ? 24 : 1;
    for (unsigned n = 0; n < shifts.frames; ++n) {
        const double time = n / motion.rate_hz, light = 0.8 + 0.4 * uniform(random);
        const Motion steady = motion.isSteadied ? meanOf(time, motion, phase) : Motion{};
        for (unsigned b = 0; b < motion.bands; ++b) {
            const double row = (b + 0.5) / motion.bands - 0.5;
            const double middle = time + row * motion.readout_s;
            Motion vibration;
            for (int k = 0; k < instants; ++k) {
                const double offset = ((k + 0.5) / instants - 0.5) * motion.exposure_s;
                const Motion now = linesAt(middle + offset, motion.lines);
                vibration.across += now.across / instants;
                vibration.up += now.up / instants;
                vibration.roll += now.roll / instants;
            }
            const Motion flight = flightAt(middle, phase);
            const double roll = vibration.roll + motion.pan * flight.roll - steady.roll;
            const double spread = bands[b].spread * light;
            const double turnSpread = spread * std::sqrt(12.0) / shifts.width;
            BandShift shift;
            shift.frameTime_s = motion.stampStep_s > 0
                                    ? motion.stampStep_s * std::round(time / motion.stampStep_s)
                                    : time;
            shift.frame = n;
            shift.row = row;
            shift.across_px = vibration.across + motion.pan * flight.across - steady.across +
                              row * shifts.height * roll + bands[b].acrossPattern +
                              spread * normal(random);
            // Flying on, the picture grows, and near things at another pace.
            shift.up_px = vibration.up - steady.up +
                          motion.pan * (flight.up + (3 * row + bands[b].zoom) * time) +
                          bands[b].upPattern + spread * normal(random);
            shift.roll_rad = roll + turnSpread * normal(random);
            shift.acrossSpread_px = shift.upSpread_px = motion.spreadsTold * spread;
            shift.rollSpread_rad = motion.spreadsTold * turnSpread;
            if (uniform(random) >= motion.missing)
                shifts.bands.push_back(shift);
        }
    }
    return shifts;
}

}  // namespace stillbay
