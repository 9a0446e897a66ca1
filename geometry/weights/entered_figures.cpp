#include "geometry/weights/entered_figures.h"

#include <cmath>
#include <numbers>

#include "geometry/car/measuring_tool.h"
#include "geometry/car/numbers.h"
#include "geometry/car/tire_rate.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

std::optional<WheelRates> ratesOf(const EnteredRates& entered) {
    return entered.wheel ? std::optional(WheelRates{*entered.wheel, tireRateNow(entered), entered.roll})
                         : std::nullopt;
}

/// The corner weights read with the driver so; nothing where not all four are there.
std::optional<CornerWeights> cornersWith(const Car& car, DriverSeat seat) {
    return seat == car.cornersAre ? std::optional(car.cornerWeights) : car.weighing.other.whole();
}

std::optional<AxleTicket> ticketOf(const EnteredTicket& entered) {
    if (!entered.front && !entered.rear && !entered.total) {
        return std::nullopt;
    }
    AxleTicket ticket{.front = entered.front, .rear = entered.rear, .total = entered.total};
    ticket.driver = entered.driver == DriverSeat::aboard;
    ticket.uncertainty = entered.uncertainty.value_or(ticket.uncertainty);
    return ticket;
}

std::optional<PadHeights> padsOf(const EnteredCorners& entered) {
    return entered.count() < 4 ? std::nullopt
                               : std::optional(PadHeights{*entered.leftFront, *entered.rightFront,
                                                          *entered.leftRear, *entered.rightRear});
}

constexpr double kPercent = 0.01;

Ballast ballastFrom(const EnteredBallast& entered) {
    Ballast load{.id = entered.id, .name = entered.name, .at = *entered.at.whole()};
    load.mass = entered.mass.value_or(0);
    if (!entered.mass) {
        load.fill = Fill{*entered.volume, *entered.density};
    }
    load.weighed = entered.weighed * kPercent;
    load.aboard = entered.aboard * kPercent;
    return load;
}

}  // namespace

Stance stanceOf(const Car& car) {
    return {.wheelbase = car.wheelbase,
            .frontTrack = car.frontTrack,
            .rearTrack = car.rearTrack,
            .front = ratesOf(car.wheelRates.front),
            .rear = ratesOf(car.wheelRates.rear)};
}

std::string_view missingOf(const EnteredBallast& load) {
    if (!load.mass && !(load.volume && load.density)) {
        return kNoWeight;
    }
    return load.at.whole() ? "" : kNoPlace;
}

std::vector<Ballast> ballastOf(const Car& car) {
    std::vector<Ballast> ballast;
    for (const EnteredBallast& entered : car.ballast) {
        if (missingOf(entered).empty()) {
            ballast.push_back(ballastFrom(entered));
        }
    }
    const EnteredDriver& driver = car.weighing.driver;
    const std::optional<Eigen::Vector3d> seat = driver.at.whole();
    if (car.cornersAre == DriverSeat::out && driver.mass && seat) {
        ballast.push_back({.name = "driver", .mass = *driver.mass, .at = *seat});
    }
    return ballast;
}

Weighing weighingOf(const Car& car) {
    Weighing weighing;
    weighing.withDriver = cornersWith(car, DriverSeat::aboard);
    weighing.withoutDriver = cornersWith(car, DriverSeat::out);
    weighing.driverMass = car.weighing.driver.mass;
    weighing.driverAt = car.weighing.driver.at.whole();
    weighing.ticket = ticketOf(car.weighing.ticket);
    for (const EnteredBallast& entered : car.ballast) {
        if (missingOf(entered).empty()) {
            weighing.ballast.push_back(ballastFrom(entered));
        }
    }
    weighing.pads = padsOf(car.weighing.pads);
    weighing.scaleUncertainty = car.weighing.scaleUncertainty.value_or(kScaleUncertainty);
    return weighing;
}

