// Words, tables and frames of the papers, read back from PDF: nothing lost, nothing shrunk, everything in its
// place.
#include "widgets/papers/kit/paper_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QPainterPath>
#include <QPdfWriter>
#include <QRawFont>
#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

#include "tests/support/pdf_page.h"
#include "widgets/papers/kit/flowed_paper.h"

namespace bolthole {
namespace {

using test::PdfPage;
using test::PdfStroke;
using test::PdfText;

constexpr double kMargins = 10;  // mm, of the pages below

/// A paper of any blocks.
class MadePaper : public FlowedPaper {
  public:
    using Blocks = std::function<std::vector<SheetBlock>(const PrintFonts& fonts, double width)>;

    MadePaper(const FrameStyle& style, const Blocks& blocks, SheetTitle title, const QString& starting)
        : FlowedPaper(pageOf(PaperSize::a4, QPageLayout::Portrait), style, starting, "Mind your fingers."),
          title_(std::move(title)) {
        flow(blocks(fonts(), width()));
    }

  private:
    [[nodiscard]] SheetTitle title(int index) const override {
        SheetTitle title = title_;
        title.asides = {{sheetWords(index, count())}};
        return title;
    }
    SheetTitle title_;
};

class MadeSheets : public PrintedSheets {
  public:
    explicit MadeSheets(const MadePaper::Blocks& blocks, const FrameStyle& style = {},
                        const SheetTitle& title = {"Somebody", ": paper", {}, {}, 0},
                        const QString& starting = {})
        : PrintedSheets(std::make_unique<const MadePaper>(style, blocks, title, starting)) {}
};

std::vector<PdfPage> pagesOf(const PrintedSheets& sheets) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(pageOf(PaperSize::a4, QPageLayout::Portrait));
        writer.setResolution(1200);
        EXPECT_TRUE(printSheets(sheets, writer));
    }
    return test::readPdf(bytes);
}

// Height of the lowest digit at size 1, from the outlines.
double digitHeight(QFont::Weight weight) {
    QFont font(QStringLiteral("Inter"));
    font.setWeight(weight);
    font.setPixelSize(2048);
    const QRawFont raw = QRawFont::fromFont(font);
    double lowest = 2048;
    for (const quint32 glyph : raw.glyphIndexesForString(QStringLiteral("0123456789"))) {
        lowest = std::min(lowest, raw.pathForGlyph(glyph).boundingRect().height());
    }
    return lowest / 2048;
}

// Rows "row 1 name", "1.25", with a box to tick before every other one.
TextTable longTable(int rows) {
    TextTable table;
    table.columns = {{.align = Qt::AlignHCenter}, {}, {.align = Qt::AlignRight, .isBold = true}};
    table.head = {{QString(), QStringLiteral("name"), QStringLiteral("figure")}};
    for (int row = 1; row <= rows; ++row) {
        table.rows.push_back({boxCell(row % 2 == 0), QStringLiteral("row %1 name").arg(row),
                              QStringLiteral("%1.25").arg(row)});
    }
    return table;
}

MadePaper::Blocks blocksOf(const TextTable& table) {
    return [table](const PrintFonts& fonts, double width) { return LaidTable::blocks(table, width, fonts); };
}

TEST(PaperTable, ShowsEveryRowOnceAndItsHeadOnEveryPage) {
    const std::vector<PdfPage> pages = pagesOf(MadeSheets(blocksOf(longTable(90))));
    ASSERT_GT(pages.size(), 1U);
    std::multiset<QString> found;
    for (const PdfPage& page : pages) {
        EXPECT_EQ(std::ranges::count(page.texts, QStringLiteral("figure"), &PdfText::text), 1);
        for (const PdfText& run : page.texts) {
            found.insert(run.text);
        }
    }
    for (int row = 1; row <= 90; ++row) {
        EXPECT_EQ(found.count(QStringLiteral("row %1 name").arg(row)), 1U) << row;
        EXPECT_EQ(found.count(QStringLiteral("%1.25").arg(row)), 1U) << row;
    }
}

TEST(PaperTable, SetsDigitsAsHighAsItsTypeAsks) {
    TextTable table = longTable(3);
    table.type = {3.0, false};
    const PdfPage page = pagesOf(MadeSheets(blocksOf(table))).front();
    for (const PdfText& run : page.texts) {
        if (run.text.startsWith("row ")) {
            EXPECT_NEAR(run.size * digitHeight(QFont::Normal), 3.0, 0.03);
            EXPECT_GE(run.size * digitHeight(QFont::Normal), 3.0 - 1e-3);
        } else if (run.text.endsWith(".25")) {
            EXPECT_NEAR(run.size * digitHeight(QFont::Bold), 3.0, 0.03);
            EXPECT_GE(run.size * digitHeight(QFont::Bold), 3.0 - 1e-3);
        }
    }
}

