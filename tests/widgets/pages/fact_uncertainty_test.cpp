// The uncertainty of the rows of a card: beside which they stand, and where nothing is said.
#include "widgets/pages/fact_uncertainty.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/edits/edit.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

Fact massFact(const QString& label, double kilograms) {
    return {label, QStringLiteral("so much"), QStringLiteral("weighed"), false,
            fineNumber(label.toStdString(), kilograms, Quantity::mass)};
}

CardFacts read(const Car& car) {
    return {{massFact(QStringLiteral("total"), car.cornerWeights.total())},
            {Fact{QStringLiteral("words"), QStringLiteral("none"), QString()},
             massFact(QStringLiteral("one"), car.cornerWeights.leftFront)}};
}

// 1.96 standard uncertainties (JCGM 100, table G.1): of one reading of 0.5 kg, and of four of them.
TEST(FactUncertainty, StandsBesideTheRowsWithANumber) {
    Car car = CarGenerator(5).draw(Layout::triangulated);
    car.weighing.scaleUncertainty = 0.5;
    CardFacts cards = read(car);
    FactUncertainty().addTo(cards, car, Units::metric, read);
    EXPECT_EQ(cards[0][0].plusMinus, QStringLiteral("± 2.0 kg"));
    EXPECT_EQ(cards[1][0].plusMinus, QString());
    EXPECT_EQ(cards[1][1].plusMinus, QStringLiteral("± 1.0 kg"));
}

// An angle of 0.01 degrees between two shafts that may be a degree out of line either way is not "0.01 ± 2".
TEST(FactUncertainty, ASizeNearNothingSaysWhereItMayBe) {
    Car car = CarGenerator(5).draw(Layout::triangulated);
    car.weighing.scaleUncertainty = 0.5;
    const double measured = car.cornerWeights.leftFront - 0.1;
    const auto sizes = [measured](const Car& of) {
        Fact near = massFact(QStringLiteral("near"), std::abs(of.cornerWeights.leftFront - measured));
        Fact far = massFact(QStringLiteral("far"), of.cornerWeights.leftFront);
        near.number = sizeOf(near.number);
        far.number = sizeOf(far.number);
        return CardFacts{{near, far}};
    };
    CardFacts cards = sizes(car);
    FactUncertainty().addTo(cards, car, Units::metric, sizes);
    EXPECT_THAT(cards[0][0].plusMinus.toStdString(), testing::MatchesRegex("0.0[0-9]* to 1.[0-9]* kg"));
    EXPECT_EQ(cards[0][1].plusMinus, QStringLiteral("± 1.0 kg"));
}

TEST(FactUncertainty, IsNotSaidWhereAVariedCarLacksTheNumber) {
    const Car car = CarGenerator(5).draw(Layout::triangulated);
    CardFacts cards = read(car);
    const auto other = [](const Car& varied) {
        CardFacts theirs = read(varied);
        theirs[0][0].number.id = "another";
        return theirs;
    };
    FactUncertainty().addTo(cards, car, Units::metric, other);
    EXPECT_EQ(cards[0][0].plusMinus, QString());
}

// A row is known by its id: neither what it is called nor where it stands matters.
TEST(FactUncertainty, GoesByTheIdAlone) {
    Car car = CarGenerator(5).draw(Layout::triangulated);
    car.weighing.scaleUncertainty = 0.5;
    CardFacts cards = read(car);
    const auto other = [](const Car& varied) {
        CardFacts theirs = read(varied);
        theirs[0][0].label = QStringLiteral("called otherwise");
        return CardFacts{theirs[1], theirs[0]};
    };
    FactUncertainty().addTo(cards, car, Units::metric, other);
    EXPECT_EQ(cards[0][0].plusMinus, QStringLiteral("± 2.0 kg"));
    EXPECT_EQ(cards[1][1].plusMinus, QStringLiteral("± 1.0 kg"));
}

// Two numbers in one row: the second has no ± on screen, and does not shift those that follow.
TEST(FactUncertainty, CountsTheOtherNumbersOfARow) {
    Car car = CarGenerator(5).draw(Layout::triangulated);
    car.weighing.scaleUncertainty = 0.5;
    const auto pair = [](const Car& of) {
        CardFacts cards = read(of);
        cards[0][0].others = {fineNumber("front", of.cornerWeights.front(), Quantity::mass)};
        return cards;
    };
    CardFacts cards = pair(car);
    const std::vector<double> uncertainty = uncertaintiesOf(cards, car, pair);
    ASSERT_EQ(uncertainty.size(), 3U);
    EXPECT_NEAR(uncertainty[0], 1.0, 1e-6);
    EXPECT_NEAR(uncertainty[1], std::sqrt(0.5), 1e-6);
    EXPECT_NEAR(uncertainty[2], 0.5, 1e-6);
    FactUncertainty().addTo(cards, car, Units::metric, pair);
    EXPECT_EQ(cards[1][1].plusMinus, QStringLiteral("± 1.0 kg"));
}

TEST(FactUncertainty, IsComputedOnceForACarThatIsShownAgain) {
    Car car = CarGenerator(5).draw(Layout::triangulated);
    int reads = 0;
    const auto counting = [&](const Car& varied) {
        ++reads;
        return read(varied);
    };
    FactUncertainty uncertainty;
    CardFacts cards = read(car);
    uncertainty.addTo(cards, car, Units::metric, counting);
    const int once = reads;
    CardFacts again = read(car);
    uncertainty.addTo(again, car, Units::metric, counting);
    EXPECT_GT(once, 0);
    EXPECT_EQ(reads, once);
    EXPECT_EQ(again[0][0].plusMinus, cards[0][0].plusMinus);
    car.weighing.scaleUncertainty = 0.5;
    uncertainty.addTo(again, car, Units::metric, counting);
    EXPECT_EQ(reads, 2 * once);
    EXPECT_EQ(again[0][0].plusMinus, QStringLiteral("± 2.0 kg"));
}

TEST(FactUncertainty, IsShownBeforeTheRemark) {
    FactCard card(QStringLiteral("Weights"));
    Fact fact = massFact(QStringLiteral("total"), 1000);
    fact.plusMinus = QStringLiteral("± 2 kg");
    card.showFacts({fact});
    QStringList shown;
    for (const auto* label : card.findChildren<QLabel*>()) {
        shown << label->text();
    }
    EXPECT_TRUE(shown.contains(QStringLiteral("± 2 kg; weighed")));
}

}  // namespace
}  // namespace bolthole
