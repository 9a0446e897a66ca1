// The ways the window has to the sheets that are written on, and to a bracket's drawing for a cutting table.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTimer>

#include "app/papers/paper_dialogs.h"
#include "app/papers/sheet_dialogs.h"
#include "app/papers/template_dialogs.h"
#include "tests/support/paper_tools.h"
#include "widgets/kit/notice_bar.h"

namespace bolthole {
namespace {

TEST(SheetDialogs, ShowEverySheetOnBothPapers) {
    const Car car = test::demoCar("light-coupe");
    for (const auto& [kind, letter, a4] : {std::tuple(SheetKind::measuring, "sheet 1 of 7", "sheet 1 of 6"),
                                           std::tuple(SheetKind::testDay, "sheet 1 of 1", "sheet 1 of 1"),
                                           std::tuple(SheetKind::setup, "sheet 1 of 1", "sheet 1 of 1")}) {
        const QStringList seen = test::sheetsPreviewed(
            [&, shown = kind] { previewSheet(nullptr, shown, car, NumberStyle{Units::inch}); });
        EXPECT_EQ(seen, (QStringList{letter, a4})) << nameOf(kind).toStdString();
    }
}

// Answers the preview's file dialog, as soon as it comes.
void answerWith(const QString& file) {
    QTimer::singleShot(50, [file] {
        auto* asked = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(asked, nullptr);
        asked->selectFile(file);
        asked->findChild<QLineEdit*>()->setText(file);
        QMetaObject::invokeMethod(asked, "accept");
    });
}

TEST(SheetDialogs, SayInThePreviewUnderWhatNameASheetWasSaved) {
    const QTemporaryDir folder;
    const Car car = test::demoCar("light-coupe");
    for (const SheetKind kind : {SheetKind::measuring, SheetKind::testDay, SheetKind::setup}) {
        const QString file = folder.filePath(nameOf(kind) + QStringLiteral(".pdf"));
        QString said;
        QTimer::singleShot(0, [&] {
            QWidget* preview = QApplication::activeModalWidget();
            ASSERT_NE(preview, nullptr);
            for (auto* button : preview->findChildren<QPushButton*>()) {
                if (button->text().contains(QStringLiteral("PDF"))) {
                    answerWith(file);
                    button->click();
                }
            }
            const auto* notice = preview->findChild<NoticeBar*>();
            said = notice == nullptr ? QString() : notice->text();
            preview->close();
        });
        previewSheet(nullptr, kind, car, NumberStyle{Units::inch});
        EXPECT_TRUE(QFile::exists(file));
        EXPECT_TRUE(said.endsWith(QStringLiteral(" saved: %1.pdf, in %2")
                                      .arg(nameOf(kind), QDir::toNativeSeparators(folder.path()))))
            << said.toStdString();
    }
}

TEST(TemplateDialogs, SaveABracketForACuttingTable) {
    const QSignalSpy news(&PaperNews::instance(), &PaperNews::saved);
    const QTemporaryDir folder;
    const TemplateRequest request{test::demoCar("long-roof-wagon"), {0, End::axle}, NumberStyle{Units::inch}};
    for (const auto& [name, begin] :
         {std::pair("bracket.svg", "<?xml"), std::pair("bracket.dxf", "999\r\ninches, 1:1")}) {
        ASSERT_TRUE(saveTemplateCut(nullptr, request, folder.filePath(name)));
        QFile file(folder.filePath(name));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_TRUE(file.readAll().startsWith(begin)) << name;
    }
    test::BoxCloser closer;
    EXPECT_FALSE(saveTemplateCut(nullptr, request, folder.filePath("none/bracket.svg")));
    EXPECT_TRUE(closer.said().contains("bracket.svg"));
    ASSERT_EQ(news.size(), 2) << "only what was saved";
    EXPECT_TRUE(news[1][0].toString().startsWith("Drilling template saved: bracket.dxf, in "));
}

}  // namespace
}  // namespace bolthole
