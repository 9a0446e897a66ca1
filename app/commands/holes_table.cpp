#include "app/commands/holes_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <thread>
#include <vector>

#include "app/commands/csv_text.h"
#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/units/parallel.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr std::uint64_t kRowsPerBlock = 1024;

// RFC 4180: quotes around what holds a comma, a quote or a line end, quotes inside doubled.
std::string quoted(const std::string& cell) {
    if (cell.find_first_of(",\"\r\n") == std::string::npos) {
        return cell;
    }
    std::string result = "\"";
    for (const char letter : cell) {
        result += letter;
        if (letter == '"') {
            result += '"';
        }
    }
    return result + '"';
}

class RowWriter {
  public:
    explicit RowWriter(const HolesTable& table) : table_(table), car_(*table.car) {}

    [[nodiscard]] std::string header() const;
    void append(std::string& rows, const HoleCombination& combination, bool inUse) const;
    void appendUncertainty(std::string& rows, const HoleCombination& combination) const;

  private:
    [[nodiscard]] std::string column(std::string_view name, Quantity quantity) const {
        const std::string_view unit = car_.units == Units::inch ? "_in" : "_mm";
        return std::string(name) + std::string(quantity == Quantity::length ? unit : "");
    }
    [[nodiscard]] std::string decimal(double value, Quantity quantity) const {
        return plainDecimal(value / shownUnit(quantity, car_.units));
    }
    [[nodiscard]] std::string holeName(int link, End end, int hole) const {
        const std::string& name = findHole(car_, link, end, hole)->name;
        return name.empty() ? std::to_string(hole + 1) : quoted(name);
    }

    const HolesTable& table_;
    const Car& car_;
};

// The figures of a combination, in the order of their columns.
struct FigureColumn {
    std::string_view name;
    Figure figure;
    double (*value)(const HoleCombination&);
    std::size_t place = 0;  // in TraceUncertainty::travels: ride, full droop, full bump
};
constexpr std::array<FigureColumn, 8> kFigureColumns{{
    {"ic_x", Figure::icX, [](const HoleCombination& combination) { return combination[Figure::icX]; }},
    {"ic_z", Figure::icZ, [](const HoleCombination& combination) { return combination[Figure::icZ]; }},
    {"svsa_angle_deg", Figure::swingArmAngle,
     [](const HoleCombination& combination) { return combination[Figure::swingArmAngle]; }},
    {"anti_squat_pct", Figure::antiSquat,
     [](const HoleCombination& combination) { return combination[Figure::antiSquat]; }},
    {"anti_squat_droop_pct", Figure::antiSquat,
     [](const HoleCombination& combination) { return combination.antiSquatDroop; }, 1},
    {"anti_squat_bump_pct", Figure::antiSquat,
     [](const HoleCombination& combination) { return combination.antiSquatBump; }, 2},
    {"axle_x", Figure::axleX, [](const HoleCombination& combination) { return combination[Figure::axleX]; }},
    {"pinion_deg", Figure::pinion,
     [](const HoleCombination& combination) { return combination[Figure::pinion]; }},
}};

Quantity quantityOf(const FigureColumn& column) {
    return figureTable()[static_cast<std::size_t>(column.figure)].quantity;
}

std::string RowWriter::header() const {
    std::string line;
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        const std::string name = linkWords(car_, static_cast<int>(link));
        line += quoted(name + " chassis") + "," + quoted(name + " axle") + ",";
    }
    line += "in_use,";
    for (const FigureColumn& figure : kFigureColumns) {
        line += column(figure.name, quantityOf(figure)) + ",";
    }
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        if (car_.links[link].kind == LinkKind::rod) {
            const std::string name = linkWords(car_, static_cast<int>(link));
            line += quoted(column(name + " length", Quantity::length)) + ",";
        }
    }
    line += "problem,links";
    for (const FigureColumn& figure : kFigureColumns) {
        line += table_.uncertainty ? "," + column(figure.name, quantityOf(figure)) + "_u" : "";
    }
    return line + std::string(kLineEnd);
}

void RowWriter::append(std::string& rows, const HoleCombination& combination, bool inUse) const {
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const int index = static_cast<int>(link);
            rows += holeName(index, end, combination.use.of(index, end)) + ",";
        }
    }
    rows += inUse ? "yes" : "no";
    for (const FigureColumn& column : kFigureColumns) {
        rows += "," + decimal(column.value(combination), quantityOf(column));
    }
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        if (car_.links[link].kind == LinkKind::rod) {
            rows +=
                "," + decimal(combination.assembled ? combination.length[link] : kAbsent, Quantity::length);
        }
    }
    rows += "," + quoted(describeProblems(combination, car_, car_.units)) + ",";
    rows += nameOf(table_.lengths);
    if (table_.uncertainty) {
        appendUncertainty(rows, combination);
    }
    rows += kLineEnd;
}

void RowWriter::appendUncertainty(std::string& rows, const HoleCombination& combination) const {
    const TraceUncertainty uncertainty = combination.assembled
                                             ? computeUncertainty(car_, table_.lengths, combination.use)
                                             : TraceUncertainty{};
    for (const FigureColumn& column : kFigureColumns) {
        const bool exists = !std::isnan(column.value(combination));
        const double standard =
            exists ? uncertainty.of(column.place, static_cast<std::size_t>(column.figure)) : kAbsent;
        rows += "," + decimal(standard, quantityOf(column));
    }
}

// Computes a run of rows after another, each on its own thread's solver.
class RowMaker {
  public:
    RowMaker(const HolesTable& table, const CombinationSpace& space)
        : writer_(table), space_(space), solver_(*table.car, table.lengths), present_(space.present()) {}

    void make(std::uint64_t first, std::uint64_t end) {
        rows_.clear();
        for (std::uint64_t index = first; index < end; ++index) {
            solver_.solve(space_.at(index), combination_);
            writer_.append(rows_, combination_, present_ == index);
        }
    }
    [[nodiscard]] const std::string& rows() const { return rows_; }

  private:
    RowWriter writer_;
    const CombinationSpace& space_;
    CombinationSolver solver_;
    std::optional<std::uint64_t> present_;
    HoleCombination combination_;
    std::string rows_;
};

}  // namespace

bool anyAssembled(const HolesTable& table) {
    const CombinationSpace space(*table.car, table.scope);
    CombinationSolver solver(*table.car, table.lengths);
    HoleCombination combination;
    for (std::uint64_t index = 0; index < space.count() && !combination.assembled; ++index) {
        solver.solve(space.at(index), combination);
    }
    return combination.assembled;
}

bool writeHolesTable(const HolesTable& table, const WriteBytes& write) {
    const CombinationSpace space(*table.car, table.scope);
    const auto cores = static_cast<std::uint64_t>(machineThreads());
    std::vector<RowMaker> makers;
    while (makers.size() < std::min(cores, 1 + space.count() / kRowsPerBlock)) {
        makers.emplace_back(table, space);
    }
    bool going = write(RowWriter(table).header());
    for (std::uint64_t first = 0; first < space.count() && going; first += makers.size() * kRowsPerBlock) {
        {
            std::vector<std::jthread> threads;
            for (std::uint64_t maker = 0; maker < makers.size(); ++maker) {
                const std::uint64_t from = std::min(first + maker * kRowsPerBlock, space.count());
                const std::uint64_t end = std::min(from + kRowsPerBlock, space.count());
                threads.emplace_back([&each = makers[maker], from, end] { each.make(from, end); });
            }
        }
        for (const RowMaker& maker : makers) {
            going = going && write(maker.rows());
        }
    }
    return going;
}

}  // namespace bolthole
