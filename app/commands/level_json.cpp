// SPDX-License-Identifier: MIT
#include "app/commands/level_json.h"

#include "app/commands/json_numbers.h"
#include "core/base/units.h"
#include "core/setup/mount_layout.h"

namespace stillbay {
namespace {

Json levelRestJson(const Vector3d& shift, const Vector3d& rotation)
{
    return {{"shift_mm", array(shift, [](double x) { return number(x / unit::mm); })},
            {"rotation_deg", array(rotation, [](double x) { return number(x / unit::deg); })}};
}

}  // namespace

Json hangingJson(const Mounts& mounts)
{
    return array(mounts.points, [&](const MountPoint& point) {
        Json tube = Json::object();
        if (!mounts.drilled()) {
            tube["elevation_deg"] = number(point.elevation_deg);
            tube["stretch"] = number(point.stretch.value_or(*mounts.stretch));
        }
        tube["free_length_mm"] = number(freeLength_mm(mounts, point));
        return tube;
    });
}

std::string levelJson(const LevelAnswer& answer)
{
    const Levelled& levelled = answer.levelled;
    Json reason = nullptr;
    if (levelled.why)
        reason = {{"code", std::string(levelFaultCode(levelled.why->fault))},
                  {"text", english(levelled.why->text)}};
    const Json json{
        {"format", "stillbay-level"},
        {"version", 1},
        {"level", !levelled.why},
        {"reason", reason},
        {"free_length_mm", number(levelled.mounts.free_length_mm)},
        {"stretch", number(levelled.mounts.stretch)},
        {"tubes", hangingJson(levelled.mounts)},
        {"rest", levelRestJson(levelled.shift, levelled.rotation)},
        {"present", answer.present ? levelRestJson(answer.present->shift, answer.present->theta)
                                   : Json(nullptr)}};
    return textOf(json);
}

}  // namespace stillbay
