// SPDX-License-Identifier: MIT
#include "core/clip/film_lines.h"

#include "core/base/quantile.h"
#include "core/base/sinc.h"
#include "core/clip/coder_loss.h"
#include "core/clip/ghost_lines.h"
#include "core/clip/line_crowds.h"
#include "core/clip/line_of_sine.h"
#include "core/clip/row_grid.h"
#include "core/clip/sine_search.h"
#include "core/clip/unclaimed_motion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kShortest = 1.0;        // [s] of usable film
constexpr double kLongestReadout = 0.1;  // [s]
constexpr double kHighest_hz = 2000;
constexpr double kCrowded = 5;  // so few 1/T from the next are one that wanders
// Of a line's motion: where whole frames show less, rows that a coder left late tell too much.
constexpr double kShakesFrames = 0.13;
constexpr double kHeldStill = 0.5;         // of that shake
constexpr double kClearDistortion = 0.03;  // of motion, worth a word
constexpr double kCoarse_px = 0.1;         // of a coder's floor, worth a word

// What stretches of the film were left out for, that of the longest time first.
std::vector<Phrase> reasonsOf(const std::vector<UnusableStretch>& stretches)
{
    struct Sum {
        Phrase reason;
        double time_s = 0.0;
    };
    std::vector<Sum> sums;
    for (const UnusableStretch& stretch : stretches) {
        auto sum = std::ranges::find(sums, stretch.reason, &Sum::reason);
        if (sum == sums.end())
            sum = sums.insert(sums.end(), {stretch.reason});
        sum->time_s += stretch.to_s - stretch.from_s;
    }
    std::ranges::stable_sort(sums, std::ranges::greater(), &Sum::time_s);
    std::vector<Phrase> reasons;
    for (Sum& sum : sums)
        reasons.push_back(std::move(sum.reason));
    return reasons;
}

// No answer comes with the reason why, where it is known.
tl::unexpected<Error> failFor(const Error& error, const RowShifts& shifts)
{
    const std::vector<Phrase> reasons = reasonsOf(shifts.unusable);
    if (error.code != Errc::NoAnswer || reasons.empty())
        return tl::unexpected(error);
    if (reasons.size() == 1)
        return fail(Errc::NoAnswer, phrase("%1, for %2", error.what, reasons[0]));
    return fail(Errc::NoAnswer, phrase("%1, for %2, and %3", error.what, reasons[0], reasons[1]));
}

Warning filmStabilised(double share)
{
    return {"film_stabilised",
            phrase("whole frames show only %1 % of the shake that their bent rows tell of: the "
                   "film was stabilised, and what it says of vibration may be wrong",
                   fixed(100 * std::max(0.0, share), 0))};
}

Warning filmDistorted(double share)
{
    return {"film_distorted",
            phrase("its compression makes lines of its own out of those that are there, of up to "
                   "%1\u00A0% of them: wobble may be read too small by three times as much",
                   fixed(100 * share, 0))};
}

Warning filmCoarse(double floor_px)
{
    return {"film_coarse",
            phrase("its compression leaves small motion out, so that its floor is as high as "
                   "%1\u00A0px of the film: film at the highest bit rate that the camera has",
                   rounded(floor_px, 2))};
}

// Lines and the power of all, for what the coder took. Returns its floor.
double putLossRight(const CodedFilm& coded, std::vector<FilmLine>& lines, double& wobble2,
                    double& shake2)
{
    if (!(coded.bitsPerPixel > 0))
        return 0.0;
    const double floor_px = codedFloor(coded, stepOf(lines, coded));
    const auto add = [&](double sign) {
        for (const FilmLine& line : lines) {
            wobble2 += sign * line.wobble_px * line.wobble_px;
            shake2 += sign * line.frameShake_px * line.frameShake_px;
        }
    };
    add(-1.0);
    putRight(lines, coded);
    add(1.0);
    std::ranges::stable_sort(lines, std::greater<>(), &FilmLine::wobble_px);
    return floor_px;
}

