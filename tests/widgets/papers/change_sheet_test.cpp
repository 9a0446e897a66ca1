// The change sheet's parts: what it says against the solver, that nothing covers anything. The file itself is
// read back in tests/app/papers/change_file_window_test.cpp.
#include "widgets/papers/change_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <cmath>
#include <numbers>

#include "geometry/car/starting_numbers.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/pdf_page.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/change_sheet_checks.h"
#include "widgets/papers/change_sheet_side.h"
#include "widgets/papers/change_sheet_words.h"
#include "widgets/words/change_words.h"

namespace bolthole {
namespace {

using test::PdfPage;
using test::PdfText;
using testing::ElementsAre;

constexpr NumberStyle kInches{Units::inch, InchStyle::sixteenths};
const QString kMinus(QChar(0x2212));

Car otherPlainCar() {
    Car car = plainCar();
    car.links[0].axle.use = 1;
    car.links[1].length = builtLength(car.links[1]) + 0.1875 * kInch;
    return car;
}

SheetWords wordsFor(const Car& before, const Car& after, NumberStyle style = kInches) {
    return sheetWordsOf(compareCars(before, after), style);
}

// Adds holes above the first one, an inch apart, until the bracket has `count`.
void addHoles(Bracket& bracket, int count) {
    const Eigen::Vector3d first = bracket.holes.front().at;
    for (int hole = static_cast<int>(bracket.holes.size()); hole < count; ++hole) {
        bracket.holes.push_back(
            {-1, "hole " + std::to_string(hole + 1), first + Eigen::Vector3d(0, 0, hole * kInch)});
    }
}

// Before and after of a drawn car: every chassis bracket of a rod goes from its first hole to its second.
std::pair<Car, Car> drawnPair(Layout layout) {
    CarGenerator generator(23);
    Car before = generator.draw(layout);
    for (Link& link : before.links) {
        if (link.kind == LinkKind::rod) {
            addHoles(link.chassis, 3);
        }
    }
    HoleUse use = holesInUse(before);
    for (std::size_t link = 0; link < before.links.size(); ++link) {
        use.set(static_cast<int>(link), End::chassis, before.links[link].chassis.holes.size() > 1 ? 1 : 0);
    }
    const CarResult after = carWithCombination(before, use, LengthTreatment::refit);
    EXPECT_TRUE(after.car) << after.refusal;
    return {before, after.car.value_or(before)};
}

std::vector<PdfPage> pagesOf(const Car& before, const Car& after, PaperSize paper,
                             NumberStyle style = kInches) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(changePageOf(paper));
        writer.setResolution(1200);
        const ChangeSheet sheet({before, after, "Monday", "as on the bench", style, QDate(2026, 3, 9)},
                                changePageOf(paper));
        EXPECT_TRUE(printSheets(sheet, writer));
    }
    return test::readPdf(bytes);
}

// The figure as figureText's finer sister writes it, by other means: decimals of the shown unit.
QString decimals(double value, Quantity quantity, Units units) {
    if (std::isnan(value)) {
        return QChar(0x2014);
    }
    const bool inch = units == Units::inch;
    const double unit = quantity == Quantity::length  ? (inch ? kInch : 1e-3)
                        : quantity == Quantity::angle ? std::numbers::pi / 180
                                                      : 1.0;
    const int places = quantity == Quantity::percent || (quantity == Quantity::length && !inch) ? 1 : 2;
    QString text = QString::number(std::abs(value / unit), 'f', places);
    const bool isZero = QString(text).remove('0').remove('.').isEmpty();
    return (value < 0 && !isZero ? kMinus : QString()) + text;
}

