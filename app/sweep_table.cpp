#include "app/sweep_table.h"

#include "geometry/text.h"

namespace bolthole {

namespace {

constexpr std::string_view kLineEnd = "\r\n";

void appendHeader(std::string& table, Units units) {
    const std::string_view lengthSuffix = units == Units::inch ? "_in" : "_mm";
    for (const FigureInfo& info : figureTable()) {
        table += &info == figureTable().data() ? "" : ",";
        table += info.column;
        if (info.quantity == Quantity::length) {
            table += lengthSuffix;
        }
    }
    table += kLineEnd;
}

void appendRow(std::string& table, const FigureRow& row, Units units) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        table += i == 0 ? "" : ",";
        table += plainDecimal(row[i] / shownUnit(figureTable()[i].quantity, units));
    }
    table += kLineEnd;
}

// Out of reach nothing but what was imposed is known.
FigureRow imposedOnly(const Station& station, const Car& car) {
    FigureRow row = emptyRow();
    const double travel = station[Figure::travel];
    row[static_cast<std::size_t>(Figure::travel)] = travel;
    row[static_cast<std::size_t>(Figure::frontTravel)] = car.travel.frontRatio * travel;
    return row;
}

}  // namespace

std::string sweepTable(const Trace& trace, const Car& car, Units units) {
    constexpr std::size_t kBytesPerRow = 256;
    std::string table;
    table.reserve((trace.stations.size() + 1) * kBytesPerRow);
    appendHeader(table, units);
    for (const Station& station : trace.stations) {
        appendRow(table, station.usable ? station.figures : imposedOnly(station, car), units);
    }
    return table;
}

}  // namespace bolthole
