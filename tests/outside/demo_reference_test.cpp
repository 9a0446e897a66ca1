// The demo cars against Simbody and Ceres, to a millionth of a millimetre.
#include <gmock/gmock.h>

#include <filesystem>
#include <string>

#include "app/carfile/car_file.h"
#include "tests/outside/ceres_reference.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/simbody_reference.h"

namespace bolthole {

namespace {

Car carOfDemoFile(const std::string& file) {
    const ReadResult result = readCarFile(std::string(BOLTHOLE_DEMO_DIR) + "/" + file);
    EXPECT_TRUE(result.loaded) << result.problem.line();
    return result.loaded ? result.loaded->car : Car{};
}

std::vector<std::string> demoFiles() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(BOLTHOLE_DEMO_DIR)) {
        files.push_back(entry.path().filename().string());
    }
    return files;
}

// Simbody's assembler takes no more equations than unknowns. Where a demo car has one more, which fits all
// the same, one that another stands for can be left out and the rest must still find the same pose: any rod
// of a pair, or the height of either of two pivots.
std::vector<ReferenceAxle> closable(const Linkage& linkage) {
    const ReferenceAxle whole = referenceAxle(linkage);
    if (whole.links.size() <= 4) {
        return {whole};
    }
    std::vector<ReferenceAxle> axles;
    for (std::size_t index = 0; index < whole.links.size(); ++index) {
        const ReferenceLink& leftOut = whole.links[index];
        const bool onTheLeft = leftOut.onAxle.y() > 0;
        const bool standsTwice = leftOut.kind == ReferenceLink::rod || leftOut.kind == ReferenceLink::sameZ;
        if (onTheLeft && standsTwice) {
            ReferenceAxle rest = whole;
            rest.links.erase(rest.links.begin() + static_cast<std::ptrdiff_t>(index));
            axles.push_back(rest);
        }
    }
    return axles;
}

}  // namespace

// Every demo car through its whole travel; Ceres takes exactly held and over-held cars alike.
TEST(AgainstCeres, DemoCars) {
    const std::vector<std::string> files = demoFiles();
    ASSERT_GE(files.size(), 2U);
    for (const std::string& file : files) {
        SCOPED_TRACE(file);
        const Car car = carOfDemoFile(file);
        const double bump = car.travel.bump;
        const double droop = -car.travel.droop;
        compare<CeresReference>(buildLinkage(car), Drive::travel,
                                {{0, 0}, {bump / 2, 0}, {bump, 0}, {0, 0}, {droop / 2, 0}, {droop, 0}});
    }
}

TEST(AgainstSimbody, DemoCars) {
    const std::vector<std::string> files = demoFiles();
    ASSERT_GE(files.size(), 2U);
    for (const std::string& file : files) {
        SCOPED_TRACE(file);
        const Car car = carOfDemoFile(file);
        const Linkage linkage = buildLinkage(car);
        const std::vector<ReferenceAxle> axles = closable(linkage);
        ASSERT_FALSE(axles.empty());
        for (const ReferenceAxle& axle : axles) {
            compare<SimbodyReference>(linkage, axle, Drive::travel,
                                      {{0, 0}, {car.travel.bump, 0}, {0, 0}, {-car.travel.droop, 0}});
        }
    }
}

}  // namespace bolthole
