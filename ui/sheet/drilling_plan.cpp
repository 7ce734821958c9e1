// SPDX-License-Identifier: MIT
#include "ui/sheet/drilling_plan.h"

#include "core/base/check.h"
#include "core/setup/mount_layout.h"

#include <QLineF>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kRounding_mm = 1e-6;
constexpr double kClear_mm = 26.0;     // between a joint and a hole
constexpr double kJointStep_mm = 2.0;  // by which a joint gives way to a hole
constexpr int kJointSteps = 30;

QPointF onPaper(const Triple& place_mm, bool forwardIsRight)
{
    const auto [x, y, z] = place_mm;
    return forwardIsRight ? QPointF(x, -y) : QPointF(-y, -x);
}

int sheetsAlong(double length, double paper)
{
    if (length <= paper + kRounding_mm)
        return 1;
    return static_cast<int>(
        std::ceil((length - kOverlap_mm - kRounding_mm) / (paper - kOverlap_mm)));
}

DrillingPlan planIn(const Mounts& mounts, const QSizeF& paper, bool forwardIsRight)
{
    DrillingPlan plan;
    plan.forwardIsRight = forwardIsRight;
    int number = 0;
    QRectF box(0.0, 0.0, 0.0, 0.0);
    for (const MountPoint& point : mounts.points) {
        ++number;
        plan.holes.push_back(
            {Plate::Airframe, number, onPaper(anchorOf(mounts, point), forwardIsRight)});
        plan.holes.push_back({Plate::Bay, number, onPaper(point.bay_mm, forwardIsRight)});
    }
    for (const Hole& hole : plan.holes) {
        box.setLeft(std::min(box.left(), hole.place.x()));
        box.setRight(std::max(box.right(), hole.place.x()));
        box.setTop(std::min(box.top(), hole.place.y()));
        box.setBottom(std::max(box.bottom(), hole.place.y()));
    }
    plan.box = box.adjusted(-kMark_mm, -kMark_mm, kMark_mm, kMark_mm);
    plan.rows = sheetsAlong(plan.box.height(), paper.height());
    plan.columns = sheetsAlong(plan.box.width(), paper.width());
    return plan;
}

void shareOut(DrillingPlan& plan, const QSizeF& paper)
{
    const QSizeF step(paper.width() - kOverlap_mm, paper.height() - kOverlap_mm);
    const QPointF corner = plan.box.center() - QPointF(plan.columns * step.width() + kOverlap_mm,
                                                       plan.rows * step.height() + kOverlap_mm) /
                                                   2.0;
    for (int row = 0; row < plan.rows; ++row)
        for (int column = 0; column < plan.columns; ++column)
            plan.sheets.emplace_back(corner + QPointF(column * step.width(), row * step.height()),
                                     paper);
}

// The place on a line nearest to the wished one that keeps clear of all holes.
QPointF clearPlace(const DrillingPlan& plan, const QPointF& wished, const QPointF& along)
{
    for (int step = 0; step < kJointSteps; ++step)
        for (const double side : {1.0, -1.0}) {
            const QPointF tried = wished + side * step * kJointStep_mm * along;
            const bool clear = std::none_of(
                plan.holes.begin(), plan.holes.end(),
                [&](const Hole& hole) { return QLineF(hole.place, tried).length() < kClear_mm; });
            if (clear)
                return tried;
        }
    return wished;
}

// Two on each edge that two sheets share, in the middle of the overlap.
void addJoints(DrillingPlan& plan)
{
    const auto add = [&plan](const QPointF& wished, const QPointF& along) {
        plan.joints.push_back(
            {static_cast<int>(plan.joints.size()) + 1, clearPlace(plan, wished, along)});
    };
    for (std::size_t index = 0; index < plan.sheets.size(); ++index) {
        const QRectF sheet = plan.sheets[index];
        const int row = static_cast<int>(index) / plan.columns;
        const int column = static_cast<int>(index) % plan.columns;
        for (const double share : {0.25, 0.75}) {
            if (column + 1 < plan.columns)
                add({sheet.right() - kOverlap_mm / 2.0, sheet.top() + share * sheet.height()},
                    {0.0, 1.0});
            if (row + 1 < plan.rows)
                add({sheet.left() + share * sheet.width(), sheet.bottom() - kOverlap_mm / 2.0},
                    {1.0, 0.0});
        }
    }
}

}  // namespace

DrillingPlan planDrilling(const Mounts& mounts, const QSizeF& paper)
{
    check(paper.width() > kOverlap_mm && paper.height() > kOverlap_mm,
          "the sheets of a drilling template must be wider than they overlap");
    DrillingPlan plan = planIn(mounts, paper, false);
    const DrillingPlan turned = planIn(mounts, paper, true);
    if (turned.rows * turned.columns < plan.rows * plan.columns)
        plan = turned;
    shareOut(plan, paper);
    addJoints(plan);
    return plan;
}

}  // namespace stillbay::ui
