// The drilling template read back from its PDF's vectors: true to 0.1 mm on every paper, in both units, on
// both faces.
#include "widgets/papers/drilling_template.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QPdfWriter>
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

#include "geometry/car/starting_numbers.h"
#include "geometry/plates/plate_room.h"
#include "tests/support/bracket_car.h"
#include "tests/support/pdf_page.h"
#include "widgets/papers/template_cut.h"

namespace bolthole {
namespace {

using test::PdfCurve;
using test::PdfPage;
using test::PdfStroke;
using testing::HasSubstr;

constexpr double kTrue = 0.1;  // mm, what the template has to hold
constexpr PaperSize kAllPapers[] = {PaperSize::letter, PaperSize::tabloid, PaperSize::a4, PaperSize::a3};

struct Circle {
    QPointF center;
    double diameter;
};

// A point of a Bézier curve: Bernstein's form. Foley et al., "Computer Graphics: Principles and Practice",
// 2nd ed. 1990, ch. 11; from memory.
QPointF onCurve(const PdfCurve& curve, double t) {
    const double s = 1 - t;
    return s * s * s * curve[0] + 3 * s * s * t * curve[1] + 3 * s * t * t * curve[2] + t * t * t * curve[3];
}

double apart(QPointF one, QPointF other) {
    return std::hypot(one.x() - other.x(), one.y() - other.y());
}

// The circles of a page: closed strokes of four curves, round within a hundredth of a mm.
std::vector<Circle> circlesOf(const PdfPage& page) {
    std::vector<Circle> circles;
    for (const PdfStroke& stroke : page.strokes) {
        if (stroke.curves.size() != 4) {
            continue;
        }
        QPointF center;
        for (const PdfCurve& curve : stroke.curves) {
            center += curve[0] / 4;
        }
        const double radius = apart(center, stroke.curves[0][0]);
        for (const PdfCurve& curve : stroke.curves) {
            for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
                EXPECT_NEAR(apart(center, onCurve(curve, t)), radius, 0.01);
            }
        }
        circles.push_back({center, 2 * radius});
    }
    return circles;
}

// Whether two lines cross at right angles in their middles there: a center mark.
bool isMarked(const PdfPage& page, QPointF at) {
    bool across = false;
    bool upright = false;
    for (const PdfStroke& stroke : page.strokes) {
        for (const QLineF& line : stroke.lines) {
            if (apart(line.center(), at) < 0.02 && line.length() > 5) {
                across = across || std::abs(line.dy()) < 0.01;
                upright = upright || std::abs(line.dx()) < 0.01;
            }
        }
    }
    return across && upright;
}

// A line that stands alone and runs that far across and down, either way.
std::optional<QLineF> singleLine(const PdfPage& page, QPointF way) {
    for (const PdfStroke& stroke : page.strokes) {
        const QLineF line = stroke.lines.empty() ? QLineF() : stroke.lines.front();
        if (stroke.lines.size() == 1 && std::abs(std::abs(line.dx()) - way.x()) < kTrue &&
            std::abs(std::abs(line.dy()) - way.y()) < kTrue) {
            return line;
        }
    }
    return std::nullopt;
}

// The ticks that stand on a ruler at right angles, in steps from its start; each must be true.
std::set<int> ticksOn(const PdfPage& page, const QLineF& ruler, double step) {
    constexpr double kHair = 0.02;  // mm
    std::set<int> ticks;
    for (const PdfStroke& stroke : page.strokes) {
        const QLineF line = stroke.lines.empty() ? QLineF() : stroke.lines.front();
        const QPointF along = ruler.unitVector().p2() - ruler.p1();
        const QPointF foot = line.p1() - ruler.p1();
        const double off = along.x() * foot.y() - along.y() * foot.x();
        const QPointF way = line.p2() - line.p1();
        if (std::abs(off) < kHair && std::abs(QPointF::dotProduct(along, way)) < kHair) {
            const double steps = QPointF::dotProduct(along, foot) / step;
            EXPECT_NEAR(steps, std::round(steps), kHair);
            ticks.insert(static_cast<int>(std::lround(steps)));
        }
    }
    return ticks;
}

TemplateRequest requestFor(Units units) {
    return {test::bracketCar(units), {0, End::axle}, NumberStyle{units}};
}

std::vector<PdfPage> pagesOf(const TemplateRequest& request, const QPageLayout& page) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(page);
        writer.setResolution(1200);
        EXPECT_TRUE(printSheets(DrillingTemplate(request, page), writer));
    }
    return test::readPdf(bytes);
}

