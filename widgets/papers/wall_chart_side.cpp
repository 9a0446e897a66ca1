#include "widgets/papers/wall_chart_side.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "widgets/kit/translation.h"
#include "widgets/papers/paper_scene.h"
#include "widgets/papers/side_scales.h"
#include "widgets/scene/scene_painter.h"

namespace bolthole {

namespace {

constexpr double kChartHole = 1.25;   // mm on paper: a printed scene's
constexpr double kUnderGround = 3.2;  // of the text's digits: room for the words under the ground line

/// One bracket to draw.
struct DrawnBracket {
    int link = 0;
    End end = End::chassis;
    std::vector<QPointF> holes;  // on paper
    int use = 0;
};

class ChartSideDrawer {
  public:
    ChartSideDrawer(QPainter& painter, const QRectF& area, const SheetFrame& frame, const PrintFonts& fonts,
                    const Car& car, const ChartWords& words);

    SidePicture draw();

  private:
    void chooseScale();
    [[nodiscard]] QRectF carBox() const;
    [[nodiscard]] double carWidth(double scale) const;
    [[nodiscard]] bool isDrawn(std::size_t link) const;
    [[nodiscard]] QPointF onPaper(const Eigen::Vector3d& point) const;
    [[nodiscard]] QLineF lineOf(std::size_t link) const;
    [[nodiscard]] bool isArm(std::size_t link) const;
    void gather();
    void drawThings();
    void drawKey();
    void drawHoleNames(const DrawnBracket& bracket);
    void drawClusterNames(const DrawnBracket& bracket, const std::vector<int>& cluster);
    void drawLinkNames();

    QPainter& painter_;
    QRectF area_;
    const SheetFrame& frame_;
    const PrintFonts& fonts_;
    const Car& car_;
    const ChartWords& words_;
    SidePicture picture_;
    QPointF origin_;  // the car frame's, on paper
    LeaderPlacer placer_;
    std::vector<int> partners_;
    std::vector<DrawnBracket> brackets_;
    double labelRoom_ = 0;  // the widest hole name
};

ChartSideDrawer::ChartSideDrawer(QPainter& painter, const QRectF& area, const SheetFrame& frame,
                                 const PrintFonts& fonts, const Car& car, const ChartWords& words)
    : painter_(painter),
      area_(area),
      frame_(frame),
      fonts_(fonts),
      car_(car),
      words_(words),
      placer_(area),
      partners_(mirrorPartners(car)) {
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const auto holes = static_cast<int>(car.links[link].bracket(end).holes.size());
            for (int hole = 0; hole < holes && holes > 1; ++hole) {
                const QString name = words.holeName(static_cast<int>(link), end, hole);
                labelRoom_ = std::max(labelRoom_, fonts.width(name, frame.strong));
            }
        }
    }
    labelRoom_ = std::min(labelRoom_, 0.4 * area.width());
}

// A link set apart from its twin on the other side is named with it.
bool ChartSideDrawer::isDrawn(std::size_t link) const {
    return partners_[link] < 0 || partners_[link] > static_cast<int>(link);
}

QRectF ChartSideDrawer::carBox() const {
    QRectF box(-car_.rearTireRadius, 0, 2 * car_.rearTireRadius, 2 * car_.rearTireRadius);
    for (const Link& link : car_.links) {
        for (const End end : {End::chassis, End::axle}) {
            for (const Hole& hole : link.bracket(end).holes) {
                box.setLeft(std::min(box.left(), hole.at.x()));
                box.setRight(std::max(box.right(), hole.at.x()));
                box.setBottom(std::max(box.bottom(), hole.at.z()));
            }
        }
    }
    return box;
}

// From the leftmost to the rightmost thing with its name, mm.
double ChartSideDrawer::carWidth(double scale) const {
    const QRectF box = carBox();
    double right = box.right() * 1000 / scale + kChartHole;
    for (const Link& link : car_.links) {
        for (const Hole& hole : link.chassis.holes) {
            const double name = link.chassis.holes.size() > 1 ? labelRoom_ + 7 : 0;
            right = std::max(right, hole.at.x() * 1000 / scale + name);
        }
    }
    return right - box.left() * 1000 / scale + 2;
}

