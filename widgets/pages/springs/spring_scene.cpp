#include "widgets/pages/springs/spring_scene.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/springs/spring_findings.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

namespace {

constexpr double kLeastLengthSpan = 0.02;  // m
constexpr double kLeastRatioSpan = 0.1;
constexpr double kLeastRateSpan = 2000;  // N/m
constexpr double kAtLimit = 2e-6;        // m, how exactly limits are found

bool isClosed(const SuspensionPart& part, double length) {
    return part.closedLength && length <= *part.closedLength + kAtLimit;
}

bool isOpen(const SuspensionPart& part, double length) {
    return part.openLength && length >= *part.openLength - kAtLimit;
}

// What is worth a word beside the length.
QString stateWords(const SuspensionPart& part, double length) {
    if (isClosed(part, length)) {
        return tr(", ▲ compressed");
    }
    if (isOpen(part, length)) {
        return part.kind == PartKind::strap ? tr(", ▲ taut") : tr(", ▲ all out");
    }
    if (part.freeLength && length > *part.freeLength) {
        return part.kind == PartKind::bumpStop ? tr(", clear") : tr(", loose");
    }
    return {};
}

std::vector<Eigen::Vector3d> unusedHoles(const Bracket& bracket) {
    std::vector<Eigen::Vector3d> holes;
    for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
        if (static_cast<int>(hole) != bracket.use) {
            holes.push_back(bracket.holes[hole].at);
        }
    }
    return holes;
}

/// Draws up the lines of one car at one pose.
class SceneWriter {
  public:
    SceneWriter(const Car& car, const SpringFindings& found, std::span<const LineFigures> there)
        : car_(car), found_(found), there_(there) {}

    [[nodiscard]] DrawnSpring draw(std::size_t line, const AxlePose& pose) const;

  private:
    [[nodiscard]] QString label(std::size_t line, const SuspensionPart& part, int item) const;

    const Car& car_;
    const SpringFindings& found_;
    std::span<const LineFigures> there_;
};

DrawnSpring SceneWriter::draw(std::size_t line, const AxlePose& pose) const {
    const PartLine& of = found_.sweep.lines[line];
    const SuspensionPart& part = found_.parts[static_cast<std::size_t>(of.part)];
    const double length = there_[line].length;
    DrawnSpring drawn;
    drawn.item = found_.items[static_cast<std::size_t>(of.part)];
    drawn.kind = part.kind;
    drawn.chassis = of.onChassis;
    drawn.axle = pose.carry(of.onAxle);
    const auto sided = [&](const Eigen::Vector3d& hole) {
        return part.side == Side::both && of.side == Side::right ? mirrored(hole) : hole;
    };
    for (const Eigen::Vector3d& hole : unusedHoles(part.chassis)) {
        drawn.freeChassis.push_back(sided(hole));
    }
    for (const Eigen::Vector3d& hole : unusedHoles(part.axle)) {
        drawn.freeAxle.push_back(pose.carry(sided(hole) - Eigen::Vector3d(0, 0, car_.rearTireRadius)));
    }
    if (part.kind == PartKind::bumpStop && part.freeLength) {
        drawn.stopLength = std::min(*part.freeLength, length);
    }
    drawn.slack = part.openLength && length < *part.openLength;
    drawn.isPast = isClosed(part, length) || isOpen(part, length);
    drawn.label = label(line, part, drawn.item);
    return drawn;
}

// One label for both sides where they are alike.
QString SceneWriter::label(std::size_t line, const SuspensionPart& part, int item) const {
    const std::vector<std::size_t> lines = found_.linesOf(item);
    const double length = there_[line].length;
    QString name = springName(car_, item);
    if (lines.size() == 2) {
        const bool differ = std::abs(there_[lines[0]].length - there_[lines[1]].length) > kSidesDiffer;
        if (!differ && line == lines[1]) {
            return {};
        }
        if (differ) {
            name += line == lines[0] ? tr(", left") : tr(", right");
        }
    }
    return QStringLiteral("%1 %2%3").arg(name, lengthText(length, car_.units), stateWords(part, length));
}

