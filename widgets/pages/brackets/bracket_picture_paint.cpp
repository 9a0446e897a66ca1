// How the picture of a bracket is drawn.
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/plates/plate_room.h"
#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/brackets/bracket_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kBareHole = 6;    // px, of holes whose size is not known
constexpr double kCorner = 4.5;    // px, half a corner's handle
constexpr double kDimension = 26;  // px from the outline
constexpr double kTick = 4;

QRectF around(QPointF at, double reach) {
    return {at.x() - reach, at.y() - reach, 2 * reach, 2 * reach};
}

class BracketPainter {
  public:
    BracketPainter(QPainter& painter, const QRectF& box, const BracketScene& scene, const SideCamera& camera)
        : painter_(painter),
          box_(box),
          scene_(scene),
          bracket_(scene.bracket),
          camera_(camera),
          labels_(box.adjusted(6, 24, -6, -24)) {}

    void paint() {
        paintGround();
        if (bracket_.holes.empty()) {
            return;
        }
        takeHoles();
        if (bracket_.plate) {
            paintPlate();
            paintExtent();
            paintCorners();
        }
        for (int hole = 0; hole < static_cast<int>(bracket_.holes.size()); ++hole) {
            paintHole(hole);
        }
        for (int hole = 0; hole < static_cast<int>(bracket_.holes.size()); ++hole) {
            paintName(hole);
        }
        for (int hole = 0; bracket_.plate && hole < static_cast<int>(bracket_.holes.size()); ++hole) {
            if (at(hole).planned || hole == scene_.hoveredHole) {
                paintEdgeDistance(hole);
            }
        }
        paintWords();
    }

  private:
    [[nodiscard]] const Hole& at(int hole) const { return bracket_.holes[static_cast<std::size_t>(hole)]; }
    [[nodiscard]] QPointF place(const Eigen::Vector2d& point) const {
        return camera_.toPicture(point.x(), point.y());
    }
    [[nodiscard]] QPointF place(int hole) const { return place(inSideView(at(hole).at)); }
    [[nodiscard]] double radius() const {
        return bracket_.plate ? std::max(bracket_.plate->holeDiameter / 2 * camera_.scale, 2.5) : kBareHole;
    }
    [[nodiscard]] QString length(double metres) const {
        return QString::fromStdString(withUnit(fineFigureText(metres, Quantity::length, scene_.style.units),
                                               Quantity::length, scene_.style.units));
    }
    [[nodiscard]] bool isTroubled(int hole) const {
        return !plateTroubles(bracket_, inSideView(at(hole).at), hole, scene_.style.units).empty();
    }
    void takeHoles();
    void paintGround();
    void paintPlate();
    void paintBand(const QPainterPath& plate);
    void paintExtent();
    void paintCorners();
    void paintHole(int hole);
    void paintName(int hole);
    void paintEdgeDistance(int hole);
    void paintWords();
    void paintLabel(const QRectF& box, const QString& text, const QColor& color, bool bold);
    [[nodiscard]] QSizeF sizeOf(const QString& text, bool bold) const;

    QPainter& painter_;
    QRectF box_;
    const BracketScene& scene_;
    const Bracket& bracket_;
    const SideCamera& camera_;
    LabelPlacer labels_;
};

void BracketPainter::takeHoles() {
    for (int hole = 0; hole < static_cast<int>(bracket_.holes.size()); ++hole) {
        labels_.take(around(place(hole), radius()));
    }
}

void BracketPainter::paintGround() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme().canvas);
    painter_.drawRoundedRect(box_, 5, 5);
}

void BracketPainter::paintPlate() {
    QPainterPath path;
    for (std::size_t corner = 0; corner < bracket_.plate->corners.size(); ++corner) {
        const QPointF there = place(bracket_.plate->corners[corner]);
        corner == 0 ? path.moveTo(there) : path.lineTo(there);
    }
    path.closeSubpath();
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme().metalFill);
    painter_.drawPath(path);
    paintBand(path);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(roundPen(scene_.refusal.isEmpty() ? theme().ink : theme().problem, 1.8));
    painter_.drawPath(path);
}

