#include "geometry/compare/setup_changes.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/car/pass_fields.h"
#include "geometry/compare/comparison.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// What isSameSetup() compares.
void dropPlanned(Bracket& bracket) {
    const int use = bracket.use;
    int at = 0;
    std::erase_if(bracket.holes, [&](const Hole& hole) {
        const int index = at++;
        const bool gone = hole.planned && index != use;
        bracket.use -= gone && index < use ? 1 : 0;
        return gone;
    });
}

void plain(Bracket& bracket) {
    dropPlanned(bracket);
    bracket.plate.reset();
    for (Hole& hole : bracket.holes) {
        hole.id = -1;
        hole.uncertainties = {};
        hole.planned = false;
    }
}

template <class Part>
void plain(Part& part) {
    part.id = -1;
    part.uncertainties = {};
    for (const End end : {End::chassis, End::axle}) {
        plain(part.bracket(end));
    }
}

Car setupOf(const Car& car) {
    Car setup = withoutKept(car);
    setup.title.clear();
    setup.notes.clear();
    setup.units = Units::inch;
    setup.body.reset();
    setup.target.reset();
    setup.tools = {};
    setup.uncertainties = {};
    setup.travel.steps = kMinSteps;
    setup.launch.from = LaunchFrom{};
    setup.launch.sixtyFoot.reset();
    setup.launch.acceleration.reset();
    if (setup.driveline) {
        setup.driveline->uncertainties = {};
    }
    for (Link& link : setup.links) {
        plain(link);
    }
    for (SuspensionPart& spring : setup.springs) {
        plain(spring);
    }
    for (EnteredBallast& load : setup.ballast) {
        load.id = -1;
        load.uncertainties = {};
    }
    return setup;
}

/// "+1.5", "-2", "≈ +0.063".
std::string withSign(const std::string& number) {
    constexpr std::string_view kAboutMark = "\u2248 ";
    if (number.starts_with(kAboutMark)) {
        return std::string(kAboutMark) + withSign(number.substr(kAboutMark.size()));
    }
    return number.starts_with('-') ? number : "+" + number;
}

std::string changeText(double change, Quantity quantity, Units units) {
    const NumberStyle style{units, InchStyle::decimal};
    return withSign(withUnit(fieldText(change, quantity, style), quantity, units));
}

/// The words of what was turned.
class ChangeWords {
  public:
    ChangeWords(const Car& before, const Car& after, Units units)
        : comparison_(compareEntries(before, after)), units_(units) {}

    std::vector<std::string> list() {
        for (const UnsharedLink& link : comparison_.unshared) {
            words_.push_back(link.inBefore ? say("%1 removed", link.name) : say("%1 added", link.name));
        }
        for (const BoltMove& bolt : comparison_.bolts) {
            addBolt(bolt);
        }
        for (const LengthMove& length : comparison_.lengths) {
            if (!follows(length)) {
                addLength(length);
            }
        }
        addItems(comparison_.beforeCar.springs, comparison_.afterCar.springs, Scope::spring);
        addItems(comparison_.beforeCar.ballast, comparison_.afterCar.ballast, Scope::ballast);
        for (const NumberMove& number : comparison_.numbers) {
            addNumber(std::string(ruleOf(number.id.field).words), number.id, number.before, number.after);
        }
        return std::move(words_);
    }

  private:
    [[nodiscard]] const Link& afterLink(const SharedLink& pair) const {
        return comparison_.afterCar.links[static_cast<std::size_t>(pair.after)];
    }

    [[nodiscard]] std::string linkName(const SharedLink& pair) const {
        const Link& link = afterLink(pair);
        return link.side == Side::left    ? say("%1 left", link.name)
               : link.side == Side::right ? say("%1 right", link.name)
                                          : link.name;
    }

    void addBolt(const BoltMove& bolt) {
        const Bracket& bracket = afterLink(bolt.link).bracket(bolt.end);
        const bool isNamed = !bracket.inUse().name.empty();
        const std::string hole = isNamed ? "'" + bolt.to + "'" : bolt.to;
        words_.push_back(say(bolt.from == bolt.to ? phrase("%1 %2 hole %3 moved") : phrase("%1 %2 hole %3"),
                             linkName(bolt.link), say(endWords(bolt.end)), hole));
    }

    /// Whether a rod without a length of its own is as long as its holes, moved, are apart.
    [[nodiscard]] bool follows(const LengthMove& length) const {
        const auto isOfRod = [&length](const BoltMove& bolt) { return bolt.link.after == length.link.after; };
        return !afterLink(length.link).length && std::ranges::any_of(comparison_.bolts, isOfRod);
    }

