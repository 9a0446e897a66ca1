// Recovery in the real window: what a program that was killed left behind is offered and comes back, and
// windows on one file know of each other.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QAction>
#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTimer>
#include <QTreeWidget>
#include <QtTest/QTest>
#include <csignal>
#include <fstream>
#include <memory>

#include "app/window/main_window.h"
#include "app/window/recovery_dialog.h"
#include "tests/support/run_command.h"
#include "widgets/kit/notice_bar.h"

namespace bolthole {
namespace {

class Recovery : public testing::Test {
  protected:
    void SetUp() override {
        ThemeKeeper::instance().choose(Appearance::light);
        QDir(recoveryFolder()).removeRecursively();
        file_ = folder_.filePath(QStringLiteral("car.bolt.json"));
        ASSERT_TRUE(QFile::copy(QString::fromStdString(test::kWagonFile), file_));
        window_ = open();
    }
    [[nodiscard]] static std::unique_ptr<MainWindow> open() {
        auto window = std::make_unique<MainWindow>(Settings{});
        window->show();
        return window;
    }
    static void setWheelbase(MainWindow& window, double wheelbase) {
        ASSERT_EQ(
            window.document().apply(SetNumber{{.field = Field::wheelbase}, wheelbase}, EditPhase::whole, {}),
            "");
    }
    // The window goes as a killed program does: unasked, its log left as it is.
    void kill() { window_.reset(); }
    static void trigger(MainWindow& window, const QString& words) {
        for (QAction* action : window.findChildren<QAction*>()) {
            if (action->text().remove(QLatin1Char('&')) == words) {
                action->trigger();
                return;
            }
        }
        FAIL() << "no action " << words.toStdString();
    }
    // Presses the button of the dialog that opens next whose text, without its '&', is `words`.
    void answer(const QString& words) {
        QTimer::singleShot(0, qApp, [this, words] {
            QWidget* dialog = QApplication::activeModalWidget();
            ASSERT_NE(dialog, nullptr);
            for (const QLabel* label : dialog->findChildren<QLabel*>()) {
                asked_ += label->text() + QLatin1Char('\n');
            }
            for (QPushButton* button : dialog->findChildren<QPushButton*>()) {
                if (button->text().remove(QLatin1Char('&')) == words) {
                    button->click();
                    return;
                }
            }
            dialog->close();
            FAIL() << "no button " << words.toStdString();
        });
    }
    [[nodiscard]] static QString notice(MainWindow& window) { return window.findChild<NoticeBar*>()->text(); }
    [[nodiscard]] static QStringList logs() { return QDir(recoveryFolder()).entryList(QDir::Files); }

    QTemporaryDir folder_;
    QString file_;
    QString asked_;
    std::unique_ptr<MainWindow> window_;
};

TEST_F(Recovery, AnEditReachesTheLogWithinASecond) {
    window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
    QElapsedTimer clock;
    clock.start();
    setWheelbase(*window_, 3.0);
    const auto isLogged = [] {
        QFile log(recoveryFolder() + QLatin1Char('/') + logs().value(0));
        return log.open(QIODevice::ReadOnly) && log.readAll().contains("\"wheelbase\":3000");
    };
    ASSERT_TRUE(QTest::qWaitFor(isLogged, 1000));
    EXPECT_LT(clock.elapsed(), 1000);
}

TEST_F(Recovery, WhatWasNeverSavedIsOfferedAndComesBack) {
    window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
    setWheelbase(*window_, 3.0);
    setWheelbase(*window_, 3.1);
    const QString words = window_->document().undoStack().undoText();
    const Car car = window_->document().car();
    kill();
    window_ = open();
    window_->openDemo(QStringLiteral("light-coupe.bolt.json"));
    QStringList row;
    QTimer::singleShot(0, qApp, [&] {
        auto* dialog = qobject_cast<RecoveryDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        const auto* list = dialog->findChild<QTreeWidget*>();
        for (int at = 0; at < 4; ++at) {
            row.append(list->topLevelItem(0)->text(at));
        }
        QTest::keyClick(dialog, Qt::Key_Return);
    });
    window_->offerLeftBehind();
    ASSERT_EQ(row.size(), 4);
    EXPECT_EQ(row[0], "Long-roof wagon");
    EXPECT_TRUE(row[1].startsWith(QStringLiteral("today "))) << row[1].toStdString();
    EXPECT_EQ(row[2], words);
    EXPECT_EQ(row[3], "never saved");
    EXPECT_EQ(window_->document().car(), car);
    EXPECT_EQ(window_->state().car, car);
    EXPECT_TRUE(window_->document().isEdited());
    EXPECT_TRUE(notice(*window_).contains(words));
    EXPECT_EQ(logs().size(), 1) << "the old log went once the new one held the car";
    kill();
    EXPECT_EQ(abandonedLogs(recoveryFolder()).size(), 1) << "killed again, it is offered again";
}

// While the new log can't hold the car, the old one is the only place on the disk that does.
TEST_F(Recovery, OnAFullDiskTheOldLogOutlivesBringingBack) {
    window_->openFile(file_);
    setWheelbase(*window_, 3.0);
    kill();
    window_ = open();
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit normal{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &normal), 0);
    rlimit full = normal;
    full.rlim_cur = 700;  // room for a record without a car
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &full), 0);
    answer(QStringLiteral("Recover"));
    window_->offerLeftBehind();
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &normal), 0);
    EXPECT_EQ(window_->document().car().wheelbase, 3.0);
    EXPECT_EQ(abandonedLogs(recoveryFolder()).size(), 1);
}

