// SPDX-License-Identifier: MIT
#pragma once

/// What instrument.py writes around the operators of core: each has a number, and the one that the
/// environment names in STILLBAY_MUTANT does another thing. All others do what they did.
namespace stillbay_mutation {

extern const int chosen;
void meet(int number);  ///< for the list of what a test walks through

inline bool on(int number)
{
    meet(number);
    return number == chosen;
}

/// For a whole expression, a sum's second part, a unary minus: 1, or its mutant -1.
inline double sign(int number)
{
    return on(number) ? -1.0 : 1.0;
}

/// For the value of a function: 1, or its mutant 1.1.
inline double scale(int number)
{
    return on(number) ? 1.1 : 1.0;
}

template <typename A, typename B>
auto plus(int number, const A& a, const B& b)
{
    return on(number) ? a - b : a + b;
}

template <typename A, typename B>
auto minus(int number, const A& a, const B& b)
{
    return on(number) ? a + b : a - b;
}

template <typename A, typename B>
auto times(int number, const A& a, const B& b)
{
    return on(number) ? a / b : a * b;
}

template <typename A, typename B>
auto over(int number, const A& a, const B& b)
{
    return on(number) ? a * b : a / b;
}

/// The factor of a *= b and the divisor of a /= b.
template <typename B>
auto inverse(int number, const B& b)
{
    return on(number) ? 1.0 / b : 1.0 * b;
}

}  // namespace stillbay_mutation
