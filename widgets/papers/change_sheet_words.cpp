#include "widgets/papers/change_sheet_words.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/compare/difference_table.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/change_sheet_checks.h"
#include "widgets/papers/wall_chart_words.h"
#include "widgets/words/change_words.h"
#include "widgets/words/field_words.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

Ticks ticksFor(const Link& link) {
    switch (link.side) {
        case Side::both:
            return Ticks::both;
        case Side::left:
            return Ticks::left;
        case Side::right:
            return Ticks::right;
        case Side::center:
            break;
    }
    return Ticks::one;
}

bool isNothing(const QString& number) {
    return std::ranges::none_of(number, [](QChar c) { return c >= u'1' && c <= u'9'; });
}

class Writer {
  public:
    Writer(const Comparison& comparison, NumberStyle style) : comparison_(comparison), style_(style) {}

    SheetWords write() {
        words_.differs = anythingDiffers(comparison_);
        writeBolts();
        writeLengths();
        writeNumbers();
        writeUnshared();
        writeFigures();
        writeUncertainty();
        words_.problems = problemsOf(comparison_, style_.units);
        if (words_.differs) {
            words_.checks = checksOf(comparison_, style_);
        }
        const Station& ride = comparison_.after.ride;
        words_.pinionExpected = expected(ride[Figure::pinion]);
        words_.shaftExpected = expected(ride[Figure::driveshaft]);
        return std::move(words_);
    }

  private:
    [[nodiscard]] QString unit(Quantity quantity) const {
        const QString mark = unitText(quantity, style_.units);
        return mark.isEmpty() || quantity == Quantity::angle ? mark : ' ' + mark;
    }

    [[nodiscard]] QString expected(double angle) const {
        return std::isnan(angle)
                   ? QString()
                   : fromView(figureText(angle, Quantity::angle, style_.units)) + unit(Quantity::angle);
    }

    [[nodiscard]] const Link& linkOf(const SharedLink& pair) const {
        return comparison_.afterCar.links[static_cast<std::size_t>(pair.after)];
    }

    [[nodiscard]] QString nameOf(const SharedLink& pair) const {
        return capitalized(linkName(comparison_.afterCar, pair.after));
    }

    [[nodiscard]] bool hasFractions() const {
        return style_.units == Units::inch && style_.inches != InchStyle::decimal;
    }

    [[nodiscard]] QString inDecimals(double metres) const {
        return fromView(fineFigureText(metres, Quantity::length, style_.units));
    }

    [[nodiscard]] QString inParts(double metres, double parts) const {
        const double rounded = std::round(metres / kMetresPerInch * parts) / parts;
        return fromView(fieldText(rounded * kMetresPerInch, Quantity::length, style_)).replace('-', kMinus);
    }

    // As a tape shows it, to the style's step.
    [[nodiscard]] QString taped(double metres) const {
        if (!hasFractions()) {
            return inDecimals(metres);
        }
        return inParts(metres, style_.inches == InchStyle::sixteenths ? 16 : 32);
    }

    // Two lengths of a link that differ: to finer steps where they would look alike.
    [[nodiscard]] std::array<QString, 2> tapedApart(double one, double other) const {
        std::array<QString, 2> texts{tapeLengthText(one, style_), tapeLengthText(other, style_)};
        if (hasFractions() && texts[0] == texts[1]) {
            texts = {inParts(one, 64), inParts(other, 64)};
        }
        if (texts[0] == texts[1]) {
            texts = {inDecimals(one), inDecimals(other)};
        }
        return texts;
    }

    [[nodiscard]] QString shift(const Eigen::Vector3d& by) const {
        const std::array<std::array<QString, 2>, 3> ways{
            {{tr("forward"), tr("back")}, {tr("left"), tr("right")}, {tr("up"), tr("down")}}};
        QStringList parts;
        for (int axis = 0; axis < 3; ++axis) {
            const QString& way = ways[static_cast<std::size_t>(axis)][by[axis] < 0];
            const QString number = taped(std::abs(by[axis]));
            if (!isNothing(number)) {
                parts << number + unit(Quantity::length) + ' ' + way;
            }
        }
        return parts.isEmpty() ? tr("less than a tape shows") : parts.join(QStringLiteral(", "));
    }

