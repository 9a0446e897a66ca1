#include "app/commands/sweep_table.h"

#include <cmath>
#include <string_view>

#include "app/commands/csv_text.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

std::string columnOf(const FigureInfo& info, Units units) {
    const std::string_view lengthSuffix = units == Units::inch ? "_in" : "_mm";
    return std::string(info.column) + std::string(info.quantity == Quantity::length ? lengthSuffix : "");
}

// What is imposed is exact.
bool isImposed(Figure figure) {
    return figure == Figure::travel || figure == Figure::frontTravel;
}

void appendHeader(std::string& table, Units units, bool withUncertainty) {
    for (const FigureInfo& info : figureTable()) {
        table += &info == figureTable().data() ? "" : ",";
        table += columnOf(info, units);
    }
    for (const FigureInfo& info : figureTable()) {
        table += withUncertainty && !isImposed(info.figure) ? "," + columnOf(info, units) + "_u" : "";
    }
    table += kLineEnd;
}

void appendFigures(std::string& table, const FigureRow& row, Units units) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        table += i == 0 ? "" : ",";
        table += plainDecimal(row[i] / shownUnit(figureTable()[i].quantity, units));
    }
}

void appendUncertainty(std::string& table, const FigureRow& row, const TraceUncertainty& uncertainty,
                       Units units) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (isImposed(figureTable()[i].figure)) {
            continue;
        }
        table += ',';
        if (!std::isnan(row[i])) {
            table += plainDecimal(uncertainty.at(i, row[0]) / shownUnit(figureTable()[i].quantity, units));
        }
    }
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

std::string sweepTable(const Trace& trace, const Car& car, Units units, const TraceUncertainty* uncertainty) {
    constexpr std::size_t kBytesPerRow = 256;
    std::string table;
    table.reserve((trace.stations.size() + 1) * kBytesPerRow);
    appendHeader(table, units, uncertainty != nullptr);
    for (const Station& station : trace.stations) {
        const FigureRow row = station.usable ? station.figures : imposedOnly(station, car);
        appendFigures(table, row, units);
        if (uncertainty != nullptr) {
            appendUncertainty(table, row, *uncertainty, units);
        }
        table += kLineEnd;
    }
    return table;
}

}  // namespace bolthole
