// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "core/setup/strict_json.h"

namespace stillbay {

/// Setup to JSON: keys in the order of the format, extras last in their object.
///
/// @param setup  valid, see validate().
Json setupToJson(const Setup& setup);

}  // namespace stillbay
