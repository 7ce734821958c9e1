// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay::ui {

/// Which of the tab's pages a widget stands on: widgets of one kind have names of their own.
enum class OfWhat { Recording, Film };

}  // namespace stillbay::ui
