// The evening after a test day, by keyboard: three passes typed, compared, fitted and taken over, the next
// thing to try chosen, the sheet for the next day looked at.
#include <gmock/gmock.h>

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <array>

#include "app/controllers/fit_controller.h"
#include "app/controllers/trial_controller.h"
#include "app/window/main_window.h"
#include "geometry/compare/setup_changes.h"
#include "tests/support/paper_tools.h"
#include "tests/support/window_bench.h"
#include "widgets/pages/days/compare_card.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/trials/trial_list.h"
#include "widgets/trials/trials_panel.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

constexpr int kPatience = 120'000;  // ms

class Evening : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kCoupeDemo, {1480, 920});
        page().setClock([this] { return now_; });
        openPage(Qt::Key_Minus);
    }
    [[nodiscard]] TestDaysPage& page() const { return *window_->findChild<TestDaysPage*>(); }
    [[nodiscard]] const Car& car() const { return window_->state().car; }
    [[nodiscard]] const FitController& fits() const { return *window_->findChild<FitController*>(); }
    [[nodiscard]] const TrialController& trials() const { return *window_->findChild<TrialController*>(); }
    [[nodiscard]] std::string fared() const {
        return window_->findChild<QLabel*>(QStringLiteral("faredWords"))->text().toStdString();
    }
    /// From the field where it is entered: 60 ft, 330 ft.
    void typePass(const std::array<QString, 2>& numbers) {
        now_ = now_.addSecs(1000);
        for (std::size_t at = 0; at < numbers.size(); ++at) {
            QTest::keyClicks(QApplication::focusWidget(), numbers[at]);
            QTest::keyClick(QApplication::focusWidget(),
                            at + 1 < numbers.size() ? Qt::Key_Tab : Qt::Key_Return);
        }
    }
    /// Waits for the fit of the car as it stands.
    [[nodiscard]] bool isFitted() const {
        return QTest::qWaitFor([this] { return !fits().isRunning() && fits().fit() != nullptr; },
                               kPatience) &&
               fits().fit()->end == FitEnd::done;
    }
    [[nodiscard]] bool isTried() const {
        return QTest::qWaitFor([this] { return trials().trials() != nullptr; }, kPatience);
    }
    [[nodiscard]] QAction& action(const QString& text) const {
        for (QAction* each : window_->findChildren<QAction*>()) {
            if (each->text() == text) {
                return *each;
            }
        }
        throw std::runtime_error(text.toStdString());
    }

  private:
    QDateTime now_{QDate(2026, 11, 28), QTime(13, 0)};
};

TEST_F(Evening, FromThreePassesToTheNextTryAndItsSheet) {
    const std::size_t before = car().passes.size();
    for (const char* time : {"2.020", "2.031", "2.026"}) {
        typePass({QString::fromLatin1(time), ""});
    }
    ASSERT_EQ(car().passes.size(), before + 3);
    EXPECT_FALSE(page().comparison().words().verdict.isEmpty());
    ASSERT_TRUE(isFitted());
    EXPECT_EQ(fits().fit()->passes.back().row, before + 2) << "the pass typed last has been fitted, too";
    const LaunchFit fit = *fits().fit();
    // Taken over by Tab and Space: one step, which the next fit starts from.
    ASSERT_TRUE(tabTo([](QWidget* here) {
        auto* button = qobject_cast<QPushButton*>(here);
        return button != nullptr && button->text() == QLatin1String("Take it over");
    }));
    const int steps = window_->document().undoStack().index();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(window_->document().undoStack().index(), steps + 1);
    EXPECT_NEAR(*car().launch.friction, *takeOver(fit).friction, 1e-12);
    // The next thing to try goes by what was taken over, and says how the predictions fared.
    openPage(Qt::Key_9);
    ASSERT_TRUE(isTried());
    ASSERT_TRUE(isFitted());
    EXPECT_THAT(fared(), HasSubstr("Each pass predicted without itself: "));
    EXPECT_THAT(fared(), HasSubstr("agree with what they teach"));
    TrialList& list = window_->findChild<TrialsPanel*>()->list();
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Down);
    ASSERT_GE(list.chosen(), 0);
    const Car asItStood = car();
    const Edit first = trials().trials()->trials[static_cast<std::size_t>(list.chosen())].change.edit;
    QTest::keyClick(&list, Qt::Key_Return);
    EXPECT_FALSE(isSameSetup(car(), asItStood));
    EXPECT_TRUE(isSameSetup(car(), bolthole::apply(asItStood, first).car));
    const QStringList sheets =
        test::sheetsPreviewed([this] { action(QStringLiteral("Test-da&y sheet…")).trigger(); });
    EXPECT_EQ(sheets, (QStringList{"sheet 1 of 1", "sheet 1 of 1"}));
}

}  // namespace
}  // namespace bolthole
