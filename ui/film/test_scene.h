// SPDX-License-Identifier: MIT
#pragma once

#include <QImage>

namespace stillbay::ui {

/// A drawn scene to be filmed: poles that are straight, a level horizon with hills, a paved plain.
/// Both halves hold the same kind of things.
///
/// @param picture what a camera sees that stands still, in pixels
/// @param margin  how much more is drawn on each side, in pixels
QImage testScene(QSize picture, int margin);

}  // namespace stillbay::ui