std::vector<double> column(const SpringSweep& sweep, std::size_t line, double LineFigures::*figure) {
    std::vector<double> values;
    for (std::size_t row = 0; row < sweep.travel.size(); ++row) {
        values.push_back(sweep.row(row)[line].*figure);
    }
    return values;
}

/// Whether left and right are worth two curves.
bool sidesDiffer(const std::vector<double>& left, const std::vector<double>& right) {
    for (std::size_t row = 0; row < left.size(); ++row) {
        if (std::abs(left[row] - right[row]) > kSidesDiffer) {
            return true;
        }
    }
    return false;
}

std::vector<ChartRule> limitsOf(const SuspensionPart& part) {
    std::vector<ChartRule> limits;
    if (part.closedLength) {
        limits.push_back(limitRule(*part.closedLength, tr("compressed")));
    }
    if (part.openLength) {
        limits.push_back(limitRule(*part.openLength, part.kind == PartKind::strap ? tr("taut") : tr("open")));
    }
    if (part.freeLength) {  // nothing stops there, the part only comes loose
        limits.push_back({.at = *part.freeLength,
                          .words = tr("free"),
                          .color = &Theme::muted,
                          .line = ChartLine::dotted,
                          .width = 1.2,
                          .setsRange = true});
    }
    return limits;
}

/// Whether parts and links let the axle get there: past a closed or open length nothing pushes as its rate
/// says.
bool isAllowed(const TravelRoom& room, double travel) {
    return travel <= room.bump.travel + kAtLimit && travel >= -room.droop.travel - kAtLimit;
}

/// Fills a SpringChart card by card.
class ChartWriter {
  public:
    ChartWriter(const SpringFindings& found, Units units, int chosen)
        : found_(found), units_(units), subject_(QString::number(chosen)) {}

    void addCard(const QString& title, Quantity quantity, double minimumSpan, const QString& absent) {
        ChartCard card;
        card.titles = {title};
        card.unitText = unitText(quantity, units_);
        card.unit = shownUnit(quantity, units_);
        card.minimumSpan = minimumSpan;
        card.absent = absent;
        card.subject = subject_;
        chart.cards.push_back(std::move(card));
        chart.values.emplace_back();
        quantity_ = quantity;
    }

    /// A curve of the last card: a value a row of the sweep, and the one at the cursor.
    void addCurve(const QString& name, const std::vector<double>& values, double atCursor) {
        const bool isFirst = chart.cards.back().series.empty();
        ChartSeries series{.name = name};
        series.line = isFirst ? ChartLine::solid : ChartLine::dashDotted;
        series.width = isFirst ? 2.2 : 1.7;
        for (std::size_t row = 0; row < values.size(); ++row) {
            series.points.push_back({found_.sweep.travel[row], values[row]});
        }
        chart.cards.back().series.push_back(std::move(series));
        ChartValue value{.value = atCursor, .text = text(atCursor)};
        if (!std::isnan(atCursor)) {
            value.spoken = QStringLiteral("%1 %2 %3").arg(name, value.text, unitText(quantity_, units_));
        }
        chart.values.back().push_back(std::move(value));
    }

    void addSides(std::span<const LineFigures> there, const std::vector<std::size_t>& lines,
                  const QString& name, double LineFigures::*figure) {
        const SpringSweep& sweep = found_.sweep;
        const bool two = lines.size() == 2 && sidesDiffer(column(sweep, lines[0], &LineFigures::length),
                                                          column(sweep, lines[1], &LineFigures::length));
        addCurve(two ? tr("left") : name, column(sweep, lines[0], figure), there[lines[0]].*figure);
        if (two) {
            addCurve(tr("right"), column(sweep, lines[1], figure), there[lines[1]].*figure);
        }
    }

    SpringChart chart;

  private:
    [[nodiscard]] QString text(double value) const {
        return QString::fromStdString(quantity_ == Quantity::rate ? figureText(value, quantity_, units_)
                                                                  : fineFigureText(value, quantity_, units_));
    }