// Every line of the table against a solver of its own; the instant center's distance stays below 25 m here.
TEST(ChangeSheet, ShowsTheSolversFigures) {
    const Car before = plainCar();
    const Car after = otherPlainCar();
    const Trace from = computeTrace(before);
    const Trace to = computeTrace(after);
    for (const Units units : {Units::inch, Units::metric}) {
        const SheetWords words = wordsFor(before, after, {units});
        ASSERT_GE(words.figures.size(), 8U);
        for (const FigureLine& line : words.figures) {
            const std::array names{
                std::pair("Anti-squat", Figure::antiSquat),
                std::pair("Instant center, ahead", Figure::icX),
                std::pair("Instant center, above ground", Figure::icZ),
                std::pair("Swing arm angle", Figure::swingArmAngle),
                std::pair("Axle fore-aft shift", Figure::axleX),
                std::pair("Pinion angle", Figure::pinion),
                std::pair("Driveshaft angle", Figure::driveshaft),
                std::pair("Pinion to driveshaft", Figure::pinionToDriveshaft),
                std::pair("Front joint angle", Figure::frontJoint),
                std::pair("Rear joint angle", Figure::rearJoint),
                std::pair("Slip-yoke travel", Figure::plunge),
                std::pair("Ground angle", Figure::ground),
            };
            const auto* const named =
                std::ranges::find_if(names, [&](const auto& one) { return line.name.startsWith(one.first); });
            ASSERT_NE(named, names.end()) << qPrintable(line.name);
            const Figure figure = named->second;
            const Quantity quantity = figureTable()[static_cast<std::size_t>(figure)].quantity;
            const std::array<std::pair<const Station*, const Station*>, 3> places{
                {{&from.ride, &to.ride},
                 {&from.stations.back(), &to.stations.back()},
                 {&from.stations.front(), &to.stations.front()}}};
            for (std::size_t place = 0; place < 3; ++place) {
                const double was = (*places[place].first)[figure];
                const double is = (*places[place].second)[figure];
                ASSERT_LT(std::abs((*places[place].first)[Figure::icX]), 25.0);
                EXPECT_EQ(line.cells[place][0], decimals(was, quantity, units)) << qPrintable(line.name);
                EXPECT_EQ(line.cells[place][1], decimals(is, quantity, units)) << qPrintable(line.name);
                QString change = line.cells[place][2];
                // What a reader gets from the two beside it, each of them rounded.
                const auto shown = [&](double value) {
                    return decimals(value, quantity, units).replace(kMinus, "-").toDouble();
                };
                const double finest =
                    quantity == Quantity::angle || decimals(0, quantity, units) == "0.00" ? 0.005 : 0.05;
                EXPECT_NEAR(change.remove('+').replace(kMinus, "-").toDouble(), shown(is) - shown(was), 1e-9)
                    << qPrintable(line.name);
                EXPECT_NEAR(shown(is) - shown(was), shown(is - was), 2.1 * finest) << qPrintable(line.name);
                const double telling = quantity == Quantity::length  ? kInch / 16
                                       : quantity == Quantity::angle ? std::numbers::pi / 1800
                                                                     : 1.0;
                EXPECT_EQ(line.tells[place], std::abs(is - was) >= telling) << qPrintable(line.name);
            }
        }
    }
}

TEST(ChangeSheet, NamesEveryFigureOnce) {
    const SheetWords words = wordsFor(plainCar(), otherPlainCar());
    const auto quiet = static_cast<std::size_t>(words.quiet.isEmpty() ? 0 : words.quiet.count("; ") + 1);
    EXPECT_EQ(words.figures.size() + quiet, kFigureCount - 2) << "all but the two travels";
}

