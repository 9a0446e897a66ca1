// What the page of the test days shows, put together once for table, plots and cards.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/passes/pass_runs.h"
#include "geometry/units/text.h"

namespace bolthole {

/// What changed, with true minus signs.
[[nodiscard]] QString changeText(const std::string& words);

/// A car's passes with what they were run with. Holds a copy, so that it stays whole while the car changes.
class PassBook {
  public:
    /// Takes over the passes of `car`. False: they, the setups and the units are what it has already.
    bool take(const Car& car, NumberStyle style);

    [[nodiscard]] const Car& car() const { return car_; }
    [[nodiscard]] NumberStyle style() const { return style_; }
    [[nodiscard]] Units units() const { return style_.units; }
    [[nodiscard]] const std::vector<Pass>& passes() const { return car_.passes; }
    [[nodiscard]] const RunList& runs() const { return runs_; }
    /// Scatter of a single pass, from all repeats.
    [[nodiscard]] const Answer<Scatter>& scatter() const { return scatter_; }

    /// Letter of the run of a pass: "E".
    [[nodiscard]] QString letterOf(std::size_t row) const;
    /// The car a pass was run with; null where it stands on no kept setup.
    [[nodiscard]] const Car* setupOf(std::size_t row) const;
    /// What changed since the pass before; made when it is first asked for.
    [[nodiscard]] const QString& changes(std::size_t row) const;

  private:
    Car car_;
    NumberStyle style_{};
    RunList runs_{};
    Answer<Scatter> scatter_ = Answer<Scatter>::none("");
    mutable std::vector<std::optional<QString>> changes_{};
};

}  // namespace bolthole
