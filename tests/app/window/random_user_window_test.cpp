// A random user in the real window. BOLTHOLE_ACTIONS says how many actions (20000 is the long run),
// BOLTHOLE_SEED which; after each the window must make sense, and every so often undo leads back to the
// opening bytes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QLabel>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "tests/support/random_user.h"
#include "widgets/kit/notice_bar.h"

namespace bolthole {
namespace {

int fromEnvironment(const char* name, int usual) {
    return qEnvironmentVariableIsSet(name) ? qEnvironmentVariableIntValue(name) : usual;
}

std::string bytesOf(const Document& document) {
    const RecoveryPoint point = document.recoveryPoint({});
    return writeCar(*point.car, *point.source);
}

class AnyUser : public testing::Test {
  protected:
    void SetUp() override {
        ThemeKeeper::instance().choose(Appearance::light);
        window_ = std::make_unique<MainWindow>(Settings{});
        QObject::connect(&document(), &Document::fileChanged, [this] { noteOpening(); });
        QObject::connect(&document(), &Document::stepDone, [this](const QString& what) {
            if (what == QStringLiteral("Save")) {
                clean_ = bytesOf(document());
            }
        });
        window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        window_->resize(1280, 800);
        window_->show();
    }
    [[nodiscard]] Document& document() { return window_->document(); }
    // The opening bytes are those of a car with nothing to undo.
    void noteOpening() {
        if (document().undoStack().count() == 0) {
            opening_ = bytesOf(document());
            clean_ = opening_;
        }
    }
    void check() {
        const BenchState& state = window_->state();
        ASSERT_FALSE(test::RandomUser::isAsked()) << "a dialog or menu is left";
        ASSERT_TRUE(window_->isVisible());
        ASSERT_FALSE(window_->windowTitle().isEmpty());
        ASSERT_EQ(state.car, document().car()) << "the window shows another car";
        ASSERT_TRUE(findFaults(document().car()).empty())
            << "no edit may lead to a car that can't be computed";
        ASSERT_TRUE(state.traceIsCurrent || !state.problem.empty()) << "nothing says why the picture is old";
        ASSERT_FALSE(document().isDragging()) << "a drag is left";
        auto& launch = *window_->findChild<LaunchPage*>();
        ASSERT_TRUE(launch.isVisible() || !launch.player().isPlaying()) << "plays where nobody sees it";
        ASSERT_EQ(window_->isWindowModified(), document().isEdited());
        if (!document().isEdited()) {
            ASSERT_EQ(bytesOf(document()), clean_) << "said to be as saved, and is not";
        }
        static const QRegularExpression kNonsense(QStringLiteral("\\b(nan|inf)\\b|\\d[eE][+-]\\d"));
        const QString undo = document().undoStack().undoText();
        ASSERT_TRUE(undo.isEmpty() ? !document().undoStack().canUndo() : !undo.contains(kNonsense))
            << undo.toStdString();
        static const QRegularExpression kQuoted(QStringLiteral("'[^']*'"));  // what was typed, said back
        for (const QLabel* label : window_->findChildren<QLabel*>()) {
            const QString words = label->text().remove(kQuoted);
            ASSERT_FALSE(label->isVisible() && words.contains(kNonsense)) << words.toStdString();
        }
    }
    void walkThroughHistory() {
        QUndoStack& history = document().undoStack();
        const std::string now = bytesOf(document());
        const int index = history.index();
        while (history.canUndo()) {
            history.undo();
        }
        if (history.count() < kUndoSteps) {
            ASSERT_EQ(bytesOf(document()), opening_) << "undone to the end it is not the car that was opened";
        }
        while (history.index() < index) {
            history.redo();
        }
        ASSERT_EQ(bytesOf(document()), now) << "redone it is not the car it was";
    }

    QTemporaryDir folder_;
    std::string opening_;
    std::string clean_;
    std::unique_ptr<MainWindow> window_;
};

TEST_F(AnyUser, FindsAWindowThatMakesSenseAfterEachAction) {
    const int actions = fromEnvironment("BOLTHOLE_ACTIONS", 400);
    const auto seed = static_cast<unsigned>(fromEnvironment("BOLTHOLE_SEED", 1));
    test::RandomUser user(*window_, seed, folder_.filePath(QStringLiteral("car.bolt.json")));
    QStringList last;
    int steps = 0;
    for (int done = 1; done <= actions; ++done) {
        last.append(user.act());
        last = last.mid(std::max<qsizetype>(0, last.size() - 20));
        check();
        if (!HasFatalFailure() && (done % 200 == 0 || done == actions)) {
            steps += document().undoStack().index();
            walkThroughHistory();
        }
        if (HasFatalFailure()) {
            FAIL() << "seed " << seed << ", action " << done << "; the last ones:\n"
                   << last.join('\n').toStdString();
        }
    }
    EXPECT_GT(steps, actions / 200) << "hardly anything was changed";
    document().undoStack().setClean();
}

}  // namespace
}  // namespace bolthole
