#include <gmock/gmock.h>

#include <QAbstractButton>
#include <QApplication>
#include <QImage>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "tests/support/shown_chart.h"
#include "tests/support/text_notes.h"
#include "widgets/curves/chart_paper.h"
#include "widgets/kit/theme.h"

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
using testing::HasSubstr;
using testing::SizeIs;

/// Where BOLTHOLE_PICTURES names a folder, pictures are kept there to be looked at.
void keepChart(const QPixmap& picture, const QString& name) {
    const QString folder = qEnvironmentVariable("BOLTHOLE_PICTURES");
    if (!folder.isEmpty()) {
        picture.save(folder + QStringLiteral("/chart_") + name + QStringLiteral(".png"));
    }
}

/// All that a card can show: two curves with their gap, a band, rules, stretches, events.
ChartCard fullCard() {
    ChartSeries front = straight(QStringLiteral("front"));
    ChartSeries rear = straight(QStringLiteral("rear"));
    rear.line = ChartLine::dashDotted;
    rear.width = 1.7;
    for (std::size_t row = 0; row < rear.points.size(); ++row) {
        rear.points[row].value = 2 - 1.2 * std::sin(3 * rear.points[row].imposed);
        front.points[row].low = front.points[row].value - 0.1;
        front.points[row].high = front.points[row].value + 0.1;
    }
    ChartCard card = cardOf(QStringLiteral("Tire load"), {front, rear});
    card.gaps = {{}};
    card.rules = {referenceRule(1), limitRule(2.2, QStringLiteral("as much as it holds"))};
    card.stretches = {{0.8, 0.9, QString(), false}, {0.9, 1.0, QStringLiteral("out of reach")}};
    card.events = {{0.12, QStringLiteral("front wheels leave the ground")},
                   {0.2, QStringLiteral("bump stop")},
                   {0.31, QStringLiteral("second gear")}};
    return card;
}

// Light and dark, side by side, stacked and upright: every part of a card leaves its ink.
TEST(CurveChart, DrawsAllACardCanShow) {
    for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
        for (const bool isUpright : {false, true}) {
            ChartAxis axis = timeAxis(0, 1);
            axis.isUpright = isUpright;
            ChartLook look = looking(true, !isUpright);
            look.head = isUpright ? ChartLook::Head::keys : ChartLook::Head::figure;
            ShownChart shown(look, axis, {fullCard(), cardOf("Push", {straight("push")})}, {760, 560});
            ThemeKeeper::instance().choose(appearance);
            shown.chart.showCursor(0.62);
            const QImage with = shown.chart.grab().toImage();
            keepChart(QPixmap::fromImage(with),
                      QStringLiteral("%1_%2").arg(appearance == Appearance::dark ? "dark" : "light",
                                                  isUpright ? "upright" : "across"));
            const auto without = [&](auto part) {
                ChartCard card = fullCard();
                (card.*part).clear();
                shown.chart.showCards(axis, {card, cardOf("Push", {straight("push")})});
                return shown.chart.grab().toImage();
            };
            EXPECT_NE(without(&ChartCard::gaps), with);
            EXPECT_NE(without(&ChartCard::rules), with);
            EXPECT_NE(without(&ChartCard::stretches), with);
            EXPECT_NE(without(&ChartCard::events), with);
        }
    }
    ThemeKeeper::instance().choose(Appearance::light);
    ShownChart shown(looking(true), passAxis(), {cardOf(QStringLiteral("Sixty feet"), {passes()})},
                     {520, 260});
    shown.chart.showCursor(3);
    keepChart(shown.chart.grab(), QStringLiteral("passes"));
    shown.chart.zoomTo(2, 5);
    keepChart(shown.chart.grab(), QStringLiteral("zoomed"));
    EXPECT_TRUE(shown.chart.isZoomed());
}

