// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/uncertainty.h"
#include "core/assess/assessment.h"

#include <string>

namespace stillbay {

/// The JSON report, docs/report.md. Every number in it is finite.
///
/// @param uncertainty  null: left out
std::string reportJson(const Assessment& assessment, const Uncertainty* uncertainty = nullptr);

}  // namespace stillbay
