#include "widgets/pages/brackets/bracket_facts.h"

#include "geometry/plates/plate_room.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/template_scene.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

QString nextHole(const Bracket& bracket, int hole, Units units) {
    const Eigen::Vector2d at = inSideView(bracket.holes[static_cast<std::size_t>(hole)].at);
    const HoleRoom room = holeRoom(bracket, at, hole);
    if (room.hole < 0) {
        return FactCard::tr("the only hole");
    }
    QString words =
        FactCard::tr("%1 from '%2'").arg(lengthText(room.distance, units), holeName(bracket, room.hole));
    if (bracket.plate) {
        words += FactCard::tr(", %1 diameters")
                     .arg(QString::fromStdString(
                         figureText(room.distance / bracket.plate->holeDiameter, Quantity::ratio, units)));
    }
    return words;
}

// Distances to the edge and to the next hole; negative outside the plate.
std::vector<FactNumber> numbersOfHole(const Bracket& bracket, int hole) {
    const Eigen::Vector2d at = inSideView(bracket.holes[static_cast<std::size_t>(hole)].at);
    const std::string id = "hole_" + std::to_string(hole + 1);
    std::vector<FactNumber> numbers;
    if (bracket.plate) {
        const EdgeRoom room = edgeRoom(bracket.plate->corners, at);
        numbers.push_back(
            fineNumber(id + "_edge", room.inside ? room.distance : -room.distance, Quantity::length));
    }
    if (const HoleRoom room = holeRoom(bracket, at, hole); room.hole >= 0) {
        numbers.push_back(fineNumber(id + "_spacing", room.distance, Quantity::length));
        if (bracket.plate) {
            numbers.push_back(plainNumber(id + "_spacing_diameters",
                                          room.distance / bracket.plate->holeDiameter, Quantity::ratio));
        }
    }
    return numbers;
}

Fact factOf(const Bracket& bracket, int hole, Units units) {
    const Hole& entered = bracket.holes[static_cast<std::size_t>(hole)];
    const Eigen::Vector2d at = inSideView(entered.at);
    Fact fact;
    fact.label = holeName(bracket, hole) + (entered.planned ? FactCard::tr(", planned") : QString());
    fact.value = QStringLiteral("—");
    fact.remark = nextHole(bracket, hole, units);
    fact.others = numbersOfHole(bracket, hole);
    if (bracket.plate) {
        const EdgeRoom room = edgeRoom(bracket.plate->corners, at);
        fact.value = room.inside ? FactCard::tr("%1 to the edge").arg(lengthText(room.distance, units))
                                 : FactCard::tr("outside");
    }
    QStringList unmeasured;
    if (!entered.uncertainties.marks().empty()) {
        unmeasured << FactCard::tr("the hole's place");
    }
    if (bracket.plate) {
        unmeasured << unmeasuredOfPlate(*bracket.plate);
    }
    unmeasured.removeAll(QString());
    if (!unmeasured.isEmpty()) {
        fact.starting = FactCard::tr("starting numbers: %1").arg(unmeasured.join(QStringLiteral(", ")));
    }
    const std::vector<std::string> troubles = plateTroubles(bracket, at, hole, units);
    if (!troubles.empty()) {
        QStringList said;
        for (const std::string& trouble : troubles) {
            said << QString::fromStdString(trouble);
        }
        fact.remark = said.join(QStringLiteral("; "));
        fact.isProblem = true;
    }
    return fact;
}

}  // namespace

std::vector<Fact> bracketFacts(const Bracket& bracket, Units units) {
    std::vector<Fact> facts;
    facts.reserve(bracket.holes.size());
    for (int hole = 0; hole < static_cast<int>(bracket.holes.size()); ++hole) {
        facts.push_back(factOf(bracket, hole, units));
    }
    return facts;
}

QString bracketNote(const Bracket& bracket) {
    return bracket.plate ? FactCard::tr(
                               "Centers, in side view. The least distances are the ones entered at "
                               "left, nobody's proof of strength.")
                         : FactCard::tr("Distances to the edge need the plate's outline, at left.");
}

}  // namespace bolthole
