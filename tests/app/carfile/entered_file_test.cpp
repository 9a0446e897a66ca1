// The car file's keys beside the links: weighing, ballast, rates, springs, driveshaft, launch, brakes.
#include <gmock/gmock.h>

#include <random>
#include <string>

#include "app/carfile/car_file.h"
#include "geometry/car/fields.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;
using Json = nlohmann::ordered_json;

// A value the field takes, of the file's short decimals.
double allowedValue(const FieldId& id, std::mt19937_64& random) {
    std::uniform_int_distribution<int> size(-4000, 4000);
    const Quantity quantity = quantityOf(id.field);
    for (int tries = 0; tries < 100'000; ++tries) {
        const double inFile = quantity == Quantity::count ? size(random) / 1000 : size(random) / 16.0;
        const double value =
            quantity == Quantity::length ? fromMillimetres(inFile) : inFile * fileUnit(quantity);
        if (refusal(id, value).empty()) {
            return value;
        }
    }
    ADD_FAILURE() << "nothing found for " << jsonPath(id);
    return 0;
}

Car carWithEverything(std::mt19937_64& random) {
    Car car = plainCar();
    EnteredBallast tank;
    tank.name = "tank";
    car.ballast.push_back(tank);
    SuspensionPart strap = car.springs.front();
    strap.name = "strap";
    strap.kind = PartKind::strap;
    strap.side = Side::left;
    strap.axle.use = 1;
    car.springs.push_back(strap);
    car.target = TargetWindow{};
    for (const FieldId& id : allIds(car)) {
        const EditResult set = apply(car, SetNumber{id, allowedValue(id, random)});
        if (set.refusal.empty()) {
            car = set.car;
        }
    }
    for (int choice = 0; choice <= static_cast<int>(Choice::differential); ++choice) {
        const auto which = static_cast<Choice>(choice);
        const int option = static_cast<int>(random() % static_cast<unsigned>(optionsOf(which)));
        car = apply(car, SetChoice{which, option}).car;
    }
    return car;
}

// Ids tie parts to their places in the file; a car that was never read has none.
Car withoutPlaces(Car car) {
    const auto forget = [](Bracket& bracket) {
        for (Hole& hole : bracket.holes) {
            hole.id = -1;
        }
    };
    for (Link& link : car.links) {
        link.id = -1;
        forget(link.chassis);
        forget(link.axle);
    }
    for (SuspensionPart& part : car.springs) {
        part.id = -1;
        forget(part.chassis);
        forget(part.axle);
    }
    for (EnteredBallast& load : car.ballast) {
        load.id = -1;
    }
    return car;
}

TEST(EnteredFile, EverythingComesBack) {
    std::mt19937_64 random(606);
    for (int round = 0; round < 200; ++round) {
        const Car car = carWithEverything(random);
        const std::string bytes = writeCar(car, Json());
        const ReadResult read = readCar(bytes);
        ASSERT_TRUE(read.loaded) << read.problem.line();
        const Car back = withoutPlaces(read.loaded->car);
        for (const FieldId& id : allIds(car)) {
            ASSERT_EQ(numberAt(back, id), numberAt(car, id)) << jsonPath(id);
        }
        ASSERT_TRUE(back == car);
        ASSERT_EQ(writeCar(read.loaded->car, read.loaded->source), bytes);
    }
}

TEST(EnteredFile, WhatWasNotEnteredIsNotWritten) {
    Car car = plainCar();
    car.ballast.clear();
    car.springs.clear();
    const Json file = Json::parse(writeCar(car, Json()));
    for (const char* key : {"front_track", "corner_weights_are", "cg_height_from", "lift", "weighing",
                            "loads", "wheel_rates", "springs", "launch", "brakes"}) {
        EXPECT_FALSE(file.contains(key)) << key;
    }
    EXPECT_FALSE(file["driveline"].contains("slip_yoke"));
    EXPECT_FALSE(file["driveline"].contains("carrier_joint"));
    EXPECT_FALSE(file["links"][0].contains("rating"));
}