// A point of the car, mm, as a face shows it: what the paper has to say, written apart from what drew it.
QPointF expected(const Eigen::Vector3d& at, TemplateFace face) {
    const double forward = 1000 * at.x();
    return {face == TemplateFace::right ? forward : -forward, -1000 * at.z()};
}

void expectTrue(const PdfPage& page, const Bracket& bracket, TemplateFace face) {
    const std::vector<Circle> circles = circlesOf(page);
    ASSERT_EQ(circles.size(), bracket.holes.size());
    const QPointF shift = circles[0].center - expected(bracket.holes[0].at, face);
    for (std::size_t hole = 0; hole < circles.size(); ++hole) {
        EXPECT_NEAR(circles[hole].diameter, 1000 * bracket.plate->holeDiameter, kTrue);
        EXPECT_LT(apart(circles[hole].center, expected(bracket.holes[hole].at, face) + shift), kTrue);
        EXPECT_TRUE(isMarked(page, circles[hole].center)) << hole;
    }
    const auto outline = std::ranges::find_if(page.strokes, [&](const PdfStroke& stroke) {
        return stroke.lines.size() >= bracket.plate->corners.size() && stroke.curves.empty();
    });
    ASSERT_NE(outline, page.strokes.end());
    for (std::size_t corner = 0; corner < bracket.plate->corners.size(); ++corner) {
        const Eigen::Vector2d& at = bracket.plate->corners[corner];
        const QPointF wanted = expected({at.x(), 0, at.y()}, face) + shift;
        EXPECT_LT(apart(outline->lines[corner].p1(), wanted), kTrue) << corner;
    }
}

}  // namespace

TEST(DrillingTemplatePdf, IsTrueOnEveryPaperInBothUnitsOnBothFaces) {
    for (const Units units : {Units::inch, Units::metric}) {
        const TemplateRequest request = requestFor(units);
        for (const PaperSize paper : kAllPapers) {
            const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(paper, request));
            ASSERT_EQ(pages.size(), 2U);
            expectTrue(pages[0], request.bracket(), TemplateFace::left);
            expectTrue(pages[1], request.bracket(), TemplateFace::right);
        }
    }
}

// Ticks tell a ruler: 101 a millimeter apart on one, 65 a sixteenth of an inch apart on the other.
TEST(DrillingTemplatePdf, BearsTwoTrueRulersOnEverySheet) {
    for (const PaperSize paper : kAllPapers) {
        const TemplateRequest request = requestFor(Units::inch);
        for (const PdfPage& page : pagesOf(request, templatePageOf(paper, request))) {
            const std::optional<QLineF> metric = singleLine(page, QPointF(100, 0));
            const std::optional<QLineF> inch = singleLine(page, QPointF(0, 101.6));
            ASSERT_TRUE(metric && inch);
            EXPECT_EQ(ticksOn(page, *metric, 1).size(), 101U);
            EXPECT_EQ(ticksOn(page, *inch, 25.4 / 16).size(), 65U);
        }
    }
}

// With more holes than its sheet has room to tell of, the one to drill comes first.
TEST(DrillingTemplatePdf, TheHoleToDrillIsToldOnTheSheetThatIsTapedOn) {
    TemplateRequest request = requestFor(Units::inch);
    Bracket& bracket =
        request.car.links[static_cast<std::size_t>(request.place.link)].bracket(request.place.end);
    for (int hole = 0; hole < 8; ++hole) {
        Hole more = bracket.holes.front();
        more.planned = false;
        more.name = "more " + std::to_string(hole);
        more.at.z() += 0.004 * hole;
        bracket.holes.push_back(more);
    }
    for (const PaperSize paper : kAllPapers) {
        const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(paper, request));
        EXPECT_THAT(pages.front().allText().toStdString(), HasSubstr("4 DRILL"));
    }
}

