// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/jet.h"
#include "core/base/linalg.h"

/// tc(x) = tanh√x/√x and φ(x) = (1 − tc(x))/x: analytic through zero, tan for negative x.
namespace stillbay {

template <class T>
struct TanhRatio {
    T tc;
    T phi;
};

/// @param x any; poles at x = −(n + ½)²π².
TanhRatio<Jet> tanhRatio(const Jet& x);
TanhRatio<Complex> tanhRatio(const Complex& x);

}  // namespace stillbay
