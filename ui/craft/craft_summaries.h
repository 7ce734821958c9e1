// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QString>

#include <utility>
#include <vector>

namespace stillbay::ui {

/// The essence of each section of the craft form in a few words: path of the section, words.
std::vector<std::pair<QString, QString>> craftSummaries(const Setup& setup);

}  // namespace stillbay::ui
