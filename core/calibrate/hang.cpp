// SPDX-License-Identifier: MIT
#include "core/calibrate/hang.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/tube/rubber.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace stillbay {
namespace {

constexpr double kCoarse = 0.03;        // share of E that the ruler leaves open, and is said
constexpr double kVeryCoarse = 0.10;    // the same, and the test is worth little
constexpr double kWorthATrend = 0.03;   // a run of E with the stretch below this is not told
constexpr double kDisagreement = 0.02;  // of E, rms over the masses; below it is not told
constexpr double kOutside = 0.05;       // of stretch, between the craft's and the nearest measured
constexpr double kFarFromLabel = 2.0;   // factor beyond what hardness leaves open (1.5)

/// One mass's say.
struct HangPoint {
    double stretch = 0.0;  // λ
    double E = 0.0;        // [Pa]
    double force = 0.0;    // [N]
    double own = 0.0;      // standard deviation of E over E: loaded marks and the scale's digits
    double free = 0.0;     // the same that comes with the relaxed marks
    double free_mm = 0.0;  // whose they are
};

std::optional<Error> refusedMass(std::span<const HungMass> masses)
{
    const auto refuse = [](Phrase what) {
        return Error{Errc::BadInput, std::move(what), {}};
    };
    if (masses.empty())
        return refuse(phrase("no mass was hung: one to five are needed"));
    if (masses.size() > kMostHungMasses)
        return refuse(phrase("%1 masses are too many: at most five", whole(masses.size())));
    for (std::size_t i = 0; i < masses.size(); ++i) {
        const HungMass& mass = masses[i];
        if (!(mass.mass_g > 0.0 && std::isfinite(mass.mass_g)))
            return refuse(
                phrase("mass %1 is %2 g: it must be above 0", whole(i + 1), exact(mass.mass_g)));
        if (!(mass.free_mm > 0.0 && std::isfinite(mass.free_mm)))
            return refuse(phrase("mass %1 has no free length: the marks without it are %2 mm apart",
                                 whole(i + 1), exact(mass.free_mm)));
        if (!(mass.length_mm > mass.free_mm && std::isfinite(mass.length_mm)))
            return refuse(phrase("mass %1 does not stretch the tube: %2 mm with it, %3 mm without",
                                 whole(i + 1), exact(mass.length_mm), exact(mass.free_mm)));
    }
    return std::nullopt;
}

HangPoint pointOf(const HungMass& mass, double area, const HangReadings& readings)
{
    const double lambda = mass.length_mm / mass.free_mm;
    const double law = lambda - 1 / (lambda * lambda);
    const double slope = (1 + 2 / (lambda * lambda * lambda)) / law;  // d ln law/dλ
    const double length_mm = readings.length_mm / std::sqrt(6.0);     // difference of two readings
    const double mass_g = readings.mass_g / std::sqrt(12.0);
    HangPoint point;
    point.stretch = lambda;
    point.force = mass.mass_g * unit::g * kGravity;
    point.E = 3 * point.force / (area * law);
    point.own = std::hypot(slope * length_mm / mass.free_mm, mass_g / mass.mass_g);
    point.free = slope * lambda * length_mm / mass.free_mm;
    point.free_mm = mass.free_mm;
    return point;
}

/// E from the points by weights that sum to one, with the error that these leave [Pa].
struct HangMean {
    double E = 0.0, error = 0.0;
};

HangMean combined(const std::vector<HangPoint>& points, const std::vector<double>& weights,
                  double scatter)
{
    HangMean mean;
    double variance = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        mean.E += weights[i] * points[i].E;
        variance += std::pow(scatter * weights[i] * points[i].E * points[i].own, 2);
        for (std::size_t j = 0; j < points.size(); ++j)
            if (points[i].free_mm == points[j].free_mm)
                variance += weights[i] * points[i].E * points[i].free * weights[j] * points[j].E *
                            points[j].free;
    }
    mean.error = std::sqrt(variance);
    return mean;
}

double weightOf(const HangPoint& point)
{
    return 1 / (std::pow(point.E, 2) * (point.own * point.own + point.free * point.free));
}

std::vector<double> meanWeights(const std::vector<HangPoint>& points)
{
    std::vector<double> weights;
    double sum = 0.0;
    for (const HangPoint& point : points)
        sum += weightOf(point);
    for (const HangPoint& point : points)
        weights.push_back(weightOf(point) / sum);
    return weights;
}

// Of the weighted straight line through the points at a stretch; they are not all at one.
std::vector<double> lineWeights(const std::vector<HangPoint>& points, double stretch)
{
    const std::vector<double> mean = meanWeights(points);
    double centre = 0.0, width = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i)
        centre += mean[i] * points[i].stretch;
    for (std::size_t i = 0; i < points.size(); ++i)
        width += mean[i] * std::pow(points[i].stretch - centre, 2);
    std::vector<double> weights;
    for (std::size_t i = 0; i < points.size(); ++i)
        weights.push_back(mean[i] *
                          (1 + (stretch - centre) * (points[i].stretch - centre) / width));
    return weights;
}

