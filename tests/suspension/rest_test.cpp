// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace stillbay {
namespace {

using test::DrawnBay;
using test::OwnEnergy;

// Force left over at rest, of weight and tube forces: what the search for rest promises.
constexpr double kBalance = 1e-10;

// Four like tubes rising to their anchors at the corners of a square: only height is left to find.
DrawnBay squareBay(bool clamped, double rise_deg, double stretch)
{
    DrawnBay drawn;
    drawn.tube = {.section = {8e-3, 5e-3},
                  .shearModulus = 1.2e6,
                  .density = 1150,
                  .freeLength = 0.020,
                  .clamped = clamped};
    drawn.bay = boxFigures(0.5, {0, 0, -0.05}, {0.12, 0.12, 0.04});
    for (int k = 0; k < 4; ++k) {
        const double azimuth = (45 + 90 * k) * unit::deg, rise = rise_deg * unit::deg;
        const Vector3d out(std::cos(azimuth), std::sin(azimuth), 0);
        const Vector3d p_OB = 0.06 * out + Vector3d(0, 0, -0.04);
        const Vector3d tube = std::cos(rise) * out + Vector3d(0, 0, std::sin(rise));
        drawn.attachments.push_back({p_OB + drawn.tube.freeLength * stretch * tube, p_OB});
    }
    return drawn;
}

// Oracle: plane geometry. A tube that ran along z is bent by a shift across by the angle whose
// tangent is the shift over its length, at both ends alike; a bay turned about the tube's own end
// is bent there by the turn, and nowhere else.
TEST(TubeBends, AreTheLargerOfBothEnds)
{
    DrawnBay drawn = squareBay(true, 45, 1.2);
    drawn.bay.centre = Vector3d(0.0, 0.0, -0.04);
    drawn.attachments = {{Vector3d(0, 0, -0.01), Vector3d(0, 0, -0.04)}};
    const Suspension suspension = drawn.suspension();
    Pose pose;
    EXPECT_NEAR(tubeBends(suspension, pose)[0], 0.0, 1e-7);
    pose.shift.x() = 0.03 * std::tan(20 * unit::deg);
    EXPECT_NEAR(tubeBends(suspension, pose)[0], 20 * unit::deg, 1e-9);
    pose.theta.y() = 7 * unit::deg;  // away from the chord
    pose.R = Eigen::AngleAxisd(pose.theta.y(), Vector3d::UnitY()).toRotationMatrix();
    EXPECT_NEAR(tubeBends(suspension, pose)[0], 27 * unit::deg, 1e-9);
    pose.shift.setZero();
    EXPECT_NEAR(tubeBends(suspension, pose)[0], 7 * unit::deg, 1e-9);
}

class RestOfEnds : public testing::TestWithParam<bool> {};
INSTANTIATE_TEST_SUITE_P(Ends, RestOfEnds, testing::Values(true, false),
                         [](const auto& ends) { return ends.param ? "Clamped" : "Hinged"; });

// Oracle: defining equations with an independent energy. The tubes carry the weight and nothing
// else, for the load factors that matter: half, hover, hard pull-up, and upside down.
TEST_P(RestOfEnds, TubesCarryTheWeight)
{
    for (const DrawnBay& drawn : {test::compactSkewBay(GetParam()), test::longSkewBay(GetParam())})
        for (const double load : {0.5, 1.0, 3.0, -1.0}) {
            const auto rest = restPose(drawn.suspension(), load);
            ASSERT_TRUE(rest) << english(rest.error().what);
            Vector6d force = OwnEnergy(drawn).gradient(test::ownPose(*rest));
            const double weight = drawn.bay.mass * 9.80665 * load;
            force.z() += weight;
            force.tail<3>() /= 0.03;  // moments as forces at the bay's own size
            const double pull = 4 * 0.1 * drawn.suspension().tube.GA0;
            EXPECT_LE(force.norm(), kBalance * (std::abs(weight) + pull)) << load << " g";
        }
}

// Oracle: definition of a stable rest. Every small way out of it costs energy.
TEST_P(RestOfEnds, IsTheLowestPlaceAround)
{
    const DrawnBay drawn = test::longSkewBay(GetParam());
    const OwnEnergy own(drawn);
    const double weight = drawn.bay.mass * 9.80665;
    const test::OwnPose rest = test::ownPose(restPose(drawn.suspension(), 1).value());
    const auto total = [&](const test::OwnPose& pose) {
        return own.energy(pose) + weight * pose.shift.z();
    };
    std::mt19937 random(4);
    std::normal_distribution<double> gauss;
    for (int k = 0; k < 200; ++k) {
        test::Vector6r way;
        for (int i = 0; i < 6; ++i)
            way[i] = gauss(random) * (i < 3 ? 2e-4 : 6e-3);
        EXPECT_GT(total(test::moved(rest, way)), total(rest));
    }
}

// Oracle: consistency. The pose's matrix is that of its rotation vector, and the lengths follow.
TEST_P(RestOfEnds, PoseAndLengthsAgree)
{
    const DrawnBay drawn = test::compactSkewBay(GetParam());
    const Suspension suspension = drawn.suspension();
    const Pose rest = restPose(suspension, 3).value();
    EXPECT_LE((rest.R - test::poseOf(rest.shift, rest.theta).R).norm(), 1e-14);
    const std::vector<double> lengths = tubeLengths(suspension, rest);
    ASSERT_EQ(lengths.size(), drawn.attachments.size());
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const Vector3d p_OB =
            drawn.bay.centre + rest.shift + rest.R * (drawn.attachments[i].p_OB - drawn.bay.centre);
        EXPECT_NEAR(lengths[i], (p_OB - drawn.attachments[i].p_OA).norm(), 1e-16);
    }
}

