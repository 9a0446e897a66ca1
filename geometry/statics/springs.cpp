#include "geometry/statics/springs.h"

#include <algorithm>
#include <cmath>

namespace bolthole {

namespace {

constexpr double kNudge = 1e-4;      // m, to either side for the slope of a motion ratio
constexpr double kRollNudge = 1e-4;  // rad

/// One solved pose as the lines see it.
struct Moment {
    AxlePose pose;
    Eigen::Matrix3d rotation = Eigen::Matrix3d::Identity();
    AxleMotion motion;
    double at = 0;  // m or rad of the imposed motion
    bool solved = false;

    [[nodiscard]] LineState state(const PartLine& line) const { return lineState(line, pose, rotation); }
    [[nodiscard]] double shortening(const PartLine& line) const { return state(line).shortening(motion); }
};

Moment momentOf(const AxleSolver& solver, const AxleMotion& motion, double at) {
    return {.pose = solver.pose(),
            .rotation = solver.pose().rotation(),
            .motion = motion,
            .at = at,
            .solved = true};
}

Moment inTravel(const AxleSolver& solver, double travel) {
    return momentOf(solver, travelMotion(solver.pose(), solver.travelRates()), travel);
}

Moment inRoll(const AxleSolver& solver, double roll) {
    return momentOf(solver, rollMotion(solver.pose(), solver.rollRates()), roll);
}

/// A pose and one to either side of it; where a side is out of reach, the pose itself stands in.
struct Neighbors {
    Moment middle;
    Moment below;
    Moment above;

    /// Slope of the line's motion ratio.
    [[nodiscard]] double slope(const PartLine& line) const {
        return (above.shortening(line) - below.shortening(line)) / (above.at - below.at);
    }
};

// The solver stands at `travel`; it is copied to look to the sides.
Neighbors neighborsInTravel(const AxleSolver& solver, double travel) {
    Neighbors around;
    around.middle = around.below = around.above = inTravel(solver, travel);
    for (const double nudge : {-kNudge, kNudge}) {
        AxleSolver beside = solver;
        if (beside.moveTo(travel + nudge).usable()) {
            (nudge < 0 ? around.below : around.above) = inTravel(beside, travel + nudge);
        }
    }
    return around;
}

Neighbors neighborsInRoll(const AxleSolver& solver, double travel) {
    Neighbors around;
    around.middle = around.below = around.above = inRoll(solver, 0);
    for (const double nudge : {-kRollNudge, kRollNudge}) {
        AxleSolver beside = solver;
        if (beside.moveTo(travel, nudge).usable()) {
            (nudge < 0 ? around.below : around.above) = inRoll(beside, nudge);
        }
    }
    return around;
}

// d(force shortening)/d motion of one line.
double rateOf(const SuspensionPart& part, const PartLine& line, const Neighbors& around) {
    const LineState state = around.middle.state(line);
    const double ratio = state.shortening(around.middle.motion);
    const double force = part.force(state.length);
    return part.rateAt(state.length) * ratio * ratio + (force == 0 ? 0 : force * around.slope(line));
}

}  // namespace

double SpringSweep::wheelRate(std::size_t step) const {
    double sum = 0;
    for (const LineFigures& line : row(step)) {
        sum += line.rate;
    }
    return sum / 2;
}

namespace {

LineFigures figuresOf(std::span<const SuspensionPart> parts, const PartLine& line, const Neighbors& around) {
    const SuspensionPart& part = parts[static_cast<std::size_t>(line.part)];
    const LineState state = around.middle.state(line);
    return {.length = state.length,
            .motionRatio = state.shortening(around.middle.motion),
            .force = part.force(state.length),
            .rate = rateOf(part, line, around)};
}

/// Sweeps outward from ride, row by row.
class SpringSweeper {
  public:
    SpringSweeper(std::span<const SuspensionPart> parts, SpringSweep& sweep) : parts_(parts), sweep_(sweep) {}

    void outward(AxleSolver solver, int first, int direction) {
        const int rows = static_cast<int>(sweep_.travel.size());
        for (int row = first; row >= 0 && row < rows; row += direction) {
            const double travel = sweep_.travel[static_cast<std::size_t>(row)];
            if (!solver.moveTo(travel).usable()) {
                return;
            }
            read(neighborsInTravel(solver, travel), static_cast<std::size_t>(row));
        }
    }