    void writeBolts() {
        words_.bolts = {tr("Move these bolts"),
                        {},
                        {tr("link"), tr("end"), tr("from hole"), tr("to hole"), tr("which is"), tr("bolts")},
                        {},
                        {3},
                        {}};
        words_.holes = {tr("Holes that stand elsewhere"),
                        tr("moved, measured anew or recalculated"),
                        {tr("link"), tr("end"), tr("hole"), tr("now stands")},
                        {},
                        {},
                        {}};
        for (const BoltMove& move : comparison_.bolts) {
            const QString end = said(endWords(move.end));
            if (move.from == move.to) {
                words_.holes.rows.push_back({{nameOf(move.link), end, fromView(move.to), shift(move.by)}});
            } else {
                words_.bolts.rows.push_back({{nameOf(move.link), end, fromView(move.from), fromView(move.to),
                                              shift(move.by), QString::number(move.bolts)},
                                             ticksFor(linkOf(move.link))});
            }
        }
    }

    [[nodiscard]] QString adjusterWords(const LengthMove& move) const {
        const bool isLonger = move.after > move.before;
        if (!tapeTells(comparison_.afterCar, move.after, move.before)) {
            return tr("leave it: closer than the tape tells");
        }
        if (!move.turns) {
            return isLonger ? tr("new link, longer") : tr("new link, shorter");
        }
        const Car& owner =
            linkOf(move.link).adjuster.has_value() ? comparison_.afterCar : comparison_.beforeCar;
        const int index = &owner == &comparison_.afterCar ? move.link.after : move.link.before;
        const bool isSingle = owner.links[static_cast<std::size_t>(index)].adjuster->threadedEnds == 1;
        return quarterTurns(*move.turns, isLonger) + (isSingle ? tr(", one end taken off") : QString());
    }

    // "≈ 21 29/32" where the tape's mark is not the length itself.
    [[nodiscard]] QString nearly(const QString& taped, double metres) const {
        const bool isNear =
            hasFractions() && fieldText(metres, Quantity::length, style_).starts_with("\u2248");
        return isNear && !taped.contains(QChar(0x2248)) ? QStringLiteral("≈ ") + taped : taped;
    }

    // A length that nobody has written follows from the holes, and one worked out was never taped.
    [[nodiscard]] static QString whence(const Car& car, int link) {
        const FieldId length{.field = Field::linkLength, .link = link};
        if (!numberAt(car, length)) {
            return tr(" by its holes");
        }
        return isMeasured(car, length) ? QString() : tr(", not measured");
    }

    void writeLengths() {
        words_.lengths = {tr("Set these lengths"),
                          tr("bolt center to bolt center; the turns get near it, the length counts"),
                          {tr("link"), tr("from"), tr("to"), tr("adjuster"), tr("links")},
                          {},
                          {2, 3},
                          {}};
        for (const LengthMove& move : comparison_.lengths) {
            const std::array<QString, 2> texts = tapedApart(move.before, move.after);
            const QString mark = unit(Quantity::length);
            words_.lengths.rows.push_back(
                {{nameOf(move.link),
                  nearly(texts[0], move.before) + mark + whence(comparison_.beforeCar, move.link.before),
                  nearly(texts[1], move.after) + mark, adjusterWords(move), QString::number(move.rods)},
                 ticksFor(linkOf(move.link))});
        }
    }

    // As entered where that is a plain fraction, else with two decimals at most.
    [[nodiscard]] QString digits(double value, Quantity quantity) const {
        QString text = fromView(fieldText(value, quantity, style_)).replace('-', kMinus);
        const bool isRounded = text.contains('.') || text.contains(QChar(0x2248));
        return quantity == Quantity::length && isRounded ? inDecimals(value) : text;
    }
    [[nodiscard]] QString number(const std::optional<double>& value, Quantity quantity) const {
        return value ? digits(*value, quantity) + unit(quantity) : tr("none");
    }
    // Of fractions in decimals, else in those that before and after have.
    [[nodiscard]] QString numberChange(double before, double after, Quantity quantity) const {
        const QString from = digits(before, quantity);
        const QString to = digits(after, quantity);
        const bool isFraction = from.contains('/') || to.contains('/');
        return isFraction ? fineShownChange(before, after, quantity, style_.units) : textChange(from, to);
    }

