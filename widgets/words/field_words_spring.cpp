// Words of springs and their mounts where they depend on what the part is.

#include "geometry/car/fields.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

namespace {

// Said wherever somebody reaches between axle and body.
QString caution() {
    return tr(
        " Ride height on stands under the axle, wheels chocked. A squeezed spring holds enough energy to "
        "kill: measure, never loosen, with the spring under load.");
}

QString placeOf(PartKind kind, End end) {
    if (kind == PartKind::bumpStop) {
        return end == End::chassis ? tr("the middle of the stop's foot")
                                   : tr("the middle of the pad it meets");
    }
    if (kind == PartKind::spring) {
        return tr("the middle of the spring's seat, where its last coil rests");
    }
    return kind == PartKind::strap ? tr("the strap's bolt") : tr("the center of the eye's bolt");
}

QString mountHowTo(const SuspensionPart& part, const FieldId& id) {
    const QString place = placeOf(part.kind, id.end);
    if (id.axis == 0) {
        return tr("From the axle's centerline to %1, along the car; plus is ahead of the axle.").arg(place) +
               caution();
    }
    if (id.axis == 2) {
        return tr("From level ground straight up to %1, the car at ride height.").arg(place) + caution();
    }
    if (part.side == Side::both) {
        return tr("From the car's center plane out to %1: half of what a tape reads between left and right.")
                   .arg(place) +
               caution();
    }
    return tr("From the car's center plane to %1; plus is to the left when facing forward.").arg(place) +
           caution();
}

FieldWords mountWords(const Car& car, const FieldId& id) {
    const SuspensionPart& part = car.springs[static_cast<std::size_t>(id.item)];
    const QString axis = axisWord(id.axis, part.side);
    return {axis,
            QStringLiteral("%1, %2 %3, %4")
                .arg(springName(car, id.item), mountTitle(part.kind, id.end).toLower(),
                     holeName(part.bracket(id.end), id.hole), axis),
            mountHowTo(part, id)};
}

FieldWords rateWords(PartKind kind, const QString& name) {
    if (kind == PartKind::bumpStop) {
        return {tr("Rate"), tr("%1, rate").arg(name),
                tr("Force that squeezes the stop by one more unit of length, from its manufacturer. Rubber "
                   "and foam "
                   "stiffen as they squeeze: one rate is good for a small part of the stroke only. Left "
                   "empty, the stop adds no rate.")};
    }
    return {tr("Rate"), tr("%1, rate").arg(name),
            tr("Force that squeezes the spring itself by one more unit of length: printed on it or read on a "
               "spring tester in the middle of its stroke. Not the rate at the wheel, which follows from it. "
               "It counts only beside a free length.")};
}

FieldWords freeLengthWords(PartKind kind, const QString& name) {
    return {tr("Free length"), tr("%1, free length").arg(name),
            kind == PartKind::bumpStop
                ? tr("Height of the stop with nothing pressing on it, foot to tip.")
                : tr("Length of the spring lying loose on the bench; of a coilover, eye to eye where the "
                     "spring just stops pushing.")};
}

FieldWords closedWords(PartKind kind, const QString& name) {
    switch (kind) {
        case PartKind::spring:
            return {tr("Coils touch at"), tr("%1, length with the coils touching").arg(name),
                    tr("Length with all coils touching, from the manufacturer, or wire thickness times the "
                       "number of "
                       "coils. Never squeeze one solid to find out.")};
        case PartKind::bumpStop:
            return {tr("Solid at"), tr("%1, length squeezed solid").arg(name),
                    tr("Height of the stop squeezed as far as its manufacturer lets it.")};
        default:
            return {
                tr("Compressed length"), tr("%1, compressed length").arg(name),
                tr("Eye to eye, or mount to mount, pushed in until it bottoms; with a bump rubber on its "
                   "shaft, until that is squeezed. From the manufacturer, or measured off the car with the "
                   "spring off.")};
    }
}

FieldWords openWords(PartKind kind, const QString& name) {
    if (kind == PartKind::strap) {
        return {
            tr("Taut at"), tr("%1, length when taut").arg(name),
            tr("Bolt to bolt with the strap pulled straight. A new strap stretches some under load. Which "
               "strap, and what it bolts to, is for a qualified eye.")};
    }
    return {tr("Extended length"), tr("%1, extended length").arg(name),
            tr("Eye to eye, or mount to mount, pulled out as far as it goes, off the car. A gas shock pushes "
               "itself open: hold it by its strap.")};
}

}  // namespace

std::optional<FieldWords> springFieldWords(const Car& car, const FieldId& id) {
    if (id.field == Field::mountAt) {
        return mountWords(car, id);
    }
    if (ruleOf(id.field).scope != Scope::spring) {
        return std::nullopt;
    }
    const QString name = springName(car, id.item);
    const PartKind kind = car.springs[static_cast<std::size_t>(id.item)].kind;
    switch (id.field) {
        case Field::springRate:
            return rateWords(kind, name);
        case Field::springFreeLength:
            return freeLengthWords(kind, name);
        case Field::springClosedLength:
            return closedWords(kind, name);
        case Field::springOpenLength:
            return openWords(kind, name);
        default:
            return std::nullopt;
    }
}

QString springName(const Car& car, int item) {
    return QString::fromStdString(springWords(car, item));
}

QString sideWords(Side side) {
    switch (side) {
        case Side::both:
            return tr("both sides");
        case Side::left:
            return tr("left side");
        case Side::right:
            return tr("right side");
        case Side::center:
            break;
    }
    return tr("center");
}

QString springTitle(const Car& car, int item) {
    const SuspensionPart& part = car.springs[static_cast<std::size_t>(item)];
    const QString name = capitalized(springName(car, item));
    const QString kind = said(nameOf(part.kind));
    return name.contains(kind, Qt::CaseInsensitive)
               ? QStringLiteral("%1, %2").arg(name, sideWords(part.side))
               : QStringLiteral("%1: %2, %3").arg(name, kind, sideWords(part.side));
}

QString mountTitle(PartKind kind, End end) {
    if (kind == PartKind::bumpStop) {
        return end == End::chassis ? tr("Foot on the chassis") : tr("Pad on the axle");
    }
    return end == End::chassis ? tr("Chassis mount") : tr("Axle mount");
}

bool belongsTo(PartKind kind, Field field) {
    switch (field) {
        case Field::springRate:
        case Field::springFreeLength:
            return kind != PartKind::shock && kind != PartKind::strap;
        case Field::springClosedLength:
            return kind != PartKind::strap;
        case Field::springOpenLength:
            return kind != PartKind::spring && kind != PartKind::bumpStop;
        case Field::springPush:
        case Field::bumpClick:
        case Field::reboundClick:
            return kind == PartKind::shock || kind == PartKind::coilOver;
        default:
            return false;
    }
}

}  // namespace bolthole
