// SPDX-License-Identifier: MIT
#pragma once

#include <QIcon>
#include <QPalette>

namespace stillbay::ui {

enum class Glyph { New, Open, Save, Undo, Redo, Keep, Find, Sheet };

/// The desktop theme's icon where it has one, else one drawn in the text colour.
QIcon icon(Glyph glyph, const QPalette& palette);

}  // namespace stillbay::ui
