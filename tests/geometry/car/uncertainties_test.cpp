// A part's own uncertainties: entered, taken away, kept in order; see geometry/car/uncertainties.h.
#include "geometry/car/uncertainties.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace bolthole {

TEST(Uncertainties, HoldWhatWasEntered) {
    Uncertainties uncertainties;
    EXPECT_EQ(uncertainties.of(Field::wheelbase), std::nullopt);
    uncertainties.set(Field::wheelbase, -1, 0.002);
    uncertainties.set(Field::holeAt, 2, 0.0);
    EXPECT_EQ(uncertainties.of(Field::wheelbase), 0.002);
    EXPECT_EQ(uncertainties.of(Field::wheelbase, 0), std::nullopt) << "another axis is another number";
    EXPECT_EQ(uncertainties.of(Field::holeAt, 2), 0.0) << "exact is not the same as unknown";
    EXPECT_EQ(uncertainties.of(Field::holeAt, 1), std::nullopt);
    uncertainties.set(Field::wheelbase, -1, 0.003);
    EXPECT_EQ(uncertainties.of(Field::wheelbase), 0.003);
    EXPECT_EQ(uncertainties.all().size(), 2U);
}

TEST(Uncertainties, AreEqualHoweverTheyWereEntered) {
    Uncertainties one;
    Uncertainties other;
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

TEST(Uncertainties, WhatIsTakenAwayLeavesNoTrace) {
    Uncertainties uncertainties;
    uncertainties.set(Field::cgHeight, -1, 0.01);
    uncertainties.set(Field::cgHeight, -1, std::nullopt);
    uncertainties.set(Field::wheelbase, -1, std::nullopt);
    EXPECT_EQ(uncertainties, Uncertainties{});
}

}  // namespace bolthole
