#include "widgets/papers/change_sheet_checks.h"

#include <algorithm>
#include <cmath>

#include "geometry/combinations/combination_figures.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

// From the pinion joint to the output joint at ride, m; the car must have a driveline.
double shaftAtRide(const Car& car, const Trace& trace) {
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    return (car.driveline->outputJoint - trace.ride.pose.carry(car.driveline->pinionJoint - center)).norm();
}

/// Least and most of a figure over the travel that can be reached.
struct Ends {
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();
};

Ends endsOf(const Trace& trace, Figure figure) {
    Ends ends;
    for (const Station& station : trace.stations) {
        if (station.usable && !std::isnan(station[figure])) {
            ends.least = std::min(ends.least, station[figure]);
            ends.most = std::max(ends.most, station[figure]);
        }
    }
    return ends;
}

class CheckWriter {
  public:
    CheckWriter(const Comparison& comparison, NumberStyle style)
        : comparison_(comparison),
          units_(style.units),
          known_(comparison.before.assembly.usable() && comparison.after.assembly.usable()) {}

    std::vector<SheetCheck> write() {
        if (comparison_.afterCar.driveline && comparison_.after.assembly.usable()) {
            addPinion();
            addDriveline();
            addSlipYoke();
        } else {
            add(tr("Pinion and driveshaft"),
                tr("Measure both angles at ride; clearance and slip yoke engagement through full travel."));
        }
        add(tr("Brake hoses, lines, cables"),
            tr("Slack at full droop, nothing pinched or chafing anywhere in the travel."));
        addShocks();
        addAlignment();
        addRods();
        add(tr("Every bolt"), tr("Torqued to the manufacturer's spec, with rubber bushings the car's weight "
                                 "on its wheels; marked, and "
                                 "checked again after the first drive."));
        return std::move(checks_);
    }

  private:
    void add(const QString& what, const QString& expected) { checks_.push_back({what, expected}); }

    [[nodiscard]] QString measure(double value, Quantity quantity) const {
        return fromView(withUnit(figureText(value, quantity, units_), quantity, units_));
    }

    // ", before 1.5°", where there is a before.
    [[nodiscard]] QString formerly(Figure figure) const {
        const double before = comparison_.before.ride[figure];
        return std::isnan(before) ? QString() : tr(" (before %1)").arg(measure(before, Quantity::angle));
    }

    void addPinion() {
        const Station& ride = comparison_.after.ride;
        add(tr("Pinion angle"),
            tr("At ride %1 to the ground%2, %3 to the driveshaft%4; nose up is +.")
                .arg(measure(ride[Figure::pinion], Quantity::angle), formerly(Figure::pinion),
                     measure(ride[Figure::pinionToDriveshaft], Quantity::angle),
                     formerly(Figure::pinionToDriveshaft)));
    }

    void addDriveline() {
        const auto& limit = comparison_.afterCar.driveline->jointLimit;
        const auto largest = [&](Figure joint) {
            return measure(endsOf(comparison_.after, joint).most, Quantity::angle);
        };
        const QString allowed =
            limit ? tr(", entered limit %1").arg(measure(*limit, Quantity::angle)) : QString();
        add(tr("Driveline clearance"),
            tr("Shaft and joints clear tunnel, floor and exhaust through full travel. Largest joint "
               "angles there: front %1, rear %2%3.")
                .arg(largest(Figure::frontJoint), largest(Figure::rearJoint), allowed));
    }

    void addSlipYoke() {
        QString moved;
        if (known_ && comparison_.beforeCar.driveline) {
            const double change = shaftAtRide(comparison_.afterCar, comparison_.after) -
                                  shaftAtRide(comparison_.beforeCar, comparison_.before);
            moved = tr("At ride it stands %1. ")
                        .arg(shifted(change, tr("farther out than before"), tr("farther in than before"),
                                     tr("where it was")));
        }
        const Ends plunge = endsOf(comparison_.after, Figure::plunge);
        add(tr("Slip yoke"),
            moved + tr("In travel from there %1 outward and %2 inward at most: check that it keeps the "
                       "engagement its manufacturer asks for and never bottoms.")
                        .arg(measure(std::max(0.0, plunge.most), Quantity::length),
                             measure(std::max(0.0, -plunge.least), Quantity::length)));
    }

