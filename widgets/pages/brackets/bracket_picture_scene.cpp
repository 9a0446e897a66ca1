// How the picture of a bracket is put together.
#include <cmath>
#include <numbers>

#include "geometry/plates/plate_room.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/brackets/bracket_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kBareHole = 6;    // px, of holes whose size is not known
constexpr double kDimension = 26;  // px from the outline
constexpr double kInset = 10;      // px, of words in the picture's corners

class BracketComposer {
  public:
    BracketComposer(Scene& scene, const BracketScene& shown, const SideCamera& camera)
        : scene_(scene), shown_(shown), bracket_(shown.bracket), camera_(camera) {}

    void compose() {
        if (bracket_.holes.empty()) {
            return;
        }
        if (bracket_.plate) {
            addPlate();
            addExtent();
            addCorners();
        }
        const int holes = static_cast<int>(bracket_.holes.size());
        for (int hole = 0; hole < holes; ++hole) {
            addHole(hole);
        }
        for (int hole = 0; hole < holes; ++hole) {
            addName(hole);
        }
        for (int hole = 0; bracket_.plate && hole < holes; ++hole) {
            if (at(hole).planned || hole == shown_.hoveredHole) {
                addEdgeDistance(hole);
            }
        }
        addWords();
    }

  private:
    [[nodiscard]] const Hole& at(int hole) const { return bracket_.holes[static_cast<std::size_t>(hole)]; }
    [[nodiscard]] static QPointF flat(const Eigen::Vector2d& point) { return {point.x(), point.y()}; }
    [[nodiscard]] QPointF place(int hole) const { return flat(inSideView(at(hole).at)); }
    [[nodiscard]] double radius() const {
        return bracket_.plate ? bracket_.plate->holeDiameter / 2 : kBareHole / camera_.scale;
    }
    [[nodiscard]] QString length(double metres) const {
        return QString::fromStdString(withUnit(fineFigureText(metres, Quantity::length, shown_.style.units),
                                               Quantity::length, shown_.style.units));
    }
    [[nodiscard]] bool isTroubled(int hole) const {
        return !plateTroubles(bracket_, inSideView(at(hole).at), hole, shown_.style.units).empty();
    }
    void addPlate();
    void addExtent();
    void addCorners();
    void addHole(int hole);
    void addName(int hole);
    void addEdgeDistance(int hole);
    void addWords();

    Scene& scene_;
    const BracketScene& shown_;
    const Bracket& bracket_;
    const SideCamera& camera_;
};

// Where no center may be it is hatched, and dashed at its inner side.
void BracketComposer::addPlate() {
    const Plate& plate = *bracket_.plate;
    const bool canBe = shown_.refusal.isEmpty();
    QPolygonF outline;
    for (const Eigen::Vector2d& corner : plate.corners) {
        outline << flat(corner);
    }
    ScenePath& path = scene_.addPath(outline, true);
    path.fill = {&Theme::metalFill};
    path.stroke = {canBe ? &Theme::ink : &Theme::problem, SceneWeight::medium};
    path.band = canBe ? plate.edgeDistance : 0;
    if (!(path.band * camera_.scale >= 0.5)) {
        path.band = 0;
        return;
    }
    for (const auto& line : edgeLimit(plate.corners, plate.edgeDistance)) {
        QPolygonF limit;
        for (const Eigen::Vector2d& point : line) {
            limit << flat(point);
        }
        scene_.addPath(limit, false).stroke = {&Theme::reference, SceneWeight::thin, SceneDash::dashed};
    }
}

// Below and left of the outline, how long and how high it is.
void BracketComposer::addExtent() {
    QPolygonF outline;
    for (const Eigen::Vector2d& corner : bracket_.plate->corners) {
        outline << flat(corner);
    }
    const QRectF extent = outline.boundingRect();  // of the plane: its top is the lowest
    scene_.add(SceneDimension{.from = extent.topLeft(),
                              .to = extent.topRight(),
                              .aside = kDimension,
                              .words = length(extent.width())});
    scene_.add(SceneDimension{.from = extent.bottomLeft(),
                              .to = extent.topLeft(),
                              .aside = kDimension,
                              .words = length(extent.height())});
}

