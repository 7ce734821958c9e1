// SPDX-License-Identifier: MIT
#pragma once

#include "core/presets/apply.h"
#include "core/presets/own.h"

#include <QString>

#include <functional>
#include <vector>

/// What the list of presets offers, freed of which table or file it comes from.
namespace stillbay::ui {

/// One number that a preset fills in.
struct PresetValue {
    QString label;
    QString now;     ///< in the craft at hand; empty for a part that is not there yet
    QString then;    ///< with the preset
    QString spread;  ///< how far such things differ; empty: not known
};

struct PresetEntry {
    QString name;
    QString remark;                    ///< a sentence more; may be empty
    QString source;                    ///< where the numbers are from
    std::function<Setup(Setup)> fill;  ///< the craft with it
    std::string ownName;               ///< not empty: kept by the builder, under this name
    std::function<std::vector<PresetValue>(const Setup&)> values;  ///< in a craft

    bool isOwn() const { return !ownName.empty(); }
};

/// The presets for one object of the craft, the builder's own first.
std::vector<PresetEntry> presetEntries(PresetKind kind, const std::vector<OwnPreset>& own);

/// Packs and cameras as parts for a list; they start in the middle of the parts that are there.
std::vector<PresetEntry> partEntries(PartList list);

/// Where a new part starts: the middle of what the list's parts weigh, to the millimetre.
Triple middleOf(const std::vector<Part>& parts);

}  // namespace stillbay::ui
