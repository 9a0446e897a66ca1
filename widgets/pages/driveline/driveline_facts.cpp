#include "widgets/pages/driveline/driveline_facts.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

namespace {

const QString kNone = QStringLiteral("—");

QString joined(const QStringList& sentences) {
    QStringList said;
    for (const QString& sentence : sentences) {
        if (!sentence.isEmpty()) {
            said << sentence;
        }
    }
    return said.join(QStringLiteral("; "));
}

QString speedText(double speed) {
    return tr("%1 rpm").arg(std::lround(speed / kRpm));
}

// A bound as it was set, without zeros nobody needs: "3°".
QString boundText(double angle) {
    const std::string number = fieldText(angle, Quantity::angle, NumberStyle());
    return QString::fromStdString(withUnit(number, Quantity::angle, Units::inch));
}

Fact heading(const QString& words) {
    return {words, {}, {}, false};
}

// What swingText() writes.
FactNumber swingNumber(std::string id, double swing) {
    return fineNumber(std::move(id), 100 * swing, Quantity::percent);
}

// The same wound up, which the row says in its remark; none where no wind-up is entered.
std::vector<FactNumber> woundNumber(const DrivelineReading& reading, const std::string& id, double value,
                                    Quantity quantity) {
    return reading.windUp ? std::vector{fineNumber(id + "_wound_up", value, quantity)}
                          : std::vector<FactNumber>{};
}

// Of a joint, as its figures are named: "front_joint", "middle_joint", "rear_joint".
std::string jointId(std::size_t joint, std::size_t joints) {
    return joint == 0 ? "front_joint" : joint + 1 == joints ? "rear_joint" : "middle_joint";
}

// "wound up 2.10°", or nothing where no wind-up is entered.
QString woundText(const DrivelineReading& reading, const QString& value) {
    return reading.windUp ? tr("wound up %1").arg(value) : QString();
}

// A sweep's largest, coasting or wound up, whichever is worse.
struct Worst {
    AtTravel at;
    bool isWoundUp = false;
};
Worst worse(const AtTravel& coasting, const AtTravel& woundUp) {
    return woundUp.value > coasting.value ? Worst{woundUp, true} : Worst{coasting, false};
}

QString whereText(const DrivelineReading& reading, const Worst& worst, Units units) {
    if (std::isnan(worst.at.value)) {
        return {};
    }
    const QString where = travelInWords(worst.at.travel, units);
    return worst.isWoundUp  ? tr("at %1, wound up").arg(where)
           : reading.windUp ? tr("at %1, coasting").arg(where)
                            : tr("at %1, coasting; wind-up not entered").arg(where);
}

// At which travel it is, which the row says in its remark.
std::vector<FactNumber> placeOf(const std::string& id, const Worst& worst) {
    return {fineNumber(id + "_at", worst.at.travel, Quantity::length)};
}

double largestAngle(const DrivelineFigures& figures) {
    return *std::max_element(figures.angle.begin(),
                             figures.angle.begin() + static_cast<std::ptrdiff_t>(figures.joints));
}

Fact jointAtRide(const DrivelineReading& reading, std::size_t joint) {
    const double angle = reading.ride.coasting.angle[joint];
    const bool straight = angle < kLeastJointAngle;
    const QString bound = straight ? tr("▲ its needles need %1 to roll, or they wear into the cross (Dana "
                                        "Spicer, J3311-1-DSSP)")
                                         .arg(boundText(kLeastJointAngle))
                                   : QString();
    const double woundUp = reading.ride.woundUp.angle[joint];
    const QString wound = woundText(reading, angleText(woundUp));
    const std::string id = jointId(joint, reading.ride.coasting.joints) + "_ride";
    return {capitalized(jointWords(joint, reading.ride.coasting.joints)),
            angleText(angle),
            joined({wound, bound}),
            straight,
            sizeOf(fineNumber(id, angle, Quantity::angle)),
            {},
            woundNumber(reading, id, woundUp, Quantity::angle)};
}

// Under power it counts as much as coasting: that is when the shaft is loaded.
Fact equivalentAtRide(const DrivelineReading& reading) {
    const DrivelineFigures& ride = reading.ride.coasting;
    const DrivelineFigures& wound = reading.ride.woundUp;
    const bool tooMuch = std::max(ride.equivalent, wound.equivalent) > kMostEquivalent;
    const bool adds = ride.equivalent > kMostEquivalent && ride.equivalent > largestAngle(ride);
    const QString most = boundText(kMostEquivalent);
    const QString bound =
        adds      ? tr("▲ the joints add instead of canceling: check whether the yokes are in phase")
        : tooMuch ? tr("▲ past the usual most of %1 (Elbe and Dana, industrial catalogues)").arg(most)
                  : tr("one joint at this angle would swing the pinion's speed as much; %1 at most (Elbe and "
                       "Dana, industrial catalogues)")
                        .arg(most);
    return {tr("Equivalent angle"),
            angleText(ride.equivalent),
            joined({woundText(reading, angleText(wound.equivalent)), bound}),
            tooMuch,
            sizeOf(fineNumber("equivalent_angle_ride", ride.equivalent, Quantity::angle)),
            {},
            woundNumber(reading, "equivalent_angle_ride", wound.equivalent, Quantity::angle)};
}

Fact endsAtRide(const DrivelineReading& reading) {
    const DrivelineFigures& ride = reading.ride.coasting;
    const DrivelineFigures& wound = reading.ride.woundUp;
    const double difference = std::abs(ride.angle[0] - ride.angle[1]);
    const double underPower = std::abs(wound.angle[0] - wound.angle[1]);
    const bool unequal = std::max(difference, underPower) > kEqualEnds;
    const QString bound =
        tr("to cancel they should be within %1 of each other (Dana Spicer, J3311-1-DSSP, p. 5)")
            .arg(boundText(kEqualEnds));
    return {
        tr("Front against rear"),
        angleText(difference),
        joined({woundText(reading, angleText(underPower)), unequal ? QStringLiteral("▲ ") + bound : bound}),
        unequal,
        fineNumber("front_less_rear_ride", ride.angle[0] - ride.angle[1], Quantity::angle),
        {},
        woundNumber(reading, "front_less_rear_ride", wound.angle[0] - wound.angle[1], Quantity::angle)};
}

Fact jointInTravel(const DrivelineReading& reading, std::size_t joint, Units units) {
    const Worst worst = worse(reading.coasting.largest[joint], reading.woundUp.largest[joint]);
    const std::optional<double>& limit = reading.line.jointLimit;
    const bool over = limit && worst.at.value > *limit;
    QString bound = limit ? tr("%1 entered as the most").arg(boundText(*limit)) : tr("no limit entered");
    if (over) {
        bound = tr("▲ past the %1 entered as the most").arg(boundText(*limit));
    }
    return {capitalized(jointWords(joint, reading.ride.coasting.joints)),
            angleText(worst.at.value),
            joined({whereText(reading, worst, units), bound}),
            over,
            sizeOf(fineNumber(jointId(joint, reading.ride.coasting.joints) + "_largest", worst.at.value,
                              Quantity::angle)),
            {},
            placeOf(jointId(joint, reading.ride.coasting.joints) + "_largest", worst)};
}

Fact shaftSpeed(const DrivelineReading& reading) {
    const ShaftSetup& setup = reading.setup;
    const std::optional<double> speed = setup.speed();
    if (!speed) {
        return {tr("Shaft speed"), kNone,
                !setup.engineSpeed && !setup.gear ? tr("not known: engine speed and gear are not entered")
                : setup.gear                      ? tr("not known: engine speed is not entered")
                                                  : tr("not known: the gear's ratio is not entered"),
                false};
    }
    return {tr("Shaft speed"),
            speedText(*speed),
            tr("engine at %1 in a gear of %2")
                .arg(speedText(*setup.engineSpeed),
                     QString::fromStdString(fieldText(*setup.gear, Quantity::ratio, NumberStyle()))),
            false,
            FactNumber{},
            {},
            {plainNumber("shaft_speed", *speed, Quantity::speed)}};
}

Fact angleLimit(const DrivelineReading& reading) {
    const std::optional<double> speed = reading.setup.speed();
    if (!speed) {
        return {tr("Angle that allows"), kNone, tr("not known without the shaft's speed"), false};
    }
    const AngleLimit limit = jointAngleLimit(*speed);
    const double coasting = largestAngle(reading.ride.coasting);
    const double wound = largestAngle(reading.ride.woundUp);
    const bool over = std::max(coasting, wound) > limit.angle;
    const QString value =
        limit.pastTable ? tr("less than %1").arg(boundText(limit.angle)) : boundText(limit.angle);
    const QString table = limit.pastTable ? tr("a joint manufacturer's published table, which ends at 5000 "
                                               "rpm: by how much less it does not say")
                                          : tr("a joint manufacturer's published table");
    const QString against = tr("at ride the joints work at up to %1").arg(angleText(coasting));
    return {tr("Angle that allows"),
            value,
            joined({over ? QStringLiteral("▲ ") + against : against, woundText(reading, angleText(wound)),
                    table}),
            over,
            FactNumber{},
            {},
            {fineNumber("angle_allowed", limit.angle, Quantity::angle),
             fineNumber("largest_angle_ride", coasting, Quantity::angle)}};
}

Fact shake(const DrivelineReading& reading) {
    const std::optional<double> speed = reading.setup.speed();
    if (!speed) {
        return {tr("Pinion's acceleration"), kNone, tr("not known without the shaft's speed"), false};
    }
    const auto peak = [&](const DrivelineFigures& figures) {
        return peakAcceleration(figures.equivalent, *speed).acceleration;
    };
    const auto text = [&](const DrivelineFigures& figures) {
        return tr("%1 rad/s²").arg(std::lround(peak(figures)));
    };
    const auto number = [&](std::string id, const DrivelineFigures& figures) {
        return FactNumber{std::move(id), peak(figures), Quantity::count, Fineness::plain,
                          QStringLiteral("rad/s²")};
    };
    std::vector<FactNumber> numbers{number("pinion_acceleration", reading.ride.coasting)};
    if (reading.windUp) {
        numbers.push_back(number("pinion_acceleration_wound_up", reading.ride.woundUp));
    }
    return {tr("Pinion's acceleration"),
            text(reading.ride.coasting),
            joined({woundText(reading, text(reading.ride.woundUp)),
                    tr("its peak at that speed, twice a turn, as of one joint at the equivalent angle at "
                       "ride; no bound is given here")}),
            false,
            FactNumber{},
            {},
            numbers};
}

// What is missing before the slip yoke counts.
QString missingOfSlip(const EnteredSlip& slip) {
    QStringList missing;
    if (!slip.engagement) {
        missing << tr("engagement");
    }
    if (!slip.leastEngagement) {
        missing << tr("least engagement");
    }
    if (!slip.inward) {
        missing << tr("room inward");
    }
    return tr("not known: not entered for the slip yoke: %1").arg(missing.join(QStringLiteral(", ")));
}

Fact room(std::string id, const QString& label, double left, const QString& enough, const QString& ends,
          Units units) {
    return {label, lengthText(left, units), left < 0 ? QStringLiteral("▲ ") + ends : enough, left < 0,
            fineNumber(std::move(id), left, Quantity::length)};
}

Fact settingFact(const std::string& id, const QString& name, const std::optional<PinionSetting>& setting,
                 bool isMeant, std::size_t joints) {
    if (!setting) {
        return {name, kNone,
                joints == 2 ? tr("does not exist: however the pinion is turned, the rear joint adds to the "
                                 "front one")
                            : tr("does not exist: the rear joint can only add to what the joints before it "
                                 "leave over, as where the front joint bends more than the carrier joint"),
                false};
    }
    const QString size = angleText(std::abs(setting->turn));
    const QString turn = size == angleText(0) ? tr("that is where the housing is")
                         : setting->turn > 0  ? tr("turn the housing %1 nose up").arg(size)
                                              : tr("turn the housing %1 nose down").arg(size);
    return {name,
            noseWords(setting->pinion),
            joined({isMeant ? tr("◀ the one meant, nearer to where the pinion is") : QString(), turn,
                    tr("leaves an equivalent angle of %1").arg(angleText(setting->left))}),
            false,
            fineNumber(id, setting->pinion, Quantity::angle),
            {},
            {fineNumber(id + "_turn", setting->turn, Quantity::angle),
             fineNumber(id + "_left", setting->left, Quantity::angle)}};
}

void addSettings(const std::string& prefix, const PinionSettings& settings, std::size_t joints,
                 std::vector<Fact>& facts) {
    const bool any = settings.parallel || settings.brokenBack;
    facts.push_back(settingFact(prefix + "_parallel", tr("Parallel (Z)"), settings.parallel,
                                any && settings.parallelIsMeant, joints));
    facts.push_back(settingFact(prefix + "_broken_back", tr("Broken back (W)"), settings.brokenBack,
                                any && !settings.parallelIsMeant, joints));
}

}  // namespace