void BracketComposer::addCorners() {
    int corner = 0;
    for (const Eigen::Vector2d& point : bracket_.plate->corners) {
        const bool selected = corner == shown_.selectedCorner;
        const bool hovered = corner == shown_.hoveredCorner;
        scene_.add(SceneHandle{.at = flat(point)}, corner,
                   {.hovered = hovered, .selected = selected, .ring = shown_.hasRing});
        scene_.label({.at = flat(point),
                      .text = QString::number(corner + 1),
                      .font = selected ? SceneFont::smallStrong : SceneFont::small,
                      .ink = selected || hovered ? &Theme::focus : &Theme::muted,
                      .side = 1,
                      .gap = 6});
        ++corner;
    }
}

void BracketComposer::addHole(int hole) {
    const HoleLook look = at(hole).planned       ? HoleLook::planned
                          : bracket_.use == hole ? HoleLook::bolted
                                                 : HoleLook::free;
    scene_.add(SceneHole{.at = place(hole), .radius = radius(), .look = look}, kHoleIds + hole,
               {.hovered = hole == shown_.hoveredHole, .pastLimit = isTroubled(hole)});
}

void BracketComposer::addName(int hole) {
    const bool troubled = isTroubled(hole);
    const bool strong = hole == shown_.hoveredHole || at(hole).planned;
    scene_.label({.at = place(hole),
                  .text = (troubled ? QStringLiteral("▲ ") : QString()) + holeName(bracket_, hole),
                  .font = strong ? SceneFont::smallStrong : SceneFont::small,
                  .ink = troubled ? &Theme::problem : &Theme::ink,
                  .gap = radius() * camera_.scale + 3,
                  .widest = 150});
}

void BracketComposer::addEdgeDistance(int hole) {
    const EdgeRoom room = edgeRoom(bracket_.plate->corners, inSideView(at(hole).at));
    const QPointF to = flat(room.nearest);
    const QPointF way = to - place(hole);
    scene_.add(SceneDimension{
        .from = place(hole), .to = to, .words = {}, .stroke = {&Theme::focus, SceneWeight::thin}});
    const double degrees = std::atan2(way.y(), way.x()) * 180 / std::numbers::pi;
    scene_.label({.at = to,
                  .text = length(room.distance),
                  .ink = &Theme::focus,
                  .side = (static_cast<int>(std::lround(degrees / 45)) + 8) % 8,
                  .gap = 5});
}

void BracketComposer::addWords() {
    scene_.write({.at = {PictureCorner::topLeft, {kInset, 6}},
                  .lie = Qt::AlignLeft | Qt::AlignTop,
                  .text = BracketPicture::tr("↑ up")});
    scene_.write({.at = {PictureCorner::bottomRight, {-kInset, -6}},
                  .lie = Qt::AlignRight | Qt::AlignBottom,
                  .text = BracketPicture::tr("front →")});
    if (bracket_.plate) {
        scene_.write({.at = {PictureCorner::topRight, {-kInset, 6}},
                      .lie = Qt::AlignRight | Qt::AlignTop,
                      .text = BracketPicture::tr("hatched: nearer the edge than %1")
                                  .arg(length(bracket_.plate->edgeDistance))});
    }
    if (!shown_.refusal.isEmpty()) {
        scene_.write({.at = {PictureCorner::bottomLeft, {kInset, -6}},
                      .lie = Qt::AlignLeft | Qt::AlignBottom,
                      .text = QStringLiteral("▲ ") + shown_.refusal,
                      .ink = &Theme::problem});
    }
}

}  // namespace

void composeBracket(Scene& scene, const BracketScene& bracket, const SideCamera& camera) {
    scene.clear();
    BracketComposer(scene, bracket, camera).compose();
}

}  // namespace bolthole
