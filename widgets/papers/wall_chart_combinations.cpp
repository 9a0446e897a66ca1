#include "widgets/papers/wall_chart_combinations.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/combinations/present_combination.h"

namespace bolthole {

namespace {

// Torque arms stand with the uppers: they take the place of one.
bool goesAcross(const Link& link, Role role) {
    return link.kind == LinkKind::slider || (role == Role::upper && link.kind != LinkKind::pivot);
}

void addBrackets(const Car& car, std::size_t index, int partner, HoleAxis& axis) {
    for (const End end : {End::chassis, End::axle}) {
        const auto holes = static_cast<int>(car.links[index].bracket(end).holes.size());
        if (holes > 1) {
            axis.brackets.push_back({static_cast<int>(index), end, holes, partner});
        }
    }
}

// Finds, cell by cell, whether a rod's length is the same wherever `group` is.
class LengthUncertainty {
  public:
    explicit LengthUncertainty(int groups) : ranges_(static_cast<std::size_t>(groups)) {}
    void add(int group, double length) {
        Range& range = ranges_[static_cast<std::size_t>(group)];
        range.least = std::min(range.least, length);
        range.most = std::max(range.most, length);
    }
    [[nodiscard]] bool isSameInEach() const {
        return std::ranges::all_of(
            ranges_, [](const Range& range) { return range.most - range.least <= kNoAdjustment; });
    }

  private:
    struct Range {
        double least = std::numeric_limits<double>::infinity();
        double most = -std::numeric_limits<double>::infinity();
    };
    std::vector<Range> ranges_;
};

ChartRod rodOf(const ChartCombinations& chart, int link) {
    ChartRod rod{link, LengthPosition::cell, false};
    LengthUncertainty all(1);
    LengthUncertainty rows(chart.rows);
    LengthUncertainty columns(chart.columns);
    for (int row = 0; row < chart.rows; ++row) {
        for (int column = 0; column < chart.columns; ++column) {
            const HoleCombination& combination = chart.at(row, column);
            if (!combination.assembled) {
                continue;
            }
            const double length = combination.length[static_cast<std::size_t>(link)];
            all.add(0, length);
            rows.add(row, length);
            columns.add(column, length);
            rod.changes |= std::abs(combination.lengthChange[static_cast<std::size_t>(link)]) > kNoAdjustment;
        }
    }
    if (all.isSameInEach()) {
        rod.place = LengthPosition::once;
    } else if (chart.axes.isMatrix() && rows.isSameInEach()) {
        rod.place = LengthPosition::row;
    } else if (chart.axes.isMatrix() && columns.isSameInEach()) {
        rod.place = LengthPosition::column;
    }
    return rod;
}

std::optional<std::pair<int, int>> findNow(const ChartCombinations& chart, const HoleUse& present) {
    for (int row = 0; row < chart.rows; ++row) {
        for (int column = 0; column < chart.columns; ++column) {
            if (chart.at(row, column).use == present) {
                return std::pair(row, column);
            }
        }
    }
    return std::nullopt;
}

int stepsBetween(double least, double most, double width) {
    return static_cast<int>(std::min(std::floor(most / width) - std::floor(least / width) + 1, 1e6));
}

// The least of 1, 2, 5, 10, 20, 25, 50, 100 ... that needs no more than the most steps.
double roundWidth(double least, double most) {
    for (double decade = 1;; decade *= 10) {
        for (const double round : {1.0, 2.0, 2.5, 5.0}) {
            const double width = round * decade;
            if (std::floor(width) >= width && stepsBetween(least, most, width) <= kMostShades) {
                return width;
            }
        }
    }
}

}  // namespace

int HoleAxis::count() const {
    int count = 1;
    for (const ChartBracket& bracket : brackets) {
        count *= bracket.holes;
    }
    return count;
}

int HoleAxis::hole(std::size_t place, int index) const {
    for (std::size_t later = brackets.size() - 1; later > place; --later) {
        index /= brackets[later].holes;
    }
    return index % brackets[place].holes;
}

void HoleAxis::apply(int index, HoleUse& use) const {
    for (std::size_t place = 0; place < brackets.size(); ++place) {
        const ChartBracket& bracket = brackets[place];
        use.set(bracket.link, bracket.end, hole(place, index));
        if (bracket.tiedLink >= 0) {
            use.set(bracket.tiedLink, bracket.end, hole(place, index));
        }
    }
}

bool HoleAxis::varies(int link) const {
    return std::ranges::any_of(brackets, [link](const ChartBracket& bracket) {
        return bracket.link == link || bracket.tiedLink == link;
    });
}

ChartAxes chartAxes(const Car& car) {
    ChartAxes axes;
    HoleAxis crosswise;
    const std::vector<int> partners = mirrorPartners(car);
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& link = car.links[index];
        const int partner = partners[index];
        if (partner >= 0 && partner < static_cast<int>(index)) {
            continue;
        }
        const Role role = roleOf(link, car.rearTireRadius);
        const bool across = goesAcross(link, role);
        addBrackets(car, index, partner,
                    !across && role == Role::crosswise ? crosswise
                    : across                           ? axes.across
                                                       : axes.down);
    }
    if (axes.down.brackets.empty()) {
        std::swap(axes.down, axes.across);
    }
    if (axes.down.brackets.empty()) {
        axes.down = std::move(crosswise);
    }
    return axes;
}

