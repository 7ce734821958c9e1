// SPDX-License-Identifier: MIT
#include "core/setup/migrate.h"

#include "core/setup/wording.h"

#include <cmath>
#include <string>
#include <utility>

namespace stillbay {
namespace {

/// The object at a key, or nothing.
Json* findObject(Json& owner, const char* key)
{
    const auto found = owner.find(key);
    return found != owner.end() && found->is_object() ? &*found : nullptr;
}

/// Moves a member to its new place. When both exist, the new one counts and the old one stays
/// behind as an unknown key.
void moveMember(Json& from, const char* oldKey, Json& to, const char* newKey)
{
    const auto found = from.find(oldKey);
    if (found == from.end() || to.contains(newKey))
        return;
    Json value = std::move(*found);
    to[newKey] = std::move(value);  // before erasing, which shifts what lies behind the old key
    from.erase(oldKey);
}

void renameHardness(Json& owner)
{
    if (Json* tube = findObject(owner, "tube"))
        moveMember(*tube, "shore_a", *tube, "hardness_shore_a");
}

/// Version 0, the drafts: hardness, speed constant and travel had other names or places.
void migrateFrom0(Json& root)
{
    renameHardness(root);
    if (const auto tunes = root.find("tunes"); tunes != root.end() && tunes->is_array())
        for (Json& tune : *tunes)
            if (tune.is_object())
                renameHardness(tune);
    if (Json* drive = findObject(root, "drive"))
        if (Json* motor = findObject(*drive, "motor"))
            moveMember(*motor, "kv", *motor, "kv_rpm_per_v");
    if (Json* bay = findObject(root, "bay"))
        moveMember(root, "travel_mm", *bay, "travel_mm");
}

Result<int> versionOf(const Json& root)
{
    const Phrase range = rangeText({0, kSetupVersion});
    const auto version = root.find("version");
    if (version == root.end())
        return fail(Errc::BadInput, phrase("Version is missing, allowed %1", range), "version");
    const double number = version->is_number() ? version->get<double>() : -1.0;
    if (number < 0 || number != std::floor(number))
        return fail(Errc::BadInput,
                    phrase("Version is %1, must be a whole number from %2",
                           shorten(version->dump()), range),
                    "version");
    if (number > kSetupVersion)
        return fail(Errc::BadInput,
                    phrase("Version is %1, written by a newer Stillbay; this one reads versions %2",
                           version->dump(), range),
                    "version");
    return static_cast<int>(number);
}

}  // namespace

Result<void> migrate(Json& root, std::vector<Warning>& warnings)
{
    const std::string wanted = std::string("\"") + kSetupFormat + '"';
    if (!root.is_object() || !root.contains("format"))
        return fail(Errc::BadInput,
                    phrase("The file is no Stillbay setup: its \"format\" is not %1", wanted));
    if (root["format"] != kSetupFormat)
        return fail(Errc::BadInput,
                    phrase("Format is %1, must be %2", shorten(root["format"].dump()), wanted),
                    "format");
    const Result<int> version = versionOf(root);
    if (!version)
        return tl::unexpected<Error>(version.error());

    switch (*version) {
        case 0:
            migrateFrom0(root);
            warnings.push_back(
                {"migrated", phrase("The file is of version 0; saving it writes version %1.",
                                    fixed(kSetupVersion, 0))});
            break;
        default:  // today's
            break;
    }
    return {};
}

}  // namespace stillbay
