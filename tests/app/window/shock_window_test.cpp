// The forces of shocks entered in the real window: from a sheet, from readings, as an estimate, and undone.
#include <gmock/gmock.h>

#include <QAbstractButton>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>
#include <array>

#include "tests/support/window_bench.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/launch/shock_dialog.h"
#include "widgets/pages/launch/work_out_dialog.h"

namespace bolthole::test {
namespace {

using testing::ElementsAre;

class ShocksInTheWindow : public WindowBench {
  protected:
    void SetUp() override {
        openWindow(kCoupeDemo, {1480, 920});
        openPage(Qt::Key_9);
    }
    [[nodiscard]] const std::optional<Damping>& front() const {
        return window_->state().car.launch.front.damping;
    }
    /// Opens the dialog of the front shocks and answers it.
    void answer(const std::function<void(ShockDialog&)>& act) {
        QAbstractButton* button = nullptr;
        for (QAbstractButton* each : window_->findChildren<QAbstractButton*>()) {
            if (each->accessibleName() == QLatin1String("Forces of the front shocks")) {
                button = each;
            }
        }
        ASSERT_NE(button, nullptr);
        QTimer::singleShot(0, [&act] {
            auto* dialog = qobject_cast<ShockDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            act(*dialog);
        });
        button->click();
        window_->activateWindow();  // as a window manager does when a dialog goes
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    static QPlainTextEdit& text(ShockDialog& dialog, bool isBump) {
        return *dialog.findChildren<QPlainTextEdit*>()[isBump ? 0 : 1];
    }
    static QPushButton& take(ShockDialog& dialog) {
        for (QPushButton* button : dialog.findChildren<QPushButton*>()) {
            if (button->text() == QLatin1String("Take them")) {
                return *button;
            }
        }
        throw std::runtime_error("no such button");
    }
};

TEST_F(ShocksInTheWindow, ASheetIsTakenWholeAndUndone) {
    const std::optional<Damping> before = front();
    ASSERT_TRUE(before);
    answer([](ShockDialog& dialog) {
        EXPECT_FALSE(text(dialog, true).toPlainText().isEmpty()) << "what is entered is there to be edited";
        text(dialog, true).setPlainText("in/s 0 1 2\n1 10 20 x\n");
        EXPECT_FALSE(take(dialog).isEnabled());
        text(dialog, true).setPlainText("in/s 0 1 2\n1 10 20 30\n5 30 60 90\n");
        text(dialog, false).setPlainText("in/s 0 1 2\n1 20 40 60\n5 60 120 180\n");
        EXPECT_TRUE(take(dialog).isEnabled());
        take(dialog).click();
    });
    ASSERT_TRUE(front());
    EXPECT_THAT(front()->bump.clicks, ElementsAre(0, 1, 2));
    EXPECT_NE(front(), before);
    undo();
    EXPECT_EQ(front(), before);
}

TEST_F(ShocksInTheWindow, AnEstimateSaysThatItIsOne) {
    answer([](ShockDialog& dialog) {
        dialog.choose(ShockDialog::Source::estimate);
        ASSERT_TRUE(take(dialog).isEnabled());
        take(dialog).click();
    });
    ASSERT_TRUE(front());
    EXPECT_TRUE(front()->isEstimate);
    const std::vector<Warning>& warnings = window_->state().warnings;
    EXPECT_TRUE(std::ranges::any_of(warnings, [](const Warning& warning) {
        return warning.finding.cause.find("front shocks are an estimate") != std::string::npos;
    }));
}

TEST_F(ShocksInTheWindow, ReadingsWithAHungWeight) {
    answer([](ShockDialog& dialog) {
        dialog.choose(ShockDialog::Source::readings);
        text(dialog, true).setPlainText("0 20 4 2\n");
        text(dialog, false).setPlainText("0 20 4 4\n3 20 4 8\n");
        ASSERT_TRUE(take(dialog).isEnabled());
        take(dialog).click();
    });
    ASSERT_TRUE(front());
    EXPECT_THAT(front()->rebound.clicks, ElementsAre(0, 3));
    EXPECT_FALSE(front()->isEstimate);
}

TEST_F(ShocksInTheWindow, ReadingsGiveATiresRateWithItsPlusMinusInOneStep) {
    QAbstractButton* button = nullptr;
    for (QAbstractButton* each : window_->findChildren<QAbstractButton*>()) {
        if (each->accessibleName() == QLatin1String("Rear tire rate from readings")) {
            button = each;
        }
    }
    ASSERT_NE(button, nullptr);
    const Car before = window_->state().car;
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<WorkOutDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        const std::array<const char*, 4> typed{"600", "13", "800", "12 7/8"};
        const QList<NumberField*> fields = dialog->findChildren<NumberField*>();
        ASSERT_EQ(fields.size(), 4);
        for (int at = 0; at < 4; ++at) {
            typeInto(*fields[at], QLatin1String(typed[static_cast<std::size_t>(at)]));
        }
        ASSERT_TRUE(dialog->worked());
        dialog->accept();
    });
    button->click();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    const Car& car = window_->state().car;
    const FieldId id{.field = Field::rearTireRate};
    FieldId uncertainty = id;
    uncertainty.uncertainty = true;
    // 200 lb over an eighth of an inch: 1600 lb/in; 1 lb/in is 175.126835 N/m (NIST SP 811, from memory).
    EXPECT_NEAR(numberAt(car, id).value_or(0), 1600 * 175.126835, 1e-2);
    EXPECT_GT(numberAt(car, uncertainty).value_or(0), 0);
    undo();
    EXPECT_EQ(window_->state().car, before);
}

}  // namespace
}  // namespace bolthole::test
