// Words of the shaft fields.

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

// What holds for all that is measured at the driveshaft under the car.
QString safely() {
    return tr(
        " The car stands on its wheels on level ground, on ramps, or on rated stands under the axle and "
        "the front suspension at the same ride height, wheels chocked, transmission in neutral, ignition "
        "off and key out: turn the shaft by hand only, and never lie under a car that a jack alone "
        "holds.");
}

FieldWords carrierWords(int axis) {
    const QString word = axisWord(axis, Side::center);
    const char* how =
        "Sideways from the car's center plane to the center of the cross of the joint behind the "
        "carrier bearing; plus is left, 0 is in the center plane.";
    if (axis == 0) {
        how =
            "From the rear axle's centerline forward to the center of the cross of the joint behind the "
            "carrier bearing, along the car. Drop a plumb bob from both and tape between the marks.";
    } else if (axis == 2) {
        how =
            "From level ground up to the center of the cross of the joint behind the carrier bearing, the "
            "car at ride height.";
    }
    return {word, tr("carrier joint, %1").arg(word),
            tr(how) + tr(" Left empty, the shaft is of one piece.") + safely()};
}

FieldWords yokeWords(bool front) {
    const QString how =
        tr("How far the rear yoke of this shaft is turned from its front yoke: 0, or empty, where both lie "
           "in "
           "one plane, as shafts are usually welded. Turn the shaft by hand until the angle finder across "
           "the "
           "front yoke's bearing caps reads level, then read it across the rear yoke's; plus is clockwise "
           "seen from the rear.") +
        safely();
    return front ? FieldWords{tr("Yokes off, front or only piece"),
                              tr("yoke offset of the front or only shaft"), how}
                 : FieldWords{tr("Yokes off, rear piece"), tr("yoke offset of the rear shaft"), how};
}

FieldWords powerWords(Field field) {
    switch (field) {
        case Field::windUp:
            return {tr("Pinion wind-up"), tr("pinion wind-up under power, nose up"),
                    tr("How far the pinion's nose rises under full power as bushings and brackets give. An "
                       "allowance, not a measurement: nobody reads an angle finder beside a car that pulls. "
                       "Rod ends give little, rubber bushings more (common practice, no source). Left empty, "
                       "only coasting is computed.")};
        case Field::engineSpeed:
            return {tr("Highest engine speed"), tr("highest engine speed"),
                    tr("The highest speed the engine reaches in the gear below, from the tachometer's or the "
                       "data log's memory, not from a test in the shop. The driveshaft turns at engine speed "
                       "over the gear's ratio.")};
        default:
            return {tr("In a gear of ratio"), tr("ratio of the gear at that engine speed"),
                    tr("The transmission's ratio in the gear in which that engine speed is reached: 1 for "
                       "direct drive, below 1 for an overdrive; from the maker's list.")};
    }
}

FieldWords slipWords(Field field) {
    switch (field) {
        case Field::slipEngagement:
            return {tr("Engagement"), tr("slip yoke engagement at ride height"),
                    tr("Length of spline that the output shaft and the slip yoke share at ride height. Wrap "
                       "tape around the yoke's barrel at the seal, take the shaft down, measure from the "
                       "tape to the barrel's open end, and take off how far inside the seal the output "
                       "shaft's end stands and what either lacks of spline at its end. The shaft is heavy: "
                       "two people, or a strap, and a pan for the oil.") +
                        safely()};
        case Field::slipLeast:
            return {
                tr("Engagement, at least"), tr("least slip yoke engagement"),
                tr("Length of spline that must stay held anywhere in the travel: the figure of the yoke's "
                   "or the transmission's maker. Where there is none, ask a driveshaft shop; none is "
                   "assumed here.")};
        default:
            return {
                tr("Room inward"), tr("slip yoke room inward at ride height"),
                tr("How far the yoke can go in from where it stands at ride height before it bottoms. Tape "
                   "around the barrel at the seal at ride height; with the rear joint undone and the shaft "
                   "held up by a strap, push the yoke in by hand until it stops, and measure from the tape "
                   "to where the seal is then.") +
                    safely()};
    }
}

}  // namespace

FieldWords shaftWords(const Car& /*car*/, const FieldId& id) {
    switch (id.field) {
        case Field::carrierJoint:
            return carrierWords(id.axis);
        case Field::frontYokeOffset:
        case Field::rearYokeOffset:
            return yokeWords(id.field == Field::frontYokeOffset);
        case Field::slipEngagement:
        case Field::slipLeast:
        case Field::slipInward:
            return slipWords(id.field);
        default:
            return powerWords(id.field);
    }
}

}  // namespace bolthole