TEST(DrillingTemplatePdf, SaysWhatItIsAndWhichFaceOneSees) {
    const TemplateRequest request = requestFor(Units::inch);
    const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(PaperSize::tabloid, request));
    for (const PdfPage& page : pages) {
        std::string text = page.allText().toStdString();
        std::ranges::replace(text, '\n', ' ');
        EXPECT_THAT(text, HasSubstr("check the rulers before you drill; bracket strength is for a qualified "
                                    "person"));
        EXPECT_THAT(text, HasSubstr("lower, axle bracket: drilling template, 1:1"));
        EXPECT_THAT(text, HasSubstr("Shop mule"));
        EXPECT_THAT(text, HasSubstr("FRONT"));
        EXPECT_THAT(text, HasSubstr("UP"));
        EXPECT_THAT(text, HasSubstr("100 mm"));
        EXPECT_THAT(text, HasSubstr("4 in"));
        EXPECT_THAT(text, HasSubstr("4 DRILL"));
        EXPECT_THAT(text, HasSubstr("from hole 3, center to center:"));
        EXPECT_THAT(text, HasSubstr("0.37 in to the rear, 1.23 in down"));
        EXPECT_FALSE(page.allText().contains(QStringLiteral("20")) &&
                     page.allText().contains(QStringLiteral("-11-")));
    }
    EXPECT_TRUE(
        pages[0].find("Seen from the LEFT side of the car: outer face of the left-hand bracket, or "
                      "inner face of the right-hand bracket"));
    EXPECT_TRUE(
        pages[1].find("Seen from the RIGHT side of the car: outer face of the right-hand bracket, or "
                      "inner face of the left-hand bracket"));
}

// The arrow to the front points to the left where one looks from the left, and to the right from the right:
// the car drives to the left of whoever stands at its left.
TEST(DrillingTemplatePdf, TheFrontIsWhereItIsSeen) {
    const TemplateRequest request = requestFor(Units::inch);
    const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(PaperSize::letter, request));
    const auto frontOfUp = [](const PdfPage& page) {
        return page.find(QStringLiteral("FRONT"))->at.x() - page.find(QStringLiteral("UP"))->at.x();
    };
    EXPECT_LT(frontOfUp(pages[0]), 0);
    EXPECT_GT(frontOfUp(pages[1]), 0);
}

TEST(DrillingTemplatePdf, NamesTheEdgeDistanceOfEveryHole) {
    const TemplateRequest request = requestFor(Units::metric);
    const Bracket& bracket = request.bracket();
    const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(PaperSize::a4, request));
    for (const Hole& hole : bracket.holes) {
        const double edge = edgeRoom(bracket.plate->corners, inSideView(hole.at)).distance;
        const QString words = templateLength(edge, request.style);
        const QString all = pages[0].allText();
        EXPECT_TRUE(all.contains('\n' + words + '\n')) << "in the drawing: " << words.toStdString();
        EXPECT_TRUE(all.contains(QStringLiteral(", edge ") + words)) << "in the key";
    }
}

TEST(DrillingTemplatePdf, WithoutAnOutlineShowsCentersAndSaysSo) {
    TemplateRequest request = requestFor(Units::inch);
    request.car.links[0].axle.plate.reset();
    const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(PaperSize::letter, request));
    ASSERT_EQ(pages.size(), 3U);
    EXPECT_TRUE(pages[2].find("The holes, by their numbers")) << "the key has a sheet of its own";
    EXPECT_TRUE(circlesOf(pages[0]).empty());
    EXPECT_TRUE(pages[0].find("No outline entered: holes only"));
    std::vector<QPointF> marks;
    for (const PdfStroke& stroke : pages[0].strokes) {
        for (const QLineF& line : stroke.lines) {
            if (isMarked(pages[0], line.center()) && std::abs(line.dy()) < 0.01) {
                marks.push_back(line.center());
            }
        }
    }
    ASSERT_EQ(marks.size(), 4U);
    for (std::size_t hole = 0; hole < marks.size(); ++hole) {
        const auto& holes = request.bracket().holes;
        EXPECT_LT(apart(marks[hole] - marks[0], expected(holes[hole].at - holes[0].at, TemplateFace::left)),
                  kTrue);
    }
}

TEST(DrillingTemplatePdf, WhatIsLargerThanThePaperIsCutIntoTrueTiles) {
    TemplateRequest request = requestFor(Units::inch);
    Plate& plate = *request.car.links[0].axle.plate;
    plate.corners = {{-0.2, 0.05}, {0.2, 0.05}, {0.2, 0.4}, {-0.2, 0.4}};
    const QPageLayout page = templatePageOf(PaperSize::letter, request);
    EXPECT_EQ(templateRefusal(request, page), QString());
    std::vector<PdfPage> pages = pagesOf(request, page);
    ASSERT_TRUE(pages.back().find("The holes, by their numbers"));
    pages.pop_back();
    ASSERT_GT(pages.size(), 2U);
    ASSERT_EQ(pages.size() % 2, 0U);
    for (std::size_t index = 0; index < pages.size(); ++index) {
        expectTrue(pages[index], request.bracket(),
                   index < pages.size() / 2 ? TemplateFace::left : TemplateFace::right);
        EXPECT_TRUE(pages[index].find("column "));
    }
    // A mark of the same name stands on the same spot of the bracket on both sheets.
    std::map<QString, std::vector<QPointF>> marks;
    for (std::size_t index = 0; index < pages.size() / 2; ++index) {
        for (const test::PdfText& text : pages[index].texts) {
            if (text.text.size() == 3 && text.text[0].isUpper() && text.text[1].isDigit()) {
                marks[text.text].push_back(text.at - circlesOf(pages[index])[0].center);
            }
        }
    }
    EXPECT_GE(marks.size(), 2U);
    for (const auto& [name, places] : marks) {
        ASSERT_EQ(places.size(), 2U) << name.toStdString();
        EXPECT_LT(apart(places[0], places[1]), kTrue) << name.toStdString();
    }
}