void ChartSideDrawer::chooseScale() {
    const QRectF box = carBox();
    const double under = kUnderGround * frame_.text.digits;
    const auto fits = [&](double scale) {
        return carWidth(scale) <= area_.width() && box.bottom() * 1000 / scale + under + 3 <= area_.height();
    };
    const auto* const scale = std::ranges::find_if(kPaperScales, fits);
    picture_.scale = scale == kPaperScales.end() ? kPaperScales.back() : *scale;
    const double spare = area_.width() - carWidth(picture_.scale);
    origin_ = QPointF(area_.left() - box.left() * 1000 / picture_.scale + std::clamp(spare / 2, 0.5, 20.0),
                      area_.top() + box.bottom() * 1000 / picture_.scale + 3);
}

QPointF ChartSideDrawer::onPaper(const Eigen::Vector3d& point) const {
    return origin_ + QPointF(point.x(), -point.z()) * 1000 / picture_.scale;
}

bool ChartSideDrawer::isArm(std::size_t link) const {
    return car_.links[link].kind == LinkKind::pivot || car_.links[link].kind == LinkKind::slider;
}

// A rod from hole to hole; an arm, which is rigid with the axle, from the axle's line to its one point.
QLineF ChartSideDrawer::lineOf(std::size_t link) const {
    const Link& drawn = car_.links[link];
    const Eigen::Vector3d root =
        isArm(link) ? Eigen::Vector3d(0, 0, car_.rearTireRadius) : drawn.axle.inUse().at;
    return {onPaper(root), onPaper(drawn.chassis.inUse().at)};
}

void ChartSideDrawer::gather() {
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = car_.links[link].bracket(end);
            DrawnBracket drawn{static_cast<int>(link), end, {}, bracket.use};
            for (const Hole& hole : bracket.holes) {
                drawn.holes.push_back(onPaper(hole.at));
            }
            if (isDrawn(link)) {
                brackets_.push_back(std::move(drawn));
            }
        }
    }
}

void ChartSideDrawer::drawThings() {
    Scene scene;
    const QPointF center(0, car_.rearTireRadius);
    scene.add(SceneHousing{.center = center, .radius = kHousingRadius});
    scene.add(SceneWheel{.center = center, .radius = car_.rearTireRadius});  // its cross lies above
    scene.add(SceneGround{});
    const auto flat = [](const Eigen::Vector3d& at) { return QPointF(at.x(), at.z()); };
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        const Link& drawn = car_.links[link];
        if (isDrawn(link) && lineOf(link).length() > 0.1) {
            scene.add(SceneLink{.chassis = flat(drawn.chassis.inUse().at),
                                .axle = isArm(link) ? center : flat(drawn.axle.inUse().at),
                                .eyes = false});
        }
    }
    for (const DrawnBracket& bracket : brackets_) {
        const Bracket& entered = car_.links[static_cast<std::size_t>(bracket.link)].bracket(bracket.end);
        int index = 0;
        for (const Hole& hole : entered.holes) {
            scene.add(SceneHole{.at = flat(hole.at),
                                .look = index++ == bracket.use ? HoleLook::bolted : HoleLook::free});
        }
    }
    const PaperType type(fonts_);
    const SceneStyle style = SceneStyle::print(type);
    const SceneView view{{1000 / picture_.scale, origin_}, area_};
    paintThings(painter_, scene, view, style);
    LeaderFeed feed(placer_);
    takePlaces(scene, view, style, feed);
}

// Under the ground line.
void ChartSideDrawer::drawKey() {
    placer_.take(QRectF(area_.left(), origin_.y() - 0.5, area_.width(), area_.bottom() - origin_.y() + 1));
    const double baseline = origin_.y() + 2.1 * frame_.text.digits;
    const QString scale = tr("to scale, 1 : ") + QString::number(picture_.scale);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {area_.left(), baseline}, scale, frame_.text);
    picture_.bottom = baseline + frame_.text.descent();
    fonts_.draw(painter_, {area_.right(), baseline}, tr("front \u2192"), frame_.text, Qt::AlignRight);
}

