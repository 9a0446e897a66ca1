// The list of warnings by keyboard and mouse: gravest first, Enter to the field, the certain fix in one step.
#include <gmock/gmock.h>

#include <QPushButton>

#include "geometry/car/starting_numbers.h"
#include "tests/support/window_bench.h"
#include "widgets/kit/number_field.h"
#include "widgets/readouts/warning_list.h"

namespace bolthole::test {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class Warnings : public WindowBench {
  protected:
    void SetUp() override { openWindow(kCoupeDemo, QSize(1280, 800)); }

    void change(const Edit& edit) {
        ASSERT_EQ(window_->document().apply(edit, EditPhase::whole, {}), QString());
        QCoreApplication::processEvents();
    }
    /// Writes a length a quarter inch too long for the holes of the first rod; its index.
    int warnOfLength() {
        const Car& car = window_->document().car();
        const auto rod = std::ranges::find(car.links, LinkKind::rod, &Link::kind);
        const int index = static_cast<int>(rod - car.links.begin());
        change(SetNumber{{.field = Field::linkLength, .link = index}, builtLength(*rod) + 0.00635});
        return index;
    }
    /// Opens the list by its key; its rows from the top.
    [[nodiscard]] QList<WarningRow*> rows() const {
        QTest::keyClick(window_.get(), Qt::Key_F9);
        QCoreApplication::processEvents();
        const auto* list = window_->findChild<WarningList*>();
        return list->findChildren<WarningRow*>();
    }
    [[nodiscard]] WarningRow* rowWith(const char* words) const {
        for (WarningRow* row : rows()) {
            if (row->accessibleName().contains(QLatin1String(words))) {
                return row;
            }
        }
        return nullptr;
    }
};

TEST_F(Warnings, SayCauseAndWhatFollowsTheGravestFirst) {
    warnOfLength();
    change(SetNumber{{.field = Field::jointLimit}, 0.001});
    const QList<WarningRow*> all = rows();
    ASSERT_GE(all.size(), 2);
    EXPECT_THAT(all[0]->accessibleName().toStdString(), StartsWith("Danger: "));
    EXPECT_THAT(all[0]->accessibleName().toStdString(), HasSubstr("The joint can bind and break"));
    const WarningRow* length = rowWith(": written length");
    ASSERT_NE(length, nullptr);
    EXPECT_THAT(length->accessibleName().toStdString(), HasSubstr("apart. As written"));
    EXPECT_TRUE(all[0]->hasFocus());
}

// What nobody measured is not wrong: it stands below what is, in a frame alone.
TEST_F(Warnings, WhatComesOfStartingNumbersIsNotCalledWrong) {
    const int index = warnOfLength();
    ASSERT_NE(rowWith(": written length"), nullptr);
    EXPECT_THAT(rowWith(": written length")->accessibleName().toStdString(), StartsWith("Wrong: "));
    Car car = window_->document().car();
    startFrom(car.links[static_cast<std::size_t>(index)]);
    window_->document().adopt({std::move(car), nlohmann::ordered_json::object()});
    QCoreApplication::processEvents();
    const WarningRow* length = rowWith(": written length");
    ASSERT_NE(length, nullptr);
    EXPECT_THAT(length->accessibleName().toStdString(), StartsWith("Not measured yet: "));
    EXPECT_THAT(length->accessibleName().toStdString(), HasSubstr("starting numbers: measure them first"));
    ASSERT_NE(rowWith("starting numbers, not measured"), nullptr);
    EXPECT_THAT(rowWith("starting numbers, not measured")->accessibleName().toStdString(),
                StartsWith("Not measured yet: "));
}

TEST_F(Warnings, EnterGoesToTheField) {
    warnOfLength();
    WarningRow* row = rowWith(": written length");
    ASSERT_NE(row, nullptr);
    row->setFocus();
    QTest::keyClick(row, Qt::Key_Return);
    QCoreApplication::processEvents();
    const auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    EXPECT_THAT(field->accessibleName().toStdString(), HasSubstr("length"));
}

TEST_F(Warnings, TheCertainFixIsOneStepThatCanBeUndone) {
    const int index = warnOfLength();
    const double written = *window_->document().car().links[static_cast<std::size_t>(index)].length;
    WarningRow* row = rowWith(": written length");
    ASSERT_NE(row, nullptr);
    auto* fix = row->findChild<QPushButton*>();
    ASSERT_NE(fix, nullptr);
    EXPECT_EQ(fix->text(), QStringLiteral("Clear the length"));
    QTest::mouseClick(fix, Qt::LeftButton);
    QCoreApplication::processEvents();
    EXPECT_FALSE(window_->document().car().links[static_cast<std::size_t>(index)].length);
    EXPECT_EQ(rowWith(": written length"), nullptr);
    undo();
    EXPECT_EQ(window_->document().car().links[static_cast<std::size_t>(index)].length, written);
    EXPECT_NE(rowWith(": written length"), nullptr);
}

}  // namespace
}  // namespace bolthole::test
