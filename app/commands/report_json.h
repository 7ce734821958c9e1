// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"

#include <string>

namespace stillbay {

/// The JSON report, docs/report.md. Every number in it is finite.
std::string reportJson(const Assessment& assessment);

}  // namespace stillbay
