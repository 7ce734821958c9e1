// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <QString>

namespace stillbay::ui {

/// A sentence of the numbers' rooms in the window's language and with its numbers.
QString displayText(const Phrase& phrase);

/// A literal of the numbers' rooms (a field's label or meaning) in the window's language.
QString displayText(const char* literal);

/// A label as it stands inside a sentence: small in English; German keeps its capitals.
QString withinSentence(const QString& label);

/// With a capital at its beginning, as a sentence has it.
QString capitalised(const QString& text);

}  // namespace stillbay::ui
