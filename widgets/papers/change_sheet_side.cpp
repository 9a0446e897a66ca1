#include "widgets/papers/change_sheet_side.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/combinations/hole_combination.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/change_sheet_blocks.h"
#include "widgets/papers/side_scales.h"
#include "widgets/papers/wall_chart_leaders.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

using sheet_type::kStrong;
using sheet_type::kText;

constexpr double kHoleRadius = 1.1;  // mm on paper
constexpr double kRingRadius = 1.8;  // around the hole bolted before
constexpr double kSame = 0.35;       // mm on paper: nearer than this is drawn once
constexpr double kUnder = 7.5;       // mm under the ground line, for the key
constexpr double kBefore = 0.5;      // pens, mm
constexpr double kAfter = 1.1;
constexpr double kThinBefore = 0.3;
constexpr double kThinAfter = 0.45;

/// One car as it stands at ride.
struct Standing {
    const Car* car = nullptr;
    AxlePose pose;
    const Station* ride = nullptr;  // null: can't be assembled
    std::vector<int> partners;

    Standing(const Car& of, const Trace& trace) : car(&of), partners(mirrorPartners(of)) {
        pose.z = of.rearTireRadius;
        if (trace.assembly.usable()) {
            pose = trace.ride.pose;
            ride = &trace.ride;
        }
    }

    // The right one of a mirrored pair lies behind the left one.
    [[nodiscard]] bool isDrawn(std::size_t link) const {
        return partners[link] < 0 || partners[link] > static_cast<int>(link);
    }
    [[nodiscard]] Eigen::Vector3d carried(const Eigen::Vector3d& measured) const {
        return pose.carry(measured - Eigen::Vector3d(0, 0, car->rearTireRadius));
    }
    [[nodiscard]] Eigen::Vector3d at(std::size_t link, End end, std::size_t hole) const {
        const Eigen::Vector3d& measured = car->links[link].bracket(end).holes[hole].at;
        return end == End::axle ? carried(measured) : measured;
    }
    [[nodiscard]] Eigen::Vector3d inUse(std::size_t link, End end) const {
        return at(link, end, static_cast<std::size_t>(car->links[link].bracket(end).use));
    }
};

/// One bracket of the after with its holes on paper, and the one bolted before if it is another.
struct SideBracket {
    std::size_t link = 0;
    End end = End::chassis;
    std::vector<QPointF> holes;
    std::size_t after = 0;
    int before = -1;
};

class SideDrawer {
  public:
    SideDrawer(QPainter& painter, const QRectF& area, const PrintFonts& fonts, const Comparison& comparison)
        : painter_(painter),
          area_(area),
          fonts_(fonts),
          comparison_(comparison),
          before_(comparison.beforeCar, comparison.before),
          after_(comparison.afterCar, comparison.after),
          placer_(area) {}

    SheetSide draw() {
        chooseScale();
        drawKey();
        painter_.save();
        painter_.setClipRect(area_);
        drawWheels();
        drawShafts();
        drawLinks();
        painter_.restore();
        gather();
        for (const SideBracket& bracket : brackets_) {
            drawHoles(bracket);
        }
        drawCenters();
        for (const SideBracket& bracket : brackets_) {
            if (bracket.holes.size() > 1 && (bracket.before >= 0 || !isOnOneSpot(bracket))) {
                nameHoles(bracket);
            }
        }
        nameLinks();
        return side_;
    }

  private:
    [[nodiscard]] QPointF onPaper(const Eigen::Vector3d& point) const {
        return onPaper(point.x(), point.z());
    }
    [[nodiscard]] QPointF onPaper(double x, double z) const {
        return origin_ + QPointF(x, -z) * 1000 / side_.scale;
    }
    [[nodiscard]] double paper(double metres) const { return metres * 1000 / side_.scale; }

