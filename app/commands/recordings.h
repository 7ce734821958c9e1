// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/arguments.h"
#include "core/base/result.h"
#include "core/recording/recording.h"

#include <array>
#include <cstddef>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

/// What the commands that read a recording share.
namespace stillbay {

/// For the help of such a command.
inline constexpr std::string_view kRecordingIs =
    "RECORDING is a table of text (comma, semicolon or tab; a time column in seconds) or sound "
    "(WAV, FLAC, Ogg), or - for standard input.";

/// A part of a recording, as `--from` and `--to` choose it.
struct PartOfRecording {
    std::optional<double> from_s, to_s;
};

/// Reads a recording as its reader understands it.
/// @param path     or kStandardInput
/// @param rate_hz  of a table without a time column
/// @param part     what is kept of it
/// @error BadInput  it cannot be opened, or what readRecording() refuses.
Result<Recording> loadRecording(const std::string& path, std::optional<double> rate_hz = {},
                                const PartOfRecording& part = {});

/// Prints each flaw as a line on err, which changes no exit code.
void reportFlaws(std::ostream& err, const Recording& recording, std::string_view file);

/// The channel of that name; for an empty one the first that vibrates (acceleration, turning,
/// sound), or the first of all.
/// @error BadInput  there is none; says which there are.
Result<const Channel*> chosenChannel(const Recording& recording, const std::string& name);

/// "m/s²"; empty where numbers stay as in the file.
std::string_view unitOf(Quantity quantity);

/// "84 m/s²", at four digits.
std::string withUnit(double value, Quantity quantity);

/// "--rate HZ": a number above 0.
Option rateOption(std::optional<double>& rate_hz);

/// The options that choose it.
std::array<Option, 2> partOptions(PartOfRecording& part);

/// "--segment N" of welch() and transfer().
Option segmentOption(std::size_t& segment);

/// "--craft FILE": whose orders may lie above half the recording's rate.
Option craftOption(std::string& file);

/// What aliasWarning() says of the craft in this file and of the throttle that the recording went
/// up to; none where no file is given.
/// @error BadInput  as loadSetup().
Result<std::vector<Warning>> foldedOrders(const std::string& craft, const Recording& recording);

/// The warnings behind a page's table.
void warningLines(std::ostream& page, const std::vector<Warning>& warnings);

/// "12.3 s at 1000 Hz, 22 segments of 1024 samples averaged, a line every 0.977 Hz"
std::string extentText(const Recording& recording, std::size_t segment, std::size_t averages);

}  // namespace stillbay
