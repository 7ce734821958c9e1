// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/clip/row_grid.h"
#include "core/clip/slow_motion.h"

#include <array>
#include <stop_token>
#include <vector>

/// A sine fitted to the rows of a film, slow motion taken out of both.
namespace stillbay {

/// Re(amplitude e^{iωt}) of the picture's shift across, up and roll [px], as the exposure left it,
/// before bands soften it; t from the middle of the clip.
struct Sine {
    double frequency_hz = 0.0;
    std::array<Complex, 3> amplitude{};
    double variance_hz2 = 0.0;  ///< of the frequency, if spreads are right: Cramér–Rao's bound
};

/// Adds factor · the sine, slow motion in, to tables of all three axes.
void addSine(const RowGrid& grid, double readout, const Sine& sine, double factor,
             RowTables& tables);

/// What sines of one frequency look like in tables.
class SineColumns {
public:
    SineColumns(const RowGrid& grid, const SlowMotion& slow, double readout, double f_hz);

    /// Adds factor · the sine of these amplitudes.
    void addTo(RowTables& tables, const std::array<Complex, 3>& amplitude, double factor) const;

    struct Fit {
        std::array<Complex, 3> amplitude{};
        std::array<double, 3> noise2{};  ///< that noise alone adds to |amplitude|²
        double explained = 0.0;          ///< sum of squares over spreads that the sine takes away
        Eigen::Matrix<double, 6, 6> normal;
    };
    /// Best amplitudes to data whose slow motion is out.
    Fit fit(const RowTables& data) const;

    /// Products of the seventh column, the change with frequency of a sine of these amplitudes,
    /// with the six, with itself and with `data`.
    struct Change {
        Vector6d withColumns;
        double square = 0.0, withData = 0.0;
    };
    Change change(const std::array<Complex, 3>& amplitude, const RowTables& data) const;

private:
    static double product(const RowGrid& grid, const RowTables& a, const RowTables& b);

    const RowGrid& m_grid;
    const SlowMotion& m_slow;
    double m_readout, m_f_hz;
    std::array<RowTables, 6> m_columns;  // across, up, roll: cos and −sin each
};

/// Moves a sine's frequency and amplitudes to where they explain most.
///
/// @param data  what slow motion and all other sines leave; the sine itself still in
/// @param reach_hz  from where it was: it goes no farther
/// @param stop      heeded within one step; then neither sine nor fit are to be used
SineColumns::Fit refineSine(const RowGrid& grid, const SlowMotion& slow, double readout,
                            const RowTables& data, double reach_hz, Sine& sine,
                            const std::stop_token& stop = {});

}  // namespace stillbay
