// The pictures that say how one number is measured. Each draws itself on a sketch; the letters it has stand
// beside it, and what they stand for in the table of how_to_picture.cpp.
#pragma once

#include "widgets/papers/howto/how_to_sketch.h"

namespace bolthole {

// Links and driveshaft.
void drawPointPlaces(HowToSketch& sketch);  ///< A forward, B up, C out from the center plane
void drawRodLengths(HowToSketch& sketch);   ///< A as built, B ends in, C ends out
void drawRodThread(HowToSketch& sketch);    ///< A held in the tube, B one pitch, C the two ends
void drawRodEndLean(HowToSketch& sketch);   ///< A
void drawRating(HowToSketch& sketch);       ///< A
void drawJointAngle(HowToSketch& sketch);   ///< A of one joint, B the pinion's under power
void drawYokePhase(HowToSketch& sketch);    ///< A
void drawSlipYoke(HowToSketch& sketch);     ///< A held, B until it bottoms, C least
void drawGearTurns(HowToSketch& sketch);    ///< A turns in for one out, of a transmission
void drawAxleTurns(HowToSketch& sketch);    ///< A tag or turns of the yoke

void drawPlate(HowToSketch& sketch);  ///< A hole, B to the edge, C hole to hole, a corner's D forward, E up

// Springs, shocks, travel.
void drawSpringTest(HowToSketch& sketch);     ///< A force, B how far it goes down
void drawSpringLengths(HowToSketch& sketch);  ///< A loose, B coils touching
void drawShockLengths(HowToSketch& sketch);   ///< A extended, B compressed, C where the spring lets go
void drawStopLengths(HowToSketch& sketch);    ///< A loose, B solid
void drawStrapLength(HowToSketch& sketch);    ///< A taut
void drawGasForce(HowToSketch& sketch);       ///< A
void drawClicks(HowToSketch& sketch);         ///< A bump, B rebound
void drawRearTravel(HowToSketch& sketch);     ///< A bump, B droop
void drawShockRatio(HowToSketch& sketch);     ///< A the wheel rises, B the shock shortens
void drawSpringBase(HowToSketch& sketch);     ///< A

// Weights, tires, rates.
void drawOneScale(HowToSketch& sketch);     ///< A a thing on a scale
void drawDriver(HowToSketch& sketch);       ///< A
void drawTank(HowToSketch& sketch);         ///< A what it holds, B weight of one measure, C the level
void drawTruckScale(HowToSketch& sketch);   ///< A front, B rear, C all
void drawFourScales(HowToSketch& sketch);   ///< A how far one pad's readings scatter
void drawLift(HowToSketch& sketch);         ///< A raised by, B the axle's reading
void drawCgHeight(HowToSketch& sketch);     ///< A
void drawUnsprung(HowToSketch& sketch);     ///< A rear, B front
void drawTireRate(HowToSketch& sketch);     ///< A load, B height of the wheel's center
void drawPressure(HowToSketch& sketch);     ///< A
void drawWheelRate(HowToSketch& sketch);    ///< A weight put on, B how far it comes down
void drawRollRate(HowToSketch& sketch);     ///< A torque, B lean
void drawSideLoads(HowToSketch& sketch);    ///< A more on the left
void drawTape(HowToSketch& sketch);         ///< A how far two readings differ
void drawCalipers(HowToSketch& sketch);     ///< A
void drawAngleFinder(HowToSketch& sketch);  ///< A
void drawFloor(HowToSketch& sketch);        ///< A
void drawCenterPlane(HowToSketch& sketch);  ///< A
void drawAxleLine(HowToSketch& sketch);     ///< A

// Engine, launch, brakes, test days.
void drawTorqueSheet(HowToSketch& sketch);  ///< A
void drawEngineLog(HowToSketch& sketch);    ///< A held, B stall, C limiter, D highest
void drawLogger(HowToSketch& sketch);       ///< A launch, B braking
void drawTimeSlip(
    HowToSketch& sketch);               ///< A 60 ft, B 330 ft, C eighth mile, D quarter; E and F their speeds
void drawWeather(HowToSketch& sketch);  ///< A air, B its pressure, C humidity, D surface
void drawRollout(HowToSketch& sketch);  ///< A
void drawConverter(HowToSketch& sketch);   ///< A at stall, B where it multiplies no more
void drawClutch(HowToSketch& sketch);      ///< A
void drawEfficiency(HowToSketch& sketch);  ///< A
void drawFriction(HowToSketch& sketch);    ///< A
void drawTireSlip(HowToSketch& sketch);    ///< A slip at the most thrust, B what is left
void drawTireRolled(HowToSketch& sketch);  ///< A rolled until wound up
void drawRelease(HowToSketch& sketch);     ///< A
void drawSwing(HowToSketch& sketch);       ///< A
void drawBodyPitch(HowToSketch& sketch);   ///< A
void drawBrakeShare(HowToSketch& sketch);  ///< A

}  // namespace bolthole
