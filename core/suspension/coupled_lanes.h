// SPDX-License-Identifier: MIT
// No include guard: coupled.cpp includes this once for each kind of processor, in a namespace of
// its own with `Wide`, the vector of doubles that one instruction works on.

using V = Wide;
inline constexpr std::size_t kWidth = sizeof(V) / sizeof(double);
static_assert(kLanes % kWidth == 0);

struct Cx {
    V re, im;
};
using Motion = std::array<Cx, 6>;
using Rotation = std::array<Cx, 3>;
using Square = std::array<Motion, 6>;  // a matrix by rows

inline Cx operator+(const Cx& a, const Cx& b)
{
    return {a.re + b.re, a.im + b.im};
}
inline Cx operator-(const Cx& a, const Cx& b)
{
    return {a.re - b.re, a.im - b.im};
}
inline Cx operator-(const Cx& a)
{
    return {-a.re, -a.im};
}
inline Cx operator*(const Cx& a, const Cx& b)
{
    return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
inline Cx operator*(double a, const Cx& b)
{
    return {a * b.re, a * b.im};
}
inline Cx inverse(const Cx& a)
{
    const V n = 1 / (a.re * a.re + a.im * a.im);
    return {a.re * n, -a.im * n};
}

// Lanes from the first on, as many as the processor takes at once.
inline V load(const Lanes& lanes, std::size_t first)
{
    V v;
    std::memcpy(&v, reinterpret_cast<const double*>(&lanes) + first, sizeof v);
    return v;
}
inline Cx load(const ComplexLanes& lanes, std::size_t first)
{
    return {load(lanes.re, first), load(lanes.im, first)};
}
inline void store(const V& v, Lanes& lanes, std::size_t first)
{
    std::memcpy(reinterpret_cast<double*>(&lanes) + first, &v, sizeof v);
}

// p × c
inline Rotation cross(const std::array<double, 3>& p, const Cx& x, const Cx& y, const Cx& z)
{
    return {p[1] * z - p[2] * y, p[2] * x - p[0] * z, p[0] * y - p[1] * x};
}

// The loops below are short. Unrolled, their numbers stay in registers, which saves a third of the
// time; the compiler does so only when told.

// P R Pᵀ for P = [1, −[p]×; 0, 1] and R = [A, E; B, C]: it is [A′ + E′[p]×, E′; B + C [p]×, C] with
// A′ = A − [p]× B and E′ = E − [p]× C; a row r times [p]× is −p × r.
inline void carryReceptance(const std::array<MotionLanes, 6>& R, std::size_t first,
                            const std::array<double, 3>& p, Square& S)
{
#pragma GCC unroll 6
    for (std::size_t i = 0; i < 6; ++i)
#pragma GCC unroll 6
        for (std::size_t j = 0; j < 6; ++j)
            S[i][j] = load(R[i][j], first);
#pragma GCC unroll 6
    for (std::size_t j = 0; j < 6; ++j) {
        const Rotation left = cross(p, S[3][j], S[4][j], S[5][j]);
#pragma GCC unroll 3
        for (std::size_t i = 0; i < 3; ++i)
            S[i][j] = S[i][j] - left[i];
    }
#pragma GCC unroll 6
    for (std::size_t i = 0; i < 6; ++i) {
        const Rotation right = cross(p, S[i][3], S[i][4], S[i][5]);
#pragma GCC unroll 3
        for (std::size_t j = 0; j < 3; ++j)
            S[i][j] = S[i][j] - right[j];
    }
}

// S = L U in place: L below the diagonal, which is one there, U above, 1/U on it.
inline void factor(Square& S)
{
#pragma GCC unroll 6
    for (std::size_t k = 0; k < 6; ++k) {
        S[k][k] = inverse(S[k][k]);
#pragma GCC unroll 6
        for (std::size_t i = k + 1; i < 6; ++i) {
            S[i][k] = S[i][k] * S[k][k];
#pragma GCC unroll 6
            for (std::size_t j = k + 1; j < 6; ++j)
                S[i][j] = S[i][j] - S[i][k] * S[k][j];
        }
    }
}

// The last three of U⁻¹ L⁻¹ f.
inline void solve(const Square& S, Motion& f)
{
#pragma GCC unroll 6
    for (std::size_t i = 1; i < 6; ++i)
#pragma GCC unroll 6
        for (std::size_t k = 0; k < i; ++k)
            f[i] = f[i] - S[i][k] * f[k];
    f[5] = f[5] * S[5][5];
    f[4] = (f[4] - S[4][5] * f[5]) * S[4][4];
    f[3] = (f[3] - S[3][4] * f[4] - S[3][5] * f[5]) * S[3][3];
}

inline void rotations(const BaySide& bay, const AirframeLanes& at,
                      std::span<RotationLanes> rotations)
{
    for (std::size_t first = 0; first < kLanes; first += kWidth) {
        Square S;
        carryReceptance(at.R, first, bay.p_FB, S);
        const V inverseSquare = load(at.inverseSquare, first);
#pragma GCC unroll 6
        for (std::size_t i = 0; i < 6; ++i)
#pragma GCC unroll 6
            for (std::size_t j = 0; j < 6; ++j) {
                S[i][j].re += bay.flexibility[i][j].real();
                S[i][j].im += bay.flexibility[i][j].imag();
                if (i == j || (i >= 3 && j >= 3))
                    S[i][j].re -= bay.inverseMass[i][j] * inverseSquare;
            }
        factor(S);
        for (std::size_t k = 0; k < rotations.size(); ++k) {
            Motion x;  // f = −P x
#pragma GCC unroll 6
            for (std::size_t i = 0; i < 6; ++i)
                x[i] = load(at.scaledMotion[k][i], first);
            const Rotation shift = cross(bay.p_FB, x[3], x[4], x[5]);
            Motion f{shift[0] - x[0], shift[1] - x[1], shift[2] - x[2], -x[3], -x[4], -x[5]};
            solve(S, f);
#pragma GCC unroll 3
            for (std::size_t i = 0; i < 3; ++i) {
                const Cx turn =
                    bay.turn[i][0] * f[3] + bay.turn[i][1] * f[4] + bay.turn[i][2] * f[5];
                store(turn.re, rotations[k][i].re, first);
                store(turn.im, rotations[k][i].im, first);
            }
        }
    }
}
