#include "geometry/dynamics/shock_sheet.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/statics/entered_setup.h"
#include "geometry/statics/springs.h"
#include "geometry/units/csv.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr double kEstimatedSpeed = 0.25;  // m/s
constexpr std::size_t kShortened = 40;

/// What sheets are in.
struct ShockUnit {
    double length;  // m
    double force;   // N
    double mass;    // kg
};
ShockUnit unitOf(Units units) {
    return {shownUnit(Quantity::length, units), shownUnit(Quantity::force, units),
            shownUnit(Quantity::mass, units)};
}

std::vector<std::string> shockCells(std::string_view line) {
    const bool hasOthers = line.find_first_of("\t;") != std::string_view::npos;
    const std::string_view between = hasOthers ? "\t; \r" : "\t; ,\r";
    std::vector<std::string> cells;
    for (std::size_t from = line.find_first_not_of(between); from != std::string_view::npos;) {
        const std::size_t to = std::min(line.find_first_of(between, from), line.size());
        cells.emplace_back(line.substr(from, to - from));
        if (hasOthers) {
            std::ranges::replace(cells.back(), ',', '.');
        }
        from = line.find_first_not_of(between, to);
    }
    return cells;
}

std::optional<int> shockClick(const std::string& cell) {
    const std::optional<double> number = csvNumber(cell);
    const bool isClick = number && *number == std::floor(*number) && std::abs(*number) <= kMaxClick;
    return isClick ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

/// Goes through a text line by line and collects what is refused.
class LineReader {
  public:
    virtual ~LineReader() = default;

    ShockWay read(std::string_view text) {
        while (!text.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            const std::string_view line = text.substr(0, end);
            text.remove_prefix(std::min(end + 1, text.size()));
            ++line_;
            const std::vector<std::string> cells = shockCells(line);
            if (cells.empty()) {
                continue;
            }
            if (const std::string reason = take(cells); !reason.empty()) {
                result_.refused.push_back({line_, std::string(line.substr(0, kShortened)), reason});
            }
        }
        if (result_.refused.empty()) {
            finish();
        }
        return std::move(result_);
    }

  protected:
    /// Takes a line's cells; why not.
    virtual std::string take(const std::vector<std::string>& cells) = 0;
    virtual void finish() = 0;

    ShockWay result_{};

  private:
    int line_ = 0;
};

class TableReader final : public LineReader {
  public:
    explicit TableReader(Units units) : unit_(unitOf(units)) {}

  private:
    std::string take(const std::vector<std::string>& cells) override {
        if (rows_.empty() && result_.way.clicks.empty() && !csvNumber(cells.front())) {
            return takeHeading(cells);
        }
        std::vector<double> numbers;
        for (const std::string& cell : cells) {
            const std::optional<double> number = csvNumber(cell);
            if (!number || *number < 0) {
                return say("expected a speed and forces, all numbers from 0");
            }
            numbers.push_back(*number);
        }
        if (result_.way.clicks.empty()) {
            result_.way.clicks = {0};
        }
        const std::size_t wanted = 1 + result_.way.clicks.size();
        if (numbers.size() != wanted) {
            return say("expected %1 numbers: a speed and a force a click", wanted);
        }
        const double speed = numbers.front() * unit_.length;
        if (speed == 0) {
            return {};  // a shock at rest resists with nothing; sheets often say so
        }
        if (!result_.speeds.empty() && speed <= result_.speeds.back()) {
            return say("expected rising speeds");
        }
        result_.speeds.push_back(speed);
        rows_.push_back(std::move(numbers));
        return {};
    }

    std::string takeHeading(const std::vector<std::string>& cells) {
        if (cells.size() == 2 && !csvNumber(cells[1])) {
            return {};  // "speed force" names no click
        }
        for (std::size_t at = 1; at < cells.size(); ++at) {
            const std::optional<int> click = shockClick(cells[at]);
            if (!click || (!result_.way.clicks.empty() && *click <= result_.way.clicks.back())) {
                return say("expected clicks after the first word, rising whole numbers");
            }
            result_.way.clicks.push_back(*click);
        }
        return {};
    }

    void finish() override {
        for (std::size_t click = 0; click < result_.way.clicks.size(); ++click) {
            std::vector<double>& forces = result_.way.force.emplace_back();
            for (const std::vector<double>& row : rows_) {
                forces.push_back(row[1 + click] * unit_.force);
            }
        }
        if (rows_.empty()) {
            result_.way = {};
        }
    }

    ShockUnit unit_;
    std::vector<std::vector<double>> rows_;
};

class ReadingsReader final : public LineReader {
  public:
    explicit ReadingsReader(Units units) : unit_(unitOf(units)) {}

  private:
    struct Sums {
        double forceSpeed = 0;
        double speedSpeed = 0;
    };

    std::string take(const std::vector<std::string>& cells) override {
        if (lines_.empty() && !csvNumber(cells.front())) {
            return {};  // a heading
        }
        const std::optional<int> click = shockClick(cells.front());
        std::vector<double> numbers;
        for (std::size_t at = 1; at < cells.size(); ++at) {
            const std::optional<double> number = csvNumber(cells[at]);
            if (number && *number > 0) {
                numbers.push_back(*number);
            }
        }
        if (!click || cells.size() != 4 || numbers.size() != 3) {
            return say("expected a click, a weight, a stroke and seconds, the last three above 0");
        }
        const double force = numbers[0] * unit_.mass * kStandardGravity;
        const double speed = numbers[1] * unit_.length / numbers[2];
        Sums& sums = lines_[*click];
        sums.forceSpeed += force * speed;
        sums.speedSpeed += speed * speed;
        fastest_ = std::max(fastest_, speed);
        return {};
    }

    void finish() override {
        if (lines_.empty()) {
            return;
        }
        result_.speeds = {fastest_};
        for (const auto& [click, sums] : lines_) {
            result_.way.clicks.push_back(click);
            result_.way.force.push_back({fastest_ * sums.forceSpeed / sums.speedSpeed});
        }
    }

    ShockUnit unit_;
    std::map<int, Sums> lines_;
    double fastest_ = 0;
};

/// A click's forces at other speeds.
std::vector<double> forcesAt(const std::vector<double>& speeds, const std::vector<double>& known,
                             const std::vector<double>& force) {
    std::vector<double> result;
    for (const double speed : speeds) {
        const auto next = std::ranges::upper_bound(known, speed);
        const auto last = static_cast<std::size_t>(std::min(next - known.begin(), std::ssize(known) - 1));
        const double from = last == 0 ? 0 : known[last - 1];
        const double at = last == 0 ? 0 : force[last - 1];
        result.push_back(std::max(0.0, at + (force[last] - at) * (speed - from) / (known[last] - from)));
    }
    return result;
}

DampingWay resampled(const ShockWay& from, const std::vector<double>& speeds) {
    DampingWay way = from.way;
    for (std::vector<double>& force : way.force) {
        force = forcesAt(speeds, from.speeds, force);
    }
    way.at = way.clicks.front();
    return way;
}

}  // namespace

