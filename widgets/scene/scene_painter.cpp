#include "widgets/scene/scene_painter.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/scene/scene_places.h"
#include "widgets/scene/scene_things.h"

namespace bolthole {

namespace {

constexpr double kEdge = 4;  // px that labels keep from the picture's edge

// Into the picture, its beginning before its end.
QRectF inside(QRectF box, const QRectF& picture) {
    box.moveRight(std::min(box.right(), picture.right()));
    box.moveLeft(std::max(box.left(), picture.left()));
    box.moveBottom(std::min(box.bottom(), picture.bottom()));
    box.moveTop(std::max(box.top(), picture.top()));
    return box;
}

/// Feeds a label placer, in rows of boxes along lines.
class LabelFeed : public PlaceTaker {
  public:
    explicit LabelFeed(LabelPlacer& placer) : placer_(placer) {}

    void take(const QRectF& box) override { placer_.take(box); }
    void take(const QLineF& line, double width) override {
        constexpr int kMost = 40;
        const int count = std::clamp(static_cast<int>(line.length() / std::max(width, 1.0)), 1, kMost);
        for (int step = 0; step <= count; ++step) {
            const QPointF at = line.pointAt(static_cast<double>(step) / count);
            placer_.take({at.x() - width / 2, at.y() - width / 2, width, width});
        }
    }
    void takeOutline(QPointF, double) override {}
    void takeDisk(QPointF center, double radius) override {
        placer_.take({center.x() - radius, center.y() - radius, 2 * radius, 2 * radius});
    }

  private:
    LabelPlacer& placer_;
};

/// Words and labels of one painting.
class WordPainter {
  public:
    WordPainter(QPainter& painter, const SceneView& view, const SceneStyle& style,
                std::vector<QRectF>* written)
        : painter_(painter),
          view_(view),
          style_(style),
          unit_(style.hole / 4),
          room_(view.picture.adjusted(kEdge * unit_, kEdge * unit_, -kEdge * unit_, -kEdge * unit_)),
          placer_(room_),
          written_(written) {}

    [[nodiscard]] LabelPlacer& placer() { return placer_; }
    void write(const SceneWords& words);
    void write(const SceneDimension& dimension);
    void write(const SceneScaleBar& bar);
    void label(const SceneLabel& label);

  private:
    void keep(const QRectF& box);
    [[nodiscard]] QRectF boxOf(const SceneWords& words, QSizeF size) const;
    [[nodiscard]] QRectF placeOf(const SceneLabel& label, QSizeF size);
    void card(const SceneLabel& label, const QRectF& box);

