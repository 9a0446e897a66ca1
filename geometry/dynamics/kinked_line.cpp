#include "geometry/dynamics/kinked_line.h"

namespace bolthole {

KinkedLine throughPoints(std::span<const double> x, std::span<const double> y) {
    KinkedLine line(y[0]);
    double slope = 0;
    for (std::size_t index = 0; index < x.size(); ++index) {
        const bool last = index + 1 == x.size();
        const double next = last ? 0 : (y[index + 1] - y[index]) / (x[index + 1] - x[index]);
        line.addKink(x[index], next - slope, +1);
        slope = next;
    }
    return line;
}

}  // namespace bolthole
