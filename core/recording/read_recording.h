// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/recording/read_plan.h"
#include "core/recording/recording.h"

#include <filesystem>
#include <iosfwd>
#include <stop_token>
#include <string>
#include <string_view>

/// From a file to even samples in SI.
namespace stillbay {

/// Reads the used columns of a table or channels of a sound by a plan. What is wrong at one place
/// is told as a flaw with its line, and mended so that every value is finite: a cell without a
/// number takes what lies between its neighbours, uneven stamps are resampled.
///
/// Needs 8 bytes for each value of the columns in use, the time column among them, and while
/// uneven stamps are resampled one column more.
///
/// @param stop      heeded within one block of the file
/// @param progress  steps are bytes of the file
/// @error BadInput  as planReading(); fewer than two rows; no column in use; no rate where there
///                  is no time column; a rate beyond 1 MHz; a column without a number.
/// @error NoAnswer  stopped.
Result<Recording> readRecording(const std::filesystem::path& file, const ReadPlan& plan,
                                const std::stop_token& stop = {}, const Progress& progress = {});

/// As planReading() has it.
Result<Recording> readRecording(const std::filesystem::path& file);

/// The same of bytes that came another way.
Result<Recording> readBytes(std::string_view bytes, const ReadPlan& plan,
                            const std::stop_token& stop = {}, const Progress& progress = {});
Result<Recording> readBytes(std::string_view bytes);

/// All bytes of a stream, for planBytes() and readBytes().
///
/// @error BadInput  nothing in it, more than 4 GiB, or it breaks off.
Result<std::string> bytesOf(std::istream& stream);

}  // namespace stillbay
