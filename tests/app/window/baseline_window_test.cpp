// Before and after in the real window: keep, bolt another hole, read the table, undo all the way.
#include <gmock/gmock.h>

#include <QAction>
#include <QClipboard>
#include <QDialog>
#include <QLineEdit>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <limits>
#include <map>

#include "app/carfile/car_file.h"
#include "app/carfile/file_writing.h"
#include "app/commands/sweep_table.h"
#include "app/window/main_window.h"
#include "tests/support/csv.h"
#include "widgets/compare/difference_table.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

class BeforeAndAfter : public ::testing::Test {
  protected:
    BeforeAndAfter() {
        window_.resize(1480, 920);
        window_.show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window_));
        window_.openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
    }
    ~BeforeAndAfter() override { window_.document().undoStack().setClean(); }

    // Ctrl+K, a name, Enter.
    void keepAs(const QString& name) {
        QTimer answer;
        QObject::connect(&answer, &QTimer::timeout, [&answer, name] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog != nullptr) {
                answer.stop();
                auto* field = dialog->findChild<QLineEdit*>();
                field->selectAll();
                QTest::keyClicks(field, name);
                QTest::keyClick(field, Qt::Key_Return);
            }
        });
        answer.start(5);
        QTest::keyClick(&window_, Qt::Key_K, Qt::ControlModifier);
        EXPECT_TRUE(QTest::qWaitFor([this] { return window_.state().baseline.has_value(); }, 5000));
    }
    // The action a shortcut stands for. The tests' platform leaves a window without focus once a dialog has
    // closed, and keys would go nowhere.
    void press(const QString& shortcut) {
        for (QAction* action : window_.findChildren<QAction*>()) {
            if (action->shortcuts().contains(QKeySequence(shortcut))) {
                action->trigger();
                return;
            }
        }
        ADD_FAILURE() << "no action for " << shortcut.toStdString();
    }
    // Clicks the free hole in the side view.
    void boltTo(const PointId& hole) {
        const QPoint at = window_.sideView().placeOf(hole).toPoint();
        QTest::mouseClick(&window_.sideView(), Qt::LeftButton, Qt::NoModifier, at);
    }
    // What a car's file gives on the command line: the sweep's row `row`, figure by column name.
    [[nodiscard]] std::map<std::string, double> sweptFile(const Car& car, const char* name,
                                                          std::size_t row) const {
        const std::string file = folder_.filePath(QString::fromLatin1(name)).toStdString();
        EXPECT_EQ(writeWholeFile(file, writeCar(car, {})), "");
        const ReadResult read = readCarFile(file);
        EXPECT_TRUE(read.loaded.has_value()) << read.problem.line();
        const auto rows =
            cellsOfCsv(sweepTable(computeTrace(read.loaded->car), read.loaded->car, Units::inch));
        std::map<std::string, double> figures;
        for (std::size_t column = 0; column < rows[0].size(); ++column) {
            const std::string& text = rows[row + 1][column];
            figures[rows[0][column]] =
                text.empty() ? std::numeric_limits<double>::quiet_NaN() : std::stod(text);
        }
        return figures;
    }
    [[nodiscard]] DifferenceTable& table() { return *window_.findChild<DifferenceTable*>(); }
    // The table as copied: rows of fields.
    [[nodiscard]] std::vector<QStringList> copied() {
        table().setUnfolded(true);
        table().clearSelection();
        table().setFocus();
        QTest::keyClick(&table(), Qt::Key_C, Qt::ControlModifier);
        std::vector<QStringList> rows;
        for (const QString& line : QGuiApplication::clipboard()->text().split(QLatin1Char('\n'))) {
            rows.push_back(line.split(QLatin1Char('\t')));
        }
        return rows;
    }

    MainWindow window_{Settings{}};
    QTemporaryDir folder_;
};

double number(QString text) {
    return text.replace(QChar(0x2212), QLatin1Char('-')).toDouble();
}

TEST_F(BeforeAndAfter, KeptThenBoltedElsewhereTheTableSaysWhatTwoSweepsSayAndUndoGoesAllTheWayBack) {
    const Car opened = window_.state().car;
    keepAs(QStringLiteral("Monday"));
    ASSERT_EQ(window_.state().car.kept.size(), 1U);
    EXPECT_EQ(window_.state().car.kept[0].name, "Monday");
    ASSERT_TRUE(window_.state().baseline.has_value());

    const int otherHole = window_.state().car.links[0].axle.use == 0 ? 1 : 0;
    boltTo({PointId::Kind::hole, 0, End::axle, otherHole});
    ASSERT_EQ(window_.state().car.links[0].axle.use, otherHole);

    press(QStringLiteral("F7"));
    const auto before = sweptFile(*window_.state().car.kept[0].car, "before.bolt.json", 40);
    const auto after = sweptFile(withoutKept(window_.state().car), "after.bolt.json", 40);
    ASSERT_NEAR(before.at("travel_in"), 0, 1e-12);
    int compared = 0;
    for (const QStringList& row : copied()) {
        const bool antiSquat = row[0].startsWith(QStringLiteral("Anti-squat"));
        const bool center = row[0].startsWith(QStringLiteral("Instant center, ahead"));
        if (antiSquat || center) {
            const std::string column = antiSquat ? "anti_squat_pct" : "ic_x_in";
            EXPECT_NEAR(number(row[1]), before.at(column), 0.051) << row[0].toStdString();
            EXPECT_NEAR(number(row[2]), after.at(column), 0.051) << row[0].toStdString();
            EXPECT_NEAR(number(row[3]), after.at(column) - before.at(column), 0.11) << row[0].toStdString();
            ++compared;
        }
    }
    EXPECT_EQ(compared, 2);

    EXPECT_EQ(window_.document().undoStack().count(), 2);
    press(QStringLiteral("Ctrl+Z"));
    press(QStringLiteral("Ctrl+Z"));
    EXPECT_EQ(window_.state().car, opened);
    EXPECT_FALSE(window_.state().baseline.has_value());
}

