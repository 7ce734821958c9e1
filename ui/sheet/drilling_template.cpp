// SPDX-License-Identifier: MIT
#include "ui/sheet/drilling_template.h"

#include "ui/sheet/paper.h"

#include <QLineF>
#include <QObject>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kHead_mm = 10.0;      // running head and the note on printing
constexpr double kFoot_mm = 9.0;       // ruler, legend, arrow
constexpr double kSide_mm = 12.0;      // the upright ruler
constexpr double kSymbol_mm = 2.0;     // half the size of a hole's ring or square
constexpr double kHair_mm = 0.12;      // width of the lines that are measured
constexpr QSizeF kLabel_mm(7.5, 4.0);  // holds a letter and two digits
constexpr double kLabelAway_mm = 7.0;  // from the hole to the middle of its label
constexpr int kLabelTries = 16;        // directions around a hole
const QColor kGrey(110, 110, 110);

// Maps the plane of the plan into the page.
struct View {
    QRectF area;   // on the page
    QRectF sheet;  // of the plan

    QPointF operator()(const QPointF& place) const
    {
        return area.topLeft() + place - sheet.topLeft();
    }
};

void drawNote(Page& page, const QSizeF& page_mm, const DrillingPlan& plan, std::size_t sheet)
{
    const QRectF line(kMargin_mm, kMargin_mm + kRunningHead_mm, page_mm.width() - 2.0 * kMargin_mm,
                      kHead_mm - kRunningHead_mm);
    QString note = QObject::tr(
        "Drilling template, seen from above. Print at 100 %, not fitted to "
        "the page. Measure both rulers before you drill.");
    if (plan.sheets.size() > 1) {
        const int index = static_cast<int>(sheet);
        note += u' ' + QObject::tr("Row %1, column %2 of %3 × %4 sheets.")
                           .arg(index / plan.columns + 1)
                           .arg(index % plan.columns + 1)
                           .arg(plan.rows)
                           .arg(plan.columns);
    }
    page.line(line, Qt::AlignLeft | Qt::AlignTop, note, paperFont(7.5));
}

// A ruler of 100 mm that starts at `zero` and runs along `along`, its ticks towards `ticks`.
void drawRuler(Page& page, const QPointF& zero, const QPointF& along, const QPointF& ticks)
{
    page.setPen(kHair_mm);
    page.line(zero, zero + kRuler_mm * along);
    for (int mark = 0; mark <= static_cast<int>(kRuler_mm); ++mark) {
        const double length = mark % 10 == 0 ? 3.5 : mark % 5 == 0 ? 2.5 : 1.5;
        const QPointF place = zero + mark * along;
        page.line(place, place + length * ticks);
    }
    for (int mark = 0; mark <= static_cast<int>(kRuler_mm); mark += 10) {
        const QString text = mark == static_cast<int>(kRuler_mm) ? QObject::tr("%1 mm").arg(mark)
                                                                 : QString::number(mark);
        const QPointF place = zero + mark * along + 4.0 * ticks;
        const QRectF under(place - QPointF(6.0, 0.0), QSizeF(12.0, 3.0));
        const QRectF beside(place - QPointF(12.0, 2.0), QSizeF(12.0, 4.0));
        page.text(ticks.x() == 0.0 ? under : beside,
                  static_cast<int>(ticks.x() == 0.0 ? Qt::AlignHCenter | Qt::AlignTop
                                                    : Qt::AlignRight | Qt::AlignVCenter),
                  text, paperFont(7.0));
    }
}

void drawArrow(Page& page, const QPointF& middle, bool forwardIsRight)
{
    const QPointF ahead = forwardIsRight ? QPointF(1.0, 0.0) : QPointF(0.0, -1.0);
    const QPointF aside(-ahead.y(), ahead.x());
    const QPointF tip = middle + 4.0 * ahead;
    page.setPen(0.5);
    page.line(middle - 4.0 * ahead, middle + 2.0 * ahead);
    page.painter().setBrush(Qt::black);
    page.painter().drawPolygon(
        QPolygonF({page.dots(tip), page.dots(tip - 3.0 * ahead + 1.6 * aside),
                   page.dots(tip - 3.0 * ahead - 1.6 * aside)}));
    page.painter().setBrush(Qt::NoBrush);
}

