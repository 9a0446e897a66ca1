#include "widgets/papers/sheets/measuring_plan.h"

#include <algorithm>

#include "geometry/car/fields.h"
#include "geometry/combinations/hole_combination.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/sheets/measuring_places.h"
#include "widgets/words/field_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

namespace {

constexpr double kSamePlace = 0.001;  // m

Role roleIn(const Car& car, std::size_t link) {
    return roleOf(car.links[link], car.rearTireRadius);
}

bool isEndOnLink(const Car& car, std::size_t link) {
    return roleIn(car, link) == Role::crosswise;
}

// "upper, axle, top"; the hole's name only where it is one of several.
QString rowName(const QString& part, const QString& end, const Bracket& bracket, int hole) {
    const QString name = QStringLiteral("%1, %2").arg(part, end);
    return bracket.holes.size() < 2 ? name : QStringLiteral("%1, %2").arg(name, holeName(bracket, hole));
}

/// Gathers the rows and points of brackets.
class BracketGatherer {
  public:
    explicit BracketGatherer(PlanArea& area) : area_(area) {}

    /// Gives the number of the point that is bolted; 0 where that hole is not drilled.
    template <class FieldOf>
    int add(const Bracket& bracket, const QString& part, End end, bool isEndOn, const FieldOf& fieldOf) {
        int bolted = 0;
        for (int hole = 0; hole < static_cast<int>(bracket.holes.size()); ++hole) {
            const Hole& one = bracket.holes[static_cast<std::size_t>(hole)];
            if (one.planned) {
                continue;
            }
            const QString where = end == End::chassis ? tr("chassis") : tr("axle");
            const int number = static_cast<int>(area_.points.size()) + 1;
            bolted = hole == bracket.use ? number : bolted;
            area_.points.push_back({number, one.at, group_, isEndOn, end == End::chassis});
            table_.rows.push_back({number,
                                   rowName(part, where, bracket, hole),
                                   bracket.holes.size() > 1,
                                   {fieldOf(hole, 0), fieldOf(hole, 2), fieldOf(hole, 1)}});
        }
        ++group_;
        return bolted;
    }
    /// Rows for more holes of the bracket added last, where it has one alone: a new car is given one each.
    void addSpares(const Bracket& bracket, const QString& part, End end) {
        if (bracket.holes.size() != 1 || bracket.holes.front().planned) {
            return;
        }
        for (const int hole : {2, 3}) {
            PlanRow spare = table_.rows.back();
            const QString where = end == End::chassis ? tr("chassis") : tr("axle");
            spare.name = QStringLiteral("%1, %2, %3").arg(part, where, tr("hole %1").arg(hole));
            spare.hasTick = true;
            spares_.push_back(spare);
        }
    }
    void finish(const std::vector<Side>& sides) {
        if (table_.rows.empty()) {
            return;
        }
        const auto isMirrored = [](Side side) { return side == Side::both; };
        const QString across = std::ranges::all_of(sides, isMirrored)    ? tr("out")
                               : std::ranges::none_of(sides, isMirrored) ? tr("left +")
                                                                         : tr("out, or left +");
        table_.heads = {tr("forward"), tr("height"), across};
        if (!spares_.empty()) {
            area_.spareHoles = PlanTable{table_.heads, std::move(spares_)};
        }
        area_.tables.push_back(std::move(table_));
    }

