#include "geometry/uncertainty/uncertain_inputs.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <numeric>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/say.h"
#include "geometry/weights/cg_height.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

// Of the height that stands where the CG height is: the estimate, or the number entered, which is in use too
// where a lift was chosen and can't be had.
double cgUncertainty(const Car& car) {
    return car.cgHeightFrom == CgHeightSource::estimate ? estimatedCgHeight().uncertainty.value_or(0)
                                                        : kEnteredCgUncertainty;
}

}  // namespace

std::string_view nameOf(MeasuringTool tool) {
    constexpr std::array<std::string_view, 6> kNames{
        phrase("tape"),   phrase("calipers"),        phrase("angle finder"),
        phrase("scales"), phrase("the truck scale"), phrase("estimate")};
    return kNames[static_cast<std::size_t>(tool)];
}

double uncertaintyOf(const Car& car, MeasuringTool tool) {
    const double scales = car.weighing.scaleUncertainty.value_or(kScaleUncertainty);
    switch (tool) {
        case MeasuringTool::tape:
            return car.tools.tape.value_or(kTapeUncertainty);
        case MeasuringTool::calipers:
            return car.tools.calipers.value_or(kCaliperUncertainty);
        case MeasuringTool::angleFinder:
            return car.tools.angleFinder.value_or(kAngleFinderUncertainty);
        case MeasuringTool::scales:
            return scales;
        case MeasuringTool::otherScale:
            return car.weighing.ticket.uncertainty.value_or(AxleTicket{}.uncertainty);
        case MeasuringTool::estimate:
            break;
    }
    return 0;
}

NumberUncertainty uncertaintyOf(const Car& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    NumberUncertainty numberUncertainty{.tool = rule.tool};
    FieldId uncertainty = id;
    uncertainty.uncertainty = true;
    if (const std::optional<double> own = numberAt(car, uncertainty)) {
        numberUncertainty.uncertainty = *own;
        numberUncertainty.own = true;
    } else if (id.field == Field::cgHeight) {
        numberUncertainty.uncertainty = cgUncertainty(car);
    } else if (rule.uncertainty) {
        numberUncertainty.tool = MeasuringTool::estimate;
        numberUncertainty.uncertainty = *rule.uncertainty;
    } else if (id.field == Field::liftHeight) {
        numberUncertainty.uncertainty = LiftUncertainty{}.lift;
    } else {
        numberUncertainty.uncertainty = uncertaintyOf(car, numberUncertainty.tool);
        const bool isTape = numberUncertainty.tool == MeasuringTool::tape && !car.tools.tape;
        const bool isAngle = numberUncertainty.tool == MeasuringTool::angleFinder && !car.tools.angleFinder;
        numberUncertainty.distribution = isTape    ? Distribution::triangular
                                         : isAngle ? Distribution::rectangular
                                                   : Distribution::normal;
        if (id.field == Field::liftReading) {
            numberUncertainty.uncertainty *= std::numbers::sqrt2;  // the sum of two tires' readings
        }
    }
    return numberUncertainty;
}

namespace {

/// Lists the numbers of one car.
class Lister {
  public:
    explicit Lister(const Car& car) : car_(car) {}

    std::vector<CarInput> list(const HoleUse& use) {
        for (const Field field : {Field::wheelbase, Field::rearTireRadius, Field::frontTireRadius}) {
            add({.field = field});
        }
        for (std::size_t link = 0; link < car_.links.size(); ++link) {
            addLink(static_cast<int>(link), use);
        }
        addWeights();
        addHeight();
        addBallast();
        addDriveline();
        addDatums();
        return std::move(inputs_);
    }

