// SPDX-License-Identifier: MIT
#include "core/response/rest_figures.h"

#include "core/base/units.h"
#include "core/response/bay_at_rest.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillbay {
namespace {

Part boxAt(const Triple& centre_mm, const Triple& size_mm)
{
    return {.name = "box", .mass_g = 1, .centre_mm = centre_mm, .size_mm = size_mm, .extras = {}};
}

// Oracle: by hand, the corners written out and turned by Eigen's rotation about an axis: a lower
// bound of the room that a bay needs would let it hit what is beside it.
TEST(TravelBetween, IsThatOfTheFarthestCorner)
{
    const std::vector<Part> parts{boxAt({100, 5, -30}, {20, 16, 40}),
                                  boxAt({-20, 0, 0}, {8, 6, 4})};
    const std::vector<Eigen::Vector3d> corners{
        {0.110, 0.013, -0.010},  {0.110, 0.013, -0.050},  {0.110, -0.003, -0.010},
        {0.110, -0.003, -0.050}, {0.090, 0.013, -0.010},  {0.090, 0.013, -0.050},
        {0.090, -0.003, -0.010}, {0.090, -0.003, -0.050}, {-0.016, 0.003, 0.002},
        {-0.016, 0.003, -0.002}, {-0.016, -0.003, 0.002}, {-0.016, -0.003, -0.002},
        {-0.024, 0.003, 0.002},  {-0.024, 0.003, -0.002}, {-0.024, -0.003, 0.002},
        {-0.024, -0.003, -0.002}};
    const Eigen::Vector3d centre(0.04, -0.01, -0.02);
    RestFigures from, to;
    from.shift = {0.0005, 0, -0.001};
    from.rotation = 0.02 * Eigen::Vector3d(0.6, 0, 0.8);
    for (const Eigen::Vector3d& axis :
         {Eigen::Vector3d(0, 1, 0), Eigen::Vector3d(0, -1, 0), Eigen::Vector3d(0.36, 0.48, 0.8),
          Eigen::Vector3d(-0.8, 0.6, 0)}) {
        to.shift = {0.001, -0.002, -0.004};
        to.rotation = 0.1 * axis;
        double farthest = 0;
        for (const Eigen::Vector3d& corner : corners) {
            const Eigen::Vector3d arm = corner - centre;
            const Eigen::Vector3d before =
                centre + from.shift + Eigen::AngleAxisd(0.02, Eigen::Vector3d(0.6, 0, 0.8)) * arm;
            const Eigen::Vector3d after = centre + to.shift + Eigen::AngleAxisd(0.1, axis) * arm;
            farthest = std::max(farthest, (after - before).norm());
        }
        EXPECT_NEAR(travelBetween(parts, centre, from, to), farthest, 1e-12);
        EXPECT_NEAR(travelBetween(parts, centre, to, from), farthest, 1e-12);
    }
}

// Oracle: geometry, each bay point carried along with the bay by Eigen's rotation about an axis.
TEST(RestFigures, HaveEachTubesElevationAndStretch)
{
    const auto craft = test::skewCraft(3);
    const Suspension suspension = makeMountedBay(craft).value().suspension;
    const Eigen::Vector3d axis(0.48, -0.6, 0.64);
    Pose pose;
    pose.shift = {0.002, -0.001, -0.003};
    pose.theta = 0.06 * axis;
    pose.R = Eigen::AngleAxisd(0.06, axis).toRotationMatrix();
    const RestFigures figures = restFigures(suspension, pose, 2.0);
    EXPECT_EQ(figures.load_factor, 2.0);
    EXPECT_EQ(figures.shift, pose.shift);
    EXPECT_EQ(figures.rotation, pose.theta);
    ASSERT_EQ(figures.tubes.size(), suspension.attachments.size());
    for (std::size_t i = 0; i < figures.tubes.size(); ++i) {
        const Attachment& ends = suspension.attachments[i];
        const Eigen::Vector3d bay =
            suspension.bay.centre + pose.shift +
            Eigen::AngleAxisd(0.06, axis) * (ends.p_OB - suspension.bay.centre);
        const Eigen::Vector3d tube = ends.p_OA - bay;
        EXPECT_NEAR(std::sin(figures.tubes[i].elevation), tube.z() / tube.norm(), 1e-12) << i;
        EXPECT_LT(std::abs(figures.tubes[i].elevation), M_PI / 2) << i;
        EXPECT_NEAR(figures.tubes[i].stretch, tube.norm() / suspension.tubeOf(ends).freeLength,
                    1e-12)
            << i;
    }
}

}  // namespace
}  // namespace stillbay