  private:
    PlanArea& area_;
    PlanTable table_;
    std::vector<PlanRow> spares_;
    int group_ = 0;
};

// Whether the arm's own eye is the hole it is bolted to.
bool isEyeInHole(const Link& link) {
    return link.kind != LinkKind::rod && (link.axle.inUse().at - link.chassis.inUse().at).norm() < kSamePlace;
}

// An arm that is rigid with the axle reaches to it; its own points are all at its front.
PlanLine lineOf(const Car& car, std::size_t index) {
    const Link& link = car.links[index];
    const Eigen::Vector3d front = link.chassis.inUse().at;
    Eigen::Vector3d rear = link.axle.inUse().at;
    if (link.kind == LinkKind::pivot || link.kind == LinkKind::slider) {
        rear = {0, front.y(), car.rearTireRadius};
    } else if (link.kind == LinkKind::guide) {
        rear = front;
    }
    return {rear, front, true, isEndOnLink(car, index)};
}

void addLengths(const Car& car, std::size_t index, std::array<int, 2> between, PlanArea& area) {
    if (car.links[index].kind == LinkKind::rod) {
        area.numbers.push_back({{},
                                tr("%1, center to center").arg(linkName(car, static_cast<int>(index))),
                                {.field = Field::linkLength, .link = static_cast<int>(index)},
                                std::ranges::count(between, 0) == 0 ? between : std::array<int, 2>{}});
    }
}

/// The links of one side; those in the middle and the mirrored ones stand with the left.
std::optional<PlanArea> linksOf(const Car& car, AreaKind kind) {
    PlanArea area;
    area.kind = kind;
    const bool isLeft = kind == AreaKind::leftLinks;
    area.title = isLeft ? tr("measure the rear links, left side") : tr("measure the rear links, right side");
    BracketGatherer gather(area);
    std::vector<Side> sides;
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& link = car.links[index];
        if ((link.side == Side::right) == isLeft) {
            continue;
        }
        const int number = static_cast<int>(index);
        sides.push_back(link.side);
        area.lines.push_back(lineOf(car, index));
        std::array<int, 2> bolted{};
        for (const End end : {End::axle, End::chassis}) {
            if (end == End::axle && isEyeInHole(link)) {
                continue;
            }
            bolted[end == End::axle ? 0 : 1] =
                gather.add(link.bracket(end), linkName(car, number), end, isEndOnLink(car, index),
                           [number, end](int hole, int axis) { return holeField(number, end, hole, axis); });
            gather.addSpares(link.bracket(end), linkName(car, number), end);
        }
        addLengths(car, index, bolted, area);
    }
    if (sides.empty()) {
        return std::nullopt;
    }
    gather.finish(sides);
    const bool isMirrored = std::ranges::find(sides, Side::both) != sides.end();
    area.hint =
        tr("Bolt centers, %1. All once, then all again from fresh marks: the difference says how sure "
           "a number is. Height: from the level floor.")
            .arg(planTapeStep(car.units)) +
        (isMirrored ? tr(" Out: half of what the tape reads from the left bolt to the right one.")
                    : QString());
    if (std::ranges::any_of(sides, [](Side side) { return side != Side::both; })) {
        area.hint += tr(" Left +: from the chalked center plane, minus to the driver's right.");
    }
    return area;
}

PlanArea wheelsOf() {
    PlanArea area;
    area.kind = AreaKind::wheels;
    area.title = tr("measure the wheels and the front");
    area.numbers = planWheels();
    area.hint =
        tr("Race pressures, the car's weight on its tires, wheels straight ahead. Radius: from the ground to "
           "the middle of the hub. Track: between the middles of the treads, at the ground.");
    area.caution =
        tr("Droop: rated stands under the frame, a jack under the arm only to let it down, wheels on the "
           "ground chocked; a loose coil spring can fly out.");
    return area;
}

PlanArea drivelineOf(const Car& car) {
    PlanArea area;
    area.kind = AreaKind::driveline;
    area.title = tr("measure the driveline");
    const Driveline& line = *car.driveline;
    const std::optional<Eigen::Vector3d> carrier = line.shaft.carrierJoint.whole();
    PlanTable table{{tr("forward"), tr("height"), tr("left +")}, {}};
    Eigen::Vector3d last = line.pinionJoint;
    const auto add = [&](const Eigen::Vector3d& at, const QString& name, Field field, bool isChassis) {
        const int number = static_cast<int>(area.points.size()) + 1;
        area.points.push_back({number, at, number, false, isChassis});
        table.rows.push_back({number, name, false, {}});
        const std::array axes{0, 2, 1};
        std::ranges::transform(axes, table.rows.back().fields.begin(),
                               [field](int axis) { return FieldId{.field = field, .axis = axis}; });
        if (number > 1) {
            area.lines.push_back({last, at, true, false});
        }
        last = at;
    };
    add(line.pinionJoint, tr("rear U-joint, center of its cross"), Field::pinionJoint, false);
    if (carrier) {
        add(*carrier, tr("carrier joint, behind the carrier bearing"), Field::carrierJoint, true);
    }
    add(line.outputJoint, tr("front U-joint, center of its cross"), Field::outputJoint, true);
    area.tables.push_back(std::move(table));
    area.numbers = planDriveline();
    area.hint =
        tr("Angle finder zeroed on the level floor, on machined faces: A on the pinion's yoke, B on the "
           "transmission's output. Left: from the chalked center plane, plus to the driver's left.");
    area.caution = tr("Transmission in neutral, ignition off, key out: turn the shaft by hand only.");
    return area;
}