    const SpringFindings& found_;
    Units units_;
    QString subject_;
    Quantity quantity_ = Quantity::length;
};

void addRates(ChartWriter& writer, const SpringFindings& found, double travel,
              std::span<const LineFigures> there, int chosen, const QString& name) {
    const auto pushes = [](const SuspensionPart& part) { return part.rate.has_value() || part.push != 0; };
    if (std::ranges::none_of(found.parts, pushes)) {
        return;
    }
    double all = kNaN;
    double own = kNaN;
    if (isAllowed(found.room, travel)) {
        all = 0;
        for (const LineFigures& line : there) {
            all += line.rate / 2;
        }
        own = found.wheelRateOf(chosen, there);
    }
    std::vector<double> allRows;
    std::vector<double> ownRows;
    for (std::size_t row = 0; row < found.sweep.travel.size(); ++row) {
        const bool allowed = isAllowed(found.room, found.sweep.travel[row]);
        allRows.push_back(allowed ? found.sweep.wheelRate(row) : kNaN);
        ownRows.push_back(allowed ? found.wheelRateOf(chosen, found.sweep.row(row)) : kNaN);
    }
    writer.addCurve(tr("all parts"), allRows, all);
    writer.addCurve(name, ownRows, own);
}

/// Travel entered that a part or the links do not allow.
std::vector<ChartStretch> pastEnds(const TravelRoom& room, const TravelRange& travel) {
    std::vector<ChartStretch> past;
    if (room.droop.travel < travel.droop) {
        past.push_back({-travel.droop, -room.droop.travel, tr("past the end")});
    }
    if (room.bump.travel < travel.bump) {
        past.push_back({room.bump.travel, travel.bump, tr("past the end")});
    }
    return past;
}

}  // namespace

SpringsScene springsScene(const Car& car, const SpringFindings& found, double travel,
                          std::span<const LineFigures> there, int chosen) {
    const Station station = solveStation(car, travel);
    SpringsScene scene;
    scene.usable = station.usable;
    scene.pose = station.pose;
    scene.tireRadius = car.rearTireRadius;
    scene.track = car.rearTrack;
    scene.chosen = chosen;
    scene.units = car.units;
    const QString where = travelInWords(travel, car.units);
    scene.words = scene.usable ? tr("At %1").arg(where) : tr("At %1: out of the links' reach").arg(where);
    if (!scene.usable) {
        return scene;
    }
    const SceneWriter writer(car, found, there);
    for (std::size_t line = 0; line < found.sweep.lines.size(); ++line) {
        scene.parts.push_back(writer.draw(line, station.pose));
    }
    return scene;
}

SpringChart springChart(const Car& car, const SpringFindings& found, double travel,
                        std::span<const LineFigures> there, int chosen) {
    const QString name = springName(car, chosen);
    const std::vector<std::size_t> lines = found.linesOf(chosen);
    const QString unreached = tr("The links reach nowhere.");
    ChartWriter writer(found, car.units, chosen);
    writer.addCard(tr("Length"), Quantity::length, kLeastLengthSpan, unreached);
    writer.addSides(there, lines, name, &LineFigures::length);
    writer.chart.cards.back().rules = limitsOf(car.springs[static_cast<std::size_t>(chosen)]);
    writer.addCard(tr("Motion ratio"), Quantity::ratio, kLeastRatioSpan, unreached);
    writer.addSides(there, lines, name, &LineFigures::motionRatio);
    writer.addCard(tr("Wheel rate"), Quantity::rate, kLeastRateSpan,
                   tr("No part has a rate and a free length."));
    addRates(writer, found, travel, there, chosen, name);
    SpringChart chart = std::move(writer.chart);
    chart.axis = travelAxis({-car.travel.droop, car.travel.bump, car.travel.steps}, car.units);
    for (ChartCard& card : chart.cards) {
        card.stretches = pastEnds(found.room, car.travel);
        if (!card.rules.empty()) {  // they have their words there
            for (ChartStretch& stretch : card.stretches) {
                stretch.words.clear();
            }
        }
    }
    return chart;
}

}  // namespace bolthole