// Oracle: statics by hand. N like ropes carry N T sin(elevation) = m g, whatever the rubber does.
TEST(Rest, HingedTubesRiseAsSteeplyAsTheWeightAsks)
{
    for (const double load : {1.0, 3.0}) {
        const DrawnBay drawn = squareBay(false, 14, 1.15);
        const Pose rest = restPose(drawn.suspension(), load).value();
        EXPECT_LE(rest.theta.norm() + std::hypot(rest.shift.x(), rest.shift.y()), 1e-12);
        const Attachment& tube = drawn.attachments[0];
        const Vector3d chord = tube.p_OA - tube.p_OB - rest.shift;
        const double tension = static_cast<double>(OwnEnergy(drawn).tension(chord.norm()));
        const double sine = chord.z() / chord.norm();
        EXPECT_NEAR(4 * tension * sine, drawn.bay.mass * 9.80665 * load,
                    kBalance * 4 * 0.1 * drawn.suspension().tube.GA0);
    }
}

// Oracle: statics by hand. A clamped tube helps with its shear force: both end moments over the
// length, here (a + b)(α_f + α_b)/ℓ with like end turns α, and with its pull T + a′α² + b′α². The
// bare rope's sin(elevation) ≈ m g/(N T) holds within what the shear adds.
TEST(Rest, ClampedTubesHelpWithTheirShear)
{
    const DrawnBay drawn = squareBay(true, 14, 1.15);
    const OwnEnergy own(drawn);
    const Pose rest = restPose(drawn.suspension(), 1.0).value();
    EXPECT_LE(rest.theta.norm(), 1e-12);
    const Attachment& tube = drawn.attachments[0];
    const Vector3d drawnChord = tube.p_OA - tube.p_OB, chord = drawnChord - rest.shift;
    const double length = chord.norm();
    const auto elevation = [](const Vector3d& v) {
        return std::atan2(v.z(), std::hypot(v.x(), v.y()));
    };
    const double alpha = std::sin(elevation(chord) - elevation(drawnChord));
    const auto sum = [&](double l) {
        const auto [a, b] = own.ends(l, 1);
        return static_cast<double>((a + b).real());
    };
    const double h = 1e-5;
    const double slope = (sum(length + h) - sum(length - h)) / (2 * h);
    const double pull = static_cast<double>(own.tension(length)) + slope * alpha * alpha;
    // The energy has sin(turn) as its measure: its force carries cos(turn).
    const double shear = 2 * sum(length) * alpha * std::sqrt(1 - alpha * alpha) / length;
    const double weight = drawn.bay.mass * 9.80665;

    const double carried =
        4 * (pull * std::sin(elevation(chord)) + shear * std::cos(elevation(chord)));

    EXPECT_NEAR(carried, weight, 1e-8 * weight);         // differences: h² of a″′, 1e-9
    EXPECT_LT(elevation(chord), elevation(drawnChord));  // let go, the tubes lift the bay
    EXPECT_LT(shear, 0);                                 // and bend against it
}

// Oracle: definition. More load, lower rest; without load, a bay on tubes that all rise is lifted.
TEST(Rest, SinksWithLoad)
{
    const Suspension suspension = squareBay(true, 14, 1.15).suspension();
    const double none = restPose(suspension, 0)->shift.z();
    const double hover = restPose(suspension, 1)->shift.z();
    const double pullUp = restPose(suspension, 3)->shift.z();
    EXPECT_GT(none, 0);
    EXPECT_GT(none, hover);
    EXPECT_GT(hover, pullUp);
}

