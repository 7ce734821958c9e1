// SPDX-License-Identifier: MIT
#pragma once

#include "ui/craft/layout_menu.h"

/// The quick layouts offered with the craft's arms and tubes.
namespace stillbay::ui {

RowLayouts armLayouts();
RowLayouts tubeLayouts();

}  // namespace stillbay::ui
