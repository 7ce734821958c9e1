// SPDX-License-Identifier: MIT
#include "core/calibrate/film_unbalance.h"

#include "core/setup/unbalance.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace stillbay {
namespace {

// Films that are left out for one reason.
struct OffFilms {
    const char* code;
    Phrase reason;
    std::size_t count = 0;
};

bool counted(OffFilms& films, bool isSo)
{
    films.count += isSo ? 1 : 0;
    return isSo;
}

}  // namespace

Result<Correction> unbalanceFromFilms(const Setup& setup, std::span<const FilmMatch> films,
                                      std::optional<std::size_t> asked)
{
    const std::size_t all = asked.value_or(films.size());
    constexpr double kModelSpread = 0.1;  // of the computed motion, as of an airframe's level
    if (all < kFewestFilms)
        return fail(Errc::BadInput, phrase("Films at three throttles or more are needed"));
    if (films.size() < kFewestFilms)
        return fail(
            Errc::NoAnswer,
            phrase("Of %1 films %2 show the orders of this craft's rotors: three are needed",
                   whole(all), whole(films.size())));
    std::vector<double> speeds, ratios;  // ratios: logarithms
    OffFilms stabilised{"film_stabilised", phrase("they were stabilised")},
        unsettled{"film_left_out", phrase("they leave their speed open")},
        beyond{"film_reach", phrase("the full pack is not computed to turn the rotors so fast")};
    std::size_t hidden = 0;
    for (const FilmMatch& film : films) {
        if (counted(stabilised, film.isStabilised) || counted(unsettled, !isSpeedSettled(film)) ||
            counted(beyond, !film.predicted_px))
            continue;
        const auto first = std::find_if(film.orders.begin(), film.orders.end(),
                                        [](const auto& order) { return order.order == 1; });
        if (first == film.orders.end() || !first->predicted_px || !(*first->predicted_px > 0))
            continue;
        if (!first->filmed_px) {
            ++hidden;
            continue;
        }
        const bool isNew = std::none_of(speeds.begin(), speeds.end(), [&](double speed) {
            return std::abs(film.speed / speed - 1) < kOrderWidth;
        });
        if (isNew)
            speeds.push_back(film.speed);
        ratios.push_back(std::log(*first->filmed_px / *first->predicted_px));
    }
    if (speeds.size() < kFewestFilms) {
        const OffFilms most =
            std::max({stabilised, unsettled, beyond},
                     [](const OffFilms& a, const OffFilms& b) { return a.count < b.count; });
        return fail(Errc::NoAnswer,
                    most.count > 0
                        ? phrase("Order 1 (unbalance) shows at fewer than three speeds of the "
                                 "rotors: of %1 films %2 are left out, since %3",
                                 whole(all), whole(most.count), most.reason)
                        : phrase("Order 1 (unbalance) shows at fewer than three speeds of the "
                                 "rotors"));
    }

    const auto n = static_cast<double>(ratios.size());
    double mean = 0, squares = 0, before = 0;
    for (const double ratio : ratios)
        mean += ratio / n;
    for (const double ratio : ratios) {
        squares += (ratio - mean) * (ratio - mean);
        before += ratio * ratio;
    }
    const double factor = std::exp(mean);
    const double spread = std::hypot(std::sqrt(squares / (n - 1) / n), kModelSpread);
    Setup scaled = setup;
    scaleUnbalance(scaled, factor);
    Correction correction;
    correction.measurement = phrase("films at %1 throttles", whole(speeds.size()));
    correction.values.push_back({"drive.unbalance_g_mm", phrase("unbalance of the propellers"),
                                 "g·mm", setup.drive.unbalance_g_mm, scaled.drive.unbalance_g_mm,
                                 spread});
    for (std::size_t i = 0; i < setup.airframe.arms.size(); ++i)
        if (setup.airframe.arms[i].unbalance_g_mm)
            correction.values.push_back({"airframe.arms[" + std::to_string(i) + "].unbalance_g_mm",
                                         phrase("unbalance of motor %1", whole(i + 1)), "g·mm",
                                         setup.airframe.arms[i].unbalance_g_mm,
                                         *scaled.airframe.arms[i].unbalance_g_mm, spread});
    for (const OffFilms& off : {stabilised, unsettled, beyond})
        if (off.count > 0)
            correction.warnings.push_back(
                {off.code, phrase("%1 of %2 films are left out, since %3.", whole(off.count),
                                  whole(all), off.reason)});
    if (hidden > 0)
        correction.warnings.push_back(
            {"film_order_hidden", phrase("On %1 of %2 films order 1 does not show: the unbalance "
                                         "may be less than the others say.",
                                         whole(hidden), whole(all))});
    correction.residual = std::sqrt(squares / n);
    correction.residualBefore = std::sqrt(before / n);
    const bool agree = std::sqrt(squares / (n - 1)) < std::log(1.5);
    correction.mark =
        agree ? QualityMark{Quality::Fair, phrase("the films agree; motors are not told apart")}
              : QualityMark{Quality::Poor,
                            phrase("the films disagree: the craft's frequencies differ from the "
                                   "predicted ones. Do the pluck and tap tests first")};
    return correction;
}

}  // namespace stillbay
