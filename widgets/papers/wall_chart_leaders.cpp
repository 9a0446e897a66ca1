#include "widgets/papers/wall_chart_leaders.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

namespace bolthole {

namespace {

// What covering costs, against 1 for a leader line that runs over something for a mm. A label never covers
// another thing while any place is free.
constexpr double kCovered = 100;
constexpr double kFarOutside = 1000;
constexpr double kOutline = 8;
constexpr double kPerMillimetre = 0.05;  // the farther, the worse

std::vector<QRectF> samplesOf(const QLineF& line, double width) {
    std::vector<QRectF> boxes;
    const int count = std::max(1, static_cast<int>(std::ceil(line.length() / std::max(width, 0.5))));
    for (int step = 0; step <= count; ++step) {
        const QPointF point = line.pointAt(static_cast<double>(step) / count);
        boxes.emplace_back(point.x() - width / 2, point.y() - width / 2, width, width);
    }
    return boxes;
}

// QRectF::intersects() minds negative sizes; there are none here, and thousands of questions.
bool overlaps(const QRectF& one, const QRectF& other) {
    return one.left() < other.right() && other.left() < one.right() && one.top() < other.bottom() &&
           other.top() < one.bottom();
}

// Whether a circle's outline runs through a box: its nearest point lies inside the circle, its farthest
// outside.
bool crosses(const QRectF& box, QPointF center, double radius) {
    const double left = box.left() - center.x();
    const double right = box.right() - center.x();
    const double top = box.top() - center.y();
    const double bottom = box.bottom() - center.y();
    const double nearest = std::hypot(std::clamp(0.0, left, right), std::clamp(0.0, top, bottom));
    const double farthest =
        std::hypot(std::max(std::abs(left), std::abs(right)), std::max(std::abs(top), std::abs(bottom)));
    return nearest < radius && radius < farthest;
}

// Heights of the labels: those of their holes, pushed apart around their middle.
std::vector<double> spread(const std::vector<double>& heights, double spacing) {
    std::vector<double> places = heights;
    for (std::size_t i = 1; i < places.size(); ++i) {
        places[i] = std::max(places[i], places[i - 1] + spacing);
    }
    const auto mean = [](const std::vector<double>& values) {
        return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
    };
    const double shift = mean(heights) - mean(places);
    for (double& place : places) {
        place += shift;
    }
    return places;
}

// The labels of one bracket in a column that can be moved about. Keeps references.
class LabelColumn {
  public:
    LabelColumn(const std::vector<QPointF>& holes, const std::vector<QSizeF>& labels, double holeRadius,
                double spacing)
        : holes_(holes), labels_(labels), holeRadius_(holeRadius), order_(holes.size()) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::ranges::stable_sort(order_, {}, [&](std::size_t i) { return holes[i].y(); });
        std::vector<double> heights;
        for (const std::size_t i : order_) {
            heights.push_back(holes[i].y());
        }
        places_ = spread(heights, spacing);
        const auto across = [](QPointF hole) { return hole.x(); };
        left_ = std::ranges::min(holes, {}, across).x();
        right_ = std::ranges::max(holes, {}, across).x();
    }

    /// `out` beside the outermost hole, `down` from where the holes are.
    [[nodiscard]] LeaderBlock at(bool onRight, double out, double down) const {
        LeaderBlock block{std::vector<QRectF>(holes_.size()), std::vector<QLineF>(holes_.size())};
        for (std::size_t at = 0; at < order_.size(); ++at) {
            const std::size_t i = order_[at];
            const double y = places_[at] + down;
            const double x = onRight ? right_ + out : left_ - out - labels_[i].width();
            block.boxes[i] = QRectF(QPointF(x, y - labels_[i].height() / 2), labels_[i]);
            QLineF line(holes_[i], QPointF(onRight ? x - kShort : x + labels_[i].width() + kShort, y));
            line.setP1(line.pointAt(std::min(1.0, holeRadius_ / std::max(line.length(), holeRadius_))));
            block.lines[i] = line;
        }
        return block;
    }

  private:
    static constexpr double kShort = 0.8;  // of the label, mm

    const std::vector<QPointF>& holes_;
    const std::vector<QSizeF>& labels_;
    double holeRadius_;
    std::vector<std::size_t> order_;  // from the highest hole down
    std::vector<double> places_;
    double left_ = 0;
    double right_ = 0;
};

}  // namespace

void LeaderPlacer::take(const QLineF& line, double width) {
    const std::vector<QRectF> boxes = samplesOf(line, width);
    taken_.insert(taken_.end(), boxes.begin(), boxes.end());
}

double LeaderPlacer::costOf(const QRectF& box) const {
    double cost = picture_.contains(box) ? 0 : kFarOutside;
    for (const QRectF& other : taken_) {
        cost += overlaps(box, other) ? kCovered : 0;
    }
    for (const Circle& circle : outlines_) {
        cost += crosses(box, circle.center, circle.radius) ? kOutline : 0;
    }
    return cost;
}

double LeaderPlacer::costOf(const LeaderBlock& block) const {
    double cost = 0;
    for (const QRectF& box : block.boxes) {
        cost += costOf(box);
    }
    for (const QLineF& line : block.lines) {
        for (const QRectF& sample : samplesOf(line, 1.0)) {
            cost += std::ranges::any_of(taken_, [&](const QRectF& other) { return overlaps(other, sample); })
                        ? 1
                        : 0;
        }
    }
    return cost;
}

LeaderBlock LeaderPlacer::place(const std::vector<QPointF>& holes, const std::vector<QSizeF>& labels,
                                double holeRadius, double spacing, bool preferRight) {
    const LabelColumn column(holes, labels, holeRadius, spacing);
    LeaderBlock best;
    double least = std::numeric_limits<double>::infinity();
    for (const bool onRight : {preferRight, !preferRight}) {
        for (const double out : {5.0, 8.0, 12.0, 17.0, 23.0, 30.0, 40.0}) {
            for (const double down : {0.0, -3.0, 3.0, -6.0, 6.0, -10.0, 10.0, -15.0, 15.0, -21.0, 21.0}) {
                LeaderBlock block = column.at(onRight, out, down);
                const double cost = costOf(block) + kPerMillimetre * (out + 1.5 * std::abs(down)) +
                                    (onRight == preferRight ? 0 : 1);
                if (cost < least) {
                    least = cost;
                    best = std::move(block);
                }
            }
        }
    }
    for (std::size_t i = 0; i < best.boxes.size(); ++i) {
        take(best.boxes[i]);
        take(best.lines[i], 0.6);
    }
    return best;
}

QRectF LeaderPlacer::placeNear(QPointF point, QSizeF label) {
    QRectF best;
    double least = kCovered;
    for (const double out : {1.5, 3.0, 5.0, 8.0, 12.0, 16.0}) {
        for (int turn = 0; turn < 16; ++turn) {
            const double angle =
                std::numbers::pi * (turn % 2 == 0 ? turn : -turn - 1) / 16 - std::numbers::pi / 2;
            const QPointF center = point + QPointF(std::cos(angle) * (out + label.width() / 2),
                                                   std::sin(angle) * (out + label.height() / 2));
            const QRectF box(center - QPointF(label.width() / 2, label.height() / 2), label);
            const double cost = costOf(box) + 0.5 * out;
            if (cost < least) {
                least = cost;
                best = box;
            }
        }
    }
    if (!best.isNull()) {
        take(best);
    }
    return best;
}

}  // namespace bolthole
