// SPDX-License-Identifier: MIT
#include "core/advice/practical_steps.h"

#include "core/craft/craft.h"
#include "core/design/design.h"
#include "core/response/level.h"
#include "core/setup/mount_layout.h"
#include "core/setup/unbalance.h"
#include "core/setup/validate.h"
#include "core/tube/rubber.h"

#include <array>
#include <cmath>
#include <functional>

namespace stillbay {
namespace {

constexpr double kLengthStep_mm = 5.0;
constexpr double kStretchStep = 0.05;
constexpr double kHardnessStep_shore = 10.0;
constexpr double kElevationStep_deg = 10.0;
constexpr double kArmStep_mm = 1.0;
constexpr double kPlaceStep_mm = 5.0;
constexpr double kDirectionStep_deg = 10.0;

// As many digits as a builder would write.
Number shown(double value)
{
    return rounded(value, 5);
}

// Without the last digits that binary fractions leave behind: 7.3, not 7.300000000000001.
double tidy(double value)
{
    return std::round(1e4 * value) / 1e4;
}

/// Collects what validate() takes.
class Steps {
public:
    explicit Steps(const Setup& setup) : m_setup(setup) {}

    /// @param change  alters the setup and returns what to call that
    void add(const char* code, const std::function<Phrase(Setup&)>& change)
    {
        Setup next = m_setup;
        Phrase text = change(next);
        if (next != m_setup && validate(next))
            m_steps.push_back({code, std::move(text), std::move(next)});
    }