TEST(CurveChart, MouseMovesTheCursorThroughAllCards) {
    const std::vector<ChartCard> cards{cardOf("Push", {straight("push")}),
                                       cardOf("Lift", {straight("lift")})};
    ShownChart shown(looking(false, true), timeAxis(0, 1), cards);
    QTest::mousePress(&shown.chart, Qt::LeftButton, {}, shown.at(0.5, 1, 1));
    ASSERT_THAT(shown.asked, SizeIs(1));
    EXPECT_NEAR(shown.asked.back(), 0.5, 0.005);
    QTest::mouseMove(&shown.chart, {5000, 200});
    EXPECT_EQ(shown.asked.back(), 1.0);
    QTest::mouseRelease(&shown.chart, Qt::LeftButton, {}, {5000, 200});
    QTest::mouseDClick(&shown.chart, Qt::LeftButton, {}, shown.at(0.3, 1));
    EXPECT_EQ(shown.asked.back(), 0.0) << "home";
    EXPECT_EQ(shown.chart.onScreen()[0].plot().area.left(), shown.chart.onScreen()[1].plot().area.left());
}

TEST(CurveChart, KeysStepToWholeStepsAndSpeak) {
    ShownChart shown(looking(false), timeAxis(0, 1), {cardOf("Push", {straight("push")})});
    shown.chart.showCursor(0.305);
    const auto after = [&](Qt::Key key) {
        QTest::keyClick(&shown.chart, key);
        return shown.asked.back();
    };
    EXPECT_NEAR(after(Qt::Key_Right), 0.31, 1e-12);
    EXPECT_NEAR(after(Qt::Key_Left), 0.30, 1e-12);
    EXPECT_NEAR(after(Qt::Key_PageUp), 0.40, 1e-12);
    EXPECT_THAT(shown.chart.accessibleDescription().toStdString(), HasSubstr("At 0.40 s: push 0.80 g"));
    EXPECT_EQ(after(Qt::Key_End), 1.0);
    EXPECT_EQ(after(Qt::Key_Home), 0.0);
    const std::size_t count = shown.asked.size();
    QTest::keyClick(&shown.chart, Qt::Key_Up);
    EXPECT_THAT(shown.asked, SizeIs(count)) << "across, Up is not the chart's";
}

TEST(CurveChart, ANumberThatIsNotThereBreaksTheLine) {
    ChartSeries series = straight("push");
    series.points[5].value = kNaN;
    ShownChart shown(looking(false), timeAxis(0, 1), {cardOf("Push", {series})});
    const Stroke& stroke = shown.chart.onScreen()[0].stroke(0);
    EXPECT_EQ(std::ranges::count_if(stroke, [](QPointF at) { return std::isnan(at.x()); }), 1);
    EXPECT_TRUE(std::isnan(valueAt(series, 0.45)));
    EXPECT_NEAR(valueAt(series, 0.35), 0.7, 1e-12);
    shown.chart.showCursor(0.5);
    EXPECT_THAT(shown.chart.accessibleDescription().toStdString(), HasSubstr("no figures"));
    // Where the line is broken the plot shows its ground.
    const QImage image = shown.chart.grab().toImage();
    const QPoint hole = shown.at(0.55, 1.1);
    const QPoint line = shown.at(0.75, 1.5);
    EXPECT_TRUE(isSeen(image, line, theme().instantCenter));
    EXPECT_FALSE(isSeen(image, hole, theme().instantCenter));
}

TEST(CurveChart, AMarkedPointIsHoveredAndClicked) {
    ShownChart shown(looking(false), passAxis(), {cardOf("Sixty feet", {passes()})});
    QSignalSpy hovered(&shown.chart, &CurveChart::hovered);
    QSignalSpy clicked(&shown.chart, &CurveChart::pointPicked);
    const QPoint third = shown.at(3, 1.44);
    shown.moveMouse(third + QPoint(2, 2));
    ASSERT_EQ(hovered.size(), 1);
    EXPECT_THAT(hovered.back(), ElementsAre(0, 0, 2));
    EXPECT_EQ(shown.chart.pointWords(0, 0, 2), "sixty feet, pass 3: 1.44 (1.43 to 1.45) g");
    shown.moveMouse(third + QPoint(40, 60));
    EXPECT_THAT(hovered.back(), ElementsAre(-1, -1, -1));
    QTest::mouseClick(&shown.chart, Qt::LeftButton, {}, third);
    ASSERT_EQ(clicked.size(), 1);
    EXPECT_THAT(clicked.back(), ElementsAre(0, 0, 2));
    EXPECT_EQ(shown.asked.back(), 3.0) << "the cursor goes there too";
    QTest::mouseClick(&shown.chart, Qt::LeftButton, {}, third + QPoint(40, 60));
    EXPECT_EQ(clicked.size(), 1) << "nothing is there";
    QTest::keyClick(&shown.chart, Qt::Key_Right);
    EXPECT_EQ(shown.asked.back(), 4.0) << "from pass to pass";
}

