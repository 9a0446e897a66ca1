// An evening of test days in the real window, by keys alone: passes typed, compared, undone, saved, opened
// again; tables taken in whole or not at all.
#include <gmock/gmock.h>

#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "app/window/main_window.h"
#include "app/window/pass_controller.h"
#include "geometry/compare/setup_changes.h"
#include "geometry/edits/starting_car.h"
#include "tests/support/window_bench.h"
#include "widgets/fit/fit_card.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/days/compare_card.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/import_preview.h"
#include "widgets/pages/days/pass_entry.h"
#include "widgets/pages/days/pass_table.h"
#include "widgets/pages/launch/launch_page.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class TestDaysInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kWagonDemo, {1280, 800});
        page().setClock([this] { return now_; });
        openPage(Qt::Key_Minus);
    }

    [[nodiscard]] TestDaysPage& page() { return *window_->findChild<TestDaysPage*>(); }
    [[nodiscard]] PassController& controller() { return *window_->findChild<PassController*>(); }
    [[nodiscard]] const Car& car() const { return window_->state().car; }
    [[nodiscard]] QString said() { return window_->findChild<NoticeBar*>()->text(); }
    static void keys(const QString& text) { QTest::keyClicks(QApplication::focusWidget(), text); }
    static void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), which, with);
    }
    // The row's four numbers, then Enter; an empty text keeps what the last pass had. After the first pass
    // the row begins at the third of them.
    void typePass(std::array<QString, 4> numbers) {
        now_ = now_.addSecs(1000);
        for (std::size_t at = car().passes.empty() ? 0 : 2; at < numbers.size(); ++at) {
            keys(numbers[at]);
            key(at + 1 < numbers.size() ? Qt::Key_Tab : Qt::Key_Return);
        }
    }
    // Presses a button of the preview that comes, or gives it up.
    void answerPreview(bool take, QString* words = nullptr) {
        QTimer::singleShot(0, [take, words] {
            auto* preview = qobject_cast<ImportPreview*>(QApplication::activeModalWidget());
            ASSERT_NE(preview, nullptr);
            if (words != nullptr) {
                for (const QLabel* label : preview->findChildren<QLabel*>()) {
                    *words += label->text() + QLatin1Char('\n');
                }
            }
            take ? preview->accept() : preview->reject();
        });
    }

    QDateTime now_{QDate(2026, 11, 20), QTime(13, 0)};
    QTemporaryDir folder_;
};

