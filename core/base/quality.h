// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

namespace stillbay {

/// How far a measurement can be relied on.
enum class Quality {
    Good,
    Fair,  ///< the numbers hold, with a doubt that is named
    Poor,  ///< not to be accepted without another measurement
};

/// A mark, and why it is no better, or what speaks for it.
struct QualityMark {
    Quality quality = Quality::Good;
    Phrase reason;

    bool operator==(const QualityMark&) const = default;
};

}  // namespace stillbay
