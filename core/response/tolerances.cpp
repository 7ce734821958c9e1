// SPDX-License-Identifier: MIT
#include "core/response/tolerances.h"

namespace stillbay {
namespace {

constexpr double kReading_c = 20.0;  // room temperature, where hardness and hang tests are read
constexpr double kZeroCelsius_k = 273.15;

}  // namespace

double modulusAtTemperature(double temperature_c)
{
    return (temperature_c + kZeroCelsius_k) / (kReading_c + kZeroCelsius_k);
}

}  // namespace stillbay
