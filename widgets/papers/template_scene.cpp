#include "widgets/papers/template_scene.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "geometry/car/starting_numbers.h"
#include "geometry/plates/plate_room.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kInchStep = 0.001 * kMetresPerInch;
constexpr double kMetricStep = 0.1 * kMetresPerMillimetre;
constexpr double kSideRoom = 14;  // mm, for edge distances and the outline's own measure
constexpr double kBareRoom = 6;   // mm around a center whose diameter is not known

QPointF onPaper(const Eigen::Vector2d& at, TemplateFace face) {
    const double forward = at.x() / kMetresPerMillimetre;
    return {face == TemplateFace::left ? -forward : forward, -at.y() / kMetresPerMillimetre};
}

/// The drilled hole nearest to a planned one, or -1.
int nearestDrilled(const Bracket& bracket, const Eigen::Vector2d& at) {
    int found = -1;
    double least = std::numeric_limits<double>::infinity();
    for (int hole = 0; hole < static_cast<int>(bracket.holes.size()); ++hole) {
        const Hole& other = bracket.holes[static_cast<std::size_t>(hole)];
        const double apart = (inSideView(other.at) - at).norm();
        if (!other.planned && apart < least) {
            least = apart;
            found = hole;
        }
    }
    return found;
}

/// Makes one face of a bracket.
class SceneMaker {
  public:
    SceneMaker(const TemplateRequest& request, TemplateFace face)
        : request_(request), bracket_(request.bracket()) {
        scene_.face = face;
    }

    TemplateScene make() {
        scene_.bracketWords = bracketWords(request_.car, request_.place);
        scene_.faceWords = faceWords();
        if (bracket_.plate) {
            addOutline(*bracket_.plate);
        }
        for (int hole = 0; hole < static_cast<int>(bracket_.holes.size()); ++hole) {
            addHole(hole);
        }
        measure();
        addNotes();
        return std::move(scene_);
    }

  private:
    [[nodiscard]] QString length(double metres) const { return templateLength(metres, request_.style); }
    [[nodiscard]] QString faceWords() const;
    void addOutline(const Plate& plate);
    void addHole(int hole);
    void addEdge(TemplateHole& shown, const Eigen::Vector2d& at) const;
    void addDistances(TemplateHole& shown, int hole, const Eigen::Vector2d& at) const;
    void addTroubles(TemplateHole& shown, int hole, const Eigen::Vector2d& at) const;
    void measure();
    void addNotes();

    const TemplateRequest& request_;
    const Bracket& bracket_;
    TemplateScene scene_;
};

// The heights and places forward of the bracket's holes: all that a template shows of them.
std::vector<FieldId> startsOfHoles(const TemplateRequest& request) {
    std::vector<FieldId> starts;
    for (int hole = 0; hole < static_cast<int>(request.bracket().holes.size()); ++hole) {
        for (const int axis : {0, 2}) {
            const FieldId id = holeField(request.place.link, request.place.end, hole, axis);
            if (isStarting(request.car, id)) {
                starts.push_back(id);
            }
        }
    }
    return starts;
}

QString SceneMaker::faceWords() const {
    const bool left = scene_.face == TemplateFace::left;
    QString seen =
        left ? tr("Seen from the LEFT side of the car") : tr("Seen from the RIGHT side of the car");
    const QString outer = tr("outer face of the %1 bracket");
    const QString inner = tr("inner face of the %1 bracket");
    const QString here = left ? tr("left-hand") : tr("right-hand");
    const QString there = left ? tr("right-hand") : tr("left-hand");
    switch (request_.link().side) {
        case Side::both:
            return tr("%1: %2, or %3").arg(seen, outer.arg(here), inner.arg(there));
        case Side::left:
        case Side::right: {
            const bool facesOut = left == (request_.link().side == Side::left);
            return QStringLiteral("%1: %2").arg(seen, facesOut ? outer.arg(here) : inner.arg(there));
        }
        case Side::center:
            break;
    }
    return seen;
}

