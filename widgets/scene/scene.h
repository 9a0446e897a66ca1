// A picture of the car as data: what is drawn, where, in which sense, and what is said beside it. One painter
// (scene_painter.h) paints it, on screen or on paper as a style has it, and one place (scene_hit.h) says what
// is under the pointer.
//
// A scene lies in a plane, m, x to the right and y up: from the side, from behind or from above
// (view_plane.h). Sizes that nobody measured, as of a hole's mark or an arrow's head, are the style's: pixels
// on the screen, mm on paper, called the picture's units here.
//
// What stays outside: the drilling template, which is no picture but a tool, true to size and cut along, with
// lines that must not be clipped nor words that may move; the measuring sheet's pictures, which are made of
// tape, chalk and pads that no other picture has.
#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QSizeF>
#include <QString>
#include <limits>
#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/part.h"
#include "widgets/kit/theme.h"

namespace bolthole {

/// How wide a tire is drawn, m: nobody measured it.
inline constexpr double kDrawnTireWidth = 0.22;

/// A use of the theme, looked up whenever a scene is painted. Paper knows black and white alone.
using SceneInk = QColor Theme::*;

/// From a grid line to the main thing.
enum class SceneWeight { hair, thin, medium, strong, heavy };

/// Dash-dot is the axis of engineering drawing.
enum class SceneDash { solid, dashed, dotted, dashDot };

/// How a line is drawn.
struct SceneStroke {
    SceneInk ink = &Theme::ink;
    SceneWeight weight = SceneWeight::medium;
    SceneDash dash = SceneDash::solid;
    double strength = 1;  ///< of its color over the ground, 0 to 1; on paper always 1
};

/// How a surface is filled.
struct SceneFill {
    SceneInk ink = nullptr;  ///< null: not at all
    double strength = 1;     ///< of its color over the ground, 0 to 1
};

/// A corner of the picture, or none: then a place is one of the plane.
enum class PictureCorner { none, topLeft, topRight, bottomLeft, bottomRight };

/// Where something stands: a point of the plane or a corner of the picture, and from there so far in the
/// picture's units, x to the right and y down.
struct ScenePlace {
    QPointF at;
    QPointF off;
    PictureCorner corner = PictureCorner::none;