// Of a stack that is scrolled the last card may be out of sight.
TEST(CurveChart, EveryCardOfAStackHasTheLabelsOfItsAxis) {
    const ChartCard card = cardOf("Push", {straight("push")});
    ShownChart shown(looking(false, true), timeAxis(0, 1), {card, card, card}, {500, 600});
    const QImage image = shown.chart.grab().toImage();
    for (const ChartCardOnScreen& on : shown.chart.onScreen()) {
        const QRectF& area = on.plot().area;
        const QRectF below(area.left(), area.bottom() + 2, area.width(),
                           on.frame().bottom() - area.bottom() - 4);
        EXPECT_TRUE(isIn(image, below, theme().muted));
    }
}

TEST(CurveChart, AnExactRangeIsJustWhatItWasGiven) {
    ChartCard card = cardOf("Sixty feet", {passes()});
    card.extent = Extent{1.313, 1.527};
    card.isExtentExact = true;
    ShownChart shown(picking(), passAxis(), {card});
    EXPECT_EQ(shown.chart.onScreen()[0].plot().low, 1.313);
    EXPECT_EQ(shown.chart.onScreen()[0].plot().high, 1.527);
    card.extent = Extent{1.4, 1.5};
    shown.chart.showCards(passAxis(), {card});
    EXPECT_EQ(shown.chart.onScreen()[0].plot().low, 1.4);
    EXPECT_EQ(shown.chart.onScreen()[0].plot().high, 1.5);
}

TEST(CurveChart, ZoomsByWheelDragAndKeysAndHasAWayBack) {
    ShownChart shown(looking(true), timeAxis(0, 1), {cardOf("Push", {straight("push")})});
    auto* back = shown.chart.findChild<QAbstractButton*>();
    ASSERT_NE(back, nullptr);
    EXPECT_FALSE(back->isVisible());
    shown.wheel(shown.at(0.5, 1), 2, Qt::NoModifier);
    EXPECT_FALSE(shown.chart.isZoomed()) << "the wheel alone scrolls the page";
    shown.wheel(shown.at(0.5, 1), 2, Qt::ControlModifier);
    EXPECT_NEAR(shown.chart.shownTo() - shown.chart.shownFrom(), 0.64, 1e-9);
    EXPECT_NEAR((shown.chart.shownTo() + shown.chart.shownFrom()) / 2, 0.5, 0.005);
    ASSERT_TRUE(back->isVisible());
    QTest::mouseClick(back, Qt::LeftButton);
    EXPECT_FALSE(shown.chart.isZoomed());
    EXPECT_FALSE(back->isVisible());

    const QPoint from = shown.at(0.2, 1);
    const QPoint to = shown.at(0.4, 1);
    QTest::mousePress(&shown.chart, Qt::RightButton, {}, from);
    shown.moveMouse(to, Qt::RightButton);
    QTest::mouseRelease(&shown.chart, Qt::RightButton, {}, to);
    EXPECT_NEAR(shown.chart.shownFrom(), 0.2, 0.005);
    EXPECT_NEAR(shown.chart.shownTo(), 0.4, 0.005);
    QTest::keyClick(&shown.chart, Qt::Key_Escape);
    EXPECT_FALSE(shown.chart.isZoomed());
    QTest::keyClick(&shown.chart, Qt::Key_Plus);
    EXPECT_TRUE(shown.chart.isZoomed());
    QTest::keyClick(&shown.chart, Qt::Key_Minus);
    EXPECT_FALSE(shown.chart.isZoomed());
}

