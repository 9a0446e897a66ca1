// A recording added to a pass in the real window: its columns asked, its file kept beside the car, drawn over
// the computed launch, its start moved and undone, and its absence said.
#include <gmock/gmock.h>

#include <QAbstractButton>
#include <QComboBox>
#include <QDateTime>
#include <QFile>
#include <QLabel>
#include <QTemporaryDir>
#include <QThread>
#include <QTimer>
#include <atomic>
#include <cmath>

#include "app/controllers/fit_controller.h"
#include "app/window/recording_controller.h"
#include "tests/support/window_bench.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/kit/job_runner.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/recording_card.h"
#include "widgets/pages/days/recording_dialog.h"

namespace bolthole::test {
namespace {

using testing::HasSubstr;

constexpr double kAcceleration = 6;  // m/s^2, from 2 s on

class RecordingInTheWindow : public WindowBench {
  protected:
    void SetUp() override {
        openWindow(kCoupeDemo, {1480, 920});
        ASSERT_TRUE(window_->document().save(folder_.filePath("car.bolt.json")).saved());
        openPage(Qt::Key_Minus);
        page().select(3);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] TestDaysPage& page() const { return *window_->findChild<TestDaysPage*>(); }
    [[nodiscard]] const Pass& pass() const { return window_->state().car.passes[3]; }
    [[nodiscard]] std::string words() const {
        QStringList all;
        for (const QLabel* label : page().recording().findChildren<QLabel*>()) {
            all << label->text();
        }
        return all.join(QLatin1Char('\n')).toStdString();
    }
    /// Writes a table of a constant acceleration as a phone would, outside of the car's folder.
    QString writeTable(int perSecond = 100) {
        QFile file(elsewhere_.filePath("run.csv"));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write("Time (s),Speed (km/h),Lap\r\n");
        for (int row = 0; row <= 7 * perSecond; ++row) {
            const double time = row / static_cast<double>(perSecond);
            file.write(QStringLiteral("%1,%2,1\r\n")
                           .arg(time, 0, 'f', 4)
                           .arg(3.6 * kAcceleration * std::max(0.0, time - 2), 0, 'f', 6)
                           .toUtf8());
        }
        return file.fileName();
    }
    /// Adds the table to the pass as the dialog proposes.
    void addTable(int perSecond = 100) {
        const QString file = writeTable(perSecond);
        QTimer asks;
        QObject::connect(&asks, &QTimer::timeout, [] {
            if (auto* dialog = qobject_cast<RecordingDialog*>(QApplication::activeModalWidget())) {
                dialog->accept();
            }
        });
        asks.start(1);
        window_->findChild<RecordingController*>()->addFile(3, file);
        EXPECT_TRUE(QTest::qWaitFor([this] { return pass().recording.has_value(); }, 60'000));
        asks.stop();
        window_->activateWindow();  // as a window manager does when a dialog goes
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    [[nodiscard]] QAbstractButton& button(const char* name) const {
        for (QAbstractButton* each : page().recording().findChildren<QAbstractButton*>()) {
            if (each->accessibleName() == QLatin1String(name)) {
                return *each;
            }
        }
        throw std::runtime_error(name);
    }

    QTemporaryDir folder_;
    QTemporaryDir elsewhere_;
};

TEST_F(RecordingInTheWindow, IsKeptBesideTheCarAndDrawnOverTheComputedLaunch) {
    EXPECT_THAT(words(), HasSubstr("None of this pass"));
    addTable();
    ASSERT_TRUE(pass().recording);
    EXPECT_NEAR(pass().recording->start, 2, 0.011);
    EXPECT_TRUE(QFile::exists(folder_.filePath(QString::fromStdString(pass().recording->file))));
    const CurveChart* chart = page().recording().findChild<CurveChart*>();
    ASSERT_TRUE(chart->isVisible());
    ASSERT_FALSE(chart->cards().empty());
    ASSERT_GE(chart->cards()[0].series.size(), 2U);
    EXPECT_EQ(chart->cards()[0].series[0].name, "recorded");
    EXPECT_EQ(chart->cards()[0].series[1].name, "computed");
    EXPECT_THAT(words(), HasSubstr("recorded "));
    EXPECT_THAT(words(), HasSubstr("by the clock "));
    EXPECT_THAT(words(), HasSubstr("computed "));
    undo();
    EXPECT_FALSE(pass().recording);
    EXPECT_THAT(words(), HasSubstr("None of this pass"));
}

// Some 2 MB: read beside the window, which says so and goes on.
TEST_F(RecordingInTheWindow, ALongOneIsReadAside) {
    addTable(10'000);
    const CurveChart* chart = page().recording().findChild<CurveChart*>();
    ASSERT_TRUE(QTest::qWaitFor([chart] { return chart->isVisible(); }, 60'000));
    EXPECT_THAT(words(), HasSubstr("recorded "));
    // Every thread is kept busy, and the file was touched: it has to be read again, and can't be yet.
    std::atomic<bool> isHeld = true;
    JobRunner others;
    others.start(
        [&isHeld](const Job&) {
            while (isHeld) {
                QThread::msleep(1);
            }
        },
        {.workers = jobThreads()});
    QFile file(folder_.filePath(QString::fromStdString(pass().recording->file)));
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(
        file.setFileTime(QDateTime::currentDateTime().addSecs(60), QFileDevice::FileModificationTime));
    file.close();
    page().select(2);
    page().select(3);
    EXPECT_THAT(words(), HasSubstr("Reading "));
    EXPECT_FALSE(chart->isVisible());
    // Another pass in between: what arrives late is not shown there.
    page().select(2);
    EXPECT_THAT(words(), HasSubstr("None of this pass"));
    isHeld = false;
    EXPECT_TRUE(QTest::qWaitFor([&others] { return !others.isRunning(); }, 60'000));
    EXPECT_THAT(words(), HasSubstr("None of this pass"));
    page().select(3);
    ASSERT_TRUE(QTest::qWaitFor([chart] { return chart->isVisible(); }, 60'000));
    // Read once: from then on it is there at once.
    page().select(2);
    page().select(3);
    EXPECT_TRUE(chart->isVisible());
}

TEST_F(RecordingInTheWindow, WithAFitItsResidualsAreShownSampleBySample) {
    addTable();
    const FitController* controller = window_->findChild<FitController*>();
    ASSERT_TRUE(QTest::qWaitFor(
        [controller] { return controller->fit() != nullptr && !controller->isRunning(); }, 120'000));
    ASSERT_EQ(controller->fit()->end, FitEnd::done);
    const CurveChart* chart = page().recording().findChild<CurveChart*>();
    ASSERT_EQ(chart->cards().size(), 2U);
    EXPECT_EQ(chart->cards()[0].series[2].name, "fitted");
    EXPECT_EQ(chart->cards()[1].titles[0], "Speed, recorded less fitted");
    EXPECT_GT(chart->cards()[1].series[0].points.size(), 100U);
    EXPECT_THAT(words(), HasSubstr("Recorded less fitted, root mean square: speed "));
}

TEST_F(RecordingInTheWindow, TheReleaseIsMovedByHandAndUndone) {
    addTable();
    ASSERT_TRUE(pass().recording);
    const double found = pass().recording->start;
    CurveChart* chart = page().recording().findChild<CurveChart*>();
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_Right);
    const double cursor = chart->cursor();
    EXPECT_GT(cursor, 0);
    QTest::mouseClick(&button("The release is at the cursor"), Qt::LeftButton);
    EXPECT_NEAR(pass().recording->start, found + cursor, 1e-12);
    undo();
    EXPECT_EQ(pass().recording->start, found);
}

TEST_F(RecordingInTheWindow, WhatDoesNotConcernItLeavesItsCursorAlone) {
    addTable();
    const FitController* controller = window_->findChild<FitController*>();
    ASSERT_TRUE(QTest::qWaitFor(
        [controller] { return controller->fit() != nullptr && !controller->isRunning(); }, 120'000));
    CurveChart* chart = page().recording().findChild<CurveChart*>();
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_Right);
    const double cursor = chart->cursor();
    ASSERT_GT(cursor, 0);
    window_->document().apply(SetTitle{"another name"}, EditPhase::whole, {});
    EXPECT_EQ(chart->cursor(), cursor);
}

TEST_F(RecordingInTheWindow, AFileThatIsGoneOrChangedIsSaid) {
    addTable();
    ASSERT_TRUE(pass().recording);
    const QString kept = folder_.filePath(QString::fromStdString(pass().recording->file));
    QFile file(kept);
    ASSERT_TRUE(file.open(QIODevice::Append));
    file.write("8,1,1\r\n");
    file.close();
    page().select(2);
    page().select(3);
    EXPECT_THAT(words(), HasSubstr("its contents changed"));
    ASSERT_TRUE(QFile::remove(kept));
    page().select(2);
    page().select(3);
    EXPECT_THAT(words(), HasSubstr("is not beside the car's file"));
    QTest::mouseClick(&button("Remove recording"), Qt::LeftButton);
    EXPECT_FALSE(pass().recording);
}

TEST_F(RecordingInTheWindow, TheSavedCarKnowsItWhenOpenedAgain) {
    addTable();
    ASSERT_TRUE(window_->document().save(folder_.filePath("car.bolt.json")).saved());
    const std::optional<PassRecording> kept = pass().recording;
    EXPECT_EQ(window_->openFile(folder_.filePath("car.bolt.json")), QString());
    EXPECT_EQ(pass().recording, kept);
}

TEST_F(RecordingInTheWindow, ColumnsSaidOnceAreProposedAgain) {
    const QString file = writeTable();
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<RecordingDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        for (QComboBox* box : dialog->findChildren<QComboBox*>()) {
            if (box->accessibleName() == QLatin1String("Speed, unit")) {
                box->setCurrentIndex(1);
                emit box->activated(1);
            }
        }
        dialog->accept();
    });
    window_->findChild<RecordingController*>()->addFile(3, file);
    ASSERT_TRUE(pass().recording);
    EXPECT_EQ(pass().recording->columns[1].unit, "mph");
    undo();
    addTable();
    ASSERT_TRUE(pass().recording);
    EXPECT_EQ(pass().recording->columns[1].unit, "mph");
}

}  // namespace
}  // namespace bolthole::test
