// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/cruise.h"
#include "core/response/wobble_powers.h"

#include <optional>
#include <span>
#include <vector>

/// The wobble over the throttle at the full and at the empty pack.
///
/// Rotor speed alone says how a craft shakes: what the empty pack shows at one throttle, the full
/// pack shows at a lower one. So one sweep serves both, at throttles of the full pack.
namespace stillbay {

/// Which throttles are looked at: those of the cruise window, or all that are asked for.
enum class Throttles { Cruise, All };

/// Where one pack stands in a sweep.
struct PackPoints {
    std::size_t first = 0;         ///< the sweep's point that is its first
    std::vector<double> throttle;  ///< of this pack, rising
    PointRange cruise;             ///< points of the sweep in its cruise window
};

/// What shakes the craft over the throttle at both packs; no tube, mount, bay or camera in it.
struct FlightExcitation {
    Excitation sweep;
    /// The empty pack's own: where it sags so far that opening the throttle slows its rotors.
    std::optional<Excitation> emptySweep;
    PackPoints full, empty;
};

/// @param asked  rising throttles, at least one; the cruise window's ends join them where they lie
///               between, and as many more as fineThrottles() adds
FlightExcitation prepareFlight(const ExcitedAirframe& craft, const Flight& flight,
                               const std::vector<double>& asked, Throttles throttles,
                               bool flexible);

/// Wobble of one pack.
struct PackWobble {
    std::span<const double> throttle;  ///< rising; lives as long as the FilmedFlight
    std::vector<double> wobble_px;     ///< one per throttle
    std::vector<WobbleAt> peaks;       ///< between the throttles, rising
};

struct FlightWobble {
    PackWobble full, empty;
};

/// @return none where no throttle lies in the window.
std::optional<CruiseFigures> cruiseFigures(const CruiseWindow& window, const FlightWobble& flight);

/// A flight as one camera films it: what many designs of tubes share. Safe from several threads at
/// once.
class FilmedFlight {
public:
    FilmedFlight(const FlightExcitation& flight, const CameraModel& camera);

    const std::vector<double>& throttle() const { return m_full.throttle; }  ///< at the full pack

    /// @param least_px, @param unbalance as in SweepOptions
    /// @error NoAnswer  an undamped system is exactly on a resonance.
    Result<FlightWobble> sweep(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                               double unbalance = 1.0,
                               double least_px = std::numeric_limits<double>::infinity()) const;

private:
    DriveModel m_drive;
    double m_fullVoltage, m_emptyVoltage;
    FilmedExcitation m_sweep;
    std::optional<FilmedExcitation> m_emptySweep;
    PackPoints m_full, m_empty;
};

}  // namespace stillbay
