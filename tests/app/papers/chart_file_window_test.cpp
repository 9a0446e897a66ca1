// The wall chart's PDF, read back: sizes of type and paper, lines, scale bar, figures, sheets; and the ways
// the window has to it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFontInfo>
#include <QPainterPath>
#include <QRawFont>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "app/papers/chart_dialogs.h"
#include "app/papers/pdf_file.h"
#include "tests/support/paper_tools.h"
#include "tests/support/pdf_page.h"
#include "widgets/papers/wall_chart_combinations.h"

namespace bolthole {
namespace {

using test::BoxCloser;
using test::demoCar;
using test::output;
using test::PdfFill;
using test::PdfPage;
using test::PdfStroke;
using test::PdfText;

constexpr const char* kWagon = "long-roof-wagon";
constexpr const char* kCoupe = "light-coupe";

struct Paper {
    PaperSize paper;
    const char* name;
    double width;  // mm, landscape
    double height;
};
// ISO 216: A4 210 x 297 mm, A3 297 x 420 mm. ANSI/ASME Y14.1: A 8.5 x 11 in, B 11 x 17 in.
constexpr std::array<Paper, 4> kPapers{{{PaperSize::letter, "letter", 279.4, 215.9},
                                        {PaperSize::tabloid, "tabloid", 431.8, 279.4},
                                        {PaperSize::a4, "a4", 297, 210},
                                        {PaperSize::a3, "a3", 420, 297}}};

ChartRequest requestFor(Car car, Units units, LengthTreatment lengths) {
    car.units = units;
    return {std::move(car), lengths, NumberStyle{units}, QDate(2026, 3, 9)};
}

ChartRequest requestFor(const char* name, Units units) {
    const Car car = demoCar(name);
    return requestFor(car, units, defaultTreatment(car));
}

std::vector<PdfPage> pagesOf(const ChartRequest& request, PaperSize paper) {
    const QPageLayout page = pageLayoutOf(paper);
    return test::readPdf(pdfOf(WallChart(request, page), page, request.car.title));
}

// Height of a font's lowest digit at size 1, from its outlines: what a font size is worth on the wall.
double digitHeight(QFont::Weight weight) {
    QFont font(QStringLiteral("Inter"));
    font.setWeight(weight);
    font.setPixelSize(2048);
    EXPECT_EQ(QFontInfo(font).family(), "Inter");
    const QRawFont raw = QRawFont::fromFont(font);
    double lowest = 2048;
    for (const quint32 glyph : raw.glyphIndexesForString(QStringLiteral("0123456789"))) {
        lowest = std::min(lowest, raw.pathForGlyph(glyph).boundingRect().height());
    }
    return lowest / 2048;
}

QString whole(double value) {
    const QString digits = QString::number(std::abs(std::lround(value)));
    return std::lround(value) < 0 ? QChar(0x2212) + digits : digits;
}

class ChartFile : public testing::Test {
  protected:
    static std::string write(const ChartRequest& request, PaperSize paper, const QString& file) {
        const QPageLayout page = pageLayoutOf(paper);
        return writePdf(WallChart(request, page), page, request.car.title, file.toStdString());
    }
    [[nodiscard]] QString written(const ChartRequest& request, PaperSize paper) const {
        const QString file = folder_.filePath(QStringLiteral("chart.pdf"));
        EXPECT_EQ(write(request, paper, file), "");
        return file;
    }
    QTemporaryDir folder_;
};

TEST_F(ChartFile, HasThePapersSize) {
    for (const Paper& paper : kPapers) {
        const QString info = output("pdfinfo", {written(requestFor(kWagon, Units::inch), paper.paper)});
        const QRegularExpression pattern(QStringLiteral("Page size: +([0-9.]+) x ([0-9.]+) pts"));
        const QRegularExpressionMatch size = pattern.match(info);
        ASSERT_TRUE(size.hasMatch()) << qPrintable(info);
        // Points are whole: 0.18 mm at most.
        EXPECT_NEAR(size.captured(1).toDouble() * 25.4 / 72, paper.width, 0.2) << paper.name;
        EXPECT_NEAR(size.captured(2).toDouble() * 25.4 / 72, paper.height, 0.2) << paper.name;
    }
}

TEST_F(ChartFile, EmbedsItsFontsAndKeepsTextAsText) {
    const ChartRequest request = requestFor(kCoupe, Units::inch);
    const QString file = written(request, PaperSize::letter);
    const QStringList lines = output("pdffonts", {file}).split('\n', Qt::SkipEmptyParts);
    ASSERT_GE(lines.size(), 4) << "a heading of two lines, and two fonts";
    for (const QString& line : lines.mid(2)) {
        // Columns: name, type, encoding, emb, sub, uni.
        EXPECT_TRUE(QRegularExpression(QStringLiteral("Inter.* yes +(yes|no) +yes ")).match(line).hasMatch())
            << qPrintable(line);
    }
    const QString text = output("pdftotext", {"-layout", file, "-"});
    const ChartCombinations chart = computeChart(request.car, request.lengths);
    for (const HoleCombination& combination : chart.combinations) {
        EXPECT_TRUE(text.contains(whole(combination[Figure::antiSquat])));
        EXPECT_TRUE(text.contains("droop " + whole(combination.antiSquatDroop)));
        EXPECT_TRUE(text.contains("bump " + whole(combination.antiSquatBump)));
    }
}

// What stands in the cells: the big figures, marked so, and everything else of theirs; of `wanted` only.
std::multiset<QString> figuresIn(const std::vector<PdfPage>& pages, const std::multiset<QString>& wanted) {
    const double big = 11.6 / digitHeight(QFont::Bold);
    const double large = 5.8 / digitHeight(QFont::Normal);
    std::multiset<QString> figures;
    for (const PdfPage& page : pages) {
        for (const PdfText& run : page.texts) {
            const bool isEnd = run.text.startsWith("droop ") || run.text.startsWith("bump ");
            const QString figure = run.size >= big ? "big " + run.text : run.text;
            if ((isEnd || run.size >= large) && wanted.contains(figure)) {
                figures.insert(figure);
            }
        }
    }
    return figures;
}

// Every cell of every sheet against a solver of its own, in the order of the cells.
TEST_F(ChartFile, ShowsTheSolversFigures) {
    for (const char* name : {kWagon, kCoupe}) {
        for (const Units units : {Units::inch, Units::metric}) {
            const ChartRequest request = requestFor(name, units);
            std::multiset<QString> expected;
            const ChartAxes axes = chartAxes(request.car);
            CombinationSolver solver(request.car, request.lengths);
            const double unit = units == Units::inch ? 0.0254 : 0.001;
            for (int row = 0; row < axes.down.count(); ++row) {
                for (int column = 0; column < axes.across.count(); ++column) {
                    HoleUse use = holesInUse(request.car);
                    axes.down.apply(row, use);
                    axes.across.apply(column, use);
                    HoleCombination combination;
                    solver.solve(use, combination);
                    ASSERT_TRUE(combination.assembled);
                    expected.insert("big " + whole(combination[Figure::antiSquat]));
                    expected.insert("droop " + whole(combination.antiSquatDroop));
                    expected.insert("bump " + whole(combination.antiSquatBump));
                    const double ahead = combination[Figure::icX];
                    if (!(std::abs(ahead) <= 25.4)) {
                        expected.insert(QString::fromUtf8("\u221E"));
                        continue;  // An instant center out there has no height.
                    }
                    const QString high =
                        QString::fromUtf8(" \u00D7 ") + whole(combination[Figure::icZ] / unit);
                    if (ahead > 0) {
                        expected.insert(whole(ahead / unit) + high);
                    } else {
                        expected.insert(whole(-ahead / unit));
                        expected.insert(high);
                    }
                }
            }
            EXPECT_EQ(figuresIn(pagesOf(request, PaperSize::letter), expected), expected) << name;
        }
    }
}

// Letter heights: check the kinds of text by what they say. 20 minutes of arc at 2 m and 1 m are 11.6 and
// 5.8 mm; NUREG-0700 Rev. 2 sec. 1.3.1-4 and ISO 9241-3 ask for 16 at least and prefer 20 to 22.
TEST_F(ChartFile, SetsEveryFigureHighEnough) {
    const double bold = digitHeight(QFont::Bold);
    const double regular = digitHeight(QFont::Normal);
    const double lower = std::min(bold, regular);
    EXPECT_NEAR(2000 * std::tan(20.0 / 60 * std::numbers::pi / 180), 11.6, 0.05);
    for (const char* name : {kWagon, kCoupe}) {
        for (const Units units : {Units::inch, Units::metric}) {
            const ChartRequest request = requestFor(name, units);
            const std::size_t combinations = chartCombinationCount(request.car);
            for (const Paper& paper : kPapers) {
                std::size_t big = 0;
                std::size_t ends = 0;
                for (const PdfPage& page : pagesOf(request, paper.paper)) {
                    for (const PdfText& run : page.texts) {
                        EXPECT_GE(run.size * lower, 2.5) << paper.name << ": " << qPrintable(run.text);
                        big += run.size * bold >= 11.6 && run.text != " %" ? 1U : 0U;
                        if (run.text.startsWith("droop ") || run.text.startsWith("bump ")) {
                            EXPECT_GE(run.size * regular, 4.0) << paper.name << ": " << qPrintable(run.text);
                            ++ends;
                        }
                        static const QRegularExpression distance(
                            QString::fromUtf8("^\\d+ \u00D7 \u2212?\\d+$"));
                        if (distance.match(run.text).hasMatch()) {
                            EXPECT_GE(run.size * regular, 5.8) << paper.name << ": " << qPrintable(run.text);
                        }
                    }
                }
                EXPECT_EQ(big, combinations) << paper.name;
                EXPECT_EQ(ends, 2 * combinations) << paper.name;
            }
        }
    }
}

TEST_F(ChartFile, HasNoLineThatAPrinterLoses) {
    for (const char* name : {kWagon, kCoupe}) {
        for (const PdfPage& page : pagesOf(requestFor(name, Units::inch), PaperSize::a4)) {
            ASSERT_FALSE(page.strokes.empty());
            for (const PdfStroke& stroke : page.strokes) {
                EXPECT_GE(stroke.width, 0.2);
            }
        }
    }
}

TEST_F(ChartFile, HasATrueScaleBarOnEverySheet) {
    struct Bar {
        Units units;
        const char* words;
        double length;  // mm
    };
    for (const Bar& bar : {Bar{Units::inch, "2 in", 50.8}, Bar{Units::metric, "50 mm", 50.0}}) {
        for (const Paper& paper : kPapers) {
            for (const PdfPage& page : pagesOf(requestFor(kCoupe, bar.units), paper.paper)) {
                const PdfText* words = page.find(QStringLiteral("scale bar 1:1"));
                ASSERT_NE(words, nullptr);
                EXPECT_TRUE(words->text.endsWith(bar.words));
                // The level line next under its words.
                double length = 0;
                double nearest = 10;
                for (const PdfStroke& stroke : page.strokes) {
                    for (const QLineF& line : stroke.lines) {
                        const double below = line.y1() - words->at.y();
                        if (std::abs(line.dy()) < 0.01 && below > 0 && below < nearest &&
                            line.length() > 10) {
                            nearest = below;
                            length = line.length();
                        }
                    }
                }
                EXPECT_NEAR(length, bar.length, 0.1) << paper.name;
            }
        }
    }
}

TEST_F(ChartFile, StaysInsideThePaper) {
    for (const Paper& paper : kPapers) {
        for (const PdfPage& page : pagesOf(requestFor(kCoupe, Units::metric), paper.paper)) {
            const QRectF inside = QRectF(QPointF(0, 0), page.size).adjusted(9, 9, -9, -9);
            for (const PdfText& run : page.texts) {
                EXPECT_TRUE(inside.contains(run.at)) << qPrintable(run.text);
            }
            for (const PdfStroke& stroke : page.strokes) {
                for (const QLineF& line : stroke.lines) {
                    EXPECT_TRUE(inside.contains(line.p1()) && inside.contains(line.p2()));
                }
            }
        }
    }
}

TEST_F(ChartFile, RepeatsTitleFactsAndHeadingsOnEverySheet) {
    const std::vector<PdfPage> pages = pagesOf(requestFor(kCoupe, Units::inch), PaperSize::letter);
    ASSERT_GT(pages.size(), 4U);
    for (std::size_t index = 0; index < pages.size(); ++index) {
        const QString text = pages[index].allText();
        const QString sheet = QStringLiteral("sheet %1 of %2").arg(index + 1).arg(pages.size());
        for (const char* part :
             {"Light coupe", "2026-03-09", "axle center 12 3/4 in", "rear 12 3/4, front 12 in",
              "2450 lb, 52.8 % front", "652, 641, 588, 569 lb", "101 in", "19 1/2 in",
              "uppers are refit so that the pinion keeps its angle", "Track bar current: chassis 2 / axle 2",
              "rated stands", "wheels chocked", "Torque every bolt", "full travel", "qualified person",
              "local rules", "sanctioning body", "closed course"}) {
            QString flowing = text;
            flowing.replace('\n', ' ');
            EXPECT_TRUE(flowing.contains(QString::fromUtf8(part))) << index << ": " << part;
        }
        EXPECT_NE(pages[index].find(sheet), nullptr) << qPrintable(sheet);
        if (index == 0) {
            continue;
        }
        EXPECT_NE(pages[index].find("UPPER, chassis and axle holes"), nullptr);
        EXPECT_NE(pages[index].find("LOWER,"), nullptr);
        EXPECT_NE(pages[index].find(": rows "), nullptr);
        EXPECT_NE(pages[index].find("chassis "), nullptr);
    }
}

// The frame is thick and the tag white on black: no color is asked for.
TEST_F(ChartFile, MarksThePresentCombinationWithoutColor) {
    std::size_t tags = 0;
    for (const PdfPage& page : pagesOf(requestFor(kCoupe, Units::inch), PaperSize::letter)) {
        const auto tag = std::ranges::find(page.texts, QStringLiteral("NOW"), &PdfText::text);
        if (tag == page.texts.end()) {
            continue;
        }
        ++tags;
        EXPECT_TRUE(
            std::ranges::any_of(page.strokes, [](const PdfStroke& stroke) { return stroke.width >= 1.2; }));
        EXPECT_TRUE(std::ranges::any_of(page.fills, [&](const PdfFill& fill) {
            return fill.gray == 0 && fill.box.adjusted(-1, -1, 1, 1).contains(tag->at);
        }));
    }
    EXPECT_EQ(tags, 1U);
}

TEST_F(ChartFile, WritesWholeOrNotAtAll) {
    const ChartRequest request = requestFor(kWagon, Units::inch);
    EXPECT_NE(write(request, PaperSize::a4, folder_.filePath("none/chart.pdf")), "");
    const QString file = written(request, PaperSize::a4);
    QFile pdf(file);
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    const QByteArray bytes = pdf.readAll();
    EXPECT_TRUE(bytes.startsWith("%PDF-"));
    EXPECT_TRUE(bytes.trimmed().endsWith("%%EOF"));
    EXPECT_EQ(QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden).size(), 1)
        << "left a temporary file";
}

TEST_F(ChartFile, ExportsFromTheWindowAndSaysWhatWentWrong) {
    const ChartRequest request = requestFor(kWagon, Units::inch);
    const QString good = folder_.filePath("wagon.pdf");
    EXPECT_TRUE(exportChart(nullptr, request, PaperSize::a3, good));
    EXPECT_TRUE(QFile::exists(good));
    BoxCloser closer;
    EXPECT_FALSE(exportChart(nullptr, request, PaperSize::a3, folder_.filePath("none/wagon.pdf")));
    EXPECT_TRUE(closer.said().contains("none/wagon.pdf")) << qPrintable(closer.said());
}

TEST_F(ChartFile, RefusesWhatNoChartCanShow) {
    Car car = demoCar(kWagon);
    car.links.pop_back();
    car.links.front().role = Role::lower;
    EXPECT_FALSE(chartRefusal(requestFor(car, Units::inch, LengthTreatment::uppers)).isEmpty());
    EXPECT_TRUE(chartRefusal(requestFor(car, Units::inch, LengthTreatment::keep)).isEmpty());
    Bracket& bracket = car.links.front().axle;
    bracket.holes.resize(64, bracket.holes.front());
    car.links.front().chassis.holes.resize(64, car.links.front().chassis.holes.front());
    EXPECT_TRUE(chartRefusal(requestFor(car, Units::inch, LengthTreatment::keep)).isEmpty())
        << "4096 is allowed";
    car.links.push_back(car.links.front());
    const QString refusal = chartRefusal(requestFor(car, Units::inch, LengthTreatment::keep));
    EXPECT_TRUE(refusal.contains("16777216")) << qPrintable(refusal);
}

TEST_F(ChartFile, PreviewsEverySheetOnEveryPaper) {
    const ChartRequest request = requestFor(kCoupe, Units::inch);
    const QStringList seen = test::sheetsPreviewed([&] { previewChart(nullptr, request); });
    QStringList expected;
    for (const Paper& paper : kPapers) {
        const WallChart chart(request, pageLayoutOf(paper.paper));
        expected << QStringLiteral("sheet 1 of %1").arg(chart.sheetCount());
    }
    EXPECT_EQ(seen, expected);
}

}  // namespace
}  // namespace bolthole