// What E changes by from the least to the greatest stretch [Pa]; none: not beyond what is read.
std::optional<double> runOf(const std::vector<HangPoint>& points, double scatter)
{
    const auto [least, most] = std::minmax_element(
        points.begin(), points.end(),
        [](const HangPoint& a, const HangPoint& b) { return a.stretch < b.stretch; });
    if (!(most->stretch > least->stretch))
        return std::nullopt;
    std::vector<double> run = lineWeights(points, most->stretch);
    const std::vector<double> from = lineWeights(points, least->stretch);
    for (std::size_t i = 0; i < run.size(); ++i)
        run[i] -= from[i];
    const HangMean change = combined(points, run, scatter);
    const bool isBeyond =
        std::abs(change.E) > 2 * change.error && std::abs(change.E) > kWorthATrend * least->E;
    return isBeyond ? std::optional(change.E) : std::nullopt;
}

// How far the points lie apart, over what is read; at least 1. About a line where there is a trend.
double scatterOf(const std::vector<HangPoint>& points, bool aboutLine)
{
    const std::size_t freedom = points.size() - (aboutLine ? 2 : 1);
    if (points.size() < (aboutLine ? 3u : 2u))
        return 1.0;
    const std::vector<double> mean = meanWeights(points);
    double sum = 0.0;
    for (const HangPoint& point : points) {
        const double E =
            combined(points, aboutLine ? lineWeights(points, point.stretch) : mean, 1.0).E;
        sum += std::pow((point.E - E) / (point.E * std::max(point.own, 1e-6)), 2);
    }
    return std::max(1.0, std::sqrt(sum / static_cast<double>(freedom)));
}

// Mean stretch of the craft's tubes as drawn, of what the clamps leave free; none where they
// cannot be drawn.
std::optional<double> drawnStretch(const Setup& setup)
{
    const auto mounted = makeMountedBay(setup);
    if (!mounted || mounted->suspension.attachments.empty())
        return std::nullopt;
    double sum = 0.0;
    for (const Attachment& attachment : mounted->suspension.attachments)
        sum += effectiveStretch(mounted->suspension.tubeOf(attachment),
                                (attachment.p_OB - attachment.p_OA).norm());
    return sum / static_cast<double>(mounted->suspension.attachments.size());
}

double residualOf(const std::vector<HangPoint>& points, double E)
{
    double sum = 0.0;
    for (const HangPoint& point : points)
        sum += std::pow(E / point.E - 1, 2);
    return std::sqrt(sum / static_cast<double>(points.size()));
}

Phrase percentText(double share)
{
    return phrase("%1 %", rounded(kPercent * share, 2));
}

Warning softening(double run, const HangPoint& least, const HangPoint& most)
{
    const Phrase from =
        phrase("%1 MPa at stretch %2", fixed(least.E / unit::mpa, 2), fixed(least.stretch, 2));
    const Phrase to =
        phrase("%1 MPa at stretch %2", fixed(most.E / unit::mpa, 2), fixed(most.stretch, 2));
    return {"hang-trend",
            run < 0.0 ? phrase("The rubber softens as it is stretched: %1, %2. The value is the "
                               "one at the stretch of the craft's tubes.",
                               from, to)
                      : phrase("The rubber stiffens as it is stretched: %1, %2. The value is the "
                               "one at the stretch of the craft's tubes; look whether a length was "
                               "misread.",
                               from, to)};
}

struct HangAnswer {
    std::vector<HangPoint> points;
    double E = 0.0, spread = 0.0;
    double read = 0.0;     // share of E that the marks leave open
    double scatter = 1.0;  // over what is read
    std::optional<double> run, craftStretch;
};

HangAnswer answerOf(std::vector<HangPoint> points, std::optional<double> craftStretch,
                    const HangReadings& readings)
{
    std::sort(points.begin(), points.end(),
              [](const HangPoint& a, const HangPoint& b) { return a.stretch < b.stretch; });
    HangAnswer answer;
    answer.run = runOf(points, scatterOf(points, true));
    const double least = points.front().stretch, most = points.back().stretch;
    const double at = std::clamp(craftStretch.value_or((least + most) / 2), least, most);
    answer.scatter = scatterOf(points, answer.run.has_value());
    const std::vector<double> weights = answer.run ? lineWeights(points, at) : meanWeights(points);
    const HangMean mean = combined(points, weights, answer.scatter);
    answer.E = mean.E;
    answer.read = combined(points, weights, 1.0).error / mean.E;
    // Rubber with a trend has no one modulus: as if any within the run could be meant.
    const double unclear = answer.run.value_or(0.0) / (std::sqrt(12.0) * mean.E);
    answer.spread = std::sqrt(std::pow(mean.error / mean.E, 2) + unclear * unclear +
                              readings.massShare * readings.massShare);
    answer.craftStretch = craftStretch;
    answer.points = std::move(points);
    return answer;
}

