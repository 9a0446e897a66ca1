#include "app/commands/compare_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

// A field after RFC 4180: in quotes where it could be misread.
std::string quoted(std::string_view text) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string field = "\"";
    for (const char c : text) {
        field += c == '"' ? "\"\"" : std::string(1, c);
    }
    return field + '"';
}

std::string_view unitSuffix(Quantity quantity, Units units) {
    switch (quantity) {
        case Quantity::length:
            return units == Units::inch ? "_in" : "_mm";
        case Quantity::mass:
            return units == Units::inch ? "_lb" : "_kg";
        case Quantity::angle:
            return "_deg";
        case Quantity::force:
            return units == Units::inch ? "_lbf" : "_n";
        case Quantity::torque:
            return units == Units::inch ? "_lbf_ft" : "_nm";
        case Quantity::rate:
            return units == Units::inch ? "_lbf_per_in" : "_n_per_mm";
        case Quantity::rollRate:
            return units == Units::inch ? "_lbf_ft_per_deg" : "_nm_per_deg";
        case Quantity::speed:
            return "_rpm";
        case Quantity::inertia:
            return units == Units::inch ? "_lb_ft2" : "_kg_m2";
        case Quantity::damping:
            return units == Units::inch ? "_lbf_s_per_in" : "_n_s_per_mm";
        case Quantity::pressure:
            return units == Units::inch ? "_psi" : "_kpa";
        case Quantity::time:
            return "_s";
        default:
            return "";
    }
}

struct NumberName {
    Field field;
    std::string_view name;
};
constexpr std::array kNumberNames{
    NumberName{Field::wheelbase, "wheelbase"},
    NumberName{Field::rearTireRadius, "rear_tire_radius"},
    NumberName{Field::frontTireRadius, "front_tire_radius"},
    NumberName{Field::rearTrack, "rear_track"},
    NumberName{Field::leftFrontWeight, "left_front_weight"},
    NumberName{Field::rightFrontWeight, "right_front_weight"},
    NumberName{Field::leftRearWeight, "left_rear_weight"},
    NumberName{Field::rightRearWeight, "right_rear_weight"},
    NumberName{Field::cgHeight, "cg_height"},
    NumberName{Field::bump, "bump"},
    NumberName{Field::droop, "droop"},
    NumberName{Field::frontRatio, "front_ratio"},
    NumberName{Field::pinionAngle, "pinion_angle"},
    NumberName{Field::pinionJoint, "pinion_joint"},
    NumberName{Field::outputAngle, "output_angle"},
    NumberName{Field::outputJoint, "output_joint"},
};

/// Name of a number of the car, without its unit.
std::string nameOf(const FieldId& id) {
    const auto* known = std::ranges::find(kNumberNames, id.field, &NumberName::field);
    // The path in the car file says which engine_speed it is: driveline_engine_speed.
    std::string name = known != kNumberNames.end() ? std::string(known->name) : jsonPath({.field = id.field});
    std::ranges::replace(name, '.', '_');
    if (id.axis >= 0) {
        name += std::string("_") + "xyz"[id.axis];
    }
    return name;
}

class CompareTable {
  public:
    CompareTable(const Comparison& comparison, Units units, const ComparedUncertainties* uncertainties)
        : comparison_(comparison), units_(units), uncertainties_(uncertainties) {}

    std::string write() {
        table_ = "figure,at,before,after,change";
        table_ += uncertainties_ == nullptr ? "\r\n" : ",change_u,apart\r\n";
        for (const FigureInfo& info : figureTable()) {
            addFigure(info);
        }
        for (const SharedLink& pair : comparison_.shared) {
            addLink(pair);
        }
        for (const FieldId& id : comparedNumbers()) {
            if (ruleOf(id.field).compared == Compared::ifEntered && !numberAt(comparison_.beforeCar, id) &&
                !numberAt(comparison_.afterCar, id)) {
                continue;  // nobody entered it
            }
            const Quantity quantity = quantityOf(id.field);
            addNumbers(nameOf(id) + std::string(unitSuffix(quantity, units_)), TravelPosition::ride, quantity,
                       numberAt(comparison_.beforeCar, id).value_or(kNone),
                       numberAt(comparison_.afterCar, id).value_or(kNone));
        }
        for (const UnsharedLink& link : comparison_.unshared) {
            addRow(link.name, TravelPosition::ride, link.inBefore ? "present" : "",
                   link.inBefore ? "" : "present", "");
        }
        return std::move(table_);
    }