    std::vector<PracticalStep> take() { return std::move(m_steps); }

private:
    const Setup& m_setup;
    std::vector<PracticalStep> m_steps;
};

void addLength(Steps& steps, const char* code, double by_mm)
{
    steps.add(code, [by_mm](Setup& s) {
        setFreeLength(s.mounts, tidy(s.mounts.free_length_mm + by_mm));
        for (MountPoint& point : s.mounts.points)
            if (point.free_length_mm)
                point.free_length_mm = tidy(*point.free_length_mm);
        const Number by = shown(std::abs(by_mm)), length = shown(s.mounts.free_length_mm);
        return by_mm < 0 ? phrase("Tubes %1 mm shorter: %2 mm free", by, length)
                         : phrase("Tubes %1 mm longer: %2 mm free", by, length);
    });
}

void addPlannedStretch(Steps& steps, const char* code, double by)
{
    steps.add(code, [by](Setup& s) {
        setDrawnStretch(s.mounts, tidy(*s.mounts.stretch + by));
        const Number points = shown(100 * std::abs(by)), to = shown(100 * (*s.mounts.stretch - 1));
        return by < 0 ? phrase("Stretch −%1 points: to %2 %", points, to)
                      : phrase("Stretch +%1 points: to %2 %", points, to);
    });
}

// The holes stay: a shorter tube is stretched more.
void addDrilledStretch(Steps& steps, const char* code, double by)
{
    steps.add(code, [by](Setup& s) {
        setDrawnStretch(s.mounts, drawnStretch(s.mounts) + by);
        const Number points = shown(100 * std::abs(by)), length = shown(s.mounts.free_length_mm);
        return by < 0 ? phrase("Stretch −%1 points: %2 mm free", points, length)
                      : phrase("Stretch +%1 points: %2 mm free", points, length);
    });
}

// A measured modulus keeps its ratio to what the hardness says.
void addHardness(Steps& steps, const char* code, double by_shore)
{
    steps.add(code, [by_shore](Setup& s) {
        TubeKind& tube = s.tube;
        const double before = youngsModulusFromShoreA(tube.hardness_shore_a);
        tube.hardness_shore_a += by_shore;
        if (tube.youngs_modulus_mpa)
            tube.youngs_modulus_mpa = tidy(*tube.youngs_modulus_mpa *
                                           youngsModulusFromShoreA(tube.hardness_shore_a) / before);
        const Number by = shown(std::abs(by_shore)), to = shown(tube.hardness_shore_a);
        return by_shore < 0 ? phrase("Tubes %1 Shore softer: %2 Shore A", by, to)
                            : phrase("Tubes %1 Shore harder: %2 Shore A", by, to);
    });
}

void addElevation(Steps& steps, const char* code, double by_deg)
{
    steps.add(code, [by_deg](Setup& s) {
        for (MountPoint& point : s.mounts.points)
            point.elevation_deg += by_deg;
        const Number by = shown(std::abs(by_deg));
        return by_deg < 0 ? phrase("Elevation of the tubes %1° less", by)
                          : phrase("Elevation of the tubes %1° more", by);
    });
}

// A step of where the bay is held, and the words for less and more of it.
struct PlaceStep {
    Variable variable;
    double by;
    const char *lessCode, *moreCode;
    const char *less, *more;  // with %1, the step
};

constexpr std::array<PlaceStep, 6> kPlaceSteps{{
    {Variable::Height, kPlaceStep_mm, "points-lower", "points-higher",
     translatable("Mount points %1 mm lower"), translatable("Mount points %1 mm higher")},
    {Variable::SpreadX, kPlaceStep_mm, "points-nearer-fore-aft", "points-wider-fore-aft",
     translatable("Mount points %1 mm nearer to the middle, fore and aft"),
     translatable("Mount points %1 mm farther from the middle, fore and aft")},
    {Variable::SpreadY, kPlaceStep_mm, "points-nearer-sideways", "points-wider-sideways",
     translatable("Mount points %1 mm nearer to the middle, sideways"),
     translatable("Mount points %1 mm farther from the middle, sideways")},
    {Variable::Direction, kDirectionStep_deg, "tubes-fore-aft", "tubes-sideways",
     translatable("Tubes turned %1° towards fore and aft"),
     translatable("Tubes turned %1° towards the sides")},
    {Variable::BalanceX, kPlaceStep_mm, "heaviest-back", "heaviest-forward",
     translatable("Heaviest part of the bay %1 mm back"),
     translatable("Heaviest part of the bay %1 mm forward")},
    {Variable::BalanceZ, kPlaceStep_mm, "heaviest-lower", "heaviest-higher",
     translatable("Heaviest part of the bay %1 mm lower"),
     translatable("Heaviest part of the bay %1 mm higher")},
}};

// A bay that rests as drawn is hung level again, where it is planned.
bool isLevel(const Setup& setup)
{
    const auto mounted = makeMountedBay(setup);
    const auto rest = mounted ? restPose(mounted->suspension, 1.0) : Result<Pose>{};
    return mounted && rest && restsAsDrawn(rest->shift, rest->theta);
}

void addPlaces(Steps& steps, const Setup& setup)
{
    const bool level = !setup.mounts.drilled() && isLevel(setup);
    for (const PlaceStep& step : kPlaceSteps) {
        if (!canSet(setup.mounts, step.variable))
            continue;
        for (const double way : {-1.0, 1.0})
            steps.add(way < 0 ? step.lessCode : step.moreCode, [&, way](Setup& s) {
                Design design = wholeDesignOf(s);
                const double value = valueOf(design, step.variable);
                setValue(design, step.variable, value + way * step.by);
                const bool isThere =
                    std::abs(valueOf(design, step.variable) - value - way * step.by) < 1e-6;
                if (isThere)  // not where a direction is at its end, or no point has a partner
                    s = withDesign(setup, hangingOf(setup, level).hung(std::move(design)));
                return phrase(way < 0 ? step.less : step.more, shown(step.by));
            });
    }
}

// Where the bay does not rest as drawn, and can.
void addLevel(Steps& steps, const Setup& setup)
{
    if (isLevel(setup))
        return;
    const Result<Levelled> levelled = level(setup);
    if (levelled && !levelled->why)
        steps.add("hang-level", [&](Setup& s) {
            s.mounts = levelled->mounts;
            return s.mounts.drilled() ? phrase("Hung level: each tube with its own free length")
                                      : phrase("Hung level: each tube at its own elevation");
        });
}

void addTubes(Steps& steps, const Setup& setup)
{
    addLevel(steps, setup);
    if (setup.mounts.drilled()) {
        addDrilledStretch(steps, "stretch-more", kStretchStep);
        addDrilledStretch(steps, "stretch-less", -kStretchStep);
    } else {
        addLength(steps, "tubes-shorter", -kLengthStep_mm);
        addLength(steps, "tubes-longer", kLengthStep_mm);
        addPlannedStretch(steps, "stretch-more", kStretchStep);
        addPlannedStretch(steps, "stretch-less", -kStretchStep);
        addElevation(steps, "anchors-higher", kElevationStep_deg);
        addElevation(steps, "anchors-lower", -kElevationStep_deg);
    }
    addHardness(steps, "tubes-softer", -kHardnessStep_shore);
    addHardness(steps, "tubes-harder", kHardnessStep_shore);
}

void addArms(Steps& steps)
{
    steps.add("arms-thicker", [](Setup& s) {
        ArmSection& arm = s.airframe.arm;
        arm.width_mm += kArmStep_mm;
        arm.height_mm += kArmStep_mm;
        return phrase("Arms %1 mm thicker: %2 × %3 mm", shown(kArmStep_mm), shown(arm.width_mm),
                      shown(arm.height_mm));
    });
    steps.add("arm-walls-thicker", [](Setup& s) {
        ArmSection& arm = s.airframe.arm;
        if (arm.wall_mm)
            arm.wall_mm = tidy(*arm.wall_mm + kArmStep_mm);
        return phrase("Arm walls %1 mm thicker: %2 mm", shown(kArmStep_mm),
                      shown(arm.wall_mm.value_or(0)));
    });
}

}  // namespace

std::vector<PracticalStep> practicalSteps(const Setup& setup)
{
    Steps steps(setup);
    addTubes(steps, setup);
    addPlaces(steps, setup);
    steps.add("exposure-longer", [](Setup& s) {
        s.camera.exposure_ms *= 2;
        return phrase("Darker filter: exposure %1 ms", shown(s.camera.exposure_ms));
    });
    steps.add("propellers-balanced", [](Setup& s) {
        scaleUnbalance(s, 0.5);
        return hasOwnUnbalance(s)
                   ? phrase("Each propeller balanced to half of its unbalance")
                   : phrase("Propellers balanced to %1 g·mm", shown(s.drive.unbalance_g_mm));
    });
    addArms(steps);
    return steps.take();
}

}  // namespace stillbay
