// Places the names of holes beside them, tied by leader lines, so that nothing covers anything.
#pragma once

#include <QLineF>
#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <vector>

namespace bolthole {

/// Where labels of one bracket came to stand: a box each, in the order given, and the line from its hole.
struct LeaderBlock {
    std::vector<QRectF> boxes;
    std::vector<QLineF> lines;
};

/// Keeps what is taken in one picture. Lengths in mm, y down.
class LeaderPlacer {
  public:
    explicit LeaderPlacer(QRectF picture) : picture_(picture) {}

    /// Marks a box, or a line of a width, as not to be covered.
    void take(const QRectF& box) { taken_.push_back(box); }
    void take(const QLineF& line, double width);
    /// Marks a circle's outline as better not covered.
    void takeOutline(QPointF center, double radius) { outlines_.push_back({center, radius}); }

    /// Puts the labels of a bracket's holes in a column beside them, in the holes' order of height, at least
    /// `spacing` apart, and takes the place: where the least is covered, near rather than far, to the right
    /// rather than the left if `preferRight`.
    [[nodiscard]] LeaderBlock place(const std::vector<QPointF>& holes, const std::vector<QSizeF>& labels,
                                    double holeRadius, double spacing, bool preferRight);
    /// Puts one label near a point without a leader; null where everything near is taken.
    [[nodiscard]] QRectF placeNear(QPointF point, QSizeF label);

  private:
    [[nodiscard]] double costOf(const LeaderBlock& block) const;
    [[nodiscard]] double costOf(const QRectF& box) const;

    QRectF picture_;
    std::vector<QRectF> taken_;
    struct Circle {
        QPointF center;
        double radius = 0;
    };
    std::vector<Circle> outlines_;
};

}  // namespace bolthole
