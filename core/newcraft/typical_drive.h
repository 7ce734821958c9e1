// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/answers.h"
#include "core/newcraft/typical_frame.h"
#include "core/presets/presets.h"
#include "core/setup/setup.h"

#include <cstddef>

/// Motors, propellers and pack as they follow from the answers and the craft's size.
namespace stillbay {

/// Indices into motorPresets() and packPresets(): the builder's, or those that fit.
std::size_t motorFor(const CraftAnswers& answers, const CraftSize& size);
std::size_t packFor(const CraftAnswers& answers, const CraftSize& size);

/// That pack with the cells asked for.
PackPreset wiredPack(const CraftAnswers& answers, const CraftSize& size);

/// The drive with its sources; the frame is there.
Setup withDrive(Setup setup, const CraftSize& size, const PackPreset& pack,
                const CraftAnswers& answers);

/// A higher KV where the whole craft would hover above half throttle, or not at all.
void addThrustMargin(Setup& setup);

/// The throttles from a tenth below the hover of the full pack to a tenth above that of the empty
/// one, in twentieths; as they are where there is none.
void setCruiseAroundHover(Setup& setup);

}  // namespace stillbay
