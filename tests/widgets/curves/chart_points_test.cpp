// Points as what matters in a chart: picked, marked one by one, under headings, with words beside them.
#include <gmock/gmock.h>

#include <QTest>

#include "tests/support/shown_chart.h"

namespace bolthole {
namespace {

using test::cardOf;
using test::isIn;
using test::isSeen;
using test::looking;
using test::passAxis;
using test::passes;
using test::ShownChart;
using test::straight;
using testing::ElementsAre;
using testing::SizeIs;

ChartLook picking() {
    ChartLook look;
    look.head = ChartLook::Head::none;
    look.hasCursor = false;
    look.picksPoints = true;
    look.hasFrame = false;
    look.ground = &Theme::card;
    return look;
}

TEST(CurveChart, PointsArePickedByClickAndKeysInTheirOrder) {
    ShownChart shown(picking(), passAxis(), {cardOf("Sixty feet", {straight("mean"), passes()})});
    CurveChart& chart = shown.chart;
    std::vector<int> points;
    QObject::connect(&chart, &CurveChart::pointPicked, [&](int card, int series, int point) {
        points.push_back(point);
        chart.showPicked(card, series, point);
    });
    const QPoint third = shown.at(3, 1.44);
    QTest::mouseClick(&chart, Qt::LeftButton, {}, third + QPoint(0, 12));
    EXPECT_THAT(points, ElementsAre(2));
    EXPECT_EQ(chart.accessibleDescription(), "sixty feet, pass 3: 1.44 (1.43 to 1.45) g");
    EXPECT_TRUE(isSeen(chart.grab().toImage(), third + QPoint(9, 0), theme().focus));
    QTest::keyClick(&chart, Qt::Key_Left);
    QTest::keyClick(&chart, Qt::Key_Left);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_THAT(points, ElementsAre(2, 1, 0, 0)) << "it stays at the end";
    QTest::keyClick(&chart, Qt::Key_Escape);
    EXPECT_EQ(points.back(), -1);
    EXPECT_EQ(chart.accessibleDescription(), "");
    EXPECT_FALSE(isSeen(chart.grab().toImage(), shown.at(1, 1.48) + QPoint(9, 0), theme().focus));
    QTest::keyClick(&chart, Qt::Key_Escape);
    EXPECT_EQ(points.size(), 5U) << "nothing is picked, so the key is somebody else's";
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(points.back(), 4) << "from the end it comes from";
    QTest::mousePress(&chart, Qt::LeftButton, {}, third);
    QTest::mouseRelease(&chart, Qt::LeftButton, {}, third + QPoint(40, 60));
    EXPECT_EQ(points.back(), 4) << "no click";
    QTest::mouseClick(&chart, Qt::LeftButton, {}, third + QPoint(40, 60));
    EXPECT_EQ(points.back(), -1);
}

TEST(CurveChart, APointHasAMarkAndWordsOfItsOwn) {
    ChartSeries own = passes();
    own.marks = {{.mark = ChartMark::square, .isFilled = true},
                 {.mark = ChartMark::triangle, .isFilled = true, .isPale = true},
                 {.mark = ChartMark::diamond, .color = &Theme::upper},
                 {},
                 {}};
    own.pointWords = {QStringLiteral("the first")};
    ShownChart shown(picking(), passAxis(), {cardOf("Sixty feet", {own})});
    const QImage image = shown.chart.grab().toImage();
    EXPECT_EQ(image.pixelColor(shown.at(1, 1.48)), theme().ink);
    EXPECT_EQ(image.pixelColor(shown.at(2, 1.46)), theme().card) << "pale, and hollow with it";
    EXPECT_EQ(image.pixelColor(shown.at(3, 1.44)), theme().card);
    EXPECT_TRUE(isSeen(image, shown.at(3, 1.44) + QPoint(0, 4), theme().upper));
    EXPECT_EQ(shown.chart.pointWords(0, 0, 0), "the first");
    EXPECT_EQ(shown.chart.pointWords(0, 0, 3), "sixty feet, pass 4: 1.42 (1.41 to 1.43) g");
}

TEST(CurveChart, SectionsHaveTheirHeadingsAboveThePlotAndGroupsTheirsBelow) {
    ChartAxis axis = passAxis();
    ChartCard card = cardOf("Sixty feet", {passes()});
    ShownChart bare(picking(), axis, {card});
    card.sections = {{.from = 0.6, .to = 2.4, .title = QStringLiteral("A")},
                     {.from = 2.6,
                      .to = 5.4,
                      .title = QStringLiteral("B"),
                      .words = QStringLiteral("lower axle hole"),
                      .divider = ChartLine::solid}};
    axis.groups = {{0.6, QStringLiteral("Friday")}, {2.6, QStringLiteral("Saturday, and many words more")}};
    ShownChart shown(picking(), axis, {card});
    const QRectF area = shown.chart.onScreen()[0].plot().area;
    const QRectF without = bare.chart.onScreen()[0].plot().area;
    EXPECT_GT(area.top(), without.top() + 20);
    EXPECT_LT(area.bottom(), without.bottom() - 10);
    const QImage image = shown.chart.grab().toImage();
    const auto above = [&](double from, double to) {
        return QRectF(QPointF(shown.at(from, 0).x(), 0), QPointF(shown.at(to, 0).x(), area.top()));
    };
    const QColor ink = theme().ink;
    EXPECT_TRUE(isIn(image, above(0.6, 2.4), ink));
    EXPECT_TRUE(isIn(image, above(2.6, 5.4), ink));
    EXPECT_FALSE(isIn(image, above(0.6, 2.4), theme().focus)) << "nothing new in the first";
    EXPECT_TRUE(isIn(image, above(2.6, 5.4), theme().focus));
    EXPECT_TRUE(
        isSeen(image, QPoint(shown.at(2.5, 0).x(), static_cast<int>(area.center().y())), theme().border));
    const QRectF below(area.left(), without.bottom() + 2, area.width(), shown.chart.height());
    EXPECT_TRUE(isIn(image, below, theme().muted));
}

TEST(CurveChart, NotesStandBesideTheirPlacesAndNeverOnEachOther) {
    ChartCard card = cardOf("Sixty feet", {passes()});
    for (int note = 0; note < 8; ++note) {
        card.notes.push_back({3, 1.44 + 0.001 * note, QStringLiteral("AB")});
    }
    const ShownChart shown(picking(), passAxis(), {card});
    const ChartCardOnScreen& on = shown.chart.onScreen()[0];
    const std::vector<QRectF> places = on.notePlaces(shown.chart.type().smallBoldMetrics);
    ASSERT_THAT(places, SizeIs(8));
    EXPECT_GT(places[0].left(), on.plot().at(3, 1.44).x());
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_FALSE(places[i].intersects(places[j])) << i << " and " << j;
        }
    }
}

}  // namespace
}  // namespace bolthole