    void addLength(const LengthMove& length) {
        const std::string link = linkName(length.link);
        if (length.turns) {
            const std::string turns = fieldText(std::round(*length.turns * 100) / 100, Quantity::ratio,
                                                NumberStyle{units_, InchStyle::decimal});
            words_.push_back(say("%1 %2 turns", link, withSign(turns)));
        } else {
            words_.push_back(say("%1 length %2", link,
                                 changeText(length.after - length.before, Quantity::length, units_)));
        }
    }

    void addNumber(const std::string& name, const FieldId& id, const std::optional<double>& before,
                   const std::optional<double>& after) {
        static constexpr std::array<std::string_view, 3> kAxes{phrase("%1 forward"), phrase("%1 left"),
                                                               phrase("%1 up")};
        const std::string what = id.axis >= 0 ? say(kAxes[static_cast<std::size_t>(id.axis)], name) : name;
        words_.push_back(before && after
                             ? say("%1 %2", what, changeText(*after - *before, quantityOf(id.field), units_))
                         : after ? say("%1 entered", what)
                                 : say("%1 cleared", what));
    }

    /// Springs or ballast, matched by name and, where they have one, side.
    template <class Item>
    void addItems(const std::vector<Item>& before, const std::vector<Item>& after, Scope scope) {
        const auto partner = [](const Item& item, const std::vector<Item>& others) {
            return std::ranges::find_if(others, [&item](const Item& other) {
                if constexpr (requires { item.side; }) {
                    return other.name == item.name && other.side == item.side;
                } else {
                    return other.name == item.name;
                }
            });
        };
        for (const Item& item : before) {
            if (partner(item, after) == after.end()) {
                words_.push_back(say("%1 removed", item.name));
            }
        }
        for (std::size_t index = 0; index < after.size(); ++index) {
            const auto old = partner(after[index], before);
            if (old == before.end()) {
                words_.push_back(say("%1 added", after[index].name));
            } else {
                addMounts(*old, after[index]);
                addItemNumbers(after[index].name, static_cast<int>(old - before.begin()),
                               static_cast<int>(index), scope);
            }
        }
    }

    void addMounts(const SuspensionPart& before, const SuspensionPart& after) {
        for (const End end : {End::chassis, End::axle}) {
            const std::string to = nameOfHoleInUse(after.bracket(end));
            if (nameOfHoleInUse(before.bracket(end)) != to) {
                words_.push_back(say("%1 %2 hole '%3'", after.name, say(endWords(end)), to));
            }
        }
    }
    void addMounts(const EnteredBallast&, const EnteredBallast&) const {}  // has none

    void addItemNumbers(const std::string& name, int before, int after, Scope scope) {
        for (const FieldRule* const row : rulesOf(scope)) {
            const FieldRule& rule = *row;
            FieldId id{.field = rule.field};
            for (id.axis = rule.hasAxis ? 0 : -1; id.axis < (rule.hasAxis ? 3 : 0); ++id.axis) {
                id.item = before;
                const std::optional<double> from = numberAt(comparison_.beforeCar, id);
                id.item = after;
                const std::optional<double> to = numberAt(comparison_.afterCar, id);
                if (from != to) {
                    addNumber(say("%1 %2", name, say(rule.words)), id, from, to);
                }
            }
        }
    }

    Comparison comparison_;
    Units units_;
    std::vector<std::string> words_{};
};

std::string joined(const std::vector<std::string>& words, std::size_t most) {
    std::string text;
    for (std::size_t at = 0; at < words.size() && at < most; ++at) {
        text += (at == 0 ? "" : ", ") + words[at];
    }
    return words.size() > most ? say("%1 and %2 more", text, words.size() - most) : text;
}

const Car* setupAt(const Car& car, const std::optional<int>& setup) {
    const bool exists = setup && *setup >= 0 && static_cast<std::size_t>(*setup) < car.kept.size();
    return exists ? car.kept[static_cast<std::size_t>(*setup)].car.get() : nullptr;
}

/// The car that the one on the bench is told against, or null.
const Car* lastSetup(const Car& car) {
    const auto last = std::ranges::find_if(car.passes.rbegin(), car.passes.rend(), [&car](const Pass& pass) {
        return setupAt(car, pass.setup) != nullptr;
    });
    if (last != car.passes.rend()) {
        return setupAt(car, last->setup);
    }
    return car.kept.empty() ? nullptr : car.kept.back().car.get();
}