TEST(DrillingTemplatePdf, RefusesAWallOfPaperAndSaysWhichItNeeds) {
    TemplateRequest request = requestFor(Units::metric);
    Plate& plate = *request.car.links[0].axle.plate;
    plate.corners = {{-0.4, -0.5}, {0.4, -0.5}, {0.4, 0.4}, {-0.4, 0.4}};
    EXPECT_THAT(templateRefusal(request, templatePageOf(PaperSize::a4, request)).toStdString(),
                HasSubstr("It needs tabloid paper."));
    EXPECT_EQ(templateRefusal(request, templatePageOf(PaperSize::a3, request)), QString());
    plate.corners = {{-40, -50}, {40, -50}, {40, 40}, {-40, 40}};
    EXPECT_THAT(templateRefusal(request, templatePageOf(PaperSize::a3, request)).toStdString(),
                HasSubstr("No paper is large enough: check its corners and holes."));
}

TEST(DrillingTemplatePdf, ALongListOfHolesGoesOnAtTheEnd) {
    TemplateRequest request = requestFor(Units::inch);
    Bracket& bracket = request.car.links[0].axle;
    while (bracket.holes.size() < kMaxHoles) {
        Hole more = bracket.holes[0];
        more.name = "more " + std::to_string(bracket.holes.size());
        bracket.holes.push_back(more);
    }
    const std::vector<PdfPage> pages = pagesOf(request, templatePageOf(PaperSize::letter, request));
    ASSERT_GT(pages.size(), 2U);
    QString all;
    for (const PdfPage& page : pages) {
        all += page.allText();
    }
    for (const Hole& hole : bracket.holes) {
        EXPECT_TRUE(all.contains(QString::fromStdString(hole.name))) << hole.name;
    }
}

TEST(TemplateLength, HasNoFalsePrecision) {
    const NumberStyle sixteenths{Units::inch};
    EXPECT_EQ(templateLength(0.8125 * kMetresPerInch, sixteenths), QStringLiteral("13/16 in"));
    EXPECT_EQ(templateLength(0.81 * kMetresPerInch, sixteenths), QStringLiteral("0.81 in"));
    EXPECT_EQ(templateLength(0.8144567 * kMetresPerInch, sixteenths), QStringLiteral("0.814 in"));
    EXPECT_EQ(templateLength(0.0206789, NumberStyle{Units::metric}), QStringLiteral("20.7 mm"));
    EXPECT_EQ(templateLength(0.8124 * kMetresPerInch, {Units::inch, InchStyle::decimal}),
              QStringLiteral("0.812 in"));
}

TEST(DrillingTemplatePdf, NamesStartingNumbersInItsHeading) {
    TemplateRequest request = requestFor(Units::inch);
    setOrigin(request.car, {.field = Field::cgHeight}, Origin::starting);
    for (const PdfPage& page : pagesOf(request, templatePageOf(PaperSize::letter, request))) {
        std::string text = page.allText().toStdString();
        std::ranges::replace(text, '\n', ' ');
        EXPECT_THAT(text, HasSubstr("Starting numbers, not measured: CG height"));
    }
}

