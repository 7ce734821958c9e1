// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

#include <string>
#include <string_view>

namespace stillbay::ui {

/// A file's name as the window keeps it. The system's names are bytes, and Qt replaces those that
/// are not UTF-8, so that another file would be meant: here such a byte b stands as the character
/// U+EF00 + b of the private use area, and comes back as it was given by nativePath(). (The bytes
/// of a character that is itself one of U+EF80 to U+EFFF are written likewise.)
QString pathFrom(std::string_view native);

/// The bytes by which the system knows it.
std::string nativePath(const QString& path);

}  // namespace stillbay::ui
