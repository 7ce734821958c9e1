// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "tests/recordings/samples.h"
#include "tests/recordings/table_text.h"

namespace stillbay::test {
namespace {

constexpr double kRate = 200.0;         // [Hz] that the phone aims at
constexpr double kJitter = 0.25e-3;     // [s] by which it misses
constexpr double kFirstStamp = 4.1832;  // [s] on its clock

// It lies on the tray, its top forward: its x to the right, its y forward, its z up.
SensorOnBay phone()
{
    SensorOnBay sensor{.mass_g = kPhone_g, .centre_mm = kPhone_mm, .size_mm = {150.0, 70.0, 8.0}};
    sensor.axes << 0, 1, 0, -1, 0, 0, 0, 0, 1;
    return sensor;
}

PluckedBay plucked(const Setup& craft, const std::vector<HeldAt>& plucks, std::uint64_t seed)
{
    return {.craft = craft,
            .sensor = phone(),
            .plucks = plucks,
            .rate_hz = kRate,
            .held_s = 0.7,
            .ringing_s = 1.7,
            .noise = 0.02,
            .jitter_s = kJitter,
            .seed = seed};
}

// How the phone writes: [m/s²] one of its unit, digits, and what is between cells.
struct Writing {
    double unit = 1.0;
    int digits = 3;
    char separator = ',', decimal = '.';
};

std::string rowsOf(const PluckRecord& record, const Writing& writing)
{
    std::string text;
    for (std::size_t row = 0; row < record.times.size(); ++row) {
        appendNumber(text, record.times[row] + kFirstStamp, 5, writing.decimal);
        for (const std::vector<double>& axis : record.values) {
            text += writing.separator;
            appendNumber(text, axis[row] / writing.unit, writing.digits, writing.decimal);
        }
        text += '\n';
    }
    return text;
}

std::string head(const char* pluck)
{
    return std::string("# ") + kInvented +
           ".\n# The craft reedbed, airframe clamped to a table, a weight in the battery's place. "
           "The bay, a phone on its tray,\n# " +
           pluck + " and let go, four times.\n";
}

}  // namespace

PluckedBay pluckedSideways(const Setup& trueCraft)
{
    return plucked(trueCraft,
                   {{{0.2, 2.0, -0.2}, {1.2, 0.0, 0.4}},
                    {{-0.1, 2.3, 0.1}, {1.5, -0.1, 0.9}},
                    {{0.0, 1.8, 0.0}, {0.6, 0.0, -0.5}},
                    {{0.3, 2.1, -0.1}, {1.0, 0.1, 0.6}}},
                   20265);
}

PluckedBay pluckedDown(const Setup& trueCraft)
{
    return plucked(trueCraft,
                   {{{0.3, 0.1, -1.8}, {0.0, 1.4, 0.0}},
                    {{0.5, 0.0, -2.1}, {0.1, 1.8, 0.1}},
                    {{-0.9, 0.0, -1.2}, {0.0, -1.2, 0.0}},
                    {{0.8, -0.1, -1.6}, {0.0, 1.6, -0.1}}},
                   20266);
}

SampleTable sidewaysPluck(const Setup& trueCraft)
{
    return {"pluck-sideways.csv",
            head("pushed to the left") + "time,x,y,z\ns,m/s²,m/s²,m/s²\n" +
                rowsOf(pluckInTime(pluckedSideways(trueCraft)), {1.0, 3, ',', '.'})};
}

SampleTable nodPluck(const Setup& trueCraft)
{
    return {"pluck-nod.csv",
            head("pushed down and forward at its front") + "time;x;y;z\ns;g;g;g\n" +
                rowsOf(pluckInTime(pluckedDown(trueCraft)), {kGravity, 4, ';', ','})};
}

}  // namespace stillbay::test