    void writeNumbers() {
        words_.numbers = {tr("Other numbers that differ"),
                          {},
                          {tr("number"), tr("before"), tr("after"), tr("change")},
                          {},
                          {2},
                          {1, 2, 3}};
        for (const NumberMove& move : comparison_.numbers) {
            const Quantity quantity = quantityOf(move.id.field);
            const Car& owner = move.after ? comparison_.afterCar : comparison_.beforeCar;
            const QString change = move.before && move.after
                                       ? numberChange(*move.before, *move.after, quantity) + unit(quantity)
                                       : QString(kDash);
            words_.numbers.rows.push_back(
                {{capitalized(wordsFor(owner, move.id).name), number(move.before, quantity),
                  number(move.after, quantity), change}});
        }
    }

    void writeUnshared() {
        words_.unshared = {tr("Links only one of the cars has"),
                           tr("not compared"),
                           {tr("link"), tr("on the car")},
                           {},
                           {},
                           {}};
        for (const UnsharedLink& link : comparison_.unshared) {
            const QString name =
                link.name.empty() ? tr("A link without a name") : capitalized(fromView(link.name));
            words_.unshared.rows.push_back(
                {{name, link.inBefore ? tr("before only: take it off") : tr("after only: fit it")},
                 Ticks::one});
        }
    }

    // Past kFarAway neither distance nor height of an instant center says anything.
    [[nodiscard]] static bool isFarAway(const Station* station, Figure figure) {
        return station != nullptr && station->usable && (figure == Figure::icX || figure == Figure::icZ) &&
               !(std::abs((*station)[Figure::icX]) <= kFarAway);
    }

    [[nodiscard]] QString figureCell(const Station* station, Figure figure, double value) {
        if (isFarAway(station, figure)) {
            words_.hasFarAway = true;
            return kInfinity;
        }
        return fromView(fineFigureText(value, quantityOf(figure), style_.units));
    }

    // Kept as computed: it takes a sweep of each car.
    struct Uncertainties {
        TraceUncertainty before;
        TraceUncertainty after;
    };
    const Uncertainties& uncertainties() {
        if (!uncertainties_) {
            uncertainties_ = {computeUncertainty(comparison_.beforeCar),
                              computeUncertainty(comparison_.afterCar)};
        }
        return *uncertainties_;
    }
    [[nodiscard]] double uncertaintyOfChange(std::size_t place, Figure figure) {
        constexpr std::array<std::size_t, 3> kStations{0, kUncertaintyStations, 1};  // ride, bump, droop
        return uncertaintyOfDifference(uncertainties().before, uncertainties().after, kStations[place],
                                       static_cast<std::size_t>(figure));
    }
    [[nodiscard]] bool isUntold(std::size_t place, const FigureChange& change) {
        return cannotTellApart(change.change(), uncertaintyOfChange(place, change.figure));
    }

    void fillPlace(FigureLine& line, std::size_t place, Figure figure) {
        const Station* before = stationAt(comparison_.before, kTravelPositions[place]);
        const Station* after = stationAt(comparison_.after, kTravelPositions[place]);
        const std::vector<FigureChange> changes = changesAt(before, after);
        const FigureChange change = *std::ranges::find(changes, figure, &FigureChange::figure);
        const bool isFar = isFarAway(before, figure) || isFarAway(after, figure) || change.isThroughInfinity;
        const bool hasBoth = !std::isnan(change.change()) && !isFar;
        line.cells[place] = {
            figureCell(before, figure, change.before), figureCell(after, figure, change.after),
            hasBoth ? fineShownChange(change.before, change.after, quantityOf(figure), style_.units)
                    : QString(kDash)};
        line.tells[place] = change.tells();
        line.isSure[place] = change.tells() && !(hasBoth && isUntold(place, change));
    }

