// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/arguments.h"
#include "app/commands/motor_recordings.h"
#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/clip/probe.h"
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
    ClipOptions part;

    /// For what is said of it: the file, and the part where it is one.
    std::string name() const;
};

/// "flight.mp4:40%@12-20"; a name may hold colons and @, since only a part from one second to
/// another behind the last @, and a throttle behind the last colon before it, are none of it.
FilmClip clipOf(std::string_view text);

/// "--film CLIP[:THROTTLE][@FROM-TO]", once for each.
Option filmOption(std::vector<FilmClip>& clips);

/// Reads each clip with the craft's readout and exposure, or its own readout where it tells
/// another, matches it, and takes the unbalance that they tell together. What cannot be read, and
/// what whyRepeated() and whyLeftOut() name, is left out. What a clip leaves in doubt is told on
/// err with its name.
///
/// @param craft      as corrected so far
/// @param setupFile  where it comes from
/// @return where it went wrong: the clip that cannot be read and leaves fewer than kFewestFilms, or
///         the setup, also where clips that repeat others leave fewer
std::optional<RecordingFault> takeFilms(const std::vector<FilmClip>& clips, const Setup& craft,
                                        const std::string& setupFile,
                                        const std::function<Result<void>(const Correction&)>& take,
                                        std::ostream& err);

}  // namespace stillbay