PlanArea springsOf(const Car& car) {
    PlanArea area;
    area.kind = AreaKind::springs;
    area.title = tr("measure springs, shocks and limits");
    BracketGatherer gather(area);
    std::vector<Side> sides;
    for (std::size_t index = 0; index < car.springs.size(); ++index) {
        const SuspensionPart& part = car.springs[index];
        const int item = static_cast<int>(index);
        sides.push_back(part.side);
        area.lines.push_back(
            {part.axle.inUse().at, part.chassis.inUse().at, part.kind != PartKind::strap, false});
        for (const End end : {End::axle, End::chassis}) {
            gather.add(part.bracket(end), springName(car, item), end, false, [item, end](int hole, int axis) {
                return FieldId{.field = Field::mountAt, .end = end, .hole = hole, .axis = axis, .item = item};
            });
        }
        const std::vector<PlanNumber> numbers = planSpring(car, item);
        area.numbers.insert(area.numbers.end(), numbers.begin(), numbers.end());
    }
    gather.finish(sides);
    const std::vector<PlanNumber> travel = planTravel();
    area.numbers.insert(area.numbers.end(), travel.begin(), travel.end());
    area.limits = planRodLimits(car);
    area.hint =
        tr("Centers of the bolts, or the middle of the seat where a spring's last coil rests, %1, at ride "
           "height. Lengths of shocks on the bench; rates from the maker or a spring tester.")
            .arg(planTapeStep(car.units));
    if (car.springs.empty()) {
        area.hint =
            tr("This car has no springs, shocks or stops yet, so there are no boxes for them: add them on "
               "the Springs page, then print this sheet again. ") +
            area.hint;
    }
    area.caution =
        tr("A squeezed spring can kill: measure, never loosen, with a spring under load. The axle's droop: "
           "rated stands under the frame, a jack under the axle only to let it down, wheels chocked.");
    return area;
}

PlanArea weightsOf(const Car& car) {
    PlanArea area;
    area.kind = AreaKind::weights;
    area.title = tr("weigh the car");
    area.tables.push_back(planCorners(car));
    PlanTable places{{tr("forward"), tr("height"), tr("left +")}, {}};
    int number = 5;
    const auto add = [&](const QString& name, const EnteredPoint& at, Field field, int item) {
        if (const std::optional<Eigen::Vector3d> where = at.whole()) {
            area.points.push_back({number, *where, number, false, true});
        }
        places.rows.push_back({number++, name, false, {}});
        const std::array axes{0, 2, 1};
        std::ranges::transform(axes, places.rows.back().fields.begin(),
                               [&](int axis) { return FieldId{.field = field, .axis = axis, .item = item}; });
    };
    add(tr("driver, seated"), car.weighing.driver.at, Field::driverAt, -1);
    for (std::size_t load = 0; load < car.ballast.size(); ++load) {
        add(QString::fromStdString(ballastWords(car, static_cast<int>(load))), car.ballast[load].at,
            Field::ballastAt, static_cast<int>(load));
    }
    area.tables.push_back(std::move(places));
    area.numbers = planWeighing(car);
    area.hint = tr(
        "Four scales with their tops level, tires at pressure, fuel and loads as written here. Roll the car "
        "on, bounce both ends, let it settle. Roll it off and on again for the second reading.");
    area.caution =
        tr("One end raised for the CG height: leave it to a shop with ramps, stops and restraints; nobody "
           "under, before or behind the car.");
    return area;
}

}  // namespace

QString signOf(const PlanNumber& number) {
    return number.letter.isEmpty() && number.between[0] > 0
               ? QStringLiteral("%1–%2").arg(number.between[0]).arg(number.between[1])
               : number.letter;
}

std::vector<PlanArea> measuringPlan(const Car& car) {
    std::vector<PlanArea> plan;
    for (const AreaKind kind : {AreaKind::leftLinks, AreaKind::rightLinks}) {
        if (std::optional<PlanArea> links = linksOf(car, kind)) {
            plan.push_back(*std::move(links));
        }
    }
    plan.push_back(wheelsOf());
    if (car.driveline) {
        plan.push_back(drivelineOf(car));
    }
    plan.push_back(springsOf(car));
    plan.push_back(weightsOf(car));
    return plan;
}

}  // namespace bolthole
