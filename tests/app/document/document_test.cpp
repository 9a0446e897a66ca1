// The document's single door: one step a change, none for no change, drags that leave no trace until they
// end.
#include "app/document/document.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTemporaryDir>
#include <fstream>
#include <sstream>

namespace bolthole {
namespace {

std::string bytesOf(const QString& fileName) {
    std::ifstream file(fileName.toStdString(), std::ios::binary);
    std::ostringstream all;
    all << file.rdbuf();
    return all.str();
}

class DocumentTest : public testing::Test {
  protected:
    void SetUp() override { ASSERT_EQ(document_.open(demo_), QString()); }

    const QString demo_ = QStringLiteral(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    Document document_;
};

TEST_F(DocumentTest, AnEditIsOneStepAndUndoBringsTheCarBack) {
    const Car before = document_.car();
    EXPECT_EQ(document_.apply(SetNumber{{.field = Field::wheelbase}, 3.0}, EditPhase::whole, {}), QString());
    EXPECT_EQ(document_.car().wheelbase, 3.0);
    EXPECT_EQ(document_.undoStack().count(), 1);
    EXPECT_TRUE(document_.undoStack().undoText().contains(QStringLiteral("wheelbase")));
    EXPECT_TRUE(document_.isEdited());
    document_.undoStack().undo();
    EXPECT_EQ(document_.car(), before);
    EXPECT_FALSE(document_.isEdited());
}

TEST_F(DocumentTest, TheOldestStepsAreForgottenAndTheCarIsThenNeverTheSavedOne) {
    const Car opened = document_.car();
    for (int step = 0; step < kUndoSteps + 20; ++step) {
        ASSERT_EQ(
            document_.apply(SetNumber{{.field = Field::wheelbase}, 2.5 + 1e-3 * step}, EditPhase::whole, {}),
            QString());
    }
    EXPECT_EQ(document_.undoStack().count(), kUndoSteps);
    while (document_.undoStack().canUndo()) {
        document_.undoStack().undo();
    }
    EXPECT_DOUBLE_EQ(document_.car().wheelbase, 2.5 + 1e-3 * 19) << "as before the first step that is kept";
    EXPECT_TRUE(document_.isEdited()) << "the car that was opened is out of reach";
    EXPECT_NE(document_.car(), opened);
}

TEST_F(DocumentTest, UnitsAreNoChangeOfTheCar) {
    ASSERT_EQ(document_.car().units, Units::inch);
    QSignalSpy changed(&document_, &Document::carChanged);
    EXPECT_EQ(document_.apply(SetUnits{Units::metric}, EditPhase::whole, {}), QString());
    EXPECT_EQ(document_.car().units, Units::metric);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(document_.undoStack().count(), 0);
    EXPECT_FALSE(document_.isEdited());
    EXPECT_EQ(document_.apply(SetNumber{{.field = Field::wheelbase}, 3.0}, EditPhase::whole, {}), QString());
    document_.apply(SetUnits{Units::inch}, EditPhase::whole, {});
    EXPECT_EQ(document_.undoStack().count(), 1);
    document_.undoStack().undo();
    EXPECT_EQ(document_.car().units, Units::inch) << "an older step may have been made in other units";
    EXPECT_FALSE(document_.isEdited());
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("car.bolt.json"));
    document_.apply(SetUnits{Units::metric}, EditPhase::whole, {});
    ASSERT_TRUE(document_.save(file).saved());
    Document again;
    ASSERT_EQ(again.open(file), QString());
    EXPECT_EQ(again.car().units, Units::metric);
}

TEST_F(DocumentTest, NoChangeIsNoStep) {
    const double same = document_.car().wheelbase;
    EXPECT_EQ(document_.apply(SetNumber{{.field = Field::wheelbase}, same}, EditPhase::whole, {}), QString());
    EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(DocumentTest, ARefusedEditChangesNothingAndSaysWhy) {
    const Car before = document_.car();
    EXPECT_NE(document_.apply(SetNumber{{.field = Field::wheelbase}, -1.0}, EditPhase::whole, {}), QString());
    EXPECT_EQ(document_.car(), before);
    EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(DocumentTest, ADragIsOneStepHoweverManyMoves) {
    const Car before = document_.car();
    for (int step = 1; step <= 20; ++step) {
        const MoveHole move{0, End::chassis, 0,
                            before.links[0].chassis.holes[0].at + Eigen::Vector3d(0, 0, 0.001 * step)};
        document_.apply(move, step < 20 ? EditPhase::dragging : EditPhase::dragged, {});
    }
    EXPECT_EQ(document_.undoStack().count(), 1);
    document_.undoStack().undo();
    EXPECT_EQ(document_.car(), before);
}

TEST_F(DocumentTest, ADragBackToItsStartIsNoStep) {
    const Car before = document_.car();
    const Eigen::Vector3d at = before.links[0].chassis.holes[0].at;
    document_.apply(MoveHole{0, End::chassis, 0, at + Eigen::Vector3d(0, 0, 0.01)}, EditPhase::dragging, {});
    EXPECT_NE(document_.car(), before);
    document_.apply(MoveHole{0, End::chassis, 0, at}, EditPhase::dragged, {});
    EXPECT_EQ(document_.car(), before);
    EXPECT_FALSE(document_.isDragging());
    EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(DocumentTest, UndoRestoresTheSelection) {
    const PointId first{PointId::Kind::hole, 0, End::axle, 0};
    const PointId second{PointId::Kind::hole, 1, End::axle, 0};
    document_.apply(SetNumber{{.field = Field::wheelbase}, 3.0}, EditPhase::whole, first);
    document_.apply(SetNumber{{.field = Field::wheelbase}, 3.1}, EditPhase::whole, second);
    document_.undoStack().undo();
    EXPECT_EQ(document_.selection(), first);
    document_.undoStack().redo();
    EXPECT_EQ(document_.selection(), second);
}

TEST_F(DocumentTest, SavingTwiceGivesTheSameBytesAndKeepsUnknownKeys) {
    QTemporaryDir folder;
    const QString one = folder.filePath(QStringLiteral("one.bolt.json"));
    std::string bytes = bytesOf(demo_);
    const std::size_t brace = bytes.find('{');
    bytes.insert(brace + 1, "\n  \"test_day\": {\"wind\": \"left\"},");
    std::ofstream(one.toStdString(), std::ios::binary) << bytes;
    ASSERT_EQ(document_.open(one), QString());
    document_.apply(SetNumber{{.field = Field::wheelbase}, 3.0}, EditPhase::whole, {});
    ASSERT_TRUE(document_.save(one).saved());
    const std::string saved = bytesOf(one);
    EXPECT_THAT(saved, testing::HasSubstr("\"wind\": \"left\""));
    EXPECT_THAT(saved, testing::HasSubstr("\"wheelbase\": 3000"));
    ASSERT_EQ(document_.open(one), QString());
    ASSERT_TRUE(document_.save(one).saved());
    EXPECT_EQ(bytesOf(one), saved);
}

TEST_F(DocumentTest, AFailedOpenLeavesTheDocument) {
    const Car before = document_.car();
    EXPECT_NE(document_.open(QStringLiteral("/nonexistent/car.bolt.json")), QString());
    EXPECT_EQ(document_.car(), before);
    EXPECT_EQ(document_.fileName(), demo_);
}

TEST_F(DocumentTest, AFailedSaveKeepsTheEditedState) {
    document_.apply(SetNumber{{.field = Field::wheelbase}, 3.0}, EditPhase::whole, {});
    EXPECT_NE(document_.save(QStringLiteral("/nonexistent/folder/car.bolt.json")).reason, QString());
    EXPECT_TRUE(document_.isEdited());
    EXPECT_EQ(document_.fileName(), demo_);
}

}  // namespace
}  // namespace bolthole
