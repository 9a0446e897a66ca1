#include "geometry/weights/weight_warnings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kCoverage = 2;  // standard uncertainties that two numbers may lie apart

// What cars have; outside, a slip of the pen or of the unit is likely. Common practice, no source.
constexpr double kLeastCorner = 0.10;  // of the total
constexpr double kMostCorner = 0.40;
constexpr double kLeastHalf = 45;  // percent, left side and diagonal
constexpr double kMostHalf = 55;
constexpr double kSeatedCg = 0.15;      // m; a seated body's CG is not taped closer
constexpr double kBodyLength = 1.0;     // wheelbases ahead of the front and behind the rear axle
constexpr double kBodyHalfWidth = 1.1;  // m
constexpr double kLeastDensity = 500;   // kg/m^3; liquids that cars carry
constexpr double kMostDensity = 1500;
constexpr double kLevelPads = 0.0015;  // m of warp that passes for level; a sixteenth of an inch

struct Corner {
    WeightPart part;
    std::string_view words;
    double CornerWeights::*member;
};
constexpr std::array<Corner, 4> kCorners{{
    {WeightPart::leftFront, "left front", &CornerWeights::leftFront},
    {WeightPart::rightFront, "right front", &CornerWeights::rightFront},
    {WeightPart::leftRear, "left rear", &CornerWeights::leftRear},
    {WeightPart::rightRear, "right rear", &CornerWeights::rightRear},
}};

class WeightWarningFinder {
  public:
    WeightWarningFinder(const Weighing& weighing, double cgHeight, const Stance& stance, Units units)
        : weighing_(weighing), cgHeight_(cgHeight), stance_(stance), units_(units) {}

    std::vector<WeightWarning> find();

  private:
    void add(WeightPart part, Severity severity, std::string cause, std::string follows,
             bool withDriver = true, int load = -1) {
        warnings_.push_back({part, withDriver, load, {severity, std::move(cause), std::move(follows)}});
    }
    void checkReading(const CornerWeights& corners, bool withDriver);
    void checkHalf(double percent, std::string_view words, bool withDriver);
    void checkDriver(const DriverFigures& driver);
    void checkDriverMass(const DriverFigures& driver);
    [[nodiscard]] const Corner* culprit(const DriverFigures& driver, double error) const;
    void checkDriverPlace(const DriverFigures& driver);
    void checkTicket(const AxleTicket& ticket);
    void checkTicketPart(const std::optional<double>& read, double corners, int pads, std::string_view words);
    void checkPads(const CornerWeights& read);
    void checkLoad(int index);

    [[nodiscard]] std::string mass(double value) const { return text(value, Quantity::mass); }
    [[nodiscard]] std::string length(double value) const { return text(value, Quantity::length); }
    [[nodiscard]] std::string text(double value, Quantity quantity) const {
        return withUnit(fineFigureText(value, quantity, units_), quantity, units_);
    }
    // "13.5 in left of the middle"
    [[nodiscard]] std::string sideways(double left) const {
        return length(std::abs(left)) + (left < 0 ? " right" : " left") + " of the middle";
    }
    // How far a sum of `pads` readings and one other number may lie apart, kg.
    [[nodiscard]] double allowed(int pads, double other) const {
        return kCoverage * std::hypot(std::sqrt(pads) * weighing_.scaleUncertainty, other);
    }

    const Weighing& weighing_;
    double cgHeight_;
    const Stance& stance_;
    Units units_;
    std::vector<WeightWarning> warnings_;
};

// One wrong corner throws every share: the one farthest off is named, and nothing that follows from it.
void WeightWarningFinder::checkReading(const CornerWeights& corners, bool withDriver) {
    const WeightFigures figures = weightFigures(corners, stance_);
    const Corner* farthest = nullptr;
    double off = 1;  // times the bound
    for (const Corner& corner : kCorners) {
        const double share = corners.*corner.member / figures.total;
        const double times = std::max(share / kMostCorner, kLeastCorner / share);
        if (times > off) {
            farthest = &corner;
            off = times;
        }
    }
    if (farthest != nullptr) {
        add(farthest->part, Severity::wrong,
            std::string(farthest->words) + " carries " +
                text(100 * corners.*farthest->member / figures.total, Quantity::percent) +
                " of the car, outside what cars have",
            "check the reading and its unit", withDriver);
        return;
    }
    checkHalf(figures.leftPercent, "left side", withDriver);
    checkHalf(figures.diagonalPercent, "cross weight (right front and left rear)", withDriver);
}

