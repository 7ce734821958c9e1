// SPDX-License-Identifier: MIT
#include "core/presets/plate.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/setup/fields.h"
#include "core/setup/wording.h"

#include <optional>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr double kMostCutOut = 0.95;

const Field<Part>& partField(std::string_view key)
{
    for (const Field<Part>& field : fieldsOf<Part>())
        if (field.key == key)
            return field;
    check(false, "a part has this field");
    return fieldsOf<Part>().front();
}

std::optional<Error> outside(const Field<Part>& field, double value, const char* where)
{
    if (value >= field.min && value <= field.max)  // NaN is outside as well
        return {};
    return Error{Errc::BadInput,
                 outOfRange(field.label, withUnit(exact(value), field.unit), rangeText(field)),
                 where};
}

}  // namespace

Result<Part> platePart(const Plate& plate, const ArmPreset& material)
{
    const Field<Part>& size = partField("size_mm");
    for (const auto& [side_mm, where] : {std::pair{plate.length_mm, "length_mm"},
                                         {plate.width_mm, "width_mm"},
                                         {plate.thickness_mm, "thickness_mm"}})
        if (auto error = outside(size, side_mm, where))
            return tl::unexpected<Error>(*std::move(error));
    if (!(plate.cut_out_share >= 0 && plate.cut_out_share <= kMostCutOut))
        return fail(Errc::BadInput,
                    outOfRange(translatable("Cut-out share"), exact(plate.cut_out_share),
                               rangeText(0, kMostCutOut, "")),
                    "cut_out_share");

    const double volume = plate.length_mm * unit::mm * plate.width_mm * unit::mm *
                          plate.thickness_mm * unit::mm * (1 - plate.cut_out_share);  // [m³]
    const double mass_g = material.density_kg_m3.value * volume / unit::g;
    if (auto error = outside(partField("mass_g"), mass_g, "mass_g"))
        return tl::unexpected<Error>(*std::move(error));
    return Part{.name = plate.name,
                .mass_g = mass_g,
                .centre_mm = plate.centre_mm,
                .size_mm = {plate.length_mm, plate.width_mm, plate.thickness_mm},
                .extras = {}};
}

}  // namespace stillbay
