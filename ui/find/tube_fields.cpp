// SPDX-License-Identifier: MIT
#include "ui/find/tube_fields.h"

#include "core/base/check.h"

#include <algorithm>
#include <string_view>

namespace stillbay::ui {

const Field<TubeKind>& stockField(std::size_t member)
{
    constexpr std::array<std::string_view, 3> kKeys{"outer_diameter_mm", "bore_mm",
                                                    "hardness_shore_a"};
    const auto fields = fieldsOf<TubeKind>();
    const auto field = std::find_if(
        fields.begin(), fields.end(),
        [key = kKeys.at(member)](const auto& candidate) { return candidate.key == key; });
    check(field != fields.end(), "tube stock: a key of the field table");
    return *field;
}

}  // namespace stillbay::ui
