#include "widgets/papers/wall_chart_words.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/kit/print_type.h"
#include "widgets/words/figure_words.h"

namespace bolthole {

namespace {

constexpr double kBehindWords = 3.0;  // digit height, mm
constexpr QChar kTimes(0x00D7);

// A whole number with a typographic minus.
QString wholeText(double value) {
    if (!std::isfinite(value)) {
        return kDash;
    }
    const QString digits = QString::number(std::abs(std::round(value)), 'f', 0);
    return std::round(value) < 0 ? kMinus + digits : digits;
}

}  // namespace

QString turnWords(double turns) {
    const long quarters = std::lround(4 * std::abs(turns));
    if (quarters == 0) {
        return {};
    }
    constexpr std::array<const char*, 4> kParts{"", "1/4", "1/2", "3/4"};
    QStringList parts{quarters >= 4 ? QString::number(quarters / 4) : QString(),
                      QString::fromLatin1(kParts[static_cast<std::size_t>(quarters % 4)]),
                      quarters <= 4 ? tr("turn") : tr("turns")};
    parts.removeAll(QString());
    return parts.join(' ');
}

ChartWords::ChartWords(const Car& car, const ChartCombinations& chart, LengthTreatment lengths,
                       NumberStyle style, QString powers)
    : car_(car), chart_(chart), lengths_(lengths), style_(style), powers_(std::move(powers)) {}

QString ChartWords::linkName(int link) const {
    return fromView(linkWords(car_, link));
}

QString ChartWords::holeName(int link, End end, int hole) const {
    const std::string& name =
        car_.links[static_cast<std::size_t>(link)].bracket(end).holes[static_cast<std::size_t>(hole)].name;
    return name.empty() ? QString::number(hole + 1) : fromView(name);
}

QString ChartWords::measure(double value, Quantity quantity) const {
    return fromView(withUnit(figureText(value, quantity, style_.units), quantity, style_.units));
}

QString ChartWords::lengthText(double metres) const {
    return tapeLengthText(metres, style_);
}

LengthWords ChartWords::lengthOf(const HoleCombination& combination, int link) const {
    const auto index = static_cast<std::size_t>(link);
    const QString unit = fromView(unitMark(Quantity::length, style_.units));
    LengthWords words{linkName(link) + ' ' + lengthText(combination.length[index]) + ' ' + unit, {}};
    const double change = combination.lengthChange[index];
    const std::optional<Adjuster>& adjuster = car_.links[index].adjuster;
    if (adjuster) {
        // A single threaded end goes by half turns, which adjusterTurns() minds.
        const double turns = adjusterTurns(change, *adjuster);
        const QString said = turnWords(turns);
        words.work = said.isEmpty() ? said : (turns < 0 ? kMinus : QChar('+')) + said;
    } else if (tapeTells(car_, change, 0)) {  // nobody makes a new one for less
        words.work = tr("new link");
    }
    return words;
}

std::vector<LengthWords> ChartWords::lengthsAt(const HoleCombination* combination,
                                               LengthPosition place) const {
    std::vector<LengthWords> words;
    for (const ChartRod& rod : chart_.rods) {
        if (combination != nullptr && rod.place == place) {
            words.push_back(lengthOf(*combination, rod.link));
        }
    }
    return words;
}

std::vector<LengthWords> ChartWords::rowLengths(int row) const {
    return lengthsAt(chart_.inRow(row), LengthPosition::row);
}

std::vector<LengthWords> ChartWords::columnLengths(int column) const {
    return lengthsAt(chart_.inColumn(column), LengthPosition::column);
}

std::vector<TextRun> ChartWords::instantCenter(const HoleCombination& combination) const {
    const double ahead = combination[Figure::icX];
    if (!(std::abs(ahead) <= kFarAway)) {
        return {{kInfinity, digit_height::kInstantCenter}};
    }
    const double unit = shownUnit(Quantity::length, style_.units);
    const QString mark = ' ' + fromView(unitMark(Quantity::length, style_.units));
    const QString high = ' ' + QString(kTimes) + ' ' + wholeText(combination[Figure::icZ] / unit);
    const QString distance = wholeText(std::abs(ahead) / unit);
    if (ahead < 0) {
        return {{distance, digit_height::kInstantCenter},
                {mark + tr(" behind"), kBehindWords},
                {high, digit_height::kInstantCenter}};
    }
    return {{distance + high, digit_height::kInstantCenter}, {mark, digit_height::kTravelEnds}};
}

CellWords ChartWords::cell(int row, int column) const {
    const HoleCombination& combination = chart_.at(row, column);
    CellWords words;
    words.assembled = combination.assembled;
    words.problems = problems(combination);
    words.antiSquat = wholeText(combination[Figure::antiSquat]);
    if (!combination.assembled) {
        return words;
    }
    words.instantCenter = instantCenter(combination);
    words.droop = tr("droop ") + wholeText(combination.antiSquatDroop);
    words.bump = tr("bump ") + wholeText(combination.antiSquatBump);
    words.lengths = lengthsAt(&combination, LengthPosition::cell);
    return words;
}

QString ChartWords::problem(const HoleCombination& combination, CombinationProblem which) const {
    const HoleCombination::Detail& detail = combination.details[static_cast<std::size_t>(which)];
    const QString link = detail.link < 0 ? QString() : linkName(detail.link);
    const QString length = measure(std::abs(static_cast<double>(detail.value)), Quantity::length);
    const QString angle = measure(static_cast<double>(detail.value), Quantity::angle);
    switch (which) {
        case CombinationProblem::notAssembled:
            return tr("can't be assembled") + (link.isEmpty() ? "" : ": " + link + " won't reach");
        case CombinationProblem::droopRunsOut:
            return link + tr(" stops travel at ") + length + tr(" droop");
        case CombinationProblem::bumpRunsOut:
            return link + tr(" stops travel at ") + length + tr(" bump");
        case CombinationProblem::frontJoint:
            return tr("front joint angle ") + angle;
        case CombinationProblem::rearJoint:
            return tr("rear joint angle ") + angle;
        case CombinationProblem::rodEnd:
            return link + tr(" rod-end misalignment ") + angle;
        case CombinationProblem::tooShort:
            return link + tr(" can't be set so short");
        case CombinationProblem::tooLong:
            return link + tr(" can't be set so long");
        case CombinationProblem::thread:
            return link + tr(" holds only ") + length + tr(" of thread");
        case CombinationProblem::crossing:
            return link + tr(" and ") + linkName(detail.other) + tr(" cross");
        case CombinationProblem::count:
            break;
    }
    return {};
}

QStringList ChartWords::problems(const HoleCombination& combination) const {
    QStringList words;
    for (std::size_t which = 0; which < kCombinationProblems; ++which) {
        if (combination.has(static_cast<CombinationProblem>(which))) {
            words << problem(combination, static_cast<CombinationProblem>(which)).trimmed();
        }
    }
    return words;
}

// "lower left" with "lower right" is "lower left and right".
QString ChartWords::bracketWords(const ChartBracket& bracket) const {
    QString name = linkName(bracket.link);
    if (bracket.tiedLink < 0) {
        return name;
    }
    const QString other = linkName(bracket.tiedLink);
    const auto same = std::ranges::mismatch(name, other).in1 - name.begin();
    const qsizetype word = name.left(same).lastIndexOf(' ') + 1;
    return name + tr(" and ") + other.mid(word);
}

std::vector<HoleWords> ChartWords::holes(const HoleAxis& axis, int index) const {
    const bool severalLinks = std::ranges::any_of(
        axis.brackets, [&](const ChartBracket& one) { return one.link != axis.brackets.front().link; });
    std::vector<HoleWords> words;
    for (std::size_t place = 0; place < axis.brackets.size(); ++place) {
        const ChartBracket& bracket = axis.brackets[place];
        const int hole = axis.hole(place, index);
        HoleWords one{{}, holeName(bracket.link, bracket.end, hole)};
        const Bracket& there = car_.links[static_cast<std::size_t>(bracket.link)].bracket(bracket.end);
        if (there.holes[static_cast<std::size_t>(hole)].planned) {
            one.hole = tr("%1, planned").arg(one.hole);
        }
        if (axis.brackets.size() > 1) {
            one.label = said(endWords(bracket.end));
        }
        if (severalLinks) {
            one.label = bracketWords(bracket) + ' ' + one.label;
        }
        words.push_back(std::move(one));
    }
    return words;
}

QString ChartWords::title(const HoleAxis& axis) const {
    QString title;
    for (std::size_t place = 0; place < axis.brackets.size(); ++place) {
        const ChartBracket& bracket = axis.brackets[place];
        const bool both = place + 1 < axis.brackets.size() && axis.brackets[place + 1].link == bracket.link;
        title += title.isEmpty() ? QString() : QStringLiteral("; ");
        title += bracketWords(bracket).toUpper() + QStringLiteral(", ") +
                 (both                          ? tr("chassis and axle holes")
                  : bracket.end == End::chassis ? tr("chassis hole")
                                                : tr("axle hole"));
        place += both ? 1 : 0;
    }
    return title;
}

QString ChartWords::shade(int step) const {
    const ShadeScale& shades = chart_.shades;
    const double low = shades.first + step * shades.width;
    const double high = low + shades.width - 1;
    if (step == 0 && shades.isOpenBelow) {
        return tr("to ") + wholeText(high);
    }
    if (step == shades.steps - 1 && shades.isOpenAbove) {
        return tr("from ") + wholeText(low);
    }
    return wholeText(low) + (high > low ? tr(" to ") + wholeText(high) : QString());
}

QString farAwayWords(Units units) {
    const QString far = units == Units::inch ? tr("%1 in").arg(kFarAway / kMetresPerInch, 0, 'f', 0)
                                             : tr("%1 m").arg(kFarAway, 0, 'f', 1);
    return tr("\u221E: links parallel in side view, or the instant center over %1 away.").arg(far);
}

}  // namespace bolthole
