// The rear of a car from its left side and from behind, for the measuring sheet.
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/sheets/measuring_views.h"
#include "widgets/papers/side_scales.h"
#include "widgets/papers/wall_chart_leaders.h"

namespace bolthole {

namespace {

using kit_type::kSmall;
using kit_type::kStrong;

constexpr double kHoleMark = 1.05;   // radius of a hole on paper
constexpr double kUnderGround = 13;  // room for the way forward
constexpr double kBeside = 19;       // room for the way up
constexpr double kBubbleRoom = 17;   // on the other side
constexpr double kWords = 6;         // above
constexpr double kLeastArrow = 9;    // a dimension shorter than this is drawn outward
constexpr double kTireWidth = 0.24;  // m; for drawing only

/// What both views share: a scale, what is taken, and the numbers.
class PointsDrawer {
  public:
    PointsDrawer(QPainter& painter, const QRectF& box, const PrintFonts& fonts)
        : painter_(painter), box_(box), fonts_(fonts), placer_(box) {}

    /// Maps m, car frame, to paper.
    using Projection = std::function<QPointF(const Eigen::Vector3d&)>;

    void lines(const PlanArea& area, const Projection& onPaper, bool endOn) {
        for (const PlanLine& line : area.lines) {
            const QLineF drawn(onPaper(line.from), onPaper(line.to));
            painter_.setPen(kitPen(line.isThick && line.isEndOn == endOn ? 1.2 : 0.35));
            painter_.drawLine(drawn);
            placer_.take(drawn, 1.8);
        }
    }

    void points(const PlanArea& area, const Projection& onPaper, bool endOn) {
        std::map<int, std::vector<const PlanPoint*>> groups;
        for (const PlanPoint& point : area.points) {
            const QPointF at = onPaper(point.at);
            painter_.setPen(kitPen(0.4));
            painter_.setBrush(Qt::white);
            painter_.drawEllipse(at, kHoleMark, kHoleMark);
            painter_.setBrush(Qt::NoBrush);
            const double reach = kHoleMark + 0.4;
            placer_.take(QRectF(at - QPointF(reach, reach), QSizeF(2 * reach, 2 * reach)));
            if (point.isEndOn == endOn && point.isNumbered) {
                groups[point.group].push_back(&point);
            }
        }
        for (const auto& [group, members] : groups) {
            number(members, onPaper);
        }
        for (const auto& [center, sign] : bubbles_) {  // over all leaders
            drawBubble(painter_, center, sign, fonts_);
        }
    }

    /// A dimension line with its word beside the middle.
    void way(QPointF from, QPointF to, const QString& word) {
        const bool isUpright = std::abs(to.y() - from.y()) > std::abs(to.x() - from.x());
        drawArrow(painter_, from, to);
        const double width = fonts_.width(word, kStrong);
        const QPointF middle = (from + to) / 2;
        const bool fits = QLineF(from, to).length() > width + 8;
        QPointF at = isUpright ? QPointF(middle.x() + 1.5, middle.y() + kStrong.digits / 2)
                               : QPointF(middle.x() - width / 2, middle.y() + 1.75 * kStrong.digits);
        if (!isUpright && !fits) {
            at = {std::max(from.x(), to.x()) + 1.5, middle.y() + kStrong.digits / 2};
        }
        const QRectF taken(at.x(), at.y() - 1.4 * kStrong.digits, width, 2 * kStrong.digits);
        painter_.fillRect(taken, Qt::white);  // lines break for words
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, at, word, kStrong);
        placer_.take(taken);
        placer_.take(QLineF(from, to), 2);
    }

    /// The sense of a way too short to be drawn, to the right.
    void outward(QPointF from, const QString& word) {
        const QPointF to = from + QPointF(kLeastArrow, 0);
        drawArrow(painter_, from, to, false);
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, to + QPointF(1.5, kStrong.digits / 2), word, kStrong);
    }

    void dashed(QPointF from, QPointF to) {
        painter_.setPen(kitDashes());
        painter_.drawLine(from, to);
        placer_.take(QLineF(from, to), 0.8);
    }

