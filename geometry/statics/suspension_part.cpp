#include "geometry/statics/suspension_part.h"

#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

std::string_view nameOf(PartKind kind) {
    switch (kind) {
        case PartKind::spring:
            return phrase("spring");
        case PartKind::shock:
            return phrase("shock");
        case PartKind::coilOver:
            return phrase("coilover");
        case PartKind::bumpStop:
            return phrase("bump stop");
        case PartKind::strap:
            return phrase("strap");
    }
    return "";
}

double SuspensionPart::force(double length) const {
    return push + rateAt(length) * (freeLength.value_or(length) - length);
}

double SuspensionPart::rateAt(double length) const {
    return rate && freeLength && length < *freeLength ? *rate : 0.0;
}

std::string refusal(const SuspensionPart& part) {
    const auto bad = [](const std::optional<double>& value) { return value && !(*value > 0); };
    if (bad(part.rate) || bad(part.freeLength) || bad(part.closedLength) || bad(part.openLength)) {
        return say("expected a rate and lengths above 0");
    }
    if (!std::isfinite(part.push)) {
        return say("expected a force for what the part pushes at any length");
    }
    if (part.rate && !part.freeLength) {
        return say(
            "expected a free length beside the rate: without it nobody knows how hard the spring pushes");
    }
    if (part.closedLength && part.openLength && !(*part.closedLength < *part.openLength)) {
        return say("expected a compressed length below the extended length");
    }
    if (part.closedLength && part.freeLength && !(*part.closedLength < *part.freeLength)) {
        return say("expected a compressed length below the free length");
    }
    if ((part.axle.inUse().at - part.chassis.inUse().at).norm() == 0) {
        return say("expected the mounts in use apart, found both at the same place");
    }
    return {};
}

void buildPartLines(std::span<const SuspensionPart> parts, double measuredHeight,
                    std::vector<PartLine>& lines) {
    lines.clear();
    const Eigen::Vector3d center(0, 0, measuredHeight);
    for (std::size_t index = 0; index < parts.size(); ++index) {
        const SuspensionPart& part = parts[index];
        PartLine line{.part = static_cast<int>(index),
                      .side = part.side,
                      .onAxle = part.axle.inUse().at - center,
                      .onChassis = part.chassis.inUse().at};
        if (part.side == Side::both) {
            line.side = Side::left;
            lines.push_back(line);
            line = {line.part, Side::right, mirrored(line.onAxle), mirrored(line.onChassis)};
        }
        lines.push_back(line);
    }
    for (PartLine& line : lines) {
        if (parts[static_cast<std::size_t>(line.part)].kind == PartKind::bumpStop) {
            line.fixAxis(measuredHeight);
        }
    }
}

namespace {

// R = Rz(yaw) Ry(pitch) Rx(roll): pitch turns about the axle's own lateral axis, less its roll.
Eigen::Vector3d pitchAxis(const AxlePose& pose) {
    return {-std::sin(pose.yaw), std::cos(pose.yaw), 0.0};
}

}  // namespace

AxleMotion travelMotion(const AxlePose& pose, const AxleRates& rates) {
    return {.velocity = {rates.x, rates.y, 1.0},
            .turning = rates.pitch * pitchAxis(pose) + rates.yaw * Eigen::Vector3d::UnitZ()};
}

AxleMotion rollMotion(const AxlePose& pose, const AxleRates& rates) {
    AxleMotion motion = travelMotion(pose, rates);
    motion.velocity.z() = 0;
    motion.turning += pose.rotation().col(0);
    return motion;
}

LineState lineState(const PartLine& line, const AxlePose& pose, const Eigen::Matrix3d& rotation) {
    LineState state;
    state.arm = rotation * line.onAxle;
    const Eigen::Vector3d span = Eigen::Vector3d(pose.x, pose.y, pose.z) + state.arm - line.onChassis;
    state.isFixed = line.fixedAxis.has_value();
    state.length = state.isFixed ? line.fixedAxis->dot(span) : span.norm();
    state.unit = state.isFixed ? *line.fixedAxis : Eigen::Vector3d(span / state.length);
    return state;
}

}  // namespace bolthole
