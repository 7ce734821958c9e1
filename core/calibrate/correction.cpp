// SPDX-License-Identifier: MIT
#include "core/calibrate/correction.h"

#include "core/setup/number_at.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"

#include <algorithm>

namespace stillbay {

namespace {

// As a source may have it.
std::optional<double> sourceSpread(double spread)
{
    constexpr double kLeast = 1e-4, kMost = 2.0;
    return spread > 0 ? std::optional(std::clamp(spread, kLeast, kMost)) : std::nullopt;
}

}  // namespace

Result<Setup> accept(const Setup& setup, const Correction& correction, const std::string& date)
{
    Setup corrected = setup;
    for (const CorrectedValue& value : correction.values) {
        if (!putNumber(corrected, value.key, value.after))
            return fail(Errc::BadInput, phrase("the craft has no such number"), value.key);
        putSource(corrected, {.key = value.key,
                              .from = Origin::Measured,
                              .spread = sourceSpread(value.spread),
                              .note = english(correction.measurement),
                              .date = date});
    }
    if (correction.throttleCurve) {
        corrected.drive.throttle_curve = *correction.throttleCurve;
        putSource(corrected, {.key = "drive.throttle_curve",
                              .from = Origin::Measured,
                              .spread = sourceSpread(correction.throttleCurveSpread),
                              .note = english(correction.measurement),
                              .date = date});
    }
    if (auto valid = validate(corrected); !valid)
        return tl::unexpected(valid.error());
    return corrected;
}

}  // namespace stillbay
