// SPDX-License-Identifier: MIT
#include "ui/document/throttle_cursor.h"

#include <algorithm>

namespace stillbay::ui {

void ThrottleCursor::moveTo(double throttle)
{
    const double within = std::clamp(throttle, 0.0, 1.0);
    if (within == m_throttle)
        return;
    m_throttle = within;
    emit moved(within);
}

}  // namespace stillbay::ui
