#include "geometry/trials/paddock_changes.h"

#include <numeric>
#include <optional>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/tire_rate.h"
#include "geometry/combinations/combination_loads.h"
#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostHoleCombinations = 100;  // nearest first

/// Collects the changes of one car.
class Changes {
  public:
    Changes(const Car& car, LengthTreatment lengths) : car_(car), lengths_(lengths) {}

    std::vector<PaddockChange> list() {
        for (std::size_t item = 0; item < car_.springs.size(); ++item) {
            const int index = static_cast<int>(item);
            addShock(car_.springs[item].damping, {.field = Field::bumpClick, .item = index},
                     {.field = Field::reboundClick, .item = index});
        }
        addShock(car_.launch.front.damping, {.field = Field::frontBumpClick},
                 {.field = Field::frontReboundClick});
        addHoles();
        addBallast();
        for (const double step : {-kLaunchSpeedStep, kLaunchSpeedStep}) {
            addStep({.field = Field::launchSpeed}, step * kRpm, ChangeKind::launchSpeed, kSpeedMinutes);
        }
        if (const std::optional<double> droop = car_.launch.front.droop) {
            addStep({.field = Field::frontDroop}, (kDroopLeft - 1) * *droop, ChangeKind::frontDroop,
                    kLimiterMinutes);
        }
        addPressure(car_.wheelRates.rear, Field::rearPressure);
        addPressure(car_.wheelRates.front, Field::frontPressure);
        return std::move(changes_);
    }

  private:
    void addStep(const FieldId& id, double by, ChangeKind kind, double minutes, bool isFirmer = false) {
        const std::optional<double> now = numberAt(car_, id);
        if (now && refusal(id, *now + by).empty()) {
            const Edit edit = SetNumber{id, *now + by};
            changes_.push_back({.edit = edit,
                                .words = describe(edit, car_),
                                .kind = kind,
                                .from = now,
                                .isFirmer = isFirmer,
                                .minutes = minutes});
        }
    }
    void addPressure(const EnteredRates& rates, Field field) {
        if (isReadAtTwoPressures(rates)) {
            for (const double step : {-kPressureStep, kPressureStep}) {
                addStep({.field = field}, step * kPascalsPerPsi, ChangeKind::pressure, kPressureMinutes);
            }
        }
    }
    void addWay(const DampingWay& way, const FieldId& id) {
        if (!way.at || way.force.empty()) {
            return;
        }
        const auto sumOf = [](const std::vector<double>& row) {
            return std::accumulate(row.begin(), row.end(), 0.0);
        };
        const bool isFirmerUp = sumOf(way.force.back()) > sumOf(way.force.front());
        for (const int clicks : {-2, -1, 1, 2}) {
            const double then = *way.at + clicks;
            if (then >= way.clickOf(0) && then <= way.clickOf(way.force.size() - 1)) {
                addStep(id, clicks, ChangeKind::click, kClickMinutes, (clicks > 0) == isFirmerUp);
            }
        }
    }
    void addShock(const std::optional<Damping>& damping, const FieldId& bump, const FieldId& rebound) {
        if (damping) {
            addWay(damping->bump, bump);
            addWay(damping->rebound, rebound);
        }
    }
    /// What was on the scales stays where it stood: they know it there. What fills a load moves by its level.
    void addBallast() {
        for (std::size_t number = 0; number < car_.ballast.size(); ++number) {
            const EnteredBallast& load = car_.ballast[number];
            const int item = static_cast<int>(number);
            const bool isFluid = load.volume && load.density;
            if (!load.at.whole() || !(isFluid || load.mass)) {
                continue;
            }
            for (const double way : {-1.0, 1.0}) {
                const FieldId at{.field = Field::ballastAt, .axis = 0, .item = item};
                const FieldId level{.field = Field::ballastAboard, .item = item};
                if (isFluid) {
                    addStep(level, way * kLevelStep, ChangeKind::level, kLevelMinutes);
                } else if (load.aboard > 0 && load.weighed == 0) {
                    addStep(at, way * kBallastStep, ChangeKind::ballast, kBallastMinutes);
                }
            }
        }
    }
    /// The bolts that go to other holes, and which in words: "Bolt lower axle to 'top'".
    [[nodiscard]] PaddockChange changeTo(const HoleUse& use) const {
        const HoleUse now = holesInUse(car_);
        PaddockChange change{.edit = ChooseHoles{use, lengths_}, .minutes = kRodMinutes};
        for (std::size_t link = 0; link < car_.links.size(); ++link) {
            for (const End end : {End::chassis, End::axle}) {
                const int index = static_cast<int>(link);
                const int hole = use.of(index, end);
                if (hole != now.of(index, end)) {
                    const Bracket& bracket = car_.links[link].bracket(end);
                    const int bolts = car_.links[link].side == Side::both ? 2 : 1;
                    change.bolts += bolts;
                    change.minutes += bolts * kBoltMinutes;
                    const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
                    change.words =
                        change.words.empty()
                            ? say("Bolt %1 %2 to '%3'", linkWords(car_, index), say(endWords(end)), name)
                            : say("%1, %2 %3 to '%4'", change.words, linkWords(car_, index),
                                  say(endWords(end)), name);
                }
            }
        }
        return change;
    }
    void addHoles() {
        for (const HoleUse& use : nearCombinations(car_, kMostHoleCombinations).uses) {
            PaddockChange change = changeTo(use);
            if (change.bolts > 0 && change.bolts <= kMostBolts) {
                changes_.push_back(std::move(change));
            }
        }
    }

    const Car& car_;
    LengthTreatment lengths_;
    std::vector<PaddockChange> changes_;
};

}  // namespace

std::vector<PaddockChange> paddockChanges(const Car& car, LengthTreatment lengths) {
    return Changes(car, lengths).list();
}

}  // namespace bolthole