// Where no center may be: hatched, and dashed at its inner side.
void BracketPainter::paintBand(const QPainterPath& plate) {
    const double width = bracket_.plate->edgeDistance * camera_.scale;
    if (width < 0.5 || !scene_.refusal.isEmpty()) {
        return;
    }
    // The plate's own clip cuts the band. Cutting paths with each other fails where their sides nearly
    // coincide, as in a plate that stands a hair off level.
    const QBrush hatch(faded(theme().reference, theme().dark ? 0.45 : 0.35), Qt::BDiagPattern);
    painter_.save();
    painter_.setClipPath(plate, Qt::IntersectClip);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(hatch, 2 * width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter_.drawPath(plate);
    painter_.restore();
    painter_.setPen(dashedPen(theme().reference, 1.2, {4, 3}));
    for (const auto& line : edgeLimit(bracket_.plate->corners, bracket_.plate->edgeDistance)) {
        QPolygonF limit;
        for (const Eigen::Vector2d& point : line) {
            limit << place(point);
        }
        painter_.drawPolyline(limit);
    }
}

QSizeF BracketPainter::sizeOf(const QString& text, bool bold) const {
    const QFontMetricsF metrics(textFont(TextSize::small, bold));
    return {metrics.horizontalAdvance(text) + 8, metrics.height()};
}

void BracketPainter::paintLabel(const QRectF& box, const QString& text, const QColor& color, bool bold) {
    painter_.fillRect(box, faded(theme().canvas, 0.85));
    painter_.setFont(textFont(TextSize::small, bold));
    painter_.setPen(color);
    painter_.drawText(box, Qt::AlignCenter, text);
}

// Below and left of the outline, how long and how high it is.
void BracketPainter::paintExtent() {
    QPolygonF outline;
    for (const Eigen::Vector2d& corner : bracket_.plate->corners) {
        outline << place(corner);
    }
    const QRectF extent = outline.boundingRect();
    const double below = extent.bottom() + kDimension;
    const double beside = extent.left() - kDimension;
    painter_.setPen(roundPen(theme().muted, 1));
    painter_.drawLine(QPointF(extent.left(), below), QPointF(extent.right(), below));
    painter_.drawLine(QPointF(beside, extent.top()), QPointF(beside, extent.bottom()));
    for (const double x : {extent.left(), extent.right()}) {
        painter_.drawLine(QPointF(x, below - kTick), QPointF(x, below + kTick));
    }
    for (const double y : {extent.top(), extent.bottom()}) {
        painter_.drawLine(QPointF(beside - kTick, y), QPointF(beside + kTick, y));
    }
    const QString across = length(extent.width() / camera_.scale);
    const QString upright = length(extent.height() / camera_.scale);
    QRectF label(QPointF(), sizeOf(across, false));
    label.moveCenter({extent.center().x(), below});
    paintLabel(label, across, theme().muted, false);
    labels_.take(label);
    label.setSize(sizeOf(upright, false));
    label.moveCenter({beside, extent.center().y()});
    label.moveLeft(std::max(label.left(), box_.left() + 4));
    paintLabel(label, upright, theme().muted, false);
    labels_.take(label);
}

void BracketPainter::paintCorners() {
    for (std::size_t corner = 0; corner < bracket_.plate->corners.size(); ++corner) {
        const QPointF there = place(bracket_.plate->corners[corner]);
        const bool selected = static_cast<int>(corner) == scene_.selectedCorner;
        const bool hovered = static_cast<int>(corner) == scene_.hoveredCorner;
        if (selected && scene_.hasRing) {
            painter_.setPen(roundPen(theme().focus, 2.2));
            painter_.setBrush(Qt::NoBrush);
            painter_.drawEllipse(there, kCorner + 6, kCorner + 6);
        }
        painter_.setPen(roundPen(selected || hovered ? theme().focus : theme().ink, 1.4));
        painter_.setBrush(selected ? theme().focus : theme().card);
        painter_.drawRect(around(there, hovered ? kCorner + 1 : kCorner));
        labels_.take(around(there, kCorner + 1));
        const QString number = QString::number(corner + 1);
        const QRectF label = labels_.place(there, sizeOf(number, selected), kCorner + 1, 1);
        if (!label.isNull()) {
            paintLabel(label, number, selected || hovered ? theme().focus : theme().muted, selected);
        }
    }
}

// One that is there is an empty ring, the bolted one a filled head with a bright center as in the side view,
// a planned one a dashed ring with a cross.
void BracketPainter::paintHole(int hole) {
    const QPointF there = place(hole);
    const double size = radius();
    const QColor ink = isTroubled(hole) ? theme().problem : theme().ink;
    if (hole == scene_.hoveredHole) {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(theme().focus, 0.22));
        painter_.drawEllipse(there, size + 6, size + 6);
    }
    if (at(hole).planned) {
        painter_.setPen(dashedPen(ink, 2, {3, 2}));
        painter_.setBrush(faded(theme().canvas, 0.6));
        painter_.drawEllipse(there, size, size);
        painter_.setPen(roundPen(ink, 1));
        painter_.drawLine(there - QPointF(size + 5, 0), there + QPointF(size + 5, 0));
        painter_.drawLine(there - QPointF(0, size + 5), there + QPointF(0, size + 5));
        return;
    }
    const bool used = bracket_.use == hole;
    painter_.setPen(roundPen(ink, 1.4));
    painter_.setBrush(used ? ink : theme().canvas);
    painter_.drawEllipse(there, size, size);
    if (used) {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(theme().card);
        painter_.drawEllipse(there, 0.45 * size, 0.45 * size);
    }
}

