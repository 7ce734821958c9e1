// SPDX-License-Identifier: MIT
#include "core/recording/resample_uneven.h"

#include "core/base/check.h"
#include "core/base/parallel.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr std::size_t kCentre = 16;     // samples between which one window answers
constexpr std::size_t kAround = 16;     // on each side of them
constexpr double kBandShare = 0.88;     // of half the local rate
constexpr double kEnergyFloor = 1e-11;  // of a sample's own; keeps the factor positive
constexpr std::size_t kWindowsAtOnce = 64;

/// The samples around a few times, as a sum of sincs.
class LocalBand {
public:
    LocalBand(std::span<const double> stamps) : m_stamps(stamps), m_n(to(stamps.size()))
    {
        const double spacing =
            (stamps.back() - stamps.front()) / static_cast<double>(stamps.size() - 1);
        m_band = kBandShare * std::numbers::pi / spacing;
        m_sine.resize(m_n);
        m_cosine.resize(m_n);
        for (Eigen::Index i = 0; i < m_n; ++i) {
            const double angle = m_band * (at(i) - stamps.front());
            m_sine[i] = std::sin(angle);
            m_cosine[i] = std::cos(angle);
        }
        Eigen::MatrixXd C(m_n, m_n);
        for (Eigen::Index j = 0; j < m_n; ++j) {
            C(j, j) = 1.0 + kEnergyFloor;
            for (Eigen::Index i = j + 1; i < m_n; ++i)
                C(i, j) = (m_sine[i] * m_cosine[j] - m_cosine[i] * m_sine[j]) /
                          (m_band * (at(i) - at(j)));
        }
        m_factor.compute(C);  // the lower half alone
    }

    // Of the sincs at the stamps; the mean is taken off first, since it is larger than the rest.
    Eigen::VectorXd weights(std::span<const double> values, double mean) const
    {
        Eigen::VectorXd x(m_n);
        for (Eigen::Index i = 0; i < m_n; ++i)
            x[i] = values[static_cast<std::size_t>(i)] - mean;
        return m_factor.solve(x);
    }

    // The sincs at a time.
    Eigen::VectorXd sincs(double time) const
    {
        Eigen::VectorXd row(m_n);
        const double angle = m_band * (time - m_stamps.front());
        const double sine = std::sin(angle), cosine = std::cos(angle);
        for (Eigen::Index i = 0; i < m_n; ++i) {
            const double x = m_band * (time - at(i));
            row[i] = std::abs(x) < 1e-6 ? 1.0 : (sine * m_cosine[i] - cosine * m_sine[i]) / x;
        }
        return row;
    }

private:
    static Eigen::Index to(std::size_t i) { return static_cast<Eigen::Index>(i); }
    double at(Eigen::Index i) const { return m_stamps[static_cast<std::size_t>(i)]; }

    std::span<const double> m_stamps;
    Eigen::Index m_n;
    double m_band = 0.0;  // [rad/s]
    Eigen::VectorXd m_sine, m_cosine;
    Eigen::LLT<Eigen::MatrixXd> m_factor;
};

double meanOfSamples(std::span<const double> values)
{
    double sum = 0.0;
    for (const double value : values)
        sum += value;
    return sum / static_cast<double>(values.size());
}

// The first even time that is not before the given one.
std::size_t firstAfter(const EvenTimes& times, double time)
{
    const double index = std::ceil((time - times.start) * times.rate);
    return static_cast<std::size_t>(std::clamp(index, 0.0, static_cast<double>(times.samples)));
}

/// Fills the even times of one window.
class WindowFill {
public:
    WindowFill(std::span<const double> stamps, std::span<const std::span<const double>> channels,
               const EvenTimes& times, std::vector<std::vector<double>>& filled)
        : m_stamps(stamps), m_channels(channels), m_times(times), m_filled(filled)
    {
    }

    std::size_t windows() const { return (m_stamps.size() - 2) / kCentre + 1; }

    void fill(std::size_t window) const
    {
        const std::size_t first = window * kCentre;
        const std::size_t last = std::min(first + kCentre, m_stamps.size() - 1);
        const std::size_t from = first < kAround ? 0 : first - kAround;
        const std::size_t count = std::min(last + kAround + 1, m_stamps.size()) - from;
        const std::size_t begin = window == 0 ? 0 : firstAfter(m_times, m_stamps[first]);
        const std::size_t end =
            last + 1 == m_stamps.size() ? m_times.samples : firstAfter(m_times, m_stamps[last]);
        if (begin >= end)
            return;
        const LocalBand band(m_stamps.subspan(from, count));
        std::vector<double> means;
        std::vector<Eigen::VectorXd> weights;
        for (const std::span<const double> values : m_channels) {
            const auto near = values.subspan(from, count);
            means.push_back(meanOfSamples(near));
            weights.push_back(band.weights(near, means.back()));
        }
        for (std::size_t k = begin; k < end; ++k) {
            const double time = std::clamp(m_times.start + static_cast<double>(k) / m_times.rate,
                                           m_stamps.front(), m_stamps.back());
            const Eigen::VectorXd row = band.sincs(time);
            for (std::size_t c = 0; c < m_channels.size(); ++c)
                m_filled[c][k] = means[c] + row.dot(weights[c]);
        }
    }

private:
    std::span<const double> m_stamps;
    std::span<const std::span<const double>> m_channels;
    const EvenTimes& m_times;
    std::vector<std::vector<double>>& m_filled;
};

}  // namespace

Result<std::vector<std::vector<double>>> resampleUneven(
    std::span<const double> stamps, std::span<const std::span<const double>> channels,
    const EvenTimes& times, const std::stop_token& stop, const Progress& progress)
{
    check(stamps.size() >= 2, "two samples at least");
    check(times.rate > 0.0, "a rate above 0");
    for (const std::span<const double> values : channels)
        check(values.size() == stamps.size(), "as many values as stamps");
    std::vector<std::vector<double>> filled(channels.size());
    for (std::vector<double>& values : filled)
        values.resize(times.samples);
    const WindowFill window(stamps, channels, times, filled);
    const std::size_t pieces = (window.windows() + kWindowsAtOnce - 1) / kWindowsAtOnce;
    const bool isDone = inParallel(
        pieces, 0,
        [&window](std::size_t piece) {
            const std::size_t end = std::min((piece + 1) * kWindowsAtOnce, window.windows());
            for (std::size_t w = piece * kWindowsAtOnce; w < end; ++w)
                window.fill(w);
        },
        stop, progress);
    if (!isDone)
        return tl::unexpected(stoppedOnRequest());
    return filled;
}

}  // namespace stillbay
