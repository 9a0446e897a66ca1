#include "widgets/words/change_words.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostHolesListed = 2;

QString figure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(fineFigureText(value, quantity, units));
}

QString endName(End end) {
    return end == End::chassis ? tr("chassis") : tr("axle");
}

class LineWriter {
  public:
    LineWriter(const Comparison& comparison, NumberStyle style) : comparison_(comparison), style_(style) {}

    std::vector<ChangeLine> write() {
        addBolts();
        addLengths();
        addUnshared();
        addNumbers();
        addHoles();
        return std::move(lines_);
    }

  private:
    [[nodiscard]] QString nameOf(const SharedLink& link) const {
        return linkName(comparison_.afterCar, link.after);
    }

    void addBolts() {
        for (const BoltMove& move : comparison_.bolts) {
            if (move.from != move.to) {
                const QString bolts = move.bolts == 1 ? tr("1 bolt") : tr("%n bolts", move.bolts);
                lines_.push_back(
                    {tr("%1, %2: bolt from %3 to %4, %5")
                         .arg(capitalized(nameOf(move.link)), endName(move.end),
                              QString::fromStdString(move.from), QString::fromStdString(move.to), bolts),
                     {}});
            }
        }
    }

    // As in the link's field; with decimals where that would read like the other.
    [[nodiscard]] QString lengthText(double length, double other) const {
        const QString text = number(length, Quantity::length);
        return text == number(other, Quantity::length) ? figure(length, Quantity::length, style_.units)
                                                       : text;
    }

    void addLengths() {
        const Units units = style_.units;
        for (const LengthMove& move : comparison_.lengths) {
            const QString rods = move.rods == 1 ? tr("1 link") : tr("%n links", move.rods);
            lines_.push_back({tr("%1 length: %2 → %3 %4, %5, %6")
                                  .arg(capitalized(nameOf(move.link)), lengthText(move.before, move.after),
                                       lengthText(move.after, move.before), unitText(Quantity::length, units),
                                       turnWords(move), rods),
                              {}});
        }
    }

    void addUnshared() {
        for (const UnsharedLink& link : comparison_.unshared) {
            const QString name =
                link.name.empty() ? tr("a link without a name") : QString::fromStdString(link.name);
            lines_.push_back({link.inBefore ? tr("%1: only in the baseline").arg(capitalized(name))
                                            : tr("%1: only in the current car").arg(capitalized(name)),
                              {}});
        }
    }

    [[nodiscard]] QString number(const std::optional<double>& value, Quantity quantity) const {
        return value ? QString::fromStdString(fieldText(*value, quantity, style_)).replace(u'-', u'\u2212')
                     : tr("none");
    }

    // "from 13 1/2 to 14 in"
    [[nodiscard]] QString fromTo(const NumberMove& move) const {
        const Quantity quantity = quantityOf(move.id.field);
        const QString unit = unitText(quantity, style_.units);
        const QString gap = unit.isEmpty() || unit == QStringLiteral("°") ? QString() : QStringLiteral(" ");
        return tr("from %1 to %2").arg(number(move.before, quantity), number(move.after, quantity)) + gap +
               unit;
    }

    // What belongs together stands on one line.
    [[nodiscard]] QString headOf(const FieldId& id) const {
        switch (id.field) {
            case Field::leftFrontWeight:
            case Field::rightFrontWeight:
            case Field::leftRearWeight:
            case Field::rightRearWeight:
                return tr("Corner weights");
            case Field::pinionJoint:
                return tr("Rear U-joint");
            case Field::outputJoint:
                return tr("Front U-joint");
            default:
                return capitalized(wordsFor(carWith(id), id).name);
        }
    }

    [[nodiscard]] QString partOf(const FieldId& id) const {
        switch (id.field) {
            case Field::leftFrontWeight:
                return tr("left front ");
            case Field::rightFrontWeight:
                return tr("right front ");
            case Field::leftRearWeight:
                return tr("left rear ");
            case Field::rightRearWeight:
                return tr("right rear ");
            case Field::pinionJoint:
            case Field::outputJoint:
                return axisWord(id.axis, Side::center) + QLatin1Char(' ');
            default:
                return {};
        }
    }

