#include "geometry/weights/weight_warnings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "geometry/units/say.h"
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
    {WeightPart::leftFront, phrase("left front"), &CornerWeights::leftFront},
    {WeightPart::rightFront, phrase("right front"), &CornerWeights::rightFront},
    {WeightPart::leftRear, phrase("left rear"), &CornerWeights::leftRear},
    {WeightPart::rightRear, phrase("right rear"), &CornerWeights::rightRear},
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
    void checkHalf(double percent, std::string_view cause, bool withDriver);
    void checkDriver(const DriverFigures& driver);
    void checkDriverMass(const DriverFigures& driver);
    [[nodiscard]] const Corner* culprit(const DriverFigures& driver, double error) const;
    void checkDriverPlace(const DriverFigures& driver);
    void checkTicket(const AxleTicket& ticket);
    void checkTicketPart(const std::optional<double>& read, double corners, int pads, std::string_view cause);
    void checkPads(const CornerWeights& read);
    void checkLoad(int index);

    [[nodiscard]] std::string mass(double value) const { return text(value, Quantity::mass); }
    [[nodiscard]] std::string length(double value) const { return text(value, Quantity::length); }
    [[nodiscard]] std::string text(double value, Quantity quantity) const {
        return withUnit(fineFigureText(value, quantity, units_), quantity, units_);
    }
    // "13.5 in left of the middle"
    [[nodiscard]] std::string sideways(double left) const {
        const std::string far = length(std::abs(left));
        return left < 0 ? say("%1 right of the middle", far) : say("%1 left of the middle", far);
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
            say("%1 carries %2 of the car, outside what cars have", say(farthest->words),
                text(100 * corners.*farthest->member / figures.total, Quantity::percent)),
            say("check the reading and its unit"), withDriver);
        return;
    }
    checkHalf(figures.leftPercent, phrase("the left side carries %1, outside what cars have"), withDriver);
    checkHalf(figures.diagonalPercent,
              phrase("the cross weight (right front and left rear) carries %1, outside what cars have"),
              withDriver);
}

void WeightWarningFinder::checkHalf(double percent, std::string_view cause, bool withDriver) {
    if (percent < kLeastHalf || percent > kMostHalf) {
        add(WeightPart::corners, Severity::wrong, say(cause, text(percent, Quantity::percent)),
            say("check which corner is which"), withDriver);
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
        say("the car gets %1 heavier with the driver, who weighs %2 as entered", mass(driver.mass),
            mass(*weighing_.driverMass)),
        corner ? say("the %1 alone would explain it; weigh that again", say(corner->words))
               : say("weigh again"));
}

void WeightWarningFinder::checkDriver(const DriverFigures& driver) {
    checkDriverMass(driver);
    for (const Corner& corner : kCorners) {
        const double gain = driver.corners.*corner.member;
        if (gain < -allowed(2, 0.0)) {
            add(corner.part, Severity::wrong,
                say("%1 gets %2 lighter with the driver in", say(corner.words), mass(-gain)),
                say("a tire binds on its pad or readings are swapped; roll the car and weigh again"));
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
            say("by the scales the driver sits %1 ahead of the rear axle, as entered %2",
                length(driver.ahead), length(weighing_.driverAt->x())),
            say("a reading or the place is wrong"));
    }
    const double left = driver.left.value_or(weighing_.driverAt->y()) - weighing_.driverAt->y();
    if (std::abs(left) > byScales + kSeatedCg) {
        add(WeightPart::driver, Severity::wrong,
            say("by the scales the driver sits %1, as entered %2", sideways(*driver.left),
                sideways(weighing_.driverAt->y())),
            say("left and right of a reading or of the place are swapped, or one is wrong"));
    }
}

void WeightWarningFinder::checkTicketPart(const std::optional<double>& read, double corners, int pads,
                                          std::string_view cause) {
    if (read && std::abs(*read - corners) > allowed(pads, weighing_.ticket->uncertainty)) {
        add(WeightPart::ticket, Severity::wrong, say(cause, mass(*read), mass(corners)), say("weigh again"));
    }
}

void WeightWarningFinder::checkTicket(const AxleTicket& ticket) {
    if (ticket.front && ticket.rear && ticket.total) {
        const double sum = *ticket.front + *ticket.rear;
        if (std::abs(sum - *ticket.total) > kCoverage * std::sqrt(3.0) * ticket.uncertainty) {
            add(WeightPart::ticket, Severity::wrong,
                say("the axles weigh %1 together, the whole car %2", mass(sum), mass(*ticket.total)),
                say("one of the three is wrong"));
        }
    }
    const std::optional<CornerWeights>& read = ticket.driver ? weighing_.withDriver : weighing_.withoutDriver;
    if (read) {
        checkTicketPart(ticket.front, read->front(), 2,
                        phrase("the front axle weighed %1 by itself, but its corners %2"));
        checkTicketPart(ticket.rear, read->total() - read->front(), 2,
                        phrase("the rear axle weighed %1 by itself, but its corners %2"));
        checkTicketPart(ticket.total, read->total(), 4,
                        phrase("the whole car weighed %1 by itself, but its corners %2"));
    }
}

void WeightWarningFinder::checkPads(const CornerWeights& read) {
    const PadFigures figures = padFigures(*weighing_.pads, read, cgHeight_, stance_);
    const std::optional<double> worst = figures.worst();
    const bool isBelow = figures.warp < 0;
    const std::string by = length(std::abs(figures.warp));
    if (worst && *worst > kCoverage * weighing_.scaleUncertainty) {
        add(WeightPart::pads, Severity::wrong,
            say(isBelow
                    ? phrase(
                          "the left front pad stands %1 below the plane of the other three, which changes a "
                          "corner reading by %2")
                    : phrase(
                          "the left front pad stands %1 above the plane of the other three, which changes a "
                          "corner reading by %2"),
                by, mass(*worst)),
            say("level the pads; the total is right all the same"));
    } else if (!worst && std::abs(figures.warp) > kLevelPads) {
        add(WeightPart::pads, Severity::check,
            isBelow ? say("the left front pad stands %1 below the plane of the other three", by)
                    : say("the left front pad stands %1 above the plane of the other three", by),
            say("without tracks and wheel rates it is not known how far that changes the corners; level the "
                "pads or enter both"));
    }
}

void WeightWarningFinder::checkLoad(int index) {
    const Ballast& load = weighing_.ballast[static_cast<std::size_t>(index)];
    const std::string name = load.name.empty() ? say("load %1", index + 1) : say("load '%1'", load.name);
    const double over = kBodyLength * stance_.wheelbase;
    const double x = load.at.x();
    if (x < -over || x > stance_.wheelbase + over || std::abs(load.at.y()) > kBodyHalfWidth ||
        load.at.z() < 0) {
        add(WeightPart::load, Severity::wrong, say("%1 stands outside the car", name), say("check its place"),
            true, index);
    }
    if (load.fill && (load.fill->density < kLeastDensity || load.fill->density > kMostDensity)) {
        add(WeightPart::load, Severity::wrong, say("%1 has a density no liquid a car carries has", name),
            say("check it and its unit"), true, index);
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