int ShadeScale::stepOf(double antiSquat) const {
    const double step = std::floor((std::round(antiSquat) - first) / width);
    return static_cast<int>(std::clamp(step, 0.0, static_cast<double>(steps - 1)));
}

ShadeScale shadeScale(const std::vector<HoleCombination>& combinations) {
    constexpr std::size_t kFew = 20;
    std::vector<double> figures;
    for (const HoleCombination& combination : combinations) {
        if (combination.assembled) {
            figures.push_back(std::round(combination[Figure::antiSquat]));
        }
    }
    if (figures.empty()) {
        return {};
    }
    std::ranges::sort(figures);
    const std::size_t cut = figures.size() > kFew ? figures.size() / 10 : 0;
    const double least = figures[cut];
    const double most = figures[figures.size() - 1 - cut];
    const double width = roundWidth(least, most);
    ShadeScale shades{std::floor(least / width) * width, width, stepsBetween(least, most, width), false,
                      false};
    shades.isOpenBelow = figures.front() < shades.first;
    shades.isOpenAbove = figures.back() >= shades.first + shades.steps * width;
    return shades;
}

const HoleCombination* ChartCombinations::inRow(int row) const {
    for (int column = 0; column < columns; ++column) {
        if (at(row, column).assembled) {
            return &at(row, column);
        }
    }
    return nullptr;
}

const HoleCombination* ChartCombinations::inColumn(int column) const {
    for (int row = 0; row < rows; ++row) {
        if (at(row, column).assembled) {
            return &at(row, column);
        }
    }
    return nullptr;
}

const HoleCombination* ChartCombinations::any() const {
    const auto found = std::ranges::find_if(combinations, &HoleCombination::assembled);
    return found == combinations.end() ? nullptr : &*found;
}

ChartCombinations computeChart(const Car& car, LengthTreatment lengths) {
    ChartCombinations chart;
    chart.axes = chartAxes(car);
    chart.rows = chart.axes.down.count();
    chart.columns = chart.axes.across.count();
    chart.combinations.resize(static_cast<std::size_t>(chart.rows) * static_cast<std::size_t>(chart.columns));
    CombinationSolver solver(car, lengths);
    const HoleUse present = holesInUse(car);
    auto combination = chart.combinations.begin();
    for (int row = 0; row < chart.rows; ++row) {
        for (int column = 0; column < chart.columns; ++column, ++combination) {
            HoleUse use = present;
            chart.axes.down.apply(row, use);
            chart.axes.across.apply(column, use);
            if (use == present) {
                *combination = combinationAsItStands(car);
            } else {
                solver.solve(use, *combination);
            }
        }
    }
    chart.now = findNow(chart, present);
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        if (car.links[link].kind == LinkKind::rod) {
            chart.rods.push_back(rodOf(chart, static_cast<int>(link)));
        }
    }
    chart.shades = shadeScale(chart.combinations);
    return chart;
}

}  // namespace bolthole