TEST_F(Recovery, SavedOrDiscardedNothingIsOffered) {
    window_->openFile(file_);
    setWheelbase(*window_, 3.0);
    trigger(*window_, QStringLiteral("Save"));
    kill();
    window_ = open();
    window_->offerLeftBehind();  // would block on a dialog
    EXPECT_TRUE(logs().isEmpty());
    window_->openFile(file_);
    setWheelbase(*window_, 3.1);
    answer(QStringLiteral("Discard"));
    ASSERT_TRUE(window_->close());
    EXPECT_TRUE(asked_.contains(QStringLiteral("not saved"))) << asked_.toStdString();
    EXPECT_TRUE(logs().isEmpty());
    trigger(*window_, QStringLiteral("Unsaved work…"));
    EXPECT_EQ(notice(*window_), "Nothing unsaved was left behind.");
}

TEST_F(Recovery, LeftForLaterItIsOfferedAgainAndThrownAwayItIsGone) {
    window_->openFile(file_);
    setWheelbase(*window_, 3.0);
    kill();
    window_ = open();
    answer(QStringLiteral("Leave for later"));
    window_->offerLeftBehind();
    EXPECT_EQ(abandonedLogs(recoveryFolder()).size(), 1);
    QTimer::singleShot(0, qApp, [this] {
        answer(QStringLiteral("Discard"));
        for (QPushButton* button : QApplication::activeModalWidget()->findChildren<QPushButton*>()) {
            if (button->text() == QStringLiteral("&Delete…")) {
                button->click();
                return;
            }
        }
    });
    window_->offerLeftBehind();
    EXPECT_TRUE(abandonedLogs(recoveryFolder()).isEmpty());
}

TEST_F(Recovery, WindowsOnOneFileKnowOfEachOther) {
    const auto label = [](MainWindow& window) {
        QStringList words;
        for (const QLabel* each : window.findChildren<QLabel*>()) {
            words.append(each->text());
        }
        return words.filter(QStringLiteral("open in another window too")).size();
    };
    window_->openFile(file_);
    EXPECT_EQ(label(*window_), 0);
    const auto second = open();
    answer(QStringLiteral("Cancel"));
    second->openFile(file_);
    EXPECT_TRUE(asked_.contains(QStringLiteral("is open in another Bolthole window")));
    EXPECT_TRUE(second->document().fileName().isEmpty());
    answer(QStringLiteral("Open it here too"));
    second->openFile(file_);
    EXPECT_EQ(second->document().fileName(), file_);
    EXPECT_EQ(label(*second), 1);
    EXPECT_TRUE(QTest::qWaitFor([&] { return label(*window_) == 1; }, 2000));
    second->close();
    EXPECT_TRUE(QTest::qWaitFor([&] { return label(*window_) == 0; }, 2000));
}

TEST_F(Recovery, TheSecondToSaveIsAsked) {
    window_->openFile(file_);
    const auto second = open();
    answer(QStringLiteral("Open it here too"));
    second->openFile(file_);
    setWheelbase(*window_, 3.0);
    setWheelbase(*second, 3.1);
    trigger(*window_, QStringLiteral("Save"));
    answer(QStringLiteral("Cancel"));
    trigger(*second, QStringLiteral("Save"));
    EXPECT_TRUE(asked_.contains(QStringLiteral("was changed since it was opened here")))
        << asked_.toStdString();
    EXPECT_EQ(readCarFile(file_.toStdString()).loaded->car.wheelbase, 3.0);
    EXPECT_TRUE(second->document().isEdited());
    answer(QStringLiteral("Replace it, keep a copy"));
    trigger(*second, QStringLiteral("Save"));
    EXPECT_EQ(readCarFile(file_.toStdString()).loaded->car.wheelbase, 3.1);
    const QString copy = folder_.filePath(QStringLiteral("car (as changed elsewhere).bolt.json"));
    EXPECT_EQ(readCarFile(copy.toStdString()).loaded->car.wheelbase, 3.0);
    EXPECT_TRUE(notice(*second).contains(QStringLiteral("car (as changed elsewhere).bolt.json")));
    EXPECT_FALSE(second->document().isEdited());
}

TEST_F(Recovery, APlaceThatCannotBeWrittenIsSaidAndTriedAgain) {
    window_->openFile(file_);
    setWheelbase(*window_, 3.0);
    ASSERT_TRUE(QDir().rename(folder_.path(), folder_.path() + QStringLiteral("-away")));
    answer(QStringLiteral("Cancel"));
    trigger(*window_, QStringLiteral("Save"));
    EXPECT_TRUE(asked_.contains(QStringLiteral("No such file or directory"))) << asked_.toStdString();
    EXPECT_TRUE(asked_.contains(QStringLiteral("stand in the recovery log"))) << asked_.toStdString();
    EXPECT_TRUE(window_->document().isEdited());
    QTimer::singleShot(0, qApp, [this] {
        ASSERT_TRUE(QDir().rename(folder_.path() + QStringLiteral("-away"), folder_.path()));
    });
    answer(QStringLiteral("Try again"));
    trigger(*window_, QStringLiteral("Save"));
    EXPECT_FALSE(window_->document().isEdited());
    EXPECT_EQ(readCarFile(file_.toStdString()).loaded->car.wheelbase, 3.0);
}

TEST_F(Recovery, SaysThatTheFileWasChangedWhenItComesToTheFront) {
    window_->openFile(file_);
    std::ofstream(file_.toStdString(), std::ios::app) << "\n";
    QEvent front(QEvent::ActivationChange);
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    QApplication::sendEvent(window_.get(), &front);
    EXPECT_TRUE(notice(*window_).contains(QStringLiteral("was changed by another program")));
}

}  // namespace
}  // namespace bolthole
