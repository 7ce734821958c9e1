// SPDX-License-Identifier: MIT
#pragma once

#include "tests/suspension/own_energy.h"

/// Invented bays without any symmetry.
namespace stillbay::test {

/// Four unequal tubes about a small bay, its centre of mass off every axis; points within 25 mm of
/// it, so that half a radian of turn neither crushes nor tears a tube.
inline DrawnBay compactSkewBay(bool clamped)
{
    DrawnBay drawn;
    drawn.tube = {.section = {8e-3, 5e-3},
                  .shearModulus = 1.1e6,
                  .density = 1150,
                  .freeLength = 0.040,
                  .clamped = clamped};
    drawn.bay = {.mass = 0.31, .centre = {0.012, -0.007, -0.043}};
    drawn.bay.inertia << 1.9e-4, -2.1e-5, 1.3e-5,  //
        -2.1e-5, 3.1e-4, -1.7e-5,                  //
        1.3e-5, -1.7e-5, 3.6e-4;
    drawn.attachments = {{{0.069, 0.041, -0.018}, {0.031, 0.014, -0.030}},
                         {{-0.051, 0.035, -0.021}, {-0.011, 0.011, -0.036}},
                         {{-0.047, -0.052, -0.029}, {-0.009, -0.023, -0.041}},
                         {{0.066, -0.058, -0.010}, {0.027, -0.027, -0.033}}};
    return drawn;
}

/// Five tubes of uneven lengths on a long bay, one of them below it.
inline DrawnBay longSkewBay(bool clamped)
{
    DrawnBay drawn;
    drawn.tube = {.section = {7e-3, 3e-3},
                  .shearModulus = 0.7e6,
                  .density = 1130,
                  .freeLength = 0.024,
                  .clamped = clamped};
    drawn.bay = {.mass = 0.52, .centre = {0.007, 0.003, -0.039}};
    drawn.bay.inertia << 3.1e-4, 1.4e-5, -4.2e-5,  //
        1.4e-5, 1.31e-3, 0.9e-5,                   //
        -4.2e-5, 0.9e-5, 1.44e-3;
    drawn.attachments = {{{0.092, 0.055, -0.026}, {0.074, 0.037, -0.031}},
                         {{-0.077, 0.060, -0.021}, {-0.062, 0.040, -0.029}},
                         {{-0.084, -0.050, -0.024}, {-0.059, -0.039, -0.030}},
                         {{0.083, -0.062, -0.017}, {0.068, -0.041, -0.027}},
                         {{0.010, 0.002, -0.079}, {0.004, -0.003, -0.053}}};
    return drawn;
}

}  // namespace stillbay::test