FilmReading readingOf(const SineSearch& search, const CodedFilm& coded)
{
    const RowGrid& grid = search.grid();
    const FilmReadingOptions& options = search.options();
    const std::vector<Sine>& sines = search.sines();
    const double aspect2 = std::pow(grid.width_px / grid.height_px, 2);
    FilmReading reading;
    reading.blind_hz = search.blind();
    reading.lowest_hz = options.lowest_hz;
    reading.highest_hz = options.highest_hz;
    reading.used_s = search.slow().usedTime();
    const double level = median(search.spectrum().level);
    const std::array<BandSums, 3> sums{bandSums(search, kAcross), bandSums(search, kUp),
                                       bandSums(search, kRoll)};
    reading.floor_px =
        std::sqrt(search.threshold() * level / ((sums[kAcross].weight + sums[kUp].weight) / 2));
    double wobble2 = 0, shake2 = 0;
    std::vector<Sine> claimed, sure;  // sure: of their alias, and that they shake frames
    for (std::size_t k = 0; k < sines.size() && !search.isStopped(); ++k) {
        if (search.isBlind(sines[k].frequency_hz) ||
            search.fits()[k].explained <
                search.threshold() * search.levelBeside(sines[k].frequency_hz, 0.0))
            continue;
        const FilmLine line = lineOfSine(search, k);
        claimed.push_back(sines[k]);
        if (line.aliases_hz.empty() && std::abs(sinc(std::numbers::pi * line.frequency_hz *
                                                     options.readout_s)) > kShakesFrames)
            sure.push_back(sines[k]);
        wobble2 += std::pow(line.wobble_px, 2);
        shake2 += std::pow(line.frameShake_px, 2);
        if (std::max(line.wobble_px, line.frameShake_px) >= reading.floor_px)
            reading.lines.push_back(line);
    }
    const double noise_px = reading.floor_px, reach_hz = kCrowded * search.width_hz();
    reading.lines = withCrowdsMerged(std::move(reading.lines), reach_hz, grid.rate_hz);
    const FilmDistortion distortion =
        takeGhosts(reading.lines, grid.rate_hz, search.width_hz(), grid.height_px);
    const double coded_px = putLossRight(coded, reading.lines, wobble2, shake2);
    if (distortion.share > kClearDistortion)
        reading.warnings.push_back(filmDistorted(distortion.share));
    if (coded_px > std::max({reading.floor_px, distortion.ghost_px, kCoarse_px}))
        reading.warnings.push_back(filmCoarse(coded_px));
    // Not before crowds are one: each of a crowd may be below.
    reading.floor_px =
        std::max({reading.floor_px, distortion.ghost_px, options.least_px, coded_px});
    std::erase_if(reading.lines, [&](const FilmLine& line) {
        return line.wobble_px < reading.floor_px &&
               line.frameShake_px < std::max(reading.floor_px, 2 * options.least_px);
    });
    // By what is a line after all: of a ghost frames show something else.
    const double clear_px = 2 * std::max(noise_px, coded_px);
    std::erase_if(sure, [&](const Sine& sine) {
        return std::ranges::none_of(reading.lines, [&](const FilmLine& line) {
            return line.wobble_px > clear_px &&
                   std::abs(line.frequency_hz - sine.frequency_hz) < reach_hz + 3 * line.wander_hz;
        });
    });
    if (const auto follow = framesFollow(search, sure)) {
        reading.framesFollow = follow->share;
        reading.isStabilised = follow->share + 3 * follow->spread < kHeldStill;
        if (reading.isStabilised)
            reading.warnings.insert(reading.warnings.begin(), filmStabilised(follow->share));
    }
    wobble2 += sums[kAcross].unexplained2() + sums[kUp].unexplained2() +
               sums[kRoll].unexplained2() * aspect2 / 12;
    reading.wobble_px = std::sqrt(wobble2);
    reading.frameShake_px = std::sqrt(shake2 + unexplainedShake2(search, claimed));
    return reading;
}

}  // namespace

bool isBlindAt(std::span<const BlindBand> blind, double f_hz)
{
    return std::any_of(blind.begin(), blind.end(), [f_hz](const BlindBand& band) {
        return band.from_hz <= f_hz && f_hz <= band.to_hz;
    });
}

bool isLookedAt(const FilmReading& reading, double f_hz)
{
    return f_hz >= reading.lowest_hz && f_hz <= reading.highest_hz &&
           !isBlindAt(reading.blind_hz, f_hz);
}

Result<FilmReading> readFilm(const RowShifts& shifts, const FilmReadingOptions& options,
                             const std::stop_token& stop, const Progress& progress)
{
    if (!(options.readout_s > 0 && options.readout_s <= kLongestReadout))
        return fail(Errc::BadInput, phrase("the readout must lie between 0 and %1 ms",
                                           whole(static_cast<std::size_t>(1e3 * kLongestReadout))));
    if (!(options.exposure_s >= 0 && options.exposure_s <= 1))
        return fail(Errc::BadInput, phrase("the exposure must lie between 0 and 1 s"));
    if (!(options.lowest_hz > 0 && options.lowest_hz < options.highest_hz &&
          options.highest_hz <= kHighest_hz))
        return fail(Errc::BadInput, phrase("the lowest frequency must lie above 0 and below the "
                                           "highest, that not above %1 Hz",
                                           whole(static_cast<std::size_t>(kHighest_hz))));
    auto grid = rowGrid(shifts);
    if (!grid)
        return failFor(grid.error(), shifts);
    if (grid->span() < kShortest)
        return failFor(
            {Errc::NoAnswer, phrase("the usable part of the film is shorter than a second"), {}},
            shifts);
    const CodedFilm coded{.bitsPerPixel = options.bitsPerPixel,
                          .blocks_px = blocksDisagree(shifts),
                          .rate_hz = grid->rate_hz,
                          .readout_s = options.readout_s,
                          .exposure_s = options.exposure_s,
                          .width_px = grid->width_px,
                          .height_px = grid->height_px};
    SineSearch search(std::move(*grid), options, stop);
    if (!search.run(progress))
        return tl::unexpected(stoppedOnRequest());
    FilmReading reading = readingOf(search, coded);
    if (search.isStopped())
        return tl::unexpected(stoppedOnRequest());
    if (progress)
        progress(SineSearch::kSteps, SineSearch::kSteps);
    return reading;
}

}  // namespace stillbay
