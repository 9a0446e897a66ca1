// Scenes on the papers: their type, and how the leaders' placer is told what they cover.
#pragma once

#include "widgets/papers/kit/print_type.h"
#include "widgets/papers/wall_chart_leaders.h"
#include "widgets/scene/scene_places.h"

namespace bolthole {

/// The papers' fonts as a scene's type, mm. The fonts must outlive it.
class PaperType : public SceneType {
  public:
    explicit PaperType(const PrintFonts& fonts) : fonts_(fonts) {}

    [[nodiscard]] QSizeF sizeOf(const QString& text, SceneFont font, double wrap) const override;
    void write(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text,
               SceneFont font) const override;
    [[nodiscard]] QString elided(const QString& text, SceneFont font, double widest) const override;

  private:
    const PrintFonts& fonts_;
};

/// Keeps leaders and their names off a scene's things. The placer must outlive it.
class LeaderFeed : public PlaceTaker {
  public:
    explicit LeaderFeed(LeaderPlacer& placer) : placer_(placer) {}

    void take(const QRectF& box) override { placer_.take(box); }
    void take(const QLineF& line, double width) override { placer_.take(line, width); }
    void takeOutline(QPointF center, double radius) override { placer_.takeOutline(center, radius); }
    void takeDisk(QPointF center, double radius) override { placer_.takeOutline(center, radius); }

  private:
    LeaderPlacer& placer_;
};

}  // namespace bolthole