void SceneMaker::addOutline(const Plate& plate) {
    for (const Eigen::Vector2d& corner : plate.corners) {
        scene_.outline.push_back(onPaper(corner, scene_.face));
    }
    scene_.diameter = plate.holeDiameter / kMetresPerMillimetre;
    scene_.diameterWords = QStringLiteral("ø ") + length(plate.holeDiameter);
}

void SceneMaker::addEdge(TemplateHole& shown, const Eigen::Vector2d& at) const {
    const EdgeRoom room = edgeRoom(bracket_.plate->corners, at);
    shown.hasEdge = room.inside;
    shown.edge = onPaper(room.nearest, scene_.face);
    shown.edgeWords = length(room.distance);
    shown.keyLines << (room.inside ? tr("%1, edge %2") : tr("%1, outside the outline by %2"))
                          .arg(scene_.diameterWords, shown.edgeWords);
}

void SceneMaker::addDistances(TemplateHole& shown, int hole, const Eigen::Vector2d& at) const {
    shown.from = nearestDrilled(bracket_, at);
    if (shown.from < 0) {
        shown.keyLines << tr("no existing hole to measure from");
        return;
    }
    const Eigen::Vector2d way = at - inSideView(bracket_.holes[static_cast<std::size_t>(shown.from)].at);
    shown.alongWords = length(std::abs(way.x()));
    shown.upWords = length(std::abs(way.y()));
    shown.keyLines << tr("from hole %1, center to center:").arg(shown.from + 1);
    shown.keyLines << QStringLiteral("%1 %2, %3 %4")
                          .arg(shown.alongWords, way.x() < 0 ? tr("to the rear") : tr("to the front"),
                               shown.upWords, way.y() < 0 ? tr("down") : tr("up"));
    shown.keyLines << tr("straight %1").arg(length(way.norm()));
    if (bracket_.plate) {
        const HoleRoom room = holeRoom(bracket_, at, hole);
        shown.keyLines << tr("nearest hole %1, %2 diameters away")
                              .arg(room.hole + 1)
                              .arg(QString::fromStdString(
                                  figureText(room.distance / bracket_.plate->holeDiameter, Quantity::ratio,
                                             Units::metric)));
    }
}

void SceneMaker::addTroubles(TemplateHole& shown, int hole, const Eigen::Vector2d& at) const {
    for (const std::string& trouble : plateTroubles(bracket_, at, hole, request_.style.units)) {
        shown.keyLines << QStringLiteral("\u25B2 ") + QString::fromStdString(trouble);
    }
}

void SceneMaker::addHole(int hole) {
    const Hole& entered = bracket_.holes[static_cast<std::size_t>(hole)];
    const Eigen::Vector2d at = inSideView(entered.at);
    TemplateHole shown;
    shown.number = hole + 1;
    shown.name = holeName(bracket_, hole);
    shown.at = onPaper(at, scene_.face);
    shown.planned = entered.planned;
    shown.inUse = bracket_.use == hole;
    const QString state = entered.planned ? tr("DRILL")
                          : shown.inUse   ? tr("existing, bolted now")
                                          : tr("existing");
    shown.keyLines << QStringLiteral("%1  %2: %3").arg(shown.number).arg(shown.name.simplified(), state);
    if (bracket_.plate) {
        addEdge(shown, at);
    }
    if (entered.planned) {
        addDistances(shown, hole, at);
        addTroubles(shown, hole, at);
    }
    scene_.holes.push_back(std::move(shown));
}

// All that is drawn: the bracket, and around it room for dimensions.
void SceneMaker::measure() {
    const double reach = scene_.diameter > 0 ? scene_.diameter / 2 : kBareRoom;
    double left = std::numeric_limits<double>::infinity();
    double top = left;
    double right = -left;
    double bottom = -left;
    const auto take = [&](QPointF at, double around) {
        left = std::min(left, at.x() - around);
        right = std::max(right, at.x() + around);
        top = std::min(top, at.y() - around);
        bottom = std::max(bottom, at.y() + around);
    };
    for (const QPointF& corner : scene_.outline) {
        take(corner, 0);
    }
    if (!scene_.outline.empty()) {
        scene_.acrossWords = length((right - left) * kMetresPerMillimetre);
        scene_.heightWords = length((bottom - top) * kMetresPerMillimetre);
    }
    for (const TemplateHole& hole : scene_.holes) {
        take(hole.at, reach);
    }
    const auto measured = static_cast<double>(
        std::ranges::count_if(scene_.holes, [](const TemplateHole& hole) { return hole.from >= 0; }));
    const double dimensions = kDimensionStep * measured + 2;
    scene_.content = QRectF(QPointF(left - kSideRoom - dimensions, top - kSideRoom),
                            QPointF(right + kSideRoom, bottom + kSideRoom + dimensions));
}