// By hand: the lower axle holes of the plain car stand at 7 1/4 and 9 3/4 in; 3/4-16 UNF (ASME B1.1: pitch
// 1/16 in) with left- and right-hand ends gives 1/8 in a turn, so 3/16 in are 1 1/2 turns.
TEST(ChangeSheet, SaysWhatToTurn) {
    const SheetWords words = wordsFor(plainCar(), otherPlainCar());
    EXPECT_TRUE(words.differs);
    ASSERT_EQ(words.bolts.rows.size(), 1U);
    EXPECT_THAT(words.bolts.rows[0].cells, ElementsAre("Lower", "axle", "bottom", "top", "2 1/2 in up", "2"));
    EXPECT_EQ(words.bolts.rows[0].ticks, Ticks::both);
    // The lower, from (20, 18, 10.5) to (0.5, 21, 7.25) and (0.5, 21, 9.75): 19.996 and 19.744 in.
    ASSERT_EQ(words.lengths.rows.size(), 2U);
    EXPECT_THAT(words.lengths.rows[0].cells,
                ElementsAre("Lower", "≈ 20 in by its holes", "≈ 19 3/4 in", "new link, shorter", "2"));
    // The upper, from (12, 18, 17) to (1, 6, 19): 16.401 in, and 3/16 more: 16.589.
    EXPECT_THAT(words.lengths.rows[1].cells, ElementsAre("Upper", "≈ 16 13/32 in by its holes",
                                                         "≈ 16 19/32 in", "1 1/2 turns longer", "2"));
    EXPECT_TRUE(words.numbers.rows.empty());
    EXPECT_TRUE(words.holes.rows.empty());
    EXPECT_TRUE(words.unshared.rows.empty());
}

TEST(ChangeSheet, TurnsInQuarters) {
    EXPECT_EQ(quarterTurns(1.0, true), "1 turn longer");
    EXPECT_EQ(quarterTurns(-2.3, false), "2 1/4 turns shorter");
    EXPECT_EQ(quarterTurns(0.5, true), "1/2 turn longer");
    EXPECT_EQ(quarterTurns(0.1, true), "less than 1/4 turn longer");
    EXPECT_EQ(quarterTurns(-12, false), "12 turns shorter");
}

TEST(ChangeSheet, TellsSingleEndsAndNewRods) {
    Car before = plainCar();
    Car after = otherPlainCar();
    for (Car* car : {&before, &after}) {
        car->links[1].adjuster->threadedEnds = 1;
    }
    EXPECT_EQ(wordsFor(before, after).lengths.rows.at(1).cells[3], "3 turns longer, one end taken off");
    for (Car* car : {&before, &after}) {
        car->links[1].adjuster.reset();
    }
    EXPECT_EQ(wordsFor(before, after).lengths.rows.at(1).cells[3], "new link, longer");
    EXPECT_EQ(wordsFor(after, before).lengths.rows.at(1).cells[3], "new link, shorter");
}

TEST(ChangeSheet, LeavesALinkThatFitsAsCloseAsATapeTells) {
    const Car before = plainCar();
    Car after = plainCar();
    after.links[1].adjuster.reset();
    after.links[1].length = builtLength(before.links[1]) + 0.006 * kMetresPerInch;
    const auto& rows = wordsFor(before, after).lengths.rows;
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].cells[3], "leave it: closer than the tape tells");
}

// What is taken from each other as printed has no more decimals than it.
TEST(ChangeSheet, AChangedNumberAddsUpAsPrinted) {
    Car before = plainCar();
    Car after = plainCar();
    before.launch.pitchInertia = 1560;
    after.launch.pitchInertia = 3300;
    before.cgHeight = 21.25 * kMetresPerInch;
    after.cgHeight = 22 * kMetresPerInch;
    const auto& rows = wordsFor(before, after).numbers.rows;
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows[0].cells[3], "+0.75 in");
    const auto plain = [](const QString& cell) { return cell.section(QLatin1Char(' '), 0, 0); };
    EXPECT_EQ(plain(rows[1].cells[3]), textChange(plain(rows[1].cells[1]), plain(rows[1].cells[2])));
    EXPECT_EQ(plain(rows[1].cells[3]).indexOf(QLatin1Char('.')),
              plain(rows[1].cells[2]).indexOf(QLatin1Char('.')));
}

TEST(ChangeSheet, TheHeadingSpeaksOfBothCars) {
    Car before = plainCar();
    before.links[0].length = builtLength(before.links[0]);
    setOrigin(before, {.field = Field::linkLength, .link = 0}, Origin::workedOut);
    Car after = otherPlainCar();
    setOrigin(after, {.field = Field::cgHeight}, Origin::starting);
    QString words;
    for (const PdfPage& page : pagesOf(before, after, PaperSize::letter)) {
        words += page.allText().replace(u'\n', u' ');
    }
    EXPECT_TRUE(words.contains(QStringLiteral("Before: Worked out, not measured")));
    EXPECT_TRUE(words.contains(QStringLiteral("After: Starting numbers, not measured: CG height")));
}