QString swingText(double swing) {
    return std::isfinite(swing) ? QStringLiteral("%1 %").arg(100 * swing, 0, 'f', 2) : kNone;
}

std::vector<Fact> rideFacts(const DrivelineReading& reading) {
    std::vector<Fact> facts;
    const DrivelineFigures& ride = reading.ride.coasting;
    for (std::size_t joint = 0; joint < ride.joints; ++joint) {
        facts.push_back(jointAtRide(reading, joint));
    }
    if (ride.joints == 2) {
        facts.push_back(endsAtRide(reading));
    }
    facts.push_back(equivalentAtRide(reading));
    facts.push_back(
        {tr("Speed variation"),
         swingText(ride.swing),
         joined({woundText(reading, swingText(reading.ride.woundUp.swing)),
                 tr("the pinion's fastest less its slowest, twice a turn of the shaft")}),
         false,
         swingNumber("speed_swing_ride", ride.swing),
         {},
         woundNumber(reading, "speed_swing_ride", 100 * reading.ride.woundUp.swing, Quantity::percent)});
    return facts;
}

std::vector<Fact> travelFacts(const DrivelineReading& reading, Units units) {
    std::vector<Fact> facts;
    for (std::size_t joint = 0; joint < reading.ride.coasting.joints; ++joint) {
        facts.push_back(jointInTravel(reading, joint, units));
    }
    const Worst equivalent = worse(reading.coasting.equivalent, reading.woundUp.equivalent);
    facts.push_back({tr("Equivalent angle"),
                     angleText(equivalent.at.value),
                     joined({whereText(reading, equivalent, units),
                             tr("%1 at most at a height the car stays at").arg(boundText(kMostEquivalent))}),
                     false,
                     fineNumber("equivalent_angle_largest", equivalent.at.value, Quantity::angle),
                     {},
                     placeOf("equivalent_angle_largest", equivalent)});
    const Worst swing = worse(reading.coasting.swing, reading.woundUp.swing);
    facts.push_back({tr("Speed variation"),
                     swingText(swing.at.value),
                     whereText(reading, swing, units),
                     false,
                     swingNumber("speed_swing_largest", swing.at.value),
                     {},
                     placeOf("speed_swing_largest", swing)});
    return facts;
}

