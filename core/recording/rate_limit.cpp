// SPDX-License-Identifier: MIT
#include "core/recording/rate_limit.h"

#include <cmath>

namespace stillbay {

Result<void> checkRate(double rate)
{
    if (rate > kMostRate_hz || (rate > 0.0 && rate < kLeastRate_hz))
        return fail(Errc::BadInput,
                    phrase("the rate would be %1 samples a second, not %2 to %3: is the time in "
                           "another unit?",
                           rounded(rate, 4), fixed(kLeastRate_hz, 3), fixed(kMostRate_hz, 0)));
    if (!(rate > 0.0) || !std::isfinite(rate))
        return fail(Errc::BadInput, phrase("the sample rate is not above 0"));
    return {};
}

}  // namespace stillbay
