#include "geometry/trials/power_map.h"

#include <algorithm>
#include <atomic>
#include <numeric>
#include <utility>

#include "geometry/combinations/combination_loads.h"
#include "geometry/edits/edit.h"
#include "geometry/units/parallel.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);
constexpr double kDrawnPart = 0.5;  // of the work, for progress

int boltsBetween(const HoleUse& one, const HoleUse& other, const Car& car) {
    int bolts = 0;
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const int index = static_cast<int>(link);
            bolts += one.of(index, end) != other.of(index, end) ? sidesOf(car.links[link]) : 0;
        }
    }
    return bolts;
}

// Of too many to count: those that move the fewest bolts, whatever they are.
std::vector<HoleUse> nearUses(const Car& car, const CombinationScope& scope, std::size_t most) {
    std::vector<HoleUse> uses;
    const CombinationSpace space(car, scope);
    for (const HoleUse& use : nearCombinations(car, kManyCombinations / 4).uses) {
        if (uses.size() < most && space.indexOf(use)) {
            uses.push_back(use);
        }
    }
    return uses;
}

std::vector<PowerCombination> combinationsOf(const Car& car, std::size_t most, bool& isAll) {
    const CombinationScope scope{.tieSides = true, .crosswise = false};
    const CombinationSpace space(car, scope);
    const HoleUse now = holesInUse(car);
    std::vector<HoleUse> uses;
    if (space.count() > kManyCombinations) {
        uses = nearUses(car, scope, most);
    } else {
        for (std::uint64_t index = 0; index < space.count(); ++index) {
            uses.push_back(space.at(index));
        }
    }
    std::vector<PowerCombination> combinations{{.use = now}};
    for (const HoleUse& use : uses) {
        if (use != now) {
            combinations.push_back({use, boltsBetween(use, now, car)});
        }
    }
    std::ranges::stable_sort(combinations, {}, &PowerCombination::bolts);
    isAll = space.count() <= kManyCombinations && combinations.size() <= most;
    combinations.resize(std::min(combinations.size(), most));
    return combinations;
}

LaunchInputs withTorque(const LaunchInputs& inputs, double share) {
    LaunchInputs scaled = inputs;
    for (TorquePoint& point : scaled.engine.torque) {
        point.torque *= share;
    }
    return scaled;
}

class PowerMapper {
  public:
    PowerMapper(const Car& car, const PowerOptions& options) : car_(withoutKept(car)), options_(options) {
        map_.lengths = treatmentFor(car_, options.lengths);
    }

    PowerMap run() {
        const LaunchInputsResult entered = launchInputsOf(car_);
        if (!entered.inputs) {
            map_.missing = entered.missing;
            return std::move(map_);
        }
        for (const TorquePoint& point : entered.inputs->engine.torque) {
            map_.peakTorque = std::max(map_.peakTorque, point.torque);
        }
        for (int power = 0; power < options_.powers; ++power) {
            map_.shares.push_back(kLeastPower + (kMostPower - kLeastPower) * power / (options_.powers - 1));
        }
        map_.combinations = combinationsOf(car_, options_.mostCombinations, map_.isAll);
        map_.cells.resize(map_.combinations.size() * map_.shares.size());
        runs_.resize(map_.cells.size());
        errors_ = drawLaunchErrors(options_.draws, errorSizesOf(car_));
        share([this](PairedLauncher& launcher, std::size_t index) { launch(launcher, index); },
              map_.combinations.size(), 0, 1 - kDrawnPart);
        chooseDrawn();
        share([this](PairedLauncher& launcher, std::size_t index) { draw(launcher, index); },
              map_.combinations.size(), 1 - kDrawnPart, kDrawnPart);
        map_.complete = !isCancelled();
        if (map_.complete) {
            markBest();
            findBands();
        }
        return std::move(map_);
    }

  private:
    using Task = std::function<void(PairedLauncher&, std::size_t)>;

    [[nodiscard]] bool isCancelled() const { return options_.isCancelled && options_.isCancelled(); }
    [[nodiscard]] std::size_t at(std::size_t combination, std::size_t power) const {
        return combination * map_.shares.size() + power;
    }

