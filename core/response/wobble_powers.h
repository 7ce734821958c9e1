// SPDX-License-Identifier: MIT
#pragma once

#include "core/film/film.h"
#include "core/response/excitation.h"

#include <span>
#include <vector>

namespace stillbay {

/// Wobble power at one throttle [px²], over motors and axes.
struct WobblePower {
    double turn = 0.0;    ///< of order 1: goes with the square of the unbalance
    double blades = 0.0;  ///< of the blade pass, all its orders

    double wobble_px() const;  ///< √(turn + blades)
};

/// The excitation of a throttle grid as one camera films it: what many designs of tubes share.
class FilmedExcitation {
public:
    FilmedExcitation(const Excitation& excitation, const CameraModel& camera);

    std::size_t throttles() const { return m_throttles; }

    /// The same figures as wobbleOverThrottle(), to rounding, and nothing else.
    ///
    /// @param K dynamic stiffness of the tubes at `rest`, @param powers one per throttle.
    /// @return false where an undamped system is exactly on a resonance.
    bool powers(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                std::span<WobblePower> powers) const;

private:
    // One order at some throttles side by side.
    struct Block {
        AirframeLanes airframe;           // the camera's gain in its motions
        std::vector<std::size_t> points;  // the lanes' places among the throttles
        bool turn = false;                // once per turn, else blade pass
    };

    std::size_t m_throttles;
    Vector3d m_reference;
    Matrix3d m_toPixels;  // from bay axes
    std::vector<Block> m_blocks;
};

}  // namespace stillbay
