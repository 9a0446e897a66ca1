// The one painter of pictures: what is under the pointer, where words stand, and what paper gets.
#include "widgets/scene/scene.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <vector>

#include "widgets/kit/theme.h"
#include "widgets/papers/kit/print_type.h"
#include "widgets/scene/scene_hit.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/scene/scene_places.h"
#include "widgets/scene/scene_things.h"

namespace bolthole {
namespace {

constexpr QRectF kPicture(0, 0, 600, 400);

/// 200 px a meter, the plane's origin in the middle.
SceneView middleView() {
    return {{200, kPicture.center()}, kPicture};
}

int hit(const Scene& scene, QPointF place, double reach = 11) {
    return hitScene(scene, middleView(), SceneStyle::screen(), place, reach);
}

/// Notes the pens, brushes and words of whatever is painted, as a printer gets them.
class InkEngine : public QPaintEngine {
  public:
    InkEngine() : QPaintEngine(QPaintEngine::AllFeatures) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    [[nodiscard]] Type type() const override { return QPaintEngine::User; }
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override { ++pixmaps; }
    void drawPath(const QPainterPath&) override { note(); }
    void drawPolygon(const QPointF*, int, PolygonDrawMode mode) override { note(mode != PolylineMode); }
    void drawTextItem(const QPointF&, const QTextItem&) override { colors.push_back(state->pen().color()); }
    void updateState(const QPaintEngineState&) override {}

    std::vector<double> widths;
    std::vector<QColor> colors;
    int pixmaps = 0;

  private:
    void note(bool isFilled = true) {
        if (state->pen().style() != Qt::NoPen) {
            widths.push_back(state->pen().widthF());
            colors.push_back(state->pen().color());
        }
        if (isFilled && state->brush().style() != Qt::NoBrush) {
            colors.push_back(state->brush().color());
        }
    }
};

class InkDevice : public QPaintDevice {
  public:
    [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine; }
    mutable InkEngine engine;