  private:
    void add(const FieldId& id) {
        if (const std::optional<double> value = numberAt(car_, id)) {
            inputs_.push_back({id, *value, uncertaintyOf(car_, id), isUncertainStart(car_, id)});
        }
    }
    void addPoint(FieldId id) {
        for (id.axis = 0; id.axis < 3; ++id.axis) {
            add(id);
        }
    }
    void addLink(int link, const HoleUse& use) {
        const Link& held = car_.links[static_cast<std::size_t>(link)];
        FieldId id{.field = Field::holeAt, .link = link, .hole = use.of(link, End::chassis)};
        addPoint(id);
        if (held.kind != LinkKind::rod) {
            return;  // the arm's point is where the chassis' is: one measurement
        }
        id.end = End::axle;
        id.hole = use.of(link, End::axle);
        addPoint(id);
        if (held.length) {
            add({.field = Field::linkLength, .link = link});
            return;
        }
        // Its length is known by the holes it is bolted to now.
        for (const End end : {End::chassis, End::axle}) {
            if (held.bracket(end).use != use.of(link, end)) {
                addPoint({.field = Field::holeAt, .link = link, .end = end, .hole = held.bracket(end).use});
            }
        }
    }
    void addWeights() {
        for (const Field field : {Field::leftFrontWeight, Field::rightFrontWeight, Field::leftRearWeight,
                                  Field::rightRearWeight}) {
            add({.field = field});
        }
    }
    void addHeight() {
        if (balanceOf(car_).from.source != CgHeightSource::lift) {
            add({.field = Field::cgHeight});
            return;
        }
        add({.field = Field::liftHeight});
        add({.field = Field::liftReading});
        if (car_.lift.driver != car_.cornersAre) {
            for (const Field field : {Field::otherLeftFront, Field::otherRightFront, Field::otherLeftRear,
                                      Field::otherRightRear}) {
                add({.field = field});
            }
            add({.field = Field::driverAt, .axis = 2});
        }
    }
    void addBallast() {
        if (car_.cornersAre == DriverSeat::out) {
            add({.field = Field::driverMass});
            addPoint({.field = Field::driverAt});
        }
        for (std::size_t item = 0; item < car_.ballast.size(); ++item) {
            const int index = static_cast<int>(item);
            if (!missingOf(car_.ballast[item]).empty() ||
                car_.ballast[item].weighed == car_.ballast[item].aboard) {
                continue;
            }
            if (car_.ballast[item].mass) {
                add({.field = Field::ballastMass, .item = index});
            }
            addPoint({.field = Field::ballastAt, .item = index});
        }
    }
    void addDriveline() {
        add({.field = Field::pinionAngle});
        addPoint({.field = Field::pinionJoint});
        add({.field = Field::outputAngle});
        addPoint({.field = Field::outputJoint});
    }

    void addDatums() {
        for (const Field field :
             {Field::originLineUncertainty, Field::centerPlaneUncertainty, Field::floorUncertainty}) {
            const FieldId id{.field = field};
            if (const double uncertainty = numberAt(car_, id).value_or(0); uncertainty > 0) {
                inputs_.push_back({id, 0, {.uncertainty = uncertainty, .own = true}});
            }
        }
    }

    const Car& car_;
    std::vector<CarInput> inputs_;
};

}  // namespace

std::optional<std::size_t> datumAxis(Field field) {
    switch (field) {
        case Field::originLineUncertainty:
            return 0;
        case Field::centerPlaneUncertainty:
            return 1;
        case Field::floorUncertainty:
            return 2;
        default:
            return std::nullopt;
    }
}

bool isFromDatum(const FieldId& id) {
    const Scope scope = ruleOf(id.field).scope;
    return id.axis >= 0 && !id.uncertainty &&
           (scope == Scope::hole || scope == Scope::mount || scope == Scope::driveline);
}

std::vector<CarInput> uncertainInputs(const Car& car, const HoleUse& use) {
    std::vector<CarInput> inputs = Lister(car).list(use);
    for (CarInput& input : inputs) {
        if (input.id.field == Field::cgHeight) {
            input.value = balanceOf(car).from.height;
        }
    }
    return inputs;
}

std::vector<CarInput> uncertainInputs(const Car& car) {
    return uncertainInputs(car, holesInUse(car));
}

bool isUncertainStart(const Car& car, const FieldId& id) {
    const bool counts = id.field != Field::cgHeight || balanceOf(car).from.source == CgHeightSource::entered;
    return counts && isStarting(car, id) && !uncertaintyOf(car, id).own;
}

std::vector<std::size_t> uncertainStarts(std::span<const CarInput> inputs) {
    std::vector<std::size_t> places;
    for (std::size_t place = 0; place < inputs.size(); ++place) {
        if (inputs[place].starting) {
            places.push_back(place);
        }
    }
    return places;
}

std::vector<std::size_t> startsBehind(const Sensitivity& sensitivity, Eigen::Index output,
                                      std::span<const std::size_t> starts) {
    std::vector<std::size_t> behind;
    if (starts.empty() || !sensitivity.known) {
        return behind;
    }
    constexpr double kRounding = 1e-12;  // of the variance: a millionth of the uncertainty
    const double all =
        sensitivity.change.row(output).squaredNorm() + sensitivity.curvature.row(output).squaredNorm();
    for (const std::size_t place : starts) {
        const auto input = static_cast<Eigen::Index>(place);
        const double change = sensitivity.change(output, input);
        const double curvature = sensitivity.curvature(output, input);
        const double own = change * change + curvature * curvature;
        if (own > kRounding * all) {
            behind.push_back(place);
        }
    }
    return behind;
}

