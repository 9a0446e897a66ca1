#include "app/commands/roll_table.h"

#include <array>
#include <string_view>

#include "app/commands/csv_text.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

struct Column {
    std::string_view name;
    Quantity quantity;
    double (*value)(const RollFigures&);
    RollFigure uncertainty = RollFigure::count;  // count: has no column of its uncertainty
};

constexpr std::array<Column, 6> kColumns{{
    {"roll_deg", Quantity::angle, [](const RollFigures& row) { return row.roll; }},
    {"yaw_deg", Quantity::angle, [](const RollFigures& row) { return row.pose.yaw; }, RollFigure::yaw},
    {"axle_y", Quantity::length, [](const RollFigures& row) { return row.pose.y; }, RollFigure::axleY},
    {"bind", Quantity::length, [](const RollFigures& row) { return row.bind; }},
    {"roll_center", Quantity::length, [](const RollFigures& row) { return row.center; }, RollFigure::center},
    {"roll_steer", Quantity::ratio, [](const RollFigures& row) { return row.steer; }, RollFigure::steer},
}};

std::string headerOf(const Column& column, Units units) {
    const std::string_view lengthSuffix = units == Units::inch ? "_in" : "_mm";
    return std::string(column.name) + std::string(column.quantity == Quantity::length ? lengthSuffix : "");
}

void appendRollHeader(std::string& table, Units units, bool withUncertainty) {
    for (const Column& column : kColumns) {
        table += &column == kColumns.data() ? "" : ",";
        table += headerOf(column, units);
    }
    for (const Column& column : kColumns) {
        table += withUncertainty && column.uncertainty != RollFigure::count
                     ? "," + headerOf(column, units) + "_u"
                     : "";
    }
    table += kLineEnd;
}

void appendUncertainty(std::string& table, int row, const RollUncertainty& uncertainty, Units units) {
    for (const Column& column : kColumns) {
        if (column.uncertainty != RollFigure::count) {
            table += ',' + plainDecimal(uncertainty.of(row, column.uncertainty) /
                                        shownUnit(column.quantity, units));
        }
    }
}

}  // namespace

std::string rollTable(const RollTrace& trace, Units units, const RollUncertainty* uncertainty) {
    std::string table;
    appendRollHeader(table, units, uncertainty != nullptr);
    int number = 0;
    for (const RollFigures& row : trace.rows) {
        for (const Column& column : kColumns) {
            const bool isImposed = &column == kColumns.data();
            table += isImposed ? "" : ",";
            table += row.usable || isImposed
                         ? plainDecimal(column.value(row) / shownUnit(column.quantity, units))
                         : "";
        }
        if (uncertainty != nullptr) {
            appendUncertainty(table, number, *uncertainty, units);
        }
        ++number;
        table += kLineEnd;
    }
    return table;
}

}  // namespace bolthole