// A small change must not read as none.
TEST(ChangeSheet, WritesLengthsApart) {
    Car after = plainCar();
    for (const NumberStyle style : {kInches, NumberStyle{Units::inch, InchStyle::decimal},
                                    NumberStyle{Units::metric, InchStyle::sixteenths}}) {
        for (const double change : {0.3e-3, 0.6e-3, 1e-3, 4e-3}) {
            after.links[1].length = builtLength(plainCar().links[1]) + change;
            const SheetRow row = wordsFor(plainCar(), after, style).lengths.rows.at(0);
            const QString from = row.cells[1].section(QStringLiteral(" by its"), 0, 0);
            EXPECT_NE(from, row.cells[2]) << change;
            EXPECT_TRUE(from.endsWith(style.units == Units::inch ? " in" : " mm"));
        }
    }
}

TEST(ChangeSheet, TellsNumbersHolesAndLinksThatDiffer) {
    const Car before = plainCar();
    Car after = plainCar();
    after.rearTireRadius += 0.5 * kInch;
    after.cornerWeights.leftRear += 10;
    after.links[1].axle.holes[0].at.z() -= 0.25 * kInch;
    after.links[2].name = "another";
    const SheetWords words = wordsFor(before, after);
    ASSERT_EQ(words.numbers.rows.size(), 2U);
    EXPECT_EQ(words.numbers.rows[0].cells[1], "13 1/2 in");
    EXPECT_EQ(words.numbers.rows[0].cells[2], "14 in");
    EXPECT_EQ(words.numbers.rows[0].cells[3], "+0.50 in");
    EXPECT_TRUE(words.numbers.rows[1].cells[0].contains("left rear"));
    ASSERT_EQ(words.holes.rows.size(), 1U);
    EXPECT_THAT(words.holes.rows[0].cells, ElementsAre("Upper", "axle", "ear", "1/4 in down"));
    ASSERT_EQ(words.unshared.rows.size(), 2U);
    EXPECT_THAT(words.unshared.rows[0].cells, ElementsAre("Guide", "before only: take it off"));
    EXPECT_THAT(words.unshared.rows[1].cells, ElementsAre("Another", "after only: fit it"));
}

TEST(ChangeSheet, ExpectsAtTheCarWhatTheSolverSays) {
    const Car before = plainCar();
    const Car after = otherPlainCar();
    const Station ride = computeTrace(after).ride;
    const Station was = computeTrace(before).ride;
    QString all;
    for (const SheetCheck& check : wordsFor(before, after).checks) {
        all += check.what + ' ' + check.expected + '\n';
    }
    const auto degrees = [](double angle) {
        QString text = QString::number(std::abs(angle) * 180 / std::numbers::pi, 'f', 1);
        return (angle < 0 && text != "0.0" ? kMinus : QString()) + text + QChar(0xB0);
    };
    EXPECT_TRUE(all.contains(QStringLiteral("At ride %1 to the ground (before %2)")
                                 .arg(degrees(ride[Figure::pinion]), degrees(was[Figure::pinion]))))
        << qPrintable(all);
    EXPECT_TRUE(all.contains(degrees(ride[Figure::pinionToDriveshaft]) + " to the driveshaft"));
    for (const char* part : {"Driveline clearance", "Slip yoke", "Brake hoses", "Shocks", "Wheel alignment",
                             "Axle square", "Links and rod ends", "manufacturer's spec", "4.0 in bump"}) {
        EXPECT_TRUE(all.contains(part)) << part;
    }
    const double shift = (ride[Figure::axleX] - was[Figure::axleX]) / kInch;
    ASSERT_GT(std::abs(shift), 0.05);
    EXPECT_TRUE(
        all.contains(QStringLiteral("axle %1 in %2 of where it was")
                         .arg(QString::number(std::abs(shift), 'f', 1), shift > 0 ? "forward" : "back")))
        << qPrintable(all);
}

