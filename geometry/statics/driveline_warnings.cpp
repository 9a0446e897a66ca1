// findDrivelineWarnings() of geometry/statics/driveline_figures.h.
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "geometry/statics/driveline_figures.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

class DrivelineWarningFinder {
  public:
    DrivelineWarningFinder(const Driveline& driveline, const ShaftSetup& setup, const DrivelineFigures& ride,
                           const DrivelineSweep& sweep, Units units)
        : driveline_(driveline), setup_(setup), ride_(ride), sweep_(sweep), units_(units) {}

    std::vector<DrivelineWarning> find();

  private:
    void add(DrivelinePart part, Severity severity, std::string cause, std::string follows) {
        warnings_.push_back({part, {severity, std::move(cause), std::move(follows)}});
    }
    void checkEquivalent();
    void checkEnds();
    void checkStraight(std::size_t joint);
    void checkLimit(std::size_t joint);
    void checkSpeed(std::size_t joint);
    void checkSlip();

    [[nodiscard]] std::string jointName(std::size_t joint) const {
        return joint == 0                  ? say("front joint")
               : joint + 1 == ride_.joints ? say("rear joint")
                                           : say("carrier joint");
    }
    [[nodiscard]] std::string text(double value, Quantity quantity) const {
        return withUnit(fineFigureText(value, quantity, units_), quantity, units_);
    }
    [[nodiscard]] std::string angle(double value) const { return text(value, Quantity::angle); }
    [[nodiscard]] std::string travelWords(double travel) const {
        const std::string size = text(std::abs(travel), Quantity::length);
        return travel < 0 ? say("%1 of droop", size) : say("%1 of bump", size);
    }
    [[nodiscard]] std::string anglesAtRide() const;

    const Driveline& driveline_;
    const ShaftSetup& setup_;
    const DrivelineFigures& ride_;
    const DrivelineSweep& sweep_;
    Units units_;
    std::vector<DrivelineWarning> warnings_;
};

/// "2.0° at the front joint and 3.5° at the rear joint".
std::string DrivelineWarningFinder::anglesAtRide() const {
    std::string angles;
    for (std::size_t joint = 0; joint < ride_.joints; ++joint) {
        const std::string one = say("%1 at the %2", angle(ride_.angle[joint]), jointName(joint));
        angles = joint == 0                  ? one
                 : joint + 1 == ride_.joints ? say("%1 and %2", angles, one)
                                             : say("%1, %2", angles, one);
    }
    return angles;
}

void DrivelineWarningFinder::checkEquivalent() {
    double largest = 0;
    for (std::size_t joint = 0; joint < ride_.joints; ++joint) {
        largest = std::max(largest, ride_.angle[joint]);
    }
    if (ride_.equivalent <= kMostEquivalent) {
        return;
    }
    if (ride_.equivalent > largest) {
        add(DrivelinePart::yokeOffset, Severity::wrong, say("the joints add instead of canceling"),
            say("together they swing as one at %1, more than any of them alone; check whether the "
                "driveshaft's "
                "yokes are in phase",
                angle(ride_.equivalent)));
        return;
    }
    add(DrivelinePart::pinionAngle, Severity::wrong, say("at ride %1 do not cancel", anglesAtRide()),
        say("the shaft turns as unevenly as with one joint at %1; %2 is the usual most",
            angle(ride_.equivalent), angle(kMostEquivalent)));
}

void DrivelineWarningFinder::checkEnds() {
    const double difference = std::abs(ride_.angle[0] - ride_.angle[1]);
    const bool isSaid = ride_.equivalent > kMostEquivalent;
    if (ride_.joints == 2 && difference > kEqualEnds && !isSaid) {
        add(DrivelinePart::pinionAngle, Severity::check,
            say("front joint %1 and rear joint %2 at ride", angle(ride_.angle[0]), angle(ride_.angle[1])),
            say("to cancel they should be within %1 of each other", angle(kEqualEnds)));
    }
}

void DrivelineWarningFinder::checkStraight(std::size_t joint) {
    if (ride_.angle[joint] < kLeastJointAngle) {
        add(DrivelinePart::pinionAngle, Severity::check,
            say("%1 %2 at ride", jointName(joint), angle(ride_.angle[joint])),
            say("its needles need %1 to roll, or they wear into the cross", angle(kLeastJointAngle)));
    }
}

void DrivelineWarningFinder::checkLimit(std::size_t joint) {
    const AtTravel& worst = sweep_.largest[joint];
    if (driveline_.jointLimit && worst.value > *driveline_.jointLimit) {
        add(DrivelinePart::jointLimit, Severity::danger,
            say("%1 bends to %2 at %3, past the %4 entered as the most", jointName(joint), angle(worst.value),
                travelWords(worst.travel), angle(*driveline_.jointLimit)),
            say("the joint can bind and break"));
    }
}

void DrivelineWarningFinder::checkSpeed(std::size_t joint) {
    const std::optional<double> speed = setup_.speed();
    if (!speed) {
        return;
    }
    const AngleLimit limit = jointAngleLimit(*speed);
    if (ride_.angle[joint] > limit.angle) {
        add(DrivelinePart::speed, Severity::danger,
            say("%1 %2 at ride", jointName(joint), angle(ride_.angle[joint])),
            say(limit.pastTable ? phrase("at %1 rpm of the shaft less than %2 is the usual most")
                                : phrase("at %1 rpm of the shaft %2 is the usual most"),
                plainDecimal(std::round(*speed / kRpm)), angle(limit.angle)));
    }
}

void DrivelineWarningFinder::checkSlip() {
    if (!setup_.slip) {
        return;
    }
    const SlipRoom room = slipRoom(*setup_.slip, sweep_.leastPlunge.value, sweep_.mostPlunge.value);
    if (room.out < 0) {
        add(DrivelinePart::slip, Severity::danger,
            say("the slip yoke holds %1 less spline than it must at %2", text(-room.out, Quantity::length),
                travelWords(sweep_.mostPlunge.travel)),
            say("it can come out"));
    }
    if (room.in < 0) {
        add(DrivelinePart::slip, Severity::danger,
            say("the slip yoke bottoms %1 too soon at %2", text(-room.in, Quantity::length),
                travelWords(sweep_.leastPlunge.travel)),
            say("the shaft jams"));
    }
}

std::vector<DrivelineWarning> DrivelineWarningFinder::find() {
    checkEquivalent();
    checkEnds();
    for (std::size_t joint = 0; joint < ride_.joints; ++joint) {
        checkStraight(joint);
        checkLimit(joint);
        checkSpeed(joint);
    }
    checkSlip();
    return std::move(warnings_);
}

}  // namespace

std::vector<DrivelineWarning> findDrivelineWarnings(const Driveline& driveline, const ShaftSetup& setup,
                                                    const DrivelineFigures& ride, const DrivelineSweep& sweep,
                                                    Units units) {
    return DrivelineWarningFinder(driveline, setup, ride, sweep, units).find();
}

}  // namespace bolthole