TEST(CurveChart, EventsWordsNeverOverlap) {
    ChartCard card = cardOf("Push", {straight("push")});
    for (int event = 0; event < 12; ++event) {
        card.events.push_back({0.3 + 0.004 * event * event, QStringLiteral("event number %1").arg(event)});
    }
    for (const bool isUpright : {false, true}) {
        ChartAxis axis = timeAxis(0, 1);
        axis.isUpright = isUpright;
        ShownChart shown(looking(false), axis, {card});
        for (const int width : {300, 500, 900, 1400}) {
            shown.chart.resize(width, 400);
            const ChartCardOnScreen& on = shown.chart.onScreen()[0];
            const std::vector<QRectF> places = on.eventPlaces(shown.chart.type().quietMetrics);
            std::size_t placed = 0;
            for (std::size_t i = 0; i < places.size(); ++i) {
                placed += places[i].isNull() ? 0U : 1U;
                for (std::size_t j = 0; j < i; ++j) {
                    EXPECT_FALSE(places[i].intersects(places[j])) << width << ": " << i << ", " << j;
                }
                // Above the plot where the imposed runs across, so that no curve is hidden.
                const QRectF room = isUpright ? on.plot().area
                                              : QRectF(QPointF(on.plot().area.left(), on.frame().top()),
                                                       QPointF(on.plot().area.right(), on.plot().area.top()));
                EXPECT_TRUE(places[i].isNull() ||
                            room.adjusted(-0.01, -0.01, 0.01, 0.01).contains(places[i]));
            }
            EXPECT_GE(placed, 2U) << width;
        }
    }
}

TEST(CurveChart, TheThemeReachesEveryColor) {
    ShownChart shown(looking(false), timeAxis(0, 1), {cardOf("Push", {straight("push")})});
    const QPoint line = shown.at(0.75, 1.5);
    EXPECT_TRUE(isSeen(shown.chart.grab().toImage(), line, Theme::light().instantCenter));
    ThemeKeeper::instance().choose(Appearance::dark);
    const QImage dark = shown.chart.grab().toImage();
    EXPECT_TRUE(isSeen(dark, line, Theme::darkOne().instantCenter));
    EXPECT_EQ(dark.pixelColor(shown.at(0.63, 0.5)), Theme::darkOne().card);
    ThemeKeeper::instance().choose(Appearance::light);
}

TEST(CurveChart, TheValueAxisKeepsStillWhileTheCurveWanders) {
    ShownChart shown(looking(false), timeAxis(0, 1), {cardOf("Push", {straight("push")})});
    const ChartPlot baseline = shown.chart.onScreen()[0].plot();
    ChartSeries lower = straight("push");
    for (ChartPoint& point : lower.points) {
        point.value *= 0.97;
    }
    shown.chart.showCards(timeAxis(0, 1), {cardOf("Push", {lower})});
    EXPECT_EQ(shown.chart.onScreen()[0].plot(), baseline);
}

/// All words a chart puts on paper, where they begin.
struct Written {
    QStringList words;
    PaperLettering lettering{2.5, QFontMetricsF(QFont()),
                             [](const QString& text) { return 2.0 * static_cast<double>(text.size()); },
                             [](const QString& text, double) { return text; },
                             [this](QPointF, const QString& text, bool, Qt::Alignment) { words << text; }};
};

TEST(CurveChart, PaintsTheSameCardsOnPaperInBlack) {
    ChartCard card = cardOf("Push", {straight("push")});
    card.events.push_back({0.4, QStringLiteral("bump stop")});
    card.rules.push_back(limitRule(1.8, QStringLiteral("closed")));
    Written written;
    QImage paper(1000, 500, QImage::Format_RGB32);
    paper.fill(Qt::white);
    QPainter painter(&paper);
    painter.scale(10, 10);  // px per mm
    paintChartOnPaper(painter, {0, 0, 100, 50}, timeAxis(0, 1), {card}, written.lettering);
    painter.end();
    EXPECT_THAT(written.words,
                testing::IsSupersetOf({QString("Push, g"), QString("bump stop"), QString("closed")}));
    int black = 0;
    for (int y = 0; y < paper.height(); ++y) {
        for (int x = 0; x < paper.width(); ++x) {
            const QColor color = paper.pixelColor(x, y);
            EXPECT_TRUE(color.red() == color.green() && color.green() == color.blue()) << x << ", " << y;
            black += color == Qt::black ? 1 : 0;
        }
    }
    EXPECT_GT(black, 800);
}

