// SPDX-License-Identifier: MIT
#pragma once

#include <QLocale>
#include <QPageLayout>

namespace stillbay::ui {

enum class Paper { A4, Letter };

inline constexpr double kMargin_mm = 10.0;      ///< that every printer can leave blank
inline constexpr double kRunningHead_mm = 5.0;  ///< craft, date and page number

/// What the shops sell where the locale is spoken.
/// @source paper sizes by territory of the Unicode locale data (CLDR), recalled from memory
Paper usualPaper(const QLocale& locale);

/// Upright, drawn on up to the edge.
QPageLayout layoutOf(Paper paper);

}  // namespace stillbay::ui
