// SPDX-License-Identifier: MIT
#include "core/suspension/transmissibility.h"

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {

Transmissibility transmissibility(const Matrix6cd& K, const Modes& bench, const Vector3d& p_BC,
                                  std::span<const double> frequency_hz)
{
    // x = Σ φ_k (ψ_k K* x_f)/(ω_k² − ω²); seen at the point along j it is Σ weight_jk/(ω_k² − ω²).
    const Matrix6cd excitation = bench.Psi * K;
    const Eigen::Matrix<Complex, 3, 6> seen = carry(p_BC).topRows<3>().cast<Complex>() * bench.Phi;
    Eigen::Matrix<Complex, 3, 6> weight;
    for (Eigen::Index j = 0; j < 3; ++j)
        for (Eigen::Index k = 0; k < 6; ++k)
            weight(j, k) = seen(j, k) * excitation(k, j);

    Transmissibility curves;
    const std::array<std::vector<double>*, 3> outputs{&curves.x, &curves.y, &curves.z};
    for (std::vector<double>* output : outputs)
        output->reserve(frequency_hz.size());
    for (const double f : frequency_hz) {
        const double omega = 2 * std::numbers::pi * f;
        const Vector6cd gain = (bench.omegaSquare.array() - omega * omega).inverse();
        const Vector3cd motion = weight * gain;
        for (std::size_t j = 0; j < 3; ++j)
            outputs[j]->push_back(std::abs(motion[static_cast<Eigen::Index>(j)]));
    }
    return curves;
}

}  // namespace stillbay