TEST(CurveChart, WordsOfARuleKeepClearOfTheStartingNumbers) {
    ChartAxis axis = timeAxis(0, 1);
    axis.isUpright = true;
    for (int step = 0; step < 40; ++step) {
        ChartCard card = cardOf(QStringLiteral("one"), {straight(QStringLiteral("one"))});
        card.rules.push_back(limitRule(0.05 * step, QStringLiteral("closed")));
        CurveChart chart(QStringLiteral("chart"), looking(false));
        chart.resize(400, 260);
        chart.showCards(axis, withStartingMark({card}, true));
        test::TextNotes notes(chart.size());
        chart.render(&notes);
        const auto boxOf = [&](const QString& words) {
            const auto found = std::ranges::find(notes.notes(), words, &test::TextNotes::Note::text);
            return found == notes.notes().end() ? QRectF() : found->box;
        };
        const QRectF starts = boxOf(QStringLiteral("starting numbers"));
        ASSERT_FALSE(starts.isEmpty());
        EXPECT_FALSE(starts.intersects(boxOf(QStringLiteral("closed")))) << "at " << 0.05 * step;
    }
}

// In whole words, in whichever corner no curve runs through; by its dots alone where there is none.
TEST(CurveChart, TheStartingMarkIsNeverAcrossACurve) {
    ChartAxis axis = timeAxis(0, 1);
    axis.isUpright = true;
    const QStringList whole{QStringLiteral("starting numbers"), QStringLiteral("starting")};
    int said = 0;
    for (const int width : {118, 140, 200, 400}) {
        for (const double bend : {-3.0, -1.0, 0.0, 1.0, 3.0}) {
            ChartSeries bent{.name = QStringLiteral("one")};
            for (int step = 0; step <= 40; ++step) {
                const double at = step / 40.0;
                bent.points.push_back({at, at + bend * at * (1 - at)});
            }
            CurveChart chart(QStringLiteral("chart"), looking(false));
            chart.resize(width, 300);
            chart.showCards(axis, withStartingMark({cardOf(QStringLiteral("one"), {bent})}, true));
            chart.grab();
            const ChartCardOnScreen& card = chart.onScreen()[0];
            ASSERT_FALSE(card.startingBox().isNull());
            EXPECT_TRUE(card.plot().area.contains(card.startingBox()));
            if (card.startingWords().isEmpty()) {
                continue;
            }
            ++said;
            EXPECT_TRUE(whole.contains(card.startingWords())) << card.startingWords().toStdString();
            for (const ChartPoint& point : bent.points) {
                EXPECT_FALSE(card.startingBox().contains(card.plot().at(point.imposed, point.value)))
                    << width << ", " << bend;
            }
        }
    }
    EXPECT_EQ(said, 20);
}

TEST(CurveChart, SaysWhereItRestsOnStartingNumbers) {
    ThemeKeeper::instance().choose(Appearance::light);
    CurveChart chart(QStringLiteral("chart"), looking(false));
    chart.resize(400, 260);
    std::vector<ChartCard> cards{cardOf(QStringLiteral("one"), {straight(QStringLiteral("one"))})};
    chart.showCards(timeAxis(0, 1), cards);
    const QImage measured = chart.grab().toImage();
    EXPECT_THAT(chart.accessibleDescription().toStdString(), testing::Not(HasSubstr("starting numbers")));
    chart.showCards(timeAxis(0, 1), withStartingMark(cards, true));
    const QImage started = chart.grab().toImage();
    EXPECT_NE(started, measured);
    EXPECT_THAT(chart.accessibleDescription().toStdString(), HasSubstr("starting numbers"));
    // Words and dots stand in their corner of the plot, and nowhere else.
    const QRect corner = chart.onScreen()[0].startingBox().toAlignedRect().adjusted(-1, -1, 3, 3);
    int inside = 0;
    int outside = 0;
    for (int y = 0; y < measured.height(); ++y) {
        for (int x = 0; x < measured.width(); ++x) {
            if (measured.pixelColor(x, y) != started.pixelColor(x, y)) {
                (corner.contains(x, y) ? inside : outside) += 1;
            }
        }
    }
    EXPECT_GT(inside, 100);
    EXPECT_EQ(outside, 0);
}

}  // namespace
}  // namespace bolthole
