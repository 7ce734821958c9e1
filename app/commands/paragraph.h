// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <string>

namespace stillbay {

/// Writes one paragraph of UTF-8, wrapped at words to a page for people; later lines are indented
/// as far as the lead.
void paragraph(std::ostream& page, const std::string& text, const std::string& lead);

}  // namespace stillbay
