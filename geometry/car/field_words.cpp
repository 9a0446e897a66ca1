// Where the numbers of a car stand in its file, and what a person calls them: words and paths of
// geometry/car/fields.h.
#include "geometry/car/fields.h"
#include "geometry/units/say.h"

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
    return found != nullptr && !found->name.empty() ? found->name : say("load %1", item + 1);
}

std::string springWords(const Car& car, int item) {
    const SuspensionPart* found = findSpring(car, item);
    if (found != nullptr && !found->name.empty()) {
        return found->name;
    }
    return say("%1 %2", say(nameOf(found == nullptr ? PartKind::spring : found->kind)), item + 1);
}

std::string linkPath(int link) {
    return indexed("links", link);
}

std::string bracketPath(int link, End end) {
    return linkPath(link) + "." + std::string(endWords(end));
}

std::string linkWords(const Car& car, int link) {
    const Link* found = findLink(car, link);
    return found != nullptr && !found->name.empty() ? found->name : say("link %1", link + 1);
}

std::string holeWords(const Car& car, int link, End end, int hole) {
    const Hole* found = findHole(car, link, end, hole);
    const std::string whose = linkWords(car, link);
    if (found != nullptr && !found->name.empty()) {
        return end == End::chassis ? say("%1 chassis hole '%2'", whose, found->name)
                                   : say("%1 axle hole '%2'", whose, found->name);
    }
    return end == End::chassis ? say("%1 chassis hole %2", whose, hole + 1)
                               : say("%1 axle hole %2", whose, hole + 1);
}

std::string mountWords(const Car& car, int item, End end) {
    const std::string whose = springWords(car, item);
    return end == End::chassis ? say("%1 chassis mount", whose) : say("%1 axle mount", whose);
}

std::string_view endWords(End end) {
    return end == End::chassis ? phrase("chassis") : phrase("axle");
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