std::vector<Fact> speedFacts(const DrivelineReading& reading) {
    return {shaftSpeed(reading), angleLimit(reading), shake(reading)};
}

std::vector<Fact> plungeFacts(const DrivelineReading& reading, Units units) {
    const Worst out = worse(reading.coasting.mostPlunge, reading.woundUp.mostPlunge);
    const bool windsIn = reading.woundUp.leastPlunge.value < reading.coasting.leastPlunge.value;
    const Worst in{windsIn ? reading.woundUp.leastPlunge : reading.coasting.leastPlunge, windsIn};
    std::vector<Fact> facts{{tr("Farthest out"),
                             lengthText(out.at.value, units),
                             whereText(reading, out, units),
                             false,
                             fineNumber("plunge_out", out.at.value, Quantity::length),
                             {},
                             placeOf("plunge_out", out)},
                            {tr("Farthest in"),
                             lengthText(std::max(0.0, -in.at.value), units),
                             whereText(reading, in, units),
                             false,
                             fineNumber("plunge_in", std::max(0.0, -in.at.value), Quantity::length),
                             {},
                             placeOf("plunge_in", in)}};
    if (!reading.setup.slip) {
        const QString why = missingOfSlip(reading.line.shaft.slip);
        facts.push_back({tr("Travel to the least engagement"), kNone, why, false});
        facts.push_back({tr("Travel to bottoming"), kNone, why, false});
        return facts;
    }
    const SlipYoke& yoke = *reading.setup.slip;
    const SlipRoom left = slipRoom(yoke, in.at.value, out.at.value);
    facts.push_back({tr("Least spline engagement"), lengthText(yoke.engagement - out.at.value, units),
                     tr("%1 entered as what must stay held").arg(lengthText(yoke.leastEngagement, units)),
                     false, fineNumber("spline_held", yoke.engagement - out.at.value, Quantity::length)});
    facts.push_back(room("room_out", tr("Travel to the least engagement"), left.out,
                         tr("before less spline than that is held"),
                         tr("less spline than must stay held: the yoke can come out"), units));
    facts.push_back(room("room_in", tr("Travel to bottoming"), left.in, tr("before the yoke bottoms"),
                         tr("the yoke bottoms before the travel ends: the shaft jams"), units));
    return facts;
}

