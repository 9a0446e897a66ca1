// The range of an axis that keeps still while its data move.
#pragma once

namespace bolthole {

/// A range with round ends that grows at once when data leave it, keeps the end they did not leave by, and
/// shrinks only when they have become much smaller, so that an axis does not jitter during a drag.
class StableRange {
  public:
    /// `minimumSpan`: never narrower than this, so that a flat curve is not blown up to noise.
    explicit StableRange(double minimumSpan) : minimumSpan_(minimumSpan), high_(minimumSpan) {}

    /// Follows data between `least` and `most`; ends are rounded in `unit`s. `floor`: values below it cannot
    /// occur, so the range does not go there (-infinity: none). Does nothing if a bound is not finite.
    /// Returns whether the range changed.
    bool follow(double least, double most, double unit, double floor);
    /// The same for data that do not move any more: they don't keep the room that others before them needed.
    bool settle(double least, double most, double unit, double floor);
    /// Takes the next data afresh.
    void forget() { fresh_ = true; }
    /// Is just this, until it follows data again, which it takes afresh.
    void show(double low, double high) {
        low_ = low;
        high_ = high;
        fresh_ = true;
    }

    [[nodiscard]] double low() const { return low_; }
    [[nodiscard]] double high() const { return high_; }

  private:
    double minimumSpan_;
    double low_ = 0;
    double high_;
    bool fresh_ = true;
};

}  // namespace bolthole
