// SPDX-License-Identifier: MIT
#include "core/presets/own.h"

#include "core/presets/apply.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"
#include "tests/setup/setup_text.h"

#include <string>
#include <vector>

namespace stillbay {
namespace {

using test::sampleSetup;

constexpr PresetKind kKinds[] = {PresetKind::Arm,  PresetKind::Motor,  PresetKind::Propeller,
                                 PresetKind::Pack, PresetKind::Camera, PresetKind::Tube};

// A craft with something unusual everywhere.
Setup oddCraft()
{
    stillbay::Setup setup = withMotor(sampleSetup("quarry"), motorPresets()[2]);
    setup.drive.motor.kv_rpm_per_v = 931.5;
    dropSource(setup, "drive.motor.kv_rpm_per_v");
    setup.drive.motor.height_above_arm_mm = 31.0;
    setup.drive.propeller.thrust_coefficient = 0.1037;
    setup.airframe.arm.wall_mm = 1.25;
    setup.airframe.arm.extras = {{"glue", "\"resin\""}};
    setup.camera.lens = Lens::Fisheye;
    setup.camera.tilt_down_deg = 12.0;
    setup.tube.youngs_modulus_mpa = 2.31;
    putSource(setup, {.key = "tube.youngs_modulus_mpa",
                      .from = Origin::Measured,
                      .spread = 0.04,
                      .note = "hang test",
                      .date = "2026-05-01",
                      .extras = {}});
    return setup;
}

std::vector<OwnPreset> allOf(const Setup& setup)
{
    std::vector<OwnPreset> presets;
    for (const PresetKind kind : kKinds)
        presets.push_back(
            ownPreset(setup, kind, std::string("ours, ").append(pathOf(kind)).append(" ä")));
    return presets;
}

TEST(OwnPresets, ReadBackAsTheyWereWritten)
{
    for (const stillbay::Setup& setup : {oddCraft(), sampleSetup()}) {
        const std::vector<OwnPreset> presets = allOf(setup);
        const auto back = readOwnPresets(writeOwnPresets(presets));
        ASSERT_TRUE(back) << english(back.error().what) << ": " << back.error().where;
        EXPECT_EQ(*back, presets);
    }
    EXPECT_TRUE(readOwnPresets(writeOwnPresets({}))->empty());
}

// Into a craft of another kind and back: what belongs to the thing comes along with what is said of
// it, what belongs to the craft stays.
TEST(OwnPresets, FillAnotherCraftAndLeaveItsPlaces)
{
    const stillbay::Setup from = oddCraft();
    const stillbay::Setup before = sampleSetup();
    stillbay::Setup after = before;
    for (const OwnPreset& preset : allOf(from))
        after = withOwn(after, preset);
    EXPECT_TRUE(validate(after));
    EXPECT_EQ(after.airframe.arm, from.airframe.arm);
    EXPECT_EQ(after.airframe.arms, before.airframe.arms);
    EXPECT_EQ(after.drive.battery, from.drive.battery);
    EXPECT_EQ(after.tube, from.tube);
    EXPECT_EQ(after.mounts, before.mounts);
    Motor motor = from.drive.motor;
    motor.height_above_arm_mm = before.drive.motor.height_above_arm_mm;
    EXPECT_EQ(after.drive.motor, motor);
    Camera camera = from.camera;
    camera.centre_mm = before.camera.centre_mm;
    camera.tilt_down_deg = before.camera.tilt_down_deg;
    EXPECT_EQ(after.camera, camera);
    EXPECT_EQ(sourceOf(after, "tube.youngs_modulus_mpa")->from, Origin::Measured);
    EXPECT_TRUE(sourceOf(after, "drive.motor.mass_g"));
    EXPECT_FALSE(sourceOf(after, "drive.motor.kv_rpm_per_v"));  // typed, so nothing is said of it
}

TEST(OwnPresets, WhatWasSaidOfTheThingBeforeIsGone)
{
    stillbay::Setup craft = withTube(sampleSetup(), tubePresets()[5]);
    ASSERT_TRUE(sourceOf(craft, "tube.bore_mm"));
    craft = withOwn(craft, ownPreset(sampleSetup("quarry"), PresetKind::Tube, "shop"));
    EXPECT_FALSE(sourceOf(craft, "tube.bore_mm"));
}

TEST(OwnPresets, AFileThatIsNoneIsRefused)
{
    const std::string good = writeOwnPresets(allOf(oddCraft()));
    const auto changed = [&](const std::string& from, const std::string& to) {
        std::string text = good;
        const std::size_t at = text.find(from);
        EXPECT_NE(at, std::string::npos) << from;
        return text.replace(at, from.size(), to);
    };
    for (const std::string& bad :
         {std::string("[]"), std::string("{"), changed("stillbay-presets", "stillbay-setup"),
          changed("\"version\": 1", "\"version\": 2"),
          changed("\"kind\": \"motor\"", "\"kind\": \"wing\""),
          changed("\"bore_mm\": ", "\"bore_mm\": 100"), changed("\"mass_g\": ", "\"mass\": "),
          changed("\"name\": \"ours, tube ä\"", "\"name\": \"\"")}) {
        const auto read = readOwnPresets(bad);
        ASSERT_FALSE(read) << bad;
        EXPECT_EQ(read.error().code, Errc::BadInput);
        EXPECT_FALSE(english(read.error().what).empty());
    }
    std::vector<OwnPreset> twice = allOf(oddCraft());
    twice.push_back(twice.front());
    EXPECT_FALSE(readOwnPresets(writeOwnPresets(twice)));
    std::vector<OwnPreset> tooLong = allOf(oddCraft());
    tooLong.front().name.assign(201, 'x');
    EXPECT_FALSE(readOwnPresets(writeOwnPresets(tooLong)));
}

// Oracle: the field table; a plate's mass is the only number that is worked out.
TEST(PartsFromPresets, SayWhatIsTypical)
{
    const stillbay::Setup before = sampleSetup();
    for (const PartList list : {PartList::Airframe, PartList::Bay}) {
        stillbay::Setup after = before;
        const std::size_t count = partsOf(after, list).size();
        after = withPart(after, list, packPart(packPresets()[1], "pack", {1, 2, 3}), "a shelf");
        ASSERT_EQ(partsOf(after, list).size(), count + 1);
        EXPECT_EQ(partsOf(after, list).back().mass_g, packPresets()[1].mass_g);
        const std::string path = std::string(pathOf(list)) + "[" + std::to_string(count) + "]";
        EXPECT_EQ(sourceOf(after, path + ".mass_g")->from, Origin::Typical);
        EXPECT_EQ(sourceOf(after, path + ".size_mm")->note, "a shelf");
        EXPECT_FALSE(sourceOf(after, path + ".centre_mm"));
        EXPECT_TRUE(validate(after));
        EXPECT_TRUE(sourcesOfNothing(after).empty());
        after = withPlate(before, list, packPart(packPresets()[1], "plate", {}), armPresets()[3]);
        EXPECT_EQ(after.sources.size(), 1U);
        EXPECT_EQ(sourceOf(after, path + ".mass_g")->from, Origin::Estimated);
        EXPECT_EQ(sourceOf(after, path + ".mass_g")->spread, armPresets()[3].density_kg_m3.spread);
    }
}

}  // namespace
}  // namespace stillbay
