// SPDX-License-Identifier: MIT
#include "core/calibrate/pluck_matching.h"

#include "core/calibrate/lowest_rubber.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSameFrequency = 0.06;  // of two modes that may be one, one standard deviation
constexpr double kSameLoss = 0.5;        // of the logarithm
constexpr double kOtherMode = 9.0;       // unlikeness from which two modes are not the same

// Of a measured mode and one of the model: 0 the same. `seen` is what channels show of the latter;
// empty: not known.
double unlikeness(const DecayingMode& measured, Complex lambda, const std::vector<Complex>& seen)
{
    const double f_hz = std::abs(lambda) / (2 * std::numbers::pi);
    const double loss = -2 * lambda.real() / std::abs(lambda);
    double cost = std::pow(std::log(measured.frequency_hz / f_hz) / kSameFrequency, 2) +
                  std::pow(std::log(std::max(measured.lossFactor, 1e-4) / loss) / kSameLoss, 2);
    if (seen.size() > 1 && seen.size() == measured.shape.size()) {
        Complex product = 0.0;
        double a = 0.0, b = 0.0;
        for (std::size_t c = 0; c < seen.size(); ++c) {
            product += std::conj(seen[c]) * measured.shape[c];
            a += std::norm(seen[c]);
            b += std::norm(measured.shape[c]);
        }
        cost += 4 * (1 - std::norm(product) / std::max(a * b, 1e-300));
    }
    return cost;
}

}  // namespace

ModeMatching matched(const std::vector<DecayingMode>& measured, const std::vector<SeenMode>& modes)
{
    ModeMatching matching(measured.size());
    std::array<bool, 6> isTaken{};
    for (std::size_t round = 0; round < measured.size(); ++round) {
        double least = kOtherMode;
        std::optional<std::pair<std::size_t, std::size_t>> best;
        for (std::size_t m = 0; m < measured.size(); ++m)
            for (std::size_t k = 0; k < modes.size() && !matching[m]; ++k) {
                const double cost = unlikeness(measured[m], modes[k].lambda, modes[k].channels);
                if (!isTaken[k] && cost < least) {
                    least = cost;
                    best = {m, k};
                }
            }
        if (!best)
            break;
        matching[best->first] = best->second;
        isTaken[best->second] = true;
    }
    return matching;
}

std::optional<Error> refusedMatching(const ModeMatching& matching, std::size_t measured)
{
    if (matching.empty())
        return std::nullopt;
    if (matching.size() != measured)
        return Error{Errc::BadInput,
                     phrase("%1 modes were measured and %2 are matched", whole(measured),
                            whole(matching.size())),
                     {}};
    std::array<bool, 6> isTaken{};
    for (const auto& mode : matching) {
        if (mode && (*mode >= isTaken.size() || isTaken[*mode]))
            return Error{
                Errc::BadInput,
                phrase("mode %1 of the bay is no mode or is matched twice", whole(*mode + 1)),
                {}};
        if (mode)
            isTaken[*mode] = true;
    }
    return std::nullopt;
}

RubberFigures rubberOfMatching(const PluckedBayModel& model,
                               const std::vector<DecayingMode>& measured,
                               const ModeMatching& matching, const RubberFigures& start,
                               const std::stop_token& stop)
{
    const auto misfit = [&](const Vector3d& point) {
        const auto modes = model.modes(rubberAt(point));
        if (!modes)
            return std::numeric_limits<double>::infinity();
        double sum = 0.0;
        for (std::size_t m = 0; m < measured.size(); ++m)
            if (matching[m]) {
                const Complex square = modes->omegaSquare[static_cast<Eigen::Index>(*matching[m])];
                const Complex lambda = Complex(0, 1) * std::sqrt(square);
                sum += measured[m].share * unlikeness(measured[m], lambda, {});
            }
        return sum;
    };
    return descend(misfit, logarithmsOf(start), 2, stop).rubber();
}

}  // namespace stillbay
