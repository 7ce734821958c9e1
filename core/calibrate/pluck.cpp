// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck.h"

#include "core/base/units.h"
#include "core/calibrate/pluck_fit.h"
#include "core/calibrate/until_taken.h"
#include "core/setup/sources.h"
#include "core/suspension/motion_text.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace stillbay {
namespace {

constexpr double kPoorResidual =
    0.08;  // rms over the record's; the right craft leaves 0.02 to 0.04
constexpr double kForeignShare = 0.30;
constexpr double kFairResidual = 0.05;
constexpr double kAmbiguous = 1.3;       // rms of the next best over that of the best
constexpr double kExcitedShare = 0.002;  // of the record's energy
constexpr double kAxesFloor = 0.05;      // of the record: what directions may leave unexplained
constexpr std::size_t kEnoughModes = 3;
constexpr double kTensionDoubt = 0.02;  // of a tension: how far a tube is stretched, its section

// For each measured mode which of the model's; the most alike first, none twice.
std::vector<std::optional<std::size_t>> matched(const std::vector<DecayingMode>& measured,
                                                const std::vector<SeenMode>& modes)
{
    std::vector<std::optional<std::size_t>> matching(measured.size());
    std::array<bool, 6> isTaken{};
    for (std::size_t round = 0; round < measured.size(); ++round) {
        double least = kOtherMode;
        std::optional<std::pair<std::size_t, std::size_t>> best;
        for (std::size_t m = 0; m < measured.size(); ++m)
            for (std::size_t k = 0; k < modes.size() && !matching[m]; ++k) {
                const double cost = unlikeness(measured[m], modes[k].lambda, modes[k].channels);
                if (!isTaken[k] && cost < least) {
                    least = cost;
                    best = {m, k};
                }
            }
        if (!best)
            break;
        matching[best->first] = best->second;
        isTaken[best->second] = true;
    }
    return matching;
}

std::optional<Error> refusedMatching(const std::vector<std::optional<std::size_t>>& matching,
                                     std::size_t measured)
{
    if (matching.empty())
        return std::nullopt;
    if (matching.size() != measured)
        return Error{Errc::BadInput,
                     phrase("%1 modes were measured and %2 are matched", whole(measured),
                            whole(matching.size())),
                     {}};
    std::array<bool, 6> isTaken{};
    for (const auto& mode : matching) {
        if (mode && (*mode >= isTaken.size() || isTaken[*mode]))
            return Error{
                Errc::BadInput,
                phrase("mode %1 of the bay is no mode or is matched twice", whole(*mode + 1)),
                {}};
        if (mode)
            isTaken[*mode] = true;
    }
    return std::nullopt;
}

Phrase pluckFor(Eigen::Index motion)
{
    switch (motion) {
        case 0:
            return phrase("push it forward and let go");
        case 1:
            return phrase("push it sideways and let go");
        case 2:
            return phrase("push it down and let go");
        case 3:
            return phrase("press one side down and let go");
        case 4:
            return phrase("press its front down and let go");
        default:
            return phrase("turn it flat, as a compass needle, and let go");
    }
}

Eigen::Index mainMotion(const Vector6d& motion, const Matrix6d& mass)
{
    Eigen::Index main = 0;
    energyShares(motion, mass).maxCoeff(&main);
    return main;
}

bool isMeasured(const Setup& setup, std::string_view key)
{
    const Source* const source = sourceOf(setup, key);
    return source && source->from == Origin::Measured;
}

// One standard deviation over the modulus, as the forecast counts what is not known.
double modulusSpread(const Setup& setup)
{
    constexpr double kMeasured = 0.03, kGiven = 0.05, kFromHardness = 0.25;
    const Source* const source = sourceOf(setup, "tube.youngs_modulus_mpa");
    if (source && source->spread)
        return *source->spread;
    if (!setup.tube.youngs_modulus_mpa)
        return kFromHardness;
    return source && source->from == Origin::Measured ? kMeasured : kGiven;
}

/// What the mark depends on.
struct PluckDoubts {
    double residual = 0.0;
    double foreign = 0.0;  // share of the energy of measured modes that are none of the bay's
    std::size_t excited = 0;
    RubberFigures rubber;
    std::optional<double> otherRatio;  // that leaves hardly more
    bool isModulusMeasured = false, axesMisfit = false;
};

Phrase sharePercent(double share)
{
    return phrase("%1 %", rounded(kPercent * share, 2));
}

QualityMark pluckMark(const PluckDoubts& doubts)
{
    if (doubts.residual > kPoorResidual)
        return {Quality::Poor,
                phrase("the bay's model leaves %1 of the record unexplained: another craft, or the "
                       "sensor's mass and place, the masses or the tubes are not as in the file",
                       sharePercent(doubts.residual))};
    if (doubts.otherRatio)
        return {Quality::Poor,
                phrase("dynamic ratios of %1 and %2 explain the record alike: pluck the bay in "
                       "other ways too, and say how the sensor's axes lie",
                       fixed(doubts.rubber.ratio, 2), fixed(*doubts.otherRatio, 2))};
    if (doubts.rubber.ratio < 1.0 || doubts.rubber.ratio > 3.0)
        return {Quality::Poor,
                phrase("a dynamic ratio of %1 is none of rubber: the modulus, the masses or the "
                       "tubes are not as in the file",
                       fixed(doubts.rubber.ratio, 2))};
    if (doubts.foreign > kForeignShare)
        return {Quality::Poor, phrase("most of what rings is none of the bay's modes")};
    if (doubts.excited < 2)
        return {
            Quality::Poor,
            phrase("one mode alone rang, and one fits many crafts: pluck it in other ways too")};
    if (doubts.axesMisfit)
        return {Quality::Fair, phrase("the sensor's axes do not lie as stated")};
    if (!doubts.isModulusMeasured)
        return {Quality::Fair, phrase("the tube's modulus is not measured")};
    if (doubts.residual > kFairResidual)
        return {Quality::Fair,
                phrase("%1 of the record stay unexplained", sharePercent(doubts.residual))};
    if (doubts.excited < kEnoughModes)
        return {Quality::Fair, phrase("two modes alone rang")};
    return {Quality::Good, phrase("%1 of six modes rang, %2 of the record stay unexplained",
                                  whole(doubts.excited), sharePercent(doubts.residual))};
}

CorrectedValue fitted(const char* key, Phrase label, double before, double after, double spread)
{
    return {.key = key,
            .label = std::move(label),
            .unit = "",
            .before = before,
            .after = after,
            .spread = spread};
}

// Every kind of channel as three: x, y and z.
bool areAxesComplete(const Recording& recording, const std::vector<std::size_t>& channels)
{
    std::map<Quantity, int> count;
    for (const std::size_t channel : channels)
        ++count[recording.channels[channel].quantity];
    return std::all_of(count.begin(), count.end(), [](const auto& kind) {
        return kind.second == 3 &&
               (kind.first == Quantity::Acceleration || kind.first == Quantity::AngularRate);
    });
}

}  // namespace

