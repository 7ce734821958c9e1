// SPDX-License-Identifier: MIT
#include "core/calibrate/correction.h"

#include "core/setup/number_at.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"

namespace stillbay {

Result<Setup> accept(const Setup& setup, const Correction& correction, const std::string& date)
{
    Setup corrected = setup;
    for (const CorrectedValue& value : correction.values) {
        if (!putNumber(corrected, value.key, value.after))
            return fail(Errc::BadInput, phrase("the craft has no such number"), value.key);
        putSource(corrected, {.key = value.key,
                              .from = Origin::Measured,
                              .spread = value.spread,
                              .note = english(correction.measurement),
                              .date = date});
    }
    if (auto valid = validate(corrected); !valid)
        return tl::unexpected(valid.error());
    return corrected;
}

}  // namespace stillbay