    void writeFigures() {
        QStringList quiet;
        for (const FigureChange& change : changesAt(stationAt(comparison_.before, TravelPosition::ride),
                                                    stationAt(comparison_.after, TravelPosition::ride))) {
            FigureLine line{figureWords(change.figure, style_.units), {}, {}};
            bool exists = false;
            for (std::size_t place = 0; place < kTravelPositions.size(); ++place) {
                fillPlace(line, place, change.figure);
                exists |= line.cells[place][0] != kDash || line.cells[place][1] != kDash;
            }
            const bool tells = std::ranges::any_of(line.tells, [](bool one) { return one; });
            if (tells) {
                words_.figures.push_back(std::move(line));
            } else if (exists) {
                quiet << figureWords(change.figure).toLower();
            }
        }
        if (!quiet.isEmpty()) {
            words_.quiet = tr("Unchanged, as far as a tape, an angle finder or a scale shows: ") +
                           quiet.join(QStringLiteral("; ")) + QStringLiteral(". ");
        }
        words_.quiet += tr("Anti-squat is computed with the CG height ") + heights() + '.';
    }

    // The changes at ride that tell, with ±, and what ± means.
    void writeUncertainty() {
        if (!words_.differs || !comparison_.before.ride.usable || !comparison_.after.ride.usable) {
            return;
        }
        QStringList told;
        QStringList untold;
        for (const FigureChange& change : changesAt(&comparison_.before.ride, &comparison_.after.ride)) {
            const Quantity quantity = quantityOf(change.figure);
            const double uncertainty = uncertaintyOfChange(0, change.figure);
            const QString plusMinus = uncertaintyWords(uncertainty, quantity, style_.units, Fineness::fine);
            if (!change.tells() || std::isnan(change.change()) || plusMinus.isEmpty() ||
                change.isThroughInfinity || isFarAway(&comparison_.before.ride, change.figure) ||
                isFarAway(&comparison_.after.ride, change.figure)) {
                continue;
            }
            const bool isUntold = cannotTellApart(change.change(), uncertainty);
            const QString by = fineShownChange(change.before, change.after, quantity, style_.units);
            (isUntold ? untold : told)
                << figureWords(change.figure).toLower() + ' ' + by + ' ' + plusMinus + unit(quantity);
        }
        addUncertainty(tr("Accuracy at ride: "), told);
        addUncertainty(tr("Here we ") + cannotTellWords() + tr(", the change is less than we can measure: "),
                       untold);
        if (!words_.accuracy.isEmpty()) {
            words_.accuracy << uncertaintyMeaning(comparison_.afterCar, style_.units);
        }
    }

    void addUncertainty(const QString& head, const QStringList& changes) {
        if (!changes.isEmpty()) {
            words_.accuracy << head + changes.join(QStringLiteral("; ")) + '.';
        }
    }

    // One height where both cars have it from the same place, else both.
    QString heights() const {
        const QString before = cgHeightWords(comparison_.beforeCar, style_);
        const QString after = cgHeightWords(comparison_.afterCar, style_);
        return before == after ? after : tr("before: ") + before + tr("; after: ") + after;
    }

    const Comparison& comparison_;
    NumberStyle style_;
    SheetWords words_;
    std::optional<Uncertainties> uncertainties_{};
};

}  // namespace

bool SheetTable::hasTicks() const {
    return std::ranges::any_of(rows, [](const SheetRow& row) { return row.ticks != Ticks::none; });
}

QString quarterTurns(double turns, bool isLonger) {
    const QString way = isLonger ? tr(" longer") : tr(" shorter");
    const QString said = turnWords(turns);
    return (said.isEmpty() ? tr("less than 1/4 turn") : said) + way;
}

SheetWords sheetWordsOf(const Comparison& comparison, NumberStyle style) {
    return Writer(comparison, style).write();
}

}  // namespace bolthole
