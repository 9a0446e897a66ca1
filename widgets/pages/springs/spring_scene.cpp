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

std::vector<SpringCurve> sideCurves(const SpringFindings& found, std::span<const LineFigures> there,
                                    const std::vector<std::size_t>& lines, const QString& name,
                                    double LineFigures::*figure) {
    const bool two = lines.size() == 2 && sidesDiffer(column(found.sweep, lines[0], &LineFigures::length),
                                                      column(found.sweep, lines[1], &LineFigures::length));
    std::vector<SpringCurve> curves{
        {two ? tr("left") : name, column(found.sweep, lines[0], figure), there[lines[0]].*figure}};
    if (two) {
        curves.push_back({tr("right"), column(found.sweep, lines[1], figure), there[lines[1]].*figure});
    }
    return curves;
}

std::vector<SpringLimit> limitsOf(const SuspensionPart& part) {
    std::vector<SpringLimit> limits;
    if (part.closedLength) {
        limits.push_back({*part.closedLength, tr("compressed"), true});
    }
    if (part.openLength) {
        limits.push_back({*part.openLength, part.kind == PartKind::strap ? tr("taut") : tr("open"), true});
    }
    if (part.freeLength) {
        limits.push_back({*part.freeLength, tr("free"), false});
    }
    return limits;
}

/// Whether parts and links let the axle get there: past a closed or open length nothing pushes as its rate
/// says.
bool isAllowed(const TravelRoom& room, double travel) {
    return travel <= room.bump.travel + kAtLimit && travel >= -room.droop.travel - kAtLimit;
}

SpringCardData rateCard(const SpringFindings& found, double travel, std::span<const LineFigures> there,
                        int chosen, const QString& name) {
    SpringCardData card{.title = tr("Wheel rate"),
                        .quantity = Quantity::rate,
                        .minimumSpan = kLeastRateSpan,
                        .curves = {},
                        .limits = {},
                        .absent = tr("No part has a rate and a free length.")};
    const auto pushes = [](const SuspensionPart& part) { return part.rate.has_value() || part.push != 0; };
    if (std::ranges::none_of(found.parts, pushes)) {
        return card;
    }
    SpringCurve all{tr("all parts"), {}};
    SpringCurve own{name, {}};
    if (isAllowed(found.room, travel)) {
        all.atCursor = 0;
        for (const LineFigures& line : there) {
            all.atCursor += line.rate / 2;
        }
        own.atCursor = found.wheelRateOf(chosen, there);
    }
    constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t row = 0; row < found.sweep.travel.size(); ++row) {
        const bool allowed = isAllowed(found.room, found.sweep.travel[row]);
        all.values.push_back(allowed ? found.sweep.wheelRate(row) : kNone);
        own.values.push_back(allowed ? found.wheelRateOf(chosen, found.sweep.row(row)) : kNone);
    }
    card.curves = {std::move(all), std::move(own)};
    return card;
}

std::vector<OutOfReach> pastEnds(const TravelRoom& room, const TravelRange& travel) {
    std::vector<OutOfReach> past;
    if (room.droop.travel < travel.droop) {
        past.push_back({-travel.droop, -room.droop.travel});
    }
    if (room.bump.travel < travel.bump) {
        past.push_back({room.bump.travel, travel.bump});
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

SpringCurveData springCurves(const Car& car, const SpringFindings& found, double travel,
                             std::span<const LineFigures> there, int chosen) {
    const SuspensionPart& part = car.springs[static_cast<std::size_t>(chosen)];
    const QString name = springName(car, chosen);
    const std::vector<std::size_t> lines = found.linesOf(chosen);
    SpringCurveData data;
    data.span = {-car.travel.droop, car.travel.bump, car.travel.steps};
    data.travel = found.sweep.travel;
    data.past = pastEnds(found.room, car.travel);
    data.cursor = travel;
    data.units = car.units;
    data.part = chosen;
    const QString unreached = tr("The links reach nowhere.");
    data.cards[0] = {.title = tr("Length"),
                     .quantity = Quantity::length,
                     .minimumSpan = kLeastLengthSpan,
                     .curves = sideCurves(found, there, lines, name, &LineFigures::length),
                     .limits = limitsOf(part),
                     .absent = unreached};
    data.cards[1] = {.title = tr("Motion ratio"),
                     .quantity = Quantity::ratio,
                     .minimumSpan = kLeastRatioSpan,
                     .curves = sideCurves(found, there, lines, name, &LineFigures::motionRatio),
                     .limits = {},
                     .absent = unreached};
    data.cards[2] = rateCard(found, travel, there, chosen, name);
    return data;
}

}  // namespace bolthole