    QPainter& painter_;
    const SceneView& view_;
    const SceneStyle& style_;
    double unit_;  // a screen's pixel
    QRectF room_;
    LabelPlacer placer_;
    std::vector<QRectF>* written_;
};

void WordPainter::keep(const QRectF& box) {
    placer_.take(box);
    if (written_ != nullptr) {
        written_->push_back(box);
    }
}

// The box of some words of a size, kept inside the picture.
QRectF WordPainter::boxOf(const SceneWords& words, QSizeF size) const {
    const QPointF at = view_.place(words.at);
    const double left = words.lie.testFlag(Qt::AlignLeft)    ? at.x()
                        : words.lie.testFlag(Qt::AlignRight) ? at.x() - size.width()
                                                             : at.x() - size.width() / 2;
    const double top = words.lie.testFlag(Qt::AlignTop)      ? at.y()
                       : words.lie.testFlag(Qt::AlignBottom) ? at.y() - size.height()
                                                             : at.y() - size.height() / 2;
    return inside({QPointF(left, top), size}, view_.picture);
}

void WordPainter::write(const SceneWords& words) {
    const SceneType& type = *style_.type;
    const double wide = view_.picture.width();
    const bool isTooWide = words.wrap == 0 && type.sizeOf(words.text, words.font).width() > wide;
    const QString text = isTooWide ? type.elided(words.text, words.font, wide) : words.text;
    const QSizeF upper = type.sizeOf(text, words.font, words.wrap);
    const QSizeF lower = words.below.isEmpty() ? QSizeF(0, 0) : type.sizeOf(words.below, SceneFont::small);
    const QPointF pad = words.card == nullptr ? QPointF(0, 0) : QPointF(12, 6) * unit_;
    const QSizeF size(std::max(upper.width(), lower.width()), upper.height() + lower.height());
    const QRectF box = boxOf(words, size + QSizeF(2 * pad.x(), 2 * pad.y()));
    if (words.isOptional && !placer_.isFree(box)) {
        return;
    }
    if (words.card != nullptr) {
        painter_.setPen(style_.pen({words.card, SceneWeight::hair, SceneDash::solid, 0.45}));
        painter_.setBrush(style_.fill(words.card, theme().dark ? 0.18 : 0.1));
        painter_.drawRoundedRect(box, 5 * unit_, 5 * unit_);
    }
    const QRectF within(box.topLeft() + pad, size);
    const Qt::Alignment across = words.lie & Qt::AlignHorizontal_Mask;
    painter_.setPen(style_.color(words.ink));
    type.write(painter_, QRectF(within.topLeft(), QSizeF(within.width(), upper.height())),
               across | Qt::AlignTop, text, words.font);
    if (!words.below.isEmpty()) {
        painter_.setPen(style_.color(&Theme::muted));
        type.write(painter_,
                   QRectF(within.left(), within.top() + upper.height(), within.width(), lower.height()),
                   across | Qt::AlignTop, words.below, SceneFont::small);
    }
    keep(box);
}

// On its line, which breaks for it.
void WordPainter::write(const SceneDimension& dimension) {
    if (dimension.words.isEmpty()) {
        return;
    }
    const QSizeF size = style_.type->sizeOf(dimension.words, SceneFont::small) + QSizeF(8, 0) * unit_;
    QRectF box(QPointF(), size);
    box.moveCenter(lineOf(dimension, view_).center());
    box = inside(box, room_);
    painter_.fillRect(box, style_.patch());
    painter_.setPen(style_.color(dimension.stroke.ink));
    style_.type->write(painter_, box, Qt::AlignCenter, dimension.words, SceneFont::small);
    keep(box);
}

void WordPainter::write(const SceneScaleBar& bar) {
    const QSizeF size = style_.type->sizeOf(bar.words, SceneFont::small);
    const QPointF left = lineOf(bar, view_, style_).p1();
    if (left.x() < view_.picture.left()) {
        return;  // the bar itself has no room
    }
    const QRectF box = inside({left - QPointF(size.width() + 8 * unit_, size.height() / 2), size}, room_);
    painter_.setPen(style_.color(&Theme::muted));
    style_.type->write(painter_, box, Qt::AlignCenter, bar.words, SceneFont::small);
    keep(box);
}

QRectF WordPainter::placeOf(const SceneLabel& label, QSizeF size) {
    const QPointF at = view_.place(label.at);
    if (!label.along) {
        return placer_.place(at, size, label.gap * unit_, label.side);
    }
    const QPointF way = view_.place(*label.along) - at;
    for (const double share : {0.1, 0.35, 0.6, 0.9}) {
        const QRectF box = placer_.place(at + share * way, size, label.gap * unit_, label.side);
        if (!box.isNull()) {
            return box;
        }
    }
    return {};
}

void WordPainter::label(const SceneLabel& label) {
    const SceneType& type = *style_.type;
    const QString text =
        label.widest > 0 ? type.elided(label.text, label.font, label.widest * unit_) : label.text;
    const bool isCard = !label.title.isEmpty();
    QSizeF size = type.sizeOf(text, label.font) + QSizeF(8, 2) * unit_;
    if (isCard) {
        const QSizeF title = type.sizeOf(label.title, SceneFont::small);
        size = {std::max(size.width() - 8 * unit_, title.width()) + 18 * unit_,
                size.height() + title.height() + 8 * unit_};
    }
    QRectF box = placeOf(label, size);
    if (box.isNull()) {
        if (!label.mustStand) {
            return;
        }
        const QPointF at = view_.place(label.at) + QPointF(label.gap * unit_, -size.height() / 2);
        box = inside({at, size}, room_);
        placer_.take(box);
    }
    if (written_ != nullptr) {
        written_->push_back(box);
    }
    card(label, box);
    painter_.setPen(style_.color(label.ink));
    if (isCard) {
        const QRectF within = box.adjusted(9 * unit_, 5 * unit_, -9 * unit_, -5 * unit_);
        type.write(painter_, within, Qt::AlignLeft | Qt::AlignBottom, text, label.font);
        painter_.setPen(style_.color(&Theme::muted));
        type.write(painter_, within, Qt::AlignLeft | Qt::AlignTop, label.title, SceneFont::small);
    } else {
        type.write(painter_, box, Qt::AlignCenter, text, label.font);
    }
}

void WordPainter::card(const SceneLabel& label, const QRectF& box) {
    const double corner = 3 * unit_;
    const bool isOnCard = label.edge != nullptr || !label.title.isEmpty();
    painter_.setPen(isOnCard
                        ? style_.pen({label.edge == nullptr ? &Theme::border : label.edge, SceneWeight::hair})
                        : QPen(Qt::NoPen));
    painter_.setBrush(isOnCard ? style_.fill(&Theme::card) : QBrush(style_.patch()));
    painter_.drawRoundedRect(box, corner, corner);
    painter_.setBrush(Qt::NoBrush);
}

}  // namespace

void paintSceneGround(QPainter& painter, const SceneView& view, const SceneStyle& style) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.fill(style.ground));
    painter.drawRoundedRect(view.picture, 5, 5);
    painter.setBrush(Qt::NoBrush);
}

void paintThings(QPainter& painter, const Scene& scene, const SceneView& view, const SceneStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(view.picture, Qt::IntersectClip);
    ThingPainter things(painter, scene, view, style);
    for (const SceneItem& item : scene.items) {
        things.draw(item);
    }
    painter.restore();
}

void paintScene(QPainter& painter, const Scene& scene, const SceneView& view, const SceneStyle& style,
                std::vector<QRectF>* written) {
    if (written != nullptr) {
        written->clear();
    }
    paintThings(painter, scene, view, style);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    WordPainter words(painter, view, style, written);
    for (const SceneWords& each : scene.words) {
        words.write(each);
    }
    for (const SceneItem& item : scene.items) {
        if (const auto* dimension = std::get_if<SceneDimension>(&item.shape)) {
            words.write(*dimension);
        } else if (const auto* bar = std::get_if<SceneScaleBar>(&item.shape)) {
            words.write(*bar);
        }
    }
    LabelFeed feed(words.placer());
    takePlaces(scene, view, style, feed);
    for (const SceneLabel& each : scene.labels) {
        words.label(each);
    }
    painter.restore();
}

}  // namespace bolthole
