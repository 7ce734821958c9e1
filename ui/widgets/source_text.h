// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QString>

/// What the craft says about where one of its numbers comes from, in the window's words.
namespace stillbay::ui {

/// "typical" or "estimated" beside a number that is not the builder's own; empty for others.
QString sourceMark(const Source& source);

/// Where the number is from and how far it may be off, as paragraphs for a hover text.
QString sourceText(const Source& source);

/// "±22 %".
QString spreadText(double spread);

}  // namespace stillbay::ui
