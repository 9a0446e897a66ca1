// The measuring sheet: that it asks for every number of the car's points once, in boxes of half an inch, each
// beside the number its picture has.
#include "widgets/papers/sheets/measuring_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFontMetricsF>
#include <QImage>
#include <QPdfWriter>
#include <algorithm>
#include <set>

#include "geometry/car/fields.h"
#include "geometry/edits/starting_car.h"
#include "tests/support/pdf_page.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/sheets/measuring_picture.h"
#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {
namespace {

using test::PdfPage;
using test::PdfStroke;
using test::PdfText;

constexpr double kHalfInch = 12.7;  // mm

// A car of every layout, one whose links differ left from right, and one with everything.
std::vector<Car> cars() {
    std::vector<Car> all{plainCar()};
    for (const LinkLayout layout : kLinkLayouts) {
        all.push_back(startingCar({.layout = layout, .title = "Started"}));
    }
    Car split = plainCar();
    split.links[0].side = Side::left;
    split.links.push_back(split.links[0]);
    split.links.back().side = Side::right;
    for (Hole& hole : split.links.back().chassis.holes) {
        hole.at.y() = -hole.at.y();
    }
    all.push_back(split);
    return all;
}

std::vector<FieldId> askedOf(const std::vector<PlanArea>& plan) {
    std::vector<FieldId> ids;
    for (const PlanArea& area : plan) {
        for (const PlanTable& table : area.tables) {
            for (const PlanRow& row : table.rows) {
                for (const std::optional<FieldId>& id : row.fields) {
                    if (id) {
                        ids.push_back(*id);
                    }
                }
            }
        }
        std::ranges::transform(area.numbers, std::back_inserter(ids), &PlanNumber::id);
        for (const PlanLimits& limits : area.limits) {
            std::ranges::transform(limits.numbers, std::back_inserter(ids), &PlanNumber::id);
        }
    }
    return ids;
}

TEST(MeasuringPlan, AsksForEveryHoleOnce) {
    for (const Car& car : cars()) {
        const std::vector<FieldId> asked = askedOf(measuringPlan(car));
        std::set<std::string> paths;
        for (const FieldId& id : asked) {
            EXPECT_TRUE(paths.insert(jsonPath(id)).second) << jsonPath(id) << " is asked for twice";
        }
        for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
            const Link& one = car.links[static_cast<std::size_t>(link)];
            for (const End end : {End::chassis, End::axle}) {
                const bool isOwnEye = end == End::axle && one.kind != LinkKind::rod;
                for (int hole = 0; !isOwnEye && hole < static_cast<int>(one.bracket(end).holes.size());
                     ++hole) {
                    for (const int axis : {0, 1, 2}) {
                        EXPECT_TRUE(paths.contains(jsonPath(holeField(link, end, hole, axis))));
                    }
                }
            }
        }
        for (const FieldId& id : asked) {
            EXPECT_NO_FATAL_FAILURE(static_cast<void>(numberAt(car, id))) << jsonPath(id);
        }
    }
}

TEST(MeasuringPlan, LeavesOutWhatIsNotDrilled) {
    Car car = plainCar();
    Hole planned = car.links[0].axle.holes[0];
    planned.planned = true;
    car.links[0].axle.holes.push_back(planned);
    EXPECT_EQ(askedOf(measuringPlan(car)).size(), askedOf(measuringPlan(plainCar())).size());
}

// A new car has one hole a bracket; the holes the real one has beside it need boxes, too.
TEST(MeasuringPlan, HasSpareRowsForEveryBracketOfOneHole) {
    const Car fresh = startingCar({.layout = LinkLayout::threeLink, .title = "Started"});
    const PlanArea links = measuringPlan(fresh).front();
    ASSERT_TRUE(links.spareHoles);
    ASSERT_EQ(links.spareHoles->rows.size(), 2 * links.tables.front().rows.size());
    for (std::size_t at = 0; at < links.spareHoles->rows.size(); ++at) {
        const PlanRow& row = links.spareHoles->rows[at];
        EXPECT_EQ(row.number, links.tables.front().rows[at / 2].number);
        EXPECT_TRUE(row.name.endsWith(at % 2 == 0 ? "hole 2" : "hole 3")) << row.name.toStdString();
    }
    Car drilled = fresh;
    for (Link& link : drilled.links) {
        link.chassis.holes.push_back(link.chassis.holes[0]);
        link.axle.holes.push_back(link.axle.holes[0]);
    }
    EXPECT_FALSE(measuringPlan(drilled).front().spareHoles);
}

