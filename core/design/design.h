// SPDX-License-Identifier: MIT
#pragma once

#include "core/design/variable.h"

#include <optional>

/// What a search may change on a craft.
namespace stillbay {

/// How designs are hung before they are looked at.
struct Hanging {
    std::optional<Bay> level;  ///< the bay that each is hung level for; none: as it stands

    Design hung(Design design) const;
};
Hanging hangingOf(const Setup& setup, bool level);

/// A tube of the tube stock.
struct StockTube {
    double outer_diameter_mm = 8.0;
    double bore_mm = 5.0;
    double hardness_shore_a = 60.0;

    bool operator==(const StockTube&) const = default;
};

StockTube stockOf(const TubeKind& tube);

/// Gives a design a tube of the stock. Loss, density and limits stay those of the present tube,
/// which the tube stock does not know; a measured modulus goes unless it is the same tube.
void useTube(Design& design, const StockTube& stock);

}  // namespace stillbay
