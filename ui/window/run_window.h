// SPDX-License-Identifier: MIT
#pragma once

#include <string>

namespace stillbay::ui {

/// Opens the window, on the craft in the file where one is named, and runs until it is closed.
///
/// @param path  empty: the welcome page
/// @return the exit code: 0, or 2 with one line on standard error where there is no display.
int runWindow(int argc, char** argv, const std::string& path, const char* version);

}  // namespace stillbay::ui
