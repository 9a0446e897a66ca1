#include "widgets/pages/target/target_words.h"

#include <QStringList>
#include <cmath>

#include "widgets/board/combination_columns.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"
#include "widgets/words/figure_words.h"

namespace bolthole {

namespace {

constexpr double kNoTurn = 0.05 * kRadiansPerDegree;

QString figure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units));
}

QString quoted(const Bracket& bracket, int hole) {
    const QString name = holeName(bracket, hole);
    return bracket.holes[static_cast<std::size_t>(hole)].name.empty() ? name
                                                                      : QStringLiteral("'%1'").arg(name);
}

QString endWord(End end) {
    return end == End::axle ? tr("axle") : tr("chassis");
}

QString placeWords(const HoleCombination& combination, Units units) {
    const double distance = combination[Figure::icX];
    if (std::isnan(distance)) {
        return tr("IC infinitely far");
    }
    const QString way = distance < 0 ? tr("behind") : tr("ahead");
    return tr("IC %1 %2, %3 up")
        .arg(figure(std::abs(distance), Quantity::length, units), way,
             figure(combination[Figure::icZ], Quantity::length, units));
}

QString figuresOf(const HoleCombination& combination, Units units) {
    if (!combination.assembled) {
        return tr("can't be assembled");
    }
    QStringList said{
        placeWords(combination, units),
        tr("anti-squat %1").arg(figure(combination[Figure::antiSquat], Quantity::percent, units))};
    const double change = combination.antiSquatBump - combination.antiSquatDroop;
    if (!std::isnan(change)) {
        said << tr("%1 through travel").arg(signedText(figure(change, Quantity::percent, units)));
    }
    if (std::abs(combination.pinionChange) > kNoTurn) {
        said << tr("pinion %1").arg(signedText(figure(combination.pinionChange, Quantity::angle, units)));
    }
    return said.join(QStringLiteral(" · "));
}

QString joined(const std::vector<TargetMiss>& misses, Units units) {
    QStringList said;
    for (const TargetMiss& miss : misses) {
        said << QString::fromStdString(wordsFor(miss, units));
    }
    return said.join(QStringLiteral(", "));
}

/// What every rod but those to be left out needs for its length.
QStringList rodWork(const HoleCombination& combination, const Car& car) {
    QStringList said;
    const NumberStyle style{car.units, InchStyle::thirtySeconds};
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        const QString work = rodWorkText(car, car.links[link], combination.lengthChange[link]);
        if (!work.isEmpty()) {
            said << tr("%1: %2, %3 %4")
                        .arg(linkName(car, static_cast<int>(link)), work,
                             tapeLengthText(combination.length[link], style),
                             unitText(Quantity::length, car.units));
        }
    }
    return said;
}

QString boltWords(const HoleCombination& combination, const Car& car) {
    QStringList bolts;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = car.links[static_cast<std::size_t>(link)].bracket(end);
            const int hole = combination.use.of(link, end);
            if (hole != bracket.use) {
                const bool isPlanned = bracket.holes[static_cast<std::size_t>(hole)].planned;
                bolts << (isPlanned ? tr("%1 %2 to %3, not drilled yet") : tr("%1 %2 to %3"))
                             .arg(linkName(car, link), endWord(end), quoted(bracket, hole));
            }
        }
    }
    QStringList said;
    if (!bolts.isEmpty()) {
        said << tr("Bolt %1").arg(bolts.join(QStringLiteral(", ")));
    }
    said += rodWork(combination, car);
    return said.isEmpty() ? tr("As it is bolted now") : capitalized(said.join(QStringLiteral("; ")));
}

AnswerRow rowOf(const TargetAnswer& answer, const Car& car) {
    AnswerRow row;
    row.figures = figuresOf(answer.combination, car.units);
    row.isMiss = !answer.misses.empty();
    if (!row.isMiss) {
        row.chance = chanceWords(answer.chance);
    }
    QStringList remarks;
    if (row.isMiss) {
        remarks << tr("Misses: %1").arg(joined(answer.misses, car.units));
    }
    if (const std::string problems = describeProblems(answer.combination, car, car.units);
        !problems.empty()) {
        remarks << tr("▲ %1").arg(QString::fromStdString(problems));
        row.isProblem = true;
    }
    row.remark = remarks.join(QStringLiteral(". "));
    return row;
}

QString stopWords(const std::vector<TargetStop>& stops, const Bracket* bracket) {
    QStringList said;
    for (const TargetStop& stop : stops) {
        switch (stop.kind) {
            case TargetStop::Kind::lowLimit:
            case TargetStop::Kind::highLimit:
                said << QString::fromStdString(
                    limitWords(stop.figure, stop.kind == TargetStop::Kind::highLimit));
                break;
            case TargetStop::Kind::edge:
                said << tr("edge distance");
                break;
            case TargetStop::Kind::hole:
                said << (bracket == nullptr ? tr("spacing")
                                            : tr("spacing to %1").arg(quoted(*bracket, stop.hole)));
                break;
            case TargetStop::Kind::shortest:
                said << tr("the adjuster's shortest");
                break;
            case TargetStop::Kind::longest:
                said << tr("the adjuster's longest");
                break;
        }
    }
    return said.join(QStringLiteral(", "));
}

void addStops(AnswerRow& row, const QString& stops) {
    if (!stops.isEmpty()) {
        row.remark += (row.remark.isEmpty() ? QString() : QStringLiteral(". ")) +
                      (row.isMiss ? tr("In the way: %1").arg(stops) : tr("Held by: %1").arg(stops));
    }
}