std::optional<LiftTest> liftOf(const Car& car) {
    const std::optional<CornerWeights> level = cornersWith(car, car.lift.driver);
    if (!level || !car.lift.height || !car.lift.reading) {
        return std::nullopt;
    }
    return LiftTest{.level = *level,
                    .raised = car.lift.raised,
                    .lift = *car.lift.height,
                    .read = car.lift.read,
                    .reading = *car.lift.reading};
}

LiftUncertainty liftUncertaintyOf(const Car& car) {
    LiftUncertainty uncertainty;
    const auto own = [&car](Field field) { return numberAt(car, {.field = field, .uncertainty = true}); };
    uncertainty.scale = car.weighing.scaleUncertainty.value_or(uncertainty.scale);
    const double tape = car.tools.tape.value_or(kTapeUncertainty);
    uncertainty.lift = own(Field::liftHeight).value_or(uncertainty.lift);
    uncertainty.wheelbase = own(Field::wheelbase).value_or(tape);
    uncertainty.radius =
        std::hypot(own(Field::rearTireRadius).value_or(tape), own(Field::frontTireRadius).value_or(tape)) /
        std::numbers::sqrt2;
    return uncertainty;
}

namespace {

/// The lift's height holds for the car as it was lifted; the corner weights may be with the driver the other
/// way. By the masses' moments over the ground, his being the difference of both readings.
void bringToCorners(const Car& car, const LiftTest& lift, CgHeight& height) {
    if (car.lift.driver == car.cornersAre) {
        return;
    }
    const OptionalNumber& seat = car.weighing.driver.at.at[2];
    if (!seat) {
        const std::string leftOut =
            say("it was lifted with the driver the other way than the corner weights, and his "
                "height in the seat is not entered: he is left out of it");
        height.remark = height.remark.empty() ? leftOut : say("%1; %2", height.remark, leftOut);
        return;
    }
    const double lifted = lift.level.total();
    const double standing = car.cornerWeights.total();
    height.height = (lifted * height.height + (standing - lifted) * *seat) / standing;
}

}  // namespace

CarBalance balanceOf(const Car& car) {
    CarBalance balance;
    balance.total = car.cornerWeights.total();
    balance.front = car.cornerWeights.front();
    balance.from.height = car.cgHeight;
    if (car.cgHeightFrom != CgHeightSource::entered) {
        const std::optional<LiftTest> lift = liftOf(car);
        CgHeightResult chosen = cgHeightFrom(car.cgHeightFrom, car.cgHeight, lift, liftCar(car),
                                             liftUncertaintyOf(car), car.units);
        balance.refusal = std::move(chosen.refusal);
        if (chosen.value) {
            balance.from = std::move(*chosen.value);
            if (car.cgHeightFrom == CgHeightSource::lift) {
                bringToCorners(car, *lift, balance.from);
            }
        }
    }
    // A lift's follows from its own readings.
    if (balance.from.source != CgHeightSource::lift) {
        const auto own = numberAt(car, {.field = Field::cgHeight, .uncertainty = true});
        const bool isTyped = balance.from.source == CgHeightSource::entered;
        const double usual =
            isTyped ? kEnteredCgUncertainty : balance.from.uncertainty.value_or(kEnteredCgUncertainty);
        balance.from.uncertainty = own.value_or(usual);
    }
    balance.height = balance.from.height;
    if (car.ballast.empty() && car.cornersAre == DriverSeat::aboard) {
        return balance;
    }
    const std::vector<MassAt> changes = changesSinceWeighed(ballastOf(car));
    BallastResult loaded = withBallast(car.cornerWeights, stanceOf(car), changes);
    balance.ballastRefusal = std::move(loaded.refusal);
    if (loaded.car) {
        balance.height = cgHeightWithBallast(balance.height, balance.total, changes);
        balance.total = loaded.car->total;
        balance.front = loaded.car->front;
    }
    return balance;
}

}  // namespace bolthole
