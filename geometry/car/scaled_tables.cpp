#include "geometry/car/scaled_tables.h"

namespace bolthole {

Damping scaled(const Damping& damping, double factor) {
    Damping result = damping;
    for (DampingWay* way : {&result.bump, &result.rebound}) {
        for (std::vector<double>& row : way->force) {
            for (double& force : row) {
                force *= factor;
            }
        }
    }
    return result;
}

std::vector<TorquePoint> scaled(const std::vector<TorquePoint>& torque, double factor) {
    std::vector<TorquePoint> result = torque;
    for (TorquePoint& point : result) {
        point.torque *= factor;
    }
    return result;
}

}  // namespace bolthole
