// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/read_plan.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <string>

/// Between what a recording's file was guessed to hold and what the builder says it holds.
namespace stillbay {

Quantity quantityOf(ColumnRole role);  ///< Other for what is no quantity

ColumnRole roleOf(const ReadPlan& plan, std::size_t column);
std::string unitOf(const ReadPlan& plan, std::size_t column);

/// Takes a column as the role in a unit; a unit that the role does not have becomes its first.
void setRole(ReadPlan& plan, std::size_t column, ColumnRole role, const std::string& unit);

/// The plan as the builder changed it. Columns that the file does not have are passed over.
ReadPlan followed(ReadPlan guessed, const NamedRecording& recording);

}  // namespace stillbay