    ScenePlace() = default;
    // A point of the plane is a place.
    ScenePlace(QPointF point, QPointF away = {}) : at(point), off(away) {}  // NOLINT(google-explicit-*)
    ScenePlace(PictureCorner from, QPointF away) : off(away), corner(from) {}
};

// The primitives. All points in the plane, all lengths in m, unless they say otherwise.

/// The ground's line through a point, from one end of the picture to the other, and the earth below it.
struct SceneGround {
    QPointF at;
    QPointF along{1, 0};
};

/// A wheel from the side.
struct SceneWheel {
    QPointF center;
    double radius = 0;
    double turn = std::numeric_limits<double>::quiet_NaN();  ///< rad, clockwise; NaN: drawn without spokes
    double flat = -std::numeric_limits<double>::infinity();  ///< height below which the tire is pressed flat
};

/// A tire from behind or from above. Its width is not among what was measured, so its edges are dotted.
struct SceneTire {
    QPointF center;
    QSizeF size;      ///< as it stands unturned
    double turn = 0;  ///< rad, counterclockwise
};

/// An axle's tube, a shaft.
struct SceneTube {
    QPointF from;
    QPointF to;
    double radius = 0;
    double strength = 0.25;  ///< of its metal
};

/// The axle's housing: round, with a cone to the pinion's joint where that is seen.
struct SceneHousing {
    QPointF center;
    double radius = 0;
    std::optional<QPointF> nose = std::nullopt;
};

/// A universal joint.
struct SceneJoint {
    QPointF at;
    double radius = 0;  ///< never drawn smaller than the style's hole
};

/// A link from its chassis end to its axle end. Color is never the only sign of its role: lowers are plain,
/// uppers have a light line inside, crosswise rods a dashed one.
struct SceneLink {
    QPointF chassis;
    QPointF axle;
    Role role = Role::lower;
    bool farSide = false;  ///< behind the car's middle: drawn faint
    bool eyes = true;      ///< a square at the chassis, a ring at the axle
};

/// What a bracket's hole is.
enum class HoleLook { free, bolted, former, planned };

/// A hole of a bracket: an empty ring; filled with a bright center where something is bolted; in a second
/// ring where something was; dashed with a cross where it is not drilled yet.
struct SceneHole {
    QPointF at;
    double radius = 0;  ///< 0: not known, as large as the style has it
    HoleLook look = HoleLook::free;
};

/// A square that is taken hold of: a corner of an outline.
struct SceneHandle {
    QPointF at;
};

/// A mount of a spring: square on the chassis, round on the axle, hollow where it is not in use.
struct SceneMount {
    ScenePlace at;
    bool onChassis = false;
    bool inUse = true;
    SceneInk ink = &Theme::ink;
};

/// A spring, shock, coilover, bump stop or strap between its mounts.
struct SceneSpring {
    PartKind kind = PartKind::spring;
    QPointF chassis;
    QPointF axle;
    bool slack = false;                               ///< a strap that hangs
    std::optional<double> stopLength = std::nullopt;  ///< of a bump stop; nobody said: it is drawn dashed
};

/// Of gravity: a circle in quarters, as engineering drawing has it. Instant: a ring with a dot. Roll: a
/// diamond.
enum class CenterKind { gravity, instant, roll };
struct SceneCenter {
    QPointF at;
    CenterKind kind = CenterKind::gravity;
};

/// A cross where lines meet.
struct SceneCross {
    QPointF at;
};

/// An arrow with its head at the end: a force, a sense.
struct SceneArrow {
    ScenePlace from;
    QPointF way;  ///< in the picture's units, x to the right and y down
    SceneStroke stroke;
};

/// A straight line, clipped to the picture before it is dashed.
struct SceneLine {
    ScenePlace from;
    ScenePlace to;
    SceneStroke stroke;
};

/// Points one after the other: see Scene::addPath().
struct ScenePath {
    std::size_t first = 0;  ///< into Scene::points
    std::size_t count = 0;
    bool isClosed = false;
    SceneStroke stroke;
    SceneFill fill;
    double band = 0;  ///< hatched so far inside its outline: where nothing may be
};

/// A length measured square across or upright, with its words in the middle of its line.
struct SceneDimension {
    QPointF from;
    QPointF to;
    double aside =
        0;  ///< the line stands so far to the right of the way from `from` to `to`, picture's units
    QString words;
    SceneStroke stroke{&Theme::muted, SceneWeight::hair, SceneDash::solid, 1};
};

/// So many meters long, at the picture's lower right corner; left out where it would be longer than the
/// picture.
struct SceneScaleBar {
    double length = 0;
    QString words;
};

using SceneShape = std::variant<SceneGround, SceneWheel, SceneTire, SceneTube, SceneHousing, SceneJoint,
                                SceneLink, SceneHole, SceneHandle, SceneMount, SceneSpring, SceneCenter,
                                SceneCross, SceneArrow, SceneLine, ScenePath, SceneDimension, SceneScaleBar>;

/// What a thing is besides what it is.
struct SceneMarks {
    bool hovered = false;
    bool selected = false;
    bool ring = false;         ///< the selection came by the keyboard
    bool pastLimit = false;    ///< or in trouble
    SceneInk ghost = nullptr;  ///< another car's: dashed in this color; null: of the car itself
    bool isStale = false;      ///< computed for what stood there before: dashed
};

/// One thing in a scene.
struct SceneItem {
    SceneShape shape;
    int id = -1;  ///< what hitScene() gives back; -1: nothing that is picked
    SceneMarks marks;
};

/// Sizes of words: small print, body, body that stands out, and the one big number.
enum class SceneFont { small, smallStrong, body, strong, figure };

/// Words that have their place. Kept inside the picture; labels keep off them.
struct SceneWords {
    ScenePlace at;
    /// How they lie against `at`: AlignLeft starts there, AlignRight ends there, AlignHCenter around it;
    /// AlignTop hangs below it, AlignBottom stands above.
    Qt::Alignment lie = Qt::AlignHCenter | Qt::AlignVCenter;
    QString text;
    QString below = {};  ///< a second line, small and quiet
    SceneFont font = SceneFont::small;
    SceneInk ink = &Theme::muted;
    double wrap = 0;          ///< broken into lines no wider, picture's units; 0: one line
    bool isOptional = false;  ///< left out where other words stand already
    SceneInk card = nullptr;  ///< on a card tinted and edged in that color; null: on the ground as it is
};

/// Words that find their place beside a point, so that they cover nothing; left out where there is none.
struct SceneLabel {
    ScenePlace at;
    std::optional<QPointF> along = std::nullopt;  ///< tried also farther down the line from `at` to there
    QString title = {};                           ///< a small quiet line above, on a card
    QString text;
    SceneFont font = SceneFont::small;
    SceneInk ink = &Theme::ink;
    SceneInk edge = nullptr;  ///< of the card it stands on; null: on a quiet patch of the ground
    int side = 0;             ///< where to look first: 0 right, then counterclockwise in eighths of a turn
    double gap = 10;          ///< from the point, picture's units
    double widest = 0;        ///< cut short beyond that, picture's units; 0: never
    bool mustStand = false;   ///< where no place is free, it stands inside the picture all the same
};

/// All that is drawn: things in the order they are painted, then words, then labels. Filled anew for each
/// painting; what it takes up is kept.
struct Scene {
    std::vector<SceneItem> items;
    std::vector<QPointF> points;  ///< of all paths
    std::vector<SceneWords> words;
    std::vector<SceneLabel> labels;

    void clear();
    void add(SceneShape shape, int id = -1, SceneMarks marks = {});
    /// Appends a path through `through`; gives it back to be drawn otherwise than with a plain line.
    ScenePath& addPath(std::span<const QPointF> through, bool isClosed);
    void write(SceneWords what) { words.push_back(std::move(what)); }
    void label(SceneLabel what) { labels.push_back(std::move(what)); }
};

}  // namespace bolthole
