#include "geometry/trials/paddock_changes.h"

#include <optional>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/choices/choice_loads.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostHoleChoices = 100;  // nearest first

/// Collects the changes of one car.
class Changes {
  public:
    explicit Changes(const Car& car) : car_(car) {}

    std::vector<PaddockChange> list() {
        for (std::size_t item = 0; item < car_.springs.size(); ++item) {
            const int index = static_cast<int>(item);
            addShock(car_.springs[item].damping, {.field = Field::bumpClick, .item = index},
                     {.field = Field::reboundClick, .item = index});
        }
        addShock(car_.launch.front.damping, {.field = Field::frontBumpClick},
                 {.field = Field::frontReboundClick});
        addHoles();
        for (const double step : {-kLaunchSpeedStep, kLaunchSpeedStep}) {
            addStep({.field = Field::launchSpeed}, step * kRpm);
        }
        if (const std::optional<double> droop = car_.launch.front.droop) {
            addStep({.field = Field::frontDroop}, (kDroopLeft - 1) * *droop);
        }
        return std::move(changes_);
    }

  private:
    void add(const Edit& edit) { changes_.push_back({edit, describe(edit, car_), 0}); }
    void addStep(const FieldId& id, double by) {
        const std::optional<double> now = numberAt(car_, id);
        if (now && refusal(id, *now + by).empty()) {
            add(SetNumber{id, *now + by});
        }
    }
    void addWay(const DampingWay& way, const FieldId& id) {
        if (!way.at || way.force.empty()) {
            return;
        }
        for (const int clicks : {-2, -1, 1, 2}) {
            const double then = *way.at + clicks;
            if (then >= way.clickOf(0) && then <= way.clickOf(way.force.size() - 1)) {
                add(SetNumber{id, then});
            }
        }
    }
    void addShock(const std::optional<Damping>& damping, const FieldId& bump, const FieldId& rebound) {
        if (damping) {
            addWay(damping->bump, bump);
            addWay(damping->rebound, rebound);
        }
    }
    /// The bolts that go to other holes, and which in words: "Bolt lower axle to 'top'".
    [[nodiscard]] PaddockChange changeTo(const HoleUse& use) const {
        const HoleUse now = holesInUse(car_);
        PaddockChange change{.edit = ChooseHoles{use, defaultTreatment(car_)}};
        for (std::size_t link = 0; link < car_.links.size(); ++link) {
            for (const End end : {End::chassis, End::axle}) {
                const int index = static_cast<int>(link);
                const int hole = use.of(index, end);
                if (hole != now.of(index, end)) {
                    const Bracket& bracket = car_.links[link].bracket(end);
                    change.bolts += car_.links[link].side == Side::both ? 2 : 1;
                    change.words += (change.words.empty() ? "Bolt " : ", ") + linkWords(car_, index) + " " +
                                    std::string(endWords(end)) + " to '" +
                                    bracket.holes[static_cast<std::size_t>(hole)].name + "'";
                }
            }
        }
        return change;
    }
    void addHoles() {
        for (const HoleUse& use : nearChoices(car_, kMostHoleChoices).uses) {
            PaddockChange change = changeTo(use);
            if (change.bolts > 0 && change.bolts <= kMostBolts) {
                changes_.push_back(std::move(change));
            }
        }
    }

    const Car& car_;
    std::vector<PaddockChange> changes_;
};

}  // namespace

std::vector<PaddockChange> paddockChanges(const Car& car) {
    return Changes(car).list();
}

}  // namespace bolthole
