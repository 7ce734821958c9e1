// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/clip/film_lines.h"
#include "core/clip/line_fit.h"
#include "core/clip/row_grid.h"
#include "core/clip/row_spectrum.h"
#include "core/clip/slow_motion.h"

#include <array>
#include <cstddef>
#include <stop_token>
#include <vector>

/// The sines in the rows of a film.
namespace stillbay {

/// Finds sines strongest first, each fitted again beside the others, until nothing stands out.
class SineSearch {
public:
    static constexpr std::size_t kSteps = 25;  ///< of progress; the last is left to the caller

    /// @param stop  every step of a fit looks at it: a long part has slow ones
    SineSearch(RowGrid grid, const FilmReadingOptions& options, std::stop_token stop);
    SineSearch(const SineSearch&) = delete;
    SineSearch& operator=(const SineSearch&) = delete;

    /// @return false where it was stopped: nothing of it is to be used then
    bool run(const Progress& progress);

    const RowGrid& grid() const { return m_grid; }
    const SlowMotion& slow() const { return m_slow; }
    const FilmReadingOptions& options() const { return m_options; }
    const std::vector<BlindBand>& blind() const { return m_blind; }
    const std::vector<Sine>& sines() const { return m_lines; }
    const std::vector<SineColumns::Fit>& fits() const { return m_fits; }  ///< one a sine
    const RowTables& left() const { return m_left; }  ///< what neither slow motion nor sines are
    const RowSpectrum& spectrum() const { return m_spectrum; }  ///< of that
    double width_hz() const { return m_width_hz; }              ///< one over the time read
    /// Squares over noise that a sine has to explain: noise alone does once in a thousand films.
    double threshold() const { return m_threshold; }

    bool isStopped() const { return m_stop.stop_requested(); }
    bool isBlind(double f_hz) const;

    /// What noise explains at a frequency, over what it should: as around it, or as rows there have
    /// beside the part that a line explains, whichever is more.
    double levelBeside(double f_hz, double explained) const;

    struct Alias {
        double f_hz, explained;
    };
    /// How well each alias of a frequency explains data, best first.
    std::vector<Alias> aliases(double f_hz, const RowTables& data) const;

private:
    struct RowPower {
        double square = 0.0, degrees = 0.0;
    };

    void trustSpreads(const std::array<double, 3>& scale);
    double beat(double f_hz) const;
    std::vector<double> newPeaks() const;
    RowPower rowPower(double f_hz) const;
    void add(double f_hz);
    void refit(int sweeps);

    RowGrid m_grid;
    const FilmReadingOptions& m_options;
    std::stop_token m_stop;
    SlowMotion m_slow;
    RowTables m_left;
    RowSpectrum m_spectrum;
    std::vector<Sine> m_lines;
    std::vector<SineColumns::Fit> m_fits;
    std::vector<BlindBand> m_blind;
    double m_width_hz = 0.0, m_threshold = 0.0;
};

}  // namespace stillbay