std::optional<Matrix3d> axesFromText(std::string_view text)
{
    Matrix3d axes = Matrix3d::Zero();
    for (Eigen::Index column = 0; column < 3; ++column) {
        const bool isBack = text.starts_with('-');
        if (isBack || text.starts_with('+'))
            text.remove_prefix(1);
        const std::size_t axis =
            text.empty() ? std::string_view::npos : std::string_view("xyz").find(text.front());
        if (axis == std::string_view::npos)
            return std::nullopt;
        text.remove_prefix(1);
        axes(static_cast<Eigen::Index>(axis), column) = isBack ? -1.0 : 1.0;
        if (column == 2 ? !text.empty() : !text.starts_with(':'))
            return std::nullopt;
        text.remove_prefix(column == 2 ? 0 : 1);
    }
    return std::abs(axes.determinant() - 1) < 1e-9 ? std::optional(axes) : std::nullopt;
}

Result<PluckAnswer> pluckTest(const Setup& setup, const Recording& recording,
                              const PluckOptions& options, std::stop_token stop)
{
    const auto model = PluckedBayModel::of(withSensor(setup, options.sensor), options.sensor);
    if (!model)
        return tl::unexpected(model.error());
    auto ring =
        ringDown(recording, {.channels = options.channels, .stretches = options.stretches}, stop);
    if (ring && options.stretches.empty()) {
        const std::vector<Stretch> free = untilTaken(recording, ring->channels, ring->plucks);
        if (free != ring->plucks)
            ring = ringDown(recording, {.channels = ring->channels, .stretches = free}, stop);
    }
    if (!ring)
        return tl::unexpected(ring.error());
    if (auto refused = refusedMatching(options.matching, ring->modes.size()))
        return tl::unexpected(*std::move(refused));

    const RubberFigures before{setup.tube.dynamic_ratio, setup.tube.loss_factor, 1.0};
    const bool hasAxes =
        options.sensor.axes.has_value() && areAxesComplete(recording, ring->channels);

    // All that rings, for a first look; then what is small of it.
    const PluckFit loud(*model, recording, ring->channels, ring->plucks, false, 0.0);
    std::vector<RubberFigures> starts =
        options.matching.empty()
            ? loud.hollows(stop)
            : std::vector{rubberOfMatching(*model, ring->modes, options.matching, before, stop)};
    if (starts.empty())
        starts.push_back(before);
    const RubberFigures first = loud.from(starts.front(), stop).rubber();
    starts.front() = first;
    const std::vector<Stretch> small = loud.linearParts(first);
    const double ofModulus = modulusSpread(setup),
                 tensionSpread = std::hypot(ofModulus, kTensionDoubt);
    const PluckFit poles(*model, recording, ring->channels, small, false, tensionSpread);
    const PluckFit shaped(*model, recording, ring->channels, small, true, tensionSpread);
    PluckDoubts doubts;
    const auto settled = [&](const PluckFit& fit) {
        const std::vector<LowestRubber> places = fit.lowestFrom(starts, stop);
        doubts.otherRatio.reset();
        if (places.size() > 1 &&
            places[1].value < kAmbiguous * kAmbiguous * std::max(places[0].value, 0.0))
            doubts.otherRatio = places[1].rubber().ratio;
        return places.front();
    };
    // With directions where they are known, unless they do not lie as stated.
    const PluckFit* fit = hasAxes ? &shaped : &poles;
    LowestRubber lowest = settled(*fit);
    if (hasAxes) {
        const LowestRubber without = poles.from(lowest.rubber(), stop);
        const double floor = kAxesFloor * kAxesFloor * poles.data().squares();
        doubts.axesMisfit = lowest.value > 9 * std::max(without.value, floor);
        if (doubts.axesMisfit) {
            fit = &poles;
            lowest = settled(poles);
        }
    }
    if (stop.stop_requested())
        return fail(Errc::NoAnswer, phrase("stopped"));
    const auto rubber = fit->fitted(lowest, before);
    if (!rubber)
        return tl::unexpected(rubber.error());

    // The modes before and after, and what of them was measured.
    const auto modesBefore = model->modes(before), modesAfter = model->modes(rubber->rubber);
    const auto seen = fit->modes(rubber->rubber);
    if (!modesBefore || !modesAfter || !seen)
        return fail(Errc::NoAnswer, phrase("a mode of the bay does not swing"));
    PluckAnswer answer;
    answer.measured = ring->modes;
    answer.used = small;
    const auto matching = options.matching.empty() ? matched(ring->modes, *seen) : options.matching;
    const DecayData::Fit there = fit->data().fit(*seen);
    const double variance =
        std::max(0.0, there.squares) / static_cast<double>(fit->data().samples());
    double energy = 0.0;
    for (const double part : there.energy)
        energy += part;
    std::array<bool, 6> isMissing{};
    for (std::size_t k = 0; k < answer.modes.size(); ++k) {
        PluckedMode& mode = answer.modes[k];
        const auto column = static_cast<Eigen::Index>(k);
        mode.motion = motionOf(modesAfter->Phi.col(column));
        mode.before_hz = frequency_hz(modesBefore->omegaSquare[column]);
        mode.beforeLoss = lossFactor(modesBefore->omegaSquare[column]);
        mode.after_hz = frequency_hz(modesAfter->omegaSquare[column]);
        mode.afterLoss = lossFactor(modesAfter->omegaSquare[column]);
        for (std::size_t m = 0; m < matching.size(); ++m)
            if (matching[m] == k)
                mode.measured = m;
        mode.share = energy > 0.0 ? there.energy[k] / energy : 0.0;
        mode.isExcited = mode.share > kExcitedShare &&
                         there.energy[k] > 9 * variance * static_cast<double>(there.parameters) / 6;
        if (mode.isExcited)
            ++doubts.excited;
        else
            isMissing[static_cast<std::size_t>(mainMotion(mode.motion, model->mass()))] = true;
    }
    for (std::size_t motion = 0; motion < isMissing.size(); ++motion)
        if (isMissing[motion])
            answer.plucksToAdd.push_back(pluckFor(static_cast<Eigen::Index>(motion)));
    for (std::size_t m = 0; m < matching.size(); ++m)
        doubts.foreign += matching[m] ? 0.0 : ring->modes[m].share;

    doubts.residual = rubber->residual;
    doubts.rubber = rubber->rubber;
    doubts.isModulusMeasured = isMeasured(setup, "tube.youngs_modulus_mpa");
    Correction& correction = answer.correction;
    correction.measurement = small.size() == 1
                                 ? phrase("pluck test, one pluck")
                                 : phrase("pluck test, %1 plucks", whole(small.size()));
    correction.values = {
        fitted("tube.dynamic_ratio", phrase("dynamic ratio of the tube"), before.ratio,
               rubber->rubber.ratio, std::hypot(rubber->ratioSpread, ofModulus)),
        fitted("tube.loss_factor", phrase("loss factor of the tube"), before.loss,
               rubber->rubber.loss, rubber->lossSpread)};
    correction.residual = rubber->residual;
    correction.residualBefore = rubber->residualBefore;
    correction.mark = pluckMark(doubts);
    if (!doubts.isModulusMeasured)
        correction.warnings.push_back(
            {"pluck-modulus", phrase("A pluck cannot tell a stiff tube from a high dynamic ratio, "
                                     "and the tube's modulus is not measured: do the hang test "
                                     "first.")});
    if (doubts.axesMisfit)
        correction.warnings.push_back(
            {"pluck-axes", phrase("What the sensor shows does not fit its stated axes or its "
                                  "place: directions were left out.")});
    if (!answer.plucksToAdd.empty())
        correction.warnings.push_back(
            {"pluck-modes",
             phrase("%1 of six modes have hardly rung. Pluck again: %2.",
                    whole(answer.modes.size() - doubts.excited), listOf(answer.plucksToAdd))});
    return answer;
}

}  // namespace stillbay
