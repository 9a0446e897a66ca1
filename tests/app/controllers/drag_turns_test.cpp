// Followers of a drag: one a step, and none left behind.
#include "app/controllers/drag_turns.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTest>
#include <string>

namespace bolthole {
namespace {

class DragTurnsTest : public testing::Test {
  protected:
    std::string shown_;
    DragTurns turns_{{[this] { shown_ += 'c'; }, [this] { shown_ += 'o'; }}, nullptr};
};

TEST_F(DragTurnsTest, OneFollowsEachStepInTurn) {
    for (int step = 0; step < 5; ++step) {
        turns_.step();
    }
    EXPECT_EQ(shown_, "cococ");
}

TEST_F(DragTurnsTest, AllHaveFollowedOnceTheHandRests) {
    turns_.step();
    EXPECT_TRUE(QTest::qWaitFor([this] { return shown_.find('o') != std::string::npos; }, 5000));
    const std::string rested = shown_;
    QTest::qWait(120);
    EXPECT_EQ(shown_, rested) << "once";
}

TEST_F(DragTurnsTest, NothingComesLateOnceAllWereShown) {
    turns_.step();
    turns_.showAll();
    EXPECT_EQ(shown_, "cco");
    QTest::qWait(120);
    EXPECT_EQ(shown_, "cco");
}

}  // namespace
}  // namespace bolthole
