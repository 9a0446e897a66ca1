#include "widgets/pages/roll/rod_effect_facts.h"

#include <QStringList>
#include <cmath>

#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/rod_effect.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kAngleToMention = 5e-5;     // rad: what three thousandths of a degree are
constexpr double kLengthToMention = 2.5e-5;  // m

QString withMark(double value, Quantity quantity, NumberStyle style) {
    return QString::fromStdString(
        withUnit(fieldText(std::abs(value), quantity, style), quantity, style.units));
}

// Thousandths of an inch, hundredths of a millimeter.
QString smallLength(double value, Units units) {
    const bool inch = units == Units::inch;
    return QStringLiteral("%1 %2").arg(
        QString::number(std::abs(value) / shownUnit(Quantity::length, units), 'f', inch ? 3 : 2),
        unitText(Quantity::length, units));
}

QString angle(double value) {
    return QString::number(std::abs(value) / kRadiansPerDegree, 'f', 2) + QStringLiteral("°");
}

/// How much longer the rod is made, and what that is called.
struct Step {
    double change;
    QString words;
};

Step stepOf(const Link& link, NumberStyle style) {
    if (link.adjuster) {
        const double whole = link.adjuster->pitch * link.adjuster->threadedEnds;
        return {whole, tr("1 turn longer, %1").arg(smallLength(whole, style.units))};
    }
    const double tape = style.units == Units::inch ? kMetresPerInch / 16 : kMetresPerMillimetre;
    return {tape, tr("%1 longer").arg(withMark(tape, Quantity::length, style))};
}

QString sideWord(Side side) {
    return side == Side::left ? tr(" (left)") : side == Side::right ? tr(" (right)") : QString();
}

void addPart(QStringList& parts, double value, double least, const QString& plus, const QString& minus) {
    if (std::abs(value) >= least) {
        parts << (value > 0 ? plus : minus);
    }
}

QString effectWords(const RodEffect& effect, Units units) {
    QStringList parts;
    const QString yaw = angle(effect.yaw);
    addPart(parts, effect.yaw, kAngleToMention, tr("axle turns %1 to the left").arg(yaw),
            tr("axle turns %1 to the right").arg(yaw));
    const QString forward = smallLength(effect.forward, units);
    addPart(parts, effect.forward, kLengthToMention, tr("center %1 forward").arg(forward),
            tr("center %1 back").arg(forward));
    const QString left = smallLength(effect.left, units);
    addPart(parts, effect.left, kLengthToMention, tr("%1 to the left").arg(left),
            tr("%1 to the right").arg(left));
    if (effect.bind > kLengthToMention) {
        parts << tr("▲ the links then misfit by %1 more: bushings and brackets take it up")
                     .arg(smallLength(effect.bind, units));
    }
    return parts.isEmpty() ? tr("axle stays where it is") : parts.join(QStringLiteral(", "));
}

// Of a link, as the figures of its rods begin.
std::string linkId(const Car& car, int link) {
    return "link_" + std::to_string(link + 1) + '_' +
           snakeCase(car.links[static_cast<std::size_t>(link)].name);
}

std::string rodId(const Car& car, const RodSide& rod) {
    return linkId(car, rod.link) + (rod.side == Side::left    ? "_left"
                                    : rod.side == Side::right ? "_right"
                                                              : "");
}

std::vector<FactNumber> effectNumbers(const std::string& id, double longer, const RodEffect& effect) {
    return {fineNumber(id + "_longer", longer, Quantity::length),
            fineNumber(id + "_pinion", effect.pinion, Quantity::angle),
            fineNumber(id + "_yaw", effect.yaw, Quantity::angle),
            fineNumber(id + "_forward", effect.forward, Quantity::length),
            fineNumber(id + "_to_left", effect.left, Quantity::length),
            fineNumber(id + "_bind", effect.bind, Quantity::length)};
}

Fact effectFact(const Car& car, const RodSide& rod, NumberStyle style) {
    const Link& link = car.links[static_cast<std::size_t>(rod.link)];
    const Step step = stepOf(link, style);
    const QString label = capitalized(linkName(car, rod.link)) + sideWord(rod.side);
    const RodEffectResult result = rodEffect(car, rod, step.change, style.units);
    if (!result.effect) {
        return {label, QStringLiteral("—"), QString::fromStdString(result.refusal), false};
    }
    const double pinion = result.effect->pinion;
    const QString value =
        std::abs(pinion) < kAngleToMention
            ? tr("pinion stays")
            : tr("pinion %1 nose %2").arg(angle(pinion), pinion > 0 ? tr("up") : tr("down"));
    return {label,
            value,
            step.words + QStringLiteral(": ") + effectWords(*result.effect, style.units),
            false,
            FactNumber{},
            {},
            effectNumbers(rodId(car, rod), step.change, *result.effect)};
}

void addDifferences(std::vector<Fact>& facts, const Car& car, NumberStyle style) {
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const int number = static_cast<int>(index);
        const std::optional<double> difference =
            car.links[index].side == Side::left ? lengthDifference(car, number) : std::nullopt;
        if (!difference) {
            continue;
        }
        const QString size = smallLength(*difference, style.units);
        facts.push_back(
            {capitalized(linkName(car, number)),
             size,
             std::abs(*difference) < kLengthToMention ? tr("left and right are alike")
             : *difference > 0                        ? tr("the left link is longer")
                                                      : tr("the right link is longer"),
             false,
             FactNumber{},
             {},
             {fineNumber(linkId(car, number) + "_left_less_right", *difference, Quantity::length)}});
    }
}

}  // namespace

std::vector<Fact> rodEffectFacts(const Car& car, NumberStyle style) {
    std::vector<Fact> facts;
    addDifferences(facts, car, style);
    for (const RodSide& rod : rodSides(car)) {
        facts.push_back(effectFact(car, rod, style));
    }
    return facts;
}

QString rodEffectWords() {
    return tr(
        "At ride, the body held level and every other link as it is: how the housing stands for it. How much "
        "of it "
        "goes into the tires as preload depends on springs, bushings and tires; the corner weights show it. "
        "Car on "
        "rated stands, wheels chocked, before a link is turned; jam nuts tight and thread engaged "
        "afterward.");
}

}  // namespace bolthole
