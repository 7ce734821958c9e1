// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_grid.h"
#include "core/clip/slow_motion.h"

#include <array>
#include <cstddef>
#include <stop_token>
#include <vector>

/// Least-squares periodogram of the rows of a film.
namespace stillbay {

struct RowSpectrum {
    double first_hz = 0.0, step_hz = 0.0;
    std::array<double, 3> scale{};  ///< of each axis: square of the noise over the spreads told
    std::vector<double> told = {};  ///< how far a sine lowers the sum of squares over spreads told
    /// How far a sine across, up and in roll lowers the sum of squares over spreads so corrected;
    /// of noise alone χ² of 6.
    std::vector<double> explained = {};
    std::vector<double> level = {};  ///< what noise explains around there, over what it should

    double frequency_hz(std::size_t k) const { return first_hz + static_cast<double>(k) * step_hz; }
    double levelAt(double f_hz) const;
};

/// Exact but for weights, which count in the sines' own power as a frame's times a row's: it finds
/// lines, which a fit then measures.
///
/// @param cleaned  what SlowMotion leaves of the bands
/// @param stop     then the spectrum is not to be used
/// @source Lomb 1976, Scargle 1982, for several series with one sine; Taylor series in frequency
///         for blocks, own derivation
RowSpectrum rowSpectrum(const RowGrid& grid, const SlowMotion& slow, const RowTables& cleaned,
                        double readout, double lowest_hz, double highest_hz,
                        const std::stop_token& stop);

}  // namespace stillbay
