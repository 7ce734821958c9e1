// SPDX-License-Identifier: MIT
#include "ui/craft/preset_entries.h"

#include "core/setup/sources.h"
#include "core/setup/wording.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/field_spec.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/source_text.h"

#include <QObject>

#include <cmath>
#include <type_traits>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kShownDigits = 6;

QString withUnit(const QString& number, const QString& unit)
{
    return unit.isEmpty() || unit == QStringLiteral("°") ? number + unit
                                                         : number + QChar::Nbsp + unit;
}

// "93.5 g", "25 × 55 × 30 mm"; what is left out is estimated.
QString textOf(const FieldSpec& spec, const Setup& setup)
{
    QStringList numbers;
    for (std::size_t k = 0; k < spec.count(setup); ++k) {
        const std::optional<double> value = spec.entry(k).read(setup);
        if (!value)
            return QObject::tr("estimated");
        numbers << plainNumber(*value, kShownDigits);
    }
    return withUnit(numbers.join(QStringLiteral(" × ")), spec.unit);
}

// The numbers of one object that filling changes, or of which it says something.
template <class Owner>
std::vector<PresetValue> valuesOf(const Place<Owner>& place, const Setup& now, const Setup& then)
{
    std::vector<PresetValue> values;
    for (const Field<Owner>& field : fieldsOf<Owner>()) {
        const FieldSpec spec = specOf(field, place);
        const Source* const source = sourceOf(then, spec.path.toStdString());
        const bool isThere = place.find(now) != nullptr;
        const QString before = isThere ? textOf(spec, now) : QString();
        const QString after = textOf(spec, then);
        if (!source && before == after)
            continue;
        values.push_back({spec.label, before, after,
                          source && source->spread ? spreadText(*source->spread) : QString()});
    }
    return values;
}

Place<ArmSection> placeOf(const ArmSection*)
{
    return {QStringLiteral("airframe.arm"), {}, [](const Setup& s) {
                return &s.airframe.arm;
            }};
}

Place<Motor> placeOf(const Motor*)
{
    return {QStringLiteral("drive.motor"), {}, [](const Setup& s) {
                return &s.drive.motor;
            }};
}

Place<Propeller> placeOf(const Propeller*)
{
    return {QStringLiteral("drive.propeller"), {}, [](const Setup& s) {
                return &s.drive.propeller;
            }};
}

Place<Battery> placeOf(const Battery*)
{
    return {QStringLiteral("drive.battery"), {}, [](const Setup& s) {
                return &s.drive.battery;
            }};
}

Place<Camera> placeOf(const Camera*)
{
    return {QStringLiteral("camera"), {}, [](const Setup& s) {
                return &s.camera;
            }};
}

Place<TubeKind> placeOf(const TubeKind*)
{
    return {QStringLiteral("tube"), {}, [](const Setup& s) {
                return &s.tube;
            }};
}

template <class Owner, class Preset>
PresetEntry entryOf(const Preset& preset, Setup (*fill)(Setup, const Preset&))
{
    PresetEntry entry;
    entry.name = displayText(nameOf(preset));
    entry.source = displayText(preset.source);
    entry.fill = [&preset, fill](Setup setup) {
        return fill(std::move(setup), preset);
    };
    // What the craft says of its numbers now is not the preset's.
    entry.values = [fill = entry.fill](const Setup& now) {
        Setup silent = now;
        silent.sources.clear();
        return valuesOf(placeOf(static_cast<const Owner*>(nullptr)), now, fill(std::move(silent)));
    };
    return entry;
}

template <class Owner, class Presets, class Preset>
void addAll(std::vector<PresetEntry>& entries, const Presets& presets,
            Setup (*fill)(Setup, const Preset&))
{
    for (const Preset& preset : presets)
        entries.push_back(entryOf<Owner>(preset, fill));
}

