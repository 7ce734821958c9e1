// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/film/film.h"
#include "core/response/excitation.h"
#include "core/response/figures.h"

#include <array>
#include <cstddef>
#include <limits>
#include <memory>
#include <mutex>
#include <span>
#include <vector>

namespace stillbay {

/// Wobble power at one throttle [px²], over motors and axes.
struct WobblePower {
    double turn = 0.0;    ///< of order 1: goes with the square of the unbalance
    double blades = 0.0;  ///< of the blade pass, all its orders

    double wobble_px() const;  ///< √(turn + blades)
};

/// One order at one throttle as one camera films it.
struct FilmedOrder {
    AirframeAt airframe;               ///< with no more load cases than there are motions
    Vector3d gain = Vector3d::Zero();  ///< [px²/rad²] about the picture's up, left, optical axes
    bool turn = false;                 ///< once per turn, else blade pass
};

/// Wobble over a throttle grid: its values, and the peaks between its points.
struct WobbleSweep {
    std::vector<double> wobble_px;  ///< one per throttle
    std::vector<WobbleAt> peaks;    ///< rising in throttle
};

/// Points of a sweep, from the first to before the last.
struct PointRange {
    std::size_t first = 0, last = 0;
};

/// How a sweep looks for peaks.
struct SweepOptions {
    /// In each of these, peaks higher than a third of its largest value are looked for; without,
    /// among all points.
    std::span<const PointRange> windows = {};
    double unbalance = 1.0;  ///< of the rotors, times the craft's
    double least_px = std::numeric_limits<double>::infinity();  ///< anywhere, those above this
};

/// The excitation of a throttle grid as one camera films it: what many designs of tubes share. Safe
/// from several threads at once.
class FilmedExcitation {
public:
    FilmedExcitation(const Excitation& excitation, const CameraModel& camera);

    std::size_t throttles() const { return m_throttle.size(); }

    /// The same figures as wobbleOverThrottle(), to rounding, and nothing else.
    ///
    /// @param K dynamic stiffness of the tubes at `rest`, @param powers one per throttle.
    /// @return false where an undamped system is exactly on a resonance.
    bool powers(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                std::span<WobblePower> powers) const;

    /// The wobble at each throttle and its peaks. Where the curve is highest between its neighbours
    /// it is looked at eight times as closely; what that takes of the airframe is worked out once
    /// and kept.
    ///
    /// @error NoAnswer  an undamped system is exactly on a resonance.
    Result<WobbleSweep> sweep(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                              const SweepOptions& options = {}) const;

private:
    // One order at some throttles side by side.
    struct Block {
        AirframeLanes airframe;
        std::array<Lanes, 3> gain;
        std::vector<std::size_t> points;  // the lanes' places among the throttles
        bool turn = false;
    };
    // A throttle between two of the grid, worked out when it is first looked at.
    struct Between {
        std::once_flag once;
        std::vector<FilmedOrder> orders;
    };
    // Two such throttles as far below a third as above, side by side, order by order.
    struct Pair {
        struct Order {
            AirframeLanes airframe;
            std::array<Lanes, 3> gain;
            bool turn = false;
        };
        std::once_flag once;
        std::vector<Order> orders;
    };

    CoupledBay coupled(const MassFigures& bay, const Pose& rest, const Matrix6cd& K) const;
    double throttleAt(std::size_t fine) const;
    const std::vector<FilmedOrder>& between(std::size_t fine) const;
    const std::vector<Pair::Order>& pairAbout(std::size_t fine, std::size_t step) const;
    WobbleAt peakNear(std::size_t point, std::span<const double> wobble_px,
                      const CoupledBay& coupled, double unbalance) const;

    ExcitedAirframe m_craft;
    bool m_flexible;
    CameraModel m_camera;
    std::vector<double> m_throttle;
    Vector3d m_reference;
    Matrix3d m_pictureAxes;
    std::vector<Block> m_blocks;
    std::unique_ptr<Between[]> m_between;
    std::unique_ptr<Pair[]> m_pairs;  // by place and step
};

}  // namespace stillbay
