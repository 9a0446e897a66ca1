#include "widgets/pages/days/pass_book.h"

#include <algorithm>

#include "geometry/compare/setup_changes.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

// By the cars' addresses: a kept setup's car is never changed in place.
bool areSameKept(const std::vector<KeptSetup>& one, const std::vector<KeptSetup>& other) {
    return std::ranges::equal(one, other, [](const KeptSetup& a, const KeptSetup& b) {
        return a.car == b.car && a.name == b.name;
    });
}

}  // namespace

QString changeText(const std::string& words) {
    return QString::fromStdString(words).replace(QStringLiteral(" -"), QStringLiteral(" ") + kMinus);
}

bool PassBook::take(const Car& car, NumberStyle style) {
    const bool isSame = style == style_ && car.passes == car_.passes && areSameKept(car.kept, car_.kept);
    if (isSame) {
        return false;
    }
    car_ = car;
    style_ = style;
    runs_ = runsOf(car_);
    scatter_ = scatterOf(car_);
    changes_.assign(car_.passes.size(), std::nullopt);
    return true;
}

QString PassBook::letterOf(std::size_t row) const {
    return QString::fromStdString(bolthole::letterOf(runs_.ofPass[row]));
}

const Car* PassBook::setupOf(std::size_t row) const {
    const std::optional<int>& setup = car_.passes[row].setup;
    return setup ? car_.kept[static_cast<std::size_t>(*setup)].car.get() : nullptr;
}

const QString& PassBook::changes(std::size_t row) const {
    std::optional<QString>& words = changes_[row];
    if (!words) {
        words = changeText(changesSincePassBefore(car_, row, style_.units));
    }
    return *words;
}

}  // namespace bolthole
