// Words of the launch fields.

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

QString onStandsOrLift() {
    return tr("Car on rated stands or a drive-on lift, wheels chocked, before you go under it.");
}

FieldWords thrustWords(Field field) {
    switch (field) {
        case Field::launchAcceleration:
            return {tr("Acceleration, g"), tr("launch acceleration in g"),
                    tr("How hard the car leaves, as a multiple of gravity: the peak of a logger, smoothed "
                       "over a tenth of a second or so. Logged only on a closed course.")};
        case Field::sixtyFoot:
            return {tr("60-ft time"), tr("60-ft time"),
                    tr("From a time slip. Acceleration is taken to be even over the 60 ft, which it never "
                       "is, and the clock starts only when the front tire has rolled out of the beam, so "
                       "the estimate reads high (common practice, no source).")};
        case Field::engineTorque:
            return {tr("Engine torque"), tr("engine torque at the flywheel"),
                    tr("At the flywheel, at the rpm it launches at. Torque measured at the wheels has the "
                       "losses in it already: then set efficiency to 100 %.")};
        case Field::converter:
            return {tr("Converter"), tr("torque converter's multiplication"),
                    tr("By how much the converter multiplies torque as the car leaves: its maker's stall "
                       "ratio. With a clutch leave it empty: 1.")};
        case Field::launchGear:
            return {tr("Gear ratio"), tr("ratio of the gear it launches in"),
                    tr("Turns of the engine for one of the driveshaft in the gear it launches in, from the "
                       "transmission's data.")};
        default:
            return {tr("Efficiency"), tr("driveline efficiency"),
                    tr("What of the engine's torque reaches the tires. Left empty, 100 %: nothing is lost, "
                       "which reads high.")};
    }
}

FieldWords driveWords(Field field) {
    if (field == Field::friction) {
        return {tr("Tire friction"), tr("friction of the rear tires"),
                tr("The most the rear tires push forward over the load they carry: what the car pulled in g "
                   "on its best pass, times its weight, over the rear axle's load in that launch. Caps "
                   "what engine torque makes.")};
    }
    return {tr("Axle ratio"), tr("axle ratio"),
            tr("Turns of the driveshaft for one of both wheels: from the tag, or count teeth, ring gear over "
               "pinion. Needed for the driveshaft's torque. ") +
                onStandsOrLift()};
}

FieldWords loadWords(Field field) {
    switch (field) {
        case Field::springBase:
            return {tr("Springs apart"), tr("distance between the rear springs"),
                    tr("Between the middles of the two rear springs, across the car. Where the springs' "
                       "mounts are entered, link loads take those instead. ") +
                        onStandsOrLift()};
        case Field::leftShift:
            return {tr("Left tire over half"), tr("load on the left rear tire over half the axle's"),
                    tr("How much more than half of the rear axle's load the left tire carries in the "
                       "launch. Left empty, it comes from the driveshaft's torque where tracks and wheel "
                       "rates are known; else both tires are taken to carry the same.")};
        case Field::unsprungMass:
            return {tr("Unsprung weight"), tr("rear unsprung weight"),
                    tr("Axle, wheels, brakes and half of links, springs, shocks and driveshaft: weighed with "
                       "the axle out, or added up from the parts. An axle is heavy: a helper or a hoist, "
                       "never fingers under it.")};
        default:
            return {tr("Load factor"), tr("load factor against ratings"),
                    tr("What static loads are multiplied by before they are held against a rating, for the "
                       "hit and for what is not known. A qualified person's choice; left empty, 1: none.")};
    }
}

FieldWords brakeWords(Field field) {
    if (field == Field::brakeRearShare) {
        return {tr("Rear share"), tr("rear share of the brake force"),
                tr("What part of the whole braking force the rear brakes make: from the brakes' data or a "
                   "roller brake tester.")};
    }
    return {tr("Deceleration, g"), tr("deceleration in g"),
            tr("How hard it brakes, as a multiple of gravity: from a logger. Braking tests only on a closed "
               "course.")};
}

FieldWords ratingWords(const Car& car, const FieldId& id) {
    const QString name = linkName(car, id.link);
    return {
        capitalized(name), tr("%1, rating").arg(name),
        tr("What the link's weakest part may carry, as its maker states it for this use: the rod end, the "
           "bushing, the tube, the bolt or the bracket, whichever is least. Left empty, nothing is "
           "held against it.")};
}

}  // namespace

FieldWords launchWords(const Car& car, const FieldId& id) {
    if (id.field == Field::linkRating) {
        return ratingWords(car, id);
    }
    if (id.field >= Field::launchAcceleration && id.field <= Field::efficiency) {
        return thrustWords(id.field);
    }
    if (id.field == Field::friction || id.field == Field::axleRatio) {
        return driveWords(id.field);
    }
    if (id.field >= Field::springBase && id.field <= Field::loadFactor) {
        return loadWords(id.field);
    }
    if (id.field == Field::brakeRearShare || id.field == Field::brakeDeceleration) {
        return brakeWords(id.field);
    }
    const QString words = QString::fromStdString(std::string(ruleOf(id.field).words));
    return {capitalized(words), words, QString()};
}

}  // namespace bolthole