void WeightWarningFinder::checkHalf(double percent, std::string_view words, bool withDriver) {
    if (percent < kLeastHalf || percent > kMostHalf) {
        add(WeightPart::corners, Severity::wrong,
            "the " + std::string(words) + " carries " + text(percent, Quantity::percent) +
                ", outside what cars have",
            "check which corner is which", withDriver);
    }
}

// The one corner whose reading being wrong by `error` (kg) would explain why the driver's mass and place, as
// entered, disagree with both readings. Null where none would, or places and tracks are not known.
const Corner* WeightWarningFinder::culprit(const DriverFigures& driver, double error) const {
    if (!weighing_.driverAt || !driver.left) {
        return nullptr;
    }
    const double entered = driver.mass - error;
    const double track = (*stance_.frontTrack + *stance_.rearTrack) / 2;
    // What the front axle and the left side gained beyond what the driver puts there: all of the error or
    // none.
    const double front = driver.corners.front() - entered * weighing_.driverAt->x() / stance_.wheelbase;
    const double left = error / 2 + (driver.mass * *driver.left - entered * weighing_.driverAt->y()) / track;
    const auto fits = [&](double found, double wanted, double lever) {
        return std::abs(found - wanted) < allowed(4, 0.0) + entered * kSeatedCg / lever;
    };
    const Corner* found = nullptr;
    for (const Corner& corner : kCorners) {
        const bool isFront = corner.part == WeightPart::leftFront || corner.part == WeightPart::rightFront;
        const bool isLeft = corner.part == WeightPart::leftFront || corner.part == WeightPart::leftRear;
        if (fits(front, isFront ? error : 0, stance_.wheelbase) && fits(left, isLeft ? error : 0, track)) {
            if (found) {
                return nullptr;  // an error too small to tell
            }
            found = &corner;
        }
    }
    return found;
}

void WeightWarningFinder::checkDriverMass(const DriverFigures& driver) {
    if (!weighing_.driverMass) {
        return;
    }
    const double error = driver.mass - *weighing_.driverMass;
    if (std::abs(error) <= allowed(8, weighing_.scaleUncertainty)) {
        return;
    }
    const Corner* corner = culprit(driver, error);
    add(corner ? corner->part : WeightPart::driver, Severity::wrong,
        "the car gets " + mass(driver.mass) + " heavier with the driver, who weighs " +
            mass(*weighing_.driverMass) + " as entered",
        corner ? "the " + std::string(corner->words) + " alone would explain it; weigh that again"
               : std::string("weigh again"));
}

void WeightWarningFinder::checkDriver(const DriverFigures& driver) {
    checkDriverMass(driver);
    for (const Corner& corner : kCorners) {
        const double gain = driver.corners.*corner.member;
        if (gain < -allowed(2, 0.0)) {
            add(corner.part, Severity::wrong,
                std::string(corner.words) + " gets " + mass(-gain) + " lighter with the driver in",
                "a tire binds on its pad or readings are swapped; roll the car and weigh again");
        }
    }
    checkDriverPlace(driver);
}

// Only a driver weighed well enough shows where the seat is.
void WeightWarningFinder::checkDriverPlace(const DriverFigures& driver) {
    if (!weighing_.driverAt || driver.mass < allowed(8, 0.0)) {
        return;
    }
    // The place's error by the scales: an axle's four readings, times the wheelbase over the driver's mass.
    const double byScales = allowed(4, 0.0) * stance_.wheelbase / driver.mass;
    const double ahead = driver.ahead - weighing_.driverAt->x();
    if (std::abs(ahead) > byScales + kSeatedCg) {
        add(WeightPart::driver, Severity::wrong,
            "by the scales the driver sits " + length(driver.ahead) + " ahead of the rear axle, as entered " +
                length(weighing_.driverAt->x()),
            "a reading or the place is wrong");
    }
    const double left = driver.left.value_or(weighing_.driverAt->y()) - weighing_.driverAt->y();
    if (std::abs(left) > byScales + kSeatedCg) {
        add(WeightPart::driver, Severity::wrong,
            "by the scales the driver sits " + sideways(*driver.left) + ", as entered " +
                sideways(weighing_.driverAt->y()),
            "left and right of a reading or of the place are swapped, or one is wrong");
    }
}

void WeightWarningFinder::checkTicketPart(const std::optional<double>& read, double corners, int pads,
                                          std::string_view words) {
    if (read && std::abs(*read - corners) > allowed(pads, weighing_.ticket->uncertainty)) {
        add(WeightPart::ticket, Severity::wrong,
            std::string(words) + " weighed " + mass(*read) + " by itself, but its corners " + mass(corners),
            "weigh again");
    }
}