TEST_F(TestDaysInTheWindow, AnEveningByKeyboardAlone) {
    ASSERT_TRUE(page().isVisible());
    typePass({"17", "2500", "2.335", "6.03"});
    typePass({"", "", "2.340", ""});
    typePass({"", "", "2.330", ""});
    ASSERT_EQ(car().passes.size(), 3U) << said().toStdString();
    EXPECT_EQ(car().kept.size(), 1U);
    EXPECT_EQ(car().passes[2].launchRpm, 2500);
    EXPECT_EQ(car().passes[2].time, "13:50");
    EXPECT_EQ(window_->document().undoStack().count(), 3) << "a step a pass";
    // A bolt moved on the bench, and two more passes with it: a setup of its own by a name that says so.
    const Car before = car();
    window_->document().apply(UseHole{0, End::axle, 0}, EditPhase::whole, {});
    typePass({"", "", "2.302", ""});
    typePass({"", "", "2.308", ""});
    ASSERT_EQ(car().passes.size(), 5U);
    ASSERT_EQ(car().kept.size(), 2U);
    EXPECT_EQ(car().kept[1].name, "lower axle hole 'top'");
    EXPECT_EQ(car().passes[4].setup, 1);
    EXPECT_TRUE(page().comparison().words().isClear);
    EXPECT_THAT(page().comparison().words().figure.toStdString(), HasSubstr("−0.030 s ± "));
    EXPECT_EQ(page().comparison().words().verdict, QStringLiteral("clearly quicker"));
    // Back to the setup of the first pass: one step.
    key(Qt::Key_Escape);
    key(Qt::Key_Home);
    page().select(0);
    const int steps = window_->document().undoStack().count();
    key(Qt::Key_B);
    EXPECT_EQ(window_->document().undoStack().count(), steps + 1);
    EXPECT_TRUE(isSameSetup(car(), before));
    EXPECT_EQ(car().passes.size(), 5U);
    // Undone to the third pass, done again.
    for (int step = 0; step < 4; ++step) {
        key(Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(car(), before);
    for (int step = 0; step < 4; ++step) {
        key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    }
    EXPECT_EQ(car().passes.size(), 5U);
    // Saved and opened again.
    const QString file = folder_.filePath(QStringLiteral("season.bolt.json"));
    ASSERT_TRUE(window_->document().save(file).saved());
    const std::vector<Pass> written = car().passes;
    ASSERT_EQ(window_->openFile(file), QString());
    ASSERT_EQ(car().passes.size(), written.size());
    for (std::size_t at = 0; at < written.size(); ++at) {
        Pass read = car().passes[at];
        read.id = written[at].id;
        EXPECT_EQ(read, written[at]);
    }
    EXPECT_TRUE(page().comparison().words().isClear);
}

TEST_F(TestDaysInTheWindow, WhatTheLaunchLacksIsEnteredOnItsPage) {
    window_->document().adopt({startingCar({}), nlohmann::ordered_json::object()});
    auto* card = window_->findChild<FitCard*>();
    QPushButton* enter = nullptr;
    const auto isOffered = [&] {
        for (auto* button : card->findChildren<QPushButton*>()) {
            enter = button->isVisible() && button->text().contains("Launch page") ? button : enter;
        }
        return enter != nullptr;
    };
    ASSERT_TRUE(QTest::qWaitFor(isOffered, 5000));
    EXPECT_FALSE(window_->findChild<LaunchPage*>()->isVisible());
    enter->click();
    EXPECT_TRUE(window_->findChild<LaunchPage*>()->isVisible());
}

TEST_F(TestDaysInTheWindow, ASetupAPassStandsOnIsNotRemovedAndThatIsSaid) {
    typePass({"17", "2500", "2.335", ""});
    window_->document().apply(UseHole{0, End::axle, 0}, EditPhase::whole, {});
    page().select(0);
    ASSERT_TRUE(window_->state().pointed) << "the pass's setup stands on the bench as a ghost";
    EXPECT_EQ(window_->state().pointed->name.toStdString(), "first setup");
    const Car before = car();
    const QString refusal = window_->document().apply(RemoveKept{0}, EditPhase::whole, {});
    EXPECT_THAT(refusal.toStdString(), HasSubstr("a pass stands on 'first setup'"));
    EXPECT_EQ(car(), before);
    // Another car takes the ghost away with it.
    window_->document().undoStack().setClean();
    window_->openDemo(QStringLiteral("short-pickup.bolt.json"));
    EXPECT_FALSE(window_->state().pointed);
    EXPECT_FALSE(page().selected());
}

TEST_F(TestDaysInTheWindow, GoingBackToAPassesSetupSaysWhatWentWithIt) {
    typePass({"17", "2500", "2.335", ""});
    window_->document().apply(UseHole{0, End::axle, 0}, EditPhase::whole, {});
    page().select(0);
    for (QToolButton* tool : page().findChildren<QToolButton*>()) {
        if (tool->text() == QStringLiteral("Back to its setup")) {
            tool->click();
        }
    }
    ASSERT_EQ(car().links[0].axle.use, 1);
    EXPECT_THAT(window_->findChild<NoticeBar*>()->text().toStdString(),
                HasSubstr("measured or changed since"));
}

TEST_F(TestDaysInTheWindow, ABadRowChangesNothing) {
    typePass({"17", "2500", "2.335", ""});
    const Car before = car();
    const int steps = window_->document().undoStack().count();
    QString words;
    answerPreview(true, &words);
    controller().takeTable("number,date,sixty_foot_s,wind\n2,2026-11-20,2.30,3\n3,2026-11-20,fast,3\n",
                           QStringLiteral("bad.csv"));
    EXPECT_THAT(words.toStdString(), HasSubstr("Nothing is taken in: one thing can't be read"));
    EXPECT_THAT(words.toStdString(), HasSubstr("Columns passed over: wind"));
    EXPECT_EQ(car(), before);
    EXPECT_EQ(window_->document().undoStack().count(), steps);
}

TEST_F(TestDaysInTheWindow, AGoodTableIsOneStepAndCanBeLeft) {
    const QByteArray table =
        "number,date,time,sixty_foot_s\n1,2026-11-20,13:00,2.30\n2,2026-11-20,13:20,2.31\n";
    const Car before = car();
    answerPreview(false);
    controller().takeTable(table, QStringLiteral("good.csv"));
    EXPECT_EQ(car(), before);
    answerPreview(true);
    controller().takeTable(table, QStringLiteral("good.csv"));
    ASSERT_EQ(car().passes.size(), 2U);
    EXPECT_EQ(window_->document().undoStack().count(), 1);
    EXPECT_EQ(window_->document().undoStack().undoText(), QStringLiteral("Take in 2 passes"));
    window_->document().undoStack().undo();
    EXPECT_EQ(car(), before);
}

TEST_F(TestDaysInTheWindow, ASlipOfThePenIsSaidAndUndoneFromTheRowItself) {
    typePass({"17", "2500", "2.335", ""});
    EXPECT_THAT(said().toStdString(), testing::Not(HasSubstr("look at it again")));
    typePass({"", "", "23.35", ""});
    ASSERT_EQ(car().passes.size(), 2U);
    EXPECT_THAT(
        said().toStdString(),
        HasSubstr("Pass 2 is in the log; look at it again: 60 ft of 23.35 s: hardly a car takes that"));
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(car().passes.size(), 1U) << "nothing is typed in the row, so the pass is undone";
}

TEST_F(TestDaysInTheWindow, TheClipboardOfASpreadsheetIsATable) {
    QApplication::clipboard()->setText(
        QStringLiteral("number\tdate\tsixty_foot_s\tnote\r\n1\t2026-11-20\t2.30\twind, from left\r\n"));
    answerPreview(true);
    emit page().pasteRequested();
    ASSERT_EQ(car().passes.size(), 1U);
    EXPECT_EQ(car().passes[0].note, "wind, from left");
    QApplication::clipboard()->clear();
    emit page().pasteRequested();
    EXPECT_THAT(said().toStdString(), HasSubstr("no table on the clipboard"));
}

}  // namespace
}  // namespace bolthole
