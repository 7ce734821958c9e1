// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_readings.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

constexpr double kSameThrottle = 0.01;  // nearer ones are one reading
constexpr std::size_t kFewestThrottles = 3;

std::vector<SteadySpeed> mergedReadings(std::span<const SteadySpeed> readings)
{
    std::vector<SteadySpeed> sorted(readings.begin(), readings.end());
    std::sort(sorted.begin(), sorted.end(),
              [](const SteadySpeed& a, const SteadySpeed& b) { return a.throttle < b.throttle; });
    std::vector<SteadySpeed> result;
    for (std::size_t first = 0, last = 0; first < sorted.size(); first = last) {
        SteadySpeed mean{0, 0, {}};
        double voltage = 0;
        while (last < sorted.size() &&
               sorted[last].throttle < sorted[first].throttle + kSameThrottle) {
            mean.throttle += sorted[last].throttle;
            mean.speed += sorted[last].speed;
            voltage += sorted[last].voltage.value_or(0);
            ++last;
        }
        const auto count = static_cast<double>(last - first);
        mean.throttle /= count;
        mean.speed /= count;
        if (sorted[first].voltage)
            mean.voltage = voltage / count;
        result.push_back(mean);
    }
    return result;
}

Result<void> checkReadings(std::span<const SteadySpeed> readings)
{
    const bool hasVoltage = !readings.empty() && readings[0].voltage.has_value();
    for (const SteadySpeed& reading : readings) {
        if (!(reading.throttle > 0 && reading.throttle <= 1))
            return fail(Errc::BadInput, phrase("A throttle is %1, must be above 0 and up to 1",
                                               exact(reading.throttle)));
        if (!(reading.speed > 0 && std::isfinite(reading.speed)))
            return fail(Errc::BadInput, phrase("A speed is %1 rpm, must be above 0",
                                               rounded(reading.speed / unit::rpm, 5)));
        if (reading.voltage.has_value() != hasVoltage)
            return fail(Errc::BadInput,
                        phrase("Some readings have a voltage and others none; all must have the "
                               "same"));
        if (reading.voltage && !(*reading.voltage > 0 && std::isfinite(*reading.voltage)))
            return fail(Errc::BadInput,
                        phrase("A voltage is %1 V, must be above 0", rounded(*reading.voltage, 4)));
    }
    return {};
}

}  // namespace

Result<std::vector<SteadySpeed>> mergedSpeeds(std::span<const SteadySpeed> readings)
{
    if (const auto valid = checkReadings(readings); !valid)
        return tl::unexpected(valid.error());
    auto merged = mergedReadings(readings);
    if (merged.size() < kFewestThrottles)
        return fail(Errc::BadInput,
                    phrase("There are readings at %1 throttles, at least 3 are needed",
                           whole(merged.size())));
    return merged;
}

}  // namespace stillbay
