// SPDX-License-Identifier: MIT
#include "ui/craft/field_cards.h"

#include "core/setup/fields.h"
#include "ui/widgets/bind_field.h"

#include <QObject>
#include <QVBoxLayout>

#include <optional>
#include <string_view>
#include <type_traits>
#include <variant>

namespace stillbay::ui {
namespace {

// What it means to leave an optional number out, and where it starts when it is given.
struct LeftOut {
    std::string_view key;
    const char* word;
    double start;
};

constexpr LeftOut kLeftOut[] = {
    {"wall_mm", QT_TRANSLATE_NOOP("QObject", "solid"), 1.0},
    {"root_stiffness_nm_per_rad", QT_TRANSLATE_NOOP("QObject", "rigid"), 500.0},
    {"thrust_coefficient", QT_TRANSLATE_NOOP("QObject", "estimated"), 0.1},
    {"power_coefficient", QT_TRANSLATE_NOOP("QObject", "estimated"), 0.05},
    {"diameter_mm", QT_TRANSLATE_NOOP("QObject", "estimated"), 28.0},
    {"height_mm", QT_TRANSLATE_NOOP("QObject", "estimated"), 26.0},
    {"inertia_g_mm2", QT_TRANSLATE_NOOP("QObject", "estimated"), 45000.0},
    {"height_above_arm_mm", QT_TRANSLATE_NOOP("QObject", "as the motor"), 30.0},
    {"youngs_modulus_mpa", QT_TRANSLATE_NOOP("QObject", "from hardness"), 3.0},
    {"free_length_mm", QT_TRANSLATE_NOOP("QObject", "as the others"), 20.0},
    {"stretch", QT_TRANSLATE_NOOP("QObject", "as the others"), 1.15},
    {"unbalance_g_mm", QT_TRANSLATE_NOOP("QObject", "as the others"), 4.0},
};

// Whether a row shows the field: a mount point has either angles or a hole.
template <class Owner>
bool fits(const Field<Owner>& field, const Setup& setup)
{
    if constexpr (std::is_same_v<Owner, MountPoint>) {
        const std::string_view key = field.key;
        const bool isHole = key == "anchor_mm";
        const bool isPlan = key == "azimuth_deg" || key == "elevation_deg" || key == "stretch";
        return setup.mounts.drilled() ? !isPlan : !isHole;
    } else {
        return true;
    }
}

template <class Owner>
FieldRow* fieldRow(Document& document, const Field<Owner>& field, const Place<Owner>& place)
{
    QString word;
    double start = 0.0;
    // A key may name a number here that may be left out and there one that may not.
    const bool optional = std::holds_alternative<std::optional<double> Owner::*>(field.member);
    for (const LeftOut& leftOut : kLeftOut) {
        if (optional && leftOut.key == field.key) {
            word = QObject::tr(leftOut.word);
            start = leftOut.start;
        }
    }
    return bindField(document, field, place, word, start);
}

}  // namespace

template <class Owner>
std::vector<FieldRow*> fieldRows(Document& document, const Place<Owner>& place)
{
    std::vector<FieldRow*> rows;
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (fits(field, document.setup()))
            rows.push_back(fieldRow(document, field, place));
    return rows;
}

template std::vector<FieldRow*> fieldRows(Document&, const Place<Part>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<ArmSection>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Arm>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Motor>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Propeller>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Battery>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Drive>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Bay>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Camera>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<TubeKind>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<MountPoint>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Mounts>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Flight>&);
template std::vector<FieldRow*> fieldRows(Document&, const Place<Limits>&);

QWidget* fieldsCard(const std::vector<FieldRow*>& rows)
{
    auto* const card = new QWidget;
    auto* const layout = new QVBoxLayout(card);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(4);
    for (FieldRow* const row : rows)
        layout->addWidget(row);
    return card;
}

}  // namespace stillbay::ui
