// SPDX-License-Identifier: MIT
#include "core/calibrate/tap.h"

#include "core/airframe/tapped_arm.h"
#include "core/base/units.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillbay {
namespace {

constexpr double kModulusDoubt = 0.085;  // of an arm's modulus: a factor of 1.15 holds nine of ten
constexpr double kTapTold = 0.5;         // of that
constexpr double kSofteningStep = 1e-6;  // [rad/(N·m)], for slopes
constexpr double kModulusStep = 1e-4;    // of the logarithm, likewise
constexpr double kStiffestJoint = 1e6;   // [N·m/rad] that a setup takes
constexpr double kHardlyRings = 1e-3;    // share of the arm's strain
constexpr int kTapIterations = 30;

/// One direction of one arm.
struct Ring {
    std::size_t arm = 0;
    bool isVertical = true;
    TappedMode mode;
    double doubt = 0.0;  // of the frequency's logarithm, the section's among it
};

/// Modulus, as the logarithm of a factor, and compliance of the joint [rad/(N·m)].
struct Softness {
    double modulus = 0.0, joint = 0.0;
};

std::vector<Ring> ringsOf(const Setup& setup, std::span<const TappedArm> taps,
                          const TapOptions& options)
{
    const ArmSection& section = setup.airframe.arm;
    // Frequency goes with √I: the bent side counts three times, the other once.
    const auto ofSection = [&](double bent_mm, double other_mm) {
        return 0.5 * options.calliper_mm * std::hypot(3 / bent_mm, 1 / other_mm);
    };
    std::vector<Ring> rings;
    for (const TappedArm& tap : taps) {
        if (tap.vertical)
            rings.push_back({tap.arm, true, *tap.vertical,
                             std::hypot(tap.vertical->frequencySpread,
                                        ofSection(section.height_mm, section.width_mm))});
        if (tap.horizontal)
            rings.push_back({tap.arm, false, *tap.horizontal,
                             std::hypot(tap.horizontal->frequencySpread,
                                        ofSection(section.width_mm, section.height_mm))});
    }
    return rings;
}

Result<void> checkRings(const Setup& setup, const std::vector<Ring>& rings)
{
    if (rings.empty())
        return fail(Errc::BadInput, phrase("No arm was tapped: one frequency is needed at least"));
    for (const Ring& ring : rings) {
        if (ring.arm >= setup.airframe.arms.size())
            return fail(Errc::BadInput,
                        phrase("There is no arm %1, the craft has %2", whole(ring.arm + 1),
                               whole(setup.airframe.arms.size())));
        if (!(ring.mode.frequency_hz > 0 && std::isfinite(ring.mode.frequency_hz)))
            return fail(Errc::BadInput, phrase("A frequency is %1 Hz, must be above 0",
                                               exact(ring.mode.frequency_hz)));
        if (ring.mode.lossFactor && !(*ring.mode.lossFactor > 0 && *ring.mode.lossFactor < 1))
            return fail(Errc::BadInput, phrase("A loss factor is %1, must be above 0 and below 1",
                                               exact(*ring.mode.lossFactor)));
    }
    return {};
}

/// The craft's arms, softer or stiffer.
class Arms {
public:
    Arms(const Setup& setup, bool isHeld)
        : m_airframe(makeExcitedAirframe(setup).airframe), m_isHeld(isHeld)
    {
    }

    double jointAsItIs() const
    {
        return m_airframe.arm.rootStiffness ? 1 / *m_airframe.arm.rootStiffness : 0.0;
    }

