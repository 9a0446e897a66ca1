#include "widgets/pages/springs/spring_facts.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/springs/spring_findings.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

namespace {

constexpr double kGravity = 9.80665;  // m/s^2, standard (BIPM, SI brochure; from memory)
const QString kUnknown(QChar(0x2014));

QString shown(double value, Quantity quantity, Units units) {
    return std::isnan(value)
               ? kUnknown
               : QString::fromStdString(withUnit(fineFigureText(value, quantity, units), quantity, units));
}

QString rounded(double value, Quantity quantity, Units units) {
    return std::isnan(value)
               ? kUnknown
               : QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units));
}

// What the part's figures begin with: its name in letters and digits, and where parts would share that, its
// place in the car.
std::string partId(const Car& car, int item) {
    const auto idOf = [&car](std::size_t part) {
        return snakeCase(springName(car, static_cast<int>(part)).toStdString());
    };
    std::string id = idOf(static_cast<std::size_t>(item));
    for (std::size_t other = 0; other < car.springs.size(); ++other) {
        if (static_cast<int>(other) != item && idOf(other) == id) {
            return id + '_' + std::to_string(item + 1);
        }
    }
    return id;
}

/// Writes the rows of one part.
class PartWriter {
  public:
    PartWriter(const Car& car, const SpringFindings& found, int item)
        : part_(car.springs[static_cast<std::size_t>(item)]),
          units_(car.units),
          found_(found),
          item_(item),
          prefix_(partId(car, item)),
          lines_(found.linesOf(item)) {}

    [[nodiscard]] std::vector<Fact> write();

  private:
    void length();
    void room(std::optional<TravelEnd> LineRoom::*end, const QString& label, bool bump);
    void meets();
    void motionRatio();
    void force();
    void wheelRate();
    [[nodiscard]] QString whyNoRoom(bool bump) const;
    [[nodiscard]] QString lengthRemark() const;
    [[nodiscard]] const LineFigures& ride(std::size_t of = 0) const { return found_.ride[lines_[of]]; }
    [[nodiscard]] std::string id(std::string_view figure) const {
        return prefix_ + '_' + std::string(figure);
    }
    // The right side's, where the remark says it.
    [[nodiscard]] std::vector<FactNumber> rightOf(std::string_view name, double LineFigures::*figure,
                                                  Quantity quantity) const {
        return lines_.size() == 2 ? std::vector{fineNumber(id(name), ride(1).*figure, quantity)}
                                  : std::vector<FactNumber>{};
    }
    [[nodiscard]] const LineRoom& roomOf(std::size_t line) const { return found_.room.lines[line]; }
    [[nodiscard]] bool sidesDiffer(double LineFigures::*figure, double by) const {
        return lines_.size() == 2 && std::abs(ride(0).*figure - ride(1).*figure) > by;
    }

    const SuspensionPart& part_;
    Units units_;
    const SpringFindings& found_;
    int item_;
    std::string prefix_;
    std::vector<std::size_t> lines_;
    std::vector<Fact> facts_;
};

std::vector<Fact> PartWriter::write() {
    length();
    room(&LineRoom::bump, tr("Bump left"), true);
    room(&LineRoom::droop, tr("Droop left"), false);
    meets();
    motionRatio();
    if (part_.rate || part_.push != 0 || part_.carries()) {
        force();
        wheelRate();
    }
    return std::move(facts_);
}

QString PartWriter::lengthRemark() const {
    if (sidesDiffer(&LineFigures::length, kSidesDiffer)) {
        return tr("left; right %1").arg(shown(ride(1).length, Quantity::length, units_));
    }
    if (!part_.freeLength) {
        return {};
    }
    const double squeezed = *part_.freeLength - ride().length;
    if (squeezed <= 0 && part_.kind == PartKind::bumpStop) {
        return tr("clear of its pad by %1").arg(shown(-squeezed, Quantity::length, units_));
    }
    return squeezed > 0 ? tr("squeezed by %1").arg(shown(squeezed, Quantity::length, units_))
                        : tr("loose: %1 longer than free").arg(shown(-squeezed, Quantity::length, units_));
}

