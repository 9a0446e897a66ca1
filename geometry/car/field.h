// The names of all numbers of a car.
#pragma once

namespace bolthole {

/// Names every number of a car.
enum class Field {
    wheelbase,
    rearTireRadius,
    frontTireRadius,
    rearTrack,
    leftFrontWeight,
    rightFrontWeight,
    leftRearWeight,
    rightRearWeight,
    cgHeight,
    bump,
    droop,
    steps,
    frontRatio,
    holeAt,                   // link, end, hole, axis
    linkLength,               // link
    adjusterPitch,            // link
    adjusterEnds,             // link
    adjusterShortest,         // link
    adjusterLongest,          // link
    adjusterEngagement,       // link
    adjusterEngagementAt,     // link
    adjusterLeastEngagement,  // link
    rodEndLimit,              // link
    pinionAngle,
    pinionJoint,  // axis
    outputAngle,
    outputJoint,  // axis
    jointLimit,
    wantedIcNear,
    wantedIcFar,
    wantedLow,
    wantedHigh,
    frontTrack,
    otherLeftFront,
    otherRightFront,
    otherLeftRear,
    otherRightRear,
    scaleUncertainty,
    driverMass,
    driverAt,  // axis
    padLeftFront,
    padRightFront,
    padLeftRear,
    padRightRear,
    ticketFront,
    ticketRear,
    ticketTotal,
    ticketUncertainty,
    liftHeight,
    liftReading,
    frontWheelRate,
    frontTireRate,
    frontRollRate,
    rearWheelRate,
    rearTireRate,
    rearRollRate,
    launchAcceleration,
    sixtyFoot,
    engineTorque,
    converter,
    launchGear,
    efficiency,
    friction,
    axleRatio,
    springBase,
    leftShift,
    unsprungMass,
    loadFactor,
    brakeRearShare,
    brakeDeceleration,
    carrierJoint,  // axis
    frontYokeOffset,
    rearYokeOffset,
    windUp,
    engineSpeed,
    shaftGear,
    slipEngagement,
    slipLeast,
    slipInward,
    linkRating,          // link
    loadMass,            // item
    loadVolume,          // item
    loadDensity,         // item
    loadAt,              // item, axis
    loadWeighed,         // item
    loadAboard,          // item
    springRate,          // item
    springFreeLength,    // item
    springClosedLength,  // item
    springOpenLength,    // item
    springPush,          // item
    mountAt,             // item, end, hole, axis
    tapeSpread,
    caliperSpread,
    angleFinderSpread,
    wantedIcLow,
    wantedIcHigh,
    wantedChangeLow,
    wantedChangeHigh,
    wantedPinionChange,
    wantedJoint,
    count
};

}  // namespace bolthole
