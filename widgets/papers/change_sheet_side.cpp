#include "widgets/papers/change_sheet_side.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/combinations/hole_combination.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/change_sheet_blocks.h"
#include "widgets/papers/paper_scene.h"
#include "widgets/papers/side_scales.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/scene/scene_things.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

using sheet_type::kStrong;
using sheet_type::kText;

constexpr double kHoleRadius = 1.1;  // mm on paper
constexpr double kRingRadius = kFormerRing * kHoleRadius;
constexpr double kCenter = 1.2;  // of an instant center's mark
constexpr double kSame = 0.35;   // mm on paper: nearer than this is drawn once
constexpr double kUnder = 7.5;   // mm under the ground line, for the key
constexpr double kAfter = 1.1;
constexpr SceneMarks kWas{.ghost = &Theme::baseline};

QPointF flat(const Eigen::Vector3d& point) {
    return {point.x(), point.z()};
}

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

class SheetSideDrawer {
  public:
    SheetSideDrawer(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                    const Comparison& comparison)
        : painter_(painter),
          area_(area),
          fonts_(fonts),
          comparison_(comparison),
          before_(comparison.beforeCar, comparison.before),
          after_(comparison.afterCar, comparison.after),
          type_(fonts),
          style_(SceneStyle::print(type_)),
          placer_(area) {
        style_.link = kAfter;
        style_.hole = kHoleRadius;
        style_.center = kCenter;
    }