    [[nodiscard]] const Car& carWith(const FieldId& id) const {
        return numberAt(comparison_.afterCar, id) ? comparison_.afterCar : comparison_.beforeCar;
    }

    void addNumbers() {
        QString head;
        QStringList parts;
        const auto finish = [&] {
            if (!parts.isEmpty()) {
                lines_.push_back({head + QStringLiteral(": ") + parts.join(tr(", ")), {}});
            }
            parts.clear();
        };
        for (const NumberMove& move : comparison_.numbers) {
            if (const QString next = headOf(move.id); next != head) {
                finish();
                head = next;
            }
            parts << partOf(move.id) + fromTo(move);
        }
        finish();
    }

    // "1/4 in forward, 1/8 in down": what a hundredth of a millimeter would show is left out.
    [[nodiscard]] QString shift(const Eigen::Vector3d& by) const {
        static constexpr std::array<std::array<const char*, 2>, 3> kWays{
            {{"forward", "back"}, {"left", "right"}, {"up", "down"}}};
        QStringList parts;
        for (int axis = 0; axis < 3; ++axis) {
            if (std::abs(by[axis]) > 1e-5) {
                parts << QStringLiteral("%1 %2 %3")
                             .arg(number(std::abs(by[axis]), Quantity::length),
                                  unitText(Quantity::length, style_.units),
                                  tr(kWays[static_cast<std::size_t>(axis)][by[axis] < 0 ? 1 : 0]));
            }
        }
        return parts.join(tr(", "));
    }

    void addHoles() {
        QStringList holes;
        for (const BoltMove& move : comparison_.bolts) {
            if (move.from == move.to) {
                holes << tr("%1, %2: hole %3 stands %4 of where it was")
                             .arg(capitalized(nameOf(move.link)), endName(move.end),
                                  QString::fromStdString(move.to), shift(move.by));
            }
        }
        if (static_cast<std::size_t>(holes.size()) <= kMostHolesListed) {
            for (const QString& hole : holes) {
                lines_.push_back({hole, {}});
            }
            return;
        }
        lines_.push_back(
            {tr("%1 current holes stand elsewhere: moved, measured anew or recalculated").arg(holes.size()),
             holes.join(QLatin1Char('\n'))});
    }

    const Comparison& comparison_;
    NumberStyle style_;
    std::vector<ChangeLine> lines_;
};

}  // namespace

std::vector<ChangeLine> changeLines(const Comparison& comparison, NumberStyle style) {
    return LineWriter(comparison, style).write();
}

QString turnWords(const LengthMove& move) {
    const bool longer = move.after > move.before;
    if (!move.turns) {
        return longer ? tr("longer, without an adjuster: a new link")
                      : tr("shorter, without an adjuster: a new link");
    }
    const QString turns =
        QString::fromStdString(figureText(std::abs(*move.turns), Quantity::ratio, Units::inch));
    if (turns.count(QLatin1Char('0')) + turns.count(QLatin1Char('.')) == turns.size()) {
        return longer ? tr("longer by less than the adjuster's step")
                      : tr("shorter by less than the adjuster's step");
    }
    return longer ? tr("%1 turns longer").arg(turns) : tr("%1 turns shorter").arg(turns);
}

QString signedFigure(double value, Quantity quantity, Units units) {
    return signedText(figure(value, quantity, units));
}

QString textChange(const QString& before, const QString& after) {
    if (before == QString(kDash) || after == QString(kDash)) {
        return kDash;
    }
    const auto number = [](QString text) { return text.replace(kMinus, QLatin1Char('-')).toDouble(); };
    const auto decimals = [](const QString& text) {
        const qsizetype point = text.indexOf(QLatin1Char('.'));
        return point < 0 ? 0 : static_cast<int>(text.size() - point - 1);
    };
    const double change = number(after) - number(before);
    const QString size = QString::number(std::abs(change), 'f', std::max(decimals(before), decimals(after)));
    const QString signedSize = signedText(size);
    return change < 0 && signedSize != size ? kMinus + size : signedSize;
}

QString fineShownChange(double before, double after, Quantity quantity, Units units) {
    return textChange(figure(before, quantity, units), figure(after, quantity, units));
}

}  // namespace bolthole
