// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include <vector>

/// Where the holes lie on paper at their true size, and how the paper is shared out.
///
/// Everything here is in millimetres on a plane seen from above, x to the right and y down, with
/// the craft's datum at the origin. Forward is up, or to the right where that takes less paper.
namespace stillbay::ui {

enum class Plate { Airframe, Bay };

struct Hole {
    Plate plate = Plate::Airframe;
    int number = 1;  ///< of the tube, from 1
    QPointF place;
};

/// Two of these lie over each other where neighbouring sheets overlap.
struct Joint {
    int number = 1;
    QPointF place;
};

struct DrillingPlan {
    bool forwardIsRight = false;
    int rows = 1, columns = 1;
    std::vector<QRectF> sheets;  ///< what each sheet shows, row by row, all of the paper's size
    std::vector<Hole> holes;     ///< of each tube the airframe's, then the bay's
    std::vector<Joint> joints;
    QRectF box;  ///< around all marks and the datum
};

inline constexpr double kMark_mm = 6.0;      ///< from a hole to the end of its cross
inline constexpr double kOverlap_mm = 15.0;  ///< of neighbouring sheets

/// @param paper  room for the drawing on one sheet, larger than the overlap both ways
DrillingPlan planDrilling(const Mounts& mounts, const QSizeF& paper);

}  // namespace stillbay::ui
