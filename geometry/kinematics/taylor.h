// Numbers that carry their first and second derivative along a line: exact derivatives of whatever is
// computed with them.
//
// Second-order Taylor arithmetic (A. Griewank, A. Walther, "Evaluating Derivatives", SIAM 2008, ch. 13; from
// memory, no page).
#pragma once

#include <array>
#include <cmath>

namespace bolthole {

/// f(s) = value + first s + second s^2/2, for small s.
struct Taylor {
    double value = 0;
    double first = 0;   ///< df/ds
    double second = 0;  ///< d^2f/ds^2

    friend Taylor operator+(const Taylor& a, const Taylor& b) {
        return {a.value + b.value, a.first + b.first, a.second + b.second};
    }
    friend Taylor operator-(const Taylor& a, const Taylor& b) {
        return {a.value - b.value, a.first - b.first, a.second - b.second};
    }
    friend Taylor operator*(const Taylor& a, const Taylor& b) {
        return {a.value * b.value, a.first * b.value + a.value * b.first,
                a.second * b.value + 2 * a.first * b.first + a.value * b.second};
    }
    friend Taylor operator*(double a, const Taylor& b) { return {a * b.value, a * b.first, a * b.second}; }
    friend Taylor operator/(const Taylor& a, const Taylor& b) {
        Taylor quotient{.value = a.value / b.value};
        quotient.first = (a.first - quotient.value * b.first) / b.value;
        quotient.second = (a.second - 2 * quotient.first * b.first - quotient.value * b.second) / b.value;
        return quotient;
    }
    friend Taylor sqrt(const Taylor& a) {
        Taylor root{.value = std::sqrt(a.value)};
        root.first = a.first / (2 * root.value);
        root.second = (a.second / 2 - root.first * root.first) / root.value;
        return root;
    }
};

/// Sine and cosine of an angle that changes evenly: `rate` per s.
struct TaylorTurn {
    Taylor sine;
    Taylor cosine;

    TaylorTurn(double angle, double rate) {
        const double sin = std::sin(angle);
        const double cos = std::cos(angle);
        sine = {sin, cos * rate, -sin * rate * rate};
        cosine = {cos, -sin * rate, -cos * rate * rate};
    }
};

using TaylorVector = std::array<Taylor, 3>;

[[nodiscard]] inline Taylor dot(const TaylorVector& a, const TaylorVector& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
[[nodiscard]] inline TaylorVector cross(const TaylorVector& a, const TaylorVector& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

}  // namespace bolthole