// The shaft's length at ride in both cars, from the joints' places.
TEST(ChangeSheet, TellsWhereTheSlipYokeStands) {
    Car after = plainCar();
    after.driveline->outputJoint.x() += 0.5 * kInch;
    const auto length = [](const Car& car) {
        const AxlePose pose = computeTrace(car).ride.pose;
        return (car.driveline->outputJoint -
                pose.carry(car.driveline->pinionJoint - Eigen::Vector3d(0, 0, car.rearTireRadius)))
            .norm();
    };
    const double farther = (length(after) - length(plainCar())) / kInch;
    EXPECT_NEAR(farther, 0.5, 0.01);
    const std::vector<SheetCheck> checks = wordsFor(plainCar(), after).checks;
    const auto yoke = std::ranges::find(checks, QStringLiteral("Slip yoke"), &SheetCheck::what);
    ASSERT_NE(yoke, checks.end());
    EXPECT_TRUE(yoke->expected.startsWith("At ride it stands 0.5 in farther out than before."))
        << qPrintable(yoke->expected);
}

TEST(ChangeSheet, SaysThatNothingDiffers) {
    for (const Units units : {Units::inch, Units::metric}) {
        const SheetWords words = wordsFor(plainCar(), plainCar(), {units});
        EXPECT_FALSE(words.differs);
        EXPECT_TRUE(words.checks.empty() && words.figures.empty() && words.bolts.rows.empty());
        const std::vector<PdfPage> pages = pagesOf(plainCar(), plainCar(), usualPaper(units), {units});
        ASSERT_EQ(pages.size(), 1U);
        EXPECT_NE(pages[0].find("Nothing differs"), nullptr);
        EXPECT_EQ(pages[0].find("Move these bolts"), nullptr);
    }
}

TEST(ChangeSheet, SaysThatACarCannotBeAssembled) {
    Car after = otherPlainCar();
    after.links[1].length = 3.0;
    const SheetWords words = wordsFor(plainCar(), after);
    ASSERT_EQ(words.problems.size(), 1);
    EXPECT_TRUE(words.problems[0].startsWith("The car after can't be assembled at ride: "));
    std::vector<PdfPage> pages = pagesOf(plainCar(), after, PaperSize::letter);
    ASSERT_FALSE(pages.empty());
    EXPECT_NE(pages[0].find("Warning"), nullptr);
    pages = pagesOf(after, plainCar(), PaperSize::a4);
    ASSERT_FALSE(pages.empty());
    EXPECT_NE(pages[0].find("The car before can't be assembled"), nullptr);
}

TEST(ChangeSheet, WarnsOfTheAftersProblems) {
    Car after = otherPlainCar();
    after.links[1].adjuster->longest = *after.links[1].length - 1e-3;
    const SheetWords words = wordsFor(plainCar(), after);
    ASSERT_EQ(words.problems.size(), 1);
    EXPECT_TRUE(words.problems[0].contains("upper")) << qPrintable(words.problems[0]);
    EXPECT_TRUE(wordsFor(plainCar(), otherPlainCar()).problems.isEmpty());
}

QRectF boxOf(const PdfText& run) {
    QFont font(QStringLiteral("Inter"));
    font.setPixelSize(1000);
    // Regular, the narrower weight: bold runs are a little wider.
    const double width = QFontMetricsF(font).horizontalAdvance(run.text) * run.size / 1000;
    return QRectF(run.at.x(), run.at.y() - 0.7 * run.size, width, 0.7 * run.size)
        .adjusted(0.1, 0.1, -0.1, -0.1);
}

void expectTidy(const std::vector<PdfPage>& pages, const QString& which) {
    for (const PdfPage& page : pages) {
        const QRectF inside = QRectF(QPointF(0, 0), page.size).adjusted(9.9, 9.9, -9.9, -9.9);
        for (std::size_t one = 0; one < page.texts.size(); ++one) {
            const QRectF box = boxOf(page.texts[one]);
            EXPECT_TRUE(inside.contains(box)) << qPrintable(which + ": " + page.texts[one].text);
            for (std::size_t other = 0; other < one; ++other) {
                EXPECT_FALSE(box.intersects(boxOf(page.texts[other])))
                    << qPrintable(which + ": " + page.texts[one].text + " on " + page.texts[other].text);
            }
        }
    }
}