    QPainter& painter_;
    QRectF box_;
    const PrintFonts& fonts_;
    LeaderPlacer placer_;
    MeasuringMarks marks_;

  private:
    std::vector<std::pair<QPointF, QString>> bubbles_;

    void number(const std::vector<const PlanPoint*>& points, const Projection& onPaper) {
        std::vector<QPointF> holes;
        std::ranges::transform(points, std::back_inserter(holes),
                               [&](const PlanPoint* point) { return onPaper(point->at); });
        const std::vector<QSizeF> sizes(holes.size(), QSizeF(2 * kBubble, 2 * kBubble));
        const LeaderBlock block =
            placer_.place(holes, sizes, kHoleMark, 2 * kBubble + 0.6, points.front()->isChassis);
        for (std::size_t at = 0; at < holes.size(); ++at) {
            painter_.setPen(kitPen(kThinnestLine));
            painter_.drawLine(QLineF(block.lines[at].p1(), block.boxes[at].center()));
            bubbles_.emplace_back(block.boxes[at].center(), QString::number(points[at]->number));
            marks_.bubbles.push_back(block.boxes[at]);
            marks_.points.push_back(holes[at]);
            marks_.signs.push_back(QString::number(points[at]->number));
        }
    }
};

/// From the left: front to the right.
class SideSketch : public PointsDrawer {
  public:
    SideSketch(QPainter& painter, const QRectF& box, const PrintFonts& fonts, const Car& car,
               const PlanArea& area)
        : PointsDrawer(painter, box, fonts), car_(car), area_(area) {}

    MeasuringMarks draw() {
        chooseScale();
        words();
        wheel();
        lines(area_, onPaper_, false);
        if (area_.kind == AreaKind::driveline) {
            angleFinders();
        }
        ways();
        points(area_, onPaper_, false);
        return marks_;
    }

  private:
    void chooseScale() {
        double left = -car_.rearTireRadius;
        double right = car_.rearTireRadius;
        double top = 2 * car_.rearTireRadius;
        for (const PlanPoint& point : area_.points) {
            left = std::min(left, point.at.x());
            right = std::max(right, point.at.x());
            top = std::max(top, point.at.z());
        }
        const double widest = box_.width() - kBeside - kBubbleRoom;
        const double highest = box_.height() - kUnderGround - kWords;
        const double scale = std::min(widest / (right - left), highest / top);
        ground_ = box_.bottom() - kUnderGround;
        const double spare = widest - scale * (right - left);
        const QPointF origin(box_.left() + kBubbleRoom + spare / 3 - scale * left, ground_);
        axle_ = origin.x();
        scale_ = scale;
        onPaper_ = [origin, scale](const Eigen::Vector3d& at) {
            return origin + QPointF(at.x(), -at.z()) * scale;
        };
    }

