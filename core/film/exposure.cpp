// SPDX-License-Identifier: MIT
#include "core/film/exposure.h"

#include <cmath>

namespace stillbay {

double exposureOfShutter(double shutter_deg, double frameRate_hz)
{
    return shutter_deg / kFullShutter_deg / frameRate_hz;
}

double shutterOfExposure_deg(double exposure, double frameRate_hz)
{
    return exposure * frameRate_hz * kFullShutter_deg;
}

double exposureBehindFilter(double exposure, double stops)
{
    return exposure * std::exp2(stops);
}

double filterStops(double exposure, double wanted)
{
    return std::log2(wanted / exposure);
}

}  // namespace stillbay
