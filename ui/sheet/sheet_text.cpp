// SPDX-License-Identifier: MIT
#include "ui/sheet/sheet_text.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/setup/mount_layout.h"
#include "core/setup/tunes.h"
#include "ui/charts/point_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <QLocale>
#include <QObject>
#include <QStringList>

#include <cmath>
#include <map>

namespace stillbay::ui {
namespace {

constexpr qsizetype kMostUpright = 3;  // kinds of pieces that have a column each

// Adding 0 keeps a rounded −0 out.
QString number(double value, int decimals)
{
    const double unit = std::pow(10.0, decimals);
    return QLocale().toString(std::round(value * unit) / unit + 0.0, 'f', decimals);
}

// As many decimals as the value has, up to two.
QString plain(double value)
{
    return plainNumber(std::round(100.0 * value) / 100.0 + 0.0, 8);
}

QString millimetres(double value)
{
    return QObject::tr("%1 mm").arg(number(value, 1));
}

QString heading(const QString& text)
{
    return QStringLiteral("<h3 style='margin-top:10px; margin-bottom:3px'>%1</h3>")
        .arg(text.toHtmlEscaped());
}

QString paragraph(const QString& text)
{
    return QStringLiteral("<p style='margin-top:3px; margin-bottom:3px'>%1</p>")
        .arg(text.toHtmlEscaped());
}

QString bullets(const QStringList& sentences)
{
    QString list = QStringLiteral("<ul style='margin-top:2px; margin-bottom:2px'>");
    for (const QString& sentence : sentences)
        list += QStringLiteral("<li>%1</li>").arg(sentence.toHtmlEscaped());
    return list + QStringLiteral("</ul>");
}

// A number stays with its unit, and "Shore A" in one piece; sentences may be broken.
QString unbroken(QString cell, bool isNumber)
{
    return isNumber ? cell.replace(u' ', QChar::Nbsp)
                    : cell.replace(QStringLiteral(" %"), QStringLiteral("\u00A0%"));
}

QString row(const QStringList& cells, bool isHead, const QString& align)
{
    const QString cell = isHead ? QStringLiteral("<th align='%1' style='font-size:small'>%2</th>")
                                : QStringLiteral("<td align='%1'>%2</td>");
    const bool isNumbers = !isHead && align == QStringLiteral("right");
    QString line = QStringLiteral("<tr>");
    for (qsizetype k = 0; k < cells.size(); ++k)
        line += cell.arg(k == 0 ? QStringLiteral("left") : align,
                         isHead ? cells[k] : unbroken(cells[k], isNumbers));
    return line + QStringLiteral("</tr>");
}

QString table(const QStringList& head, const QList<QStringList>& rows,
              const QString& align = QStringLiteral("right"))
{
    QString html = QStringLiteral(
        "<table border='1' cellspacing='0' cellpadding='3' width='100%' "
        "style='border-collapse:collapse'>");
    if (!head.isEmpty())
        html += QStringLiteral("<thead>%1</thead>").arg(row(head, true, align));
    for (const QStringList& cells : rows)
        html += row(cells, false, align);
    return html + QStringLiteral("</table>");
}

QString bold(const QString& text)
{
    return QStringLiteral("<b>%1</b>").arg(text);
}

// Names in the first column and a row of the table in each further one.
QList<QStringList> upright(const QStringList& names, const QList<QStringList>& rows)
{
    QList<QStringList> turned;
    for (qsizetype k = 0; k < names.size(); ++k) {
        turned << QStringList{names[k]};
        for (const QStringList& cells : rows)
            turned.back() << cells[k];
    }
    return turned;
}

QString cutTable(const BuildSheet& sheet)
{
    const TubeKind& tube = sheet.setup.tube;
    const Mounts& mounts = sheet.setup.mounts;
    std::map<double, int> pieces;  // by free length
    for (const MountPoint& point : mounts.points)
        ++pieces[freeLength_mm(mounts, point)];
    const QStringList names{QObject::tr("Pieces"),      QObject::tr("Outer diameter"),
                            QObject::tr("Bore"),        QObject::tr("Hardness"),
                            QObject::tr("Free length"), QObject::tr("In the clamp, each end"),
                            QObject::tr("CUT LENGTH")};
    QList<QStringList> rows;
    for (const auto& [length_mm, count] : pieces)
        rows << QStringList{bold(QString::number(count)),
                            QObject::tr("%1 mm").arg(plain(tube.outer_diameter_mm)),
                            QObject::tr("%1 mm").arg(plain(tube.bore_mm)),
                            QObject::tr("%1 Shore A").arg(plain(tube.hardness_shore_a)),
                            millimetres(length_mm),
                            millimetres(sheet.grip_mm),
                            bold(millimetres(cutLength_mm(length_mm, sheet.grip_mm)))};
    return heading(QObject::tr("Cut the tubes")) +
           (rows.size() <= kMostUpright ? table({}, upright(names, rows), QStringLiteral("left"))
                                        : table(names, rows)) +
           paragraph(QObject::tr("Cut the ends square. Mark each tube where its clamps end: the "
                                 "free length lies between the two marks."));
}

struct Direction {
    double distance_mm, azimuth_deg, elevation_deg;
};

Direction directionOf(const Mounts& mounts, const MountPoint& point)
{
    const Triple anchor = anchorOf(mounts, point);
    const double x = anchor[0] - point.bay_mm[0], y = anchor[1] - point.bay_mm[1],
                 z = anchor[2] - point.bay_mm[2];
    const double azimuth_deg = std::atan2(y, x) / unit::deg;
    return {std::hypot(x, y, z), azimuth_deg < -0.05 ? azimuth_deg + 360.0 : azimuth_deg,
            std::atan2(z, std::hypot(x, y)) / unit::deg};
}

QString fitTable(const BuildSheet& sheet)
{
    const Mounts& mounts = sheet.setup.mounts;
    QList<QStringList> rows;
    for (std::size_t k = 0; k < mounts.points.size(); ++k) {
        const Direction to = directionOf(mounts, mounts.points[k]);
        const double length_mm = freeLength_mm(mounts, mounts.points[k]);
        rows << QStringList{
            bold(QString::number(k + 1)),
            millimetres(length_mm),
            bold(millimetres(to.distance_mm)),
            QObject::tr("%1 %").arg(number(kPercent * (to.distance_mm / length_mm - 1.0), 1)),
            QObject::tr("%1°").arg(number(to.azimuth_deg, 1)),
            QObject::tr("%1°").arg(number(to.elevation_deg, 1))};
    }
    return heading(QObject::tr("Fit the tubes")) +
           table({QObject::tr("Tube"), QObject::tr("Free length"),
                  QObject::tr("Fitted, clamp to clamp"), QObject::tr("Stretch"),
                  QObject::tr("Direction"), QObject::tr("Elevation")},
                 rows) +
           paragraph(QObject::tr("Direction: from the bay to the airframe, seen from above, 0° "
                                 "forward, 90° left. Elevation: above level. %1")
                         .arg(sheet.setup.mounts.ends == Ends::Clamped
                                  ? QObject::tr("Both ends are clamped square to the tube.")
                                  : QObject::tr("Both ends turn freely, as on a ball or a cord.")));
}

QString holeTable(const BuildSheet& sheet, int templateSheets)
{
    const Mounts& mounts = sheet.setup.mounts;
    QList<QStringList> rows;
    int index = 0;
    for (const MountPoint& point : mounts.points) {
        QStringList cells{bold(QString::number(++index))};
        for (const Triple& place : {anchorOf(mounts, point), point.bay_mm})
            for (const double coordinate : place)
                cells << number(coordinate, 1);
        rows << cells;
    }
    const QString forward = QObject::tr("forward"), left = QObject::tr("left"),
                  up = QObject::tr("up");
    QString html = heading(mounts.drilled() ? QObject::tr("Holes as drilled (mm)")
                                            : QObject::tr("Drill the holes (mm)"));
    html += table({QObject::tr("Tube"), QObject::tr("A airframe: %1").arg(forward), left, up,
                   QObject::tr("B bay: %1").arg(forward), left, up},
                  rows);
    html += paragraph(
        QObject::tr("Measured from the datum, the middle of the airframe's centre plate, with the "
                    "bay held as drawn. Each point is where a clamp ends and the free part of the "
                    "tube begins; a minus means back, right or down."));
    if (const Part* const heaviest = heaviestPart(sheet.setup.bay))
        html += paragraph(
            QObject::tr("The heaviest part of the bay (%1) sits with its middle at %2 / %3 / %4. "
                        "Keep it there: a few millimetres beside, and the bay turns more.")
                .arg(QString::fromStdString(heaviest->name).toHtmlEscaped(),
                     number(heaviest->centre_mm[0], 1), number(heaviest->centre_mm[1], 1),
                     number(heaviest->centre_mm[2], 1)));
    if (templateSheets > 0)
        html +=
            paragraph(QObject::tr("Sheets of the drilling template, at true size, at the end: %1.")
                          .arg(templateSheets));
    else
        html +=
            paragraph(QObject::tr("The holes lie too far apart for a template on this paper: "
                                  "drill by the table."));
    return html;
}

QString span(double from, double to)
{
    return QObject::tr("%1 to %2 %").arg(percentNumber(from), percentNumber(to));
}

QString cleanSpans(const Assessment& assessment)
{
    if (!assessment.status.flyable)
        return QObject::tr("none: the craft must not fly");
    QStringList spans;
    for (const ThrottleRange& range : assessment.ranges)
        if (range.grade == Grade::Clean)
            spans << span(range.from, range.to);
    return spans.isEmpty() ? QObject::tr("none") : spans.join(QObject::tr(", "));
}

QString hoverText(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return QObject::tr("the pack cannot hold the craft");
    const QString full = percentNumber(*hover.throttle_full);
    if (!hover.throttle_empty)
        return QObject::tr("%1 % on a full pack; an empty one cannot hold the craft").arg(full);
    return QObject::tr("%1 % on a full pack, %2 % on an empty one, %3 rpm")
        .arg(full, percentNumber(*hover.throttle_empty), number(hover.speed_rpm, 0));
}

QString worstInCruise(const Limits& limits, const Assessment& assessment)
{
    if (!assessment.cruise)
        return displayText(outsideCruiseText());
    const double worst_px = assessment.cruise->worst_px();
    if (!assessment.status.flyable)
        return QObject::tr("%1 px, if it could be flown").arg(number(worst_px, 2));
    return bold(QObject::tr("%1 px (%2)").arg(number(worst_px, 2), gradeWord(limits, worst_px)));
}

QString tunedTable(const BuildSheet& sheet)
{
    const Setup& setup = sheet.setup;
    const Assessment& assessment = sheet.assessment;
    const Propeller& propeller = setup.drive.propeller;
    const Camera& camera = setup.camera;
    const auto& [from, to] = setup.flight.cruise_throttle;
    QList<QStringList> rows;
    const auto add = [&rows](const QString& name, const QString& value) {
        rows << QStringList{name, value};
    };
    add(QObject::tr("Motors"), QObject::tr("%1 × %2 rpm/V")
                                   .arg(setup.airframe.arms.size())
                                   .arg(plain(setup.drive.motor.kv_rpm_per_v)));
    add(QObject::tr("Propellers"), QObject::tr("%1 × %2 in, blades: %3")
                                       .arg(plain(propeller.diameter_in), plain(propeller.pitch_in))
                                       .arg(propeller.blades));
    add(QObject::tr("Cells of the pack"), QString::number(setup.drive.battery.cells));
    add(QObject::tr("Bay, all that is on the tubes"),
        QObject::tr("%1 g").arg(number(assessment.bay.mass / unit::g, 0)));
    add(QObject::tr("Camera"),
        QObject::tr("%1 × %2 px, %3 frames/s, %4° wide, exposure %5 ms")
            .arg(camera.width_px)
            .arg(camera.height_px)
            .arg(plain(camera.frame_rate_hz), plain(camera.horizontal_fov_deg),
                 plain(camera.exposure_ms)));
    add(QObject::tr("Cruise window"), QObject::tr("%1 throttle").arg(span(from, to)));
    add(QObject::tr("Worst wobble in cruise"), worstInCruise(setup.limits, assessment));
    add(QObject::tr("Clean throttle"), cleanSpans(assessment));
    add(QObject::tr("Hover"), hoverText(assessment.hover));
    return heading(QObject::tr("Tuned for")) + table({}, rows, QStringLiteral("left"));
}

QStringList lines(const std::vector<Phrase>& sentences)
{
    QStringList list;
    for (const Phrase& sentence : sentences)
        list << displayText(sentence);
    return list;
}

// What forbids flight, before anything is cut.
QString forbiddenBox(const Status& status)
{
    if (status.violated.empty())
        return {};
    QStringList reasons;
    for (const Warning& violated : status.violated)
        reasons << displayText(violated.text);
    const QString text =
        status.flyable ? QObject::tr("What is said of cruise is not about this flight: %1.")
                       : QObject::tr("DO NOT FLY: %1. Mend the craft before you cut or drill.");
    return QStringLiteral(
               "<table border='2' cellspacing='0' cellpadding='6' width='100%' "
               "style='border-collapse:collapse'><tr><td><b>%1</b></td></tr></table>")
        .arg(text.arg(reasons.join(QStringLiteral("; "))).toHtmlEscaped());
}

}  // namespace

SheetText sheetText(const BuildSheet& sheet, int templateSheets)
{
    const QString name = sheet.setup.name.empty() ? QObject::tr("Unnamed craft")
                                                  : QString::fromStdString(sheet.setup.name);
    SheetText text;
    text.workshop =
        QStringLiteral("<h1 style='margin-top:0px; margin-bottom:0px; font-size:x-large'>%1</h1>")
            .arg(QObject::tr("Build sheet: %1").arg(name).toHtmlEscaped()) +
        forbiddenBox(sheet.assessment.status) + cutTable(sheet) + fitTable(sheet) +
        holeTable(sheet, templateSheets);
    text.tunedFor = tunedTable(sheet) + paragraph(displayText(restText(sheet.assessment.rest)));
    QStringList warningsOf;
    for (const Warning& warning : sheet.assessment.warnings)
        warningsOf << displayText(warning.text);
    if (!warningsOf.isEmpty())
        text.afterChart += heading(QObject::tr("Warnings")) + bullets(warningsOf);
    text.afterChart += heading(QObject::tr("Before you fly")) + bullets(lines(safetyWarnings()));
    return text;
}

}  // namespace stillbay::ui