    // Tires and holes of both cars; x and z, m.
    [[nodiscard]] QRectF carsBox() const {
        double left = 0;
        double right = 0;
        double top = 0;
        for (const Standing* one : {&before_, &after_}) {
            left = std::min(left, one->pose.x - one->car->rearTireRadius);
            right = std::max(right, one->pose.x + one->car->rearTireRadius);
            top = std::max(top, one->pose.z + one->car->rearTireRadius);
            for (std::size_t link = 0; link < one->car->links.size(); ++link) {
                for (const End end : {End::chassis, End::axle}) {
                    for (std::size_t hole = 0; hole < one->car->links[link].bracket(end).holes.size();
                         ++hole) {
                        const Eigen::Vector3d at = one->at(link, end, hole);
                        left = std::min(left, at.x());
                        right = std::max(right, at.x());
                        top = std::max(top, at.z());
                    }
                }
            }
        }
        return {QPointF(left, 0), QPointF(right, top)};
    }

    // The driveshaft, where there is one, may run to the edge but takes no room from the links.
    [[nodiscard]] double shaftEnd() const {
        double end = 0;
        for (const Standing* one : {&before_, &after_}) {
            if (one->car->driveline) {
                end = std::max(end, one->car->driveline->outputJoint.x());
            }
        }
        return end;
    }

    void chooseScale() {
        const QRectF box = carsBox();
        constexpr double kNameRoom = 32;  // room for the names right of the foremost holes
        const auto fits = [&](double scale) {
            return box.width() * 1000 / scale + kNameRoom <= area_.width() &&
                   box.height() * 1000 / scale + kUnder + 1 <= area_.height();
        };
        const auto* const scale = std::ranges::find_if(kPaperScales, fits);
        side_.scale = scale == kPaperScales.end() ? kPaperScales.back() : *scale;
        const double whole = paper(std::max(box.right(), shaftEnd()) - box.left()) + 6;
        const double spare = std::max(0.0, area_.width() - whole);
        ground_ = area_.bottom() - kUnder;
        origin_ = QPointF(area_.left() - paper(box.left()) + std::min(spare / 2, 22.0) + 0.5, ground_);
    }

    [[nodiscard]] bool areBothDrawn(QPointF before, QPointF after) const {
        return QLineF(before, after).length() > kSame;
    }

    // Either pen, before under after; `paint` gets the car and its pen.
    template <class Paint>
    void drawBoth(bool differ, double beforeWidth, double afterWidth, const Paint& paint) {
        painter_.setBrush(Qt::NoBrush);
        if (differ) {
            painter_.setPen(dashedPrintPen(beforeWidth));
            paint(before_);
        }
        painter_.setPen(printPen(afterWidth));
        paint(after_);
    }

    void drawWheels() {
        const QPointF was = onPaper(before_.pose.x, before_.pose.z);
        const QPointF is = onPaper(after_.pose.x, after_.pose.z);
        const bool differ = areBothDrawn(was, is) ||
                            paper(std::abs(before_.car->rearTireRadius - after_.car->rearTireRadius)) > kSame;
        drawBoth(differ, kThinBefore, kThinAfter, [&](const Standing& one) {
            const QPointF center = onPaper(one.pose.x, one.pose.z);
            for (const double radius : {paper(one.car->rearTireRadius), paper(kHousingRadius)}) {
                painter_.drawEllipse(center, radius, radius);
                placer_.takeOutline(center, radius);
            }
        });
        painter_.setPen(printPen(0.3));
        painter_.drawLine(is - QPointF(1.5, 0), is + QPointF(1.5, 0));
        painter_.drawLine(is - QPointF(0, 1.5), is + QPointF(0, 1.5));
        placer_.take(QRectF(is - QPointF(1.7, 1.7), QSizeF(3.4, 3.4)));
    }