TEST(ChangeSheet, KeepsTextApartAndOnThePage) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::parallelTrackBar, Layout::ladderGuide}) {
        const auto pair = drawnPair(layout);
        for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
            const Units units = paper == PaperSize::letter ? Units::inch : Units::metric;
            expectTidy(pagesOf(pair.first, pair.second, paper, {units}),
                       QString::number(static_cast<int>(layout)));
        }
    }
    expectTidy(pagesOf(plainCar(), plainCar(), PaperSize::letter), "same");
}

TEST(ChangeSheet, KeepsLongNamesAndManyRowsTidy) {
    Car before = plainCar();
    before.title = std::string(200, 'W');
    for (int i = 0; i < 12; ++i) {
        Link link = before.links[0];
        link.name = "a link whose name somebody could not stop typing, number " + std::to_string(i);
        link.axle.holes[0].name = std::string(60, 'W');
        link.axle.holes[1].name = "the one that was drilled on a Sunday " + std::string(60, 'm');
        link.side = i % 2 == 0 ? Side::left : Side::right;
        link.adjuster = Adjuster{1e-3, 2};
        before.links.push_back(link);
    }
    Car after = before;
    for (Link& link : after.links) {
        if (link.axle.holes.size() > 1) {
            link.axle.use = 1;
            link.length = holeDistance(link) + 1e-3;
        }
    }
    const std::vector<PdfPage> pages = pagesOf(before, after, PaperSize::letter);
    EXPECT_GT(pages.size(), 3U);
    expectTidy(pages, "long");
    for (const PdfPage& page : pages) {
        for (const PdfText& run : page.texts) {
            EXPECT_GE(run.size, 3.4) << "shrunk: " << qPrintable(run.text);
        }
    }
}

TEST(ChangeSheet, LabelsTheSideViewWithoutCollisions) {
    QImage paper(2000, 1100, QImage::Format_RGB32);
    const PrintFonts fonts;
    const QRectF area(2, 2, 195, 90);
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::parallelTrackBar, Layout::ladderGuide}) {
        const auto pair = drawnPair(layout);
        QPainter painter(&paper);
        painter.scale(10, 10);
        const SheetSide side = drawSheetSide(painter, area, fonts, compareCars(pair.first, pair.second));
        std::size_t holes = 0;
        for (const Link& link : pair.second.links) {
            holes +=
                link.chassis.holes.size() > 1 && link.side != Side::right ? link.chassis.holes.size() : 0;
        }
        EXPECT_GE(side.labels.size(), holes) << static_cast<int>(layout);
        for (std::size_t one = 0; one < side.labels.size(); ++one) {
            EXPECT_TRUE(area.contains(side.labels[one])) << static_cast<int>(layout);
            for (std::size_t other = 0; other < one; ++other) {
                EXPECT_FALSE(side.labels[one].intersects(side.labels[other])) << static_cast<int>(layout);
            }
        }
    }
}

TEST(ChangeSheet, NamesStartingNumbersInItsHeading) {
    const auto heads = [](const Car& before, const Car& after) {
        int found = 0;
        for (const PdfPage& page : pagesOf(before, after, PaperSize::letter)) {
            const QString words = page.allText().replace(u'\n', u' ');
            found += words.contains(QStringLiteral("Starting numbers, not measured: CG height")) ? 1 : 0;
        }
        return found;
    };
    Car guessed = otherPlainCar();
    setOrigin(guessed, {.field = Field::cgHeight}, Origin::starting);
    EXPECT_EQ(heads(plainCar(), otherPlainCar()), 0);
    EXPECT_GE(heads(plainCar(), guessed), 1);
    EXPECT_GE(heads(guessed, plainCar()), 1) << "what differs rests on both";
}

}  // namespace
}  // namespace bolthole