  private:
    void read(const Neighbors& around, std::size_t row) {
        for (std::size_t index = 0; index < sweep_.lines.size(); ++index) {
            sweep_.figures[row * sweep_.lines.size() + index] =
                figuresOf(parts_, sweep_.lines[index], around);
        }
    }

    std::span<const SuspensionPart> parts_;
    SpringSweep& sweep_;
};

}  // namespace

void computeSprings(const Car& car, std::span<const SuspensionPart> parts, SpringSweep& sweep) {
    const auto rows = static_cast<std::size_t>(car.travel.steps);
    buildPartLines(parts, car.rearTireRadius, sweep.lines);
    sweep.travel.resize(rows);
    sweep.figures.assign(rows * sweep.lines.size(), LineFigures{});
    int upward = 0;
    for (int row = 0; row < car.travel.steps; ++row) {
        sweep.travel[static_cast<std::size_t>(row)] = travelOfRow(car.travel, row);
        upward += travelOfRow(car.travel, row) < 0 ? 1 : 0;
    }
    AxleSolver solver(buildLinkage(car), Drive::travel);
    if (solver.assemble().usable()) {
        SpringSweeper sweeper(parts, sweep);
        sweeper.outward(solver, upward, +1);
        sweeper.outward(solver, upward - 1, -1);
    }
}

SpringSweep computeSprings(const Car& car, std::span<const SuspensionPart> parts) {
    SpringSweep sweep;
    computeSprings(car, parts, sweep);
    return sweep;
}

std::vector<LineFigures> lineFiguresAt(const Car& car, std::span<const SuspensionPart> parts, double travel) {
    std::vector<PartLine> lines;
    buildPartLines(parts, car.rearTireRadius, lines);
    std::vector<LineFigures> figures(lines.size());
    AxleSolver solver(buildLinkage(car), Drive::travel);
    if (!solver.assemble().usable() || !solver.moveTo(travel).usable()) {
        return figures;
    }
    const Neighbors around = neighborsInTravel(solver, travel);
    std::ranges::transform(lines, figures.begin(),
                           [&](const PartLine& line) { return figuresOf(parts, line, around); });
    return figures;
}

double pushOf(std::span<const LineFigures> lines) {
    double sum = 0;
    for (const LineFigures& line : lines) {
        sum += line.force * line.motionRatio;
    }
    return sum;
}

namespace {

double sumOfRates(std::span<const SuspensionPart> parts, std::span<const PartLine> lines,
                  const Neighbors& around) {
    double sum = 0;
    for (const PartLine& line : lines) {
        sum += rateOf(parts[static_cast<std::size_t>(line.part)], line, around);
    }
    return sum;
}

}  // namespace

SpringBalance springBalance(const Car& car, double carried) {
    SpringBalance balance{
        .carried = carried,
        .weighed = (car.cornerWeights.leftRear + car.cornerWeights.rightRear) * kStandardGravity};
    if (car.launch.unsprungMass) {
        balance.axle = *car.launch.unsprungMass * kStandardGravity;
    }
    return balance;
}

bool SpringBalance::hasWarning() const {
    const std::optional<double> over = excess();
    return carried > weighed || (over && std::abs(*over) > kWarningShare * (weighed - *axle));
}

std::optional<WheelRates> springRates(const Car& car, std::span<const SuspensionPart> parts, double travel) {
    const Linkage linkage = buildLinkage(car);
    std::vector<PartLine> lines;
    buildPartLines(parts, car.rearTireRadius, lines);
    AxleSolver solver(linkage, Drive::travel);
    if (!solver.assemble().usable() || !solver.moveTo(travel).usable()) {
        return std::nullopt;
    }
    WheelRates rates;
    rates.wheel = sumOfRates(parts, lines, neighborsInTravel(solver, travel)) / 2;
    if (!(rates.wheel > 0)) {
        return std::nullopt;
    }
    AxleSolver rolling(linkage, Drive::roll);
    if (rolling.assemble().usable() && rolling.moveTo(travel).usable()) {
        const double roll = sumOfRates(parts, lines, neighborsInRoll(rolling, travel));
        rates.roll = roll > 0 ? std::optional(roll) : std::nullopt;
    }
    return rates;
}

}  // namespace bolthole
