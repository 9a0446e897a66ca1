// The Brackets page and its drilling template in the real window, by mouse and keys.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QTabBar>
#include <QTemporaryDir>
#include <QTest>
#include <functional>
#include <memory>

#include "app/papers/template_dialogs.h"
#include "app/window/main_window.h"
#include "tests/support/bracket_car.h"
#include "tests/support/paper_tools.h"
#include "tests/support/pdf_page.h"
#include "tests/support/window_bench.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/brackets/bracket_page.h"
#include "widgets/pages/brackets/bracket_picture.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class BracketsInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kCoupeDemo, {1280, 800});
        auto* tabs = window_->findChild<QTabBar*>(QStringLiteral("workPages"));
        for (int tab = 0; tab < tabs->count(); ++tab) {
            key_ = tabs->tabText(tab) == page().title() ? tab + 1 : key_;
        }
        ASSERT_GT(key_, 0);
        QTest::keyClick(window_.get(), static_cast<Qt::Key>(Qt::Key_0 + key_), Qt::AltModifier);
        QCoreApplication::processEvents();
    }

    [[nodiscard]] BracketPage& page() { return *window_->findChild<BracketPage*>(); }
    [[nodiscard]] const std::optional<Plate>& plate() {
        const BracketId at = page().place().value();
        return window_->state().car.links[static_cast<std::size_t>(at.link)].bracket(at.end).plate;
    }
    [[nodiscard]] int steps() { return window_->document().undoStack().count(); }
    using WindowBench::tabTo;
    static bool tabTo(const QString& text) {
        return tabTo([&](QWidget* widget) {
            auto* button = qobject_cast<QAbstractButton*>(widget);
            return widget->accessibleName() == text || (button != nullptr && button->text() == text);
        });
    }

    int key_ = 0;
};

}  // namespace

TEST_F(BracketsInTheWindow, APlateIsEnteredByKeysAloneAndUndone) {
    ASSERT_TRUE(page().isVisible());
    EXPECT_TRUE(page().isAncestorOf(QApplication::focusWidget()));
    page().choose({0, End::axle});
    if (plate()) {
        ASSERT_TRUE(tabTo(QStringLiteral("Take the plate away")));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    }
    const int before = steps();
    ASSERT_TRUE(tabTo(QStringLiteral("Rectangle around the holes")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    QCoreApplication::processEvents();
    ASSERT_TRUE(plate().has_value());
    EXPECT_EQ(steps(), before + 1);
    ASSERT_TRUE(tabTo(QStringLiteral("Hole diameter")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("16 mm"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QCoreApplication::processEvents();
    EXPECT_NEAR(plate()->holeDiameter, 0.016, 1e-12);
    EXPECT_EQ(steps(), before + 2);
    undo();
    EXPECT_NE(plate()->holeDiameter, 0.016);
    undo();
    EXPECT_FALSE(plate().has_value());
}

TEST_F(BracketsInTheWindow, ACornerDraggedByMouseIsOneStepOfUndo) {
    page().choose({0, End::axle});
    window_->document().apply(SetPlate{0, End::axle, test::bracketCar(Units::inch).links[0].axle.plate},
                              EditPhase::whole, {});
    QCoreApplication::processEvents();
    QTest::qWait(20);
    const Plate before = *plate();
    const int steps = this->steps();
    BracketPicture& picture = page().picture();
    const QPoint from = picture.place(before.corners[2]).toPoint();
    QTest::mousePress(&picture, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&picture, from + QPoint(10, 0));
    QTest::mouseMove(&picture, from + QPoint(30, 0));
    QTest::mouseRelease(&picture, Qt::LeftButton, Qt::NoModifier, from + QPoint(30, 0));
    QCoreApplication::processEvents();
    EXPECT_GT(plate()->corners[2].x(), before.corners[2].x());
    EXPECT_EQ(this->steps(), steps + 1);
    undo();
    EXPECT_EQ(*plate(), before);
}

TEST_F(BracketsInTheWindow, TheTemplateOfTheChosenBracketIsPreviewedFromTheMenu) {
    page().choose({1, End::chassis});
    QAction* found = nullptr;
    for (QAction* action : window_->findChildren<QAction*>()) {
        found = action->text() == QStringLiteral("&Drilling template…") ? action : found;
    }
    ASSERT_NE(found, nullptr);
    const QStringList seen = test::sheetsPreviewed([found] { found->trigger(); });
    ASSERT_EQ(seen.size(), 4);
    for (const QString& sheets : seen) {
        EXPECT_TRUE(sheets.startsWith(QStringLiteral("sheet 1 of ")));
    }
}

TEST_F(BracketsInTheWindow, TheTemplateIsSavedWholeAndNamesItsBracket) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("template.pdf"));
    const TemplateRequest request{test::bracketCar(Units::inch), {0, End::axle}, {}};
    ASSERT_TRUE(saveTemplate(window_.get(), request, file));
    QFile saved(file);
    ASSERT_TRUE(saved.open(QIODevice::ReadOnly));
    const std::vector<test::PdfPage> pages = test::readPdf(saved.readAll());
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_THAT(pages[0].allText().toStdString(), HasSubstr("lower, axle bracket"));
    EXPECT_THAT(test::output(QStringLiteral("pdfinfo"), {file}).toStdString(), HasSubstr("612 x 792"));
    EXPECT_THAT(window_->findChild<NoticeBar*>()->text().toStdString(),
                HasSubstr("Drilling template saved: template.pdf, in "));
}

TEST_F(BracketsInTheWindow, WhatNoPaperHoldsIsSaid) {
    TemplateRequest request{test::bracketCar(Units::inch), {0, End::axle}, {}};
    request.car.links[0].axle.plate->corners = {{-9, 0}, {9, 0}, {9, 9}};
    const test::BoxCloser closer;
    EXPECT_FALSE(saveTemplate(window_.get(), request, QStringLiteral("/nowhere/template.pdf")));
    EXPECT_THAT(closer.said().toStdString(), HasSubstr("No paper is large enough"));
}

}  // namespace bolthole