    // Combination by combination, as all launches of one share its linkage.
    void share(const Task& task, std::size_t count, double from, double part) {
        std::atomic<std::size_t> next = 0;
        inParallel(options_.threads, [&] {
            PairedLauncher launcher(errors_, kMostRowsApart);
            for (std::size_t index = next++; index < count && !isCancelled(); index = next++) {
                task(launcher, index);
                if (options_.progress) {
                    options_.progress(from +
                                      part * static_cast<double>(index + 1) / static_cast<double>(count));
                }
            }
        });
    }
    [[nodiscard]] std::optional<LaunchInputs> inputsOf(std::size_t combination) const {
        const EditResult bolted =
            bolthole::apply(car_, ChooseHoles{map_.combinations[combination].use, map_.lengths});
        return bolted.refusal.empty() ? launchInputsOf(bolted.car).inputs : std::nullopt;
    }
    void launch(PairedLauncher& launcher, std::size_t combination) {
        // As bolted nothing is set anew, lengths neither.
        const std::optional<LaunchInputs> inputs =
            combination == 0 ? launchInputsOf(car_).inputs : inputsOf(combination);
        for (std::size_t power = 0; inputs && power < map_.shares.size() && !isCancelled(); ++power) {
            SetupRuns& runs = runs_[at(combination, power)];
            launcher.launchEntered(withTorque(*inputs, map_.shares[power]), runs);
            PowerCell& cell = map_.cells[at(combination, power)];
            cell.end = runs.end;
            cell.sixtyFoot = runs.entered.sixtyFoot;
            cell.leastRearLoad = runs.entered.leastRearLoad;
            cell.toppedOut = runs.entered.toppedOut;
        }
    }
    // The quickest of each torque, and the car as it is bolted.
    void chooseDrawn() {
        isDrawn_.assign(map_.cells.size(), false);
        std::vector<std::size_t> order(map_.combinations.size());
        for (std::size_t power = 0; power < map_.shares.size(); ++power) {
            std::iota(order.begin(), order.end(), std::size_t{0});
            std::ranges::stable_sort(order, {}, [&](std::size_t combination) {
                return map_.cells[at(combination, power)].sixtyFoot.value_or(kMostTime);
            });
            for (std::size_t place = 0; place < std::min(order.size(), kDrawnCombinations); ++place) {
                isDrawn_[at(order[place], power)] = true;
            }
            isDrawn_[at(0, power)] = true;
        }
    }
    void draw(PairedLauncher& launcher, std::size_t combination) {
        std::optional<LaunchInputs> inputs;
        for (std::size_t power = 0; power < map_.shares.size() && !isCancelled(); ++power) {
            const std::size_t cell = at(combination, power);
            if (!isDrawn_[cell] || !map_.cells[cell].sixtyFoot) {
                continue;
            }
            inputs = inputs             ? std::move(inputs)
                     : combination == 0 ? launchInputsOf(car_).inputs
                                        : inputsOf(combination);
            launcher.launchDrawn(withTorque(*inputs, map_.shares[power]), options_.isCancelled, runs_[cell]);
        }
    }

    void markBest() {
        for (std::size_t power = 0; power < map_.shares.size(); ++power) {
            std::size_t best = kNone;
            for (std::size_t other = 0; other < map_.combinations.size(); ++other) {
                const std::optional<double>& time = map_.cells[at(other, power)].sixtyFoot;
                if (time && (best == kNone || *time < *map_.cells[at(best, power)].sixtyFoot)) {
                    best = other;
                }
            }
            if (best == kNone) {
                continue;
            }
            map_.cells[at(best, power)].isBest = true;
            for (std::size_t other = 0; other < map_.combinations.size(); ++other) {
                const std::size_t index = at(other, power);
                PowerCell& cell = map_.cells[index];
                if (cell.sixtyFoot) {
                    const double behind = *cell.sixtyFoot - *map_.cells[at(best, power)].sixtyFoot;
                    cell.isLike = other == best ||
                                  (isDrawn_[index] && !canTellApart(runs_[at(best, power)], runs_[index]));
                    cell.isGood = cell.isLike || behind <= kWorthABolt;
                }
            }
        }
    }

    // As far as one combination will do, then on with the next: no other way has fewer bands.
    void findBands() {
        std::vector<std::size_t> good;
        for (std::size_t power = 0; power < map_.shares.size(); ++power) {
            std::vector<std::size_t> here;
            for (std::size_t other = 0; other < map_.combinations.size(); ++other) {
                if (map_.cells[at(other, power)].isGood) {
                    here.push_back(other);
                }
            }
            std::vector<std::size_t> still;
            std::ranges::set_intersection(good, here, std::back_inserter(still));
            const bool follows = !map_.bands.empty() && map_.bands.back().last + 1 == power;
            if (follows && !still.empty()) {
                good = std::move(still);
                map_.bands.back().last = power;
                map_.bands.back().combination = good.front();
            } else if (!here.empty()) {
                map_.bands.push_back({power, power, here.front()});
                good = std::move(here);
            }
        }
    }

    static constexpr double kMostRowsApart = 10;  // s: rows are not wanted

    Car car_;
    PowerOptions options_;
    PowerMap map_;
    std::vector<LaunchError> errors_;
    std::vector<SetupRuns> runs_;  // as the cells
    std::vector<bool> isDrawn_;
};

std::string holeName(const Bracket& bracket, int hole) {
    const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
    return name.empty() ? std::to_string(hole + 1) : name;
}

}  // namespace

PowerMap mapPower(const Car& car, const PowerOptions& options) {
    return PowerMapper(car, options).run();
}

std::string combinationNames(const PowerMap& map, std::size_t combination, const Car& car) {
    std::string names;
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const int index = static_cast<int>(link);
            const int hole = map.combinations[combination].use.of(index, end);
            const bool varies = std::ranges::any_of(map.combinations, [&](const PowerCombination& other) {
                return other.use.of(index, end) != hole;
            });
            if (varies) {
                names += (names.empty() ? "" : " / ") + holeName(car.links[link].bracket(end), hole);
            }
        }
    }
    return names.empty() ? say("as bolted") : names;
}

std::string bandWords(const PowerMap& map, const Car& car, Units units) {
    std::string words;
    for (std::size_t index = 0; index < map.bands.size(); ++index) {
        const PowerBand& band = map.bands[index];
        const std::string names = combinationNames(map, band.combination, car);
        if (map.bands.size() == 1) {
            words = say("at any power: %1", names);
        } else if (index + 1 == map.bands.size()) {
            words = say("%1; above: %2", words, names);
        } else {
            const double share = (map.shares[band.last] + map.shares[map.bands[index + 1].first]) / 2;
            const std::string torque = withUnit(figureText(share * map.peakTorque, Quantity::torque, units),
                                                Quantity::torque, units);
            words =
                index == 0 ? say("up to %1: %2", torque, names) : say("%1; to %2: %3", words, torque, names);
        }
    }
    return words;
}

}  // namespace bolthole
