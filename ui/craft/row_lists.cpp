// SPDX-License-Identifier: MIT
#include "ui/craft/row_lists.h"

#include "core/setup/sources.h"
#include "ui/craft/field_cards.h"
#include "ui/craft/preset_buttons.h"
#include "ui/craft/quick_layouts.h"
#include "ui/craft/row_list.h"
#include "ui/widgets/bind_text.h"

#include <QLineEdit>
#include <QObject>
#include <QVBoxLayout>

#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

// One list of the craft.
template <class Row>
struct CraftList {
    QString thing;  // "arm": what a row is
    QString path;   // as in the file
    std::vector<Row>& (*in)(Setup&);

    const std::vector<Row>& of(const Setup& setup) const { return in(const_cast<Setup&>(setup)); }
};

// The row of a list, by index, while it exists.
template <class Row>
Place<Row> rowPlace(const CraftList<Row>& list, std::size_t index)
{
    return {QStringLiteral("%1[%2]").arg(list.path).arg(index),
            QStringLiteral("%1 %2").arg(list.thing).arg(index + 1),
            [list, index](const Setup& setup) -> const Row* {
                const std::vector<Row>& rows = list.of(setup);
                return index < rows.size() ? &rows[index] : nullptr;
            }};
}

// What all lists have in common: everything but how a row is added.
template <class Row>
RowListSpec listSpec(Document& document, const CraftList<Row>& list)
{
    RowListSpec spec;
    spec.thing = list.thing;
    spec.path = list.path;
    spec.count = [list](const Setup& setup) {
        return list.of(setup).size();
    };
    spec.makeRow = [&document, list](std::size_t index) {
        return fieldsCard(fieldRows(document, rowPlace(list, index)));
    };
    spec.remove = [list](Setup& setup, std::size_t index) {
        std::vector<Row>& rows = list.in(setup);
        rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(index));
        dropRowSources(setup, list.path.toStdString(), index);
    };
    spec.swap = [list](Setup& setup, std::size_t a, std::size_t b) {
        std::vector<Row>& rows = list.in(setup);
        std::swap(rows.at(a), rows.at(b));
        swapRowSources(setup, list.path.toStdString(), a, b);
    };
    return spec;
}

QWidget* nameRow(Document& document, const Place<Part>& part)
{
    auto* const name = new QLineEdit;
    name->setToolTip(QObject::tr("What you call this part."));
    return new TextRow(
        document,
        {part.path + QStringLiteral(".name"), QObject::tr("%1: name").arg(part.spoken),
         [find = part.find](const Setup& setup) {
             const Part* owner = find(setup);
             return owner ? &owner->name : nullptr;
         }},
        name);
}

QWidget* partList(Document& document, const CraftList<Part>& list, PartList kind)
{
    RowListSpec spec = listSpec(document, list);
    spec.makeRow = [&document, list, makeFields = spec.makeRow](std::size_t index) {
        QWidget* const card = makeFields(index);
        auto* const layout = static_cast<QVBoxLayout*>(card->layout());
        layout->insertWidget(0, nameRow(document, rowPlace(list, index)));
        return card;
    };
    spec.add = [list](Setup& setup) {
        Part part;
        part.name = QObject::tr("new part").toStdString();
        list.in(setup).push_back(std::move(part));
    };
    auto* const others = new PartButtons(document, kind);
    spec.extras = {others};
    auto* const rows = new RowList(document, std::move(spec));
    QObject::connect(others, &PartButtons::added, rows, &RowList::enterLast);
    return rows;
}

// The next arm stands as far round as the last two stand apart.
void addArm(Setup& setup)
{
    std::vector<Arm>& arms = setup.airframe.arms;
    Arm arm = arms.empty() ? Arm{} : arms.back();
    const double pace =
        arms.size() > 1 ? arm.azimuth_deg - arms[arms.size() - 2].azimuth_deg : 90.0;
    arm.azimuth_deg = std::remainder(arm.azimuth_deg + pace, 360.0);
    arm.extras.clear();
    arms.push_back(arm);
}

// The next tube is the last one's mirror image across the craft's middle.
void addPoint(Setup& setup)
{
    std::vector<MountPoint>& points = setup.mounts.points;
    MountPoint point = points.empty() ? MountPoint{} : points.back();
    point.bay_mm[1] = -point.bay_mm[1];
    point.azimuth_deg = -point.azimuth_deg;
    if (point.anchor_mm)
        (*point.anchor_mm)[1] = -(*point.anchor_mm)[1];
    point.extras.clear();
    points.push_back(point);
}

}  // namespace

QWidget* airframePartList(Document& document)
{
    return partList(document,
                    {QObject::tr("airframe part"), QStringLiteral("airframe.parts"),
                     [](Setup& setup) -> std::vector<Part>& {
                         return setup.airframe.parts;
                     }},
                    PartList::Airframe);
}

QWidget* bayPartList(Document& document)
{
    return partList(document,
                    {QObject::tr("bay part"), QStringLiteral("bay.parts"),
                     [](Setup& setup) -> std::vector<Part>& {
                         return setup.bay.parts;
                     }},
                    PartList::Bay);
}

QWidget* armList(Document& document)
{
    RowListSpec spec = listSpec<Arm>(document, {QObject::tr("arm"), QStringLiteral("airframe.arms"),
                                                [](Setup& setup) -> std::vector<Arm>& {
                                                    return setup.airframe.arms;
                                                }});
    spec.add = addArm;
    return new RowList(document, std::move(spec));
}

QWidget* pointList(Document& document)
{
    RowListSpec spec =
        listSpec<MountPoint>(document, {QObject::tr("tube"), QStringLiteral("mounts.points"),
                                        [](Setup& setup) -> std::vector<MountPoint>& {
                                            return setup.mounts.points;
                                        }});
    spec.add = addPoint;
    spec.extras = {new LayoutMenu(document, tubeLayouts())};
    spec.kind = [](const Setup& setup) {
        return setup.mounts.drilled() ? 1 : 0;
    };
    return new RowList(document, std::move(spec));
}

}  // namespace stillbay::ui