    void words() {
        const QString front = tr("front of the car →");
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {box_.right(), box_.top() + 1.3 * kStrong.digits}, front, kStrong,
                    Qt::AlignRight);
        const double width = fonts_.width(front, kStrong);
        placer_.take(QRectF(box_.right() - width, box_.top(), width, 2 * kStrong.digits));
    }

    void wheel() {
        const QPointF center = onPaper_({0, 0, car_.rearTireRadius});
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(kitPen(0.5));
        painter_.drawEllipse(center, scale_ * car_.rearTireRadius, scale_ * car_.rearTireRadius);
        painter_.setPen(kitPen(kThinnestLine));
        painter_.drawEllipse(center, scale_ * kHousingRadius, scale_ * kHousingRadius);
        painter_.drawLine(center - QPointF(2, 0), center + QPointF(2, 0));
        painter_.drawLine(center - QPointF(0, 2), center + QPointF(0, 2));
        placer_.takeOutline(center, scale_ * car_.rearTireRadius);
        placer_.takeOutline(center, scale_ * kHousingRadius);
        painter_.setPen(kitPen(0.7));
        painter_.drawLine(QPointF(box_.left(), ground_), QPointF(box_.right(), ground_));
        placer_.take(QRectF(box_.left(), ground_ - 0.5, box_.width(), kUnderGround + 0.5));
    }

    // The point the ways are shown at: the one farthest forward that is seen from here.
    [[nodiscard]] const PlanPoint* shown() const {
        const PlanPoint* found = nullptr;
        for (const PlanPoint& point : area_.points) {
            if (!point.isEndOn && (found == nullptr || point.at.x() > found->at.x())) {
                found = &point;
            }
        }
        return found;
    }

    void ways() {
        const PlanPoint* point = shown();
        if (point == nullptr) {
            return;
        }
        const QPointF at = onPaper_(point->at);
        const double under = ground_ + 4.2;
        const double beside = std::min(at.x() + 9, box_.right() - 11);
        dashed(onPaper_({0, 0, car_.rearTireRadius}), {axle_, under + 1.6});
        dashed(at, {at.x(), under + 1.6});
        dashed(at, {beside + 1.6, at.y()});
        if (at.x() - axle_ < kLeastArrow) {
            outward({axle_, under}, tr("forward"));
        } else {
            way({axle_, under}, {at.x(), under}, tr("forward"));
        }
        way({beside, ground_}, {beside, at.y()}, tr("height"));
        painter_.setPen(Qt::black);
        const QString line = tr("plumb line under the axle’s center");
        const double width = fonts_.width(line, kSmall);
        const double left = std::min(box_.left(), axle_ - width - 2);
        fonts_.draw(painter_, {std::max(left, box_.left()), ground_ + kUnderGround - 1}, line, kSmall);
    }

    // On the pinion's yoke and at the transmission's output, along their axes.
    void angleFinders() {
        const Driveline& line = *car_.driveline;
        angleFinder(onPaper_(line.pinionJoint), line.pinionAngle, QStringLiteral("A"), -1);
        angleFinder(onPaper_(line.outputJoint), line.outputAngle, QStringLiteral("B"), 1);
    }

    void angleFinder(QPointF joint, double angle, const QString& letter, double sense) {
        const QPointF along(std::cos(angle), -std::sin(angle));
        const QPointF up(along.y(), -along.x());
        const QPointF foot = joint + sense * 8.5 * along;
        painter_.setPen(kitPen(1.2));
        painter_.drawLine(joint, joint + sense * 15 * along);
        const QPointF half = 3.2 * along;
        const QPointF base = foot + 1.0 * up;
        painter_.setPen(kitPen(0.4));
        painter_.setBrush(Qt::white);
        painter_.drawPolygon(
            QPolygonF{base - half, base + half, base + half + 6.4 * up, base - half + 6.4 * up});
        painter_.setBrush(Qt::NoBrush);
        const QPointF dial = base + 2.0 * up;
        painter_.drawEllipse(base + 3.2 * up, 2.2, 2.2);
        painter_.drawLine(dial, base + 5.0 * up + 0.8 * along);
        const QPointF mark = base + 3.2 * up + sense * (3.2 + 1.2 + 0.88 * kBubble) * along;
        drawLetter(painter_, mark, letter, fonts_);
        const QRectF taken(mark - QPointF(kBubble, kBubble), QSizeF(2 * kBubble, 2 * kBubble));
        placer_.take(taken);
        placer_.take(QRectF(base - QPointF(3.6, 6.8), QSizeF(7.2, 7.2)));
        placer_.take(QLineF(joint, joint + sense * 15 * along), 1.8);
        marks_.bubbles.push_back(taken);
        marks_.points.push_back(foot);
        marks_.signs.push_back(letter);
    }

    const Car& car_;
    const PlanArea& area_;
    Projection onPaper_;
    double ground_ = 0;
    double axle_ = 0;
    double scale_ = 1;
};

/// From behind: the car's left at the left.
class RearSketch : public PointsDrawer {
  public:
    RearSketch(QPainter& painter, const QRectF& box, const PrintFonts& fonts, const Car& car,
               const PlanArea& area)
        : PointsDrawer(painter, box, fonts), car_(car), area_(area) {}

