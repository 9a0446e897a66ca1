#include "app/roll_table.h"

#include <array>
#include <string_view>

#include "geometry/text.h"

namespace bolthole {

namespace {

constexpr std::string_view kLineEnd = "\r\n";

struct Column {
    std::string_view name;
    Quantity quantity;
    double (*value)(const RollFigures&);
};

constexpr std::array<Column, 6> kColumns{{
    {"roll_deg", Quantity::angle, [](const RollFigures& row) { return row.roll; }},
    {"yaw_deg", Quantity::angle, [](const RollFigures& row) { return row.pose.yaw; }},
    {"axle_y", Quantity::length, [](const RollFigures& row) { return row.pose.y; }},
    {"bind", Quantity::length, [](const RollFigures& row) { return row.bind; }},
    {"roll_center", Quantity::length, [](const RollFigures& row) { return row.center; }},
    {"roll_steer", Quantity::ratio, [](const RollFigures& row) { return row.steer; }},
}};

}  // namespace

std::string rollTable(const RollTrace& trace, Units units) {
    const std::string_view lengthSuffix = units == Units::inch ? "_in" : "_mm";
    std::string table;
    for (const Column& column : kColumns) {
        table += &column == kColumns.data() ? "" : ",";
        table += column.name;
        table += column.quantity == Quantity::length ? lengthSuffix : "";
    }
    table += kLineEnd;
    for (const RollFigures& row : trace.rows) {
        for (const Column& column : kColumns) {
            const bool isImposed = &column == kColumns.data();
            table += isImposed ? "" : ",";
            table += row.usable || isImposed
                         ? plainDecimal(column.value(row) / shownUnit(column.quantity, units))
                         : "";
        }
        table += kLineEnd;
    }
    return table;
}

}  // namespace bolthole
