// findDrivelineWarnings() of geometry/statics/driveline_figures.h.
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "geometry/statics/driveline_figures.h"
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

    [[nodiscard]] std::string_view jointWords(std::size_t joint) const {
        return joint == 0 ? "front joint" : joint + 1 == ride_.joints ? "rear joint" : "middle joint";
    }
    [[nodiscard]] std::string text(double value, Quantity quantity) const {
        return withUnit(fineFigureText(value, quantity, units_), quantity, units_);
    }
    [[nodiscard]] std::string angle(double value) const { return text(value, Quantity::angle); }
    [[nodiscard]] std::string atTravel(double travel) const {
        return " at " + text(std::abs(travel), Quantity::length) + (travel < 0 ? " of droop" : " of bump");
    }

    const Driveline& driveline_;
    const ShaftSetup& setup_;
    const DrivelineFigures& ride_;
    const DrivelineSweep& sweep_;
    Units units_;
    std::vector<DrivelineWarning> warnings_;
};

void DrivelineWarningFinder::checkEquivalent() {
    double largest = 0;
    for (std::size_t joint = 0; joint < ride_.joints; ++joint) {
        largest = std::max(largest, ride_.angle[joint]);
    }
    if (ride_.equivalent <= kMostEquivalent) {
        return;
    }
    if (ride_.equivalent > largest) {
        add(DrivelinePart::yokeOffset, Severity::wrong, "the joints add instead of canceling",
            "together they swing as one at " + angle(ride_.equivalent) +
                ", more than any of them alone; check whether the driveshaft's yokes are in phase");
        return;
    }
    std::string angles;
    for (std::size_t joint = 0; joint < ride_.joints; ++joint) {
        angles += (joint == 0                  ? " "
                   : joint + 1 == ride_.joints ? " and "
                                               : ", ") +
                  angle(ride_.angle[joint]) + " at the " + std::string(jointWords(joint));
    }
    add(DrivelinePart::pinionAngle, Severity::wrong, "at ride" + angles + " do not cancel",
        "the shaft turns as unevenly as with one joint at " + angle(ride_.equivalent) + "; " +
            angle(kMostEquivalent) + " is the usual most");
}

void DrivelineWarningFinder::checkEnds() {
    const double difference = std::abs(ride_.angle[0] - ride_.angle[1]);
    const bool isSaid = ride_.equivalent > kMostEquivalent;
    if (ride_.joints == 2 && difference > kEqualEnds && !isSaid) {
        add(DrivelinePart::pinionAngle, Severity::check,
            "front joint " + angle(ride_.angle[0]) + " and rear joint " + angle(ride_.angle[1]) + " at ride",
            "they cancel within " + angle(kEqualEnds) + " of each other");
    }
}

void DrivelineWarningFinder::checkStraight(std::size_t joint) {
    if (ride_.angle[joint] < kLeastJointAngle) {
        add(DrivelinePart::pinionAngle, Severity::check,
            std::string(jointWords(joint)) + " " + angle(ride_.angle[joint]) + " at ride",
            "its needles need " + angle(kLeastJointAngle) + " to roll, or they wear into the cross");
    }
}

void DrivelineWarningFinder::checkLimit(std::size_t joint) {
    const AtTravel& worst = sweep_.largest[joint];
    if (driveline_.jointLimit && worst.value > *driveline_.jointLimit) {
        add(DrivelinePart::jointLimit, Severity::danger,
            std::string(jointWords(joint)) + " bends to " + angle(worst.value) + atTravel(worst.travel) +
                ", past the " + angle(*driveline_.jointLimit) + " entered as the most",
            "the joint can bind and break");
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
            std::string(jointWords(joint)) + " " + angle(ride_.angle[joint]) + " at ride",
            "at " + plainDecimal(std::round(*speed / kRpm)) + " rpm of the shaft " +
                (limit.pastTable ? "less than " : "") + angle(limit.angle) + " is the usual most");
    }
}

void DrivelineWarningFinder::checkSlip() {
    if (!setup_.slip) {
        return;
    }
    const SlipRoom room = slipRoom(*setup_.slip, sweep_.leastPlunge.value, sweep_.mostPlunge.value);
    if (room.out < 0) {
        add(DrivelinePart::slip, Severity::danger,
            "the slip yoke holds " + text(-room.out, Quantity::length) + " less spline than it must" +
                atTravel(sweep_.mostPlunge.travel),
            "it can come out");
    }
    if (room.in < 0) {
        add(DrivelinePart::slip, Severity::danger,
            "the slip yoke bottoms " + text(-room.in, Quantity::length) + " too soon" +
                atTravel(sweep_.leastPlunge.travel),
            "the shaft jams");
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