QString remarkOn(const MotorPreset& preset)
{
    if (!preset.lowest_kv_rpm_per_v || !preset.highest_kv_rpm_per_v)
        return {};
    return QObject::tr("Such motors are wound for %1 to %2 rpm/V.")
        .arg(plainNumber(*preset.lowest_kv_rpm_per_v, kShownDigits),
             plainNumber(*preset.highest_kv_rpm_per_v, kShownDigits));
}

PresetEntry entryOf(const OwnPreset& preset)
{
    PresetEntry entry;
    entry.name = QObject::tr("%1 (yours)").arg(QString::fromStdString(preset.name));
    entry.ownName = preset.name;
    entry.source = QObject::tr("Kept by you.");
    entry.fill = [preset](Setup setup) {
        return withOwn(std::move(setup), preset);
    };
    entry.values = [preset, fill = entry.fill](const Setup& now) {
        return std::visit(
            [&](const auto& object) { return valuesOf(placeOf(&object), now, fill(now)); },
            preset.object);
    };
    return entry;
}

// A part of a list, the last one once it is there.
Place<Part> lastPart(PartList list, std::size_t count)
{
    const std::string path = joinPath(pathOf(list), count);
    return {QString::fromStdString(path), {}, [list, count](const Setup& setup) -> const Part* {
                const std::vector<Part>& parts = partsOf(const_cast<Setup&>(setup), list);
                return count < parts.size() ? &parts[count] : nullptr;
            }};
}

template <class Preset>
PresetEntry partEntry(PartList list, const Preset& preset,
                      Part (*make)(const Preset&, std::string, const Triple&))
{
    PresetEntry entry;
    entry.name = displayText(nameOf(preset));
    entry.source = displayText(preset.source);
    entry.fill = [list, &preset, make, name = entry.name.toStdString()](Setup setup) {
        Part part = make(preset, name, middleOf(partsOf(setup, list)));
        return withPart(std::move(setup), list, std::move(part), preset.source);
    };
    entry.values = [list, fill = entry.fill](const Setup& now) {
        const std::size_t count = partsOf(const_cast<Setup&>(now), list).size();
        return valuesOf(lastPart(list, count), now, fill(now));
    };
    return entry;
}

}  // namespace

Triple middleOf(const std::vector<Part>& parts)
{
    Triple moment{};
    double mass_g = 0.0;
    for (const Part& part : parts) {
        mass_g += part.mass_g;
        for (std::size_t k = 0; k < moment.size(); ++k)
            moment[k] += part.mass_g * part.centre_mm[k];
    }
    for (double& coordinate : moment)
        coordinate = mass_g > 0 ? std::round(coordinate / mass_g) + 0.0 : 0.0;  // never −0
    return moment;
}

std::vector<PresetEntry> presetEntries(PresetKind kind, const std::vector<OwnPreset>& own)
{
    std::vector<PresetEntry> entries;
    for (const OwnPreset& preset : own)
        if (preset.kind() == kind)
            entries.push_back(entryOf(preset));
    switch (kind) {
        case PresetKind::Arm:
            addAll<ArmSection>(entries, armPresets(), &withArm);
            break;
        case PresetKind::Motor:
            for (const MotorPreset& preset : motorPresets()) {
                entries.push_back(entryOf<Motor>(preset, &withMotor));
                entries.back().remark = remarkOn(preset);
            }
            break;
        case PresetKind::Propeller:
            addAll<Propeller>(entries, propellerPresets(), &withPropeller);
            break;
        case PresetKind::Pack:
            addAll<Battery>(entries, packPresets(), &withPack);
            break;
        case PresetKind::Camera:
            addAll<Camera>(entries, cameraPresets(), &withCamera);
            break;
        case PresetKind::Tube:
            addAll<TubeKind>(entries, tubePresets(), &withTube);
            break;
    }
    return entries;
}

std::vector<PresetEntry> partEntries(PartList list)
{
    std::vector<PresetEntry> entries;
    for (const PackPreset& preset : packPresets())
        entries.push_back(partEntry(list, preset, &packPart));
    for (const CameraPreset& preset : cameraPresets())
        entries.push_back(partEntry(list, preset, &cameraPart));
    return entries;
}

}  // namespace stillbay::ui
