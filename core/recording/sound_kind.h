// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <string_view>

namespace stillbay {

enum class SoundKind { None, Wav, Flac, Ogg };

/// What the first bytes of a file say: a sound that is read here, or none.
///
/// @param head  some dozen bytes, or all there are
/// @error BadInput  something else that is surely no table: a sound or film in another form, an
///                  archive; the sentence says what to do.
Result<SoundKind> soundKind(std::string_view head);

}  // namespace stillbay
