// The change sheet's PDF, read back: paper, type, lines, scale, figures; and the ways the window has to it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPainterPath>
#include <QRawFont>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <algorithm>
#include <array>
#include <cmath>

#include "app/papers/change_dialogs.h"
#include "app/papers/pdf_file.h"
#include "geometry/combinations/hole_combination.h"
#include "tests/support/paper_tools.h"
#include "tests/support/pdf_page.h"

namespace bolthole {
namespace {

using test::BoxCloser;
using test::demoCar;
using test::output;
using test::PdfPage;
using test::PdfStroke;
using test::PdfText;

struct Bolting {
    int link;
    End end;
    int hole;
};

ChangeRequest requestFor(const char* name, Units units, const std::vector<Bolting>& boltings) {
    const Car before = demoCar(name);
    HoleUse use = holesInUse(before);
    for (const Bolting& bolting : boltings) {
        use.set(bolting.link, bolting.end, bolting.hole);
    }
    const CarResult after =
        boltings.empty() ? CarResult{before, {}} : carWithCombination(before, use, LengthTreatment::refit);
    EXPECT_TRUE(after.car) << after.refusal;
    return {before,           after.car.value_or(before), "Monday", "as on the bench", NumberStyle{units},
            QDate(2026, 3, 9)};
}

// Another lower and upper hole, the uppers' length reset.
ChangeRequest wagon(Units units) {
    return requestFor("long-roof-wagon", units, {{0, End::axle, 2}, {1, End::chassis, 1}});
}

// With the track bar's hole changed.
ChangeRequest coupe(Units units) {
    return requestFor("light-coupe", units, {{0, End::chassis, 2}, {1, End::axle, 0}, {2, End::chassis, 2}});
}

std::vector<PdfPage> pagesOf(const ChangeRequest& request) {
    const QPageLayout page = changePageOf(usualPaper(request.style.units));
    return test::readPdf(pdfOf(ChangeSheet(request, page), page, request.after.title));
}

std::vector<ChangeRequest> allRequests() {
    return {wagon(Units::inch), wagon(Units::metric), coupe(Units::inch), coupe(Units::metric),
            requestFor("long-roof-wagon", Units::inch, {})};
}

// Height of the lowest digit of either weight at size 1, from the outlines.
double digitHeight() {
    double lowest = 1;
    for (const QFont::Weight weight : {QFont::Normal, QFont::Bold}) {
        QFont font(QStringLiteral("Inter"));
        font.setWeight(weight);
        font.setPixelSize(2048);
        const QRawFont raw = QRawFont::fromFont(font);
        for (const quint32 glyph : raw.glyphIndexesForString(QStringLiteral("0123456789"))) {
            lowest = std::min(lowest, raw.pathForGlyph(glyph).boundingRect().height() / 2048);
        }
    }
    return lowest;
}

class ChangeFile : public testing::Test {
  protected:
    static std::string write(const ChangeRequest& request, PaperSize paper, const QString& file) {
        const QPageLayout page = changePageOf(paper);
        return writePdf(ChangeSheet(request, page), page, request.after.title, file.toStdString());
    }
    [[nodiscard]] QString written(const ChangeRequest& request) const {
        const QString file = folder_.filePath(QStringLiteral("change.pdf"));
        EXPECT_EQ(write(request, usualPaper(request.style.units), file), "");
        return file;
    }
    QTemporaryDir folder_;
};

// ANSI/ASME Y14.1: size A is 8.5 x 11 in. ISO 216: A4 is 210 x 297 mm. Both upright.
TEST_F(ChangeFile, HasThePapersSize) {
    for (const Units units : {Units::inch, Units::metric}) {
        const QString info = output("pdfinfo", {written(wagon(units))});
        const QRegularExpression pattern(QStringLiteral("Page size: +([0-9.]+) x ([0-9.]+) pts"));
        const QRegularExpressionMatch size = pattern.match(info);
        ASSERT_TRUE(size.hasMatch()) << qPrintable(info);
        const bool inch = units == Units::inch;
        // Points are whole: 0.18 mm at most.
        EXPECT_NEAR(size.captured(1).toDouble() * 25.4 / 72, inch ? 215.9 : 210, 0.2);
        EXPECT_NEAR(size.captured(2).toDouble() * 25.4 / 72, inch ? 279.4 : 297, 0.2);
    }
}

TEST_F(ChangeFile, EmbedsItsFontsAndKeepsTextAsText) {
    const ChangeRequest request = coupe(Units::inch);
    const QString file = written(request);
    const QStringList lines = output("pdffonts", {file}).split('\n', Qt::SkipEmptyParts);
    ASSERT_GE(lines.size(), 4) << "a heading of two lines, and two fonts";
    for (const QString& line : lines.mid(2)) {
        // Columns: name, type, encoding, emb, sub, uni.
        EXPECT_TRUE(QRegularExpression(QStringLiteral(".* yes +(yes|no) +yes ")).match(line).hasMatch())
            << qPrintable(line);
    }
    const QString text = output("pdftotext", {"-layout", file, "-"});
    const Trace before = computeTrace(request.before);
    const Trace after = computeTrace(request.after);
    const std::array<std::pair<const Station*, const Station*>, 3> places{
        {{&before.ride, &after.ride},
         {&before.stations.back(), &after.stations.back()},
         {&before.stations.front(), &after.stations.front()}}};
    QString row = QStringLiteral("Anti-squat, %");
    for (const auto& place : places) {
        const double was = (*place.first)[Figure::antiSquat];
        const double is = (*place.second)[Figure::antiSquat];
        const double shown = std::round(10 * is) / 10 - std::round(10 * was) / 10;  // of the two beside it
        const QString change = QString::number(std::abs(shown), 'f', 1);
        row += " " + QString::number(was, 'f', 1) + " " + QString::number(is, 'f', 1) + " " +
               (is < was ? QChar(0x2212) : QChar('+')) + change;
    }
    EXPECT_TRUE(text.simplified().contains(row)) << qPrintable(row + "\n" + text);
    for (const char* part :
         {"Light coupe: change sheet", "Monday", "as on the bench", "2026-03-09", "Move these bolts",
          "Set these lengths", "Check again", "What to expect", "Measured after the change", "60 ft, s",
          "Track bar", "IC distance, in", "rated stands", "sheet 1 of"}) {
        EXPECT_TRUE(text.contains(part)) << part;
    }
}

TEST_F(ChangeFile, SetsDigitsHighAndLinesThickEnough) {
    const double digit = digitHeight();
    for (const ChangeRequest& request : allRequests()) {
        for (const PdfPage& page : pagesOf(request)) {
            ASSERT_FALSE(page.strokes.empty());
            for (const PdfText& run : page.texts) {
                EXPECT_GE(run.size * digit, 2.5) << qPrintable(run.text);
            }
            for (const PdfStroke& stroke : page.strokes) {
                EXPECT_GE(stroke.width, 0.249);
            }
        }
    }
}

TEST_F(ChangeFile, StaysInsideThePaper) {
    for (const ChangeRequest& request : allRequests()) {
        for (const PdfPage& page : pagesOf(request)) {
            const QRectF inside = QRectF(QPointF(0, 0), page.size).adjusted(9.7, 9.7, -9.7, -9.7);
            for (const PdfText& run : page.texts) {
                EXPECT_TRUE(inside.contains(run.at)) << qPrintable(run.text);
            }
        }
    }
}

// Asks a renderer: no pixel of any page has a color.
TEST_F(ChangeFile, NeedsNoColor) {
    for (const ChangeRequest& request : {coupe(Units::inch), wagon(Units::metric)}) {
        const QString file = written(request);
        output("pdftoppm", {"-r", "60", "-png", file, folder_.filePath("page")});
        const QStringList pictures = QDir(folder_.path()).entryList({"page*.png"});
        ASSERT_FALSE(pictures.isEmpty());
        for (const QString& name : pictures) {
            const QImage picture(folder_.filePath(name));
            ASSERT_FALSE(picture.isNull());
            int colored = 0;
            int inked = 0;
            for (int y = 0; y < picture.height(); ++y) {
                for (int x = 0; x < picture.width(); ++x) {
                    const QRgb pixel = picture.pixel(x, y);
                    colored += qRed(pixel) != qGreen(pixel) || qGreen(pixel) != qBlue(pixel) ? 1 : 0;
                    inked += qRed(pixel) < 128 ? 1 : 0;
                }
            }
            EXPECT_EQ(colored, 0) << qPrintable(name);
            EXPECT_GT(inked, 1000) << qPrintable(name);
        }
    }
}

TEST_F(ChangeFile, HasATrueScaleBarOnEverySheet) {
    for (const Units units : {Units::inch, Units::metric}) {
        const std::vector<PdfPage> pages = pagesOf(coupe(units));
        ASSERT_GE(pages.size(), 2U) << "runs over";
        for (std::size_t index = 0; index < pages.size(); ++index) {
            const PdfPage& page = pages[index];
            EXPECT_NE(page.find(QStringLiteral("sheet %1 of %2").arg(index + 1).arg(pages.size())), nullptr);
            EXPECT_NE(page.find("rated stands"), nullptr) << "the caution";
            const PdfText* words = page.find(QStringLiteral("scale bar 1:1"));
            ASSERT_NE(words, nullptr);
            EXPECT_TRUE(words->text.endsWith(units == Units::inch ? "2 in" : "50 mm"));
            double length = 0;  // of the level line next under its words
            double nearest = 10;
            for (const PdfStroke& stroke : page.strokes) {
                for (const QLineF& line : stroke.lines) {
                    const double below = line.y1() - words->at.y();
                    if (std::abs(line.dy()) < 0.01 && below > 0 && below < nearest && line.length() > 10) {
                        nearest = below;
                        length = line.length();
                    }
                }
            }
            EXPECT_NEAR(length, units == Units::inch ? 50.8 : 50.0, 0.1);
        }
    }
}

// The links of the after are the only lines 1.1 mm thick that are as long as they are in the side view at
// the scale it names.
TEST_F(ChangeFile, DrawsTheSideViewToItsScale) {
    const ChangeRequest request = wagon(Units::inch);
    const AxlePose pose = computeTrace(request.after).ride.pose;
    for (const PdfPage& page : pagesOf(request)) {
        const PdfText* words = page.find("to scale, 1 : ");
        if (words == nullptr) {
            continue;
        }
        const double scale = words->text.mid(words->text.lastIndexOf(' ')).toDouble();
        for (const Link& link : request.after.links) {
            const Eigen::Vector3d axle =
                pose.carry(link.axle.inUse().at - Eigen::Vector3d(0, 0, request.after.rearTireRadius));
            const Eigen::Vector3d along = link.chassis.inUse().at - axle;
            const double expected = std::hypot(along.x(), along.z()) * 1000 / scale;
            EXPECT_TRUE(std::ranges::any_of(page.strokes,
                                            [&](const PdfStroke& stroke) {
                                                return std::abs(stroke.width - 1.1) < 0.05 &&
                                                       stroke.lines.size() == 1 &&
                                                       std::abs(stroke.lines[0].length() - expected) < 0.1;
                                            }))
                << link.name << ": " << expected;
        }
        return;
    }
    FAIL() << "no side view";
}

TEST_F(ChangeFile, SaysThatNothingDiffers) {
    const QString file = written(requestFor("long-roof-wagon", Units::inch, {}));
    const QString text = output("pdftotext", {"-layout", file, "-"});
    EXPECT_TRUE(text.contains("Nothing differs"));
    EXPECT_TRUE(text.contains("sheet 1 of 1"));
    EXPECT_FALSE(text.contains("Move these bolts"));
}

TEST_F(ChangeFile, WritesWholeOrNotAtAll) {
    const ChangeRequest request = wagon(Units::inch);
    EXPECT_NE(write(request, PaperSize::a4, folder_.filePath("none/change.pdf")), "");
    QFile pdf(written(request));
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    const QByteArray bytes = pdf.readAll();
    EXPECT_TRUE(bytes.startsWith("%PDF-"));
    EXPECT_TRUE(bytes.trimmed().endsWith("%%EOF"));
    EXPECT_EQ(QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden).size(), 1)
        << "left a temporary file";
}

TEST_F(ChangeFile, SavesFromTheWindowAndSaysWhatWentWrong) {
    const ChangeRequest request = wagon(Units::inch);
    const QString good = folder_.filePath("wagon.pdf");
    EXPECT_TRUE(saveChangeSheet(nullptr, request, good));
    EXPECT_TRUE(QFile::exists(good));
    BoxCloser closer;
    EXPECT_FALSE(saveChangeSheet(nullptr, request, folder_.filePath("none/wagon.pdf")));
    EXPECT_TRUE(closer.said().contains("none/wagon.pdf")) << qPrintable(closer.said());
}

TEST_F(ChangeFile, PreviewsEverySheetOnEveryPaper) {
    const ChangeRequest request = coupe(Units::inch);
    const QStringList seen = test::sheetsPreviewed([&] { previewChangeSheet(nullptr, request); });
    QStringList expected;
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        expected
            << QStringLiteral("sheet 1 of %1").arg(ChangeSheet(request, changePageOf(paper)).sheetCount());
    }
    EXPECT_EQ(seen, expected);
}

}  // namespace
}  // namespace bolthole
