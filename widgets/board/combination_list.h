// What map and table share: the combinations shown, in which order and through which filter.
#pragma once

#include <QString>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "widgets/board/hole_board.h"

namespace bolthole {

/// Which combinations are let through.
struct CombinationFilter {
    QString text;  ///< every word of it must stand in a hole's name or in the problem; "/" parts words too
    bool noProblems = false;
    bool targetOnly = false;  ///< no effect while there is no target

    bool operator==(const CombinationFilter&) const = default;
};

/// A snapshot of a board's combinations: who they are, where they lie, their rank, and whether the filter
/// lets them through. Figures stay with the board and are read in place.
class CombinationList {
  public:
    struct Item {
        HoleUse use;
        std::uint64_t index = 0;  ///< in the CombinationSpace
        double inverse = 0;       ///< 1/distance of the instant center, 1/m
        double antiSquat = 0;     ///< percent
        std::uint32_t rank = 0;   ///< from 0, as rankCombinations() orders
        bool assembled = false;
        bool problem = false;
        bool target = false;
        bool shown = false;  ///< by the filter

        /// Whether there is a place for it on the map.
        [[nodiscard]] bool hasPlace() const;
    };

    /// Takes the board as it is now. True: something changed.
    bool take(const BenchState& bench, const BoardState& board);
    /// True: the filter changed.
    bool setFilter(const CombinationFilter& filter);

    [[nodiscard]] const std::vector<Item>& items() const { return items_; }
    /// Places in items(), best rank first.
    [[nodiscard]] const std::vector<std::uint32_t>& ranked() const { return ranked_; }
    /// The combination's figures; null where the board has moved on since take().
    [[nodiscard]] const HoleCombination* combination(std::size_t at) const;
    /// Its uncertainty; null where that is not computed yet.
    [[nodiscard]] const CombinationUncertainty* uncertainty(std::size_t at) const;
    /// Anti-squat of a combination minus that of the one in use, percent, and its standard uncertainty.
    struct Difference {
        double value = 0;
        double uncertainty = 0;
    };
    /// Nothing for the combination in use itself, and where either or its uncertainty is not known.
    [[nodiscard]] std::optional<Difference> difference(std::size_t at) const;
    /// What a figure is made of: the links and where the axle stands; those and the driveline; those and the
    /// car's weights and their height, as anti-squat is.
    enum class Basis { links, driveline, weights };
    /// Whether such figures of it rest on starting numbers, and whether the anti-squat of any combination
    /// does.
    [[nodiscard]] bool restsOnStarts(std::size_t at, Basis basis) const;
    [[nodiscard]] bool restsOnStarts() const { return anyRests_; }
    /// "starting numbers: CG height, lower chassis hole"; empty for none.
    [[nodiscard]] QString startingWords(std::size_t at, Basis basis) const;
    /// The car the combinations belong to; null before the first.
    [[nodiscard]] const Car* car() const { return key_.car.get(); }
    [[nodiscard]] const std::shared_ptr<const Car>& sharedCar() const { return key_.car; }
    [[nodiscard]] const NumberStyle& style() const { return key_.style; }
    [[nodiscard]] const std::optional<TargetWindow>& target() const { return key_.target; }
    [[nodiscard]] LengthTreatment lengths() const { return key_.lengths; }
    /// Place in items() of the combination with those holes, and of the one the car is bolted to.
    [[nodiscard]] std::optional<std::size_t> find(const HoleUse& use) const;
    [[nodiscard]] std::optional<std::size_t> present() const;
    [[nodiscard]] std::size_t shownCount() const { return shownCount_; }
    [[nodiscard]] bool isFiltered() const { return shownCount_ != items_.size(); }
    /// Changes with everything but rank, the uncertainty, and the target: the map's dots stay while it stays.
    [[nodiscard]] int version() const { return version_; }
    /// "top / high", or "current" where no bracket has more than one hole.
    [[nodiscard]] QString nameOf(std::size_t at) const;

  private:
    /// What the snapshot depends on. Holding the car keeps its address from being used again.
    struct Key {
        std::shared_ptr<const Car> car;
        const HoleCombination* first = nullptr;
        std::size_t count = 0;
        LengthTreatment lengths = LengthTreatment::keep;
        CombinationScope scope;
        std::optional<std::uint64_t> present;
        bool complete = false;
        std::optional<TargetWindow> target;
        NumberStyle style;
        std::size_t uncertaintyCount = 0;

        bool operator==(const Key&) const = default;
    };

    void copyItems();
    void findStarts();
    void rank();
    void markRequested();
    void applyFilter();
    [[nodiscard]] bool passes(std::size_t at, const std::vector<std::string>& words) const;
    [[nodiscard]] bool matches(std::size_t at, const std::vector<std::string>& words) const;

    const BoardState* board_ = nullptr;
    Key key_;
    CombinationFilter filter_;
    std::vector<Item> items_;
    std::vector<std::uint32_t> ranked_;
    std::vector<FieldId> starts_;         // that a combination rests on whatever its holes
    std::vector<FieldId> startingHoles_;  // a coordinate each
    bool anyRests_ = false;
    std::size_t shownCount_ = 0;
    int version_ = 0;
};

}  // namespace bolthole
