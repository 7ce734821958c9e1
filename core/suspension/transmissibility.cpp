// SPDX-License-Identifier: MIT
#include "core/suspension/transmissibility.h"

#include <array>
#include <numbers>

namespace stillbay {

Transmissibility transmissibility(const Matrix6cd& K, const Modes& bench, const Vector3d& p_BC,
                                  std::span<const double> frequency_hz)
{
    // x = Σ φ_k (ψ_k K* x_f)/(ω_k² − ω²); seen along j, or about it, it is Σ weight_jk/(ω_k² − ω²).
    const Matrix6cd excitation = bench.Psi * K;
    const Matrix6cd seen = carry(p_BC).cast<Complex>() * bench.Phi;
    const Matrix6cd weight = seen.cwiseProduct(excitation.transpose());
    // Real and imaginary parts apart: complex products look for infinities and take twice the time.
    const Matrix6d weight_re = weight.real(), weight_im = weight.imag();
    const Vector6d square_re = bench.omegaSquare.real(), square_im = bench.omegaSquare.imag();

    Transmissibility curves;
    const std::array<std::vector<double>*, 6> outputs{&curves.x,    &curves.y,     &curves.z,
                                                      &curves.roll, &curves.pitch, &curves.yaw};
    for (std::vector<double>* output : outputs)
        output->reserve(frequency_hz.size());
    for (const double f : frequency_hz) {
        const double omega = 2 * std::numbers::pi * f;
        const Vector6d detuning = square_re.array() - omega * omega;
        const Vector6d size = detuning.cwiseAbs2() + square_im.cwiseAbs2();
        const Vector6d gain_re = detuning.cwiseQuotient(size);
        const Vector6d gain_im = -square_im.cwiseQuotient(size);
        const Vector6d re = weight_re.lazyProduct(gain_re) - weight_im.lazyProduct(gain_im);
        const Vector6d im = weight_re.lazyProduct(gain_im) + weight_im.lazyProduct(gain_re);
        const Vector6d motion = (re.cwiseAbs2() + im.cwiseAbs2()).cwiseSqrt();
        for (std::size_t j = 0; j < 6; ++j)
            outputs[j]->push_back(motion[static_cast<Eigen::Index>(j)]);
    }
    return curves;
}

}  // namespace stillbay
