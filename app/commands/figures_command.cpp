#include "app/commands/figures_command.h"

#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "app/commands/csv_text.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/launch_case.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/units/csv.h"
#include "geometry/units/text.h"
#include "widgets/pages/brackets/bracket_facts.h"
#include "widgets/pages/driveline/driveline_facts.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/pages/roll/rod_effect_facts.h"
#include "widgets/pages/roll/roll_facts.h"
#include "widgets/pages/springs/spring_facts.h"
#include "widgets/pages/weights/weights_facts.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

namespace {

using Figures = std::vector<PageFigure>;

// What the pages read when the car alone is on the bench.
BenchState benchOf(const Car& car) {
    BenchState bench;
    bench.car = car;
    bench.solvedCar = car;
    bench.trace = computeTrace(car);
    bench.traceIsCurrent = bench.trace.assembly.usable();
    bench.cursor = bench.trace.ride;
    bench.style.units = car.units;
    return bench;
}

void add(const std::string& page, const CardFacts& cards, const std::vector<double>& uncertainty,
         Figures& figures) {
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    for (std::size_t number = 0; number < numbers.size(); ++number) {
        figures.push_back({page, *numbers[number], uncertainty.empty() ? kNaN : uncertainty[number]});
    }
}

// A column of the sweep without its unit: "anti_squat".
std::string nameOf(const FigureInfo& info) {
    std::string_view column = info.column;
    for (const std::string_view suffix : {"_deg", "_pct"}) {
        if (column.ends_with(suffix)) {
            column.remove_suffix(suffix.size());
        }
    }
    return std::string(column);
}

void addSweep(const Car& car, const BenchState& bench, Figures& figures) {
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const std::pair<const char*, const Station*> places[] = {{"_ride", &bench.trace.ride},
                                                             {"_bump", &bench.trace.stations.back()},
                                                             {"_droop", &bench.trace.stations.front()}};
    for (const FigureInfo& info : figureTable()) {
        const bool isImposed = info.figure == Figure::travel || info.figure == Figure::frontTravel;
        const auto figure = static_cast<std::size_t>(info.figure);
        for (const auto& [place, station] : places) {
            const double value = station->usable ? (*station)[info.figure] : kNaN;
            const bool isKnown = !isImposed && std::isfinite(value);
            figures.push_back({"links", fineNumber(nameOf(info) + place, value, info.quantity),
                               isKnown ? uncertainty.at(figure, (*station)[Figure::travel]) : kNaN});
        }
    }
}

void addWeights(const Car& car, const BenchState& bench, Figures& figures) {
    const double squat = bench.trace.ride[Figure::antiSquat];
    const std::optional<double> antiSquat = std::isfinite(squat) ? std::optional(squat) : std::nullopt;
    const CardFacts cards = factsOf(weightCards(car, fullStanceOf(car), antiSquat));
    const ReadCards read = &variedWeightFacts;
    add("weights", cards, uncertaintiesOf(cards, car, read), figures);
}

void addSprings(const Car& car, const BenchState& bench, Figures& figures) {
    const SpringFindings found = findSprings(bench);
    if (car.springs.empty() || !found.problem.empty()) {
        return;
    }
    add("springs", {roomFacts(car, found)}, {}, figures);
    const CardFacts cards = springCards(car, found);
    const ReadCards read = [](const Car& varied) { return springCards(varied, findSpringsAtRide(varied)); };
    add("springs", cards, uncertaintiesOf(cards, car, read), figures);
}

void addDriveline(const Car& car, const BenchState& bench, Figures& figures) {
    const CardFacts cards = drivelineCards(readDriveline(bench), car.units);
    const ReadCards read = [](const Car& varied) {
        return drivelineCards(readDrivelineBriefly(varied), varied.units);
    };
    add("driveline", cards, cards.empty() ? std::vector<double>{} : uncertaintiesOf(cards, car, read),
        figures);
}

// "link_2_lower_left": no two links' figures share a name, whatever they are called.
std::string jointId(const Car& car, const JointLoads& joint) {
    const std::string side = joint.side == Side::left ? "_left" : joint.side == Side::right ? "_right" : "";
    return "link_" + std::to_string(joint.link + 1) + '_' +
           snakeCase(car.links[static_cast<std::size_t>(joint.link)].name) + side;
}

void addJoint(const Car& car, const JointLoads& joint, Figures& figures) {
    const std::string id = jointId(car, joint);
    const auto push = [&](const char* what, double value, Quantity quantity) {
        figures.push_back({"loads", plainNumber(id + what, value, quantity)});
    };
    push("_tension", joint.worst.tension, Quantity::force);
    push("_tension_at", joint.worst.tensionAt, Quantity::length);
    push("_compression", joint.worst.compression, Quantity::force);
    push("_compression_at", joint.worst.compressionAt, Quantity::length);
    push("_ride", joint.atRide, Quantity::force);
    if (joint.use) {
        push("_of_rating", 100 * *joint.use, Quantity::percent);
    }
}

void addLaunch(const Car& car, const BenchState& bench, Figures& figures) {
    const LaunchCase launch = launchCaseOf(car, bench.trace, fullStanceOf(car));
    const CardFacts cards = launchCards(car, launch, car.units);
    const ReadCards read = [](const Car& varied) { return readLaunchCards(varied, varied.units); };
    add("loads", cards, uncertaintiesOf(cards, car, read), figures);
    add("loads", {linkCaseFacts(car, launch, car.units)}, {}, figures);
    if (launch.links && !launch.links->sweep.unbalanced) {
        for (const JointLoads& joint : launch.links->joints) {
            addJoint(car, joint, figures);
        }
    }
}

void addRoll(const Car& car, const BenchState& bench, Figures& figures) {
    const CardFacts cards = rollCards(readRoll(bench), car.units);
    const ReadCards read = [](const Car& varied) { return rollCards(readRollBriefly(varied), varied.units); };
    add("roll", cards, uncertaintiesOf(cards, car, read), figures);
    add("roll", {rodEffectFacts(car, bench.style)}, {}, figures);
}

void addBrackets(const Car& car, Figures& figures) {
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            CardFacts cards{bracketFacts(car.links[link].bracket(end), car.units)};
            const std::string prefix = "link_" + std::to_string(link + 1) + '_' +
                                       snakeCase(car.links[link].name) +
                                       (end == End::chassis ? "_chassis_" : "_axle_");
            for (Fact& fact : cards.front()) {
                for (FactNumber& number : fact.others) {
                    number.id.insert(0, prefix);
                }
            }
            add("brackets", cards, {}, figures);
        }
    }
}

