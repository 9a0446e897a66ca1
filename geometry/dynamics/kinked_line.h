// A straight-line table: a curve of straight pieces, which a calculation that must be smooth follows piece by
// piece.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <span>
#include <vector>

namespace bolthole {

/// Straight pieces between rising kinks, the first and the last without end.
class KinkedLine {
  public:
    /// One piece: base + slope x, from `low` to `high`.
    struct Piece {
        double low = -std::numeric_limits<double>::infinity();
        double high = std::numeric_limits<double>::infinity();
        double base = 0;
        double slope = 0;

        [[nodiscard]] double at(double x) const { return base + slope * x; }
        /// Also what is not a number, which no other piece holds either.
        [[nodiscard]] bool holds(double x) const { return !(x < low || x > high); }
    };

    /// Nothing but `base` + `slope` x.
    explicit KinkedLine(double base = 0, double slope = 0) {
        pieces_.push_back({.base = base, .slope = slope});
    }

    /// Adds `slope` (x - `kink`) beyond the kink: above it for `side` +1, below it for -1. Kinks in any
    /// order.
    void addKink(double kink, double slope, int side) {
        const std::size_t above = cut(kink);
        const bool upward = side > 0;
        for (std::size_t index = upward ? above : 0; index < (upward ? pieces_.size() : above); ++index) {
            pieces_[index].slope += slope;
            pieces_[index].base -= slope * kink;
        }
    }
    /// A kink without a change of slope, so that somebody may stop there. Returns the piece that begins at
    /// it.
    std::size_t cut(double kink) {
        const std::size_t index = pieceOf(kink);
        if (pieces_[index].low == kink) {
            return index;
        }
        Piece below = pieces_[index];
        pieces_[index].low = kink;
        below.high = kink;
        pieces_.insert(pieces_.begin() + static_cast<std::ptrdiff_t>(index), below);
        return index + 1;
    }

    [[nodiscard]] const std::vector<Piece>& pieces() const { return pieces_; }
    [[nodiscard]] const Piece& operator[](std::size_t index) const { return pieces_[index]; }
    /// The piece x lies in; at a kink the one above it.
    [[nodiscard]] std::size_t pieceOf(double x) const {
        std::size_t index = 0;
        while (index + 1 < pieces_.size() && x >= pieces_[index].high) {
            ++index;
        }
        return index;
    }
    [[nodiscard]] double at(double x) const { return pieces_[pieceOf(x)].at(x); }

  private:
    std::vector<Piece> pieces_;
};

/// Straight lines through points, x rising, flat beyond the ends. At least one point.
[[nodiscard]] KinkedLine throughPoints(std::span<const double> x, std::span<const double> y);

}  // namespace bolthole