// The cross is what is measured and pricked; ring and square tell the plates apart, even where one
// hole lies straight above the other.
void drawSymbol(Page& page, const QPointF& middle, Plate plate)
{
    page.setPen(kHair_mm);
    const double r = kSymbol_mm;
    if (plate == Plate::Airframe) {
        page.painter().drawEllipse(page.dots(middle), page.dots(r), page.dots(r));
        page.line(middle - QPointF(kMark_mm, 0.0), middle + QPointF(kMark_mm, 0.0));
        page.line(middle - QPointF(0.0, kMark_mm), middle + QPointF(0.0, kMark_mm));
        return;
    }
    page.painter().drawRect(page.dots(QRectF(middle - QPointF(r, r), QSizeF(2.0 * r, 2.0 * r))));
    const double reach = 0.6 * kMark_mm;
    page.line(middle - QPointF(reach, reach), middle + QPointF(reach, reach));
    page.line(middle - QPointF(reach, -reach), middle + QPointF(reach, -reach));
}

QString labelOf(Plate plate, const QString& number)
{
    return plate == Plate::Airframe ? QObject::tr("A%1", "hole in the airframe").arg(number)
                                    : QObject::tr("B%1", "hole in the bay").arg(number);
}

void drawLegend(Page& page, const QRectF& area, bool forwardIsRight)
{
    const QFont font = paperFont(7.5);
    const double row = area.height() / 2.0;
    int index = 0;
    for (const auto& [plate, text] :
         {std::pair(Plate::Airframe, QObject::tr("holes in the airframe")),
          std::pair(Plate::Bay, QObject::tr("holes in the bay"))}) {
        const QPointF middle(area.left() + 3.0, area.top() + (index + 0.5) * row);
        page.setPen(kHair_mm);
        const double r = 1.5;
        if (plate == Plate::Airframe)
            page.painter().drawEllipse(page.dots(middle), page.dots(r), page.dots(r));
        else
            page.painter().drawRect(
                page.dots(QRectF(middle - QPointF(r, r), QSizeF(2.0 * r, 2.0 * r))));
        page.text(QRectF(middle + QPointF(3.0, -row / 2.0), QSizeF(40.0, row)),
                  Qt::AlignLeft | Qt::AlignVCenter,
                  QObject::tr("%1 %2").arg(labelOf(plate, QObject::tr("1, 2…")), text), font);
        ++index;
    }
    const QPointF arrow(area.right() - 5.0, area.center().y());
    drawArrow(page, arrow, forwardIsRight);
    page.text(QRectF(arrow - QPointF(26.0, row / 2.0), QSizeF(20.0, row)),
              Qt::AlignRight | Qt::AlignVCenter, QObject::tr("forward"), font);
}

void drawCentreLines(Page& page, const View& view)
{
    const QRectF area = view.area;
    const QPointF datum = view(QPointF(0.0, 0.0));
    page.setPen(0.15, Qt::DashDotLine, kGrey);
    page.line({datum.x(), area.top()}, {datum.x(), area.bottom()});
    page.line({area.left(), datum.y()}, {area.right(), datum.y()});
    page.setPen(0.3);
    page.painter().drawEllipse(page.dots(datum), page.dots(3.0), page.dots(3.0));
    page.line(datum - QPointF(1.2, 0.0), datum + QPointF(1.2, 0.0));
    page.line(datum - QPointF(0.0, 1.2), datum + QPointF(0.0, 1.2));
    page.text(QRectF(datum + QPointF(3.5, 0.5), QSizeF(50.0, 4.0)), Qt::AlignLeft | Qt::AlignTop,
              QObject::tr("datum: middle of the centre plate"), paperFont(6.5));
}

// Which tube joins which holes.
void drawTubes(Page& page, const View& view, const DrillingPlan& plan)
{
    page.setPen(0.2, Qt::DashLine, kGrey);
    for (std::size_t k = 0; k + 1 < plan.holes.size(); k += 2) {
        const QLineF tube(view(plan.holes[k].place), view(plan.holes[k + 1].place));
        if (tube.length() <= 2.0 * kSymbol_mm)
            continue;
        const QPointF gap = (tube.p2() - tube.p1()) * (1.5 * kSymbol_mm / tube.length());
        page.line(tube.p1() + gap, tube.p2() - gap);
    }
}

// What labels keep clear of: rings and squares, and the arms of the crosses.
std::vector<QRectF> marksOf(const DrillingPlan& plan)
{
    const auto around = [](const QPointF& middle, double half, double halfHeight) {
        return QRectF(middle - QPointF(half, halfHeight), 2.0 * QSizeF(half, halfHeight));
    };
    std::vector<QRectF> marks;
    for (const Hole& hole : plan.holes) {
        marks.push_back(around(hole.place, kSymbol_mm, kSymbol_mm));
        if (hole.plate == Plate::Bay)
            continue;
        marks.push_back(around(hole.place, kMark_mm, 0.3));
        marks.push_back(around(hole.place, 0.3, kMark_mm));
    }
    return marks;
}