std::vector<FieldId> startsUsed(const Car& car) {
    return startsUsed(car, holesInUse(car));
}

std::vector<FieldId> startsUsed(const Car& car, const HoleUse& use) {
    std::vector<FieldId> used;
    const bool isEstimate = balanceOf(car).from.source == CgHeightSource::estimate;
    for (const CarInput& input : uncertainInputs(car, use)) {
        const bool isHeight = input.id.field == Field::cgHeight;
        if ((isHeight && isEstimate) || isStarting(car, input.id)) {
            used.push_back(input.id);
        }
    }
    return used;
}

std::vector<FieldId> workedOutUsed(const Car& car) {
    std::vector<FieldId> used;
    for (const CarInput& input : uncertainInputs(car)) {
        if (originOf(car, input.id) == Origin::workedOut) {
            used.push_back(input.id);
        }
    }
    return used;
}

namespace {

/// A number in as few words as tell which.
std::string shortWords(const Car& car, FieldId id) {
    if (std::ranges::find(kCornerFields, id.field) != kCornerFields.end()) {
        return say("corner weights");
    }
    const Hole* hole = id.field == Field::holeAt ? findHole(car, id.link, id.end, id.hole) : nullptr;
    if (hole != nullptr && !hole->name.empty()) {
        return say("%1 %2 hole", linkWords(car, id.link), hole->name);
    }
    id.axis = -1;
    return numberWords(car, id);
}

}  // namespace

std::string startWords(const Car& car, std::span<const FieldId> starts) {
    constexpr std::size_t kNamed = 3;
    std::vector<std::string> names;
    std::vector<std::size_t> counts;  // a hole has up to three numbers, and so on
    for (const FieldId& id : starts) {
        std::string name = shortWords(car, id);
        const auto found = std::ranges::find(names, name);
        if (found != names.end()) {
            ++counts[static_cast<std::size_t>(found - names.begin())];
            continue;
        }
        names.push_back(std::move(name));
        counts.push_back(1);
    }
    std::string words;
    const std::size_t named = names.size() == kNamed + 1 ? kNamed + 1 : std::min(kNamed, names.size());
    for (std::size_t index = 0; index < named; ++index) {
        words += (index == 0 ? "" : ", ") + names[index];
    }
    const std::size_t rest =
        std::accumulate(counts.begin() + static_cast<std::ptrdiff_t>(named), counts.end(), std::size_t{0});
    return rest == 0 ? words : say("%1 and %2 more numbers", words, rest);
}

std::vector<UncertainInput> asInputs(std::span<const CarInput> inputs) {
    std::vector<UncertainInput> result;
    result.reserve(inputs.size());
    for (const CarInput& input : inputs) {
        result.push_back(
            {input.value, input.numberUncertainty.uncertainty, input.numberUncertainty.distribution});
    }
    return result;
}

std::string numberWords(const Car& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    const Link* link = findLink(car, id.link);
    const SuspensionPart* part = rule.scope == Scope::mount ? findSpring(car, id.item) : nullptr;
    const bool isMirrored =
        (link != nullptr && link->side == Side::both) || (part != nullptr && part->side == Side::both);
    const std::array<std::string_view, 3> axes{
        phrase("%1, forward"), isMirrored ? phrase("%1, out") : phrase("%1, left"), phrase("%1, height")};
    std::string words = say(rule.words);
    if (rule.scope == Scope::hole) {
        words = holeWords(car, id.link, id.end, id.hole);
    } else if (rule.scope == Scope::link) {
        words = say("%1 %2", linkWords(car, id.link), words);
    } else if (rule.scope == Scope::ballast) {
        const std::string load = ballastWords(car, id.item);
        words = rule.hasAxis ? load : say("%1, %2", load, words);
    } else if (rule.scope == Scope::spring) {
        words = say("%1 %2", springWords(car, id.item), words);
    } else if (rule.scope == Scope::mount) {
        words = mountWords(car, id.item, id.end);
    }
    return rule.hasAxis && id.axis >= 0 ? say(axes[static_cast<std::size_t>(id.axis)], words) : words;
}

}  // namespace bolthole
