// Hole combinations: which holes the links could be bolted to, and what happens to the rods' lengths when
// they are.
//
// A combination names one hole for each bracket of each link. Combinations are counted like the digits of a
// number: the last link's axle bracket turns fastest, the first link's chassis bracket slowest.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/kinematics/linkage.h"

namespace bolthole {

/// What happens to the rods' lengths when holes change.
///
/// keep: every rod keeps its length; the axle moves.
///
/// refit: every rod gets the length that leaves the axle at its measured pose, adjuster or not; the point of
/// a pivot or slider on its arm goes to its chassis hole.
///
/// uppers: the housing keeps its measured attitude at ride; lowers and crosswise rods keep their lengths,
/// fore-aft place and yaw follow from the lowers, the place sideways from the crosswise rod, and the upper
/// rods take the lengths that result. Both rods of a pair get one length, the mean: where a track bar and
/// splayed uppers fight each other, the attitude is held only to within what they bind.
enum class LengthTreatment { keep, refit, uppers };

/// Name of a treatment on the command line, and what it means in half a sentence: "rods keep their lengths".
[[nodiscard]] std::string_view nameOf(LengthTreatment treatment);
[[nodiscard]] std::string wordsFor(LengthTreatment treatment);

/// Whether the car has an upper rod; without one `uppers` is refused.
[[nodiscard]] bool hasUpperRod(const Car& car);
/// `uppers` if there are upper rods and every one has an adjuster, else `keep`.
[[nodiscard]] LengthTreatment defaultTreatment(const Car& car);
/// What a person chose, as far as the car has the rods for it: without an upper rod `uppers` is `keep`.
/// Nothing chosen: defaultTreatment().
[[nodiscard]] LengthTreatment treatmentFor(const Car& car, std::optional<LengthTreatment> chosen);

/// The holes in use, by index, of every link. Entries past the car's links are 0.
struct HoleUse {
    std::array<std::uint8_t, 2 * kMaxLinks> holes{};

    [[nodiscard]] int of(int link, End end) const { return holes[place(link, end)]; }
    void set(int link, End end, int hole) { holes[place(link, end)] = static_cast<std::uint8_t>(hole); }

    bool operator==(const HoleUse&) const = default;

  private:
    [[nodiscard]] static std::size_t place(int link, End end) {
        return 2 * static_cast<std::size_t>(link) + (end == End::axle ? 1U : 0U);
    }
};

/// The holes the car is bolted to.
[[nodiscard]] HoleUse holesInUse(const Car& car);

/// What is varied.
struct CombinationScope {
    /// A left and a right link that are the same but for their side move together.
    bool tieSides = false;
    /// Crosswise links (track bars, guides) take part.
    bool crosswise = true;

    bool operator==(const CombinationScope&) const = default;
};

/// For each link the link on its other side it can be tied to (the same kind, role and numbers of holes, left
/// against right, each once), or -1.
[[nodiscard]] std::vector<int> mirrorPartners(const Car& car);

/// A space of more combinations than this is asked about before it is computed.
inline constexpr std::uint64_t kManyCombinations = 65'536;

/// Every combination of holes of a car, within a scope. Counts; computes no geometry.
class CombinationSpace {
  public:
    /// The car must have passed findFaults().
    CombinationSpace(const Car& car, const CombinationScope& scope);

    /// How many combinations there are, at most kCountLimit (then there are that many or more).
    [[nodiscard]] std::uint64_t count() const { return count_; }
    static constexpr std::uint64_t kCountLimit = std::uint64_t{1} << 62U;
    /// The holes of combination `index`, 0 to count() - 1.
    [[nodiscard]] HoleUse at(std::uint64_t index) const;
    /// The combination with those holes; nothing if it is not in the space.
    [[nodiscard]] std::optional<std::uint64_t> indexOf(const HoleUse& use) const;
    /// The combination the car is bolted to. With sides tied and bolted unlike, nothing.
    [[nodiscard]] std::optional<std::uint64_t> present() const { return indexOf(present_); }

  private:
    struct Digit {
        int link = 0;
        End end = End::chassis;
        int holes = 1;
        int tiedLink = -1;
    };
    std::vector<Digit> digits_;  // slowest first
    HoleUse present_;
    std::uint64_t count_ = 1;
};

/// A car bolted to a combination of holes, in place and without allocation: for computing many combinations
/// in a row.
class BoltedCar {
  public:
    /// Copies the car, which must have passed findFaults().
    BoltedCar(const Car& car, LengthTreatment treatment);

    /// Bolts the car to `use`, holes that exist, and sets the rods' lengths. False: with `uppers`, the lowers
    /// can't be assembled at ride with the housing's attitude held; then the lengths are the built ones.
    bool bolt(const HoleUse& use);

    /// Changes a measured number of the original; the next bolt() takes it up. Nothing where the car has none
    /// of that id.
    void setNumber(const FieldId& id, double value);

    /// The car as bolted; every rod's length is written.
    [[nodiscard]] const Car& car() const { return bolted_; }
    [[nodiscard]] const Linkage& linkage() const { return linkage_; }
    /// The car as given.
    [[nodiscard]] const Car& original() const { return original_; }
    /// Role of a link in the original.
    [[nodiscard]] Role role(int link) const { return roles_[static_cast<std::size_t>(link)]; }

  private:
    void useHoles(const HoleUse& use);
    void resetLengths();
    bool fitUppers();
    [[nodiscard]] bool fitPose(AxlePose& pose) const;

    Car original_;
    Car bolted_;
    Linkage linkage_;
    LengthTreatment treatment_;
    std::vector<Role> roles_;
};

/// A car, or why there is none.
struct CarResult {
    std::optional<Car> car;
    std::string refusal;
};

/// The car bolted to `use` with the lengths `treatment` asks for. Where a rod's length was not written and
/// still fits its holes, it stays unwritten. Refuses holes that do not exist, `uppers` without an upper rod,
/// and a combination whose lengths `uppers` cannot find.
[[nodiscard]] CarResult carWithCombination(const Car& car, const HoleUse& use, LengthTreatment treatment);

/// Keeps what a measured thread engagement belongs to: where `rod` has an engagement without the length it
/// was measured at, or `measuredNow`, that length is the present one.
void pinEngagement(Link& rod, bool measuredNow);

}  // namespace bolthole
