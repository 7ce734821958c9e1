// SPDX-License-Identifier: MIT
#include "core/clip/readout.h"

#include "core/clip/line_fit.h"
#include "core/clip/row_grid.h"
#include "core/clip/row_spectrum.h"
#include "core/clip/slow_motion.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay {
namespace {

constexpr double kShortestReadout = 2e-3;  // [s]
constexpr double kTurnsAStep = 0.08;       // down the frame: the peak is a turn or so wide
constexpr double kAround_hz = 100;         // either side: there noise is judged, other lines found
constexpr std::size_t kOthers = 4;
constexpr double kStanding = 0.9;      // share that a standing pattern eats
constexpr double kClear = 60;          // over noise, in squares: χ² of 6 has that in 1e-11
constexpr double kShortestClip = 1.0;  // [s]
constexpr double kUsefulSpread = 0.1;  // of the readout
// What a coder moves goes with the line and is in no noise beside it: 31 drawn films of 320 and 640
// columns at crf 23 erred by 1.9 times what the noise told, rms.
constexpr double kOfCoder = 2.0;
constexpr double kOfCoderToo = 4e-3;  // of the readout, where noise is next to none

struct Try {
    double readout = 0.0, explained = 0.0, frequency_hz = 0.0;
    // What slow motion and the line leave, in squares over spreads: slow motion, too, bends rows by
    // the readout, so the least left counts, not the most explained.
    double left = std::numeric_limits<double>::infinity();
};

double squares(const RowGrid& grid, const RowTables& tables)
{
    double sum = 0;
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (std::size_t k = 0; k < tables[axis].size(); ++k)
            sum += grid.weight[axis][k] * tables[axis][k] * tables[axis][k];
    return sum;
}

class Finder {
public:
    Finder(RowGrid grid, double about_hz, double tolerance_hz)
        : m_grid(std::move(grid)), m_about_hz(about_hz), m_tolerance_hz(tolerance_hz)
    {
    }

    // Takes the strongest other lines around out of the film: beside them the readout leans.
    void takeOthersOut(const Try& at, const std::stop_token& stop)
    {
        const SlowMotion slow(m_grid, at.readout);
        const double width_hz = 1 / m_grid.span();
        RowTables left = m_grid.value;
        slow.takeOut(left);
        const SineColumns own(m_grid, slow, at.readout, at.frequency_hz);
        own.addTo(left, own.fit(left).amplitude, -1.0);
        for (std::size_t k = 0; k < kOthers && !stop.stop_requested(); ++k) {
            const RowSpectrum spectrum = around(slow, left, at.readout, stop);
            Sine other;
            double most = 0;
            for (std::size_t i = 0; i < spectrum.level.size(); ++i) {
                const double f_hz = spectrum.frequency_hz(i);
                if (spectrum.explained[i] > kClear * spectrum.level[i] && spectrum.told[i] > most &&
                    slow.eatenByPattern(f_hz) < kStanding &&
                    std::abs(f_hz - at.frequency_hz) > 2 * width_hz) {
                    most = spectrum.told[i];
                    other.frequency_hz = f_hz;
                }
            }
            if (most <= 0)
                return;
            refineSine(m_grid, slow, at.readout, left, width_hz, other);
            SineColumns(m_grid, slow, at.readout, other.frequency_hz)
                .addTo(left, other.amplitude, -1.0);
            addSine(m_grid, at.readout, other, -1.0, m_grid.value);
        }
    }

    // Best within the tolerance, on the periodogram's grid.
    Try coarse(double readout, const std::stop_token& stop) const
    {
        const SlowMotion slow(m_grid, readout);
        RowTables left = m_grid.value;
        slow.takeOut(left);
        const RowSpectrum spectrum =
            rowSpectrum(m_grid, slow, left, readout, m_about_hz - m_tolerance_hz,
                        m_about_hz + m_tolerance_hz, stop);
        // Its own scale is the line's: squares over the spreads as told compare between readouts.
        Try best{.readout = readout};
        for (std::size_t k = 0; k < spectrum.told.size(); ++k)
            if (spectrum.told[k] > best.explained) {
                best.explained = spectrum.told[k];
                best.frequency_hz = spectrum.frequency_hz(k);
            }
        best.left = squares(m_grid, left) - best.explained;
        return best;
    }

    // The same by a fit, from a frequency near by.
    Try fine(double readout, double from_hz) const
    {
        const SlowMotion slow(m_grid, readout);
        RowTables left = m_grid.value;
        slow.takeOut(left);
        Sine sine{.frequency_hz = from_hz};
        const auto fit = refineSine(m_grid, slow, readout, left, 1 / m_grid.span(), sine);
        return {readout, fit.explained, sine.frequency_hz, squares(m_grid, left) - fit.explained};
    }

