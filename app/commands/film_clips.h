// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/arguments.h"
#include "app/commands/motor_recordings.h"
#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/setup/setup.h"

#include <functional>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

/// What `calibrate` reads of the unbalance from films.
namespace stillbay {

struct FilmClip {
    std::string file;
    std::optional<double> throttle;  ///< it was filmed at, 0 … 1; none: not known
};

inline constexpr std::size_t kFewestClips = 3;

/// "hover.mp4:40%"; a name may hold colons, since only a throttle behind the last one is none of
/// it.
FilmClip clipOf(std::string_view text);

/// "--film CLIP[:THROTTLE]", once for each.
Option filmOption(std::vector<FilmClip>& clips);

/// Reads each clip with the craft's readout and exposure, matches it, and takes the unbalance that
/// they tell together. What a clip leaves in doubt is told on err with its name.
///
/// @param craft      as corrected so far
/// @param setupFile  where it comes from
/// @return where it went wrong
std::optional<RecordingFault> takeFilms(const std::vector<FilmClip>& clips, const Setup& craft,
                                        const std::string& setupFile,
                                        const std::function<Result<void>(const Correction&)>& take,
                                        std::ostream& err);

}  // namespace stillbay
