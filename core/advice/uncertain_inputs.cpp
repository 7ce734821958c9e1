// SPDX-License-Identifier: MIT
#include "core/advice/uncertain_inputs.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/tolerances.h"
#include "core/setup/sources.h"
#include "core/setup/spreads.h"
#include "core/setup/unbalance.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSoftestRoot = 1e3;  // [N·m/rad] of a root that is not given
constexpr double kStiffestRoot = 1e6;

// The normal distribution's value that a share u of it stays below, cut at ±2.5.
// @source M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions, 26.2.23, from memory:
//         within 4.5e-4.
double normalQuantile(double u)
{
    const double tail = std::clamp(std::min(u, 1 - u), 1e-6, 0.5);
    const double t = std::sqrt(-2 * std::log(tail));
    const double z = t - (2.515517 + t * (0.802853 + t * 0.010328)) /
                             (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    return std::clamp(u < 0.5 ? -z : z, -2.5, 2.5);
}

// Standard deviation of the logarithm, of a spread.
double ofSpread(double spread)
{
    return std::sqrt(std::log1p(spread * spread));
}

double between(double low, double high, double u)
{
    return low + (high - low) * u;
}

/// A number of which one factor is unknown.
UncertainInput scaled(std::string key, Phrase label, Phrase measurement, double spread,
                      std::function<void(double factor, Setup& setup)> scale)
{
    const double sigma = ofSpread(spread);
    return {
        .key = std::move(key),
        .label = std::move(label),
        .measurement = std::move(measurement),
        .spread = spread,
        .apply = [sigma, scale = std::move(scale)](std::span<const double> u, CraftSample& craft) {
            scale(std::exp(sigma * normalQuantile(u[0])), craft.setup);
        }};
}

UncertainInput scaled(const Setup& setup, std::string key, Phrase label, Phrase measurement,
                      bool isGiven, const UsualSpread& usual,
                      std::function<void(double factor, Setup& setup)> scale)
{
    const double spread = spreadOfNumber(setup, key, isGiven, usual);
    return scaled(std::move(key), std::move(label), std::move(measurement), spread,
                  std::move(scale));
}

UncertainInput rootStiffness(const Setup& setup)
{
    const std::string key = "airframe.arm.root_stiffness_nm_per_rad";
    const Phrase label = phrase("stiffness of the arms' roots");
    const Phrase measurement = phrase("tap or droop test of an arm in its joint, ten minutes");
    if (setup.airframe.arm.root_stiffness_nm_per_rad)
        return scaled(
            setup, key, label, measurement, true, {spreadOfFactor(2), 0.2},
            [](double factor, Setup& s) { *s.airframe.arm.root_stiffness_nm_per_rad *= factor; });
    return {.key = key,
            .label = label,
            .measurement = measurement,
            .apply = [](std::span<const double> u, CraftSample& craft) {
                const double compliance = std::max(u[0] / kSoftestRoot, 1 / kStiffestRoot);
                craft.setup.airframe.arm.root_stiffness_nm_per_rad = 1 / compliance;
            }};
}

void scaleModulus(TubeKind& tube, double factor)
{
    tube.youngs_modulus_mpa =
        factor * tube.youngs_modulus_mpa.value_or(youngsModulusFromShoreA(tube.hardness_shore_a) /
                                                  unit::mpa);
}

void addTube(const Setup& setup, std::vector<UncertainInput>& inputs)
{
    const auto pluck = [] {
        return phrase("pluck test, half an hour");
    };
    inputs.push_back(scaled("tube.youngs_modulus_mpa", phrase("Young's modulus of the tube"),
                            phrase("hang test, ten minutes"), modulusSpread(setup),
                            [](double factor, Setup& s) { scaleModulus(s.tube, factor); }));
    inputs.push_back(scaled(setup, "tube.dynamic_ratio", phrase("dynamic ratio of the tube"),
                            pluck(), true, {spreadOfFactor(std::sqrt(1.4 / 1.1)), {}},
                            [](double factor, Setup& s) {
                                s.tube.dynamic_ratio = std::max(1.0, factor * s.tube.dynamic_ratio);
                            }));
    inputs.push_back(scaled(setup, "tube.loss_factor", phrase("loss factor of the tube"), pluck(),
                            true, {spreadOfFactor(std::sqrt(0.2 / 0.05)), {}},
                            [](double factor, Setup& s) { s.tube.loss_factor *= factor; }));
}

void addArm(const Setup& setup, std::vector<UncertainInput>& inputs)
{
    inputs.push_back(
        scaled(setup, "airframe.arm.youngs_modulus_gpa", phrase("Young's modulus of the arms"),
               phrase("tap or droop test of an arm, ten minutes"), true, {spreadOfFactor(1.15), {}},
               [](double factor, Setup& s) { s.airframe.arm.youngs_modulus_gpa *= factor; }));
    inputs.push_back(rootStiffness(setup));
    inputs.push_back(scaled(setup, "airframe.arm.loss_factor", phrase("loss factor of the arms"),
                            phrase("tap test of an arm, ten minutes"), true,
                            {spreadOfFactor(std::sqrt(0.03 / 0.005)), {}},
                            [](double factor, Setup& s) { s.airframe.arm.loss_factor *= factor; }));
}

// Whose source tells how uncertain the unbalances are: the common one's while a motor has it, else
// the largest, which shakes the most.
std::string unbalanceKey(const Setup& setup)
{
    const std::vector<Arm>& arms = setup.airframe.arms;
    if (!std::all_of(arms.begin(), arms.end(),
                     [](const Arm& arm) { return arm.unbalance_g_mm.has_value(); }))
        return "drive.unbalance_g_mm";
    const auto largest = std::max_element(arms.begin(), arms.end(), [](const Arm& a, const Arm& b) {
        return *a.unbalance_g_mm < *b.unbalance_g_mm;
    });
    return "airframe.arms[" + std::to_string(largest - arms.begin()) + "].unbalance_g_mm";
}

// Spread of a number that acts through the speed alone, KV and the power coefficient. Where a
// throttle curve was laid through measured speeds, it has taken in whatever they are off.
double spreadThroughSpeed(const Setup& setup, std::string_view key, bool isGiven,
                          const UsualSpread& usual)
{
    const double own = spreadOfNumber(setup, key, isGiven, usual);
    const Source* const curve = sourceOf(setup, "drive.throttle_curve");
    const bool isMeasured = !setup.drive.throttle_curve.empty() && curve &&
                            curve->from == Origin::Measured && curve->spread;
    return isMeasured ? std::min(own, *curve->spread) : own;
}

void addDrive(const Setup& setup, std::vector<UncertainInput>& inputs)
{
    const Propeller& propeller = setup.drive.propeller;
    const PropellerFigures figures = propellerFigures(propeller);
    const auto speed = [] {
        return phrase("measured throttle against speed, ten minutes");
    };
    inputs.push_back(scaled(
        setup, "drive.propeller.thrust_coefficient", phrase("thrust coefficient of the propeller"),
        phrase("hover throttle of a flight, ten minutes"), !figures.thrust_estimated,
        {spreadOfFactor(1.15), 0.05}, [C_T = figures.thrust_coefficient](double factor, Setup& s) {
            s.drive.propeller.thrust_coefficient = factor * C_T;
        }));
    const char* const power = "drive.propeller.power_coefficient";
    inputs.push_back(scaled(
        power, phrase("power coefficient of the propeller"), speed(),
        spreadThroughSpeed(setup, power, !figures.power_estimated, {spreadOfFactor(1.25), 0.08}),
        [C_P = figures.power_coefficient](double factor, Setup& s) {
            s.drive.propeller.power_coefficient = factor * C_P;
        }));
    inputs.push_back(
        scaled(setup, "drive.propeller.inertia_g_mm2", phrase("moment of inertia of the propeller"),
               phrase("bifilar pendulum, a quarter of an hour"), !figures.inertia_estimated,
               {spreadOfFactor(1.3), 0.08}, [inertia = figures.inertia](double factor, Setup& s) {
                   s.drive.propeller.inertia_g_mm2 = factor * inertia / unit::g_mm2;
               }));
    const char* const kv = "drive.motor.kv_rpm_per_v";
    inputs.push_back(scaled(kv, phrase("KV of the motors"), speed(),
                            spreadThroughSpeed(setup, kv, true, {spreadOfFactor(1.07), {}}),
                            [](double factor, Setup& s) { s.drive.motor.kv_rpm_per_v *= factor; }));
    inputs.push_back(scaled(setup, unbalanceKey(setup), phrase("unbalance of the propellers"),
                            phrase("balance the propellers, half an hour"), true,
                            {spreadOfFactor(2), {}},
                            [](double factor, Setup& s) { scaleUnbalance(s, factor); }));
}

UncertainInput ofBuilds(const char* key, std::size_t dimensions,
                        std::function<void(std::span<const double> u, CraftSample& craft)> apply)
{
    return {.key = key,
            .label = {},
            .measurement = {},
            .doubt = Doubt::BuildToBuild,
            .dimensions = dimensions,
            .apply = std::move(apply)};
}

void addBuilds(const Setup& setup, std::vector<UncertainInput>& inputs)
{
    static constexpr Tolerances kBuild;
    inputs.push_back(ofBuilds(
        "cut", setup.mounts.points.size(), [](std::span<const double> u, CraftSample& craft) {
            craft.cuts_mm.clear();
            for (const double x : u)
                craft.cuts_mm.push_back(between(-kBuild.cut_mm, kBuild.cut_mm, x));
        }));
    inputs.push_back(ofBuilds("bay", 1, [](std::span<const double> u, CraftSample& craft) {
        for (Part& part : craft.setup.bay.parts)
            part.mass_g *= between(1 - kBuild.bay, 1 + kBuild.bay, u[0]);
    }));
    inputs.push_back(ofBuilds("battery", 1, [](std::span<const double> u, CraftSample& craft) {
        std::vector<Part>& parts = craft.setup.bay.parts;
        const auto heaviest =
            std::max_element(parts.begin(), parts.end(),
                             [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
        heaviest->mass_g *= between(1 - kBuild.battery, 1 + kBuild.battery, u[0]);
    }));
    inputs.push_back(ofBuilds("temperature", 1, [](std::span<const double> u, CraftSample& craft) {
        scaleModulus(craft.setup.tube,
                     modulusAtTemperature(between(kBuild.coldest_c, kBuild.warmest_c, u[0])));
    }));
}

}  // namespace

std::vector<UncertainInput> uncertainInputs(const Setup& setup)
{
    std::vector<UncertainInput> inputs;
    addTube(setup, inputs);
    addArm(setup, inputs);
    addDrive(setup, inputs);
    addBuilds(setup, inputs);
    return inputs;
}

std::optional<double> spreadOf(const Setup& setup, std::string_view key)
{
    for (const UncertainInput& input : uncertainInputs(setup))
        if (input.key == key)
            return input.spread;
    return std::nullopt;
}

std::size_t dimensionsOf(const std::vector<UncertainInput>& inputs)
{
    std::size_t dimensions = 0;
    for (const UncertainInput& input : inputs)
        dimensions += input.dimensions;
    return dimensions;
}

CraftSample craftAt(const Setup& setup, const std::vector<UncertainInput>& inputs,
                    std::span<const double> point)
{
    CraftSample craft{setup, {}};
    for (const UncertainInput& input : inputs) {
        input.apply(point.first(input.dimensions), craft);
        point = point.subspan(input.dimensions);
    }
    return craft;
}

}  // namespace stillbay
