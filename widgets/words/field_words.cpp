#include "widgets/words/field_words.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

QString steps(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return tr(
                " Up and Down step by the chosen fraction (1 mm in metric), with Shift by 1 in (10 mm).");
        case Quantity::angle:
            return tr(" Up and Down step by 0.1°, with Shift by 1°.");
        case Quantity::ratio:
        case Quantity::density:
        case Quantity::time:
        case Quantity::damping:
            return tr(" Up and Down step by 0.1, with Shift by 1.");
        default:
            return tr(" Up and Down step by 1, with Shift by 10.");
    }
}

const char* underTheCar() {
    return "The car stands on its wheels on level ground, or on stands under the axle and the front "
           "suspension at "
           "the same ride height, wheels chocked: never under a car that a jack alone holds.";
}

QString holeHowTo(const FieldId& id, Side side) {
    if (id.axis == 0) {
        return tr("From the axle's centerline to the center of the bolt hole, along the car; plus is ahead "
                  "of the "
                  "axle. Drop a plumb bob from both, mark the floor, and tape between the marks. ") +
               tr(underTheCar());
    }
    if (id.axis == 2) {
        return (id.end == End::axle ? tr("From level ground straight up to the center of the bolt hole, the "
                                         "car at ride height; or from the axle's center, minus below it, "
                                         "where \u201cAxle holes from\u201d on the car sheet says so. ")
                                    : tr("From level ground straight up to the center of the bolt hole, the "
                                         "car at ride height. ")) +
               tr(underTheCar());
    }
    if (side == Side::both) {
        return tr("From the car's center plane out to the middle of the link's eye: half of what a tape "
                  "reads "
                  "between the left and the right one. ") +
               tr(underTheCar());
    }
    return tr("From the car's center plane to the middle of the link's eye; plus is to the driver's left "
              "when "
              "facing forward. ") +
           tr(underTheCar());
}

/// What a row asks a person to mind, in words; they follow how the number is measured.
QString cautionWords(Caution caution) {
    switch (caution) {
        case Caution::none:
            return {};
        case Caution::bench:
            return u' ' + tr(underTheCar());
        case Caution::lift:
            return tr(" Car on rated stands or a drive-on lift, wheels chocked, before you go under it.");
        case Caution::shaft:
            break;
    }
    return tr(
        " The car stands on its wheels on level ground, on ramps, or on rated stands under the axle and the "
        "front suspension at the same ride height, wheels chocked, transmission in neutral, ignition off and "
        "key out: turn the shaft by hand only, and never lie under a car that a jack alone holds.");
}

/// What the part is called that the number belongs to; empty where it is the car or one thing of it.
QString partName(const Car& car, const FieldId& id) {
    switch (ruleOf(id.field).scope) {
        case Scope::link:
            return linkName(car, id.link);
        case Scope::ballast:
            return QString::fromStdString(ballastWords(car, id.item));
        case Scope::spring:
            return QString::fromStdString(springWords(car, id.item));
        default:
            return {};
    }
}

FieldWords holeWords(const Car& car, const FieldId& id) {
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    const QString end = id.end == End::chassis ? tr("chassis hole") : tr("axle hole");
    const QString axis = axisWord(id.axis, link.side);
    return {axis,
            QStringLiteral("%1, %2 %3, %4")
                .arg(linkName(car, id.link), end, holeName(link.bracket(id.end), id.hole), axis),
            holeHowTo(id, link.side)};
}

/// Words of a number as its row has them.
FieldWords rowWords(const Car& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    const QString axis = rule.hasAxis ? axisWord(id.axis, Side::center) : QString();
    const QString part = partName(car, id);
    const QString plain = tr(std::string(rule.words).c_str());
    FieldWords words;
    words.name = rule.name == nullptr ? plain : tr(rule.name);
    for (const QString& given : {part, axis}) {
        words.name = given.isEmpty() ? words.name : words.name.arg(given);
    }
    words.label = rule.label == nullptr ? (axis.isEmpty() ? capitalized(words.name) : axis) : tr(rule.label);
    words.label = words.label.contains(u'%') ? words.label.arg(capitalized(part)) : words.label;
    const char* howTo = rule.howTo[rule.hasAxis ? static_cast<std::size_t>(id.axis) : 0];
    words.howTo = howTo == nullptr ? QString() : tr(howTo) + cautionWords(rule.caution);
    return words;
}

