// SPDX-License-Identifier: MIT
#include "core/calibrate/predicted_orders.h"

#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillbay {
namespace {

// So narrow that no two orders of unlike speeds share a row.
constexpr double kOrderRow_hz = 1e-6;

long rowOf(double frequency_hz)
{
    return std::lround(frequency_hz / kOrderRow_hz);
}

// Any point of the airframe that no symmetry of a craft keeps still.
SensorPoint anywhere()
{
    return {{0.051, 0.032, 0.017}, {1, 2, 3}};
}

// [(m/s²)²] sum over the motors of what the sensor shows in each row, over all throttles.
std::map<long, double> powersOf(const PredictedTransfer& transfer, SensorSeat seat, double count)
{
    std::map<long, double> powers;
    for (std::size_t k = 0; k < transfer.frequency_hz.size(); ++k) {
        double power = 2 * transfer.input[k] * count;
        if (seat == SensorSeat::Bay)  // Σ|y|² = |Σ y x*|² / (Σ|x|² · coherence)
            power *= transfer.magnitude[k] * transfer.magnitude[k] / transfer.coherence[k];
        powers[rowOf(transfer.frequency_hz[k])] = power;
    }
    return powers;
}

}  // namespace

Result<std::vector<PredictedOrder>> predictedOrders(const Setup& setup, const SensorPoint& sensor,
                                                    SensorSeat seat,
                                                    std::span<const double> throttles,
                                                    bool flexible)
{
    const SensorPoint& onAirframe = seat == SensorSeat::Airframe ? sensor : anywhere();
    const auto transfer =
        predictedTransfer(setup, onAirframe, sensor, throttles, kOrderRow_hz, flexible);
    if (!transfer)
        return tl::unexpected(transfer.error());
    const std::map<long, double> powers =
        powersOf(*transfer, seat, static_cast<double>(throttles.size()));

    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    std::vector<PredictedOrder> orders{{1, {}}};
    for (std::size_t k = 1; k <= craft.bladePass.size(); ++k)
        orders.push_back({static_cast<int>(k) * craft.blades, {}});
    std::map<long, double> sharing;  // throttles at which the rotors turn alike
    std::vector<double> speeds;
    for (const double throttle : throttles) {
        speeds.push_back(rotorSpeed(craft.drive, throttle, craft.fullVoltage));
        for (const PredictedOrder& order : orders)
            sharing[rowOf(order.order * speeds.back())] += 1;
    }
    for (PredictedOrder& order : orders)
        for (const double speed : speeds) {
            const long row = rowOf(order.order * speed);
            const auto power = powers.lower_bound(row - 1);  // the last digit may differ
            order.amplitude.push_back(power == powers.end() || power->first > row + 1
                                          ? 0.0
                                          : std::sqrt(power->second / sharing.at(row)));
        }
    return orders;
}

}  // namespace stillbay