void WeightWarningFinder::checkTicket(const AxleTicket& ticket) {
    if (ticket.front && ticket.rear && ticket.total) {
        const double sum = *ticket.front + *ticket.rear;
        if (std::abs(sum - *ticket.total) > kCoverage * std::sqrt(3.0) * ticket.uncertainty) {
            add(WeightPart::ticket, Severity::wrong,
                "the axles weigh " + mass(sum) + " together, the whole car " + mass(*ticket.total),
                "one of the three is wrong");
        }
    }
    const std::optional<CornerWeights>& read = ticket.driver ? weighing_.withDriver : weighing_.withoutDriver;
    if (read) {
        checkTicketPart(ticket.front, read->front(), 2, "the front axle");
        checkTicketPart(ticket.rear, read->total() - read->front(), 2, "the rear axle");
        checkTicketPart(ticket.total, read->total(), 4, "the whole car");
    }
}

void WeightWarningFinder::checkPads(const CornerWeights& read) {
    const PadFigures figures = padFigures(*weighing_.pads, read, cgHeight_, stance_);
    const std::optional<double> worst = figures.worst();
    const std::string stand = "the left front pad stands " + length(std::abs(figures.warp)) +
                              (figures.warp < 0 ? " below" : " above") + " the plane of the other three";
    if (worst && *worst > kCoverage * weighing_.scaleUncertainty) {
        add(WeightPart::pads, Severity::wrong, stand + ", which changes a corner reading by " + mass(*worst),
            "level the pads; the total is right all the same");
    } else if (!worst && std::abs(figures.warp) > kLevelPads) {
        add(WeightPart::pads, Severity::check, stand,
            "without tracks and wheel rates it is not known how far that changes the corners; level the pads "
            "or enter both");
    }
}

void WeightWarningFinder::checkLoad(int index) {
    const Ballast& load = weighing_.ballast[static_cast<std::size_t>(index)];
    const std::string name =
        load.name.empty() ? "load " + std::to_string(index + 1) : "load '" + load.name + "'";
    const double over = kBodyLength * stance_.wheelbase;
    const double x = load.at.x();
    if (x < -over || x > stance_.wheelbase + over || std::abs(load.at.y()) > kBodyHalfWidth ||
        load.at.z() < 0) {
        add(WeightPart::load, Severity::wrong, name + " stands outside the car", "check its place", true,
            index);
    }
    if (load.fill && (load.fill->density < kLeastDensity || load.fill->density > kMostDensity)) {
        add(WeightPart::load, Severity::wrong, name + " has a density no liquid a car carries has",
            "check it and its unit", true, index);
    }
}

std::vector<WeightWarning> WeightWarningFinder::find() {
    if (weighing_.withDriver) {
        checkReading(*weighing_.withDriver, true);
    }
    if (weighing_.withoutDriver) {
        checkReading(*weighing_.withoutDriver, false);
    }
    if (const std::optional<DriverFigures> driver = driverFigures(weighing_, stance_)) {
        checkDriver(*driver);
    }
    if (weighing_.ticket) {
        checkTicket(*weighing_.ticket);
    }
    if (weighing_.pads && (weighing_.withDriver || weighing_.withoutDriver)) {
        checkPads(weighing_.withDriver ? *weighing_.withDriver : *weighing_.withoutDriver);
    }
    for (std::size_t index = 0; index < weighing_.ballast.size(); ++index) {
        checkLoad(static_cast<int>(index));
    }
    return std::move(warnings_);
}

}  // namespace

std::optional<DriverFigures> driverFigures(const Weighing& weighing, const Stance& stance) {
    if (!weighing.withDriver || !weighing.withoutDriver) {
        return std::nullopt;
    }
    const CornerWeights& with = *weighing.withDriver;
    const CornerWeights& without = *weighing.withoutDriver;
    DriverFigures driver;
    for (const Corner& corner : kCorners) {
        driver.corners.*corner.member = with.*corner.member - without.*corner.member;
    }
    if (!(driver.corners.total() > 0)) {
        return std::nullopt;
    }
    const WeightFigures figures = weightFigures(driver.corners, stance);
    driver.mass = figures.total;
    driver.ahead = figures.cgAhead;
    driver.left = figures.cgLeft;
    return driver;
}

std::vector<WeightWarning> findWeightWarnings(const Weighing& weighing, double cgHeight, const Stance& stance,
                                              Units units) {
    return WeightWarningFinder(weighing, cgHeight, stance, units).find();
}

}  // namespace bolthole