// A template is laid on by the face it names: that sentence is never cut, whatever else the heading says.
TEST(DrillingTemplatePdf, SaysInFullWhichFaceOneSeesWhateverIsNotMeasured) {
    TemplateRequest request = requestFor(Units::inch);
    request.car.links[0].length = 0.6;
    for (const FieldId& id : {FieldId{.field = Field::cgHeight}, FieldId{.field = Field::wheelbase},
                              holeField(0, End::axle, 1, 2)}) {
        setOrigin(request.car, id, Origin::starting);
    }
    setOrigin(request.car, {.field = Field::linkLength, .link = 0}, Origin::workedOut);
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        for (const QPageLayout::Orientation way : {QPageLayout::Portrait, QPageLayout::Landscape}) {
            const std::vector<PdfPage> pages = pagesOf(request, pageOf(paper, way));
            for (std::size_t face = 0; face < 2; ++face) {
                std::string text = pages[face * pages.size() / 2].allText().toStdString();
                std::ranges::replace(text, '\n', ' ');
                EXPECT_THAT(text,
                            HasSubstr(face == 0 ? "Seen from the LEFT side of the car: outer face of the "
                                                  "left-hand bracket, or inner face of the right-hand "
                                                  "bracket"
                                                : "Seen from the RIGHT side of the car: outer face of "
                                                  "the right-hand bracket, or inner face of the "
                                                  "left-hand bracket"));
                EXPECT_THAT(text,
                            HasSubstr("Starting numbers, not measured: lower middle hole, wheelbase, CG "
                                      "height"));
                EXPECT_EQ(text.find("worked out"), std::string::npos) << "no length is on a template";
            }
        }
    }
}

TEST(DrillingTemplatePdf, NamesWhatNobodyMeasuredOfItsPlate) {
    TemplateRequest request = requestFor(Units::inch);
    Plate& plate = *request.car.links[0].axle.plate;
    EXPECT_EQ(templateStarts(request), QString());
    plate.starts.corners = {{1, 0}, {1, 1}, {3, 1}};
    plate.starts.edgeDistance = true;
    for (const PdfPage& page : pagesOf(request, templatePageOf(PaperSize::letter, request))) {
        std::string text = page.allText().toStdString();
        std::ranges::replace(text, '\n', ' ');
        EXPECT_THAT(text,
                    HasSubstr("Starting numbers, not measured: plate of this bracket: 2 of 5 corners, edge "
                              "distance"));
    }
    plate.starts = {.corners = {}, .holeDiameter = true, .edgeDistance = false, .holeSpacing = true};
    EXPECT_EQ(unmeasuredOfPlate(plate), QStringLiteral("hole diameter, hole spacing"));
}

// Whoever cuts by the file alone reads it there too; lines to cut come of it neither here nor there.
TEST(TemplateCut, SaysWhatNobodyMeasured) {
    TemplateRequest request = requestFor(Units::inch);
    const auto svgOf = [&] {
        return templateSvg(templateScene(request, TemplateFace::left), "a car").toStdString();
    };
    const auto dxfOf = [&] {
        return templateDxf(templateScene(request, TemplateFace::left), Units::inch).toStdString();
    };
    EXPECT_THAT(svgOf(), testing::Not(HasSubstr("not measured")));
    EXPECT_THAT(svgOf(), testing::Not(HasSubstr("<text")));
    EXPECT_THAT(dxfOf(), testing::Not(HasSubstr("not measured")));
    request.car.links[0].axle.plate->starts.edgeDistance = true;
    const std::string svg = svgOf();
    const std::string starts = templateStarts(request).toStdString();
    EXPECT_THAT(svg, HasSubstr(starts + ".</desc>"));
    EXPECT_THAT(svg, HasSubstr("<g id=\"NOTES\" stroke=\"none\""));
    EXPECT_THAT(svg, HasSubstr(">Starting numbers, not measured"));
    EXPECT_THAT(dxfOf(), HasSubstr("999\r\n" + starts + "\r\n"));
    EXPECT_THAT(dxfOf(), testing::Not(HasSubstr("TEXT")));
    request.car.links[0].axle.holes[1].name = "mitte, äußere";
    setOrigin(request.car, holeField(0, End::axle, 1, 1), Origin::starting);
    EXPECT_TRUE(std::ranges::all_of(dxfOf(), [](char each) { return each > 0; })) << "ASCII alone";
}

// Only a planned hole was placed by the car's figures; holes that are there rest on themselves.
TEST(TemplateStarts, ArePlateAndHolesWhereNothingIsPlanned) {
    TemplateRequest request = requestFor(Units::inch);
    setOrigin(request.car, {.field = Field::cgHeight}, Origin::starting);
    setOrigin(request.car, holeField(0, End::chassis, 0, 2), Origin::starting);
    setOrigin(request.car, holeField(0, End::axle, 1, 1), Origin::starting);
    request.car.links[0].axle.holes[3].planned = false;
    EXPECT_EQ(templateStarts(request), QString());
    setOrigin(request.car, holeField(0, End::axle, 2, 0), Origin::starting);
    EXPECT_THAT(templateStarts(request).toStdString(), HasSubstr("not measured: lower "));
}

}  // namespace bolthole
