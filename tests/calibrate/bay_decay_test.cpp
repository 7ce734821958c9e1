// SPDX-License-Identifier: MIT
#include "core/calibrate/bay_decay.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace stillbay {
namespace {

constexpr double kDecayRate_hz = 250.0;
const std::vector<Complex> kRings{{-3.0, 40.0}, {-5.0, 61.0}};  // [1/s]

// What each channel sees of each mode, and how far it is moved in each stretch.
const std::vector<std::vector<Complex>> kSeenBy{{{1, 0}, {0.4, -0.7}, {-0.03, 0.01}},
                                                {{0.2, 0.5}, {-1, 0}, {0.02, 0.04}}};
const std::vector<std::vector<Complex>> kMoved{{{2, 1}, {-1, 0.5}}, {{0.3, -1.5}, {1.2, 0.9}}};
const std::vector<Stretch> kPlucked{{20, 220}, {250, 520}};

// Two axes of acceleration and one of angular rate; between the stretches the samples are of
// nothing.
Recording ringing()
{
    Recording recording;
    recording.rate = kDecayRate_hz;
    for (std::size_t c = 0; c < 3; ++c) {
        Channel channel;
        channel.name = "channel " + std::to_string(c);
        channel.quantity = c < 2 ? Quantity::Acceleration : Quantity::AngularRate;
        channel.values.assign(600, 99.0);
        for (std::size_t s = 0; s < kPlucked.size(); ++s)
            for (std::size_t i = 0; i < kPlucked[s].samples(); ++i) {
                const double t = static_cast<double>(i) / kDecayRate_hz;
                double& value = channel.values[kPlucked[s].from + i];
                value = 0.3 - 0.2 * t;  // offset and drift
                for (std::size_t k = 0; k < kRings.size(); ++k)
                    value += std::real(kMoved[s][k] * kSeenBy[k][c] * std::exp(kRings[k] * t));
            }
        recording.channels.push_back(channel);
    }
    return recording;
}

std::vector<SeenMode> modesOf(bool areShapesKnown)
{
    std::vector<SeenMode> modes;
    for (std::size_t k = 0; k < kRings.size(); ++k)
        modes.push_back({kRings[k], areShapesKnown ? kSeenBy[k] : std::vector<Complex>()});
    return modes;
}

// Oracle: the amplitudes that the samples were made of, channel by channel; nothing is left.
TEST(BayDecay, GivesTheAmplitudesBack)
{
    const DecayData data(ringing(), {0, 1, 2}, kPlucked);
    for (const bool areShapesKnown : {false, true}) {
        const DecayData::Fit fit = data.fit(modesOf(areShapesKnown));
        EXPECT_NEAR(fit.squares, 0, 1e-9);
        ASSERT_EQ(fit.amplitudes.size(), 2U);
        for (std::size_t s = 0; s < 2; ++s)
            for (std::size_t k = 0; k < 2; ++k)
                for (std::size_t c = 0; c < 3; ++c)
                    EXPECT_LT(std::abs(fit.amplitudes[s][k][c] - kMoved[s][k] * kSeenBy[k][c]),
                              1e-8)
                        << s << k << c;
        for (const Eigen::MatrixXd& left : data.residuals(modesOf(areShapesKnown)))
            EXPECT_LT(left.cwiseAbs().maxCoeff(), 1e-8);
    }
}

// Oracle: definition. Accelerations and angular rates weigh the same together, one each, whatever
// their units; channels of one kind alone are as they are.
TEST(BayDecay, WeighsUnlikeKindsAlike)
{
    const Recording recording = ringing();
    const DecayData both(recording, {0, 1, 2}, kPlucked);
    EXPECT_NEAR(both.squares(), 2.0, 1e-12);
    EXPECT_EQ(both.weights()[0], both.weights()[1]);
    EXPECT_NEAR(both.meanSquare(0) * 200 * 3 + both.meanSquare(1) * 270 * 3, 2.0, 1e-12);
    const DecayData rate(recording, {2}, kPlucked);
    EXPECT_EQ(rate.weights(), std::vector{1.0});
    EXPECT_NEAR(both.weights()[2], 1 / std::sqrt(rate.squares()), 1e-9 * both.weights()[2]);
}

// Oracle: what is left has no offset, no drift and nothing of the modes in it (it stands at a right
// angle to them), and its squares are those that are told.
TEST(BayDecay, LeavesWhatIsLeast)
{
    Recording recording = ringing();
    for (Channel& channel : recording.channels)
        for (std::size_t i = 0; i < channel.values.size(); ++i)
            channel.values[i] += 0.02 * std::sin(0.9 * static_cast<double>(i * i % 97));
    const DecayData data(recording, {0, 1}, kPlucked);
    for (const bool areShapesKnown : {false, true}) {
        std::vector<SeenMode> modes = modesOf(areShapesKnown);
        for (SeenMode& mode : modes)
            if (areShapesKnown)
                mode.channels.pop_back();
        const std::vector<Eigen::MatrixXd> left = data.residuals(modes);
        double squares = 0;
        for (std::size_t s = 0; s < left.size(); ++s) {
            squares += left[s].squaredNorm();
            for (const SeenMode& mode : modes) {
                Complex together = 0;
                for (Eigen::Index c = 0; c < 2; ++c) {
                    Complex along = 0, offset = 0, drift = 0;
                    for (Eigen::Index i = 0; i < left[s].rows(); ++i) {
                        const double t = static_cast<double>(i) / kDecayRate_hz;
                        along += left[s](i, c) * std::exp(mode.lambda * t);
                        offset += left[s](i, c);
                        drift += left[s](i, c) * t;
                    }
                    EXPECT_LT(std::abs(offset), 1e-9);
                    EXPECT_LT(std::abs(drift), 1e-9);
                    if (!areShapesKnown)
                        EXPECT_LT(std::abs(along), 1e-9) << s << c;
                    else
                        together += mode.channels[static_cast<std::size_t>(c)] * along;
                }
                EXPECT_LT(std::abs(together), 1e-9) << s;
            }
        }
        EXPECT_GT(squares, 0.01);
        EXPECT_NEAR(data.fit(modes).squares, squares, 1e-9);
    }
}

}  // namespace
}  // namespace stillbay