  protected:
    [[nodiscard]] int metric(PaintDeviceMetric metric) const override {
        constexpr int kDotsAnInch = 96;
        switch (metric) {
            case PdmWidth:
                return 600;
            case PdmHeight:
                return 400;
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return kDotsAnInch;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
            default:
                return 1;
        }
    }
};

/// One of each thing, in each of its looks, with every mark.
Scene everything() {
    Scene scene;
    scene.add(SceneGround{.at = {0, -0.5}});
    for (const SceneInk ghost : {SceneInk(nullptr), &Theme::baseline, &Theme::ink}) {
        const SceneMarks marks{.ghost = ghost};
        scene.add(SceneWheel{.center = {-0.5, 0}, .radius = 0.3, .turn = 0.4, .flat = -0.29}, -1, marks);
        scene.add(SceneWheel{.center = {0.5, 0}, .radius = 0.3}, -1, marks);
        scene.add(SceneCenter{.at = {0.1, 0.2}, .kind = CenterKind::instant}, -1, marks);
        scene.add(SceneCenter{.at = {0.3, 0.2}, .kind = CenterKind::roll}, -1, marks);
        for (const Role role : {Role::lower, Role::upper, Role::crosswise}) {
            scene.add(SceneLink{.chassis = {0.4, 0.1}, .axle = {-0.2, 0.0}, .role = role}, -1, marks);
            scene.add(SceneLink{.chassis = {0.4, 0.1}, .axle = {-0.2, 0.0}, .role = role}, -1,
                      {.isStale = true});
        }
    }
    scene.add(SceneTire{.center = {0.2, 0}, .size = {0.2, 0.6}, .turn = 0.05});
    scene.add(SceneTube{.from = {-0.4, 0}, .to = {0.4, 0}, .radius = 0.04});
    scene.add(SceneHousing{.center = {0, 0}, .radius = 0.1, .nose = QPointF(0.2, 0.02)});
    scene.add(SceneJoint{.at = {0.3, 0}, .radius = 0.03});
    scene.add(SceneLink{.chassis = {0.4, -0.1}, .axle = {-0.2, -0.1}, .farSide = true});
    for (const HoleLook look : {HoleLook::free, HoleLook::bolted, HoleLook::planned}) {
        scene.add(SceneHole{.at = {0.1, 0.3}, .look = look}, 1, {.hovered = true, .pastLimit = true});
        scene.add(SceneHole{.at = {0.1, 0.3}, .radius = 0.02, .look = look}, 2,
                  {.selected = true, .ring = true});
    }
    scene.add(SceneHandle{.at = {0.2, 0.3}}, 3, {.selected = true, .ring = true});
    for (const bool there : {false, true}) {
        scene.add(SceneMount{.at = QPointF(0.3, 0.3), .onChassis = there, .inUse = there});
    }
    for (const PartKind kind :
         {PartKind::spring, PartKind::shock, PartKind::coilOver, PartKind::bumpStop, PartKind::strap}) {
        scene.add(SceneSpring{.kind = kind, .chassis = {-0.1, 0.4}, .axle = {-0.1, 0.1}, .slack = true}, 4);
    }
    scene.add(SceneCenter{.at = {0.6, 0.3}, .kind = CenterKind::gravity});
    scene.add(SceneCross{.at = {0.7, 0.3}});
    scene.add(SceneArrow{.from = QPointF(0, -0.5), .way = {0, -20}, .stroke = {&Theme::instantCenter}});
    for (const SceneDash dash : {SceneDash::dashed, SceneDash::dotted, SceneDash::dashDot}) {
        scene.add(SceneLine{.from = QPointF(-2, 0.3),
                            .to = QPointF(2, 0.4),
                            .stroke = {&Theme::muted, SceneWeight::hair, dash, 0.3}});
    }
    const std::vector<QPointF> corners{{-0.6, 0.1}, {-0.4, 0.1}, {-0.5, 0.3}};
    ScenePath& plate = scene.addPath(corners, true);
    plate.fill = {&Theme::metalFill};
    plate.band = 0.02;
    scene.addPath(corners, false).stroke = {&Theme::grid, SceneWeight::hair};
    scene.add(SceneDimension{.from = {-0.6, 0.1}, .to = {-0.4, 0.1}, .aside = 20, .words = "8 in"});
    scene.add(SceneScaleBar{.length = 0.2, .words = "200 mm"});
    scene.write({.at = {PictureCorner::topLeft, {8, 8}},
                 .lie = Qt::AlignLeft | Qt::AlignTop,
                 .text = "plain",
                 .below = "quiet",
                 .card = &Theme::upper});
    scene.label({.at = QPointF(0.1, 0.3), .title = "name", .text = "place", .edge = &Theme::focus});
    return scene;
}

TEST(SceneHit, FindsTheNearestWithinReach) {
    Scene scene;
    scene.add(SceneHole{.at = {0, 0}}, 7);
    scene.add(SceneHole{.at = {0.05, 0}}, 8);  // 10 px to the right
    const QPointF at = kPicture.center();
    EXPECT_EQ(hit(scene, at), 7);
    EXPECT_EQ(hit(scene, at + QPointF(6, 0)), 8);
    EXPECT_EQ(hit(scene, at - QPointF(10, 0)), 7);
    EXPECT_EQ(hit(scene, at - QPointF(12, 0)), -1);
    EXPECT_EQ(hit(scene, at - QPointF(12, 0), 13), 7);
    EXPECT_EQ(hit(Scene{}, at), -1);
}

TEST(SceneHit, ABoltedHoleGoesBeforeAFreeOneAndWhatLiesAboveBeforeWhatLiesBelow) {
    const QPointF at = kPicture.center();
    for (const bool boltedFirst : {true, false}) {
        Scene scene;
        scene.add(SceneHole{.at = {0, 0}, .look = boltedFirst ? HoleLook::bolted : HoleLook::free}, 1);
        scene.add(SceneHole{.at = {0, 0}, .look = boltedFirst ? HoleLook::free : HoleLook::bolted}, 2);
        EXPECT_EQ(hit(scene, at), boltedFirst ? 1 : 2);
    }
    Scene scene;
    scene.add(SceneHandle{.at = {0, 0}}, 1);
    scene.add(SceneHandle{.at = {0, 0}}, 2);
    EXPECT_EQ(hit(scene, at), 2);
}

TEST(SceneHit, CountsFromTheLineOfASpringAndALinkAndTakesAWholeHole) {
    Scene scene;
    scene.add(SceneSpring{.chassis = {0, 1}, .axle = {0, 0}}, 1);
    scene.add(SceneLink{.chassis = {1, 0}, .axle = {0.5, 0}}, 2);
    scene.add(SceneHole{.at = {-1, 0}, .radius = 0.15}, 3);  // 30 px
    const QPointF origin = kPicture.center();
    EXPECT_EQ(hit(scene, origin + QPointF(9, -100)), 1);
    EXPECT_EQ(hit(scene, origin + QPointF(12, -100)), -1);
    EXPECT_EQ(hit(scene, origin + QPointF(0, 9)), 1) << "around its end";
    EXPECT_EQ(hit(scene, origin + QPointF(150, 10)), 2);
    EXPECT_EQ(hit(scene, origin + QPointF(-200 + 28, 0)), 3);
    EXPECT_EQ(hit(scene, origin + QPointF(-200 + 32, 0)), -1);
}

TEST(SceneHit, WhatHasNoIdIsNotPicked) {
    Scene scene;
    scene.add(SceneHole{.at = {0, 0}});
    scene.add(SceneTube{.from = {-1, 0}, .to = {1, 0}, .radius = 0.1}, 4);
    EXPECT_EQ(hit(scene, kPicture.center()), -1);
}

// However the car lies in the picture: even what must stand stays in it, and no label covers another.
TEST(ScenePainter, NoLabelStandsOffThePictureOrOnAnother) {
    for (const QSize size : {QSize(600, 400), QSize(220, 150), QSize(60, 40)}) {
        QImage image(size, QImage::Format_RGB32);
        const QRectF picture(QPointF(0, 0), QSizeF(size));
        for (const double scale : {30.0, 200.0, 2000.0}) {
            Scene scene = everything();
            for (int at = -5; at <= 5; ++at) {
                const QPointF place(0.2 * at, 0.1 * at);
                scene.label({.at = place, .text = "label beside a point", .side = (at + 8) % 8});
                scene.label({.at = place, .along = QPointF(-place.x(), 1), .title = "title", .text = "12"});
            }
            for (const QPointF& far : {QPointF(-9, 9), QPointF(9, 9), QPointF(9, -9), QPointF(-9, -9)}) {
                scene.write({.at = far, .text = "words far outside", .below = "a second line"});
            }
            std::vector<QRectF> written;
            QPainter painter(&image);
            paintScene(painter, scene, {{scale, picture.center()}, picture}, SceneStyle::screen(), &written);
            EXPECT_GE(written.size(), 6U);
            for (const QRectF& box : written) {
                EXPECT_TRUE(picture.intersects(box));
                EXPECT_TRUE(box.width() > picture.width() || box.height() > picture.height() ||
                            picture.adjusted(-1e-9, -1e-9, 1e-9, 1e-9).contains(box))
                    << size.width() << ' ' << scale << ": " << box.left() << ' ' << box.top();
            }
            // Words have their place and may meet where it is too small; labels look for theirs.
            const std::size_t words = scene.words.size() + 2;  // and of the dimension and the scale bar
            for (std::size_t one = words; one < written.size(); ++one) {
                for (std::size_t other = 0; other < one; ++other) {
                    EXPECT_FALSE(written[one].intersects(written[other])) << one << " on " << other;
                }
            }
        }
    }
}

TEST(ScenePainter, WhatMustStandStandsWhereNoPlaceIsFree) {
    QImage image(80, 40, QImage::Format_RGB32);
    const QRectF picture(0, 0, 80, 40);
    for (const bool must : {false, true}) {
        Scene scene;
        scene.label({.at = QPointF(0, 0), .text = "first", .side = 0, .gap = 1});
        scene.label({.at = QPointF(0, 0), .text = "wide as", .side = 0, .gap = 30, .mustStand = must});
        std::vector<QRectF> written;
        QPainter painter(&image);
        paintScene(painter, scene, {{200, picture.center()}, picture}, SceneStyle::screen(), &written);
        ASSERT_EQ(written.size(), must ? 2U : 1U);
        EXPECT_TRUE(picture.contains(written.back()));
    }
}

TEST(ScenePainter, WordsThatAreOptionalGiveWay) {
    QImage image(600, 400, QImage::Format_RGB32);
    for (const bool optional : {false, true}) {
        Scene scene;
        scene.write({.at = QPointF(0, 0), .text = "there"});
        scene.write({.at = QPointF(0.01, 0), .text = "there too", .isOptional = optional});
        std::vector<QRectF> written;
        QPainter painter(&image);
        paintScene(painter, scene, middleView(), SceneStyle::screen(), &written);
        EXPECT_EQ(written.size(), optional ? 1U : 2U);
    }
}

// The colors are those of the theme at the time of painting, and every thing leaves a mark.
TEST(ScenePainter, FollowsTheThemeAndDrawsEveryThing) {
    const auto painted = [](const Scene& scene) {
        QImage image(600, 400, QImage::Format_RGB32);
        image.fill(theme().canvas);
        QPainter painter(&image);
        paintScene(painter, scene, middleView(), SceneStyle::screen());
        return image;
    };
    ThemeKeeper::instance().choose(Appearance::light);
    const Scene whole = everything();
    const QImage light = painted(whole);
    const QImage empty = painted(Scene{});
    for (std::size_t at = 0; at < whole.items.size(); ++at) {
        Scene one;
        one.points = whole.points;
        one.items.push_back(whole.items[at]);
        EXPECT_NE(painted(one), empty) << at << " of kind " << whole.items[at].shape.index();
    }
    ThemeKeeper::instance().choose(Appearance::dark);
    EXPECT_NE(painted(whole), light);
    ThemeKeeper::instance().choose(Appearance::light);
}

/// The papers' fonts as a scene's type would have them, reduced to sizes: the words' ink is what counts here.
class PlainType : public SceneType {
  public:
    [[nodiscard]] QSizeF sizeOf(const QString& text, SceneFont, double) const override {
        return {1.5 * static_cast<double>(text.size()), 3};
    }
    void write(QPainter& painter, const QRectF& box, Qt::Alignment, const QString& text,
               SceneFont) const override {
        painter.drawText(box.bottomLeft(), text);
    }
    [[nodiscard]] QString elided(const QString& text, SceneFont, double) const override { return text; }
};

// Where something was bolted before stands a second ring, and words keep off it.
TEST(SceneOnPaper, AHoleBoltedBeforeHasASecondRing) {
    const PlainType type;
    const auto rings = [&](HoleLook look) {
        Scene scene;
        scene.add(SceneHole{.at = {0, 0}, .look = look});
        const SceneStyle style = SceneStyle::print(type);
        InkDevice paper;
        QPainter painter(&paper);
        paintThings(painter, scene, middleView(), style);
        painter.end();
        struct Reach : PlaceTaker {
            double widest = 0;
            void take(const QRectF& box) override { widest = std::max(widest, box.width()); }
            void take(const QLineF&, double) override {}
            void takeOutline(QPointF, double) override {}
            void takeDisk(QPointF, double) override {}
        } reach;
        takePlaces(scene, middleView(), style, reach);
        return std::pair{paper.engine.widths.size(), reach.widest};
    };
    EXPECT_EQ(rings(HoleLook::free).first, 1U);
    EXPECT_EQ(rings(HoleLook::bolted).first, 1U);
    EXPECT_EQ(rings(HoleLook::former).first, 2U);
    EXPECT_NEAR(rings(HoleLook::former).second - rings(HoleLook::free).second,
                2 * (kFormerRing - 1) * SceneStyle::print(type).hole, 1e-12);
}

// In both themes: paper knows none.
TEST(SceneOnPaper, IsBlackAndWhiteAndNoLineIsThinnerThanThePapersThinnest) {
    const PlainType type;
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        ThemeKeeper::instance().choose(look);
        InkDevice paper;
        QPainter painter(&paper);
        paintScene(painter, everything(), middleView(), SceneStyle::print(type));
        painter.end();
        EXPECT_GT(paper.engine.widths.size(), 40U);
        for (const double width : paper.engine.widths) {
            EXPECT_GE(width, kThinnestLine);
        }
        for (const QColor& color : paper.engine.colors) {
            EXPECT_TRUE(color == QColor(Qt::black) || color == QColor(Qt::white))
                << color.name().toStdString();
        }
        EXPECT_TRUE(std::ranges::find(paper.engine.colors, QColor(Qt::black)) != paper.engine.colors.end());
        EXPECT_EQ(paper.engine.pixmaps, 0);
    }
    ThemeKeeper::instance().choose(Appearance::light);
}

// What a drag paints anew every frame takes up no more each time.
TEST(Scene, KeepsWhatItTakesUp) {
    Scene scene;
    const auto fill = [&] {
        scene.clear();
        const std::vector<QPointF> corners{{0, 0}, {1, 0}, {1, 1}};
        for (int at = 0; at < 20; ++at) {
            scene.add(SceneHole{.at = {0.1 * at, 0}}, at);
            scene.addPath(corners, true);
            scene.label({.at = QPointF(0.1 * at, 0), .text = QStringLiteral("hole")});
        }
    };
    fill();
    const std::size_t items = scene.items.capacity();
    const std::size_t points = scene.points.capacity();
    const std::size_t labels = scene.labels.capacity();
    for (int frame = 0; frame < 100; ++frame) {
        fill();
    }
    EXPECT_EQ(scene.items.size(), 40U);
    EXPECT_EQ(scene.items.capacity(), items);
    EXPECT_EQ(scene.points.capacity(), points);
    EXPECT_EQ(scene.labels.capacity(), labels);
}

}  // namespace
}  // namespace bolthole
