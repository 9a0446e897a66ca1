// apply() for whole links of geometry/edits/edit.h.
#include "geometry/edits/edit_links.h"

#include <iterator>

#include "geometry/car/faults.h"
#include "geometry/car/fields.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

std::string missing(int link) {
    return say("there is no link %1", link + 1);
}

std::string tooMany() {
    return say("a car takes at most %1 links", kMaxLinks);
}

/// Why the car can't hold `link` at `index`, where it stands already; the same car without it has no faults
/// of its own there.
std::string refuseLink(const Car& car, int index) {
    const Link& link = car.links[static_cast<std::size_t>(index)];
    if (link.name.find_first_not_of(" \t\r\n") == std::string::npos) {
        return say("a link needs a name");
    }
    const std::string place = linkPath(index);
    for (const Fault& fault : findFaults(car)) {
        const bool isHere = fault.path == place || fault.path.starts_with(place + ".");
        if (isHere) {
            return say("%1: %2", linkWords(car, index), fault.reason);
        }
    }
    return {};
}

void mirror(Bracket& bracket) {
    for (Hole& hole : bracket.holes) {
        hole.at = mirrored(hole.at);
    }
}

Link onTheRight(Link link) {
    link.id = -1;
    link.side = Side::right;
    for (const End end : {End::chassis, End::axle}) {
        mirror(link.bracket(end));
        for (Hole& hole : link.bracket(end).holes) {
            hole.id = -1;
        }
    }
    return link;
}

/// The link on the right that makes a pair with the one on the left; nothing where there is none.
std::optional<int> partnerOf(const Car& car, int left) {
    const Link& one = car.links[static_cast<std::size_t>(left)];
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& other = car.links[index];
        if (other.side == Side::right && other.name == one.name && other.kind == one.kind) {
            return static_cast<int>(index);
        }
    }
    return std::nullopt;
}

/// The pair's left link, given either of the two; nothing where the link is no half of a pair.
std::optional<int> leftOf(const Car& car, int link) {
    const Side side = car.links[static_cast<std::size_t>(link)].side;
    if (side == Side::left) {
        return partnerOf(car, link) ? std::optional(link) : std::nullopt;
    }
    for (std::size_t index = 0; side == Side::right && index < car.links.size(); ++index) {
        if (car.links[index].side == Side::left && partnerOf(car, static_cast<int>(index)) == link) {
            return static_cast<int>(index);
        }
    }
    return std::nullopt;
}

}  // namespace

bool isHalfOfPair(const Car& car, int link) {
    return findLink(car, link) != nullptr && leftOf(car, link).has_value();
}

std::string applyTo(Car& car, const AddLink& edit) {
    if (car.links.size() >= kMaxLinks) {
        return tooMany();
    }
    car.links.push_back(edit.link);
    std::string reason = refuseLink(car, static_cast<int>(car.links.size()) - 1);
    if (!reason.empty()) {
        car.links.pop_back();
    }
    return reason;
}

std::string applyTo(Car& car, const RemoveLink& edit) {
    if (findLink(car, edit.link) == nullptr) {
        return missing(edit.link);
    }
    car.links.erase(std::next(car.links.begin(), edit.link));
    return {};
}

std::string applyTo(Car& car, const ChangeLink& edit) {
    if (findLink(car, edit.index) == nullptr) {
        return missing(edit.index);
    }
    Link& place = car.links[static_cast<std::size_t>(edit.index)];
    Link old = place;
    place = edit.link;
    std::string reason = refuseLink(car, edit.index);
    if (!reason.empty()) {
        place = std::move(old);
    }
    return reason;
}

std::string applyTo(Car& car, const SplitLink& edit) {
    const Link* link = findLink(car, edit.link);
    if (link == nullptr) {
        return missing(edit.link);
    }
    if (link->side != Side::both) {
        return say("%1 is one link, not a mirrored pair", linkWords(car, edit.link));
    }
    if (car.links.size() >= kMaxLinks) {
        return tooMany();
    }
    Link right = onTheRight(*link);
    car.links[static_cast<std::size_t>(edit.link)].side = Side::left;
    car.links.insert(std::next(car.links.begin(), edit.link + 1), std::move(right));
    return {};
}

std::string applyTo(Car& car, const JoinLinks& edit) {
    if (findLink(car, edit.link) == nullptr) {
        return missing(edit.link);
    }
    const std::optional<int> left = leftOf(car, edit.link);
    if (!left) {
        return say("%1 has no partner on the other side: of the same name and kind, left and right",
                   linkWords(car, edit.link));
    }
    const int right = *partnerOf(car, *left);
    if (edit.link == right) {
        Link kept = onTheRight(car.links[static_cast<std::size_t>(right)]);  // mirrored over to the left
        kept.id = car.links[static_cast<std::size_t>(*left)].id;
        car.links[static_cast<std::size_t>(*left)] = std::move(kept);
    }
    car.links[static_cast<std::size_t>(*left)].side = Side::both;
    car.links.erase(std::next(car.links.begin(), right));
    return {};
}

}  // namespace bolthole
