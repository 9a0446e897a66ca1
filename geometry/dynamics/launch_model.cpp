// Setting up; the equations stand in launch_equations.cpp.
#include "geometry/dynamics/launch_model.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "geometry/dynamics/damping_line.h"
#include "geometry/dynamics/launch_limits.h"

namespace bolthole {

MoveReport LaunchModel::prepare(const LaunchInputs& inputs) {
    inputs_ = inputs;
    ratio_ = inputs_.gear * inputs_.axleRatio;
    // After H. B. Pacejka, "Tire and Vehicle Dynamics", ch. 4 (from memory): peak at peakSlip, `sliding` of
    // it far beyond.
    peakShape_ = 2 - 2 / std::numbers::pi * std::asin(inputs_.tires.sliding);
    peakRise_ = std::tan(std::numbers::pi / (2 * peakShape_)) / inputs_.tires.peakSlip;
    clutch_ = Clutch::engineFaster;
    lockedDriving_ = true;
    placeBodies();
    addLines();
    const MoveReport report = table_.begin(inputs_.linkage, tableLines_);
    if (!report.usable()) {
        return report;
    }
    table_.cover(-inputs_.travel.droop, inputs_.travel.bump);
    if (table_.nodeCount() < 2) {  // ride is where the links run out both ways
        return table_.end(+1);
    }
    values_.assign(table_.quantityCount(), {});
    addKinks();
    balanceRest();
    return report;
}

LaunchState LaunchModel::atRest() const {
    LaunchState state{};
    state[kEngineSpeed] = inputs_.engine.launchSpeed;
    return state;
}

// The sprung mass stands so that the whole car's center is where it was measured.
void LaunchModel::placeBodies() {
    const LaunchBodies& bodies = inputs_.bodies;
    rest_ = {};
    rest_.sprungMass = bodies.total - bodies.rearUnsprung - bodies.frontUnsprung;
    rest_.sprungX =
        (bodies.total * bodies.cgAhead - bodies.frontUnsprung * bodies.wheelbase) / rest_.sprungMass;
    rest_.sprungZ = (bodies.total * bodies.cgHeight - bodies.rearUnsprung * bodies.rearRadius -
                     bodies.frontUnsprung * bodies.frontRadius) /
                    rest_.sprungMass;
}

// Left and right of a mirror-symmetric car move alike and count as one line.
void LaunchModel::addLines() {
    lines_.clear();
    tableLines_.clear();
    const bool symmetric = inputs_.linkage.isMirrorSymmetric();
    for (std::size_t index = 0; index < inputs_.parts.size(); ++index) {
        const LaunchPart& part = inputs_.parts[index];
        const TableLine line{part.onAxle, part.onChassis, part.kind == PartKind::bumpStop};
        const bool both = part.side == Side::both;
        lines_.push_back({index, both && symmetric ? 2.0 : 1.0});
        tableLines_.push_back(line);
        if (both && !symmetric) {
            lines_.push_back({index, 1.0});
            tableLines_.push_back({mirrored(line.onAxle), mirrored(line.onChassis), line.alongFixedAxis});
        }
    }
}

namespace {

// What a part does by its length: N, + pushes the mounts apart.
KinkedLine partLine(const LaunchPart& part) {
    KinkedLine line(part.push);
    const bool pushes =
        part.kind == PartKind::spring || part.kind == PartKind::coilOver || part.kind == PartKind::bumpStop;
    if (pushes && part.rate && part.freeLength) {
        line.addKink(*part.freeLength, -*part.rate, -1);
    }
    if (part.closedLength) {
        line.addKink(*part.closedLength, -kPartStopRate, -1);
    }
    if (part.openLength) {
        line.addKink(*part.openLength, -kPartStopRate, +1);
    }
    return line;
}

}  // namespace

void LaunchModel::addKinks() {
    kinks_.assign(kFixedKinks + 2 * lines_.size(), KinkedLine{});
    kinks_[kClock] = KinkedLine(1);
    if (inputs_.release > 0) {
        kinks_[kClock].addKink(inputs_.release, 1 / inputs_.release, -1);
    }
    kinks_[kRearTire].addKink(0, 1, +1);
    kinks_[kFrontTire].addKink(0, 1, +1);
    const LaunchFront& front = inputs_.front;
    kinks_[kFrontStops] = KinkedLine(0, -2 * front.wheelRate);
    kinks_[kFrontStops].addKink(-front.droop, -kFrontStopRate, -1);
    kinks_[kFrontStops].addKink(front.bump, -kFrontStopRate, +1);
    if (front.damping) {
        kinks_[kFrontShock] = dampingLine(*front.damping);
    }
    addEngine();
    addConverter();
    for (std::size_t index = 0; index < lines_.size(); ++index) {
        const LaunchPart& part = inputs_.parts[lines_[index].part];
        kinks_[kFixedKinks + 2 * index] = partLine(part);
        if (part.damping) {
            kinks_[kFixedKinks + 2 * index + 1] = dampingLine(*part.damping);
        }
    }
    indices_.assign(kinks_.size(), 0);
    pieces_.assign(kinks_.size(), {});
    arguments_.assign(kinks_.size(), 0);
}

void LaunchModel::addEngine() {
    const LaunchEngine& engine = inputs_.engine;
    std::vector<double> speeds;
    std::vector<double> torques;
    for (const TorquePoint& point : engine.torque) {
        speeds.push_back(point.speed);
        torques.push_back(point.torque);
    }
    KinkedLine curve = throughPoints(speeds, torques);
    const double slope = 1 / kLimiterBand;
    limiter_ = KinkedLine(1);
    limiter_.addKink(engine.revLimit, -slope, +1);
    limiter_.addKink(engine.revLimit + kLimiterBand, slope, +1);
    // Both get the pieces of both, so that one index serves them; and one ends where the engine stalls.
    for (const double kink : {engine.revLimit, engine.revLimit + kLimiterBand, kStalledSpeed}) {
        curve.cut(kink);
    }
    for (const KinkedLine::Piece& piece : curve.pieces()) {
        if (std::isfinite(piece.low)) {
            limiter_.cut(piece.low);
        }
    }
    kinks_[kTorqueCurve] = curve;
    const double stall = inputs_.coupling.stallSpeed;
    stallFactor_ = hasConverter() ? curve.at(stall) / (stall * stall) : 0;
}

void LaunchModel::addConverter() {
    const LaunchCoupling& coupling = inputs_.coupling;
    KinkedLine& pump = kinks_[kSpeedRatio];
    if (!hasConverter()) {
        return;
    }
    const double coupled = coupling.couplingRatio;
    pump = KinkedLine(1);
    pump.cut(0);
    pump.addKink(coupled, -1 / (1 - coupled), +1);
    pump.addKink(1, 1 / (1 - coupled), +1);
    const double slope = (1 - coupling.torqueRatio) / coupled;
    multiplier_ = KinkedLine(coupling.torqueRatio);
    multiplier_.addKink(0, slope, +1);
    multiplier_.addKink(coupled, -slope, +1);
    multiplier_.cut(1);
}

void LaunchModel::use(std::size_t kink, std::size_t piece) {
    indices_[kink] = piece;
    pieces_[kink] = kinks_[kink][piece];
}

void LaunchModel::choosePieces() {
    for (std::size_t kink = 0; kink < kinks_.size(); ++kink) {
        if (kink == kSpeedRatio && !hasConverter()) {
            setClutch(clutch_);
        } else if (kink == kLinkageEnd) {
            pieces_[kink] = {.low = table_.lowest(), .high = table_.highest()};
        } else {
            use(kink, kinks_[kink].pieceOf(arguments_[kink]));
        }
    }
}

void LaunchModel::setClutch(Clutch clutch) {
    constexpr double kEndless = std::numeric_limits<double>::infinity();
    clutch_ = clutch;
    KinkedLine::Piece& piece = pieces_[kSpeedRatio];
    piece = {};
    piece.low = clutch == Clutch::engineSlower ? -kEndless : clutch == Clutch::engineFaster ? 0 : -1;
    piece.high = clutch == Clutch::engineSlower ? 0 : clutch == Clutch::engineFaster ? kEndless : 1;
}

bool LaunchModel::cross(std::size_t kink, int direction) {
    if (kink == kLinkageEnd) {
        const bool longer = table_.extend(direction);
        pieces_[kink] = {.low = table_.lowest(), .high = table_.highest()};
        return longer;
    }
    if (kink != kSpeedRatio || hasConverter()) {
        use(kink, direction > 0 ? indices_[kink] + 1 : indices_[kink] - 1);
        return true;
    }
    if (clutch_ == Clutch::locked) {  // the torque needed is past what it holds
        setClutch(direction > 0 ? Clutch::engineFaster : Clutch::engineSlower);
        return true;
    }
    const Clutch slipping = clutch_;
    setClutch(Clutch::locked);
    LaunchState rates{};
    derive(rates);
    if (std::abs(arguments_[kSpeedRatio]) >
        1) {  // no lock holds: it slips through to the other side, or not at all
        const bool needsMore = arguments_[kSpeedRatio] > 0;
        setClutch(needsMore ? Clutch::engineFaster : Clutch::engineSlower);
    }
    return clutch_ != slipping;
}

// Constants on pitch, rear and front travel that make the rest pose an equilibrium.
void LaunchModel::balanceRest() {
    observe(0, atRest());
    choosePieces();
    deriveTires();
    deriveSuspension();
    now_.thrust = 0;
    const LaunchForces forces = bodyForces();
    rest_.onPitch = -forces[2];
    rest_.onRear = -forces[3] - now_.suspension;
    rest_.onFront = -forces[4] - frontForce();
}

}  // namespace bolthole