// Boxes of 3.4 mm, upright in the middle of their rows' digits.
TEST(PaperTable, PutsBoxesToTickBesideTheirRows) {
    const PdfPage page = pagesOf(MadeSheets(blocksOf(longTable(6)))).front();
    std::vector<QRectF> boxes;
    for (const PdfStroke& stroke : page.strokes) {
        QRectF box;
        for (const QLineF& line : stroke.lines) {
            box |= QRectF(line.p1(), line.p2()).normalized().adjusted(0, 0, 1e-9, 1e-9);
        }
        if (stroke.lines.size() >= 4 && std::abs(box.width() - 3.4) < 0.05) {
            boxes.push_back(box);
        }
    }
    ASSERT_EQ(boxes.size(), 3U);
    for (std::size_t at = 0; at < boxes.size(); ++at) {
        const PdfText* name = page.find(QStringLiteral("row %1 name").arg(2 * at + 2));
        ASSERT_NE(name, nullptr);
        EXPECT_NEAR(boxes[at].center().y(), name->at.y() - 1.25, 0.1);
        EXPECT_LT(boxes[at].right(), name->at.x());
    }
}

TEST(PaperTable, BreaksWhatIsWiderThanItsColumnAndKeepsItOnThePage) {
    TextTable table = longTable(2);
    table.rows[0][1] = QString(QStringLiteral("a name somebody could not stop typing, ")).repeated(5);
    table.rows[1][1] = QString(200, 'W');
    const PrintFonts fonts;
    const PdfPage page = pagesOf(MadeSheets(blocksOf(table))).front();
    QString all;
    for (const PdfText& run : page.texts) {
        all += run.text;
        EXPECT_LE(run.at.x() + fonts.width(run.text, {2.5, false}), page.size.width() - kMargins + 0.5)
            << qPrintable(run.text);
    }
    EXPECT_EQ(all.count('W'), 200);
    EXPECT_EQ(all.count("typing"), 5);
    table.rows[1][1] = QString(100000, 'W');
    EXPECT_LT(LaidTable(table, 190, fonts).height(), 100) << "a row must never be higher than a page";
}

TEST(PaperTable, PaintsNoMoreRowsThanFit) {
    const PrintFonts fonts;
    const LaidTable table(longTable(10), 100, fonts);
    const double row = table.height() / 11;  // all alike, the head too
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(1200);
        QPainter painter(&writer);
        painter.scale(1200 / 25.4, 1200 / 25.4);
        table.paint(painter, {0, 0}, 4.5 * row);
    }
    const PdfPage page = test::readPdf(bytes).front();
    EXPECT_NE(page.find("row 3 name"), nullptr);
    EXPECT_EQ(page.find("row 4 name"), nullptr);
}

TEST(PaperWords, LoseNothingWhenTheyAreBroken) {
    const PrintFonts fonts;
    const QString words =
        QStringLiteral("Torque every bolt to the manufacturer's spec: 3/4-16, then 12 1/2 ") +
        QString(90, 'm') + QStringLiteral(" and on.");
    for (const double width : {20.0, 45.0, 90.0, 180.0}) {
        const QStringList lines = fonts.wrapped(words, kit_type::kText, width);
        EXPECT_EQ(lines.join(QString()).remove(' '), QString(words).remove(' '));
        for (const QString& line : lines) {
            EXPECT_LE(fonts.width(line, kit_type::kText), width + 0.3) << qPrintable(line);
        }
    }
    EXPECT_TRUE(fonts.wrapped({}, kit_type::kText, 50).isEmpty());
}

TEST(PaperFrame, CutsANameShortAndNeverWhatPaperItIs) {
    const auto none = [](const PrintFonts& fonts, double width) {
        return std::vector{wordsBlock("body", kit_type::kText, width, fonts)};
    };
    const SheetTitle title{QString(200, 'W'), ": paper", {}, {}, 0};
    for (const bool hasBar : {false, true}) {
        FrameStyle style;
        style.scaleBar = hasBar ? std::optional(Units::metric) : std::nullopt;
        const PdfPage page = pagesOf(MadeSheets(none, style, title, "Starting numbers: all.")).front();
        const PdfText* head = page.find(": paper");
        ASSERT_NE(head, nullptr);
        const PdfText* aside = page.find("sheet 1 of 1");
        ASSERT_NE(aside, nullptr);
        const PrintFonts fonts;
        EXPECT_GE(head->size * digitHeight(QFont::Bold), 2.8 - 1e-3);
        EXPECT_LT(head->at.x() + fonts.width(head->text, {2.8, true}), aside->at.x());
        EXPECT_NE(page.find("Starting numbers: all."), nullptr);
        EXPECT_NE(page.find("Mind your fingers."), nullptr);
        EXPECT_EQ(page.find("scale bar 1:1, 50 mm") != nullptr, hasBar);
    }
}

}  // namespace
}  // namespace bolthole
