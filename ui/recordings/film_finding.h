// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"
#include "ui/charts/filmed_mark.h"
#include "ui/recordings/film_read.h"
#include "ui/recordings/finding.h"

#include <cstddef>
#include <memory>
#include <stop_token>
#include <utility>
#include <vector>

/// From the films of a craft to what the tab shows of the chosen one. Runs in the background.
namespace stillbay::ui {

struct NamedFilm {
    NamedRecording named;
    SharedFilm film;
};

struct FilmQuestion {
    Setup setup;
    std::shared_ptr<const Assessment> prediction;  ///< of the setup; null: there is none
    std::vector<NamedFilm> films;                  ///< that have been read, as the craft names them
    std::size_t chosen = 0;                        ///< its place among them
    /// Names of those that cannot be read, and why.
    std::vector<std::pair<QString, Error>> unread;
};

struct FilmFinding {
    Finding finding;                ///< lengths in pixels of the craft's camera
    std::vector<FilmedMark> marks;  ///< of all films whose throttle is known or found …
    bool hasOwnMark = false;        ///< … the first of them of the chosen one
};

/// Steps of each film, of which those are told that are not kept from before.
inline constexpr std::size_t kStepsAFilm = 100;

/// The chosen film is asked first, then the others as the craft names them.
///
/// @param progress  steps are kStepsAFilm for each of the films
/// @error as readLines() of the chosen film, or stopped; what the others lack is a note.
Result<FilmFinding> filmFinding(const FilmQuestion& question, const std::stop_token& stop,
                                const Progress& progress = {});

}  // namespace stillbay::ui
