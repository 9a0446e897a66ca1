#include "geometry/uncertainty/read_uncertainty.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/car/fields.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/uncertainty/varied_car.h"

namespace bolthole {

namespace {

class ReadModel final : public MeasurementModel {
  public:
    ReadModel(const Car& car, std::span<const CarInput> inputs, std::size_t count, const ReadNumbers& read)
        : varied_(car, LengthTreatment::keep, holesInUse(car), inputs), count_(count), read_(read) {
        AxleSolver solver(varied_.linkage(), Drive::travel);
        if (solver.assemble().usable() && solver.heldBySymmetry() != Freedom::none) {
            varied_.keepSymmetric();
        }
    }

    [[nodiscard]] std::size_t outputs() const override { return count_; }
    bool evaluate(std::span<const double> x, std::span<double> y) override {
        return varied_.set(x) && read_(varied_.car(), y);
    }

  private:
    VariedCar varied_;
    std::size_t count_;
    const ReadNumbers& read_;
};

/// Adds what is not among the inputs yet and stands in the car.
class Adder {
  public:
    Adder(const Car& car, std::vector<CarInput>& inputs) : car_(car), inputs_(inputs) {}

    void addField(FieldId id) {
        const int last = ruleOf(id.field).hasAxis ? 2 : -1;
        for (id.axis = std::min(0, last); id.axis <= last; ++id.axis) {
            add(id);
        }
    }

  private:
    void add(const FieldId& id) {
        const std::optional<double> value = numberAt(car_, id);
        const NumberUncertainty numberUncertainty = uncertaintyOf(car_, id);
        const bool isThere = std::ranges::find(inputs_, id, &CarInput::id) != inputs_.end();
        const bool hasDatum = isFromDatum(id) && std::ranges::any_of(inputs_, [&](const CarInput& input) {
                                  return datumAxis(input.id.field) == static_cast<std::size_t>(id.axis);
                              });
        if (value && (numberUncertainty.uncertainty > 0 || hasDatum) && !isThere) {
            inputs_.push_back({id, *value, numberUncertainty, isUncertainStart(car_, id)});
        }
    }

    const Car& car_;
    std::vector<CarInput>& inputs_;
};

void addSpring(const Car& car, Field field, Adder& adder) {
    for (int item = 0; item < static_cast<int>(car.springs.size()); ++item) {
        FieldId id{.field = field};
        id.item = item;
        if (ruleOf(field).scope == Scope::spring) {
            adder.addField(id);
            continue;
        }
        for (const End end : {End::chassis, End::axle}) {
            id.end = end;
            id.hole = car.springs[static_cast<std::size_t>(item)].bracket(end).use;
            adder.addField(id);
        }
    }
}

}  // namespace

std::vector<CarInput> measuredInputs(const Car& car) {
    std::vector<CarInput> inputs = uncertainInputs(car);
    Adder adder(car, inputs);
    for (const FieldRule& rule : fieldRules()) {
        const Field field = rule.field;
        const Scope scope = rule.scope;
        // Of the CG height what it is made of stands there already, and so do the loads that count.
        if (!rule.isMeasured || field == Field::cgHeight) {
            continue;
        }
        if (scope == Scope::car || scope == Scope::driveline) {
            adder.addField({.field = field});
        } else if (scope == Scope::spring || scope == Scope::mount) {
            addSpring(car, field, adder);
        }
    }
    return inputs;
}

std::vector<double> readUncertainty(const Car& car, std::size_t count, const ReadNumbers& read) {
    const std::vector<CarInput> inputs = measuredInputs(car);
    ReadModel model(car, inputs, count, read);
    Sensitivity sensitivity;
    differentiate(model, asInputs(inputs), sensitivity);
    const std::vector<std::size_t> starts = uncertainStarts(inputs);
    std::vector<double> uncertainty(count, std::numeric_limits<double>::quiet_NaN());
    for (std::size_t number = 0; number < count && sensitivity.known; ++number) {
        const auto row = static_cast<Eigen::Index>(number);
        if (startsBehind(sensitivity, row, starts).empty()) {
            uncertainty[number] = std::sqrt(sensitivity.change.row(row).squaredNorm() +
                                            sensitivity.curvature.row(row).squaredNorm() / 2);
        }
    }
    return uncertainty;
}

std::vector<Coverage> readRanges(const Car& car, std::size_t count, const ReadNumbers& read) {
    const std::vector<CarInput> inputs = measuredInputs(car);
    const SamplePlan plan{.samples = kRangeDraws, .seed = 1, .threads = 1};
    const Samples samples = drawSamples([&] { return std::make_unique<ReadModel>(car, inputs, count, read); },
                                        asInputs(inputs), plan);
    std::vector<Coverage> ranges;
    for (std::size_t number = 0; number < count; ++number) {
        const auto column = samples.col(static_cast<Eigen::Index>(number));
        std::vector<double> values(column.begin(), column.end());
        ranges.push_back(coverageOf(values));
    }
    return ranges;
}

std::vector<std::vector<FieldId>> startsBehind(const Car& car, std::size_t count, const ReadNumbers& read) {
    std::vector<CarInput> inputs = measuredInputs(car);
    std::erase_if(inputs, [](const CarInput& input) { return !input.starting; });
    std::vector<std::vector<FieldId>> behind(count);
    if (inputs.empty()) {
        return behind;
    }
    ReadModel model(car, inputs, count, read);
    Sensitivity sensitivity;
    differentiate(model, asInputs(inputs), sensitivity);
    const std::vector<std::size_t> starts = uncertainStarts(inputs);
    for (std::size_t number = 0; number < count; ++number) {
        for (const std::size_t place : startsBehind(sensitivity, static_cast<Eigen::Index>(number), starts)) {
            behind[number].push_back(inputs[place].id);
        }
    }
    return behind;
}

}  // namespace bolthole
