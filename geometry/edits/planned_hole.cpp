#include "geometry/edits/planned_hole.h"

#include <cmath>

namespace bolthole {

std::vector<int> linksToDrill(const Car& car, int link) {
    std::vector<int> links{link};
    const std::vector<int> partners = mirrorPartners(car);
    if (link >= 0 && static_cast<std::size_t>(link) < partners.size() &&
        partners[static_cast<std::size_t>(link)] >= 0) {
        links.push_back(partners[static_cast<std::size_t>(link)]);
    }
    return links;
}

CarResult withHoleAdded(const Car& car, const PlanHole& edit) {
    CarResult result{car, {}};
    for (const int link : linksToDrill(car, edit.link)) {
        Hole hole = edit.hole;
        hole.planned = true;
        if (link != edit.link) {
            hole.at.y() = car.links[static_cast<std::size_t>(link)].bracket(edit.end).inUse().at.y();
        }
        EditResult added = apply(*result.car, AddHole{link, edit.end, hole});
        if (!added.refusal.empty()) {
            return {std::nullopt, std::move(added.refusal)};
        }
        result.car = std::move(added.car);
    }
    return result;
}

HoleUse useWithNewHole(const Car& withHole, const PlanHole& edit) {
    HoleUse use = holesInUse(withHole);
    for (const int link : linksToDrill(withHole, edit.link)) {
        const Bracket& bracket = withHole.links[static_cast<std::size_t>(link)].bracket(edit.end);
        use.set(link, edit.end, static_cast<int>(bracket.holes.size()) - 1);
    }
    return use;
}

CarResult planHole(const Car& car, const PlanHole& edit) {
    CarResult added = withHoleAdded(car, edit);
    return added.car ? carWithCombination(*added.car, useWithNewHole(*added.car, edit), edit.lengths) : added;
}

}  // namespace bolthole