    // What noise explains, over what it should.
    double level(const Try& at, const std::stop_token& stop) const
    {
        const SlowMotion slow(m_grid, at.readout);
        RowTables left = m_grid.value;
        slow.takeOut(left);
        const SineColumns columns(m_grid, slow, at.readout, at.frequency_hz);
        columns.addTo(left, columns.fit(left).amplitude, -1.0);
        const RowSpectrum spectrum = around(slow, left, at.readout, stop);
        return *std::max_element(spectrum.scale.begin(), spectrum.scale.end());
    }

private:
    RowSpectrum around(const SlowMotion& slow, const RowTables& left, double readout,
                       const std::stop_token& stop) const
    {
        return rowSpectrum(m_grid, slow, left, readout, std::max(1.0, m_about_hz - kAround_hz),
                           m_about_hz + kAround_hz, stop);
    }

    RowGrid m_grid;
    double m_about_hz, m_tolerance_hz;
};

// To the top by parabolas through three, closer each time; its second derivative.
double climb(const Finder& finder, double reach, double longest, Try& best)
{
    double bend = 0;
    best = finder.fine(best.readout, best.frequency_hz);
    for (int round = 0; round < 3; ++round) {
        const Try before = finder.fine(best.readout - reach, best.frequency_hz);
        const Try after = finder.fine(best.readout + reach, best.frequency_hz);
        bend = (before.left - 2 * best.left + after.left) / (reach * reach);
        if (bend <= 0)
            break;
        const double slope = (after.left - before.left) / (2 * reach);
        best = finder.fine(std::clamp(best.readout + std::clamp(-slope / bend, -reach, reach),
                                      kShortestReadout / 2, longest),
                           best.frequency_hz);
        reach /= 2.5;
    }
    return bend;
}

}  // namespace

Result<ReadoutEstimate> estimateReadout(const RowShifts& shifts, double about_hz,
                                        double tolerance_hz, const std::stop_token& stop,
                                        const Progress& progress)
{
    const auto grid = rowGrid(shifts);
    if (!grid)
        return tl::unexpected(grid.error());
    if (grid->span() < kShortestClip)
        return fail(Errc::BadInput, phrase("the usable part of the film is shorter than a second"));
    if (!(tolerance_hz > 0 && tolerance_hz < grid->rate_hz / 4 && about_hz > 2 * tolerance_hz &&
          about_hz < 2000))
        return fail(Errc::BadInput,
                    phrase("a known frequency must be known to a quarter of the frame rate"));
    const double width_hz = 1 / grid->span();
    if (std::abs(about_hz - grid->rate_hz * std::round(about_hz / grid->rate_hz)) <
        tolerance_hz + width_hz)
        return fail(Errc::NoAnswer,
                    phrase("%1 Hz is too close to a multiple of the frame rate: in every frame the "
                           "same, it cannot be told from the scene",
                           rounded(about_hz, 4)));
    Finder finder(*grid, about_hz, tolerance_hz);
    const double longest = 1 / grid->rate_hz, step = kTurnsAStep / about_hz;
    const auto tries =
        static_cast<std::size_t>(std::max(4.0, std::ceil((longest - kShortestReadout) / step)));
    Try best;
    for (std::size_t k = 0; k <= tries; ++k) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        const Try each =
            finder.coarse(kShortestReadout + (longest - kShortestReadout) * static_cast<double>(k) /
                                                 static_cast<double>(tries),
                          stop);
        if (each.left < best.left)
            best = each;
        if (progress)
            progress(k + 1, tries + 2);
    }
    if (best.explained <= 0)
        return fail(Errc::NoAnswer, phrase("no line stands out at %1 Hz", rounded(about_hz, 4)));
    climb(finder, step, longest, best);
    finder.takeOthersOut(best, stop);
    const double bend = climb(finder, step / 4, longest, best);
    const double level = finder.level(best, stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (best.explained < kClear * level)
        return fail(Errc::NoAnswer, phrase("no line stands out at %1 Hz", rounded(about_hz, 4)));
    const double spread =
        bend > 0 ? std::hypot(kOfCoder * std::sqrt(2 * level / bend), kOfCoderToo * best.readout)
                 : best.readout;
    if (spread > kUsefulSpread * best.readout)
        return fail(Errc::NoAnswer,
                    phrase("at %1 Hz the frame moves as one and does not tell its readout",
                           rounded(about_hz, 4)));
    if (progress)
        progress(tries + 2, tries + 2);
    return ReadoutEstimate{best.readout, spread, best.frequency_hz};
}

}  // namespace stillbay
