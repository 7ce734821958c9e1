// SPDX-License-Identifier: MIT
#include "core/recording/rate_limit.h"

#include <cmath>

namespace stillbay {

Result<void> checkRate(double rate)
{
    if (rate > kMostRate_hz)
        return fail(Errc::BadInput,
                    phrase("the rate would be %1 samples a second, more than %2: is the time in "
                           "another unit?",
                           rounded(rate, 4), fixed(kMostRate_hz, 0)));
    if (!(rate > 0.0) || !std::isfinite(rate))
        return fail(Errc::BadInput, phrase("the sample rate is not above 0"));
    return {};
}

}  // namespace stillbay
