// SPDX-License-Identifier: MIT
#include "core/setup/sources.h"

#include "core/setup/bay_mass.h"
#include "tests/setup/setup_text.h"

#include <string>
#include <vector>

namespace stillbay {
namespace {

using test::sampleSetup;

Source from(const char* key, Origin origin)
{
    return {.key = key, .from = origin, .spread = {}, .note = {}, .date = {}, .extras = {}};
}

// Oracle: by hand from the field table. A motor has 5 numbers that are always given and 2 that may
// be left out, a pack 4, the drive itself 2.
TEST(OwnNumbers, CountWhatIsGivenPlaceByPlace)
{
    stillbay::Setup setup = sampleSetup();
    setup.sources.clear();
    setup.drive.motor.diameter_mm = 28.0;
    setup.drive.motor.height_mm.reset();
    setup.drive.blade_pass_thrust_fraction = {0.03, 0.01};
    const std::vector<std::string> places{"drive.motor", "drive", "drive.battery", "tube.nothing"};
    std::vector<OwnNumbers> counts = ownNumbers(setup, places);
    EXPECT_EQ(counts[0], (OwnNumbers{6, 6}));
    EXPECT_EQ(counts[2], (OwnNumbers{4, 4}));
    EXPECT_EQ(counts[3], (OwnNumbers{0, 0}));
    setup.sources = {from("drive.motor.mass_g", Origin::Typical),
                     from("drive.motor.height_mm", Origin::Typical),  // left out: does not count
                     from("drive.motor.diameter_mm", Origin::Estimated),
                     from("drive.motor.kv_rpm_per_v", Origin::Label),
                     from("drive.battery.cells", Origin::Measured),
                     from("drive.unbalance_g_mm", Origin::Typical)};
    counts = ownNumbers(setup, places);
    EXPECT_EQ(counts[0], (OwnNumbers{6, 4}));
    EXPECT_EQ(counts[2], (OwnNumbers{4, 4}));
    EXPECT_EQ(counts[1].own + 1, counts[1].given);
}

// "airframe.arm" is not the beginning of "airframe.arms", and the drive's own numbers are those of
// no smaller place.
TEST(OwnNumbers, CountForTheSmallestPlaceThatHoldsThem)
{
    stillbay::Setup setup = sampleSetup();
    setup.airframe.arm.wall_mm.reset();
    setup.airframe.arm.root_stiffness_nm_per_rad.reset();
    setup.drive.propeller.thrust_coefficient.reset();
    const std::vector<std::string> places{"airframe.arm", "airframe.arms", "drive",
                                          "drive.motor",  "drive.battery", "drive.propeller"};
    const std::vector<OwnNumbers> counts = ownNumbers(setup, places);
    EXPECT_EQ(counts[0].given, 6u);
    EXPECT_EQ(counts[1].given, 4 * setup.airframe.arms.size());
    EXPECT_EQ(counts[2].given, 2u);
}

TEST(RowSources, GoWithTheirRows)
{
    stillbay::Setup setup = sampleSetup();
    setup.sources = {from("bay.parts[0].mass_g", Origin::Typical),
                     from("bay.parts[2].mass_g", Origin::Label),
                     from("bay.parts[2].size_mm", Origin::Typical),
                     from("bay.parts[12].size_mm", Origin::Typical),
                     from("bay.parts_of_another.mass_g", Origin::Typical),
                     from("airframe.parts[2].mass_g", Origin::Typical)};
    const auto keys = [&] {
        std::vector<std::string> all;
        for (const Source& source : setup.sources)
            all.push_back(source.key);
        return all;
    };
    swapRowSources(setup, "bay.parts", 2, 1);
    EXPECT_EQ(keys(), (std::vector<std::string>{"bay.parts[0].mass_g", "bay.parts[1].mass_g",
                                                "bay.parts[1].size_mm", "bay.parts[12].size_mm",
                                                "bay.parts_of_another.mass_g",
                                                "airframe.parts[2].mass_g"}));
    dropRowSources(setup, "bay.parts", 0);
    EXPECT_EQ(keys(), (std::vector<std::string>{
                          "bay.parts[0].mass_g", "bay.parts[0].size_mm", "bay.parts[11].size_mm",
                          "bay.parts_of_another.mass_g", "airframe.parts[2].mass_g"}));
    EXPECT_EQ(sourceOf(setup, "bay.parts[0].mass_g")->from, Origin::Label);
}

// Oracle: definition. Masses in proportion to within the milligram they are rounded to, and exactly
// the sum that was asked for; skew masses, so that rounding has something to do.
TEST(BayMass, ScalesAllPartsAlike)
{
    Bay bay;
    for (const double mass_g : {0.137, 33.3, 210.049, 7.77})
        bay.parts.push_back({.name = {}, .mass_g = mass_g, .extras = {}});
    const Bay before = bay;
    for (const double whole_g : {263.1, 1000.0, 99.99, 251.256}) {
        setBayMass(bay, whole_g);
        EXPECT_NEAR(bayMass_g(bay), whole_g, 1e-9);
    }
    setBayMass(bay, bayMass_g(before));
    for (std::size_t k = 0; k < bay.parts.size(); ++k)
        EXPECT_NEAR(bay.parts[k].mass_g, before.parts[k].mass_g, 4 * 0.0005 * 5);
    Bay empty;
    setBayMass(empty, 100.0);
    EXPECT_EQ(bayMass_g(empty), 0.0);
}

}  // namespace
}  // namespace stillbay