void PartWriter::length() {
    const bool slack = part_.kind == PartKind::spring || part_.kind == PartKind::coilOver;
    const bool loose = slack && part_.freeLength && ride().length >= *part_.freeLength;
    facts_.push_back({tr("Length at ride"),
                      shown(ride().length, Quantity::length, units_),
                      lengthRemark(),
                      loose,
                      fineNumber(id("length_ride"), ride().length, Quantity::length),
                      {},
                      rightOf("length_right_ride", &LineFigures::length, Quantity::length)});
    if (part_.freeLength) {
        facts_.back().others.push_back(
            fineNumber(id("squeezed_ride"), *part_.freeLength - ride().length, Quantity::length));
    }
}

QString PartWriter::whyNoRoom(bool bump) const {
    const bool known = part_.closedLength || part_.openLength;
    if (known && ((bump && part_.closedLength) || (!bump && part_.openLength))) {
        return tr("its limit is farther out than %1 of travel or the links' reach")
            .arg(shown(kFarthestTravel, Quantity::length, units_));
    }
    if (bump) {
        return part_.kind == PartKind::strap ? tr("slack in bump: it stops droop only")
                                             : tr("not known: no compressed length entered");
    }
    if (part_.kind == PartKind::spring || part_.kind == PartKind::bumpStop) {
        return tr("it stops no droop");
    }
    return part_.kind == PartKind::strap ? tr("not known: no taut length entered")
                                         : tr("not known: no extended length entered");
}

void PartWriter::room(std::optional<TravelEnd> LineRoom::*end, const QString& label, bool bump) {
    std::optional<TravelEnd> first;
    for (const std::size_t line : lines_) {
        const std::optional<TravelEnd>& each = roomOf(line).*end;
        if (each && (!first || each->before(*first))) {
            first = each;
        }
    }
    if (!first) {
        facts_.push_back({label, kUnknown, whyNoRoom(bump)});
        return;
    }
    const bool closed = first->stop == TravelStop::closed;
    const QString limit = shown(closed ? part_.closedLength.value_or(0) : part_.openLength.value_or(0),
                                Quantity::length, units_);
    const std::vector left{
        fineNumber(id(bump ? "bump_left" : "droop_left"), std::max(0.0, first->travel), Quantity::length)};
    if (first->travel > 0) {
        facts_.push_back({label,
                          shown(first->travel, Quantity::length, units_),
                          closed ? tr("until it is compressed at %1").arg(limit)
                                 : tr("until it is extended at %1").arg(limit),
                          false,
                          FactNumber{},
                          {},
                          left});
        return;
    }
    facts_.push_back({label,
                      rounded(0, Quantity::length, units_),
                      closed ? tr("▲ past its compressed length of %1 already at ride").arg(limit)
                             : tr("▲ past its extended length of %1 already at ride").arg(limit),
                      true,
                      FactNumber{},
                      {},
                      left});
}

void PartWriter::meets() {
    if (!part_.freeLength || !roomOf(lines_.front()).free) {
        return;
    }
    const double at = *roomOf(lines_.front()).free;
    const QString where =
        tr(at < 0 ? "%1 of droop" : "%1 of bump").arg(shown(std::abs(at), Quantity::length, units_));
    const bool stop = part_.kind == PartKind::bumpStop;
    const bool isLooseAtRide = !stop && at > 0;
    facts_.push_back({stop            ? tr("Meets its pad")
                      : isLooseAtRide ? tr("Begins to push")
                                      : tr("Comes loose"),
                      at == 0 ? tr("at ride") : where,
                      stop            ? tr("from there on it pushes")
                      : isLooseAtRide ? tr("at its free length; loose at ride")
                                      : tr("at its free length"),
                      false,
                      FactNumber{},
                      {},
                      {fineNumber(id(stop ? "meets_pad" : "comes_loose"), at, Quantity::length)}});
}

