// Where the numbers of a car stand in its file, and what a person calls them: words and paths of
// geometry/car/fields.h.
#include "geometry/car/fields.h"

namespace bolthole {

namespace {

std::string indexed(std::string_view name, int index) {
    return std::string(name) + "[" + std::to_string(index) + "]";
}

}  // namespace

std::string mountPath(int item, End end) {
    return indexed("springs", item) + "." + std::string(endWords(end));
}

std::string ballastWords(const Car& car, int item) {
    const EnteredBallast* found = findBallast(car, item);
    return found != nullptr && !found->name.empty() ? found->name : "load " + std::to_string(item + 1);
}

std::string springWords(const Car& car, int item) {
    const SuspensionPart* found = findSpring(car, item);
    if (found != nullptr && !found->name.empty()) {
        return found->name;
    }
    return std::string(found == nullptr ? "spring" : nameOf(found->kind)) + " " + std::to_string(item + 1);
}

std::string linkPath(int link) {
    return indexed("links", link);
}

std::string bracketPath(int link, End end) {
    return linkPath(link) + "." + std::string(endWords(end));
}

std::string linkWords(const Car& car, int link) {
    const Link* found = findLink(car, link);
    return found != nullptr && !found->name.empty() ? found->name : "link " + std::to_string(link + 1);
}

std::string holeWords(const Car& car, int link, End end, int hole) {
    const Hole* found = findHole(car, link, end, hole);
    const bool isNamed = found != nullptr && !found->name.empty();
    return linkWords(car, link) + " " + std::string(endWords(end)) + " hole " +
           (isNamed ? "'" + found->name + "'" : std::to_string(hole + 1));
}

std::string_view endWords(End end) {
    return end == End::chassis ? "chassis" : "axle";
}

namespace {

/// Where the object stands that holds the number, with what follows it; a bracket alone where no hole is
/// meant.
std::string pathBefore(const FieldId& id, Scope scope) {
    const auto holes = [&id](std::string bracket) {
        bracket += ".holes";
        return id.hole < 0 ? bracket : indexed(bracket, id.hole) + ".";
    };
    switch (scope) {
        case Scope::link:
            return linkPath(id.link) + ".";
        case Scope::hole:
            return holes(bracketPath(id.link, id.end));
        case Scope::mount:
            return holes(mountPath(id.item, id.end));
        case Scope::ballast:
            return indexed("loads", id.item) + ".";
        case Scope::spring:
            return indexed("springs", id.item) + ".";
        case Scope::driveline:
            return "driveline.";
        case Scope::target:
            return "wanted.";
        case Scope::tool:
            return "tools.";
        case Scope::car:
            break;
    }
    return {};
}

}  // namespace

std::string jsonPath(const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    std::string path = pathBefore(id, rule.scope);
    const bool isHole = rule.scope == Scope::hole || rule.scope == Scope::mount;
    if (isHole && id.hole < 0) {
        return path;
    }
    if (id.uncertainty) {
        path += "u.";
    }
    path += rule.path;
    return rule.hasAxis && id.axis >= 0 ? indexed(path, id.axis) : path;
}

}  // namespace bolthole
