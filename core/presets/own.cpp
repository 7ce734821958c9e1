// SPDX-License-Identifier: MIT
#include "core/presets/own.h"

#include "core/setup/from_json.h"
#include "core/setup/sources.h"
#include "core/setup/strict_json.h"
#include "core/setup/to_json.h"
#include "core/setup/validate.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

constexpr const char* kPresetFormat = "stillbay-presets";
constexpr int kPresetVersion = 1;

struct KindWords {
    const char* word;     ///< in the file of presets
    const char* path;     ///< in a craft
    const char* pointer;  ///< the same as a JSON pointer
};

constexpr std::array<KindWords, std::variant_size_v<OwnPreset::Object>> kKinds{{
    {"arm", "airframe.arm", "/airframe/arm"},
    {"motor", "drive.motor", "/drive/motor"},
    {"propeller", "drive.propeller", "/drive/propeller"},
    {"battery", "drive.battery", "/drive/battery"},
    {"camera", "camera", "/camera"},
    {"tube", "tube", "/tube"},
}};

const KindWords& wordsOf(PresetKind kind)
{
    return kKinds.at(static_cast<std::size_t>(kind));
}

bool isInside(std::string_view object, std::string_view key)
{
    return key.size() > object.size() && key.starts_with(object) && key[object.size()] == '.';
}

OwnPreset::Object objectOf(const Setup& setup, PresetKind kind)
{
    switch (kind) {
        case PresetKind::Arm:
            return setup.airframe.arm;
        case PresetKind::Motor:
            return setup.drive.motor;
        case PresetKind::Propeller:
            return setup.drive.propeller;
        case PresetKind::Pack:
            return setup.drive.battery;
        case PresetKind::Camera:
            return setup.camera;
        case PresetKind::Tube:
            break;
    }
    return setup.tube;
}

void put(Setup& setup, const ArmSection& arm)
{
    setup.airframe.arm = arm;
}

void put(Setup& setup, const Motor& motor)
{
    const double height_mm = setup.drive.motor.height_above_arm_mm;
    setup.drive.motor = motor;
    setup.drive.motor.height_above_arm_mm = height_mm;
}

void put(Setup& setup, const Propeller& propeller)
{
    const std::optional<double> height_mm = setup.drive.propeller.height_above_arm_mm;
    setup.drive.propeller = propeller;
    setup.drive.propeller.height_above_arm_mm = height_mm;
}

void put(Setup& setup, const Battery& battery)
{
    setup.drive.battery = battery;
}

void put(Setup& setup, const Camera& camera)
{
    const Camera before = setup.camera;
    setup.camera = camera;
    setup.camera.centre_mm = before.centre_mm;
    setup.camera.tilt_down_deg = before.tilt_down_deg;
}

void put(Setup& setup, const TubeKind& tube)
{
    setup.tube = tube;
}

/// What of an object belongs to the craft, not to the thing.
bool isOfTheCraft(std::string_view key)
{
    return key.ends_with(".height_above_arm_mm") || key == "camera.centre_mm" ||
           key == "camera.tilt_down_deg";
}

/// The smallest craft that may be saved; a preset's object is read and written inside of it.
Setup carrier()
{
    Setup setup;
    setup.airframe.parts.resize(1);
    setup.airframe.arms.resize(2);
    setup.bay.parts.resize(1);
    setup.mounts.points.resize(1);
    return setup;
}

Json jsonOf(const OwnPreset& preset)
{
    Setup setup = carrier();
    std::visit([&](const auto& object) { put(setup, object); }, preset.object);
    setup.sources = preset.sources;
    const Json craft = setupToJson(setup);
    const KindWords& words = wordsOf(preset.kind());
    Json json{{"kind", words.word},
              {"name", preset.name},
              {"values", craft.at(Json::json_pointer(words.pointer))}};
    if (craft.contains("sources"))
        json["sources"] = craft.at("sources");
    return json;
}

