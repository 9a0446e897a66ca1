#include "widgets/papers/howto/how_to_picture.h"

#include <algorithm>
#include <array>

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/howto/how_to_drawings.h"
#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

constexpr double kPad = 2.5;  // mm between the frame and what is drawn

struct HowToRow {
    Field field;
    void (*draw)(HowToSketch& sketch);
    char letter;
};

// Places come in three: their letter follows from the axis.
constexpr char kByAxis = '*';

constexpr std::array kHowToRows{
    HowToRow{Field::holeAt, drawPointPlaces, kByAxis},
    HowToRow{Field::mountAt, drawPointPlaces, kByAxis},
    HowToRow{Field::pinionJoint, drawPointPlaces, kByAxis},
    HowToRow{Field::outputJoint, drawPointPlaces, kByAxis},
    HowToRow{Field::carrierJoint, drawPointPlaces, kByAxis},
    HowToRow{Field::driverAt, drawPointPlaces, kByAxis},
    HowToRow{Field::ballastAt, drawPointPlaces, kByAxis},
    HowToRow{Field::linkLength, drawRodLengths, 'A'},
    HowToRow{Field::adjusterEngagementAt, drawRodLengths, 'A'},
    HowToRow{Field::adjusterShortest, drawRodLengths, 'B'},
    HowToRow{Field::adjusterLongest, drawRodLengths, 'C'},
    HowToRow{Field::adjusterEngagement, drawRodThread, 'A'},
    HowToRow{Field::adjusterLeastEngagement, drawRodThread, 'A'},
    HowToRow{Field::adjusterPitch, drawRodThread, 'B'},
    HowToRow{Field::adjusterEnds, drawRodThread, 'C'},
    HowToRow{Field::rodEndLimit, drawRodEndLean, 'A'},
    HowToRow{Field::linkRating, drawRating, 'A'},
    HowToRow{Field::jointLimit, drawJointAngle, 'A'},
    HowToRow{Field::windUp, drawJointAngle, 'B'},
    HowToRow{Field::frontYokeOffset, drawYokePhase, 'A'},
    HowToRow{Field::rearYokeOffset, drawYokePhase, 'A'},
    HowToRow{Field::slipEngagement, drawSlipYoke, 'A'},
    HowToRow{Field::slipInward, drawSlipYoke, 'B'},
    HowToRow{Field::slipLeast, drawSlipYoke, 'C'},
    HowToRow{Field::shaftGear, drawGearTurns, 'A'},
    HowToRow{Field::launchGear, drawGearTurns, 'A'},
    HowToRow{Field::axleRatio, drawAxleTurns, 'A'},
    HowToRow{Field::springRate, drawSpringTest, 'A'},
    HowToRow{Field::springFreeLength, drawSpringLengths, 'A'},
    HowToRow{Field::springClosedLength, drawSpringLengths, 'B'},
    HowToRow{Field::springOpenLength, drawShockLengths, 'A'},
    HowToRow{Field::springPush, drawGasForce, 'A'},
    HowToRow{Field::bumpClick, drawClicks, 'A'},
    HowToRow{Field::reboundClick, drawClicks, 'B'},
    HowToRow{Field::frontBumpClick, drawClicks, 'A'},
    HowToRow{Field::frontReboundClick, drawClicks, 'B'},
    HowToRow{Field::bump, drawRearTravel, 'A'},
    HowToRow{Field::droop, drawRearTravel, 'B'},
    HowToRow{Field::frontMotionRatio, drawShockRatio, 'B'},
    HowToRow{Field::springBase, drawSpringBase, 'A'},
    HowToRow{Field::ballastMass, drawOneScale, 'A'},
    HowToRow{Field::driverMass, drawDriver, 'A'},
    HowToRow{Field::ballastVolume, drawTank, 'A'},
    HowToRow{Field::ballastDensity, drawTank, 'B'},
    HowToRow{Field::ballastWeighed, drawTank, 'C'},
    HowToRow{Field::ballastAboard, drawTank, 'C'},
    HowToRow{Field::ticketFront, drawTruckScale, 'A'},
    HowToRow{Field::ticketRear, drawTruckScale, 'B'},
    HowToRow{Field::ticketTotal, drawTruckScale, 'C'},
    HowToRow{Field::ticketUncertainty, drawFourScales, 'A'},
    HowToRow{Field::scaleUncertainty, drawFourScales, 'A'},
    HowToRow{Field::liftHeight, drawLift, 'A'},
    HowToRow{Field::liftReading, drawLift, 'B'},
    HowToRow{Field::cgHeight, drawCgHeight, 'A'},
    HowToRow{Field::unsprungMass, drawUnsprung, 'A'},
    HowToRow{Field::frontUnsprungMass, drawUnsprung, 'B'},
    HowToRow{Field::frontTireRate, drawTireRate, 'A'},
    HowToRow{Field::rearTireRate, drawTireRate, 'A'},
    HowToRow{Field::frontOtherTire, drawTireRate, 'A'},
    HowToRow{Field::rearOtherTire, drawTireRate, 'A'},
    HowToRow{Field::frontTirePressure, drawPressure, 'A'},
    HowToRow{Field::rearTirePressure, drawPressure, 'A'},
    HowToRow{Field::frontOtherPressure, drawPressure, 'A'},
    HowToRow{Field::rearOtherPressure, drawPressure, 'A'},
    HowToRow{Field::frontPressure, drawPressure, 'A'},
    HowToRow{Field::rearPressure, drawPressure, 'A'},
    HowToRow{Field::frontWheelRate, drawWheelRate, 'A'},
    HowToRow{Field::rearWheelRate, drawWheelRate, 'A'},
    HowToRow{Field::frontRollRate, drawRollRate, 'A'},
    HowToRow{Field::rearRollRate, drawRollRate, 'A'},
    HowToRow{Field::leftShift, drawSideLoads, 'A'},
    HowToRow{Field::tapeUncertainty, drawTape, 'A'},
    HowToRow{Field::caliperUncertainty, drawCalipers, 'A'},
    HowToRow{Field::angleFinderUncertainty, drawAngleFinder, 'A'},
    HowToRow{Field::floorUncertainty, drawFloor, 'A'},
    HowToRow{Field::centerPlaneUncertainty, drawCenterPlane, 'A'},
    HowToRow{Field::originLineUncertainty, drawAxleLine, 'A'},
    HowToRow{Field::engineTorque, drawTorqueSheet, 'A'},
    HowToRow{Field::launchSpeed, drawEngineLog, 'A'},
    HowToRow{Field::stallSpeed, drawEngineLog, 'B'},
    HowToRow{Field::revLimit, drawEngineLog, 'C'},
    HowToRow{Field::engineSpeed, drawEngineLog, 'D'},
    HowToRow{Field::launchAcceleration, drawLogger, 'A'},
    HowToRow{Field::brakeDeceleration, drawLogger, 'B'},
    HowToRow{Field::sixtyFoot, drawTimeSlip, 'A'},
    HowToRow{Field::rollout, drawRollout, 'A'},
    HowToRow{Field::converter, drawConverter, 'A'},
    HowToRow{Field::couplingRatio, drawConverter, 'B'},
    HowToRow{Field::clutchCapacity, drawClutch, 'A'},
    HowToRow{Field::efficiency, drawEfficiency, 'A'},
    HowToRow{Field::friction, drawFriction, 'A'},
    HowToRow{Field::tirePeakSlip, drawTireSlip, 'A'},
    HowToRow{Field::tireSliding, drawTireSlip, 'B'},
    HowToRow{Field::tireRelaxation, drawTireRolled, 'A'},
    HowToRow{Field::release, drawRelease, 'A'},
    HowToRow{Field::housingInertia, drawSwing, 'A'},
    HowToRow{Field::wheelInertia, drawSwing, 'A'},
    HowToRow{Field::frontWheelInertia, drawSwing, 'A'},
    HowToRow{Field::drivelineInertia, drawSwing, 'A'},
    HowToRow{Field::engineInertia, drawSwing, 'A'},
    HowToRow{Field::pitchInertia, drawBodyPitch, 'A'},
    HowToRow{Field::brakeRearShare, drawBrakeShare, 'A'},
};

