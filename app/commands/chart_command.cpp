#include "app/commands/chart_command.h"

#include "app/papers/pdf_file.h"
#include "app/papers/quiet_toolkit.h"
#include "geometry/trials/power_map.h"
#include "geometry/units/parallel.h"
#include "widgets/papers/wall_chart.h"

namespace bolthole {

namespace {

// What is wrong with the request, or empty.
std::string refusal(const Request& request, const Car& car, LengthTreatment links) {
    if (!request.value(kOutputOption)) {
        return "-o: no file given for the chart, expected -o FILE";
    }
    if (links == LengthTreatment::uppers && !hasUpperRod(car)) {
        return "--lengths: 'uppers' needs an upper link and the car has none, expected keep or refit";
    }
    if (const std::uint64_t count = chartCombinationCount(car); count > kMostChartCombinations) {
        return "links: the holes make " + std::to_string(count) + " combinations, expected at most " +
               std::to_string(kMostChartCombinations) + " for a chart";
    }
    return {};
}

// Fewer than on the screen: a chart is waited for.
constexpr int kChartPowers = 5;

}  // namespace

PaperSize paperAsked(const Request& request, Units units) {
    const std::optional<std::string> name = request.value(kPaperOption);
    if (!name) {
        return usualPaper(units);
    }
    return *name == "letter"    ? PaperSize::letter
           : *name == "tabloid" ? PaperSize::tabloid
           : *name == "a4"      ? PaperSize::a4
                                : PaperSize::a3;
}

ChartOutcome makeChart(const Request& request, const Car& car) {
    using Ending = ChartOutcome::End;
    const LengthTreatment links = request.lengths().value_or(defaultTreatment(car));
    if (std::string problem = refusal(request, car, links); !problem.empty()) {
        return {Ending::badUse, {}, std::move(problem)};
    }
    const PowerMap powers =
        mapPower(car, {.lengths = links, .powers = kChartPowers, .threads = machineThreads()});
    const QuietToolkit toolkit;
    const QPageLayout page = pageLayoutOf(paperAsked(request, car.units));
    const WallChart chart({car, links, NumberStyle{car.units}, QDate::currentDate(),
                           QString::fromStdString(bandWords(powers, car, car.units))},
                          page);
    if (!chart.anyAssembled()) {
        return {Ending::cannotAssemble, {}, "links: no combination of holes can be assembled at ride"};
    }
    const QByteArray pdf = pdfOf(chart, page, car.title);
    if (pdf.isEmpty()) {
        return {Ending::badUse, {}, std::string("the chart ").append(kNotPainted)};
    }
    return {Ending::done, pdf.toStdString(), {}};
}

}  // namespace bolthole
