// SPDX-License-Identifier: MIT
#include "core/newcraft/holding.h"

#include "core/assess/constraints.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/presets/apply.h"
#include "core/presets/presets.h"
#include "core/response/bay_at_rest.h"
#include "core/response/level.h"
#include "core/suspension/elastic_centre.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kUsualShore_a = 60.0;
constexpr double kStretch = 1.15;
constexpr double kLengthOverDiameter = 2.5;
constexpr double kAlongShare = 0.55;   // of the bay's length
constexpr double kBeside_mm = 3.0;     // the bay's edge, to each side
constexpr double kSpareTravel = 0.75;  // of the room is used up in a pull-up, no more
constexpr double kFirstElevation_deg = 5.0;
constexpr double kSteepest_deg = 15.0;  // of a usual tube: a steeper one is too soft for its bay

MountPoint tubeAt(double x_mm, double y_mm, double z_mm, double azimuth_deg)
{
    return {.bay_mm = {x_mm, y_mm, z_mm},
            .azimuth_deg = azimuth_deg,
            .elevation_deg = kFirstElevation_deg,
            .anchor_mm = {},
            .free_length_mm = {},
            .stretch = {},
            .extras = {}};
}

void placePoints(Setup& setup, const CraftAnswers& answers)
{
    const Triple& plate_mm = setup.bay.parts.back().size_mm;
    const Vector3d centre = makeBody(setup.bay.parts).centre / unit::mm;
    const double x = answers.mounts_along_mm.value_or(std::round(kAlongShare * plate_mm[0])) / 2;
    const double y =
        answers.mounts_across_mm.value_or(std::round(plate_mm[1] + 2 * kBeside_mm)) / 2;
    const double z = answers.mount_height_mm.value_or(std::round(centre.z()));
    setup.mounts.points = {tubeAt(x, y, z, 45), tubeAt(-x, y, z, 135), tubeAt(-x, -y, z, 225),
                           tubeAt(x, -y, z, 315)};
}

std::optional<BayAtRest> swinging(const Setup& setup)
{
    auto mounted = makeMountedBay(setup);
    if (!mounted)
        return {};
    auto bay = letGo(*std::move(mounted));
    if (!bay || !addModes(*bay))
        return {};
    return *std::move(bay);
}

// How far the elastic centre lies above the centre of mass.
std::optional<double> heldAbove_mm(const Setup& setup)
{
    const std::optional<BayAtRest> bay = swinging(setup);
    if (!bay)
        return {};
    return elasticCentre(bay->K.real()).p_BE.z() / unit::mm;
}

void hangLevel(Setup& setup)
{
    if (auto levelled = level(setup))
        setup.mounts = std::move(levelled->mounts);
}

// Raises the bay points by what the elastic centre is too low, level each time.
void hang(Setup& setup, bool movesPoints)
{
    constexpr int kRounds = 8;
    hangLevel(setup);
    for (int round = 0; movesPoints && round < kRounds; ++round) {
        const std::optional<double> above = heldAbove_mm(setup);
        if (!above || std::abs(*above) < kHeldAt_mm)
            return;
        for (MountPoint& point : setup.mounts.points)
            point.bay_mm[2] = std::round(100 * (point.bay_mm[2] - *above)) / 100;
        hangLevel(setup);
    }
}

bool isSteep(const Mounts& mounts)
{
    return std::any_of(mounts.points.begin(), mounts.points.end(),
                       [](const MountPoint& point) { return point.elevation_deg > kSteepest_deg; });
}

// How many constraints are broken before the craft itself is looked at; many without a rest.
std::size_t faultsOf(const Setup& setup)
{
    std::optional<BayAtRest> bay = swinging(setup);
    if (!bay)
        return constraints().size();
    addPullUp(*bay);
    Bay narrow = setup.bay;
    narrow.travel_mm *= kSpareTravel;
    const ConstraintInputs inputs{*bay, narrow, setup.tube.max_stretch};
    return violatedRows(inputs, Stage::AtRest, Stage::Modes).size() + isSteep(setup.mounts);
}

double section_mm2(const TubePreset& tube)
{
    return tube.outer_diameter_mm * tube.outer_diameter_mm - tube.bore_mm * tube.bore_mm;
}

std::vector<TubePreset> usualTubes()
{
    std::vector<TubePreset> tubes;
    for (const TubePreset& tube : tubePresets())
        if (tube.hardness_shore_a == kUsualShore_a)
            tubes.push_back(tube);
    std::stable_sort(tubes.begin(), tubes.end(), [](const TubePreset& a, const TubePreset& b) {
        return section_mm2(a) < section_mm2(b);
    });
    return tubes;
}

Setup hungOn(Setup setup, const TubePreset& tube, const CraftAnswers& answers)
{
    setup = withTube(std::move(setup), tube);
    setup.mounts.free_length_mm = answers.free_length_mm.value_or(
        std::round(2 * kLengthOverDiameter * tube.outer_diameter_mm) / 2);
    setup.mounts.stretch = answers.stretch.value_or(kStretch);
    placePoints(setup, answers);
    hang(setup, !answers.mount_height_mm);
    return setup;
}

}  // namespace

Setup withTubes(Setup setup, const CraftAnswers& answers)
{
    if (answers.tube)
        return hungOn(std::move(setup), tubePresets()[*answers.tube], answers);
    std::optional<Setup> best;
    std::size_t fewest = std::numeric_limits<std::size_t>::max();
    for (const TubePreset& tube : usualTubes()) {
        Setup tried = hungOn(setup, tube, answers);
        const std::size_t faults = faultsOf(tried);
        if (faults < fewest) {
            fewest = faults;
            best = std::move(tried);
        }
        if (fewest == 0)
            break;
    }
    return *std::move(best);
}

}  // namespace stillbay
