// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck.h"

#include "core/base/check.h"
#include "core/calibrate/free_modes.h"
#include "core/calibrate/pluck_fit.h"
#include "core/calibrate/pluck_mark.h"
#include "core/calibrate/pluck_matching.h"
#include "core/calibrate/until_taken.h"
#include "core/setup/fields.h"
#include "core/setup/sources.h"
#include "core/setup/spreads.h"
#include "core/suspension/motion_text.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace stillbay {
namespace {

constexpr double kAmbiguous = 1.3;       // rms of the next best over that of the best
constexpr double kExcitedShare = 0.002;  // of the record's energy
constexpr double kAxesFloor = 0.05;      // of the record: what directions may leave unexplained
constexpr double kLengthDoubt = 1e-4;    // [m] of a tube's length: how far it is stretched
constexpr double kLeastKnownTension = 0.5;
// By how much ratio and loss may be off for each share by which the modes are.
constexpr double kRatioForMisfit = 2.0, kLossForMisfit = 5.0;

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

// What rings, each stretch until a hand takes the bay again.
Result<RingDown> ringingOf(const Recording& recording, const PluckOptions& options,
                           const std::stop_token& stop)
{
    auto ring =
        ringDown(recording, {.channels = options.channels, .stretches = options.stretches}, stop);
    if (ring && options.stretches.empty()) {
        const std::vector<Stretch> free = untilTaken(recording, ring->channels, ring->plucks);
        if (free != ring->plucks)
            ring = ringDown(recording, {.channels = ring->channels, .stretches = free}, stop);
    }
    return ring;
}

/// The lowest place of a fit, and another ratio that explains the record hardly worse.
struct Settled {
    LowestRubber lowest;
    std::optional<double> otherRatio;
};

Settled settledFrom(const std::vector<RubberFigures>& starts, const PluckFit& fit,
                    const std::stop_token& stop)
{
    const std::vector<LowestRubber> places = fit.lowestFrom(starts, stop);
    Settled settled{places.front(), {}};
    if (places.size() > 1 &&
        places[1].value < kAmbiguous * kAmbiguous * std::max(places[0].value, 0.0))
        settled.otherRatio = places[1].rubber().ratio;
    return settled;
}

// The bay's modes before and after, how far each has rung, and what of them was measured.
std::array<PluckedMode, 6> pluckedModes(const Modes& before, const Modes& after,
                                        const DecayData::Fit& fit, std::size_t samples,
                                        const ModeMatching& matching)
{
    const double variance = std::max(0.0, fit.squares) / static_cast<double>(samples);
    const double energy = std::accumulate(fit.energy.begin(), fit.energy.end(), 0.0);
    std::array<PluckedMode, 6> modes;
    for (std::size_t k = 0; k < modes.size(); ++k) {
        PluckedMode& mode = modes[k];
        const auto column = static_cast<Eigen::Index>(k);
        mode.motion = motionOf(after.Phi.col(column));
        mode.before_hz = frequency_hz(before.omegaSquare[column]);
        mode.beforeLoss = lossFactor(before.omegaSquare[column]);
        mode.after_hz = frequency_hz(after.omegaSquare[column]);
        mode.afterLoss = lossFactor(after.omegaSquare[column]);
        for (std::size_t m = 0; m < matching.size(); ++m)
            if (matching[m] == k)
                mode.measured = m;
        mode.share = energy > 0.0 ? fit.energy[k] / energy : 0.0;
        mode.isExcited = mode.share > kExcitedShare &&
                         fit.energy[k] > 9 * variance * static_cast<double>(fit.parameters) / 6;
    }
    return modes;
}

std::vector<Phrase> plucksFor(const std::array<PluckedMode, 6>& modes, const Matrix6d& mass)
{
    std::array<bool, 6> isMissing{};
    for (const PluckedMode& mode : modes)
        if (!mode.isExcited)
            isMissing[static_cast<std::size_t>(mainMotion(mode.motion, mass))] = true;
    std::vector<Phrase> plucks;
    for (std::size_t motion = 0; motion < isMissing.size(); ++motion)
        if (isMissing[motion])
            plucks.push_back(pluckFor(static_cast<Eigen::Index>(motion)));
    return plucks;
}

Correction correctionOf(const RubberFigures& before, const FittedRubber& rubber,
                        const PluckDoubts& doubts, std::size_t plucks)
{
    Correction correction;
    correction.measurement = plucks == 1 ? phrase("pluck test, one pluck")
                                         : phrase("pluck test, %1 plucks", whole(plucks));
    const double lossSpread = std::hypot(rubber.lossSpread, kLossForMisfit * doubts.free.misfit);
    correction.values = {fitted("tube.dynamic_ratio", phrase("dynamic ratio of the tube"),
                                before.ratio, rubber.rubber.ratio, doubts.ratioSpread),
                         fitted("tube.loss_factor", phrase("loss factor of the tube"), before.loss,
                                rubber.rubber.loss, lossSpread)};
    correction.residual = rubber.residual;
    correction.residualBefore = rubber.residualBefore;
    correction.mark = pluckMark(doubts);
    return correction;
}

// Of a part's box, in the field table.
double mostOf(std::string_view key)
{
    const auto fields = fieldsOf<Part>();
    const auto field = std::ranges::find(fields, key, &Field<Part>::key);
    check(field != fields.end(), "a part's box has this");
    return field->max;
}

// A sensor is no larger than a part of the bay may be, and lies no farther away.
Result<void> sensorStands(const BaySensor& sensor)
{
    const double mass_g = mostOf("mass_g"), place_mm = mostOf("centre_mm"),
                 size_mm = mostOf("size_mm");
    const auto isWithin = [](const Triple& numbers, double low, double high) {
        return std::ranges::all_of(numbers, [=](double x) { return x >= low && x <= high; });
    };
    if (sensor.mass_g >= 0 && sensor.mass_g <= mass_g &&
        isWithin(sensor.centre_mm, -place_mm, place_mm) && isWithin(sensor.size_mm, 0, size_mm))
        return {};
    return fail(Errc::BadInput,
                phrase("no bay carries such a sensor: as a part of it, it weighs up to %1\u00A0g, "
                       "is up to %2\u00A0mm large and lies up to %3\u00A0mm from the datum",
                       exact(mass_g), exact(size_mm), exact(place_mm)));
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
    if (const auto stands = sensorStands(options.sensor); !stands)
        return tl::unexpected(stands.error());
    const auto model = PluckedBayModel::of(withSensor(setup, options.sensor), options.sensor);
    if (!model)
        return tl::unexpected(model.error());
    const auto ring = ringingOf(recording, options, stop);
    if (!ring)
        return tl::unexpected(ring.error());
    if (auto refused = refusedMatching(options.matching, ring->modes.size()))
        return tl::unexpected(*std::move(refused));

    const RubberFigures before{setup.tube.dynamic_ratio, setup.tube.loss_factor, 1.0};
    const double ofModulus = modulusSpread(setup);
    PluckDoubts doubts;
    doubts.tensionSpread =
        std::min(kLeastKnownTension, std::hypot(ofModulus, model->tensionSlope() * kLengthDoubt));
    doubts.isSensorWeighed = options.sensor.mass_g > 0.0;
    doubts.isModulusMeasured = isMeasured(setup, "tube.youngs_modulus_mpa");
    doubts.areAxesTold =
        options.sensor.axes.has_value() && areAxesComplete(recording, ring->channels);

    // All that rings, for a first look; then what is small of it.
    const PluckFit loud(*model, recording, ring->channels, ring->plucks, false, 0.0);
    std::vector<RubberFigures> starts =
        options.matching.empty()
            ? loud.hollows(stop)
            : std::vector{rubberOfMatching(*model, ring->modes, options.matching, before, stop)};
    if (starts.empty())
        starts.push_back(before);
    starts.front() = loud.from(starts.front(), stop).rubber();
    const std::vector<Stretch> small = loud.linearParts(starts.front());

    // With directions where they are known, unless they do not lie as stated.
    const PluckFit poles(*model, recording, ring->channels, small, false, doubts.tensionSpread);
    const PluckFit shaped(*model, recording, ring->channels, small, true, doubts.tensionSpread);
    const PluckFit* fit = doubts.areAxesTold ? &shaped : &poles;
    Settled settled = settledFrom(starts, *fit, stop);
    if (doubts.areAxesTold) {
        const LowestRubber without = poles.from(settled.lowest.rubber(), stop);
        const double floor = kAxesFloor * kAxesFloor * poles.data().squares();
        doubts.axesMisfit = settled.lowest.value > 9 * std::max(without.value, floor);
        if (doubts.axesMisfit) {
            fit = &poles;
            settled = settledFrom(starts, poles, stop);
        }
    }
    if (stop.stop_requested())
        return fail(Errc::NoAnswer, phrase("stopped"));
    doubts.otherRatio = settled.otherRatio;
    const auto rubber = fit->fitted(settled.lowest, before);
    if (!rubber)
        return fail(Errc::NoAnswer, phrase("%1: %2", rubber.error().what, pluckNextStep(doubts)));
    const auto modesBefore = model->modes(before), modesAfter = model->modes(rubber->rubber);
    const auto seen = fit->modes(rubber->rubber);
    if (!modesBefore || !modesAfter || !seen)
        return fail(Errc::NoAnswer, phrase("a mode of the bay does not swing"));

    PluckAnswer answer;
    answer.measured = ring->modes;
    answer.used = small;
    const ModeMatching matching =
        options.matching.empty() ? matched(ring->modes, *seen) : options.matching;
    answer.modes = pluckedModes(*modesBefore, *modesAfter, fit->data().fit(*seen),
                                fit->data().samples(), matching);
    answer.plucksToAdd = plucksFor(answer.modes, model->mass());

    std::vector<Complex> rung;
    for (std::size_t k = 0; k < seen->size(); ++k)
        if (answer.modes[k].isExcited)
            rung.push_back((*seen)[k].lambda);
    doubts.excited = rung.size();
    doubts.free = freeModes(recording, fit->data(), rung);
    for (std::size_t m = 0; m < matching.size(); ++m)
        doubts.foreign += matching[m] ? 0.0 : ring->modes[m].share;
    doubts.rubber = rubber->rubber;
    doubts.ratioSpread =
        std::hypot(rubber->ratioSpread, ofModulus, kRatioForMisfit * doubts.free.misfit);
    answer.correction = correctionOf(before, *rubber, doubts, small.size());
    answer.correction.warnings = pluckWarnings(doubts, answer.plucksToAdd);
    return answer;
}

}  // namespace stillbay