std::vector<Fact> pinionFacts(const DrivelineReading& reading) {
    std::vector<Fact> facts;
    const double now =
        reading.reader->pinionInclination(reading.rideStation.pose, 0) - reading.rideStation[Figure::ground];
    const std::size_t joints = reading.ride.coasting.joints;
    facts.push_back({tr("Pinion at ride now"), noseWords(now), tr("coasting, against the ground"), false,
                     fineNumber("pinion_ride", now, Quantity::angle)});
    facts.push_back(heading(tr("To cancel coasting, at ride")));
    addSettings("pinion_coasting", reading.settings, joints, facts);
    if (!reading.windUp) {
        facts.push_back({tr("To cancel under power"), kNone, tr("not known: no wind-up is entered"), false});
        return facts;
    }
    facts.push_back(heading(tr("To cancel under power, wound up by %1").arg(angleText(*reading.windUp))));
    addSettings("pinion_wound_up", reading.settingsWoundUp, joints, facts);
    return facts;
}

CardFacts drivelineCards(const DrivelineReading& reading, Units units) {
    return reading.isThere()
               ? CardFacts{pinionFacts(reading), rideFacts(reading), travelFacts(reading, units),
                           speedFacts(reading), plungeFacts(reading, units)}
               : CardFacts{};
}

}  // namespace bolthole
