// SPDX-License-Identifier: MIT
#include "core/setup/text.h"

#include "core/base/format.h"
#include "core/setup/size_limit.h"
#include "core/setup/wording.h"
#include "tests/setup/number_walk.h"
#include "tests/setup/setup_text.h"

#include <cmath>
#include <functional>
#include <limits>
#include <set>

namespace stillbay {
namespace {

using test::expectStable;
using test::faultOf;
using test::faultOfJson;
using test::Json;
using test::readFile;
using test::sampleJson;
using Pointer = Json::json_pointer;

const std::filesystem::path kData = STILLBAY_SETUP_DATA_DIR;

LoadedSetup load(const Json& root)
{
    const auto loaded = readSetup(root.dump());
    EXPECT_TRUE(loaded) << english(loaded.error().what) << ": " << loaded.error().where;
    return loaded.value_or(LoadedSetup{});
}

Json with(const std::string& pointer, const Json& value)
{
    Json root = sampleJson();
    root[Pointer(pointer)] = value;
    return root;
}

Json without(const std::string& parent, const std::string& key)
{
    Json root = sampleJson();
    EXPECT_EQ(root[Pointer(parent)].erase(key), 1U) << parent << '/' << key;
    return root;
}

void expectReadFault(const Error& fault, const std::string& where, const std::string& what)
{
    EXPECT_EQ(fault.code, Errc::BadInput);
    EXPECT_EQ(fault.where, where);
    EXPECT_EQ(english(fault.what), what);
}

// Reading: each key lands in its own member.

TEST(ReadSetup, PutsEveryKeyWhereItBelongs)
{
    const auto loaded = readSetup(readFile(kData / "every_key.stillbay"));
    ASSERT_TRUE(loaded) << english(loaded.error().what) << ": " << loaded.error().where;
    EXPECT_TRUE(loaded->warnings.empty());

    const TubeKind keptTube{7, 4, 45, std::nullopt, 1.35, 0.14, 1130, 1.8, {}};
    const Mounts keptMounts{24,
                            std::nullopt,
                            Ends::Clamped,
                            {{{72, 40, -32}, 0, 0, Triple{92, 60, -25}, 25, {}, {}}},
                            {}};
    stillbay::Setup expected;
    expected.name = "Every key";
    expected.notes = "Invented; each key holds a number of its own, none its default.";
    expected.airframe = {{{"deck", 181.25, {1, -2.5, 3}, {161, 121, 31}, {}}},
                         {15, 13, 1.5, 530, 11, 0.8, 0.02, 900, {}},
                         {{46, 61, 191, 4, 6, {}}, {226, 62, 192, -5, {}, {}}},
                         {}};
    expected.drive = {{890, 111, 0.7, 63, 26, 29, 27, {}},
                      {11, 4.6, 3, 14, 0.12, 0.047, 47000, 34, {}},
                      {5, 4.1, 3.4, 21, {}},
                      5,
                      {0.04, 0.02, 0.005},
                      {{0.1, 0.05}, {0.9, 0.8}},
                      {}};
    expected.bay = {{{"tray", 62, {11, 12, -30}, {211, 71, 9}, {}}}, 9, {}};
    expected.camera = {{111, 6, -43}, 20, 2704, 1520, 81, 48, 15, 1.75, Lens::Fisheye, {}};
    expected.tube = {9, 6, 55, 2.75, 1.3, 0.13, 1140, 1.7, {}};
    expected.mounts = {
        22, 1.18, Ends::Hinged, {{{71, 39, -31}, 47, 15, std::nullopt, 23, 1.21, {}}}, {}};
    expected.flight = {1.1, {0.3, 0.65}, {{0.4, 0.47, Seen::Bad, "third flight", {}}}, {}};
    expected.limits = {0.35, 1.1, {}};
    expected.sources = {
        {"tube.youngs_modulus_mpa",
         Origin::Measured,
         0.05,
         "hang test, two masses",
         "2026-05-01",
         {}},
        {"drive.propeller.power_coefficient", Origin::Label, std::nullopt, "", "", {}}};
    expected.recordings = {{"recordings/bay plucked.csv",
                            RecordingKind::Sweep,
                            1600,
                            1.5,
                            8.25,
                            2,
                            0.45,
                            Triple{81, -7, -52},
                            3.5,
                            "-y:x:z",
                            {{"a z", ColumnRole::Acceleration, "g", {}}},
                            {}}};
    expected.tunes = {
        {"drilled once", "2026-05-01T10:00:00Z", "holes kept", {keptTube, keptMounts, {}}}};
    EXPECT_EQ(loaded->setup, expected);
}

TEST(ReadSetup, GivesMissingOptionalKeysTheirDefaults)
{
    Json root = sampleJson();
    root.erase("flight");
    root.erase("limits");
    root.erase("tunes");
    root.erase("notes");
    root["camera"].erase("tilt_down_deg");
    root["airframe"]["arm"].erase("wall_mm");
    root["drive"].erase("unbalance_g_mm");
    root["drive"].erase("blade_pass_thrust_fraction");
    root["drive"]["propeller"].erase("thrust_coefficient");
    root["mounts"].erase("ends");
    root["camera"].erase("lens");
    const stillbay::Setup setup = load(root).setup;
    EXPECT_EQ(setup.flight, Flight{});
    EXPECT_EQ(setup.limits, Limits{});
    EXPECT_TRUE(setup.tunes.empty());
    EXPECT_EQ(setup.notes, "");
    EXPECT_EQ(setup.camera.tilt_down_deg, 0.0);
    EXPECT_EQ(setup.airframe.arm.wall_mm, std::nullopt);
    EXPECT_EQ(setup.drive.unbalance_g_mm, 4.0);
    EXPECT_EQ(setup.drive.blade_pass_thrust_fraction, (std::vector{0.03, 0.01}));
    EXPECT_EQ(setup.drive.propeller.thrust_coefficient, std::nullopt);
    EXPECT_EQ(setup.mounts.ends, Ends::Clamped);
    EXPECT_EQ(setup.camera.lens, Lens::Rectilinear);
}

TEST(ReadSetup, NamesMissingRequiredKeys)
{
    expectReadFault(faultOfJson(without("/bay/parts/1", "mass_g")), "bay.parts[1].mass_g",
                    "Mass is missing, needed: a number from 0.1 to 20000 g");
    expectReadFault(faultOfJson(without("/camera", "width_px")), "camera.width_px",
                    "Picture width is missing, needed: a whole number from 16 to 20000 px");
    expectReadFault(faultOfJson(without("/mounts/points/2", "azimuth_deg")),
                    "mounts.points[2].azimuth_deg",
                    "Direction is missing, needed: a number from -360 to 360°");
    expectReadFault(faultOfJson(without("", "tube")), "tube.outer_diameter_mm",
                    "Outer diameter is missing, needed: a number from 0.5 to 100 mm");
    expectReadFault(faultOfJson(without("/airframe", "arms")), "airframe.arms",
                    "The list of arms is missing, needed: a list of 2 to 16 entries");
    expectReadFault(faultOfJson(without("/mounts", "stretch")), "mounts.stretch",
                    "Stretch is missing, allowed 0.7 to 3");
}

TEST(ReadSetup, NamesWrongTypes)
{
    expectReadFault(faultOfJson(with("/bay/parts/1/mass_g", "180")), "bay.parts[1].mass_g",
                    "Mass is \"180\", must be a number from 0.1 to 20000 g");
    expectReadFault(faultOfJson(with("/tube/bore_mm", nullptr)), "tube.bore_mm",
                    "Bore is null, must be a number from 0 to 99 mm");
    expectReadFault(faultOfJson(with("/tube/youngs_modulus_mpa", true)), "tube.youngs_modulus_mpa",
                    "Young's modulus is true, must be null or a number from 0.01 to 200 MPa");
    expectReadFault(faultOfJson(with("/drive/battery/cells", 4.5)), "drive.battery.cells",
                    "Cells in series is 4.5, must be a whole number from 1 to 24");
    expectReadFault(faultOfJson(with("/drive/battery/cells", 1e300)), "drive.battery.cells",
                    "Cells in series is 1e+300, must be a whole number from 1 to 24");
    expectReadFault(faultOfJson(with("/camera/centre_mm", Json::array({1, 2}))), "camera.centre_mm",
                    "Position is a list of 2, must be a list of 3 numbers from -2000 to 2000 mm");
    expectReadFault(faultOfJson(with("/camera/centre_mm/1", "0")), "camera.centre_mm[1]",
                    "Position is \"0\", must be a number from -2000 to 2000 mm");
    expectReadFault(faultOfJson(with("/drive/blade_pass_thrust_fraction/0", nullptr)),
                    "drive.blade_pass_thrust_fraction[0]",
                    "Blade-pass pulse is null, must be a number from 0 to 1");
    expectReadFault(faultOfJson(with("/flight/cruise_throttle", 0.5)), "flight.cruise_throttle",
                    "Cruise throttle is 0.5, must be a list of 2 numbers from 0 to 1");
    expectReadFault(faultOfJson(with("/name", 7)), "name", "The name is 7, must be text");
    expectReadFault(faultOfJson(with("/mounts/ends", "glued")), "mounts.ends",
                    "Ends is \"glued\", allowed \"clamped\" or \"hinged\"");
    expectReadFault(faultOfJson(with("/camera/lens", "anamorphic")), "camera.lens",
                    "Lens is \"anamorphic\", allowed \"rectilinear\" or \"fisheye\"");
    for (const Json& bad :
         {Json(nullptr), Json(1), Json(Json::array({"fisheye"})), Json("Fisheye")})
        EXPECT_EQ(faultOfJson(with("/camera/lens", bad)).where, "camera.lens") << bad;
    expectReadFault(faultOfJson(with("/tube", Json::array())), "tube",
                    "Value is a list of 0, must be an object");
    expectReadFault(faultOfJson(with("/airframe/arms", Json::object())), "airframe.arms",
                    "The list of arms is an object, must be a list of 2 to 16 entries");
    expectReadFault(faultOfJson(with("/bay/parts/0", nullptr)), "bay.parts[0]",
                    "Value is null, must be an object");
    expectReadFault(faultOfJson(with("/tunes", nullptr)), "tunes",
                    "The list of kept tunes is null, must be a list of 0 to 200 entries");
}

TEST(ReadSetup, TakesWholeNumbersWrittenWithAPoint)
{
    EXPECT_EQ(load(with("/drive/battery/cells", 4.0)).setup.drive.battery.cells, 4);
}

TEST(ReadSetup, RefusesAPointWithHoleAndAngles)
{
    Json root = test::sampleJson("quarry");
    root["mounts"]["points"][1]["azimuth_deg"] = 10;
    expectReadFault(faultOfJson(root), "mounts.points[1].azimuth_deg",
                    "Direction stands beside an airframe hole: a tube has a hole or two angles");
}

TEST(ReadSetup, LeavesValuesOutOfRangeToTheRules)
{
    expectReadFault(faultOfJson(with("/bay/parts/1/mass_g", 0)), "bay.parts[1].mass_g",
                    "Mass is 0 g, allowed 0.1 to 20000 g");
    expectReadFault(faultOfJson(with("/tube/bore_mm", 1e300)), "tube.bore_mm",
                    "Bore is 1e+300 mm, allowed 0 to 99 mm");
    expectReadFault(faultOfJson(with("/mounts/points", Json::array())), "mounts.points",
                    "The list of tubes has 0 entries, allowed 1 to 32");
}

/// "bay.parts[1].mass_g" as a JSON pointer.
Pointer pointerTo(const std::string& path)
{
    std::string pointer(1, '/');
    for (const char c : path)
        if (c == '.' || c == '[')
            pointer += '/';
        else if (c != ']')
            pointer += c;
    return Pointer(pointer);
}

TEST(ReadSetup, RefusesEveryNumberOutsideItsRangeOrOfAWrongType)
{
    const Json root = Json::parse(readFile(kData / "every_key.stillbay"));
    stillbay::Setup setup = load(root).setup;
    constexpr double kInfinity = std::numeric_limits<double>::infinity();
    std::set<std::string> paths;
    test::forEachNumber(setup, [&](const test::NumberPlace& place) {
        const Pointer pointer = pointerTo(place.path);
        if (!root.contains(pointer))  // a drilled point's angles are not in the file
            return;
        paths.insert(place.path);
        for (const Json& bad :
             {Json(std::nextafter(place.min, -kInfinity)),
              Json(std::nextafter(place.max, kInfinity)), Json(1e300), Json(-1e300), Json("1"),
              Json(true), Json::array(), Json::object()}) {
            Json changed = root;
            changed[pointer] = bad;
            const Error fault = faultOfJson(changed);
            EXPECT_EQ(fault.where, place.path) << bad;
            EXPECT_EQ(english(fault.what).find(place.label + " is "), 0U) << english(fault.what);
            EXPECT_NE(english(fault.what).find(toText(place.max)), std::string::npos)
                << english(fault.what);
        }
    });
    EXPECT_GT(paths.size(), 80U);
}

TEST(ReadSetup, TakesOnlyACurveOfPairs)
{
    EXPECT_TRUE(load(with("/drive/throttle_curve", nullptr)).setup.drive.throttle_curve.empty());
    EXPECT_TRUE(
        load(with("/drive/throttle_curve", Json::array())).setup.drive.throttle_curve.empty());
    expectReadFault(faultOfJson(with("/drive/throttle_curve", 0.5)), "drive.throttle_curve",
                    "The throttle curve is 0.5, must be a list of 2 to 33 pairs");
    expectReadFault(faultOfJson(with("/drive/throttle_curve", Json({{0, 0}, {1, "1"}}))),
                    "drive.throttle_curve[1]",
                    "The throttle curve is a list of 2, must be a list of 2 numbers from 0 to 1");
    expectReadFault(faultOfJson(with("/drive/throttle_curve", Json::array({Json({0, 0})}))),
                    "drive.throttle_curve", "The throttle curve has 1 entry, allowed 2 to 33");
    expectReadFault(
        faultOfJson(with("/flight/notes", Json::array({{{"from", 0}, {"to", 1}, {"seen", "so"}}}))),
        "flight.notes[0].seen", "What was seen is \"so\", allowed \"clean\", \"faint\" or \"bad\"");
}

// Format and version.

TEST(ReadSetup, WantsItsOwnFormat)
{
    const std::string missing =
        "The file is no Stillbay setup: its \"format\" is not "
        "\"stillbay-setup\"";
    expectReadFault(faultOf("{}"), "", missing);
    expectReadFault(faultOf("[1, 2]"), "", missing);
    expectReadFault(faultOf("null"), "", missing);
    expectReadFault(faultOfJson(with("/format", "stillbay-report")), "format",
                    "Format is \"stillbay-report\", must be \"stillbay-setup\"");
    expectReadFault(faultOfJson(with("/format", 1)), "format",
                    "Format is 1, must be \"stillbay-setup\"");
}

TEST(ReadSetup, RefusesNewerVersionsPolitely)
{
    expectReadFault(faultOfJson(with("/version", 2)), "version",
                    "Version is 2, written by a newer Stillbay; this one reads versions 0 to 1");
    for (const Json& newer : {Json(18446744073709551615ULL), Json(2.0), Json(1e30)})
        EXPECT_NE(english(faultOfJson(with("/version", newer)).what).find("newer"),
                  std::string::npos);
}

// Oracle: docs/setup-file.md: "Whole numbers may be written 4 or 4.0."
TEST(ReadSetup, TakesAVersionWithAPoint)
{
    EXPECT_EQ(load(with("/version", 1.0)).setup, sampleSetup());
    EXPECT_EQ(load(with("/version", 0.0)).warnings.at(0).code, "migrated");
}

TEST(ReadSetup, RefusesVersionsThatAreNone)
{
    expectReadFault(faultOfJson(without("", "version")), "version",
                    "Version is missing, allowed 0 to 1");
    for (const Json& bad : {Json(-1), Json(1.5), Json("1"), Json(nullptr), Json(-1.0)})
        expectReadFault(
            faultOfJson(with("/version", bad)), "version",
            std::string("Version is ").append(bad.dump()) + ", must be a whole number from 0 to 1");
}

TEST(ReadSetup, MigratesVersion0)
{
    const auto loaded = readSetup(readFile(kData / "version0.stillbay"));
    ASSERT_TRUE(loaded) << english(loaded.error().what) << ": " << loaded.error().where;
    ASSERT_EQ(loaded->warnings.size(), 1U);
    EXPECT_EQ(loaded->warnings[0].code, "migrated");
    EXPECT_EQ(loaded->setup.bay.travel_mm, 7.5);
    EXPECT_EQ(loaded->setup.drive.motor.kv_rpm_per_v, 1150.0);
    EXPECT_EQ(loaded->setup.tube.hardness_shore_a, 45.0);
    EXPECT_EQ(loaded->setup.tunes.at(0).design.tube.hardness_shore_a, 35.0);
    EXPECT_TRUE(loaded->setup.extras.empty());
    EXPECT_NE(writeSetup(loaded->setup)->find("\"version\": 1,"), std::string::npos);
    expectStable(loaded->setup);
}

TEST(ReadSetup, KeepsAnOldKeyThatHasNoPlaceLeft)
{
    Json root = with("/version", 0);
    root["tube"]["shore_a"] = 33;
    const LoadedSetup loaded = load(root);
    EXPECT_EQ(loaded.setup.tube.hardness_shore_a, 60.0);
    EXPECT_EQ(loaded.setup.tube.extras, (Extras{{"shore_a", "33"}}));
}

TEST(ReadSetup, OldNamesAreUnknownInTodaysVersion)
{
    Json root = sampleJson();
    root["travel_mm"] = 3;
    const LoadedSetup loaded = load(root);
    EXPECT_EQ(loaded.setup.bay.travel_mm, 8.0);
    EXPECT_EQ(loaded.setup.extras, (Extras{{"travel_mm", "3"}}));
}

// Unknown keys.

TEST(ReadSetup, KeepsUnknownKeysAndNamesThem)
{
    Json root = sampleJson();
    root["colour"] = "grün";
    root["bay"]["parts"][1]["serial"] = Json::parse(R"([1, {"b": null}, "x\n", 0.1])");
    root["mounts"]["points"][0]["torque_nm"] = 0.4;
    const LoadedSetup loaded = load(root);
    ASSERT_EQ(loaded.warnings.size(), 1U);
    EXPECT_EQ(loaded.warnings[0].code, "unknown-key");
    EXPECT_EQ(english(loaded.warnings[0].text),
              "Unknown keys kept but not used: bay.parts[1].serial, "
              "mounts.points[0].torque_nm, colour.");

    const Json saved = Json::parse(writeSetup(loaded.setup).value());
    EXPECT_EQ(saved["colour"], root["colour"]);
    EXPECT_EQ(saved["bay"]["parts"][1]["serial"], root["bay"]["parts"][1]["serial"]);
    EXPECT_EQ(saved["mounts"]["points"][0]["torque_nm"], root["mounts"]["points"][0]["torque_nm"]);
    expectStable(loaded.setup);
}

TEST(ReadSetup, CountsUnknownKeysBeyondTheFirstFew)
{
    Json root = sampleJson();
    for (int i = 0; i < 13; ++i)
        root[std::string("x").append(std::to_string(i))] = i;
    const std::string text = english(load(root).warnings.at(0).text);
    EXPECT_NE(text.find("x9 and 3 more."), std::string::npos) << text;
}

TEST(ReadSetup, UnknownKeysSurviveInEveryObject)
{
    Json root = Json::parse(readFile(kData / "every_key.stillbay"));
    const Json flat = root.flatten();
    int objects = 0;
    const std::function<void(Json&)> mark = [&](Json& node) {
        for (Json& child : node)
            if (child.is_structured())
                mark(child);
        if (node.is_object() && &node != &root["sources"])  // each of its keys is a number's path
            node["x-mark"] = ++objects;
    };
    mark(root);
    const LoadedSetup loaded = load(root);
    EXPECT_GT(objects, 18);
    EXPECT_EQ(Json::parse(writeSetup(loaded.setup).value()), root);
}

// Recordings.

// Oracle: docs/setup-file.md. A craft without recordings is saved without the key, as before.
TEST(ReadSetup, TakesRecordingsAndLeavesThemOutWhereThereAreNone)
{
    EXPECT_TRUE(load(sampleJson()).setup.recordings.empty());
    EXPECT_FALSE(Json::parse(writeSetup(test::sampleSetup()).value()).contains("recordings"));
    const Json bare{{{"file", "a.csv"}}, {{"file", "../b.wav"}, {"kind", "sound"}}};
    const LoadedSetup loaded = load(with("/recordings", bare));
    ASSERT_EQ(loaded.setup.recordings.size(), 2U);
    EXPECT_EQ(loaded.setup.recordings[0], (NamedRecording{.file = "a.csv"}));
    EXPECT_EQ(loaded.setup.recordings[1].kind, RecordingKind::Sound);
    const Json saved = Json::parse(writeSetup(loaded.setup).value());
    EXPECT_EQ(saved["recordings"][0],
              (Json{{"file", "a.csv"}, {"kind", "pluck"}, {"sensor_axes", ""}}));
}

TEST(ReadSetup, RefusesRecordingsThatAreNone)
{
    const auto one = [](const Json& value) {
        return with("/recordings", Json::array({value}));
    };
    expectReadFault(faultOfJson(one({{"file", "a"}, {"kind", "song"}})), "recordings[0].kind",
                    "Kind of recording is \"song\", allowed one of \"pluck\", \"tap\", \"sweep\", "
                    "\"sound\", \"film\"");
    expectReadFault(faultOfJson(one({{"file", ""}})), "recordings[0].file",
                    "A recording names no file");
    expectReadFault(faultOfJson(one({{"file", "a"}, {"from_s", 2}, {"to_s", 2}})),
                    "recordings[0].from_s",
                    "The part of a recording runs from 2 s to 2 s, the first must be the smaller");
    expectReadFault(
        faultOfJson(one({{"file", "a"}, {"columns", Json::array({{{"role", "speed"}}})}})),
        "recordings[0].columns[0].role",
        "Role of a column is \"speed\", allowed one of \"unused\", \"time\", \"acceleration\", "
        "\"angular_rate\", \"sound\", \"throttle\", \"rotor_speed\", \"other\"");
}

// Sources.

// Oracle: docs/setup-file.md. A craft that says nothing of its sources is saved without the key.
TEST(ReadSetup, TakesSourcesAndLeavesThemOutWhereThereAreNone)
{
    EXPECT_TRUE(load(sampleJson()).setup.sources.empty());
    EXPECT_FALSE(Json::parse(writeSetup(test::sampleSetup()).value()).contains("sources"));
    EXPECT_TRUE(load(with("/sources", Json::object())).setup.sources.empty());
    const LoadedSetup loaded =
        load(with("/sources", {{"tube.loss_factor", Json::object()},
                               {"bay.parts[2].mass_g", {{"from", "measured"}, {"spread", 2}}}}));
    EXPECT_TRUE(loaded.warnings.empty());
    EXPECT_EQ(loaded.setup.sources,
              (std::vector<Source>{
                  {.key = "tube.loss_factor"},
                  {.key = "bay.parts[2].mass_g", .from = Origin::Measured, .spread = 2.0}}));
    expectStable(loaded.setup);
}

TEST(ReadSetup, NamesTheFaultOfASource)
{
    const auto source = [](const Json& value) {
        return with("/sources", {{"tube.loss_factor", value}});
    };
    expectReadFault(faultOfJson(source({{"from", "guess"}})), "sources.tube.loss_factor.from",
                    "Origin is \"guess\", allowed \"typical\", \"label\", \"measured\" or "
                    "\"estimated\"");
    for (const double spread : {0.0, -0.1, 2.1})
        expectReadFault(faultOfJson(source({{"spread", spread}})),
                        "sources.tube.loss_factor.spread",
                        "Spread is " + toText(spread) + ", allowed 0.0001 to 2");
    expectReadFault(faultOfJson(source({{"note", 1}})), "sources.tube.loss_factor.note",
                    "The text of a note is 1, must be text");
    expectReadFault(faultOfJson(source("measured")), "sources.tube.loss_factor",
                    "Value is \"measured\", must be an object");
    expectReadFault(faultOfJson(with("/sources", Json::array())), "sources",
                    "The list of sources is a list of 0, must be an object");
}

// Oracle: docs/setup-file.md. A craft that lost an arm must still open.
TEST(ReadSetup, KeepsSourcesOfUnknownNumbersAndNamesThem)
{
    const Json sources{{"tube.colour", {{"from", "label"}}},
                       {"airframe.arms[9].length_mm", {{"from", "measured"}}},
                       {"camera.lens", {{"from", "label"}}},
                       {"mounts.points[0].anchor_mm", {{"from", "measured"}}},
                       {"mounts.points[0].elevation_deg", {{"from", "measured"}}}};
    const LoadedSetup loaded = load(with("/sources", sources));
    ASSERT_EQ(loaded.warnings.size(), 1U);
    EXPECT_EQ(english(loaded.warnings[0].text),
              "Unknown keys kept but not used: sources.tube.colour, "
              "sources.airframe.arms[9].length_mm, sources.camera.lens, "
              "sources.mounts.points[0].anchor_mm.");
    EXPECT_EQ(loaded.setup.sources.size(), 5U);
    expectStable(loaded.setup);
}

// Writing.

TEST(WriteSetup, WritesTheKeysInTheOrderOfTheFormat)
{
    const std::string text = readFile(kData / "every_key.stillbay");
    EXPECT_EQ(writeSetup(readSetup(text).value().setup), text);
}

TEST(WriteSetup, WritesShortestNumbers)
{
    stillbay::Setup setup = test::sampleSetup();
    setup.bay.parts[0].centre_mm = {0.1, -0.0, 1.0 / 3.0};
    setup.airframe.arm.root_stiffness_nm_per_rad = 1e6;
    const std::string text = writeSetup(setup).value();
    EXPECT_NE(text.find("     0.1,\n     0,\n     0.3333333333333333\n"), std::string::npos)
        << text;
    EXPECT_NE(text.find("\"root_stiffness_nm_per_rad\": 1000000\n"), std::string::npos) << text;
    EXPECT_EQ(text.back(), '\n');
    expectStable(setup);
}

TEST(WriteSetup, RefusesWhatCouldNotBeReadAgain)
{
    stillbay::Setup setup = test::sampleSetup();
    setup.tube.loss_factor = std::numeric_limits<double>::quiet_NaN();
    const auto text = writeSetup(setup);
    ASSERT_FALSE(text);
    expectReadFault(text.error(), "tube.loss_factor", "Loss factor is nan, allowed 0 to 2");
}

TEST(WriteSetup, ThrowsOnExtrasThatNoReaderMade)
{
    stillbay::Setup setup = test::sampleSetup();
    setup.extras = {{"name", "1"}};
    EXPECT_THROW(static_cast<void>(writeSetup(setup)), std::logic_error);
    setup.extras = {{"x", "not json"}};
    EXPECT_THROW(static_cast<void>(writeSetup(setup)), std::logic_error);
}

// A list of so many numbers under an unknown key, as dense as JSON can be.
std::string sampleWithNumbers(std::string_view number, std::size_t bytes)
{
    std::string list;
    while (list.size() < bytes)
        list.append(number).push_back(',');
    list.pop_back();
    std::string text = sampleJson().dump();
    text.pop_back();
    return text + ",\"log\":[" + list + "]}";
}

// Oracle: definition. One zero a line is three times as large.
TEST(WriteSetup, WritesOnOneLineWhatWouldBeTooLargeIndented)
{
    const std::string text = sampleWithNumbers("0", 6U << 20U);
    const auto loaded = readSetup(text);
    ASSERT_TRUE(loaded) << english(loaded.error().what);
    ASSERT_EQ(loaded->warnings.size(), 1U);
    EXPECT_EQ(loaded->warnings[0].code, "unknown-key");
    const auto written = writeSetup(loaded->setup);
    ASSERT_TRUE(written) << english(written.error().what);
    EXPECT_LE(written->size(), kMaxSetupBytes);
    EXPECT_EQ(std::count(written->begin(), written->end(), '\n'), 1);
    EXPECT_EQ(readSetup(*written).value().setup, loaded->setup);
}

// Oracle: definition. Such numbers take 18 bytes each where they were read from 5.
TEST(WriteSetup, RefusesWhatIsTooLargeEvenSoAndTheReaderSaysItAtOnce)
{
    const auto loaded = readSetup(sampleWithNumbers("1e14", 3U << 20U));
    ASSERT_TRUE(loaded) << english(loaded.error().what);
    ASSERT_EQ(loaded->warnings.size(), 2U);
    EXPECT_EQ(loaded->warnings[1].code, "too-large-to-save");
    EXPECT_EQ(english(loaded->warnings[1].text),
              "This craft cannot be saved: written out it is larger than the 8 MB that a setup "
              "file may have.");
    const auto written = writeSetup(loaded->setup);
    ASSERT_FALSE(written);
    EXPECT_EQ(english(written.error().what),
              "The craft takes 11 MB as text, a setup file may have 8");
}

// Samples.

class Samples : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Setup, Samples, testing::ValuesIn(test::kSamples));

TEST_P(Samples, LoadWithoutAWordAndAreAsSaved)
{
    const std::string text = test::sampleText(GetParam());
    const auto loaded = readSetup(text);
    ASSERT_TRUE(loaded) << english(loaded.error().what) << ": " << loaded.error().where;
    EXPECT_TRUE(loaded->warnings.empty());
    EXPECT_NE(loaded->setup.notes.find("nvented"), std::string::npos);
    EXPECT_EQ(writeSetup(loaded->setup), text);
}

TEST(Samples, CoverThreeFourAndSixArmsAndDrilledHoles)
{
    EXPECT_EQ(test::sampleSetup("saltmarsh").airframe.arms.size(), 3U);
    EXPECT_EQ(test::sampleSetup("reedbed").airframe.arms.size(), 4U);
    EXPECT_EQ(test::sampleSetup("quarry").airframe.arms.size(), 6U);
    EXPECT_FALSE(test::sampleSetup("reedbed").mounts.drilled());
    EXPECT_TRUE(test::sampleSetup("quarry").mounts.drilled());
}

}  // namespace
}  // namespace stillbay