void PartWriter::motionRatio() {
    QString remark = tr("it shortens by this much for each unit both wheels rise");
    if (sidesDiffer(&LineFigures::motionRatio, 0.005)) {
        remark = tr("left; right %1").arg(shown(ride(1).motionRatio, Quantity::ratio, units_));
    }
    facts_.push_back({tr("Motion ratio at ride"),
                      shown(ride().motionRatio, Quantity::ratio, units_),
                      remark,
                      false,
                      fineNumber(id("motion_ratio_ride"), ride().motionRatio, Quantity::ratio),
                      {},
                      rightOf("motion_ratio_right_ride", &LineFigures::motionRatio, Quantity::ratio)});
}

void PartWriter::force() {
    const bool known = part_.rate || part_.push != 0;
    facts_.push_back({tr("Pushes at ride"), known ? rounded(ride().force, Quantity::force, units_) : kUnknown,
                      known ? tr("each, along its own line") : tr("not known: no rate and free length"),
                      false,
                      known ? plainNumber(id("force_ride"), ride().force, Quantity::force) : FactNumber{}});
}

void PartWriter::wheelRate() {
    const QString label = tr("Wheel rate it makes");
    if (!part_.rate && part_.push == 0) {
        facts_.push_back({label, kUnknown, tr("not known: no rate entered")});
        return;
    }
    const double whole = found_.wheelRateOf(item_, found_.ride);
    double squared = 0;
    for (const std::size_t line : lines_) {
        const LineFigures& figures = found_.ride[line];
        squared += part_.rateAt(figures.length) * figures.motionRatio * figures.motionRatio / 2;
    }
    const QString value = rounded(whole, Quantity::rate, units_);
    if (squared > 0) {
        facts_.push_back({label,
                          value,
                          tr("each wheel: rate × motion ratio² gives %1, its leaning under load %2")
                              .arg(rounded(squared, Quantity::rate, units_),
                                   signedText(rounded(whole - squared, Quantity::rate, units_))),
                          false,
                          plainNumber(id("wheel_rate_ride"), whole, Quantity::rate),
                          {},
                          {plainNumber(id("wheel_rate_by_ratio_ride"), squared, Quantity::rate)}});
        return;
    }
    facts_.push_back({label,
                      value,
                      part_.push == 0 ? tr("none at ride: nothing squeezes it there")
                                      : tr("each wheel, from its leaning under the gas force alone"),
                      false,
                      FactNumber{},
                      {},
                      {plainNumber(id("wheel_rate_ride"), whole, Quantity::rate)}});
}

Fact endFact(const TravelEnd& end, bool bump, const Car& car, const SpringFindings& found) {
    const QString words = QString::fromStdString(describe(end, bump, found.room, found.parts, car.units));
    return {bump ? tr("Bump") : tr("Droop"),
            shown(end.travel, Quantity::length, car.units),
            (isPast(end) ? QStringLiteral("▲ ") : QString()) + capitalized(words),
            isPast(end),
            FactNumber{},
            {},
            {fineNumber(bump ? "bump_end" : "droop_end", end.travel, Quantity::length)}};
}

QString againstScales(const SpringBalance& balance, Units units) {
    const auto words = [units](double force) { return rounded(force, Quantity::force, units); };
    const std::optional<double> excess = balance.excess();
    if (!excess) {
        return tr("the rear tires carry %1 by the corner weights, axle and wheels with it")
            .arg(words(balance.weighed));
    }
    const QString left = tr("the scales leave them %1, the axle's own %2 taken off")
                             .arg(words(balance.weighed - *balance.axle), words(*balance.axle));
    const QString by = words(std::abs(*excess));
    return *excess < 0 ? tr("%1 too little: %2").arg(by, left) : tr("%1 too much: %2").arg(by, left);
}

Fact carriedFact(const Car& car, const SpringFindings& found) {
    const SpringBalance balance = springBalance(car, found.carried());
    const QString scales = againstScales(balance, car.units);
    const bool isWrong = balance.hasWarning();
    return {tr("Springs carry at ride"),
            rounded(balance.carried, Quantity::force, car.units),
            isWrong ? tr("▲ %1: a length, rate, mount or weight is wrong").arg(scales) : scales,
            isWrong,
            plainNumber("springs_carry_ride", balance.carried, Quantity::force),
            {},
            {plainNumber("rear_tires_carry", balance.weighed, Quantity::force)}};
}