    void drawShafts() {
        const auto lineOf = [&](const Standing& one) {
            return QLineF(onPaper(one.carried(one.car->driveline->pinionJoint)),
                          onPaper(one.car->driveline->outputJoint));
        };
        const bool both = before_.car->driveline && after_.car->driveline;
        const bool differ = !both || areBothDrawn(lineOf(before_).p1(), lineOf(after_).p1()) ||
                            areBothDrawn(lineOf(before_).p2(), lineOf(after_).p2());
        drawBoth(differ, kThinBefore, kThinAfter, [&](const Standing& one) {
            if (one.car->driveline) {
                const QLineF line = lineOf(one);
                const double pinion = one.car->driveline->pinionAngle - one.pose.pitch;
                const QPointF back = line.p1() - QPointF(std::cos(pinion), -std::sin(pinion)) * paper(0.16);
                painter_.drawPolyline(QPolygonF{back, line.p1(), line.p2()});
                placer_.take(line, 1.2);
                placer_.take(QLineF(back, line.p1()), 1.2);
                shaft_ = line;
            }
        });
        if (shaft_) {
            painter_.setPen(printPen(0.35));
            painter_.setBrush(Qt::white);
            for (const QPointF& joint : {shaft_->p1(), shaft_->p2()}) {
                painter_.drawRect(QRectF(joint - QPointF(0.9, 0.9), QSizeF(1.8, 1.8)));
                placer_.take(QRectF(joint - QPointF(1.1, 1.1), QSizeF(2.2, 2.2)));
            }
        }
    }

    [[nodiscard]] QLineF linkLine(const Standing& one, std::size_t link) const {
        return {onPaper(one.inUse(link, End::axle)), onPaper(one.inUse(link, End::chassis))};
    }

    // Whether some link of the after lies where this one of the baseline does.
    [[nodiscard]] bool isAlike(const QLineF& line) const {
        for (std::size_t link = 0; link < after_.car->links.size(); ++link) {
            const QLineF other = linkLine(after_, link);
            if (!areBothDrawn(line.p1(), other.p1()) && !areBothDrawn(line.p2(), other.p2())) {
                return true;
            }
        }
        return false;
    }

    void drawLink(const QLineF& line, const QPen& pen) {
        if (line.length() > 0.1) {
            painter_.setPen(pen);
            painter_.drawLine(line);
            placer_.take(line, 1.8);
        }
    }

    void drawLinks() {
        for (std::size_t link = 0; link < after_.car->links.size(); ++link) {
            if (after_.isDrawn(link)) {
                drawLink(linkLine(after_, link), printPen(kAfter));
            }
        }
        for (std::size_t link = 0; link < before_.car->links.size(); ++link) {
            const QLineF line = linkLine(before_, link);
            if (before_.isDrawn(link) && !isAlike(line)) {
                drawLink(line, dashedPrintPen(kBefore));
            }
        }
    }