ShockWay readShockTable(std::string_view text, Units units) {
    return TableReader(units).read(text);
}

ShockWay readShockReadings(std::string_view text, Units units) {
    return ReadingsReader(units).read(text);
}

std::string shockTableText(const Damping& damping, bool isBump, Units units) {
    const DampingWay& way = isBump ? damping.bump : damping.rebound;
    const ShockUnit unit = unitOf(units);
    const auto number = [](double value) { return plainDecimal(std::round(value * 1000) / 1000); };
    if (way.force.empty()) {
        return {};
    }
    std::string text = units == Units::inch ? "in/s" : "mm/s";
    for (std::size_t row = 0; row < way.force.size(); ++row) {
        text += '\t' + std::to_string(way.clickOf(row));
    }
    for (std::size_t at = 0; at < damping.speeds.size(); ++at) {
        text += '\n' + number(damping.speeds[at] / unit.length);
        for (const std::vector<double>& force : way.force) {
            text += '\t' + number(force[at] / unit.force);
        }
    }
    return text;
}

std::optional<Damping> joined(const ShockWay& bump, const ShockWay& rebound) {
    if (!bump.isThere() || !rebound.isThere()) {
        return std::nullopt;
    }
    Damping damping;
    std::ranges::merge(bump.speeds, rebound.speeds, std::back_inserter(damping.speeds));
    damping.speeds.erase(std::unique(damping.speeds.begin(), damping.speeds.end()), damping.speeds.end());
    damping.bump = resampled(bump, damping.speeds);
    damping.rebound = resampled(rebound, damping.speeds);
    return damping;
}

Damping estimatedDamping(double rate, double mass, double motionRatio) {
    const double critical = 2 * std::sqrt(rate * mass) / (motionRatio * motionRatio);
    const auto line = [&](double share) {
        return DampingWay{{0}, {{share * critical * kEstimatedSpeed}}, 0.0};
    };
    Damping damping{{kEstimatedSpeed}, line(kEstimatedBump), line(kEstimatedRebound)};
    damping.isEstimate = true;
    return damping;
}

namespace {

std::optional<double> rearWheelRate(const Car& car) {
    if (car.wheelRates.rear.wheel) {
        return car.wheelRates.rear.wheel;
    }
    const std::vector<SuspensionPart> parts = usableSprings(car);
    const std::optional<WheelRates> rates = springRates(car, parts, 0);
    return rates ? std::optional(rates->wheel) : std::nullopt;
}

double rearMotionRatio(const Car& car, const SuspensionPart& part) {
    if (!refusal(part).empty()) {
        return 0;
    }
    const std::vector<LineFigures> lines = lineFiguresAt(car, std::span(&part, 1), 0);
    return lines.empty() ? 0 : std::abs(lines.front().motionRatio);
}

}  // namespace

std::optional<Damping> estimatedDamping(const Car& car, int item) {
    const bool isFront = item < 0;
    const double axle =
        isFront ? car.cornerWeights.front() : car.cornerWeights.total() - car.cornerWeights.front();
    const double unsprung = (isFront ? car.launch.frontUnsprungMass : car.launch.unsprungMass).value_or(0);
    const std::optional<double> rate = isFront ? car.wheelRates.front.wheel : rearWheelRate(car);
    const double ratio = isFront ? car.launch.front.motionRatio.value_or(1)
                                 : rearMotionRatio(car, car.springs[static_cast<std::size_t>(item)]);
    const double mass = (axle - unsprung) / 2;
    if (!rate || !(*rate > 0) || !(mass > 0) || !(ratio > 0)) {
        return std::nullopt;
    }
    return estimatedDamping(*rate, mass, ratio);
}

}  // namespace bolthole
