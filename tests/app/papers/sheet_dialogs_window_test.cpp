// The ways the window has to the sheets that are written on, and to a bracket's drawing for a cutting table.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

#include "app/papers/sheet_dialogs.h"
#include "app/papers/template_dialogs.h"
#include "tests/support/paper_tools.h"

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

TEST(TemplateDialogs, SaveABracketForACuttingTable) {
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
}

}  // namespace
}  // namespace bolthole
