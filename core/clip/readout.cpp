// SPDX-License-Identifier: MIT
#include "core/clip/readout.h"

#include "core/clip/line_fit.h"
#include "core/clip/row_grid.h"
#include "core/clip/row_spectrum.h"
#include "core/clip/slow_motion.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kShortestReadout = 2e-3;  // [s]
constexpr double kTurnsAStep = 0.08;       // down the frame: the peak is a turn or so wide
constexpr double kAround_hz = 100;         // either side: there noise is judged
constexpr double kClear = 60;              // over noise, in squares: χ² of 6 has that in 1e-11
constexpr double kShortestClip = 1.0;      // [s]
constexpr double kUsefulSpread = 0.1;      // of the readout

struct Try {
    double readout = 0.0, explained = 0.0, frequency_hz = 0.0;
};

class Finder {
public:
    Finder(const RowGrid& grid, double about_hz, double tolerance_hz)
        : m_grid(grid), m_about_hz(about_hz), m_tolerance_hz(tolerance_hz)
    {
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
        return {readout, fit.explained, sine.frequency_hz};
    }

    // What noise explains, over what it should.
    double level(const Try& at, const std::stop_token& stop) const
    {
        const SlowMotion slow(m_grid, at.readout);
        RowTables left = m_grid.value;
        slow.takeOut(left);
        const SineColumns columns(m_grid, slow, at.readout, at.frequency_hz);
        columns.addTo(left, columns.fit(left).amplitude, -1.0);
        const RowSpectrum spectrum =
            rowSpectrum(m_grid, slow, left, at.readout, std::max(1.0, m_about_hz - kAround_hz),
                        m_about_hz + kAround_hz, stop);
        return *std::max_element(spectrum.scale.begin(), spectrum.scale.end());
    }

private:
    const RowGrid& m_grid;
    double m_about_hz, m_tolerance_hz;
};

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
    const Finder finder(*grid, about_hz, tolerance_hz);
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
        if (each.explained > best.explained)
            best = each;
        if (progress)
            progress(k + 1, tries + 2);
    }
    if (best.explained <= 0)
        return fail(Errc::NoAnswer, phrase("no line stands out at %1 Hz", rounded(about_hz, 4)));
    // A parabola through three, closer each time.
    double bend = 0, reach = step;
    best = finder.fine(best.readout, best.frequency_hz);
    for (int round = 0; round < 4; ++round) {
        const Try before = finder.fine(best.readout - reach, best.frequency_hz);
        const Try after = finder.fine(best.readout + reach, best.frequency_hz);
        bend = (before.explained - 2 * best.explained + after.explained) / (reach * reach);
        if (bend >= 0)
            break;
        const double slope = (after.explained - before.explained) / (2 * reach);
        const double moved = best.readout + std::clamp(-slope / bend, -reach, reach);
        best =
            finder.fine(std::clamp(moved, kShortestReadout / 2, 1.2 * longest), best.frequency_hz);
        reach = round == 0 ? reach / 2 : reach / 3;
    }
    const double level = finder.level(best, stop);
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    if (best.explained < kClear * level)
        return fail(Errc::NoAnswer, phrase("no line stands out at %1 Hz", rounded(about_hz, 4)));
    const double spread = bend < 0 ? std::sqrt(2 * level / -bend) : best.readout;
    if (spread > kUsefulSpread * best.readout)
        return fail(Errc::NoAnswer,
                    phrase("at %1 Hz the frame moves as one and does not tell its readout",
                           rounded(about_hz, 4)));
    if (progress)
        progress(tries + 2, tries + 2);
    return ReadoutEstimate{best.readout, spread, best.frequency_hz};
}

}  // namespace stillbay