    MeasuringMarks draw() {
        chooseScale();
        axle();
        lines(area_, onPaper_, true);
        way();
        points(area_, onPaper_, true);
        return marks_;
    }

  private:
    void chooseScale() {
        track_ = drawnTrack(car_.rearTrack, car_);
        const double wide = track_ + kTireWidth;
        double top = 2 * car_.rearTireRadius;
        for (const PlanPoint& point : area_.points) {
            top = std::max(top, point.at.z());
        }
        scale_ = std::min((box_.width() - 2) / wide, (box_.height() - kUnderGround - kWords - 8) / top);
        ground_ = box_.bottom() - kUnderGround;
        const QPointF origin(box_.center().x(), ground_);
        const double scale = scale_;
        onPaper_ = [origin, scale](const Eigen::Vector3d& at) {
            return origin + QPointF(-at.y(), -at.z()) * scale;
        };
    }

    void axle() {
        const double radius = car_.rearTireRadius;
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {box_.center().x(), box_.top() + 1.3 * kStrong.digits}, tr("seen from behind"),
                    kStrong, Qt::AlignHCenter);
        placer_.take(QRectF(box_.left(), box_.top(), box_.width(), 2 * kStrong.digits));
        painter_.setBrush(Qt::NoBrush);
        for (const double side : {-0.5, 0.5}) {
            const QPointF middle = onPaper_({0, side * track_, radius});
            const QPointF half(scale_ * kTireWidth / 2, scale_ * radius);
            painter_.setPen(kitPen(0.5));
            painter_.drawRoundedRect(QRectF(middle - half, middle + half), 1.5, 1.5);
            placer_.take(QRectF(middle - half, middle + half));
        }
        const double inside = track_ / 2 - kTireWidth / 2;
        painter_.setPen(kitPen(kThinnestLine));
        for (const double off : {-0.04, 0.04}) {
            painter_.drawLine(onPaper_({0, inside, radius + off}), onPaper_({0, -inside, radius + off}));
        }
        painter_.drawEllipse(onPaper_({0, 0, radius}), scale_ * kHousingRadius, scale_ * kHousingRadius);
        painter_.setPen(kitPen(0.7));
        painter_.drawLine(QPointF(box_.left(), ground_), QPointF(box_.right(), ground_));
        placer_.take(QRectF(box_.left(), ground_ - 0.5, box_.width(), kUnderGround + 0.5));
    }

    // The point farthest to the left, and how far out it is.
    void way() {
        const QPointF middle(box_.center().x(), ground_);
        dashed({middle.x(), box_.top() + 2.4 * kStrong.digits}, {middle.x(), ground_ + 5.8});
        const auto farthest =
            std::ranges::max_element(area_.points, {}, [](const PlanPoint& p) { return p.at.y(); });
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {box_.left(), ground_ + kUnderGround - 1}, tr("chalked center plane: dashed"),
                    kSmall);
        if (farthest == area_.points.end() || farthest->at.y() * scale_ < 2) {
            return;
        }
        const QPointF at = onPaper_(farthest->at);
        const double under = ground_ + 4.2;
        dashed(at, {at.x(), under + 1.6});
        PointsDrawer::way({middle.x(), under}, {at.x(), under},
                          area_.tables.front().heads[2] == tr("left +") ? tr("left") : tr("out"));
    }

    const Car& car_;
    const PlanArea& area_;
    Projection onPaper_;
    double track_ = 1.5;
    double ground_ = 0;
    double scale_ = 1;
};

}  // namespace

MeasuringMarks drawMeasuringSide(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                 const Car& car, const PlanArea& area) {
    return SideSketch(painter, box, fonts, car, area).draw();
}

MeasuringMarks drawMeasuringRear(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                 const Car& car, const PlanArea& area) {
    return RearSketch(painter, box, fonts, car, area).draw();
}

double drawnTrack(const std::optional<double>& track, const Car& car) {
    return track.value_or(car.rearTrack.value_or(car.frontTrack.value_or(car.wheelbase / 2)));
}

}  // namespace bolthole