QRectF labelAround(const QPointF& hole, double angle)
{
    const QPointF middle = hole + kLabelAway_mm * QPointF(std::cos(angle), std::sin(angle));
    return {middle - QPointF(kLabel_mm.width(), kLabel_mm.height()) / 2.0, kLabel_mm};
}

// Labels keep clear of all marks and of each other as far as there is room, first away from the
// tube's other end.
std::vector<QRectF> labelPlaces(const DrillingPlan& plan)
{
    std::vector<QRectF> taken = marksOf(plan);
    const QRectF paper = plan.sheets.front().united(plan.sheets.back());
    std::vector<QRectF> places;
    for (std::size_t k = 0; k < plan.holes.size(); ++k) {
        const QPointF hole = plan.holes[k].place;
        const QPointF away = hole - plan.holes[k ^ 1U].place;
        const double first = away.isNull() ? (k % 2 == 0 ? -0.75 : 0.25) * std::numbers::pi
                                           : std::atan2(away.y(), away.x());
        QRectF place = labelAround(hole, first);
        for (int step = 0; step < kLabelTries; ++step) {
            const int turns = (step % 2 == 0 ? 1 : -1) * ((step + 1) / 2);  // 0, −1, 1, −2, …
            const double turn = turns * 2.0 * std::numbers::pi / kLabelTries;
            const QRectF tried = labelAround(hole, first + turn);
            const bool free = std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) {
                return other.intersects(tried);
            });
            if (free && paper.contains(tried)) {
                place = tried;
                break;
            }
        }
        taken.push_back(place);
        places.push_back(place);
    }
    return places;
}

void drawHoles(Page& page, const View& view, const DrillingPlan& plan)
{
    const std::vector<QRectF> labels = labelPlaces(plan);
    for (std::size_t k = 0; k < plan.holes.size(); ++k) {
        const Hole& hole = plan.holes[k];
        drawSymbol(page, view(hole.place), hole.plate);
        page.text(QRectF(view(labels[k].topLeft()), labels[k].size()), Qt::AlignCenter,
                  labelOf(hole.plate, QString::number(hole.number)), paperFont(8.0, true));
    }
}

void drawJoints(Page& page, const View& view, const DrillingPlan& plan)
{
    if (plan.joints.empty())
        return;
    page.setPen(0.15, Qt::DotLine, kGrey);
    page.painter().drawRect(page.dots(view.area));
    for (const Joint& joint : plan.joints) {
        const QPointF middle = view(joint.place);
        page.setPen(kHair_mm);
        page.line(middle - QPointF(4.0, 0.0), middle + QPointF(4.0, 0.0));
        page.line(middle - QPointF(0.0, 4.0), middle + QPointF(0.0, 4.0));
        page.text(QRectF(middle + QPointF(-7.0, 4.2), QSizeF(14.0, 3.0)), Qt::AlignCenter,
                  QObject::tr("joint %1", "where two sheets of paper overlap").arg(joint.number),
                  paperFont(6.0));
    }
}

}  // namespace

QRectF templateArea_mm(const QSizeF& page_mm)
{
    return {kMargin_mm + kSide_mm, kMargin_mm + kHead_mm,
            page_mm.width() - 2.0 * kMargin_mm - kSide_mm,
            page_mm.height() - 2.0 * kMargin_mm - kHead_mm - kFoot_mm};
}

void drawTemplate(Page& page, const QSizeF& page_mm, const DrillingPlan& plan, std::size_t sheet)
{
    const View view{templateArea_mm(page_mm), plan.sheets[sheet]};
    drawNote(page, page_mm, plan, sheet);
    const QRectF foot(view.area.left(), view.area.bottom(), view.area.width(), kFoot_mm);
    drawRuler(page, foot.topLeft() + QPointF(0.0, 1.0), {1.0, 0.0}, {0.0, 1.0});
    drawRuler(page, view.area.bottomLeft() - QPointF(1.0, 0.0), {0.0, -1.0}, {-1.0, 0.0});
    drawLegend(page, foot.adjusted(kRuler_mm + 8.0, 1.0, 0.0, 0.0), plan.forwardIsRight);

    page.painter().save();
    page.painter().setClipRect(page.dots(view.area));
    drawCentreLines(page, view);
    drawTubes(page, view, plan);
    drawJoints(page, view, plan);
    drawHoles(page, view, plan);
    page.painter().restore();
}

}  // namespace stillbay::ui