void BracketPainter::paintName(int hole) {
    const bool troubled = isTroubled(hole);
    const bool strong = hole == scene_.hoveredHole || at(hole).planned;
    QString text = (troubled ? QStringLiteral("▲ ") : QString()) + holeName(bracket_, hole);
    text = QFontMetricsF(textFont(TextSize::small, strong)).elidedText(text, Qt::ElideRight, 150);
    const QRectF label = labels_.place(place(hole), sizeOf(text, strong), radius() + 3, 0);
    if (!label.isNull()) {
        paintLabel(label, text, troubled ? theme().problem : theme().ink, strong);
    }
}

void BracketPainter::paintEdgeDistance(int hole) {
    const EdgeRoom room = edgeRoom(bracket_.plate->corners, inSideView(at(hole).at));
    const QPointF from = place(hole);
    const QPointF to = place(room.nearest);
    const QPointF along = unit(to - from);
    const QPointF across(-along.y(), along.x());
    painter_.setPen(roundPen(theme().focus, 1.2));
    painter_.drawLine(from, to);
    painter_.drawLine(to - kTick * across, to + kTick * across);
    const QString text = length(room.distance);
    const double degrees = std::atan2(-along.y(), along.x()) * 180 / std::numbers::pi;
    const int direction = (static_cast<int>(std::lround(degrees / 45)) + 8) % 8;
    const QRectF label = labels_.place(to, sizeOf(text, false), 5, direction);
    if (!label.isNull()) {
        paintLabel(label, text, theme().focus, false);
    }
}

void BracketPainter::paintWords() {
    painter_.setFont(textFont(TextSize::small));
    painter_.setPen(theme().muted);
    const QRectF inset = box_.adjusted(10, 6, -10, -6);
    painter_.drawText(inset, Qt::AlignTop | Qt::AlignLeft, BracketPicture::tr("↑ up"));
    painter_.drawText(inset, Qt::AlignBottom | Qt::AlignRight, BracketPicture::tr("front →"));
    if (bracket_.plate) {
        painter_.drawText(
            inset, Qt::AlignTop | Qt::AlignRight,
            BracketPicture::tr("hatched: nearer the edge than %1").arg(length(bracket_.plate->edgeDistance)));
    }
    if (!scene_.refusal.isEmpty()) {
        painter_.setPen(theme().problem);
        painter_.drawText(inset, Qt::AlignBottom | Qt::AlignLeft, QStringLiteral("▲ ") + scene_.refusal);
    }
}

}  // namespace

void paintBracket(QPainter& painter, const QRectF& box, const BracketScene& scene, const SideCamera& camera) {
    BracketPainter(painter, box, scene, camera).paint();
}

}  // namespace bolthole