void SceneMaker::addNotes() {
    if (!bracket_.plate) {
        scene_.notes << tr(
            "No outline entered: holes only, their centers without size. Enter "
            "the plate to get its edge and the holes' diameter.");
    }
    if (std::ranges::none_of(bracket_.holes, &Hole::planned)) {
        scene_.notes << tr("No new hole is planned here: this shows what is there.");
    }
    if (roleOf(request_.link(), request_.car.rearTireRadius) == Role::crosswise) {
        scene_.notes << tr(
            "This link runs across the car: its bracket may face front or rear. "
            "Then this sheet does not fit it.");
    }
    scene_.notes << tr(
        "For a plate that stands upright and along the car. One that leans or is "
        "turned in looks shortened here: do not use the sheet on it.");
    scene_.notes << tr(
        "As true as what was measured. Lay it on the existing holes first: all "
        "have to fit.");
    scene_.notes << tr(
        "Before you drill: car on rated stands, link out, eyes covered; look what is behind the plate: "
        "lines, "
        "wires, a tank.");
}

}  // namespace

QString templateLength(double metres, NumberStyle style) {
    const std::string exact = fieldText(metres, Quantity::length, style);
    const bool isFraction = exact.find('/') != std::string::npos && exact.find("\u2248") == std::string::npos;
    const double step = style.units == Units::inch ? kInchStep : kMetricStep;
    const std::string text = isFraction ? exact
                                        : fieldText(std::round(metres / step) * step, Quantity::length,
                                                    {style.units, InchStyle::decimal});
    return QString::fromStdString(withUnit(text, Quantity::length, style.units));
}

QString bracketWords(const Car& car, const BracketId& place) {
    return tr("%1, %2 bracket")
        .arg(linkName(car, place.link), place.end == End::axle ? tr("axle") : tr("chassis"));
}

QString unmeasuredOfPlate(const Plate& plate) {
    QStringList numbers;
    if (const std::size_t corners = plate.starts.cornerCount(); corners > 0) {
        numbers << tr("%1 of %2 corners").arg(corners).arg(plate.corners.size());
    }
    if (plate.starts.holeDiameter) {
        numbers << tr("hole diameter");
    }
    if (plate.starts.edgeDistance) {
        numbers << tr("edge distance");
    }
    if (plate.starts.holeSpacing) {
        numbers << tr("hole spacing");
    }
    return numbers.join(QStringLiteral(", "));
}

QString templateStarts(const TemplateRequest& request) {
    const Bracket& bracket = request.bracket();
    std::vector<FieldId> starts = startsOfHoles(request);
    if (std::ranges::any_of(bracket.holes, &Hole::planned)) {
        const std::vector<FieldId> used = startsUsed(request.car);
        starts.insert(starts.end(), used.begin(), used.end());
    }
    QStringList parts;
    if (bracket.plate && bracket.plate->starts.any()) {
        parts << tr("plate of this bracket: %1").arg(unmeasuredOfPlate(*bracket.plate));
    }
    if (!starts.empty()) {
        parts << QString::fromStdString(startWords(request.car, starts));
    }
    return parts.isEmpty() ? QString()
                           : tr("Starting numbers, not measured: %1").arg(parts.join(QStringLiteral("; ")));
}

TemplateScene templateScene(const TemplateRequest& request, TemplateFace face) {
    TemplateScene scene = SceneMaker(request, face).make();
    scene.starts = templateStarts(request);
    return scene;
}

}  // namespace bolthole
