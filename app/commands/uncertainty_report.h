// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/json_numbers.h"
#include "core/advice/uncertainty.h"

#include <ostream>

namespace stillbay {

/// `uncertainty` of the JSON report, docs/report.md.
Json uncertaintyJson(const Uncertainty& uncertainty);

/// The same for the page for people.
void uncertaintySection(std::ostream& page, const Uncertainty& uncertainty);

}  // namespace stillbay
