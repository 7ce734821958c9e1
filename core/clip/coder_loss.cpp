// SPDX-License-Identifier: MIT
#include "core/clip/coder_loss.h"

#include "core/base/quantile.h"
#include "core/clip/blind_bands.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kBlock_px = 16.0;  // what coders move as one, at most

// The law's own numbers, by films of known motion.
constexpr double kLoss = 0.0572;   // at one bit a pixel and blocks that disagree by a whole step
constexpr double kByBits = 0.418;  // powers of both
constexpr double kByBlocks = 0.853;
constexpr double kAlways = 0.077;  // of what is lost at half the frame rate, at no beat at all
constexpr double kByTurns = 11.1;  // of a line that turns once within a block
constexpr double kWithin = 0.16;   // of the square of a motion that is the same in every frame

constexpr double kUsualBeat = 0.5;       // sin² of half the turn between frames, on average
constexpr double kMostAtFloor = 0.07;    // of loss, of a line of three floors with that
constexpr double kLossUnknown = 0.75;    // of a line's loss, one standard deviation …
constexpr double kAlwaysUnknown = 0.03;  // … and of its wobble
constexpr double kLeastStep_px = 1e-3;

double motion2(const FilmLine& line, const CodedFilm& film)
{
    const double size2 = film.width_px * film.width_px + film.height_px * film.height_px;
    const double motion2 = line.across_px * line.across_px + line.up_px * line.up_px +
                           line.roll_rad * line.roll_rad * size2 / 12;
    return motion2 * std::pow(blurAt(line.frequency_hz, film.exposure_s), 2);
}

// From one frame to the next a sine of power 1 moves by so much, squared.
double step2(double f_hz, double rate_hz)
{
    return 4 * std::pow(std::sin(std::numbers::pi * f_hz / rate_hz), 2);
}

double lossAt(const CodedFilm& film, double step_px)
{
    return kLoss * std::pow(film.bitsPerPixel, -kByBits) *
           std::pow(film.blocks_px / std::max(step_px, kLeastStep_px), kByBlocks);
}

}  // namespace

double blocksDisagree(const RowShifts& shifts)
{
    std::vector<double> squares;
    for (const BandShift& band : shifts.bands)
        squares.push_back((std::pow(band.acrossSpread_px, 2) + std::pow(band.upSpread_px, 2)) / 2);
    const double blocks =
        shifts.width * shifts.height * shifts.bandHeight / (kBlock_px * kBlock_px);
    return squares.empty() ? 0.0 : std::sqrt(median(std::move(squares)) * blocks);
}

double stepOf(std::span<const FilmLine> lines, const CodedFilm& film)
{
    double square = 0.0;
    for (const FilmLine& line : lines)
        square += motion2(line, film) * (kWithin + step2(line.frequency_hz, film.rate_hz));
    return std::sqrt(square);
}

double lossOf(const CodedFilm& film, double step_px, double f_hz)
{
    const double turns = f_hz * film.readout_s * kBlock_px / film.height_px;
    const double pattern = kAlways + step2(f_hz, film.rate_hz) / 4 + kByTurns * turns * turns;
    return lossAt(film, step_px) * pattern;
}

void putRight(std::vector<FilmLine>& lines, const CodedFilm& film)
{
    const double step_px = stepOf(lines, film);
    for (FilmLine& line : lines) {
        const double loss = lossOf(film, step_px, line.frequency_hz);
        const double times = std::exp(std::min(loss, kMostPutRight));
        for (double* const size : {&line.across_px, &line.up_px, &line.roll_rad, &line.wobble_px,
                                   &line.frameShake_px, &line.wobbleUncertainty_px})
            *size *= times;
        line.wobbleUncertainty_px =
            std::hypot(line.wobbleUncertainty_px, kLossUnknown * loss * line.wobble_px,
                       kAlwaysUnknown * line.wobble_px);
    }
}

double codedFloor(const CodedFilm& film, double step_px)
{
    // Where the loss of the usual line has come down to what a line of three floors may have.
    const double enough_px = film.blocks_px * std::pow(lossAt(film, film.blocks_px) *
                                                           (kAlways + kUsualBeat) / kMostAtFloor,
                                                       1 / kByBlocks);
    const double missing2 = std::max(0.0, enough_px * enough_px - step_px * step_px);
    return std::sqrt(missing2 / (kWithin + 4 * kUsualBeat)) / 3;
}

}  // namespace stillbay
