// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/suggestions.h"
#include "core/advice/uncertainty.h"
#include "core/assess/assessment.h"
#include "core/setup/setup.h"

#include <string>

namespace stillbay {

/// The report as a page for people, UTF-8, at most 100 columns.
///
/// @param uncertainty  null: left out
std::string reportPage(const Setup& setup, const Assessment& assessment,
                       const Suggestions& suggestions, const Uncertainty* uncertainty = nullptr);

}  // namespace stillbay