double steppedTo(double length, Units units) {
    const double step = units == Units::inch ? kMetresPerInch / 32 : 0.0005;
    return std::round(length / step) * step;
}

}  // namespace

QString chanceWords(double chance) {
    if (std::isnan(chance)) {
        return QString(QChar(0x2014));
    }
    if (chance > 0.99) {
        return tr("more than 99 in 100");
    }
    if (chance < 0.01) {
        return tr("less than 1 in 100");
    }
    const int tenths = static_cast<int>(std::lround(10 * chance));
    const QString percent = tr("%1 %").arg(std::lround(100 * chance));
    return tenths == 0 || tenths == 10 ? tr("%1 in 100").arg(std::lround(100 * chance))
                                       : tr("%1 in 10 (%2)").arg(tenths).arg(percent);
}

QString offsetWords(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const QString& name,
                    Units units) {
    const NumberStyle style{units, InchStyle::thirtySeconds};
    const auto part = [&](double by, const QString& plus, const QString& minus) {
        const double rounded = steppedTo(by, units);
        const std::string text = fieldText(std::abs(rounded), Quantity::length, style);
        return rounded == 0 ? QString()
                            : tr("%1 %2").arg(QString::fromStdString(withUnit(text, Quantity::length, units)),
                                              rounded > 0 ? plus : minus);
    };
    QStringList said{part(to.z() - from.z(), tr("above"), tr("below")),
                     part(to.x() - from.x(), tr("ahead of"), tr("behind"))};
    said.removeAll(QString());
    return said.isEmpty() ? tr("at %1").arg(name) : tr("%1 %2").arg(said.join(tr(" and ")), name);
}

std::vector<AnswerRow> combinationRows(const std::vector<TargetAnswer>& answers, const Car& car,
                                       LengthTreatment lengths) {
    std::vector<AnswerRow> rows;
    for (const TargetAnswer& answer : answers) {
        AnswerRow row = rowOf(answer, car);
        row.what = boltWords(answer.combination, car);
        if (answer.combination.boltsMoved > 0 || !rodWork(answer.combination, car).isEmpty()) {
            row.edit = ChooseHoles{answer.combination.use, lengths};
            row.action = tr("Bolt it");
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<AnswerRow> holeRows(const std::vector<NewHole>& holes, const Car& car, NumberStyle style) {
    std::vector<AnswerRow> rows;
    for (const NewHole& hole : holes) {
        const Bracket& bracket = car.links[static_cast<std::size_t>(hole.edit.link)].bracket(hole.edit.end);
        const QString name =
            tr("the %1 %2 bracket").arg(linkName(car, hole.edit.link), endWord(hole.edit.end));
        if (!hole.hasRoom) {
            AnswerRow none;
            none.what = tr("No room for another hole in %1").arg(name);
            none.remark = tr("In the way: edge distance and the spacing to the holes that are there");
            none.isMiss = true;
            rows.push_back(std::move(none));
            continue;
        }
        AnswerRow row = rowOf(hole.answer, car);
        row.what = tr("Drill %1 %2")
                       .arg(name, offsetWords(bracket.holes[static_cast<std::size_t>(hole.nearest)].at,
                                              hole.edit.hole.at, quoted(bracket, hole.nearest), style.units));
        if (const QStringList work = rodWork(hole.answer.combination, car); !work.isEmpty()) {
            row.what += QStringLiteral("; ") + work.join(QStringLiteral("; "));
        }
        addStops(row, stopWords(hole.stops, &bracket));
        row.edit = hole.edit;
        row.action = tr("Plan it");
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<AnswerRow> lengthRows(const std::vector<NewLength>& lengths, const Car& car, NumberStyle style) {
    std::vector<AnswerRow> rows;
    for (const NewLength& each : lengths) {
        const Link& rod = car.links[static_cast<std::size_t>(each.link)];
        AnswerRow row = rowOf(each.answer, car);
        const QString work = rodWorkText(car, rod, each.change);
        row.what = work.isEmpty() ? tr("Leave %1 as long as it is").arg(linkName(car, each.link))
                                  : tr("Set %1 to %2: %3")
                                        .arg(linkName(car, each.link),
                                             tapeLengthText(each.length, style) + u' ' +
                                                 unitText(Quantity::length, style.units),
                                             work);
        addStops(row, stopWords(each.stops, nullptr));
        if (!work.isEmpty()) {
            row.edit = SetNumber{
                {.field = Field::linkLength, .link = each.link}, each.length, SetNumber::By::workedOut};
            row.action = tr("Set it");
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

QString bestInWords(const TargetAnswers& answers, const Car& car, NumberStyle style) {
    if (!answers.problem.empty()) {
        return QString::fromStdString(answers.problem);
    }
    std::vector<AnswerRow> rows = combinationRows(answers.meeting, car, LengthTreatment::keep);
    for (const AnswerRow& row : holeRows(answers.holes, car, style)) {
        rows.push_back(row);
    }
    for (const AnswerRow& row : lengthRows(answers.lengths, car, style)) {
        rows.push_back(row);
    }
    for (const AnswerRow& row : rows) {
        if (!row.isMiss) {
            return row.what;
        }
    }
    rows = combinationRows(answers.nearest, car, LengthTreatment::keep);
    return rows.empty() ? tr("nothing meets it") : tr("nothing meets it; nearest: %1").arg(rows.front().what);
}

}  // namespace bolthole
