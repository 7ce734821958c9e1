// SPDX-License-Identifier: MIT
#pragma once

#include "ui/craft/row_list.h"

/// The quick layouts offered under the craft's arms and tubes.
namespace stillbay::ui {

RowLayouts armLayouts();
RowLayouts tubeLayouts();

}  // namespace stillbay::ui
