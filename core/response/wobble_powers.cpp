// SPDX-License-Identifier: MIT
#include "core/response/wobble_powers.h"

#include "core/base/check.h"
#include "core/response/wobble_curve.h"
#include "core/suspension/coupled.h"

#include <Eigen/QR>

#include <algorithm>
#include <bit>
#include <cmath>
#include <utility>

namespace stillbay {
namespace {

constexpr double kRounding = 1e-14;  // of the largest motion
constexpr std::size_t kMostMotions = 6;
constexpr std::size_t kFiner = 8;     // throttles between two of the grid, where a peak is
constexpr std::size_t kHalvings = 3;  // from the grid's step to the finest
static_assert(kFiner == std::size_t{1} << kHalvings);
constexpr double kWorth = 1.0 / 3;  // of the largest value: a lower one hides no higher peak

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

// What a camera sees of a throttle; orders that stand still are none.
std::vector<FilmedOrder> filmedOrders(const ExcitationPoint& point, const CameraModel& camera)
{
    std::vector<FilmedOrder> orders;
    for (const ExcitationOrder& order : point.orders)
        if (order.frequency_hz > 0)
            orders.push_back(
                {{order.airframe.omega, order.airframe.R, fewest(order.airframe.freeMotion)},
                 wobblePerRadian(camera, order.frequency_hz).cwiseAbs2(),
                 order.order == 1});
    return orders;
}

std::array<Lanes, 3> gainLanes(std::span<const FilmedOrder* const> orders)
{
    std::array<Lanes, 3> gain{};
    for (std::size_t lane = 0; lane < orders.size(); ++lane)
        for (std::size_t axis = 0; axis < gain.size(); ++axis)
            gain[axis][lane] = orders[lane]->gain[static_cast<Eigen::Index>(axis)];
    return gain;
}

AirframeLanes airframeLanes(std::span<const FilmedOrder* const> orders)
{
    std::array<const AirframeAt*, kLanes> airframes{};
    for (std::size_t lane = 0; lane < orders.size(); ++lane)
        airframes[lane] = &orders[lane]->airframe;
    return AirframeLanes({airframes.data(), orders.size()});
}

// Of one order at kLanes throttles [px²].
void findPower(const AirframeLanes& airframe, const std::array<Lanes, 3>& gain,
               const CoupledBay& coupled, Lanes& power)
{
    std::array<RotationLanes, kMostMotions> buffer;
    const std::span rotations(buffer.data(), airframe.scaledMotion.size());
    coupled.rotations(airframe, rotations);
    power = Lanes{};
    for (const RotationLanes& rotation : rotations)
        for (std::size_t axis = 0; axis < rotation.size(); ++axis) {
            const ComplexLanes& turn = rotation[axis];
            power += gain[axis] * (turn.re * turn.re + turn.im * turn.im);
        }
}

double wobbleOf(const WobblePower& power, double unbalance)
{
    return WobblePower{power.turn * unbalance * unbalance, power.blades}.wobble_px();
}

// From where on each point may hide a peak that matters.
std::vector<double> worthLooking(std::span<const double> wobble_px, const SweepOptions& options)
{
    const PointRange all{0, wobble_px.size()};
    std::vector<double> least(wobble_px.size(), options.least_px);
    for (const PointRange& window : options.windows.empty() ? std::span(&all, 1) : options.windows)
        if (window.first < window.last) {
            const auto points = wobble_px.subspan(window.first, window.last - window.first);
            const double worth = kWorth * *std::max_element(points.begin(), points.end());
            // A peak beside a window's end may stand within it.
            for (std::size_t i = window.first - std::min<std::size_t>(window.first, 1);
                 i < std::min(window.last + 1, least.size()); ++i)
                least[i] = std::min(least[i], worth);
        }
    return least;
}

Error noFiniteAnswer()
{
    return {Errc::NoAnswer,
            phrase("no finite answer: the craft is undamped and exactly on a resonance, or its "
                   "arms are far too soft"),
            "airframe.arm"};
}

}  // namespace

double WobblePower::wobble_px() const
{
    return std::sqrt(turn + blades);
}

FilmedExcitation::FilmedExcitation(const Excitation& excitation, const CameraModel& camera)
    : m_craft(excitation.craft),
      m_flexible(excitation.flexible),
      m_camera(camera),
      m_reference(excitation.reference),
      m_pictureAxes(pictureAxes(camera)),
      m_between(std::make_unique<Between[]>(kFiner * excitation.points.size())),
      m_pairs(std::make_unique<Pair[]>(kFiner * excitation.points.size() * kHalvings))
{
    std::vector<std::vector<FilmedOrder>> points;
    for (const ExcitationPoint& point : excitation.points) {
        m_throttle.push_back(point.throttle);
        points.push_back(filmedOrders(point, camera));
    }
    for (std::size_t k = 0; k <= excitation.craft.bladePass.size(); ++k) {
        std::vector<std::size_t> moving;
        for (std::size_t i = 0; i < points.size(); ++i)
            if (k < points[i].size())
                moving.push_back(i);
        for (std::size_t first = 0; first < moving.size(); first += kLanes) {
            std::vector<const FilmedOrder*> lanes;
            std::vector<std::size_t> places;
            for (std::size_t i = first; i < std::min(first + kLanes, moving.size()); ++i) {
                lanes.push_back(&points[moving[i]][k]);
                places.push_back(moving[i]);
            }
            m_blocks.push_back(
                {airframeLanes(lanes), gainLanes(lanes), std::move(places), lanes[0]->turn});
        }
    }
}

CoupledBay FilmedExcitation::coupled(const MassFigures& bay, const Pose& rest,
                                     const Matrix6cd& K) const
{
    return {K, bay.mass, rest.R * bay.inertia * rest.R.transpose(),
            bay.centre + rest.shift - m_reference, m_pictureAxes * rest.R.transpose()};
}

bool FilmedExcitation::powers(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                              std::span<WobblePower> powers) const
{
    check(powers.size() == throttles(), "powers: one per throttle");
    const CoupledBay coupled = this->coupled(bay, rest, K);
    std::fill(powers.begin(), powers.end(), WobblePower{});
    bool finite = true;
    for (const Block& block : m_blocks) {
        Lanes power;
        findPower(block.airframe, block.gain, coupled, power);
        for (std::size_t lane = 0; lane < block.points.size(); ++lane) {
            WobblePower& at = powers[block.points[lane]];
            (block.turn ? at.turn : at.blades) += power[lane];
            finite = finite && std::isfinite(power[lane]);
        }
    }
    return finite;
}

double FilmedExcitation::throttleAt(std::size_t fine) const
{
    const std::size_t point = fine / kFiner, part = fine % kFiner;
    return part == 0 ? m_throttle[point]
                     : std::lerp(m_throttle[point], m_throttle[point + 1],
                                 static_cast<double>(part) / kFiner);
}

const std::vector<FilmedOrder>& FilmedExcitation::between(std::size_t fine) const
{
    Between& here = m_between[fine];
    std::call_once(here.once, [&] {
        here.orders =
            filmedOrders(excitationPoint(m_craft, throttleAt(fine), m_flexible), m_camera);
    });
    return here.orders;
}

const std::vector<FilmedExcitation::Pair::Order>& FilmedExcitation::pairAbout(
    std::size_t fine, std::size_t step) const
{
    Pair& here = m_pairs[kHalvings * fine + static_cast<std::size_t>(std::countr_zero(step))];
    std::call_once(here.once, [&] {
        const auto &low = between(fine - step), &high = between(fine + step);
        for (std::size_t k = 0; k < std::min(low.size(), high.size()); ++k) {
            const std::array lanes{&low[k], &high[k]};
            here.orders.push_back({airframeLanes(lanes), gainLanes(lanes), low[k].turn});
        }
    });
    return here.orders;
}

// Halves the step between the highest throttle known and its neighbours down to the finest.
WobbleAt FilmedExcitation::peakNear(std::size_t point, std::span<const double> wobble_px,
                                    const CoupledBay& coupled, double unbalance) const
{
    std::array<double, 2 * kFiner + 1> px{};  // about the point
    px[0] = wobble_px[point - 1];
    px[kFiner] = wobble_px[point];
    px[2 * kFiner] = wobble_px[point + 1];
    const std::size_t first = kFiner * (point - 1);
    std::size_t top = kFiner;
    for (std::size_t step = kFiner / 2; step > 0; step /= 2) {
        const std::array places{top - step, top + step};
        std::array<WobblePower, 2> powers;
        for (const Pair::Order& order : pairAbout(first + top, step)) {
            Lanes power;
            findPower(order.airframe, order.gain, coupled, power);
            for (std::size_t lane = 0; lane < powers.size(); ++lane)
                (order.turn ? powers.at(lane).turn : powers.at(lane).blades) += power[lane];
        }
        for (std::size_t lane = 0; lane < places.size(); ++lane) {
            px[places[lane]] = wobbleOf(powers[lane], unbalance);
            if (px[places[lane]] > px[top])
                top = places[lane];
        }
    }
    const std::array throttle{throttleAt(first + top - 1), throttleAt(first + top),
                              throttleAt(first + top + 1)};
    const std::array three{px[top - 1], px[top], px[top + 1]};
    return peakAt(throttle, three, 1).value_or(WobbleAt{throttle[1], three[1]});
}

Result<WobbleSweep> FilmedExcitation::sweep(const MassFigures& bay, const Pose& rest,
                                            const Matrix6cd& K, const SweepOptions& options) const
{
    std::vector<WobblePower> powers(throttles());
    if (!this->powers(bay, rest, K, powers))
        return tl::unexpected(noFiniteAnswer());
    WobbleSweep sweep;
    for (const WobblePower& power : powers)
        sweep.wobble_px.push_back(wobbleOf(power, options.unbalance));
    const std::vector<double>& px = sweep.wobble_px;
    const CoupledBay coupled = this->coupled(bay, rest, K);
    const std::vector<double> least = worthLooking(px, options);
    for (std::size_t i = 1; i + 1 < px.size(); ++i)
        if (px[i] > px[i - 1] && px[i] >= px[i + 1] && px[i] >= least[i] && px[i - 1] > 0) {
            const WobbleAt peak = peakNear(i, px, coupled, options.unbalance);
            if (!std::isfinite(peak.wobble_px))
                return tl::unexpected(noFiniteAnswer());
            sweep.peaks.push_back(peak);
        }
    return sweep;
}

}  // namespace stillbay
