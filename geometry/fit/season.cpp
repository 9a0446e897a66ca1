#include "geometry/fit/season.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// Gives a setup what was entered of launch and wheel rates after it was kept.
void fillFrom(const Car& bench, Car& setup) {
    for (const FieldRule* rule : rulesOf(Scope::car)) {
        const bool isOfLaunch = rule->path.starts_with("launch.") || rule->path.starts_with("wheel_rates.");
        if (!isOfLaunch || rule->hasAxis) {
            continue;
        }
        const FieldId id{.field = rule->field};
        const Slot<Car> slot = slotOf(setup, id);
        auto* const* number = std::get_if<OptionalNumber*>(&slot);
        if (number != nullptr && !**number) {
            **number = numberAt(bench, id);
        }
    }
    EnteredLaunch& launch = setup.launch;
    if (launch.engine.torque.empty()) {
        launch.engine.torque = bench.launch.engine.torque;
    }
    if (!launch.coupling.kind) {
        launch.coupling.kind = bench.launch.coupling.kind;
    }
    if (!launch.front.damping) {
        launch.front.damping = bench.launch.front.damping;
    }
}

std::string reasonOf(const MissingInput& missing) {
    return say("its setup lacks %1, %2", missing.path, missing.reason);
}

/// Puts a season together.
class Collector {
  public:
    explicit Collector(const Car& car) : car_(car) {}

    Season collect() {
        LaunchInputsResult bench = launchInputsOf(car_);
        season_.missing = std::move(bench.missing);
        if (!bench.inputs) {
            return std::move(season_);
        }
        bench_ = numbersOf(*bench.inputs);
        for (std::size_t row = 0; row < car_.passes.size(); ++row) {
            if (isCounted(car_.passes[row])) {
                add(row);
            }
        }
        addPriors();
        return std::move(season_);
    }

  private:
    void add(std::size_t row) {
        const Pass& pass = car_.passes[row];
        if (!pass.setup) {
            season_.unused.push_back({row, say("it stands on no kept setup")});
            return;
        }
        LaunchInputsResult setup = inputsOf(*pass.setup);
        if (!setup.inputs) {
            season_.unused.push_back({row, reasonOf(setup.missing.front())});
            return;
        }
        if (pass.launchRpm) {
            setup.inputs->engine.launchSpeed = *pass.launchRpm * kRpm;
        }
        const std::size_t surface = surfaceOf(pass);
        const auto [place, isNew] = launches_.try_emplace(
            {*pass.setup, setup.inputs->engine.launchSpeed, surface}, season_.launches.size());
        if (isNew) {
            season_.launches.push_back({std::move(*setup.inputs), surface});
        }
        season_.passes.push_back({row, *pass.sixtyFoot, surface, place->second});
    }

    LaunchInputsResult inputsOf(int setup) {
        const auto found = setups_.find(setup);
        if (found != setups_.end()) {
            return found->second;
        }
        Car kept = *car_.kept[static_cast<std::size_t>(setup)].car;
        fillFrom(car_, kept);
        LaunchInputsResult result = launchInputsOf(kept);
        if (result.inputs) {
            result.inputs = withBench(*result.inputs);
        }
        return setups_.emplace(setup, std::move(result)).first->second;
    }

    [[nodiscard]] LaunchInputs withBench(const LaunchInputs& inputs) const {
        LaunchNumbers numbers = numbersOf(inputs);
        numbers.friction = bench_.friction;
        numbers.peakSlip = bench_.peakSlip;
        numbers.stallSpeed = bench_.stallSpeed > 0 ? bench_.stallSpeed : numbers.stallSpeed;
        return withNumbers(inputs, numbers);
    }

    std::size_t surfaceOf(const Pass& pass) {
        const std::string name = surfaceNameOf(pass);
        const auto found = std::ranges::find(season_.surfaces, name);
        const auto index = static_cast<std::size_t>(found - season_.surfaces.begin());
        if (found == season_.surfaces.end()) {
            season_.surfaces.push_back(name);
        }
        return index;
    }

    void addPriors() {
        for (std::size_t surface = 0; surface < season_.surfaces.size(); ++surface) {
            addPrior(
                {LaunchNumber::friction, surface, bench_.friction, own(Field::friction, kFrictionPrior)});
        }
        const auto any = [this](const auto& has) {
            return std::ranges::any_of(season_.launches,
                                       [&has](const SeasonLaunch& launch) { return has(launch.inputs); });
        };
        addPrior({LaunchNumber::torqueScale, 0, 1, kScalePrior});
        if (bench_.stallSpeed > 0 &&
            any([](const LaunchInputs& inputs) { return inputs.coupling.kind == CouplingKind::converter; })) {
            addPrior({LaunchNumber::stallSpeed, 0, bench_.stallSpeed, own(Field::stallSpeed, kStallPrior)});
        }
        if (any([](const LaunchInputs& inputs) { return inputs.front.damping.has_value(); })) {
            addPrior({LaunchNumber::frontDampingScale, 0, 1, kScalePrior});
        }
        if (any([](const LaunchInputs& inputs) {
                return std::ranges::any_of(inputs.parts,
                                           [](const LaunchPart& part) { return part.damping.has_value(); });
            })) {
            addPrior({LaunchNumber::rearDampingScale, 0, 1, kScalePrior});
        }
        addPrior({LaunchNumber::peakSlip, 0, bench_.peakSlip, own(Field::tirePeakSlip, kPeakSlipPrior)});
    }

    void addPrior(const NumberPrior& prior) {
        if (prior.uncertainty > 0 && !season_.passes.empty()) {
            season_.priors.push_back(prior);
        }
    }
    [[nodiscard]] double own(Field field, double usual) const {
        return car_.uncertainties.of(field).value_or(usual);
    }

    const Car& car_;
    LaunchNumbers bench_;
    Season season_;
    std::map<int, LaunchInputsResult> setups_;
    std::map<std::tuple<int, double, std::size_t>, std::size_t> launches_;
};

}  // namespace

std::string surfaceNameOf(const Pass& pass) {
    if (!isBlank(pass.surface.name)) {
        return pass.surface.name;
    }
    return pass.surface.kind ? say(nameOf(*pass.surface.kind)) : say("unnamed surface");
}

Season seasonOf(const Car& car) {
    return Collector(car).collect();
}

}  // namespace bolthole