    // "0.3 in farther out than before"
    [[nodiscard]] QString shifted(double by, const QString& plus, const QString& minus,
                                  const QString& none) const {
        const std::string number = figureText(std::abs(by), Quantity::length, units_);
        if (number == figureText(0, Quantity::length, units_)) {
            return none;
        }
        return fromView(withUnit(number, Quantity::length, units_)) + ' ' + (by > 0 ? plus : minus);
    }

    void addShocks() {
        const TravelRange& travel = comparison_.afterCar.travel;
        add(tr("Shocks, bump and droop stops"),
            tr("The stops end the travel at %1 bump and %2 droop: check that no shock bottoms, tops "
               "out or touches, and that springs stay seated.")
                .arg(measure(travel.bump, Quantity::length), measure(travel.droop, Quantity::length)));
    }

    void addAlignment() {
        QString moved;
        if (known_) {
            const Station& before = comparison_.before.ride;
            const Station& after = comparison_.after.ride;
            const double along = after[Figure::axleX] - before[Figure::axleX];
            const double across = after.pose.y - before.pose.y;
            QStringList ways{shifted(along, tr("forward"), tr("back"), {}),
                             shifted(across, tr("left"), tr("right"), {})};
            ways.removeAll(QString());
            moved = ways.isEmpty() ? tr(" Expected: axle where it was.")
                                   : tr(" Expected: axle %1 of where it was.").arg(ways.join(tr(" and ")));
        }
        add(tr("Wheel alignment"),
            tr("Axle square to the car: from both its ends to like points of the chassis, left "
               "and right the same. Tires clear body and frame.") +
                moved);
    }

    void addRods() {
        QStringList held;
        for (const LengthMove& move : comparison_.lengths) {
            const Link& rod = comparison_.afterCar.links[static_cast<std::size_t>(move.link.after)];
            const std::optional<double> thread = rod.adjuster ? engagementAt(rod, move.after) : std::nullopt;
            if (thread) {
                const auto& least = rod.adjuster->leastEngagement;
                held << QStringLiteral("%1 %2").arg(linkName(comparison_.afterCar, move.link.after),
                                                    measure(*thread, Quantity::length)) +
                            (least ? tr(" (least %1)").arg(measure(*least, Quantity::length)) : QString());
            }
        }
        const QString thread =
            held.isEmpty() ? QString()
                           : tr(" Thread engagement in each end: ") + held.join(QStringLiteral(", ")) + '.';
        add(tr("Links and rod ends"),
            tr("Jam nuts locked, rod ends centered, nothing binds or touches through full travel.") + thread);
    }

    const Comparison& comparison_;
    Units units_;
    bool known_;
    std::vector<SheetCheck> checks_;
};

void addAssembly(const QString& which, const MoveReport& report, const Car& car, Units units,
                 QStringList& problems) {
    if (!report.usable()) {
        problems << tr("The car %1 can't be assembled at ride: %2")
                        .arg(which, fromView(describe(report, car, units)));
    }
}

}  // namespace

std::vector<SheetCheck> checksOf(const Comparison& comparison, NumberStyle style) {
    return CheckWriter(comparison, style).write();
}

QStringList problemsOf(const Comparison& comparison, Units units) {
    QStringList problems;
    addAssembly(tr("before"), comparison.before.assembly, comparison.beforeCar, units, problems);
    addAssembly(tr("after"), comparison.after.assembly, comparison.afterCar, units, problems);
    if (comparison.after.assembly.usable()) {
        CombinationSolver solver(comparison.afterCar, LengthTreatment::keep);
        HoleCombination combination;
        solver.solve(holesInUse(comparison.afterCar), combination);
        if (combination.problems != 0) {
            problems << fromView(describeProblems(combination, comparison.afterCar, units));
        }
    }
    return problems;
}

}  // namespace bolthole