std::string rowOf(const PageFigure& figure, Units units) {
    const FactNumber& number = figure.number;
    const double unit = shownUnit(number.quantity, units);
    const std::string mark =
        number.unit.isEmpty() ? std::string(unitMark(number.quantity, units)) : number.unit.toStdString();
    const bool isThere = std::isfinite(number.value);
    return figure.page + ',' + csvField(number.id) + ',' + plainDecimal(number.value / unit) + ',' +
           csvField(mark) + ',' + (isThere ? plainDecimal(figure.uncertainty / unit) : "") +
           std::string(kLineEnd);
}

}  // namespace

std::vector<PageFigure> pageFigures(const Car& car) {
    const BenchState bench = benchOf(car);
    std::vector<PageFigure> figures;
    addSweep(car, bench, figures);
    addWeights(car, bench, figures);
    addSprings(car, bench, figures);
    addDriveline(car, bench, figures);
    addLaunch(car, bench, figures);
    addRoll(car, bench, figures);
    addBrackets(car, figures);
    return figures;
}

std::string figuresTable(const Car& car) {
    std::string table = "page,figure,value,unit,u" + std::string(kLineEnd);
    for (const PageFigure& figure : pageFigures(car)) {
        table += rowOf(figure, car.units);
    }
    return table;
}

}  // namespace bolthole