// Holes far apart fore and aft are named where they are, each cluster by itself.
void ChartSideDrawer::drawHoleNames(const DrawnBracket& bracket) {
    constexpr double kTogether = 6;  // mm
    std::vector<int> order(bracket.holes.size());
    std::iota(order.begin(), order.end(), 0);
    const auto across = [&](int hole) { return bracket.holes[static_cast<std::size_t>(hole)].x(); };
    std::ranges::stable_sort(order, {}, across);
    std::vector<int> cluster;
    for (const int hole : order) {
        if (!cluster.empty() && across(hole) - across(cluster.back()) > kTogether) {
            std::ranges::sort(cluster);
            drawClusterNames(bracket, cluster);
            cluster.clear();
        }
        cluster.push_back(hole);
    }
    std::ranges::sort(cluster);
    drawClusterNames(bracket, cluster);
}

void ChartSideDrawer::drawClusterNames(const DrawnBracket& bracket, const std::vector<int>& cluster) {
    std::vector<QPointF> holes;
    std::vector<QSizeF> sizes;
    QStringList names;
    const auto typeOf = [&](int hole) { return hole == bracket.use ? frame_.strong : frame_.text; };
    for (const int hole : cluster) {
        const PrintType type = typeOf(hole);
        holes.push_back(bracket.holes[static_cast<std::size_t>(hole)]);
        names << fonts_.elided(words_.holeName(bracket.link, bracket.end, hole), type, labelRoom_);
        sizes.emplace_back(fonts_.width(names.back(), type) + 0.4, 1.5 * type.digits);
    }
    const LeaderBlock block =
        placer_.place(holes, sizes, kChartHole + 0.2, 1.6 * frame_.text.digits, bracket.end == End::chassis);
    for (std::size_t at = 0; at < cluster.size(); ++at) {
        painter_.setPen(QPen(Qt::black, kThinnestLine));
        painter_.drawLine(block.lines[at]);
        const PrintType type = typeOf(cluster[at]);
        const QRectF& box = block.boxes[at];
        fonts_.draw(painter_, {box.left() + 0.2, box.center().y() + type.digits / 2},
                    names[static_cast<qsizetype>(at)], type);
        picture_.labels.push_back(box);
    }
}

void ChartSideDrawer::drawLinkNames() {
    painter_.setPen(Qt::black);
    for (std::size_t link = 0; link < car_.links.size(); ++link) {
        if (!isDrawn(link)) {
            continue;
        }
        const QString name = words_.linkName(static_cast<int>(link)).toUpper();
        const QSizeF size(fonts_.width(name, frame_.strong) + 0.4, 1.5 * frame_.strong.digits);
        const QLineF line = lineOf(link);
        const QRectF box = placer_.placeNear(isArm(link) ? line.pointAt(0.82) : line.center(), size);
        if (!box.isNull()) {
            fonts_.draw(painter_, {box.left() + 0.2, box.center().y() + frame_.strong.digits / 2}, name,
                        frame_.strong);
            picture_.labels.push_back(box);
        }
    }
}

SidePicture ChartSideDrawer::draw() {
    chooseScale();
    gather();
    drawThings();
    drawKey();
    for (const DrawnBracket& bracket : brackets_) {
        if (bracket.holes.size() > 1) {
            drawHoleNames(bracket);
        }
    }
    drawLinkNames();
    return picture_;
}

}  // namespace

SidePicture drawSidePicture(QPainter& painter, const QRectF& area, const SheetFrame& frame,
                            const PrintFonts& fonts, const Car& car, const ChartWords& words) {
    painter.save();
    SidePicture picture = ChartSideDrawer(painter, area, frame, fonts, car, words).draw();
    painter.restore();
    return picture;
}

}  // namespace bolthole
