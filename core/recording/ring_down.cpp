// SPDX-License-Identifier: MIT
#include "core/recording/ring_down.h"

#include "core/base/linalg.h"
#include "core/recording/decay_samples.h"
#include "core/recording/overtones.h"
#include "core/recording/pole_candidates.h"
#include "core/recording/pole_choice.h"
#include "core/recording/pole_fit.h"
#include "core/recording/softening.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace stillbay {
namespace {

using Index = Eigen::Index;

constexpr unsigned kLeastSamples = 32;
constexpr unsigned kBlocksOfAWidth = 192;
constexpr double kBlocksAPeriod = 5.0;  // of the highest mode
constexpr unsigned kLeastDecayBlocks = 10;
constexpr double kMostFrequencySpread = 0.012, kMostLossSpread = 0.15;  // of a mode claimed
constexpr double kLeastLoss = 0.002, kMostLoss = 0.8;
constexpr unsigned kMostCandidates = 20;
constexpr unsigned kMostChoosing = 6;  // plucks
constexpr int kMostMoves = 6;
constexpr Index kHeadBlocks = 2;
constexpr double kDisturbed = 12.0;  // mean square over that of the next blocks
constexpr double kTwoPi = 2.0 * std::numbers::pi;

// What the recording must hold before anything is sought in it.
std::optional<Error> problemOf(const Recording& recording, const std::vector<std::size_t>& channels)
{
    const auto bad = [](Phrase what) {
        return Error{Errc::BadInput, std::move(what), {}};
    };
    if (channels.empty() || recording.samples() == 0)
        return bad(phrase("the recording holds no samples"));
    if (!(recording.rate > 0.0) || !std::isfinite(recording.rate))
        return bad(phrase("the recording has no sampling rate"));
    for (const std::size_t c : channels) {
        if (c >= recording.channels.size())
            return bad(phrase("the recording has %1 columns, not %2",
                              whole(recording.channels.size()), whole(c + 1)));
        const Channel& channel = recording.channels[c];
        const auto wrong = std::find_if(channel.values.begin(), channel.values.end(),
                                        [](double x) { return !std::isfinite(x); });
        if (wrong != channel.values.end())
            return bad(phrase("sample %1 of column %2 is no number",
                              whole(static_cast<std::size_t>(wrong - channel.values.begin()) + 1),
                              channel.name));
    }
    if (recording.samples() < kLeastSamples)
        return bad(phrase("the recording is too short: %1 samples, and at least %2 are needed",
                          whole(recording.samples()), whole(kLeastSamples)));
    const bool isStill = std::all_of(channels.begin(), channels.end(), [&](std::size_t c) {
        const auto& values = recording.channels[c].values;
        return std::all_of(values.begin(), values.end(),
                           [&](double x) { return x == values.front(); });
    });
    if (isStill)
        return bad(phrase("nothing moves: every sample has the same value"));
    return std::nullopt;
}

// The values of a pluck less each channel's mean, which counts in a block as its samples do.
Eigen::MatrixXd withoutOffset(const DecaySamples& pluck)
{
    Eigen::VectorXd weight(pluck.values.rows());
    for (std::size_t j = 0; j < pluck.blocks(); ++j)
        weight[static_cast<Index>(j)] = std::sqrt(static_cast<double>(pluck.width[j]));
    return pluck.values - weight * (weight.transpose() * pluck.values / weight.squaredNorm());
}

std::vector<DecaySamples> samplesOf(const Recording& recording,
                                    const std::vector<std::size_t>& channels,
                                    const std::vector<double>& noise,
                                    const std::vector<Stretch>& stretches, double highest_hz)
{
    const int width = std::max(1, static_cast<int>(recording.rate / (kBlocksAPeriod * highest_hz)));
    std::vector<DecaySamples> plucks;
    for (const Stretch& stretch : stretches) {
        DecaySamples pluck =
            growingBlocks(recording, channels, noise, stretch, width, kBlocksOfAWidth);
        if (pluck.blocks() >= kLeastDecayBlocks)
            plucks.push_back(std::move(pluck));
    }
    double strongest = 0.0;
    for (DecaySamples& pluck : plucks) {
        pluck.strength = withoutOffset(pluck).topRows(kLeastDecayBlocks).norm();
        strongest = std::max(strongest, pluck.strength);
    }
    for (DecaySamples& pluck : plucks)
        pluck.strength = strongest > 0.0 ? pluck.strength / strongest : 1.0;
    return plucks;
}

std::vector<DecayPole> polesOf(const std::vector<PoleCandidate>& candidates)
{
    std::vector<DecayPole> poles;
    for (const PoleCandidate& candidate : candidates)
        if (poles.size() < kMostCandidates)
            poles.push_back(candidate.pole);
    return poles;
}

// The few stretches by which poles are chosen: those with the most energy, in time order.
std::vector<Stretch> strongestOf(const Recording& recording,
                                 const std::vector<std::size_t>& channels,
                                 const std::vector<double>& noise,
                                 const std::vector<Stretch>& stretches)
{
    if (stretches.size() <= kMostChoosing)
        return stretches;
    std::vector<std::pair<double, Stretch>> ranked;
    for (const Stretch& stretch : stretches) {
        double energy = 0.0;
        for (std::size_t c = 0; c < channels.size(); ++c) {
            const auto& values = recording.channels[channels[c]].values;
            double mean = 0.0;
            for (std::size_t i = stretch.from; i < stretch.to; ++i)
                mean += values[i] / static_cast<double>(stretch.samples());
            for (std::size_t i = stretch.from; i < stretch.to; ++i)
                energy += (values[i] - mean) * (values[i] - mean) / (noise[c] * noise[c]);
        }
        ranked.emplace_back(-energy, stretch);
    }
    std::sort(ranked.begin(), ranked.end(),
              [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Stretch> strongest;
    for (std::size_t k = 0; k < kMostChoosing; ++k)
        strongest.push_back(ranked[k].second);
    std::sort(strongest.begin(), strongest.end(),
              [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    return strongest;
}

double highestOf(const std::vector<DecayPole>& poles)
{
    double highest = 0.0;
    for (const DecayPole& pole : poles)
        highest = std::max(highest, pole.omega / kTwoPi);
    return highest;
}

// Each channel's noise as the fit's residuals have it.
std::vector<double> residualNoise(const PoleFit& fit, const std::vector<double>& noise)
{
    std::vector<double> better = noise;
    for (std::size_t c = 0; c < noise.size(); ++c) {
        double squares = 0.0, freedom = 0.0;
        for (const Eigen::MatrixXd& residual : fit.residuals) {
            squares += residual.col(static_cast<Index>(c)).squaredNorm();
            freedom += static_cast<double>(residual.rows()) -
                       2.0 * static_cast<double>(fit.poles.size()) -
                       static_cast<double>(kSlowColumns);
        }
        freedom -= 2.0 * static_cast<double>(fit.poles.size()) / static_cast<double>(noise.size());
        if (freedom > 0.0 && squares > 0.0)
            better[c] *= std::sqrt(squares / freedom);
    }
    return better;
}

// Moves the beginning of every stretch whose first blocks the poles explain far worse than the
// next: a finger or a blow is still there. Returns whether there was one.
bool moveDisturbed(std::vector<Stretch>& stretches, const std::vector<DecaySamples>& samples,
                   const PoleFit& fit)
{
    bool moved = false;
    std::size_t p = 0;
    for (Stretch& stretch : stretches) {
        // samplesOf() leaves out what is too short, in the same order.
        if (p == samples.size())
            break;
        const auto width = static_cast<std::size_t>(samples[p].width.front());
        if (stretch.samples() / width < kLeastDecayBlocks)
            continue;
        const Eigen::MatrixXd& residual = fit.residuals[p++];
        if (residual.rows() < 8 * kHeadBlocks)
            continue;
        const double head = residual.topRows(kHeadBlocks).squaredNorm() /
                            static_cast<double>(residual.topRows(kHeadBlocks).size());
        const double next = residual.middleRows(kHeadBlocks, 4 * kHeadBlocks).squaredNorm() /
                            static_cast<double>(4 * residual.topRows(kHeadBlocks).size());
        if (head > kDisturbed * std::max(next, 0.5)) {
            stretch.from += kHeadBlocks * width;
            moved = true;
        }
    }
    return moved;
}

// The energy of one mode's decays, in the channels' own units.
double energyOf(const PoleFit& fit, std::size_t mode, const std::vector<double>& noise)
{
    double energy = 0.0;
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes)
        for (std::size_t c = 0; c < noise.size(); ++c)
            energy += std::norm(amplitudes(static_cast<Index>(mode), static_cast<Index>(c))) *
                      noise[c] * noise[c];
    return energy / (-fit.poles[mode].s().real());
}

DecayingMode modeOf(const PoleFit& fit, std::size_t k, const std::vector<double>& noise)
{
    DecayingMode mode;
    const auto at = static_cast<Index>(k);
    const double factor = std::sqrt(std::max(1e-300, noiseOf(fit)));
    mode.frequency_hz = fit.poles[k].omega / kTwoPi;
    mode.lossFactor = 2.0 * fit.poles[k].damping;
    mode.softens = fit.poles[k].softening;
    mode.frequencySpread = factor * std::sqrt(std::max(0.0, fit.covariance(2 * at, 2 * at)));
    mode.lossSpread = factor * std::sqrt(std::max(0.0, fit.covariance(2 * at + 1, 2 * at + 1)));
    // Its shape: of all plucks, turned to one phase by the strongest.
    const auto channels = static_cast<Index>(noise.size());
    Eigen::VectorXcd shape = Eigen::VectorXcd::Zero(channels);
    Eigen::VectorXd unit(channels);
    for (Index c = 0; c < channels; ++c)
        unit[c] = noise[static_cast<std::size_t>(c)];
    Eigen::MatrixXcd spread = Eigen::MatrixXcd::Zero(channels, channels);
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes) {
        const Eigen::VectorXcd moved =
            amplitudes.row(at).transpose().cwiseProduct(unit.cast<Complex>());
        spread += moved * moved.adjoint();
    }
    Index largest = 0;
    spread.diagonal().real().maxCoeff(&largest);
    shape = spread.col(largest);
    if (std::abs(shape[largest]) > 0.0)
        shape /= shape[largest];
    mode.shape.assign(shape.begin(), shape.end());
    for (const Eigen::MatrixXcd& amplitudes : fit.amplitudes)
        mode.amplitudes.push_back(std::abs(amplitudes(at, largest)) * unit[largest]);
    return mode;
}

bool isClaimed(const DecayingMode& mode, const RingDownOptions& options)
{
    return mode.frequencySpread < kMostFrequencySpread && mode.lossSpread < kMostLossSpread &&
           mode.lossFactor > kLeastLoss && mode.lossFactor < kMostLoss &&
           mode.frequency_hz >= options.lowest_hz && mode.frequency_hz <= options.highest_hz;
}

bool moveAlike(const DecayingMode& a, const DecayingMode& b)
{
    Complex product = 0.0;
    double aa = 0.0, bb = 0.0;
    for (std::size_t c = 0; c < a.shape.size(); ++c) {
        product += std::conj(a.shape[c]) * b.shape[c];
        aa += std::norm(a.shape[c]);
        bb += std::norm(b.shape[c]);
    }
    return std::norm(product) > 0.97 * aa * bb;
}

double apartBy(const DecayingMode& a, const DecayingMode& b)
{
    return std::abs(std::log(a.frequency_hz / b.frequency_hz));
}

// Two modes that move alike and overlap: one column, or none of them, tells them from one.
bool areAlike(const DecayingMode& a, const DecayingMode& b)
{
    return apartBy(a, b) < 0.5 * std::max(a.lossFactor, b.lossFactor) && moveAlike(a, b);
}

// What stands for the softening of a larger mode: at its frequency, moving alike, and dying much
// faster. Where the frequency falls with the square of the motion, exp(−3ζωt) is its first term.
bool isSofteningOf(const DecayingMode& small, const DecayingMode& large)
{
    return small.share < 0.4 * large.share && apartBy(small, large) < 0.02 &&
           small.lossFactor > 1.5 * large.lossFactor && moveAlike(small, large);
}

// Share by which a mode swings slower than by its pole where the strongest pluck begins, with what
// stands for its softening behind it: of the sum of their motions, a Σ exp(s t), at t = 0.
double softeningAtFirst(const PoleFit& fit, const std::vector<std::size_t>& parts,
                        std::size_t largest)
{
    const auto column = static_cast<Index>(largest), mode = static_cast<Index>(parts.front());
    const auto strongest = std::max_element(
        fit.amplitudes.begin(), fit.amplitudes.end(), [&](const auto& a, const auto& b) {
            return std::abs(a(mode, column)) < std::abs(b(mode, column));
        });
    Complex motion = 0.0, velocity = 0.0;
    for (const std::size_t part : parts) {
        const Complex amplitude = (*strongest)(static_cast<Index>(part), column);
        motion += amplitude;
        velocity += amplitude * fit.poles[part].s();
    }
    return 1.0 - (velocity / motion).imag() / fit.poles[parts.front()].s().imag();
}

QualityMark markOf(const RingDown& answer)
{
    for (const DecayingMode& mode : answer.modes)
        if (mode.share > 0.05 && (mode.frequencySpread > 0.006 || mode.lossSpread > 0.08))
            return {Quality::Fair,
                    phrase("the mode at %1\u00A0Hz is known only to %2\u00A0% in "
                           "frequency and %3\u00A0% in loss",
                           fixed(mode.frequency_hz, 1), rounded(100.0 * mode.frequencySpread, 2),
                           rounded(100.0 * mode.lossSpread, 2))};
    for (const DecayingMode& mode : answer.modes) {
        if (mode.share <= 0.05 || std::abs(mode.softens) <= 0.005)
            continue;
        if (mode.softens > 0.0)
            return {Quality::Fair,
                    phrase("the mode at %1\u00A0Hz softens: %2\u00A0% lower while it is large",
                           fixed(mode.frequency_hz, 1), fixed(100.0 * mode.softens, 1))};
        return {Quality::Fair,
                phrase("the mode at %1\u00A0Hz stiffens: %2\u00A0% higher while it is large",
                       fixed(mode.frequency_hz, 1), fixed(-100.0 * mode.softens, 1))};
    }
    for (std::size_t k = 0; k + 1 < answer.modes.size(); ++k)
        if (areAlike(answer.modes[k], answer.modes[k + 1]))
            return {Quality::Fair,
                    phrase("the modes at %1\u00A0Hz and %2\u00A0Hz move alike: more columns, or a "
                           "pluck in another direction, tell them apart",
                           fixed(answer.modes[k].frequency_hz, 1),
                           fixed(answer.modes[k + 1].frequency_hz, 1))};
    if (answer.signalToNoise_db < 15.0)
        return {Quality::Fair, phrase("the decays stand only %1 dB above the noise",
                                      fixed(answer.signalToNoise_db, 0))};
    if (answer.plucks.size() == 1)
        return {Quality::Good,
                phrase("one pluck, %1 dB above the noise", fixed(answer.signalToNoise_db, 0))};
    return {Quality::Good, phrase("%1 plucks, %2 dB above the noise", whole(answer.plucks.size()),
                                  fixed(answer.signalToNoise_db, 0))};
}

}  // namespace

Complex DecayingMode::pole() const
{
    return DecayPole{kTwoPi * frequency_hz, 0.5 * lossFactor}.s();
}

std::vector<std::size_t> usualChannels(const Recording& recording)
{
    const auto all = [&](auto isWanted) {
        std::vector<std::size_t> channels;
        for (std::size_t c = 0; c < recording.channels.size(); ++c)
            if (isWanted(recording.channels[c].quantity))
                channels.push_back(c);
        return channels;
    };
    for (const Quantity quantity : {Quantity::Acceleration, Quantity::AngularRate})
        if (auto channels = all([&](Quantity each) { return each == quantity; }); !channels.empty())
            return channels;
    return all([](Quantity quantity) {
        return quantity != Quantity::Throttle && quantity != Quantity::RotorSpeed;
    });
}

Result<RingDown> ringDown(const Recording& recording, const RingDownOptions& options,
                          std::stop_token stop)
{
    RingDown answer;
    answer.channels = options.channels.empty() ? usualChannels(recording) : options.channels;
    if (auto problem = problemOf(recording, answer.channels))
        return tl::unexpected(*std::move(problem));

    Plucks found = findPlucks(recording, answer.channels);
    if (!options.stretches.empty())
        found.stretches = options.stretches;
    std::erase_if(found.stretches, [&](Stretch& stretch) {
        stretch.to = std::min(stretch.to, recording.samples());
        return stretch.from + kLeastDecayBlocks > stretch.to;
    });
    if (found.stretches.empty())
        return fail(Errc::NoAnswer,
                    phrase("nothing rings down: no pluck stands out of the noise and dies away"));
    std::vector<double> noise = found.noise;

    const auto candidates = poleCandidates(recording, answer.channels, noise, found.stretches,
                                           {options.lowest_hz, options.highest_hz});
    std::vector<DecayPole> poles = polesOf(candidates);
    if (poles.empty() || stop.stop_requested())
        return fail(Errc::NoAnswer, phrase("nothing rings down: the samples hold no decay"));

    // Chosen at the noise of the pauses, then once more at that of the residuals; then fitted to
    // all. What still shakes a pluck's first samples has not let go: the stretch begins later.
    PoleFit fit;
    std::vector<DecaySamples> samples;
    for (int moved = 0; moved <= kMostMoves; ++moved) {
        const auto strongest = strongestOf(recording, answer.channels, noise, found.stretches);
        for (int round = 0; round < 2; ++round) {
            samples = samplesOf(recording, answer.channels, noise, strongest, highestOf(poles));
            if (samples.empty())
                return fail(Errc::NoAnswer, phrase("nothing rings down: the decays are too short"));
            fit = choosePoles(samples, poles);
            if (fit.poles.empty())
                break;
            noise = residualNoise(fit, noise);
            poles = fit.poles;
        }
        if (fit.poles.empty())
            break;
        samples = samplesOf(recording, answer.channels, noise, found.stretches, highestOf(poles));
        fit = fitPoles(samples, poles);
        if (moved == kMostMoves || stop.stop_requested() ||
            !moveDisturbed(found.stretches, samples, fit))
            break;
        noise = found.noise;
        poles = polesOf(poleCandidates(recording, answer.channels, noise, found.stretches,
                                       {options.lowest_hz, options.highest_hz}));
        if (poles.empty())
            break;
    }
    double whole = 0.0;
    for (std::size_t k = 0; k < fit.poles.size(); ++k)
        whole += energyOf(fit, k, noise);
    std::vector<DecayingMode> all;
    std::vector<double> shares;
    for (std::size_t k = 0; k < fit.poles.size(); ++k) {
        shares.push_back(energyOf(fit, k, noise) / whole);
        all.push_back(modeOf(fit, k, noise));
        all[k].share = shares[k];
    }
    for (std::size_t k = 0; k < fit.poles.size(); ++k) {
        DecayingMode mode = all[k];
        const bool isPart = std::any_of(all.begin(), all.end(), [&](const DecayingMode& large) {
            return isSofteningOf(all[k], large);
        });
        if (isPart || !isClaimed(mode, options))
            continue;
        if (const auto parents = parentsOf(fit, shares, k)) {
            answer.overtones.push_back({mode.frequency_hz, all[parents->first].frequency_hz,
                                        all[parents->second].frequency_hz});
            continue;
        }
        std::vector<std::size_t> parts{k};
        for (std::size_t other = 0; other < all.size(); ++other)
            if (other != k && isSofteningOf(all[other], all[k])) {
                parts.push_back(other);
                mode.share += all[other].share;
            }
        const auto largest = static_cast<std::size_t>(
            std::max_element(mode.shape.begin(), mode.shape.end(),
                             [](Complex a, Complex b) { return std::abs(a) < std::abs(b); }) -
            mode.shape.begin());
        mode.softening = softeningOf(samples, fit, parts, largest, noise[largest]);
        if (parts.size() > 1)
            mode.softens = softeningAtFirst(fit, parts, largest);
        answer.modes.push_back(std::move(mode));
    }
    if (answer.modes.empty())
        return fail(Errc::NoAnswer,
                    phrase("nothing rings down: what moves is noise, or goes on without dying"));
    // What is no mode, a blow in the first samples for one, has no share.
    double ofModes = 0.0;
    for (const DecayingMode& mode : answer.modes)
        ofModes += mode.share;
    for (DecayingMode& mode : answer.modes)
        mode.share /= ofModes;
    std::sort(answer.modes.begin(), answer.modes.end(),
              [](const auto& a, const auto& b) { return a.frequency_hz < b.frequency_hz; });
    answer.plucks = found.stretches;
    double energy = 0.0, count = 0.0;
    for (const DecaySamples& pluck : samples) {
        energy += withoutOffset(pluck).squaredNorm();
        count += static_cast<double>(pluck.values.size());
    }
    answer.residual = std::min(1.0, fit.squares / std::max(energy, 1e-300));
    const double noisePower = noiseOf(fit) * count;
    answer.signalToNoise_db =
        10.0 * std::log10(std::max(1e-3, energy / std::max(noisePower, 1e-300) - 1.0));
    answer.mark = markOf(answer);
    return answer;
}

}  // namespace stillbay