Fact inUseFact(const Car& car, const SpringFindings& found) {
    const Units units = car.units;
    std::vector<FactNumber> inUse;
    if (found.stance.stance.rear) {
        inUse.push_back(plainNumber("wheel_rate_in_use", found.stance.stance.rear->wheel, Quantity::rate));
    }
    switch (found.stance.rear) {
        case RearRateSource::entered:
            return {tr("In use elsewhere"),
                    rounded(found.stance.stance.rear->wheel, Quantity::rate, units),
                    tr("the rate entered on the Weights page; empty that field to use the springs' own"),
                    false,
                    FactNumber{},
                    {},
                    inUse};
        case RearRateSource::springs:
            return {tr("In use elsewhere"),
                    rounded(found.stance.stance.rear->wheel, Quantity::rate, units),
                    tr("the springs' own: none is entered on the Weights page"),
                    false,
                    FactNumber{},
                    {},
                    inUse};
        case RearRateSource::none:
            break;
    }
    return {tr("In use elsewhere"), kUnknown, tr("not known: none entered, and no spring here makes one")};
}

}  // namespace

bool isPast(const TravelEnd& end) {
    return end.stop != TravelStop::range;
}

std::vector<Fact> partFacts(const Car& car, const SpringFindings& found, int item) {
    const std::string& reason = found.refusals[static_cast<std::size_t>(item)];
    if (!reason.empty()) {
        return {{tr("Not computed"), kUnknown, QStringLiteral("▲ ") + QString::fromStdString(reason), true}};
    }
    return PartWriter(car, found, item).write();
}

std::vector<Fact> roomFacts(const Car& car, const SpringFindings& found) {
    return {endFact(found.room.bump, true, car, found), endFact(found.room.droop, false, car, found)};
}

CardFacts springCards(const Car& car, const SpringFindings& found) {
    CardFacts facts{rateFacts(car, found)};
    for (int item = 0; item < static_cast<int>(car.springs.size()); ++item) {
        facts.push_back(partFacts(car, found, item));
    }
    return facts;
}

QString missingLengths(const Car& car) {
    QStringList missing;
    for (std::size_t item = 0; item < car.springs.size(); ++item) {
        const SuspensionPart& part = car.springs[item];
        QStringList words;
        if (!part.closedLength && belongsTo(part.kind, Field::springClosedLength)) {
            words << tr("compressed");
        }
        if (!part.openLength && belongsTo(part.kind, Field::springOpenLength)) {
            words << (part.kind == PartKind::strap ? tr("taut") : tr("extended"));
        }
        if (!words.isEmpty()) {
            missing << tr("%1 (%2)").arg(springName(car, static_cast<int>(item)), words.join(tr(" and ")));
        }
    }
    return missing.isEmpty() ? QString()
                             : tr("Lengths not entered, so nobody knows what they end: %1.")
                                   .arg(missing.join(QStringLiteral(", ")));
}

std::vector<Fact> rateFacts(const Car& car, const SpringFindings& found) {
    std::vector<Fact> facts;
    if (found.made) {
        facts.push_back({tr("Springs make at ride"), rounded(found.made->wheel, Quantity::rate, car.units),
                         tr("each wheel, both moving alike, tire left out"), false,
                         plainNumber("wheel_rate_made", found.made->wheel, Quantity::rate)});
        facts.push_back(
            {tr("In roll"),
             found.made->roll ? shown(*found.made->roll, Quantity::rollRate, car.units) : kUnknown,
             found.made->roll ? tr("the axle leaning under the body, no bar, tires left out")
                              : tr("not known: the links do not hold the axle in roll"),
             false,
             found.made->roll ? fineNumber("roll_rate_made", *found.made->roll, Quantity::rollRate)
                              : FactNumber{}});
    } else {
        facts.push_back({tr("Springs make at ride"), kUnknown,
                         tr("not known: no spring with a rate and a free length pushes at ride")});
    }
    facts.push_back(inUseFact(car, found));
    if (found.carried() != 0) {
        facts.push_back(carriedFact(car, found));
    }
    return facts;
}

}  // namespace bolthole
