// SPDX-License-Identifier: MIT
#include "app/commands/command.h"
#include "app/commands/report.h"
#include "app/commands/report_json.h"
#include "core/assess/assess.h"
#include "core/base/format.h"
#include "core/response/at_throttle.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <sstream>

namespace stillbay {
namespace {

using Json = nlohmann::json;

constexpr const char* kReedbed = STILLBAY_REFERENCE_DIR "/reedbed.stillbay";

// Not a part of the report.
constexpr std::array kOtherwise{"note", "throttle_rigid_airframe"};

// As docs/promises.md has it.
constexpr double kTolerance = 1e-5;

Json expected()
{
    return Json::parse(std::ifstream(STILLBAY_REFERENCE_DIR "/reedbed.expected.json"));
}

Json reported(std::string_view airframe)
{
    std::ostringstream out, err;
    const std::vector<std::string_view> arguments{kReedbed,      "--json",      "--throttle",
                                                  "0.1:1:0.025", "--frequency", "5:300:5",
                                                  "--airframe",  airframe};
    EXPECT_EQ(runReport(arguments, out, err), 0) << err.str();
    return Json::parse(out.str());
}

double largest(const Json& numbers)
{
    double size = 0;
    for (const Json& entry : numbers.flatten())
        size = std::max(size, std::abs(entry.get<double>()));
    return size;
}

// Every number of `want` stands in `have`; vectors are compared against their largest entry.
int compare(const Json& want, const Json& have, const std::string& path, double scale = 0)
{
    int count = 0;
    if (want.is_object()) {
        for (const auto& [key, value] : want.items())
            if (std::find(kOtherwise.begin(), kOtherwise.end(), key) == kOtherwise.end())
                count +=
                    compare(value, have.at(key), formatted("%s.%s", path.c_str(), key.c_str()));
    } else if (want.is_array()) {
        EXPECT_EQ(want.size(), have.size()) << path;
        const bool vector = !want.empty() && !want[0].is_object() && want.size() <= 6;
        for (std::size_t i = 0; i < want.size(); ++i)
            count += compare(want[i], have.at(i), formatted("%s[%zu]", path.c_str(), i),
                             vector ? std::max(scale, largest(want)) : scale);
    } else {
        const double value = want.get<double>();
        EXPECT_NEAR(have.get<double>(), value,
                    kTolerance * std::max(std::abs(value), 1e-6 * scale) + 1e-13)
            << path;
        count = 1;
    }
    return count;
}

// Oracle: independent method. The same craft solved by another program on NumPy/SciPy with
// complex-step derivatives of the energies (tests/reference/reedbed.expected.json).
TEST(Reedbed, AgreesWithAnIndependentSolution)
{
    const Json want = expected();
    EXPECT_GT(compare(want, reported("flexible"), ""), 550);
    EXPECT_GT(
        compare(want.at("throttle_rigid_airframe"), reported("rigid").at("throttle"), "rigid"),
        300);
}

Setup referenceCraft()
{
    return loadSetup(kReedbed).value().setup;
}

// Oracle: independent method, by the same other program: energies of the sample's bench modes to
// three digits, heights of its elastic centre to a micrometre.
TEST(Reedbed, SharesItsEnergiesAsInTheIndependentSolution)
{
    const Assessment sample = assess(loadSetup(kReedbed).value().setup).value();
    enum : Eigen::Index { Surge, Sway, Heave, Roll, Pitch, Yaw };
    struct Share {
        std::size_t mode;
        Eigen::Index motion;
        double value;
    };
    for (const auto& [mode, motion, value] :
         {Share{0, Heave, 0.996}, Share{1, Pitch, 0.992}, Share{2, Yaw, 0.972},
          Share{3, Sway, 0.901}, Share{3, Roll, 0.075}, Share{4, Surge, 0.996},
          Share{5, Roll, 0.926}, Share{5, Sway, 0.071}})
        EXPECT_NEAR(sample.bench[mode].energy[motion], value, 0.00051) << mode << " " << motion;
    // The mean of the largest of each mode above.
    EXPECT_NEAR(sample.bench_decoupling, (0.996 + 0.992 + 0.972 + 0.901 + 0.996 + 0.926) / 6,
                0.00051);
    EXPECT_NEAR(sample.elastic_centre.rollHeight * 1e3, 6.445, 0.0006);
    EXPECT_NEAR(sample.elastic_centre.pitchHeight * 1e3, 1.780, 0.0006);
    EXPECT_NEAR(sample.elastic_centre.p_BE.z() * 1e3, (6.445 + 1.780) / 2, 0.0006);
}

// Oracle: identity. What was kept never changes an answer, to the last bit.
TEST(Assessor, GivesTheSameBitsWithAndWithoutWhatItKept)
{
    Assessor assessor;
    stillbay::Setup setup = referenceCraft();
    const auto text = [](const Result<Assessment>& a) {
        return reportJson(a.value());
    };
    const std::string first = text(assessor.assess(setup));
    setup.mounts.free_length_mm = 31;
    setup.mounts.stretch = 1.3;
    EXPECT_EQ(text(assessor.assess(setup)), text(assess(setup)));
    setup.airframe.arm.height_mm = 12;
    EXPECT_EQ(text(assessor.assess(setup)), text(assess(setup)));
    setup.drive.unbalance_g_mm = 1;
    EXPECT_EQ(text(assessor.assess(setup)), text(assess(setup)));
    setup.flight.air_density_kg_m3 = 1.0;
    EXPECT_EQ(text(assessor.assess(setup)), text(assess(setup)));
    setup.camera.readout_ms = 8;
    EXPECT_EQ(text(assessor.assess(setup)), text(assess(setup)));
    EXPECT_EQ(text(assessor.assess(referenceCraft())), first);
}

// Oracle: identity. A grid point's wobble does not depend on the other points.
TEST(Assess, PointsDoNotDependOnTheGrid)
{
    const Assessment fine = assess(referenceCraft()).value();
    const Assessment one = assess(referenceCraft(), {.throttle = Grid{0.285, 0.285, 1}}).value();
    ASSERT_EQ(one.throttle.size(), 1U);
    EXPECT_NEAR(one.throttle[0].wobble_px, pointAt(fine.throttle, 0.285)->wobble_px, 1e-9);
    ASSERT_EQ(one.ranges.size(), 1U);
    EXPECT_EQ(one.ranges[0].grade, Grade::Bad);
}

TEST(Assess, RefusesWhatTheFileReaderRefuses)
{
    stillbay::Setup setup = referenceCraft();
    setup.tube.bore_mm = 9;
    const auto result = assess(setup);
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().code, Errc::BadInput);
    EXPECT_EQ(result.error().where, "tube.bore_mm");
}

}  // namespace
}  // namespace stillbay