/// The words of a number whose part decides how it is measured; of all others, as their rows have them.
FieldWords numberFieldWords(const Car& car, const FieldId& id) {
    if (id.field == Field::holeAt) {
        return holeWords(car, id);
    }
    for (const auto& words : {springFieldWords(car, id), otherReadingWords(car, id)}) {
        if (words) {
            return *words;
        }
    }
    return rowWords(car, id);
}

/// A limit in the unit shown, rounded to the side that is allowed: at most four digits.
std::string limitText(double limit, Quantity quantity, Units units) {
    const double shown = limit / shownUnit(quantity, units);
    const double size = std::abs(shown);
    const double digit = size < 100      ? 0.1
                         : size < 10'000 ? 1.0
                                         : std::pow(10.0, std::floor(std::log10(size)) - 3);
    const double inside = std::trunc(shown / digit + (shown < 0 ? -1e-9 : 1e-9)) * digit;
    return plainDecimal(inside);
}

/// "a length above 0 and at most 3937 in": the row's own first words, then the limits as shown.
std::string limitWords(const Limits& limits, Quantity quantity, Units units) {
    const std::string what = say(limits.what);
    const std::string high = withUnit(limitText(limits.high, quantity, units), quantity, units);
    const std::string low = limitText(limits.low, quantity, units);
    if (!limits.lowIsOpen) {
        return say("%1 from %2 to %3", what, low, high);
    }
    return limits.highIsOpen ? say("%1 above %2 and below %3", what, low, high)
                             : say("%1 above %2 and at most %3", what, low, high);
}

}  // namespace

std::string refusalIn(const FieldId& id, double value, Units units) {
    std::string expected = refusal(id, value);
    const FieldRule& rule = ruleOf(id.field);
    const Limits& limits = id.uncertainty ? uncertaintyLimits(id.field) : *rule.limits;
    if (expected.empty() || unitMark(rule.quantity, units).empty() || rule.quantity == Quantity::percent ||
        limits.expected.find(" of 0 or more") != std::string_view::npos) {
        return expected;  // allowed, or without a unit
    }
    return limitWords(limits, rule.quantity, units);
}

FieldWords wordsFor(const Car& car, const FieldId& id) {
    if (id.uncertainty) {
        return fieldUncertaintyWords(car, id);
    }
    const FieldRule& rule = ruleOf(id.field);
    FieldWords words = numberFieldWords(car, id);
    if (rule.isTyped && rule.scope != Scope::tool) {
        words.howTo += steps(rule.quantity);
    }
    return words;
}

QString linkName(const Car& car, int link) {
    const std::string& name = car.links[static_cast<std::size_t>(link)].name;
    return name.empty() ? tr("link %1").arg(link + 1) : QString::fromStdString(name);
}

QString linkTitle(const Car& car, int link) {
    const Link& part = car.links[static_cast<std::size_t>(link)];
    QString title = capitalized(linkName(car, link));
    const bool oneWord = !title.contains(u' ');
    if (oneWord && part.kind == LinkKind::rod && roleOf(part, car.rearTireRadius) != Role::crosswise) {
        title += tr(" link");
    }
    switch (part.side) {
        case Side::both:
            return tr("%1, both sides").arg(title);
        case Side::left:
            return tr("%1, left side").arg(title);
        case Side::right:
            return tr("%1, right side").arg(title);
        case Side::center:
            break;
    }
    return title;
}

QString holeName(const Bracket& bracket, int hole) {
    const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
    return name.empty() ? tr("hole %1").arg(hole + 1) : QString::fromStdString(name);
}

QString bracketTitle(End end) {
    return end == End::axle ? tr("Axle holes") : tr("Chassis holes");
}

QString sidewaysWord(Side side) {
    return side == Side::both ? tr("out") : tr("left");
}

QString kindWords(LinkKind kind) {
    switch (kind) {
        case LinkKind::rod:
            return tr("A link with a joint or bushing at each end.");
        case LinkKind::pivot:
            return tr("An arm rigid with the axle, pinned at its front.");
        case LinkKind::slider:
            return tr("An arm rigid with the axle, its front held in height and free fore and aft.");
        case LinkKind::guide:
            break;
    }
    return tr("A guide that holds the axle laterally and nothing else.");
}

QString axisWord(int axis, Side side) {
    if (axis == 0) {
        return tr("forward");
    }
    return axis == 1 ? sidewaysWord(side) : tr("height");
}

}  // namespace bolthole