  private:
    void addRow(std::string_view figure, TravelPosition at, std::string_view before, std::string_view after,
                std::string_view change, std::string_view plusMinus = ",") {
        table_ += quoted(figure) + ',' + std::string(bolthole::nameOf(at)) + ',' + quoted(before) + ',' +
                  quoted(after) + ',' + std::string(change);
        if (uncertainties_ != nullptr) {
            table_ += ',' + std::string(plusMinus);
        }
        table_ += "\r\n";
    }

    void addNumbers(std::string_view figure, TravelPosition at, Quantity quantity, double before,
                    double after, std::string_view plusMinus = ",") {
        const double unit = shownUnit(quantity, units_);
        addRow(figure, at, plainDecimal(before / unit), plainDecimal(after / unit),
               plainDecimal((after - before) / unit), plusMinus);
    }

    // The cells of change_u and apart of a figure.
    [[nodiscard]] std::string plusMinusOf(const FigureInfo& info, TravelPosition place, double change) const {
        if (uncertainties_ == nullptr || std::isnan(change)) {
            return ",";
        }
        const std::size_t at = place == TravelPosition::ride ? 0 : place == TravelPosition::droop ? 1 : 2;
        const double uncertainty = uncertaintyOfDifference(uncertainties_->before, uncertainties_->after, at,
                                                           static_cast<std::size_t>(info.figure));
        if (std::isnan(uncertainty)) {
            return ",";
        }
        return plainDecimal(uncertainty / shownUnit(info.quantity, units_)) +
               (cannotTellApart(change, uncertainty) ? ",no" : ",yes");
    }

    void addFigure(const FigureInfo& info) {
        // Angle columns of the figure table carry their unit already.
        const std::string_view suffix =
            info.quantity == Quantity::length ? unitSuffix(info.quantity, units_) : "";
        for (const TravelPosition place : kTravelPositions) {
            const auto value = [&](const Trace& trace) {
                const Station* station = stationAt(trace, place);
                return station == nullptr ? kNone : (*station)[info.figure];
            };
            const double before = value(comparison_.before);
            const double after = value(comparison_.after);
            addNumbers(std::string(info.column) + std::string(suffix), place, info.quantity, before, after,
                       plusMinusOf(info, place, after - before));
        }
    }

    void addLink(const SharedLink& pair) {
        const Link& before = comparison_.beforeCar.links[static_cast<std::size_t>(pair.before)];
        const Link& after = comparison_.afterCar.links[static_cast<std::size_t>(pair.after)];
        addRow(after.name + " chassis", TravelPosition::ride, nameOfHoleInUse(before.chassis),
               nameOfHoleInUse(after.chassis), "");
        addRow(after.name + " axle", TravelPosition::ride, nameOfHoleInUse(before.axle),
               nameOfHoleInUse(after.axle), "");
        if (after.kind != LinkKind::rod) {
            return;
        }
        const double from = builtLength(before);
        const double to = builtLength(after);
        addNumbers(after.name + " length" + std::string(unitSuffix(Quantity::length, units_)),
                   TravelPosition::ride, Quantity::length, from, to);
        if (const auto& adjuster = after.adjuster ? after.adjuster : before.adjuster) {
            addRow(after.name + " turns", TravelPosition::ride, "", "",
                   plainDecimal(adjusterTurns(to - from, *adjuster)));
        }
    }

    const Comparison& comparison_;
    Units units_;
    const ComparedUncertainties* uncertainties_;
    std::string table_;
};

}  // namespace

std::string compareTable(const Comparison& comparison, Units units,
                         const ComparedUncertainties* uncertainties) {
    return CompareTable(comparison, units, uncertainties).write();
}

}  // namespace bolthole