TEST_F(BeforeAndAfter, KeptOnlyAfterBoltingTheCarBeforeItIsOneButtonAway) {
    const int first = window_.state().car.links[0].axle.use;
    boltTo({PointId::Kind::hole, 0, End::axle, first == 0 ? 1 : 0});
    const Car bolted = window_.state().car;
    window_.document().apply(SetNumber{{.field = Field::cgHeight}, 0.6}, EditPhase::whole, {});
    keepAs(QStringLiteral("as bolted"));
    const Car kept = window_.state().car;
    press(QStringLiteral("F7"));
    QPushButton* offer = nullptr;
    for (auto* each : window_.findChildren<QPushButton*>()) {
        offer = each->text().startsWith(QStringLiteral("Compare with the car")) ? each : offer;
    }
    ASSERT_NE(offer, nullptr);
    ASSERT_TRUE(offer->isVisible());
    offer->click();
    EXPECT_EQ(window_.state().baseline->car.links[0].axle.use, first);
    EXPECT_EQ(window_.state().car.links[0].axle.use, bolted.links[0].axle.use);
    EXPECT_GT(copied().size(), 5U);
    EXPECT_FALSE(offer->isVisible());
    press(QStringLiteral("Ctrl+Z"));
    EXPECT_EQ(window_.state().car, kept);
    EXPECT_TRUE(offer->isVisible());
}

TEST_F(BeforeAndAfter, SwappingByKeyAndBackIsUndoable) {
    keepAs(QStringLiteral("Monday"));
    ASSERT_TRUE(window_.state().baseline.has_value());
    const int first = window_.state().car.links[0].axle.use;
    boltTo({PointId::Kind::hole, 0, End::axle, first == 0 ? 1 : 0});
    const Car changed = window_.state().car;
    press(QStringLiteral("Ctrl+Shift+K"));
    EXPECT_EQ(window_.state().car.links[0].axle.use, first);
    EXPECT_EQ(window_.state().baseline->car.links[0].axle.use, changed.links[0].axle.use);
    press(QStringLiteral("Ctrl+Z"));
    EXPECT_EQ(window_.state().car, changed);
}

TEST_F(BeforeAndAfter, AnotherCarFileIsTakenInAsTheBaseline) {
    Car other = window_.state().car;
    other.title = "Other";
    other.cgHeight += 0.05;
    const QString file = folder_.filePath(QStringLiteral("other.bolt.json"));
    ASSERT_EQ(writeWholeFile(file.toStdString(), writeCar(other, {})), "");
    window_.compareWithFile(file);
    ASSERT_TRUE(window_.state().baseline.has_value());
    EXPECT_EQ(window_.state().car.kept[0].name, "Other");
    EXPECT_LT(window_.state().baseline->cursor[Figure::antiSquat], window_.state().cursor[Figure::antiSquat]);
    window_.document().undoStack().undo();
    EXPECT_FALSE(window_.state().baseline.has_value());
}

TEST_F(BeforeAndAfter, ABaselineThatCannotBeAssembledHasNoGhostAndHarmsNothing) {
    Car apart = window_.state().car;
    apart.links[0].length = 0.05;
    window_.document().apply(KeepSetup{"apart", "2026-03-09", "", std::make_shared<const Car>(apart)},
                             EditPhase::whole, {});
    EXPECT_FALSE(window_.state().baseline.has_value());
    window_.document().apply(SetNumber{{.field = Field::cgHeight}, 0.6}, EditPhase::dragging, {});
    window_.document().apply(SetNumber{{.field = Field::cgHeight}, 0.6}, EditPhase::dragged, {});
    EXPECT_FALSE(window_.state().baseline.has_value());
    EXPECT_TRUE(window_.state().traceIsCurrent);
}

TEST_F(BeforeAndAfter, TheGhostFollowsTheCursor) {
    keepAs(QStringLiteral("Monday"));
    ASSERT_TRUE(window_.state().baseline.has_value());
    const double ride = window_.state().baseline->cursor[Figure::antiSquat];
    emit window_.findChild<TravelSlider*>(QStringLiteral("benchSlider"))->cursorMoved(0.05);
    EXPECT_NE(window_.state().baseline->cursor[Figure::antiSquat], ride);
    EXPECT_NEAR(window_.state().baseline->cursor[Figure::travel], 0.05, 1e-12);
}

}  // namespace
}  // namespace bolthole