tl::unexpected<Error> refused(Phrase what, std::string where)
{
    return fail(Errc::BadInput, std::move(what), std::move(where));
}

Phrase noPreset()
{
    return phrase("This is no preset of a known kind with a name and values");
}

Result<OwnPreset> presetOf(const Json& json, const std::string& where)
{
    const auto isText = [&](const char* key) {
        return json.contains(key) && json[key].is_string();
    };
    if (!json.is_object() || !isText("kind") || !isText("name") || !json.contains("values"))
        return refused(noPreset(), where);
    const auto& word = json["kind"].get_ref<const std::string&>();
    const auto* const words = std::find_if(
        kKinds.begin(), kKinds.end(), [&](const KindWords& kind) { return kind.word == word; });
    if (words == kKinds.end() || json["name"].get_ref<const std::string&>().empty())
        return refused(noPreset(), where);

    Json craft = setupToJson(carrier());
    craft[Json::json_pointer(words->pointer)] = json["values"];
    craft["name"] = json["name"];
    if (json.contains("sources"))
        craft["sources"] = json["sources"];
    std::vector<Warning> unheard;
    Result<Setup> setup = setupFromJson(craft, unheard);
    if (!setup)
        return refused(std::move(setup.error().what), where + ": " + setup.error().where);
    if (Result<void> valid = validate(*setup); !valid)
        return refused(std::move(valid.error().what), where + ": " + valid.error().where);
    return ownPreset(*setup, static_cast<PresetKind>(words - kKinds.begin()), setup->name);
}

}  // namespace

const char* pathOf(PresetKind kind)
{
    return wordsOf(kind).path;
}

OwnPreset ownPreset(const Setup& setup, PresetKind kind, std::string name)
{
    Setup bare = carrier();
    std::visit([&](const auto& object) { put(bare, object); }, objectOf(setup, kind));
    OwnPreset preset{std::move(name), objectOf(bare, kind), {}};
    for (const Source& source : setup.sources)
        if (isInside(pathOf(kind), source.key) && !isOfTheCraft(source.key))
            preset.sources.push_back(source);
    return preset;
}

Setup withOwn(Setup setup, const OwnPreset& preset)
{
    std::visit([&](const auto& object) { put(setup, object); }, preset.object);
    std::erase_if(setup.sources, [&](const Source& source) {
        return isInside(pathOf(preset.kind()), source.key) && !isOfTheCraft(source.key);
    });
    for (const Source& source : preset.sources)
        putSource(setup, source);
    return setup;
}

std::string writeOwnPresets(const std::vector<OwnPreset>& presets)
{
    Json list = Json::array();
    for (const OwnPreset& preset : presets)
        list.push_back(jsonOf(preset));
    const Json root{
        {"format", kPresetFormat}, {"version", kPresetVersion}, {"presets", std::move(list)}};
    return root.dump(1) + '\n';
}

Result<std::vector<OwnPreset>> readOwnPresets(std::string_view text)
{
    const Result<Json> root = parseStrictJson(text);
    if (!root)
        return tl::unexpected<Error>(root.error());
    if (!root->is_object() || root->value("format", Json()) != kPresetFormat ||
        root->value("version", Json()) != kPresetVersion || !root->contains("presets") ||
        !root->at("presets").is_array())
        return refused(phrase("The file is no list of presets that this program reads"), {});
    std::vector<OwnPreset> presets;
    for (const Json& json : root->at("presets")) {
        const std::string where = joinPath("presets", presets.size());
        Result<OwnPreset> preset = presetOf(json, where);
        if (!preset)
            return tl::unexpected<Error>(std::move(preset.error()));
        if (std::any_of(presets.begin(), presets.end(), [&](const OwnPreset& other) {
                return other.kind() == preset->kind() && other.name == preset->name;
            }))
            return refused(phrase("Two presets of a kind have the same name"), where);
        presets.push_back(*std::move(preset));
    }
    return presets;
}

}  // namespace stillbay