    /// Logarithms of the frequencies; none where an arm does not ring.
    std::optional<std::vector<double>> logFrequencies(const std::vector<Ring>& rings,
                                                      const Softness& at, double shear = 0) const
    {
        AirframeModel airframe = m_airframe;
        airframe.arm.youngsModulus *= std::exp(at.modulus);
        airframe.arm.shearModulus *= std::exp(shear);
        airframe.arm.rootStiffness.reset();
        if (at.joint > 0)
            airframe.arm.rootStiffness = 1 / at.joint;
        std::vector<double> result;
        std::optional<TappedFrequencies> found;
        for (std::size_t k = 0; k < rings.size(); ++k) {
            if (k == 0 || rings[k].arm != rings[k - 1].arm)
                found = tappedFrequencies(airframe, rings[k].arm, m_isHeld);
            if (!found)
                return {};
            result.push_back(
                std::log(rings[k].isVertical ? found->vertical_hz : found->horizontal_hz));
        }
        return result;
    }

private:
    AirframeModel m_airframe;
    bool m_isHeld;
};

struct TapFit {
    Softness at;
    double modulusSpread = 0.0, jointSpread = 0.0;  // both free
    double modulusSpreadAlone = 0.0;
    double residual = 0.0;  // rms of the logarithms
    double misfit = 0.0;    // rms over the doubts
};

// Gauss-Newton from a start; the joint stays where it is unless it is free.
std::optional<TapFit> fitRings(const Arms& arms, const std::vector<Ring>& rings, Softness start,
                               bool isJointFree)
{
    TapFit fit{start};
    bool hasConverged = false;
    for (int k = 0; k < kTapIterations && !hasConverged; ++k) {
        Softness& at = fit.at;
        // The joint can only give; one step to the soft side tells its slope.
        const auto here = arms.logFrequencies(rings, at);
        const auto stiffer = arms.logFrequencies(rings, {at.modulus + kModulusStep, at.joint});
        const auto softer = arms.logFrequencies(rings, {at.modulus, at.joint + kSofteningStep});
        if (!here || !stiffer || !softer)
            return {};
        double a = 0, b = 0, c = 0, g0 = 0, g1 = 0, squares = 0, misfit = 0;
        for (std::size_t i = 0; i < rings.size(); ++i) {
            const double weight = 1 / (rings[i].doubt * rings[i].doubt);
            const double d0 = ((*stiffer)[i] - (*here)[i]) / kModulusStep;
            const double d1 = ((*softer)[i] - (*here)[i]) / kSofteningStep;
            const double r = std::log(rings[i].mode.frequency_hz) - (*here)[i];
            a += weight * d0 * d0;
            b += weight * d0 * d1;
            c += weight * d1 * d1;
            g0 += weight * d0 * r;
            g1 += weight * d1 * r;
            squares += r * r;
            misfit += weight * r * r;
        }
        const auto count = static_cast<double>(rings.size());
        fit.residual = std::sqrt(squares / count);
        fit.misfit = std::sqrt(misfit / count);
        const double determinant = a * c - b * b;
        const bool isTold = determinant > 1e-9 * a * c;
        fit.modulusSpreadAlone = std::sqrt(1 / a);
        fit.modulusSpread = isTold ? std::sqrt(c / determinant) : 1e3;
        fit.jointSpread = isTold ? std::sqrt(a / determinant) : 1e3;
        double step0 = g0 / a, step1 = 0;
        if (isJointFree) {
            if (!isTold)
                return fit;
            step0 = (c * g0 - b * g1) / determinant;
            step1 = (a * g1 - b * g0) / determinant;
        }
        const double length = std::max(1.0, std::abs(step0));
        const double joint = at.joint + step1 / length;
        // A joint that would have to be stiffer than rigid stops half way to rigid, then there.
        const double bounded = joint > 0 ? joint : at.joint < 1 / kStiffestJoint ? 0 : at.joint / 4;
        const double moved = std::abs(step0) + std::abs(bounded - at.joint) * 1e3;
        at = {at.modulus + step0 / length, bounded};
        hasConverged = moved < 1e-9;
    }
    if (!hasConverged)
        return {};
    return fit;
}

struct LossFit {
    double loss = 0.0, spread = 0.0;
};

// The mean of what each direction says, by its spread.
std::optional<LossFit> armLoss(const Arms& arms, const std::vector<Ring>& rings, const Softness& at)
{
    const auto here = arms.logFrequencies(rings, at);
    const auto stiffer =
        arms.logFrequencies(rings, {at.modulus + kModulusStep, at.joint}, kModulusStep);
    if (!here || !stiffer)
        return {};
    double sum = 0, weights = 0;
    std::vector<double> each;
    for (std::size_t i = 0; i < rings.size(); ++i) {
        const double share = 2 * ((*stiffer)[i] - (*here)[i]) / kModulusStep;
        if (!rings[i].mode.lossFactor || share < kHardlyRings)
            continue;
        const double weight = 1 / (rings[i].mode.lossSpread * rings[i].mode.lossSpread);
        sum += weight * *rings[i].mode.lossFactor / share;
        weights += weight;
        each.push_back(*rings[i].mode.lossFactor / share);
    }
    if (!(weights > 0))
        return {};
    // Directions that disagree say so.
    const double mean = sum / weights;
    double scatter = 0;
    for (const double loss : each)
        scatter += (loss / mean - 1) * (loss / mean - 1);
    const auto count = static_cast<double>(each.size());
    const double ofScatter = count > 1 ? std::sqrt(scatter / (count * (count - 1))) : 0.0;
    return LossFit{mean, std::max(1 / std::sqrt(weights), ofScatter)};
}

Phrase tapText(std::size_t directions)
{
    return directions == 1 ? phrase("tap test, one direction")
                           : phrase("tap test, %1 directions", whole(directions));
}

Warning jointNotTold()
{
    return {"joint-not-told",
            phrase("These frequencies do not tell the arms' modulus and the joint at the root "
                   "apart: the joint stays as it is, and the modulus takes in what it gives.")};
}

Warning jointIsRigid()
{
    return {"joint-rigid", phrase("The joint at the root gives nothing that could be measured.")};
}

Warning freeCraft()
{
    return {"tapped-free",
            phrase("A free craft rings in several modes close together; hold it by its middle to "
                   "be sure of the arm's own.")};
}

Result<Correction> tapCorrection(const Setup& setup, const Arms& arms,
                                 const std::vector<Ring>& rings, const TapOptions& options)
{
    const ArmSection& section = setup.airframe.arm;
    const auto alone = fitRings(arms, rings, {0, arms.jointAsItIs()}, false);
    if (!alone)
        return fail(Errc::NoAnswer, phrase("No Young's modulus gives the arms these frequencies"),
                    "airframe.arm.youngs_modulus_gpa");
    std::optional<TapFit> both =
        fitRings(arms, rings, {alone->at.modulus, std::max(arms.jointAsItIs(), 1e-5)}, true);
    const bool isTold = both && both->modulusSpread < kTapTold * kModulusDoubt;
    const bool isRigid = isTold && both->at.joint < both->jointSpread;
    if (isRigid) {
        const double spread = both->modulusSpread;
        both = fitRings(arms, rings, {alone->at.modulus, 0}, false);
        if (!both)
            return fail(Errc::NoAnswer,
                        phrase("No Young's modulus gives the arms these frequencies"),
                        "airframe.arm.youngs_modulus_gpa");
        both->modulusSpreadAlone = spread;
    }
    const TapFit& fit = isTold ? *both : *alone;
    // More readings than numbers that disagree by more than their doubts widen what is told.
    const std::size_t numbers = isTold && !isRigid ? 2 : 1;
    const double wider =
        rings.size() > numbers
            ? std::max(1.0, fit.misfit * std::sqrt(static_cast<double>(rings.size()) /
                                                   static_cast<double>(rings.size() - numbers)))
            : 1.0;

    Correction correction;
    correction.measurement = tapText(rings.size());
    correction.residual = fit.residual;
    if (const auto before = arms.logFrequencies(rings, {0, arms.jointAsItIs()})) {
        double squares = 0;
        for (std::size_t i = 0; i < rings.size(); ++i)
            squares += std::pow(std::log(rings[i].mode.frequency_hz) - (*before)[i], 2);
        correction.residualBefore = std::sqrt(squares / static_cast<double>(rings.size()));
    }
    correction.values.push_back(
        {"airframe.arm.youngs_modulus_gpa", phrase("Young's modulus of the arms"), "GPa",
         section.youngs_modulus_gpa, section.youngs_modulus_gpa * std::exp(fit.at.modulus),
         wider * (isTold && !isRigid ? fit.modulusSpread : fit.modulusSpreadAlone)});
    if (isTold && !isRigid)
        correction.values.push_back({"airframe.arm.root_stiffness_nm_per_rad",
                                     phrase("stiffness of the arms' roots"), "N·m/rad",
                                     section.root_stiffness_nm_per_rad,
                                     std::min(1 / fit.at.joint, kStiffestJoint),
                                     std::min(wider * fit.jointSpread / fit.at.joint, 2.0)});
    if (isRigid && section.root_stiffness_nm_per_rad)
        correction.values.push_back({"airframe.arm.root_stiffness_nm_per_rad",
                                     phrase("stiffness of the arms' roots"), "N·m/rad",
                                     section.root_stiffness_nm_per_rad, kStiffestJoint, 1.0});
    if (const auto loss = armLoss(arms, rings, fit.at))
        correction.values.push_back({"airframe.arm.loss_factor", phrase("loss factor of the arms"),
                                     "", section.loss_factor, loss->loss, loss->spread});
    if (!isTold)
        correction.warnings.push_back(jointNotTold());
    if (isRigid)
        correction.warnings.push_back(jointIsRigid());
    if (!options.isHeld)
        correction.warnings.push_back(freeCraft());
    if (fit.misfit > 3)
        correction.mark = {Quality::Poor, phrase("no modulus and joint give all of these "
                                                 "frequencies")};
    else if (!isTold)
        correction.mark = {Quality::Fair, phrase("modulus and joint are not told apart")};
    else if (!options.isHeld)
        correction.mark = {Quality::Fair, phrase("the craft was free")};
    else
        correction.mark = {Quality::Good, phrase("both directions agree with one modulus and one "
                                                 "joint")};
    return correction;
}

}  // namespace

Result<Correction> tapTest(const Setup& setup, std::span<const TappedArm> taps,
                           const TapOptions& options)
{
    const std::vector<Ring> rings = ringsOf(setup, taps, options);
    if (const auto valid = checkRings(setup, rings); !valid)
        return tl::unexpected(valid.error());
    return tapCorrection(setup, Arms(setup, options.isHeld), rings, options);
}

}  // namespace stillbay
