// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/design/design.h"

#include <QString>

#include <vector>

namespace stillbay::ui {

/// A tube the builder keeps, and whether a search may choose it.
struct KeptTube {
    StockTube tube;
    bool isTicked = true;

    bool operator==(const KeptTube&) const = default;
};

/// The tube stock, as it lies in the settings: the same for every craft.
struct TubeStock {
    std::vector<KeptTube> tubes;
    /// What was there could not be read as a whole: the readable tubes are here, the text as it was
    /// has been put aside in the settings under this key. Empty: all was well.
    QString damagedKey;
};

/// Why a tube cannot be one, in the window's language; empty: it can.
QString faultOf(const StockTube& tube);

/// @param first  what lies in a tube stock that has never been filled
TubeStock readTubeStock(const StockTube& first);
/// @error BadInput  what keepSetting() refuses.
Result<void> writeTubeStock(const std::vector<KeptTube>& tubes);

}  // namespace stillbay::ui