    void gather() {
        for (std::size_t link = 0; link < after_.car->links.size(); ++link) {
            for (const End end : {End::chassis, End::axle}) {
                const Bracket& bracket = after_.car->links[link].bracket(end);
                SideBracket one{link, end, {}, static_cast<std::size_t>(bracket.use), formerHole(link, end)};
                for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
                    one.holes.push_back(onPaper(after_.at(link, end, hole)));
                }
                if (after_.isDrawn(link)) {
                    brackets_.push_back(std::move(one));
                }
            }
        }
    }

    // The hole of the after's bracket that has the name of the one bolted before; -1: it is the same, or
    // there is none.
    [[nodiscard]] int formerHole(std::size_t link, End end) const {
        const Bracket& bracket = after_.car->links[link].bracket(end);
        for (const BoltMove& move : comparison_.bolts) {
            if (move.link.after != static_cast<int>(link) || move.end != end || move.from == move.to) {
                continue;
            }
            for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
                Bracket named = bracket;
                named.use = static_cast<int>(hole);
                if (nameOfHoleInUse(named) == move.from) {
                    return static_cast<int>(hole);
                }
            }
        }
        return -1;
    }

    void drawHoles(const SideBracket& bracket) {
        for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
            const QPointF& at = bracket.holes[hole];
            const bool isFormer = static_cast<int>(hole) == bracket.before;
            painter_.setPen(printPen(0.35));
            painter_.setBrush(hole == bracket.after ? Qt::black : Qt::white);
            painter_.drawEllipse(at, kHoleRadius, kHoleRadius);
            if (isFormer) {
                painter_.setBrush(Qt::NoBrush);
                painter_.drawEllipse(at, kRingRadius, kRingRadius);
            }
            const double reach = (isFormer ? kRingRadius : kHoleRadius) + 0.3;
            placer_.take(QRectF(at - QPointF(reach, reach), QSizeF(2 * reach, 2 * reach)));
        }
    }

    // Instant centers that lie in the picture.
    void drawCenters() {
        for (const Standing* one : {&before_, &after_}) {
            if (one->ride == nullptr || std::isnan(one->ride->icCarX)) {
                continue;
            }
            const QPointF at = onPaper(one->ride->icCarX, one->ride->icCarZ);
            const QRectF mark(at - QPointF(2, 2), QSizeF(4, 4));
            const bool isBefore = one == &before_;
            const bool isSame = isBefore && after_.ride != nullptr && !std::isnan(after_.ride->icCarX) &&
                                !areBothDrawn(at, onPaper(after_.ride->icCarX, after_.ride->icCarZ));
            const QRectF room(area_.topLeft(), QPointF(area_.right(), ground_ - 1));
            if (isSame || !room.contains(mark)) {
                continue;
            }
            QPen ring = printPen(isBefore ? 0.35 : 0.5);
            if (isBefore) {
                ring.setDashPattern({3, 2});
            }
            painter_.setPen(ring);
            painter_.setBrush(Qt::NoBrush);
            painter_.drawEllipse(at, 1.5, 1.5);
            painter_.setPen(printPen(0.35));
            painter_.drawLine(at - QPointF(2, 0), at + QPointF(2, 0));
            painter_.drawLine(at - QPointF(0, 2), at + QPointF(0, 2));
            placer_.take(mark);
            centers_.push_back({at, isBefore ? tr("IC before") : tr("IC after")});
        }
    }

    [[nodiscard]] static QString nameOf(const Bracket& bracket, std::size_t hole) {
        const std::string& name = bracket.holes[hole].name;
        return name.empty() ? QString::number(hole + 1) : QString::fromStdString(name);
    }

    // Both ends of a link that runs across the car lie on one spot here.
    [[nodiscard]] bool isOnOneSpot(const SideBracket& bracket) const {
        constexpr double kApart = 6;  // mm
        return linkLine(after_, bracket.link).length() < kApart;
    }

    // Which end a name belongs to, where the names of both stand beside one spot.
    [[nodiscard]] QString endOf(const SideBracket& bracket) const {
        const auto named = std::ranges::count_if(brackets_, [&](const SideBracket& other) {
            return other.link == bracket.link && other.before >= 0;
        });
        return isOnOneSpot(bracket) && named > 1 ? said(endWords(bracket.end)) + ' ' : QString();
    }

    void nameHoles(const SideBracket& bracket) {
        const Bracket& holes = after_.car->links[bracket.link].bracket(bracket.end);
        std::vector<QSizeF> sizes;
        std::vector<std::pair<QString, PrintType>> names;
        for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
            const bool moved = bracket.before >= 0;
            const bool isAfter = hole == bracket.after;
            const PrintType type = isAfter ? kStrong : kText;
            const QString state = !moved                                     ? QString()
                                  : isAfter                                  ? tr(", after")
                                  : static_cast<int>(hole) == bracket.before ? tr(", before")
                                                                             : QString();
            names.emplace_back(
                endOf(bracket) + fonts_.elided(nameOf(holes, hole), type, 0.25 * area_.width()) + state,
                type);
            sizes.emplace_back(fonts_.width(names.back().first, type) + 0.4, 1.5 * type.digits);
        }
        const LeaderBlock block = placer_.place(bracket.holes, sizes, kHoleRadius + 0.2, 1.6 * kText.digits,
                                                bracket.end == End::chassis && !isOnOneSpot(bracket));
        if (std::ranges::any_of(block.boxes, [&](const QRectF& box) { return isCovered(box); })) {
            return;  // no place is left: unnamed rather than unreadable
        }
        for (std::size_t hole = 0; hole < names.size(); ++hole) {
            painter_.setPen(printPen(0.25));
            painter_.drawLine(block.lines[hole]);
            write(block.boxes[hole], names[hole].first, names[hole].second);
        }
    }

    [[nodiscard]] bool isCovered(const QRectF& box) const {
        return !area_.contains(box) ||
               std::ranges::any_of(side_.labels, [&](const QRectF& other) { return other.intersects(box); });
    }

    void write(const QRectF& box, const QString& text, PrintType type) {
        painter_.fillRect(box.adjusted(-0.3, 0.1, 0.3, -0.1), Qt::white);  // lines break for words
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {box.left() + 0.2, box.center().y() + type.digits / 2}, text, type);
        side_.labels.push_back(box);
    }

    void nameNear(QPointF at, const QString& text, PrintType type) {
        const QSizeF size(fonts_.width(text, type) + 0.4, 1.5 * type.digits);
        if (const QRectF box = placer_.placeNear(at, size); !box.isNull() && !isCovered(box)) {
            write(box, text, type);
        }
    }

    void nameLinks() {
        for (std::size_t link = 0; link < after_.car->links.size(); ++link) {
            if (after_.isDrawn(link)) {
                const QString name = linkName(*after_.car, static_cast<int>(link)).toUpper();
                nameNear(linkLine(after_, link).center(), fonts_.elided(name, kStrong, 0.3 * area_.width()),
                         kStrong);
            }
        }
        for (const auto& center : centers_) {
            nameNear(center.first, center.second, kText);
        }
        if (shaft_) {
            const QLineF seen(shaft_->p1(), shaft_->pointAt(std::min(1.0, (area_.right() - shaft_->x1()) /
                                                                              std::max(shaft_->dx(), 1.0))));
            nameNear(seen.pointAt(0.7), tr("driveshaft"), kText);
        }
    }

    // Under the ground: the scale, what is what, and which way is forward.
    void drawKey() {
        painter_.setPen(QPen(Qt::black, 0.6, Qt::SolidLine, Qt::FlatCap));
        painter_.drawLine(QPointF(area_.left(), ground_), QPointF(area_.right(), ground_));
        placer_.take(QRectF(area_.left(), ground_ - 0.5, area_.width(), kUnder + 1));
        const double base = ground_ + 2.3 * kText.digits;
        const double middle = base - kText.digits / 2;
        double x = area_.left();
        const auto say = [&](const QString& text) {
            painter_.setPen(Qt::black);
            fonts_.draw(painter_, {x, base}, text, kText);
            x += fonts_.width(text, kText) + 5;
        };
        say(tr("to scale, 1 : ") + QString::number(side_.scale));
        const auto stroke = [&](const QPen& pen) {
            painter_.setPen(pen);
            painter_.drawLine(QPointF(x, middle), QPointF(x + 10, middle));
            x += 11.5;
        };
        stroke(dashedPrintPen(kBefore));
        say(tr("before"));
        stroke(printPen(kAfter));
        say(tr("after"));
        const auto hole = [&](const QColor& fill, bool hasRing) {
            painter_.setPen(printPen(0.35));
            painter_.setBrush(fill);
            painter_.drawEllipse(QPointF(x + kRingRadius, middle), kHoleRadius, kHoleRadius);
            if (hasRing) {
                painter_.setBrush(Qt::NoBrush);
                painter_.drawEllipse(QPointF(x + kRingRadius, middle), kRingRadius, kRingRadius);
            }
            x += 2 * kRingRadius + 1.5;
        };
        hole(Qt::white, true);
        say(tr("bolted before"));
        hole(Qt::black, false);
        say(tr("bolted after"));
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {area_.right(), base}, tr("front \u2192"), kText, Qt::AlignRight);
    }

    QPainter& painter_;
    QRectF area_;
    const PrintFonts& fonts_;
    const Comparison& comparison_;
    Standing before_;
    Standing after_;
    SheetSide side_;
    QPointF origin_;  // the car frame's, on paper
    double ground_ = 0;
    LeaderPlacer placer_;
    std::vector<SideBracket> brackets_;
    std::vector<std::pair<QPointF, QString>> centers_;
    std::optional<QLineF> shaft_;
};

}  // namespace

SheetSide drawSheetSide(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                        const Comparison& comparison) {
    painter.save();
    SheetSide side = SideDrawer(painter, area, fonts, comparison).draw();
    painter.restore();
    return side;
}

}  // namespace bolthole
