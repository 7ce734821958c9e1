// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/suggestions.h"
#include "core/assess/assessment.h"
#include "core/setup/setup.h"

#include <string>

namespace stillbay {

/// The report as a page for people, UTF-8, at most 100 columns.
std::string reportPage(const Setup& setup, const Assessment& assessment,
                       const Suggestions& suggestions);

}  // namespace stillbay
