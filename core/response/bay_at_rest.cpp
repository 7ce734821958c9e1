// SPDX-License-Identifier: MIT
#include "core/response/bay_at_rest.h"

#include "core/base/solve.h"
#include "core/response/rest_figures.h"

#include <utility>

namespace stillbay {

Result<BayAtRest> letGo(MountedBay mounted)
{
    const auto pose = restPose(mounted.suspension, 1.0);
    if (!pose)
        return tl::unexpected(pose.error());
    RestFigures at1g = restFigures(mounted.suspension, *pose, 1.0);
    return BayAtRest{.mounted = std::move(mounted), .pose = *pose, .at1g = std::move(at1g)};
}

void addPullUp(BayAtRest& bay)
{
    if (const auto pulled = restPose(bay.mounted.suspension, kPullUp))
        bay.at3g = restFigures(bay.mounted.suspension, *pulled, kPullUp);
}

Result<void> addModes(BayAtRest& bay)
{
    const Suspension& suspension = bay.mounted.suspension;
    bay.K = dynamicStiffness(suspension, bay.pose, bay.mounted.dynamicFactor);
    const auto bench = solveModes(bay.K, inverse(massMatrix(suspension.bay, bay.pose.R)));
    if (!bench)
        return tl::unexpected(bench.error());
    bay.bench = *bench;
    return {};
}

}  // namespace stillbay
