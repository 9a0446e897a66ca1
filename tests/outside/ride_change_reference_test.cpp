// Other tires and ride heights against Simbody: it places the axle's holes, plain trigonometry the ground.
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/edits/ride_change.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/reference_axle.h"
#include "tests/outside/simbody_reference.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

/// Points as they are measured from the ground line tangent below both tires, by the angle of the line of
/// centers: ordinary trigonometry, no source.
class GroundByAngles {
  public:
    GroundByAngles(const Eigen::Vector3d& rear, const Eigen::Vector3d& front, double rearRadius,
                   double frontRadius)
        : rear_(rear), rearRadius_(rearRadius) {
        const Eigen::Vector3d line = front - rear;
        const double apart = std::hypot(line.x(), line.z());
        angle_ = std::atan2(line.z(), line.x()) - std::asin((frontRadius - rearRadius) / apart);
    }

    Eigen::Vector3d measured(const Eigen::Vector3d& point) const {
        const Eigen::Vector3d from = point - rear_;
        return {std::cos(angle_) * from.x() + std::sin(angle_) * from.z(), from.y(),
                rearRadius_ + std::cos(angle_) * from.z() - std::sin(angle_) * from.x()};
    }

  private:
    Eigen::Vector3d rear_;
    double rearRadius_;
    double angle_ = 0;
};

void expectNear(const Eigen::Vector3d& found, const Eigen::Vector3d& expected) {
    EXPECT_LE((found - expected).lpNorm<Eigen::Infinity>(), kAgreement)
        << "found " << found.transpose() << ", expected " << expected.transpose();
}

void compareChange(const Car& car, const RideChange& change) {
    SimbodyReference reference(referenceAxle(buildLinkage(car)));
    ASSERT_TRUE(reference.moveTo(change.rearLower));
    const CarResult result = changeRide(car, change);
    ASSERT_TRUE(result.car.has_value()) << result.refusal;
    const Eigen::Vector3d front(car.wheelbase, 0, car.frontTireRadius + change.frontLower);
    const GroundByAngles ground(reference.carry(Eigen::Vector3d::Zero()), front, change.rearTireRadius,
                                change.frontTireRadius);
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        const Link& old = car.links[link];
        const Link& moved = result.car->links[link];
        expectNear(moved.axle.inUse().at, ground.measured(reference.carry(old.axle.inUse().at - center)));
        expectNear(moved.chassis.inUse().at, ground.measured(old.chassis.inUse().at));
    }
    expectNear(result.car->driveline->pinionJoint,
               ground.measured(reference.carry(car.driveline->pinionJoint - center)));
    expectNear({result.car->wheelbase, 0, change.frontTireRadius}, ground.measured(front));
}

}  // namespace

TEST(RideChangeAgainstSimbody, SymmetricFourLinks) {
    CarGenerator generator(4100);
    for (int number = 0; number < 60; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        Car car = generator.draw(Layout::triangulated);
        if (number % 2 == 1) {
            generator.misbuild(car, 0.01);
        }
        const RideChange change{.rearTireRadius = car.rearTireRadius + generator.between(-0.03, 0.05),
                                .frontTireRadius = car.frontTireRadius + generator.between(-0.03, 0.03),
                                .rearLower = generator.between(-0.06, 0.06),
                                .frontLower = generator.between(-0.06, 0.06)};
        compareChange(car, change);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

}  // namespace bolthole