// A length of a spring, shock, stop or strap: what it is taken on decides.
std::optional<HowToRow> rowOfPart(PartKind kind, Field field) {
    const bool isOpen = field == Field::springOpenLength;
    const bool isFree = field == Field::springFreeLength;
    if (!isOpen && !isFree && field != Field::springClosedLength) {
        return std::nullopt;
    }
    switch (kind) {
        case PartKind::spring:
            return std::nullopt;
        case PartKind::strap:
            return HowToRow{field, drawStrapLength, 'A'};
        case PartKind::bumpStop:
            return HowToRow{field, drawStopLengths, isFree ? 'A' : 'B'};
        case PartKind::shock:
        case PartKind::coilOver:
            break;
    }
    return HowToRow{field, drawShockLengths, isOpen ? 'A' : isFree ? 'C' : 'B'};
}

}  // namespace

std::optional<HowToPicture> howToPicture(const Car& car, const FieldId& id) {
    std::optional<HowToRow> row;
    if (const SuspensionPart* part = findSpring(car, id.item)) {
        row = ruleOf(id.field).scope == Scope::spring ? rowOfPart(part->kind, id.field) : std::nullopt;
    }
    if (!row) {
        const auto* const found = std::ranges::find(kHowToRows, id.field, &HowToRow::field);
        row = found == kHowToRows.end() ? std::nullopt : std::optional(*found);
    }
    if (!row) {
        return std::nullopt;
    }
    constexpr std::array kAxes{'A', 'C', 'B'};  // forward, out, up
    const char letter = row->letter == kByAxis ? kAxes[static_cast<std::size_t>(id.axis)] : row->letter;
    return HowToPicture{row->draw, QString(QLatin1Char(letter))};
}

