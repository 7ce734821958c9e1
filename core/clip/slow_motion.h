// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_grid.h"

#include <array>
#include <cstddef>
#include <vector>

/// What is no vibration in the rows of a film.
namespace stillbay {

/// Takes out of tables of shifts, by one linear rule for data and for sines,
/// - of each frame its shift, straight skew and rigid turn,
/// - the bend that the frames around say slow flight gives it: second derivative of their shifts,
///   first and second of their turns, through five frames,
/// - of each row what stands still or drifts slowly against its reference.
/// An amplitude fitted to data so treated with sines so treated is unbiased, whatever these are.
class SlowMotion {
public:
    /// @param grid must outlive it; @param readout [s] of a frame
    SlowMotion(const RowGrid& grid, double readout);

    /// Frames without two neighbours either side say nothing: they become 0. An empty table is
    /// an axis without motion.
    void takeOut(RowTables& tables) const;

    /// Shift of each frame as its own neighbours do not say, cubic through two either side; 0 in
    /// frames left out. Slow motion hardly shows in it.
    std::vector<double> unforeseen(const std::vector<double>& shifts) const;

    /// Shift of each frame [px].
    std::vector<double> shifts(const RowTable& table, std::size_t axis) const;

    /// Share of the power of a row's sine at f that its standing pattern eats.
    double eatenByPattern(double f_hz) const;

    /// Share of the wobble of a shift at f that is taken for the bend of slow motion.
    double eatenByBend(double f_hz) const;

    bool isUsed(std::size_t frame) const { return m_isUsed[frame]; }
    double usedTime() const;  ///< [s] frames used over the frame rate

private:
    struct Line {
        double a = 0.0, b = 0.0;  // a + b·row
    };
    struct LineFit {
        double middle = 0.0, perWeight = 0.0, perSpread = 0.0;
    };
    struct Stencil {
        double first[5] = {}, second[5] = {}, between[5] = {};
    };
    struct Pattern {
        std::size_t from = 0, to = 0;  // frames of a reference
        std::size_t terms = 1;
        std::vector<double> powers = {};                 // (to − from) × 3: Legendre's up to t²
        std::array<std::vector<double>, 3> factor = {};  // rows × 6 an axis: Cholesky's triangle
    };

    void fitPatterns();
    std::vector<Line> takeLines(RowTable& table, std::size_t axis) const;
    void takePatterns(RowTable& table, std::size_t axis) const;
    std::vector<double> derivative(const std::vector<Line>& lines, std::size_t order) const;

    const RowGrid& m_grid;
    RowTables m_weight;  // as they were: the grid's may be scaled later
    double m_readout;
    std::vector<bool> m_isUsed;
    std::vector<Stencil> m_stencils;
    std::vector<LineFit> m_fits[3];
    std::vector<Pattern> m_patterns;
    std::size_t m_sweeps = 1;
};

}  // namespace stillbay
