// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "core/setup/setup.h"

#include <QString>

#include <cstddef>
#include <optional>

namespace stillbay::ui {

/// One craft of a comparison: the present one, the same with a kept tune, or that of another file.
struct ComparedCraft {
    QString key;                                      ///< stays its own through renaming and undo
    QString name;                                     ///< at its curve and over its column
    QString meaning;                                  ///< where it is from, as a tool tip
    Design design;                                    ///< with the place of the heaviest part
    Limits limits;                                    ///< its own
    std::optional<Result<TuneFigures>> figures = {};  ///< none: being worked out
    std::optional<std::size_t> place = {};            ///< of its dash and colour; none: the present

    /// What it does; null while it is being worked out, and where there is no answer.
    const TuneFigures* known() const { return figures && *figures ? &**figures : nullptr; }
};

}  // namespace stillbay::ui
