// SPDX-License-Identifier: MIT
#include "core/drive/balance.h"

#include "core/base/units.h"

#include <cmath>
#include <numbers>

namespace stillbay {

double rotorMass(double motor, double propeller)
{
    return propeller + 0.5 * motor;
}

double balanceGrade_mm_s(double unbalance, double rotorMass, double speed)
{
    return unbalance / rotorMass * 2 * std::numbers::pi * speed / unit::mm;
}

double unbalanceWithTape(double unbalance, double mass, double radius, TapeSide side)
{
    const double tape = mass * radius;
    switch (side) {
        case TapeSide::Light:
            return std::abs(unbalance - tape);  // beyond balance the other side is heavy
        case TapeSide::Heavy:
            return unbalance + tape;
        case TapeSide::Balances:
            return tape;
    }
    return unbalance;
}

}  // namespace stillbay
