// SPDX-License-Identifier: MIT
#include "core/response/wobble_powers.h"

#include "core/base/check.h"
#include "core/suspension/coupled.h"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kRounding = 1e-14;  // of the largest motion
constexpr std::size_t kMostMotions = 6;

// At most six motions Y with Y Yᴴ = X Xᴴ, so that |A Y|² = |A X|² whatever A: from Xᴴ Π = Q R is
// Y = Π Rᴴ. Vertical forces on level arms, say, make no more than three.
std::vector<Vector6cd> fewest(const std::vector<Vector6cd>& motions)
{
    Eigen::Matrix<Complex, Eigen::Dynamic, 6> X_adjoint(motions.size(), 6);
    for (std::size_t k = 0; k < motions.size(); ++k)
        X_adjoint.row(static_cast<Eigen::Index>(k)) = motions[k].adjoint();
    Eigen::ColPivHouseholderQR<decltype(X_adjoint)> qr(X_adjoint);
    qr.setThreshold(kRounding);
    const Eigen::MatrixXcd R = qr.matrixR().triangularView<Eigen::Upper>();
    std::vector<Vector6cd> result;
    for (Eigen::Index k = 0; k < qr.rank(); ++k)
        result.emplace_back(qr.colsPermutation() * R.row(k).adjoint());
    return result;
}

}  // namespace

double WobblePower::wobble_px() const
{
    return std::sqrt(turn + blades);
}

FilmedExcitation::FilmedExcitation(const Excitation& excitation, const CameraModel& camera)
    : m_throttles(excitation.points.size()),
      m_reference(excitation.reference),
      m_pictureAxes(pictureAxes(camera))
{
    for (std::size_t k = 0; k <= excitation.craft.bladePass.size(); ++k) {
        std::vector<AirframeAt> airframes;
        std::vector<std::size_t> points;
        std::vector<Vector3d> gains;
        for (std::size_t i = 0; i < m_throttles; ++i) {
            const ExcitationOrder& order = excitation.points[i].orders[k];
            if (!(order.frequency_hz > 0))
                continue;
            const AirframeAt& airframe = order.airframe;
            airframes.push_back({airframe.omega, airframe.R, fewest(airframe.freeMotion)});
            gains.push_back(wobblePerRadian(camera, order.frequency_hz).cwiseAbs2());
            points.push_back(i);
        }
        for (std::size_t first = 0; first < airframes.size(); first += kLanes) {
            const std::size_t end = std::min(first + kLanes, airframes.size());
            std::vector<const AirframeAt*> lanes;
            std::array<Lanes, 3> gain{};
            for (std::size_t i = first; i < end; ++i) {
                lanes.push_back(&airframes[i]);
                for (std::size_t axis = 0; axis < gain.size(); ++axis)
                    gain[axis][i - first] = gains[i][static_cast<Eigen::Index>(axis)];
            }
            const auto place = points.begin() + static_cast<std::ptrdiff_t>(first);
            m_blocks.push_back({AirframeLanes(lanes),
                                gain,
                                {place, place + static_cast<std::ptrdiff_t>(end - first)},
                                k == 0});
        }
    }
}

bool FilmedExcitation::powers(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                              std::span<WobblePower> powers) const
{
    check(powers.size() == throttles(), "powers: one per throttle");
    const CoupledBay coupled(K, bay.mass, rest.R * bay.inertia * rest.R.transpose(),
                             bay.centre + rest.shift - m_reference,
                             m_pictureAxes * rest.R.transpose());
    std::fill(powers.begin(), powers.end(), WobblePower{});
    std::array<RotationLanes, kMostMotions> buffer;
    bool finite = true;
    for (const Block& block : m_blocks) {
        const std::span rotations(buffer.data(), block.airframe.scaledMotion.size());
        coupled.rotations(block.airframe, rotations);
        Lanes power{};
        for (const RotationLanes& rotation : rotations)
            for (std::size_t axis = 0; axis < rotation.size(); ++axis) {
                const ComplexLanes& turn = rotation[axis];
                power += block.gain[axis] * (turn.re * turn.re + turn.im * turn.im);
            }
        for (std::size_t lane = 0; lane < block.points.size(); ++lane) {
            WobblePower& at = powers[block.points[lane]];
            (block.turn ? at.turn : at.blades) += power[lane];
            finite = finite && std::isfinite(power[lane]);
        }
    }
    return finite;
}

}  // namespace stillbay
