// A bolt that goes to another hole is seen to go there, and is nowhere but there afterwards.
#include <gmock/gmock.h>

#include "app/controllers/bolt_motion.h"
#include "tests/support/window_bench.h"
#include "widgets/views/side_view.h"

namespace bolthole::test {
namespace {

class BoltsMoving : public WindowBench {
  protected:
    void openStill(bool still) {
        Settings settings;
        settings.keepsStill = still;
        openWindow(kCoupeDemo, QSize(1280, 800), settings);
    }
    [[nodiscard]] BoltMotion& motion() const { return *window_->findChild<BoltMotion*>(); }
    /// Bolts the first link's axle end to another hole.
    void useAnotherHole() {
        const Bracket& bracket = window_->document().car().links[0].axle;
        const int other = bracket.use == 0 ? 1 : 0;
        ASSERT_EQ(window_->document().apply(UseHole{0, End::axle, other}, EditPhase::whole, {}), QString());
    }
    [[nodiscard]] QImage picture() const { return window_->sideView().grab().toImage(); }
};

TEST_F(BoltsMoving, PassThroughPicturesThatAreNeitherAndEndInTheNewOne) {
    openStill(false);
    const QImage before = picture();
    QImage between = before;
    QImage after = before;
    // A busy machine may paint nothing in between: then once more.
    for (int attempt = 0; attempt < 5 && (between == before || between == after); ++attempt) {
        if (attempt > 0) {
            undo();
            ASSERT_TRUE(QTest::qWaitFor([this] { return !motion().isRunning(); }));
        }
        useAnotherHole();
        ASSERT_TRUE(motion().isRunning());
        QTest::qWait(BoltMotion::kMotion / 3);
        between = picture();
        ASSERT_TRUE(QTest::qWaitFor([this] { return !motion().isRunning(); }));
        QCoreApplication::processEvents();
        after = picture();
    }
    EXPECT_NE(between, before);
    EXPECT_NE(between, after);
    window_->sideView().showState(window_->state());
    EXPECT_EQ(picture(), after);
}

TEST_F(BoltsMoving, UndoIsSeenTooAndAPressEndsIt) {
    openStill(false);
    useAnotherHole();
    ASSERT_TRUE(QTest::qWaitFor([this] { return !motion().isRunning(); }));
    undo();
    ASSERT_TRUE(motion().isRunning());
    QTest::mouseClick(&window_->sideView(), Qt::LeftButton, {}, QPoint(4, 4));
    EXPECT_FALSE(motion().isRunning());
}

TEST_F(BoltsMoving, NothingMovesWherePicturesAreKeptStillNorForANumber) {
    openStill(true);
    useAnotherHole();
    EXPECT_FALSE(motion().isRunning());
    motion().keepStill(false);
    window_->document().apply(
        SetNumber{{.field = Field::wheelbase}, window_->document().car().wheelbase + 0.01}, EditPhase::whole,
        {});
    EXPECT_FALSE(motion().isRunning());
}

}  // namespace
}  // namespace bolthole::test