HowToPicture howToPicture(PassField field) {
    switch (field) {
        case PassField::airTemperature:
            return {drawWeather, QStringLiteral("A")};
        case PassField::airPressure:
            return {drawWeather, QStringLiteral("B")};
        case PassField::humidity:
            return {drawWeather, QStringLiteral("C")};
        case PassField::surfaceTemperature:
            return {drawWeather, QStringLiteral("D")};
        case PassField::leftFrontPressure:
        case PassField::rightFrontPressure:
        case PassField::leftRearPressure:
        case PassField::rightRearPressure:
            return {drawPressure, QStringLiteral("A")};
        case PassField::launchRpm:
            return {drawEngineLog, QStringLiteral("A")};
        case PassField::sixtyFoot:
        case PassField::count:
            break;
        case PassField::threeThirty:
            return {drawTimeSlip, QStringLiteral("B")};
        case PassField::eighth:
            return {drawTimeSlip, QStringLiteral("C")};
        case PassField::quarter:
            return {drawTimeSlip, QStringLiteral("D")};
        case PassField::eighthSpeed:
            return {drawTimeSlip, QStringLiteral("E")};
        case PassField::quarterSpeed:
            return {drawTimeSlip, QStringLiteral("F")};
    }
    return {drawTimeSlip, QStringLiteral("A")};
}

HowToPicture howToPicture(PlateNumber number) {
    constexpr std::array kLetters{'A', 'B', 'C', 'D', 'E'};
    return {drawPlate, QString(QLatin1Char(kLetters[static_cast<std::size_t>(number)]))};
}

QString whyNoHowTo(Field field) {
    switch (field) {
        case Field::steps:
            return tr("how finely the program computes: chosen, nothing on the car");
        case Field::frontRatio:
            return tr("which motion of the car is looked at: chosen, nothing on the car");
        case Field::loadFactor:
            return tr("a qualified person's choice, nothing on the car");
        case Field::tireLag:
        case Field::tireDamping:
            return tr("no tool of a shop reads it: a judgement, or left empty");
        default:
            break;
    }
    return ruleOf(field).scope == Scope::target ? tr("a target: chosen, not measured") : QString();
}

HowToMarks drawHowTo(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                     const HowToPicture& picture) {
    painter.setPen(kitPen(0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.2, 0.2, -0.2, -0.2));
    HowToSketch sketch(painter, box.adjusted(kPad, kPad, -kPad, -kPad), fonts);
    picture.draw(sketch);
    return sketch.finish(picture.letter);
}

}  // namespace bolthole