TEST(MeasuringPlan, SaysHowToAddSpringsWhereThereAreNone) {
    const auto hintOf = [](const Car& car) {
        const std::vector<PlanArea> plan = measuringPlan(car);
        return std::ranges::find(plan, AreaKind::springs, &PlanArea::kind)->hint;
    };
    Car bare = plainCar();
    bare.springs.clear();
    EXPECT_TRUE(hintOf(bare).contains("add them on the Springs page"));
    bare.springs.emplace_back();
    bare.springs.back().chassis.holes.emplace_back();
    bare.springs.back().axle.holes.emplace_back();
    EXPECT_FALSE(hintOf(bare).contains("Springs page"));
}

TEST(MeasuringPlan, SplitsTheSidesOnlyWhereTheyDiffer) {
    const auto kinds = [](const Car& car) {
        std::vector<AreaKind> all;
        std::ranges::transform(measuringPlan(car), std::back_inserter(all), &PlanArea::kind);
        return all;
    };
    EXPECT_THAT(kinds(plainCar()),
                testing::ElementsAre(AreaKind::leftLinks, AreaKind::wheels, AreaKind::driveline,
                                     AreaKind::springs, AreaKind::weights));
    EXPECT_THAT(kinds(cars().back()), testing::Contains(AreaKind::rightLinks));
    Car bare = plainCar();
    bare.driveline.reset();
    EXPECT_THAT(kinds(bare), testing::Not(testing::Contains(AreaKind::driveline)));
}

// Numbers stand in the picture, beside each other, none over another point.
TEST(MeasuringPicture, NumbersCoverNothing) {
    const PrintFonts fonts;
    for (const Car& car : cars()) {
        for (const PlanArea& area : measuringPlan(car)) {
            QImage canvas(1960, 700, QImage::Format_Grayscale8);
            canvas.fill(Qt::white);
            QPainter painter(&canvas);
            painter.scale(10, 10);
            const QRectF box(0, 0, 196, 70);
            const MeasuringMarks marks = drawMeasuringPicture(painter, box, fonts, car, area);
            const std::string where = area.title.toStdString() + " of " + car.title;
            for (std::size_t one = 0; one < marks.bubbles.size(); ++one) {
                EXPECT_TRUE(box.contains(marks.bubbles[one])) << where << ", mark " << one;
                for (std::size_t other = 0; other < one; ++other) {
                    const QRectF both = marks.bubbles[one] & marks.bubbles[other];
                    EXPECT_LT(both.width() * both.height(), 0.5)
                        << where << ", marks " << one << ", " << other;
                }
            }
        }
    }
}

// The same points carry the same numbers in table and picture.
TEST(MeasuringPicture, NumbersEveryRow) {
    for (const Car& car : cars()) {
        for (const PlanArea& area : measuringPlan(car)) {
            if (area.kind == AreaKind::weights || area.tables.empty()) {
                continue;
            }
            std::vector<int> points;
            std::vector<int> rows;
            std::ranges::transform(area.points, std::back_inserter(points), &PlanPoint::number);
            std::ranges::transform(area.tables.front().rows, std::back_inserter(rows), &PlanRow::number);
            EXPECT_EQ(points, rows) << area.title.toStdString();
            for (std::size_t at = 0; at < rows.size(); ++at) {
                const FieldId id = *area.tables.front().rows[at].fields[0];
                EXPECT_DOUBLE_EQ(*numberAt(car, id), area.points[at].at.x()) << jsonPath(id);
            }
        }
    }
}

std::vector<PdfPage> pagesOf(const Car& car, PaperSize paper) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        const QPageLayout page = pageOf(paper, QPageLayout::Portrait);
        QPdfWriter writer(&buffer);
        writer.setPageLayout(page);
        writer.setResolution(1200);
        EXPECT_TRUE(printSheets(MeasuringSheet(car, NumberStyle{car.units}, page), writer));
    }
    return test::readPdf(bytes);
}

// Outer size of what was stroked as a box to write in: the pen is 0.4 mm wide and lies half outside its line.
std::vector<QSizeF> boxesOf(const PdfPage& page) {
    std::vector<QSizeF> found;
    for (const PdfStroke& stroke : page.strokes) {
        QRectF box;
        for (const QLineF& line : stroke.lines) {
            box |= QRectF(line.p1(), line.p2()).normalized().adjusted(0, 0, 1e-9, 1e-9);
        }
        const bool isPen = std::abs(stroke.width - 0.4) < 0.02;
        if (isPen && stroke.lines.size() >= 4 && stroke.curves.empty() && box.height() > 10 &&
            box.width() > 10) {
            found.emplace_back(box.width() + 0.4, box.height() + 0.4);
        }
    }
    return found;
}

