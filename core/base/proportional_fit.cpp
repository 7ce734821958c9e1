// SPDX-License-Identifier: MIT
#include "core/base/proportional_fit.h"

#include "core/base/check.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillbay {
namespace {

constexpr double kFloor = 0.1;      // of the largest x: below it errors shrink no further
constexpr double kFarOff = 5.0;     // times the scatter of the rest
constexpr double kFinest = 0.002;   // of c x: nobody reads a meter better
constexpr double kNormal = 1.4826;  // standard deviation over median deviation
constexpr std::size_t kFewestToDoubt = 6;
constexpr double kBeyondChance = 3.0;  // standard errors of a run

// What one point may err by, up to a factor that all share.
std::vector<double> errorShape(std::span<const double> x)
{
    const double floor = kFloor * *std::max_element(x.begin(), x.end());
    std::vector<double> shape;
    for (const double value : x)
        shape.push_back(std::hypot(value, floor));
    return shape;
}

// Student's t with so many degrees of freedom, where the normal distribution has 1.
double oneSigma(double freedom)
{
    return 1 + 1 / (2 * freedom) + 1 / (4 * freedom * freedom) +
           1 / (16 * freedom * freedom * freedom);
}

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// The ratio y/x that half of the weight lies below.
double medianSlope(std::span<const double> x, std::span<const double> y,
                   const std::vector<double>& shape)
{
    std::vector<std::size_t> order(x.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return y[a] / x[a] < y[b] / x[b]; });
    const auto weight = [&](std::size_t i) {
        return x[i] / shape[i];
    };
    double half = 0;
    for (const std::size_t i : order)
        half += weight(i) / 2;
    for (const std::size_t i : order)
        if ((half -= weight(i)) <= 0)
            return y[i] / x[i];
    return y[order.back()] / x[order.back()];
}

// A straight run of y/(c x) over ln x, where it is beyond chance; c is the mean of y/x by the same
// weights, so it runs about 1.
std::optional<ProportionalFit::Trend> trendOf(std::span<const double> x, std::span<const double> y,
                                              const std::vector<double>& shape, double c)
{
    if (x.size() < kFewestToDoubt)
        return std::nullopt;
    double W = 0, middle = 0;
    const auto weight = [&](std::size_t i) {
        return x[i] * x[i] / (shape[i] * shape[i]);
    };
    const auto off = [&](std::size_t i) {
        return y[i] / (c * x[i]) - 1;
    };
    for (std::size_t i = 0; i < x.size(); ++i) {
        W += weight(i);
        middle += weight(i) * std::log(x[i]);
    }
    middle /= W;
    double along = 0, across = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double t = std::log(x[i]) - middle;
        along += weight(i) * t * t;
        across += weight(i) * t * off(i);
    }
    if (along <= 0)
        return std::nullopt;
    const double run = across / along;
    double rest = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double left = off(i) - run * (std::log(x[i]) - middle);
        rest += weight(i) * left * left;
    }
    const double error = std::sqrt(rest / static_cast<double>(x.size() - 2) / along);
    if (!(std::abs(run) > kBeyondChance * error) || std::abs(run) * std::sqrt(along / W) < kFinest)
        return std::nullopt;
    const auto [least, most] = std::minmax_element(x.begin(), x.end());
    const auto at = [&](double place) {
        return c * (1 + run * (std::log(place) - middle));
    };
    return ProportionalFit::Trend{std::abs(run) * std::sqrt(along / W), at(*least), at(*most)};
}

}  // namespace

ProportionalFit fitProportional(std::span<const double> x, std::span<const double> y)
{
    check(x.size() >= kFewestForFit && x.size() == y.size(), "a fit needs three points");
    const std::vector<double> shape = errorShape(x);
    double xx = 0, xy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        check(x[i] > 0, "a fit through the origin needs x > 0");
        xx += x[i] * x[i] / (shape[i] * shape[i]);
        xy += x[i] * y[i] / (shape[i] * shape[i]);
    }
    const double c = xy / xx;
    double squares = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double off = (y[i] - c * x[i]) / shape[i];
        squares += off * off;
    }
    const double freedom = static_cast<double>(x.size() - 1);
    const double sigma = std::sqrt(squares / freedom);  // of one point, over its shape
    return {.slope = c,
            .standardError = oneSigma(freedom) * sigma / std::sqrt(xx) / std::abs(c),
            .scatter = sigma * std::hypot(1, kFloor) / std::abs(c),
            .points = x.size(),
            .trend = trendOf(x, y, shape, c)};
}

std::vector<bool> farOff(std::span<const double> x, std::span<const double> y)
{
    std::vector<bool> isFar(x.size(), false);
    if (x.size() < kFewestToDoubt)
        return isFar;
    const std::vector<double> shape = errorShape(x);
    const double c = medianSlope(x, y, shape);
    std::vector<double> off;
    for (std::size_t i = 0; i < x.size(); ++i)
        off.push_back(std::abs(y[i] - c * x[i]) / shape[i]);
    const double limit = kFarOff * std::max(kNormal * median(off), kFinest * std::abs(c));
    for (std::size_t i = 0; i < x.size(); ++i)
        isFar[i] = off[i] > limit;
    if (4 * std::count(isFar.begin(), isFar.end(), true) > static_cast<std::ptrdiff_t>(x.size()))
        isFar.assign(x.size(), false);
    return isFar;
}

}  // namespace stillbay