TEST(EnteredFile, UnknownKeysStayWithTheirParts) {
    std::mt19937_64 random(7);
    Json file = Json::parse(writeCar(carWithEverything(random), Json()));
    file["weighing"]["color"] = "red";
    file["loads"][1]["bought"] = 2024;
    file["springs"][1]["maker"] = "unknown";
    file["launch"]["tree"] = Json::array({1, 2});
    ReadResult read = readCar(file.dump());
    ASSERT_TRUE(read.loaded) << read.problem.line();
    Car car = apply(read.loaded->car, RemoveBallast{0}).car;
    car = apply(car, RemoveSpring{0}).car;
    const Json saved = Json::parse(writeCar(car, read.loaded->source));
    EXPECT_EQ(saved["weighing"]["color"], "red");
    EXPECT_EQ(saved["loads"][0]["bought"], 2024);
    EXPECT_EQ(saved["springs"][0]["maker"], "unknown");
    EXPECT_EQ(saved["launch"]["tree"], Json::array({1, 2}));
}

TEST(EnteredFile, APointMayHaveHoles) {
    Car car = plainCar();
    car.weighing.driver.at.at = {1.25, std::nullopt, 0.5};
    const Json file = Json::parse(writeCar(car, Json()));
    EXPECT_EQ(file["weighing"]["driver"]["at"], Json::array({1250, nullptr, 500}));
    EXPECT_EQ(readCar(file.dump()).loaded->car.weighing.driver.at, car.weighing.driver.at);
}

// The file with one value put in, and the one line it is refused with.
std::string refusedWith(const std::string& pointer, const Json& value) {
    std::mt19937_64 random(99);
    Json file = Json::parse(writeCar(carWithEverything(random), Json()));
    file[Json::json_pointer(pointer)] = value;
    const ReadResult read = readCar(file.dump());
    return read.loaded ? "read" : read.problem.line();
}

TEST(EnteredFile, WrongValuesAreRefusedAtTheirPlace) {
    const std::vector<std::tuple<std::string, Json, std::string>> table{
        {"/loads/0/mass", -3, "loads[0].mass: expected a weight above 0"},
        {"/loads/1/aboard", 120, "loads[1].aboard: expected a percentage from 0 to 100"},
        {"/loads/0/at", Json::array({1, 2}), "loads[0].at: expected an array of three numbers or nulls"},
        {"/loads/0/at/1", "left", "loads[0].at[1]: expected a position"},
        {"/springs/1/kind", "sponge", "springs[1].kind: expected \"spring\", \"shock\""},
        {"/springs/0/axle/use", 2, "springs[0].axle.use"},
        {"/springs/0/axle/holes/1/at/2", 1e9, "springs[0].axle.holes[1].at[2]: expected a position"},
        {"/weighing/pads", 3, "weighing.pads: expected an object"},
        {"/weighing/axle_ticket/driver", "asleep", "weighing.axle_ticket.driver: expected \"aboard\""},
        {"/cg_height_from", "guess", "cg_height_from: expected \"entered\", \"lift\" or \"estimate\""},
        {"/driveline/slip_yoke/inward", -1, "driveline.slip_yoke.inward: expected a length of thread"},
        {"/wheel_rates/rear/roll", 0, "wheel_rates.rear.roll: expected a roll rate above 0"},
        {"/launch/converter", 0.5, "launch.converter: expected a multiplication from 1 to 10"},
        {"/brakes/rear_share", 101, "brakes.rear_share: expected a percentage"},
        {"/links/0/rating", 0, "links[0].rating: expected a force above 0"},
        {"/loads", Json::array_t(40, Json::object()), "loads: expected an array of 0 to 32 objects"},
    };
    for (const auto& [pointer, value, words] : table) {
        EXPECT_THAT(refusedWith(pointer, value), HasSubstr(words)) << pointer;
    }
}

}  // namespace
}  // namespace bolthole