TEST(MeasuringSheet, HasTwoBoxesOfHalfAnInchForEveryNumber) {
    for (const Car& car : cars()) {
        for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
            std::size_t expected = 0;
            for (const PlanArea& area : measuringPlan(car)) {
                PlanArea without = area;
                without.limits.clear();
                expected += 2 * askedOf({without}).size();
                expected += area.spareHoles ? 6 * area.spareHoles->rows.size() : 0;
                for (const PlanLimits& limits : area.limits) {
                    expected += limits.numbers.size();  // known, not measured: once
                }
            }
            std::size_t found = 0;
            for (const PdfPage& page : pagesOf(car, paper)) {
                for (const QSizeF& box : boxesOf(page)) {
                    ++found;
                    EXPECT_GE(box.height(), kHalfInch - 0.05);
                    EXPECT_GE(box.width(), kHalfInch + 5) << "four digits by a thick pen";
                }
            }
            EXPECT_EQ(found, expected) << car.title;
        }
    }
}

// Sizes from the standards: ANSI/ASME Y14.1, size A, 8.5 x 11 in; ISO 216, A4, 210 x 297 mm. Inside them 10
// mm are left free on every side.
// Rows for holes the car does not have don't push its own numbers onto a second page.
TEST(MeasuringSheet, AnAreaHasOnePage) {
    for (const Car& car : cars()) {
        for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
            const std::vector<PdfPage> pages = pagesOf(car, paper);
            for (const PlanArea& area : measuringPlan(car)) {
                int own = 0;
                for (const PdfPage& page : pages) {
                    const QString text = page.allText().replace(u'\n', u' ');
                    const bool isOfArea = text.contains(area.title, Qt::CaseInsensitive);
                    own += isOfArea && !text.contains("more holes:", Qt::CaseInsensitive) ? 1 : 0;
                }
                EXPECT_EQ(own, 1) << car.title << ": " << area.title.toStdString();
            }
        }
    }
}

TEST(MeasuringSheet, StaysInsideItsPaper) {
    const QFont inter(QStringLiteral("Inter"));
    for (const Car& car : cars()) {
        for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
            const QSizeF size = paper == PaperSize::letter ? QSizeF(215.9, 279.4) : QSizeF(210, 297);
            for (const PdfPage& page : pagesOf(car, paper)) {
                EXPECT_NEAR(page.size.width(), size.width(), 0.4);
                EXPECT_NEAR(page.size.height(), size.height(), 0.4);
                for (const PdfText& text : page.texts) {
                    QFont font = inter;
                    font.setPixelSize(1000);
                    const double width = QFontMetricsF(font).horizontalAdvance(text.text) * text.size / 1000;
                    EXPECT_GT(text.at.x(), 9.5) << qPrintable(text.text);
                    // Bold type is up to a tenth wider than the plain one it is measured by.
                    EXPECT_LT(text.at.x() + width, size.width() - 9) << qPrintable(text.text);
                    EXPECT_GT(text.at.y(), 9.5);
                    EXPECT_LT(text.at.y(), size.height() - 9.5) << qPrintable(text.text);
                }
            }
        }
    }
}

TEST(MeasuringSheet, SaysWhatMattersOnEverySheet) {
    const std::vector<PdfPage> pages = pagesOf(plainCar(), PaperSize::letter);
    ASSERT_GE(pages.size(), 5U);
    for (std::size_t at = 0; at < pages.size(); ++at) {
        const QString text = pages[at].allText();
        EXPECT_TRUE(text.contains("Never under a car on a jack")) << at;
        EXPECT_TRUE(text.contains(QStringLiteral("sheet %1 of %2").arg(at + 1).arg(pages.size())));
        EXPECT_TRUE(text.contains("Plain: "));
    }
    const auto driveline = std::ranges::find_if(
        pages, [](const PdfPage& page) { return page.allText().contains("measure the driveline"); });
    ASSERT_NE(driveline, pages.end());
    EXPECT_TRUE(driveline->allText().contains("ignition off"));
    EXPECT_TRUE(pages[0].allText().contains("to 1/16 in"));
    Car metric = plainCar();
    metric.units = Units::metric;
    EXPECT_TRUE(pagesOf(metric, PaperSize::a4)[0].allText().contains("to 1 mm"));
}

// Ink alone: nothing rests on a shade a tired printer loses, but for the hairlines between the notes.
TEST(MeasuringSheet, IsBlackAndWhite) {
    for (const PdfPage& page : pagesOf(plainCar(), PaperSize::letter)) {
        for (const test::PdfFill& fill : page.fills) {
            EXPECT_TRUE(fill.gray == 0 || fill.gray == 255) << fill.gray;
        }
        for (const PdfStroke& stroke : page.strokes) {
            EXPECT_GE(stroke.width, kThinnestLine - 0.01);
        }
    }
}

}  // namespace
}  // namespace bolthole
