#include "geometry/units/uncertainty_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kLargestShown = 1e9;  // in the shown unit; beyond, the number tells nothing
constexpr double kNothing = 1e-9;      // in the shown unit: rounding of the computation, not an uncertainty
constexpr double kWideInterval = 10;   // shown units; from here on whole ones do

int decimalsOf(const std::string& number) {
    const std::size_t point = number.find('.');
    return point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
}

std::string plainDecimals(double value, int decimals) {
    std::array<char, 32> buffer;
    const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                            std::chars_format::fixed, decimals);
    return {buffer.data(), end};
}

// The power of ten of the second significant digit.
int secondDigit(double value) {
    return static_cast<int>(std::floor(std::log10(value) + 1e-12)) - 1;
}

double roundedTo(double value, int power) {
    const double step = std::pow(10.0, power);
    return power < 0 ? std::round(value * std::pow(10.0, -power)) / std::pow(10.0, -power)
                     : std::round(value / step) * step;
}

}  // namespace

std::string halfWidthText(double uncertainty, Quantity quantity, Units units, Fineness fineness) {
    const double half = kCoverage95 * uncertainty / shownUnit(quantity, units);
    if (!(half > kNothing && half < kLargestShown)) {
        return {};
    }
    const int most = decimalsOf(fineness == Fineness::plain ? figureText(0.0, quantity, units)
                                                            : fineFigureText(0.0, quantity, units));
    const int power = secondDigit(roundedTo(half, secondDigit(half)));  // 9.96 is 10
    const int decimals = std::clamp(-power, 0, most);
    double shown = roundedTo(half, std::max(power, -decimals));
    if (shown == 0) {
        shown = std::pow(10.0, -decimals);
    }
    return plainDecimals(shown, decimals);
}

std::string uncertaintyText(double uncertainty, Quantity quantity, Units units, Fineness fineness) {
    const std::string half = halfWidthText(uncertainty, quantity, units, fineness);
    return half.empty() ? half : "± " + half;
}

std::string intervalText(double low, double high, Quantity quantity, Units units) {
    if (!std::isfinite(low) || !std::isfinite(high)) {
        return {};
    }
    const double unit = shownUnit(quantity, units);
    const auto text = [&](double value) {
        if (high - low < kWideInterval * unit) {
            return figureText(value, quantity, units);
        }
        const double shown = std::round(value / unit);
        const std::string number = plainDecimals(std::min(std::abs(shown), kLargestShown), 0);
        return shown < 0 ? "\u2212" + number : number;
    };
    return say("%1 to %2", text(low), text(high));
}

bool isLopsided(double value, double low, double high) {
    constexpr double kMostLopsided = 2;
    const double below = std::max(value - low, 0.0);
    const double above = std::max(high - value, 0.0);
    return std::isfinite(low) && std::isfinite(high) && low < high &&
           std::max(below, above) > kMostLopsided * std::min(below, above);
}

}  // namespace bolthole
