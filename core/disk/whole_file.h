// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <sys/types.h>

/// Files that are written whole or not at all. Their names are bytes, as the system has them.
namespace stillbay {

struct WriteOptions {
    std::optional<mode_t> mode;  ///< none: that of the file replaced, or of any new one
    std::optional<Error> taken;  ///< what is said where the name is in use; none: it is replaced
    /// Whether the file that is replaced may go, asked once it lies under the name it is given here
    /// and so no longer changes by name; null: it may.
    std::function<bool(const std::string&)> mayGo;
};

/// Makes the file hold exactly these bytes, down to the disk, or leaves it as it was. Links are
/// followed; another name of the same file (a hard link) keeps the old bytes.
///
/// The bytes go into a file without a name, or where the file system has none, into one of a name
/// of its own beside it, which then takes the name. A program that is killed leaves at most that
/// one behind, for sweepBeside().
///
/// What a program writes into the file at any moment before it leaves its name is seen by mayGo,
/// and where it must not go, it has its name back as if nothing had been (where the file system
/// cannot exchange two names, the question is asked just before). While the question is asked, what
/// was there has a name that sweepBeside() leaves alone: after a kill in that moment it stays.
///
/// @error BadInput  the name is taken, what is there must not go, it is not a regular file or may
/// not be written, a link
///                  points to itself, or the system refuses (its own words are in `what`).
Result<void> writeWhole(const std::string& path, std::string_view bytes,
                        const WriteOptions& options = {});

/// Removes what a killed writeWhole() left in the folder of a file, and nothing else: files of its
/// own naming that belong to this user and that no running program holds.
/// @return how many
std::size_t sweepBeside(const std::string& path);

}  // namespace stillbay