bool isKeptUnder(const Car& car, const std::string& name) {
    return std::ranges::find(car.kept, name, &KeptSetup::name) != car.kept.end();
}

/// Words of a changed number of a pass, or nothing.
void addPassNumber(std::vector<std::string>& words, const std::string& name, const OptionalNumber& before,
                   const OptionalNumber& after, PassUnit unit, Units units) {
    if (!before || !after || *before == *after) {
        return;
    }
    // A tenth of a psi is finer than any gauge; a hundredth shows what was typed.
    const double change = toShown(*after, unit, units) - toShown(*before, unit, units);
    const std::string text = plainDecimal(std::round(change * 100) / 100);
    words.push_back(say("%1 %2 %3", name, withSign(text.empty() ? "0" : text), markOf(unit, units)));
}

/// One line for both tires of an axle where they changed alike.
void addAxlePressures(std::vector<std::string>& words, const std::string& both, const Pass& before,
                      const Pass& after, std::array<PassField, 2> tires, Units units) {
    const auto change = [&](PassField tire) {
        const OptionalNumber& from = numberOf(before, tire);
        const OptionalNumber& to = numberOf(after, tire);
        return from && to ? std::optional(*to - *from) : std::nullopt;
    };
    constexpr double kSame = 1e-6;  // kPa: what rounding leaves
    const std::optional<double> left = change(tires[0]);
    const std::optional<double> right = change(tires[1]);
    if (left && right && *left != 0 && std::abs(*left - *right) < kSame) {
        addPassNumber(words, both, numberOf(before, tires[0]), numberOf(after, tires[0]),
                      PassUnit::kilopascal, units);
        return;
    }
    for (const PassField tire : tires) {
        addPassNumber(words, say(ruleOf(tire).words), numberOf(before, tire), numberOf(after, tire),
                      PassUnit::kilopascal, units);
    }
}

void addPlace(std::vector<std::string>& words, const Pass& before, const Pass& after) {
    if (!before.place.empty() && !after.place.empty() && before.place != after.place) {
        words.push_back(say("place %1", after.place));
    }
    const bool otherKind =
        before.surface.kind && after.surface.kind && before.surface.kind != after.surface.kind;
    const bool otherName = !before.surface.name.empty() && !after.surface.name.empty() &&
                           before.surface.name != after.surface.name;
    if (otherKind) {
        words.push_back(say("surface %1", say(nameOf(*after.surface.kind))));
    }
    if (otherName) {
        words.push_back(say("surface %1", after.surface.name));
    }
}

}  // namespace

bool isSameSetup(const Car& one, const Car& other) {
    return setupOf(one) == setupOf(other);
}

std::optional<int> keptSetup(const Car& car) {
    const Car setup = setupOf(car);
    for (std::size_t count = car.kept.size(); count > 0; --count) {
        if (setupOf(*car.kept[count - 1].car) == setup) {
            return static_cast<int>(count) - 1;
        }
    }
    return std::nullopt;
}

std::vector<std::string> setupChanges(const Car& before, const Car& after, Units units) {
    return ChangeWords(before, after, units).list();
}

std::string nameForSetup(const Car& car) {
    constexpr std::size_t kMostNamed = 3;
    const Car* last = lastSetup(car);
    std::string name =
        last == nullptr ? say("first setup") : joined(setupChanges(*last, car, car.units), kMostNamed);
    if (name.empty()) {
        name = say("other entries");  // names, or holes that are not in use
    }
    std::string own = name;
    for (int number = 2; isKeptUnder(car, own); ++number) {
        own = say("%1 (%2)", name, number);
    }
    return own;
}

std::string changesSincePassBefore(const Car& car, std::size_t index, Units units) {
    if (index == 0 || index >= car.passes.size()) {
        return {};
    }
    const Pass& before = car.passes[index - 1];
    const Pass& after = car.passes[index];
    const Car* from = setupAt(car, before.setup);
    const Car* to = setupAt(car, after.setup);
    std::vector<std::string> words;
    if (from != nullptr && to != nullptr && from != to) {
        words = setupChanges(*from, *to, units);
    }
    addAxlePressures(words, say("front tire pressures"), before, after,
                     {PassField::leftFrontPressure, PassField::rightFrontPressure}, units);
    addAxlePressures(words, say("rear tire pressures"), before, after,
                     {PassField::leftRearPressure, PassField::rightRearPressure}, units);
    addPassNumber(words, say("launch"), before.launchRpm, after.launchRpm, PassUnit::rpm, units);
    addPlace(words, before, after);
    return joined(words, words.size());
}

}  // namespace bolthole
