// A part's own uncertainties: entered, taken away, kept in order; see geometry/car/spreads.h.
#include "geometry/car/spreads.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace bolthole {

TEST(Spreads, HoldWhatWasEntered) {
    Spreads spreads;
    EXPECT_EQ(spreads.of(Field::wheelbase), std::nullopt);
    spreads.set(Field::wheelbase, -1, 0.002);
    spreads.set(Field::holeAt, 2, 0.0);
    EXPECT_EQ(spreads.of(Field::wheelbase), 0.002);
    EXPECT_EQ(spreads.of(Field::wheelbase, 0), std::nullopt) << "another axis is another number";
    EXPECT_EQ(spreads.of(Field::holeAt, 2), 0.0) << "exact is not the same as unknown";
    EXPECT_EQ(spreads.of(Field::holeAt, 1), std::nullopt);
    spreads.set(Field::wheelbase, -1, 0.003);
    EXPECT_EQ(spreads.of(Field::wheelbase), 0.003);
    EXPECT_EQ(spreads.all().size(), 2U);
}

TEST(Spreads, AreEqualHoweverTheyWereEntered) {
    Spreads one;
    Spreads other;
    one.set(Field::holeAt, 0, 0.1);
    one.set(Field::wheelbase, -1, 0.2);
    one.set(Field::holeAt, 2, 0.3);
    other.set(Field::holeAt, 2, 0.3);
    other.set(Field::wheelbase, -1, 0.2);
    other.set(Field::holeAt, 0, 0.1);
    EXPECT_EQ(one, other);
    EXPECT_EQ(one.all()[0].field, Field::wheelbase);
    EXPECT_EQ(one.all()[1].axis, 0);
    EXPECT_EQ(one.all()[2].axis, 2);
}

TEST(Spreads, WhatIsTakenAwayLeavesNoTrace) {
    Spreads spreads;
    spreads.set(Field::cgHeight, -1, 0.01);
    spreads.set(Field::cgHeight, -1, std::nullopt);
    spreads.set(Field::wheelbase, -1, std::nullopt);
    EXPECT_EQ(spreads, Spreads{});
}

}  // namespace bolthole