    SheetSide draw() {
        chooseScale();
        drawKey();
        gather();
        drawThings();
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
    [[nodiscard]] QPointF onPaper(QPointF point) const { return onPaper(point.x(), point.y()); }
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

    // What stands elsewhere in the car before is a ghost: dashed, under the car after.
    void drawThings() {
        Scene scene;
        addWheels(scene);
        addShafts(scene);
        addLinks(scene);
        for (const SideBracket& bracket : brackets_) {
            addHoles(scene, bracket);
        }
        addCenters(scene);
        const SceneView view{{1000 / side_.scale, origin_}, area_};
        paintThings(painter_, scene, view, style_);
        LeaderFeed feed(placer_);
        takePlaces(scene, view, style_, feed);
    }

    void addWheels(Scene& scene) {
        const auto center = [](const Standing& one) { return QPointF(one.pose.x, one.pose.z); };
        scene.add(SceneHousing{.center = center(after_), .radius = kHousingRadius});
        const double grown = before_.car->rearTireRadius - after_.car->rearTireRadius;
        if (areBothDrawn(onPaper(center(before_)), onPaper(center(after_))) ||
            paper(std::abs(grown)) > kSame) {
            for (const double radius : {before_.car->rearTireRadius, kHousingRadius}) {
                scene.add(SceneWheel{.center = center(before_), .radius = radius}, -1, kWas);
            }
        }
        scene.add(SceneWheel{.center = center(after_), .radius = after_.car->rearTireRadius});
    }

    // From behind the pinion's joint, where the pinion points, to the joint of the transmission.
    struct Shaft {
        QPointF back;
        QPointF pinion;
        QPointF output;
    };
    [[nodiscard]] static Shaft shaftOf(const Standing& one) {
        constexpr double kPinion = 0.16;  // m
        const Driveline& line = *one.car->driveline;
        const double angle = line.pinionAngle - one.pose.pitch;
        const QPointF joint = flat(one.carried(line.pinionJoint));
        return {joint - QPointF(std::cos(angle), std::sin(angle)) * kPinion, joint, flat(line.outputJoint)};
    }

    void addShafts(Scene& scene) {
        const auto add = [&](const Shaft& shaft, SceneDash dash) {
            const SceneStroke stroke{&Theme::ink, SceneWeight::medium, dash};
            scene.add(SceneLine{.from = shaft.back, .to = shaft.pinion, .stroke = stroke});
            scene.add(SceneLine{.from = shaft.pinion, .to = shaft.output, .stroke = stroke});
        };
        if (before_.car->driveline) {
            const Shaft was = shaftOf(before_);
            const bool isThere = after_.car->driveline.has_value();
            const Shaft is = isThere ? shaftOf(after_) : Shaft{};
            if (!isThere || areBothDrawn(onPaper(was.pinion), onPaper(is.pinion)) ||
                areBothDrawn(onPaper(was.output), onPaper(is.output))) {
                add(was, SceneDash::dashed);
            }
            shaft_ = was;
        }
        if (after_.car->driveline) {
            shaft_ = shaftOf(after_);
            add(*shaft_, SceneDash::solid);
        }
        if (shaft_) {
            scene.add(SceneJoint{.at = shaft_->pinion});
            scene.add(SceneJoint{.at = shaft_->output});
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

    void addLinks(Scene& scene) {
        constexpr double kSeen = 0.1;  // mm; one that runs across the car is a dot
        const auto add = [&](const Standing& one, std::size_t link, const SceneMarks& marks) {
            if (one.isDrawn(link) && linkLine(one, link).length() > kSeen) {
                scene.add(SceneLink{.chassis = flat(one.inUse(link, End::chassis)),
                                    .axle = flat(one.inUse(link, End::axle)),
                                    .eyes = false},
                          -1, marks);
            }
        };
        for (std::size_t link = 0; link < before_.car->links.size(); ++link) {
            if (!isAlike(linkLine(before_, link))) {
                add(before_, link, kWas);
            }
        }
        for (std::size_t link = 0; link < after_.car->links.size(); ++link) {
            add(after_, link, {});
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

    void addHoles(Scene& scene, const SideBracket& bracket) const {
        for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
            const HoleLook look = hole == bracket.after                      ? HoleLook::bolted
                                  : static_cast<int>(hole) == bracket.before ? HoleLook::former
                                                                             : HoleLook::free;
            scene.add(SceneHole{.at = flat(after_.at(bracket.link, bracket.end, hole)), .look = look});
        }
    }

    // Instant centers that lie in the picture.
    void addCenters(Scene& scene) {
        const QRectF room(area_.topLeft(), QPointF(area_.right(), ground_ - 1));
        for (const Standing* one : {&before_, &after_}) {
            if (one->ride == nullptr || std::isnan(one->ride->icCarX)) {
                continue;
            }
            const QPointF at = onPaper(one->ride->icCarX, one->ride->icCarZ);
            const bool isBefore = one == &before_;
            const bool isSame = isBefore && after_.ride != nullptr && !std::isnan(after_.ride->icCarX) &&
                                !areBothDrawn(at, onPaper(after_.ride->icCarX, after_.ride->icCarZ));
            if (isSame || !room.contains(QRectF(at - QPointF(2, 2), QSizeF(4, 4)))) {
                continue;
            }
            scene.add(SceneCenter{.at = {one->ride->icCarX, one->ride->icCarZ}, .kind = CenterKind::instant},
                      -1, isBefore ? kWas : SceneMarks{});
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
            const QLineF whole(onPaper(shaft_->pinion), onPaper(shaft_->output));
            const double share = (area_.right() - whole.x1()) / std::max(whole.dx(), 1.0);
            const QLineF seen(whole.p1(), whole.pointAt(std::min(1.0, share)));
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
        stroke(ghostLinkPen(kWas.ghost, style_));
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
    PaperType type_;
    SceneStyle style_;
    LeaderPlacer placer_;
    std::vector<SideBracket> brackets_;
    std::vector<std::pair<QPointF, QString>> centers_;
    std::optional<Shaft> shaft_;  // of the after, or of the before alone
};

}  // namespace

SheetSide drawSheetSide(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                        const Comparison& comparison) {
    painter.save();
    SheetSide side = SheetSideDrawer(painter, area, fonts, comparison).draw();
    painter.restore();
    return side;
}

}  // namespace bolthole