// Oracle: mechanics. One hinged tube leaves the bay swinging, turning about the tube, or turning
// about the tube's end; the error names a motion and the place.
TEST(Rest, OneHingedTubeNamesTheFreeMotion)
{
    DrawnBay drawn = squareBay(false, 14, 1.15);
    drawn.attachments.resize(1);
    const auto rest = restPose(drawn.suspension(), 1.0);
    ASSERT_FALSE(rest);
    EXPECT_EQ(rest.error().code, Errc::NoAnswer);
    EXPECT_EQ(rest.error().where, "mounts.points");
    EXPECT_NE(english(rest.error().what).find("nothing holds the bay in one motion ("),
              std::string::npos)
        << english(rest.error().what);
    // Straight below its anchor, the free motion is the turn about the vertical.
    drawn.attachments[0] = {{0, 0, -0.02}, {0, 0, -0.04}};
    drawn.bay.centre = {0, 0, -0.05};
    const auto hanging = restPose(drawn.suspension(), 1.0);
    ASSERT_FALSE(hanging);
    EXPECT_NE(english(hanging.error().what).find("(yaw: bay turns)"), std::string::npos)
        << english(hanging.error().what);
}

// Oracle: mechanics. Two hinged tubes are a swing: the bay is held like a pendulum. On one line
// through the centre of mass nothing holds it about that line.
TEST(Rest, TwoHingedTubesHoldABayBelowThemOnly)
{
    DrawnBay swing = squareBay(false, 14, 1.15);
    swing.attachments = {{{0.09, 0, -0.01}, {0.06, 0, -0.03}},
                         {{-0.09, 0, -0.01}, {-0.06, 0, -0.03}}};
    const auto held = restPose(swing.suspension(), 1.0);
    ASSERT_TRUE(held) << english(held.error().what);

    swing.attachments = {{{0.10, 0, -0.05}, {0.06, 0, -0.05}},
                         {{-0.10, 0, -0.05}, {-0.06, 0, -0.05}}};
    const auto free = restPose(swing.suspension(), 1.0);
    ASSERT_FALSE(free);
    EXPECT_EQ(free.error().code, Errc::NoAnswer);
    EXPECT_NE(english(free.error().what).find("(roll: bay rolls)"), std::string::npos)
        << english(free.error().what);
}

// Oracle: mechanics. One clamped tube holds all six motions of a light bay.
TEST(Rest, OneClampedTubeHoldsALightBay)
{
    DrawnBay drawn = squareBay(true, 90, 1.05);
    drawn.attachments.resize(1);
    drawn.attachments[0] = {{0.003, -0.002, -0.01}, {0.003, -0.002, -0.031}};
    drawn.bay = boxFigures(0.06, {0.001, 0.002, -0.045}, {0.05, 0.03, 0.03});
    const auto rest = restPose(drawn.suspension(), 1.0);
    ASSERT_TRUE(rest) << english(rest.error().what);
    Vector6d force = OwnEnergy(drawn).gradient(test::ownPose(*rest));
    force.z() += drawn.bay.mass * 9.80665;
    EXPECT_LE(force.norm(), kBalance * drawn.suspension().tube.GA0);
}

// Oracle: Euler column. A heavy bay on a post of one short clamped tube below it has no rest the
// model can vouch for: one clear answer without a number, naming the tube.
TEST(Rest, ACrushedTubeGivesOneClearAnswer)
{
    DrawnBay drawn = squareBay(true, 90, 1.0);
    drawn.attachments = {{{0, 0, -0.070}, {0, 0, -0.050}}};
    drawn.bay = boxFigures(4.0, {0, 0, -0.03}, {0.05, 0.03, 0.03});
    const auto rest = restPose(drawn.suspension(), 1.0);
    ASSERT_FALSE(rest);
    EXPECT_EQ(rest.error().code, Errc::NoAnswer);
    EXPECT_EQ(rest.error().where, "mounts.points[0]");
    EXPECT_NE(english(rest.error().what).find("no stable rest at 1 g"), std::string::npos)
        << english(rest.error().what);
    EXPECT_NE(english(rest.error().what).find("crushed"), std::string::npos)
        << english(rest.error().what);
}

// Oracle: definition. A drawing that already crushes a tube is refused before any search.
TEST(Rest, ADrawingThatCrushesATubeIsRefused)
{
    DrawnBay drawn = squareBay(true, 14, 1.15);
    Attachment& third = drawn.attachments[2];
    third.p_OA = third.p_OB + 0.7 * drawn.tube.freeLength * (third.p_OA - third.p_OB).normalized();
    const auto rest = restPose(drawn.suspension(), 1.0);
    ASSERT_FALSE(rest);
    EXPECT_EQ(rest.error().where, "mounts.points[2]");
    EXPECT_EQ(english(rest.error().what),
              "as drawn the tube is crushed to 0.70 of its free length, beyond what the model "
              "covers");
}

// Oracle: definition. Ends at one place have no direction; never a number.
TEST(Rest, CoincidentEndsGiveNoPose)
{
    DrawnBay drawn = squareBay(true, 14, 1.15);
    drawn.attachments[1].p_OA = drawn.attachments[1].p_OB;
    const auto rest = restPose(drawn.suspension(), 1.0);
    ASSERT_FALSE(rest);
    EXPECT_EQ(rest.error().where, "mounts.points[1]");
}

}  // namespace
}  // namespace stillbay
