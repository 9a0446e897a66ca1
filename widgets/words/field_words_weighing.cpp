// Words of the weighing fields.

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

// The wheel a field of four belongs to; `first` is the left front one of them.
QString wheelName(Field field, Field first) {
    switch (static_cast<int>(field) - static_cast<int>(first)) {
        case 0:
            return tr("left front");
        case 1:
            return tr("right front");
        case 2:
            return tr("left rear");
        default:
            return tr("right rear");
    }
}

QString sideName(Field field, Field first) {
    return (static_cast<int>(field) - static_cast<int>(first)) % 2 == 0 ? tr("left") : tr("right");
}

FieldWords otherWords(const Car& car, Field field) {
    const QString driver =
        car.cornersAre == DriverSeat::aboard ? tr("without the driver") : tr("with the driver");
    return {
        sideName(field, Field::otherLeftFront),
        tr("other reading, %1, %2").arg(wheelName(field, Field::otherLeftFront), driver),
        tr("Scale reading under this tire in a second weighing with the driver the other way, nothing else "
           "changed: same pads, fuel and loads, car rolled on and settled the same way, wheels chocked "
           "before anyone climbs in or out. The difference of the two readings is the driver. All four "
           "or none are used.")};
}

FieldWords padWords(Field field) {
    return {
        sideName(field, Field::padLeftFront), tr("pad height, %1").arg(wheelName(field, Field::padLeftFront)),
        tr("How high the top of this pad stands over any one level: a water level, a laser, or a straight "
           "edge with a level on it from pad to pad. Take one pad as 0 and measure the others against "
           "it, before the car rolls on. All four or none are used.")};
}

FieldWords ticketWords(Field field) {
    const QString how = tr(
        "From a truck scale's ticket or any other scale that takes a whole axle or the whole car. Nobody "
        "stands on the scale or between car and scale while it reads; engine off, car in park or chocked.");
    switch (field) {
        case Field::ticketFront:
            return {tr("Front axle"), tr("other scale, front axle"), how};
        case Field::ticketRear:
            return {tr("Rear axle"), tr("other scale, rear axle"), how};
        case Field::ticketTotal:
            return {tr("Whole car"), tr("other scale, whole car"), how};
        default:
            return {tr("Uncertainty"), tr("other scale, standard uncertainty"),
                    tr("How far one reading of that scale may be off: its standard uncertainty. Half its "
                       "smallest step is the least. Left empty, 10 kg (22 lb) is taken (common practice, no "
                       "source).")};
    }
}

FieldWords driverWords(const FieldId& id) {
    if (id.field == Field::driverMass) {
        return {tr("Weight"), tr("driver's weight"),
                tr("The driver dressed to drive, helmet and all, on a bathroom scale.")};
    }
    const QString axis = axisWord(id.axis, Side::center);
    const char* how =
        "From level ground up to the driver's middle, seated: about a hand's width over the seat cushion.";
    if (id.axis == 0) {
        how =
            "From the rear axle's centerline forward to the driver's middle, seated: about a hand's width "
            "ahead of the seat's back, at the belt buckle.";
    } else if (id.axis == 1) {
        how = "From the car's center plane to the middle of the seat; plus is left.";
    }
    return {axis, tr("driver's seat, %1").arg(axis), tr(how)};
}

FieldWords liftWords(Field field) {
    if (field == Field::liftHeight) {
        return {tr("Raised by"), tr("lift: how far the end was raised"),
                tr("How much higher the tires of the raised end stand than those of the other end, at the "
                   "contact patches. Turn the car by 15° or more: small lifts make small errors large. Chock "
                   "the wheels that stay down, rated stands under the raised end before anyone goes near, "
                   "nobody under or beside the car while it is raised or lowered.")};
    }
    return {
        tr("Axle then read"), tr("lift: reading of that axle with the car raised"),
        tr("Both tires of the axle that was read, added, with the car raised and settled: springs blocked "
           "at ride height, fluids and loads as they were when level. The weight of chocks that stand on "
           "the pads taken off. Read it from beside the display, away from the car.")};
}

QString loadPlace(int axis) {
    switch (axis) {
        case 0:
            return tr(
                "From the rear axle's centerline forward to the load's middle; behind the axle is "
                "minus.");
        case 1:
            return tr("From the car's center plane to the load's middle; plus is left.");
        default:
            return tr("From level ground up to the load's middle. For a tank, the middle of the full tank.");
    }
}

FieldWords loadFieldWords(const Car& car, const FieldId& id) {
    const QString name = QString::fromStdString(loadWords(car, id.item));
    switch (id.field) {
        case Field::loadMass:
            return {tr("Weight, all of it"), tr("%1, weight of all of it").arg(name),
                    tr("What all of it weighs, on any scale. For what is in a tank, leave this empty and "
                       "enter volume and density; where both are there the weight counts.")};
        case Field::loadVolume:
            return {tr("Volume, full"), tr("%1, volume when full").arg(name),
                    tr("What the tank holds when full. No measuring with an open flame or running engine "
                       "about: fuel vapor burns.")};
        case Field::loadDensity:
            return {tr("Density"), tr("%1, density").arg(name),
                    tr("What one unit of volume of it weighs: the supplier's sheet, or weigh a known volume. "
                       "Not guessed here.")};
        case Field::loadWeighed:
            return {tr("Aboard when weighed"), tr("%1, part aboard when weighed").arg(name),
                    tr("How much of it was in the car when the scales were read: 0 not there, 100 all of it, "
                       "between for a tank's level.")};
        case Field::loadAboard:
            return {tr("Aboard now"), tr("%1, part aboard now").arg(name),
                    tr("How much of it is in the car that is computed: 0 not there, 100 all of it.")};
        default: {
            const QString axis = axisWord(id.axis, Side::center);
            return {axis, tr("%1, place, %2").arg(name, axis), loadPlace(id.axis)};
        }
    }
}

}  // namespace

FieldWords weighingWords(const Car& car, const FieldId& id) {
    const Field field = id.field;
    if (ruleOf(field).scope == Scope::load) {
        return loadFieldWords(car, id);
    }
    if (field >= Field::otherLeftFront && field <= Field::otherRightRear) {
        return otherWords(car, field);
    }
    if (field >= Field::padLeftFront && field <= Field::padRightRear) {
        return padWords(field);
    }
    if (field >= Field::ticketFront && field <= Field::ticketUncertainty) {
        return ticketWords(field);
    }
    switch (field) {
        case Field::frontTrack:
            return {
                tr("Front track"), tr("front track"),
                tr("Between the middles of the front treads, at the ground, wheels straight ahead. Needed "
                   "for where the CG lies sideways; may be left empty.")};
        case Field::scaleUncertainty:
            return {tr("Pad uncertainty"), tr("scales, standard uncertainty of one pad"),
                    tr("How far one pad's reading may be off: its standard uncertainty. Roll the car off and "
                       "on a few times; how much the readings scatter is a good figure. Left empty, 0.5 kg "
                       "(1.1 lb) is taken (common practice, no source).")};
        case Field::driverMass:
        case Field::driverAt:
            return driverWords(id);
        default:
            return liftWords(field);
    }
}

}  // namespace bolthole