void addHangWarnings(const HangAnswer& answer, const Setup& setup, std::vector<Warning>& warnings)
{
    const HangPoint &least = answer.points.front(), &most = answer.points.back();
    if (answer.run)
        warnings.push_back(softening(*answer.run, least, most));
    if (answer.scatter > 2 && residualOf(answer.points, answer.E) > kDisagreement)
        warnings.push_back(
            {"hang-scatter", phrase("The masses disagree by more than the lengths were misread "
                                    "alone: measure each once more.")});
    if (answer.read > kCoarse)
        warnings.push_back(
            {"hang-coarse", phrase("The ruler leaves %1 of the modulus open: draw the marks "
                                   "further apart or hang a larger mass.",
                                   percentText(answer.read))});
    if (answer.points.size() == 1)
        warnings.push_back(
            {"hang-one-mass", phrase("One mass does not tell whether the rubber softens as it is "
                                     "stretched: hang a second one.")});
    if (answer.craftStretch && (*answer.craftStretch < least.stretch - kOutside ||
                                *answer.craftStretch > most.stretch + kOutside))
        warnings.push_back({"hang-other-stretch",
                            phrase("The craft stretches its tubes to %1, the masses to %2 … %3: "
                                   "choose masses nearer to it.",
                                   fixed(*answer.craftStretch, 2), fixed(least.stretch, 2),
                                   fixed(most.stretch, 2))});
    const double label = youngsModulusFromShoreA(setup.tube.hardness_shore_a);
    if (answer.E > kFarFromLabel * label || answer.E * kFarFromLabel < label)
        warnings.push_back(
            {"hang-hardness",
             phrase("Rubber of %1 Shore A should have about %2 MPa: check masses, "
                    "lengths, diameters and hardness.",
                    exact(setup.tube.hardness_shore_a), fixed(label / unit::mpa, 2))});
}

bool hasWarning(const std::vector<Warning>& warnings, std::string_view code)
{
    return std::any_of(warnings.begin(), warnings.end(),
                       [code](const Warning& warning) { return warning.code == code; });
}

QualityMark hangMark(const HangAnswer& answer, const std::vector<Warning>& warnings)
{
    if (answer.read > kVeryCoarse)
        return {Quality::Poor,
                phrase("the ruler leaves %1 of the modulus open", percentText(answer.read))};
    if (hasWarning(warnings, "hang-hardness"))
        return {Quality::Fair, phrase("the modulus is far from that of this hardness")};
    if (hasWarning(warnings, "hang-scatter"))
        return {Quality::Fair, phrase("the masses disagree")};
    if (answer.run)
        return {Quality::Fair, phrase("the modulus runs with the stretch")};
    if (answer.read > kCoarse)
        return {Quality::Fair,
                phrase("the ruler leaves %1 of the modulus open", percentText(answer.read))};
    if (answer.points.size() == 1)
        return {Quality::Fair, phrase("one mass alone")};
    return {Quality::Good,
            phrase("the masses agree to %1", percentText(residualOf(answer.points, answer.E)))};
}

}  // namespace

Result<Correction> hangTest(const Setup& setup, std::span<const HungMass> masses,
                            const HangReadings& readings)
{
    if (auto refused = refusedMass(masses))
        return tl::unexpected(*std::move(refused));
    const TubeSection section{setup.tube.outer_diameter_mm * unit::mm,
                              setup.tube.bore_mm * unit::mm};
    std::vector<HangPoint> points;
    for (const HungMass& mass : masses)
        points.push_back(pointOf(mass, section.area(), readings));
    const HangAnswer answer = answerOf(std::move(points), drawnStretch(setup), readings);

    const double before = setup.tube.youngs_modulus_mpa.value_or(
        youngsModulusFromShoreA(setup.tube.hardness_shore_a) / unit::mpa);
    Correction correction;
    correction.measurement = masses.size() == 1
                                 ? phrase("hang test, one mass")
                                 : phrase("hang test, %1 masses", whole(masses.size()));
    correction.values.push_back({.key = "tube.youngs_modulus_mpa",
                                 .label = phrase("Young's modulus of the tube"),
                                 .unit = "MPa",
                                 .before = before,
                                 .after = answer.E / unit::mpa,
                                 .spread = answer.spread});
    correction.residual = residualOf(answer.points, answer.E);
    correction.residualBefore = residualOf(answer.points, before * unit::mpa);
    addHangWarnings(answer, setup, correction.warnings);
    correction.mark = hangMark(answer, correction.warnings);
    return correction;
}

}  // namespace stillbay
