#include "widgets/pages/driveline/driveline_cards.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kFarBound = 2.5;  // times the curves' largest value; a bound farther off is not reached
constexpr double kPercent = 0.01;

/// A curve's figure, of the coasting and of the wound-up driveline.
using DrivelineFigure = std::function<double(const DrivelineFigures&)>;

/// Writes the cards of a reading.
class CardWriter {
  public:
    CardWriter(const DrivelineReading& reading, Units units) : reading_(reading), units_(units) {}

    std::vector<ChartCard> write() {
        addJoints();
        addCard(tr("Equivalent angle"), tr("deg"), kRadiansPerDegree, 0.5 * kRadiansPerDegree);
        addCurve(tr("together"), ChartMark::circle);
        addBound(kMostEquivalent, tr("usual most, 3°"));
        addCard(tr("Speed variation"), QStringLiteral("%"), kPercent, 0.05 * kPercent);
        addCurve(tr("pinion"), ChartMark::circle);
        addBound(speedSwing(kMostEquivalent), tr("that of 3°"));
        addPlunge();
        return std::move(cards_);
    }

    /// The figures of the cards' curves, a list a card.
    [[nodiscard]] static std::vector<std::vector<DrivelineFigure>> figures(std::size_t joints) {
        std::vector<std::vector<DrivelineFigure>> figures(4);
        for (std::size_t joint = 0; joint < joints; ++joint) {
            figures[0].push_back([joint](const DrivelineFigures& at) { return at.angle[joint]; });
        }
        figures[1] = {[](const DrivelineFigures& at) { return at.equivalent; }};
        figures[2] = {[](const DrivelineFigures& at) { return at.swing; }};
        figures[3] = {[](const DrivelineFigures& at) { return at.plunge; }};
        return figures;
    }

  private:
    void addCard(const QString& title, const QString& unitText, double unit, double minimumSpan) {
        ChartCard card;
        card.titles = {title};
        card.unitText = unitText;
        card.unit = unit;
        card.minimumSpan = minimumSpan;
        card.least = 0;
        card.neverBelowLeast = true;
        cards_.push_back(std::move(card));
        curves_ = 0;
    }

    void addCurve(const QString& name, ChartMark mark) {
        const DrivelineFigure& figure = figures_[cards_.size() - 1][curves_++];
        ChartSeries coasting{.name = name};
        coasting.mark = mark;
        coasting.color = mark == ChartMark::circle    ? &Theme::instantCenter
                         : mark == ChartMark::diamond ? &Theme::crosswise
                                                      : &Theme::ink;
        coasting.width = mark == ChartMark::circle ? 2.2 : 1.6;
        ChartSeries woundUp = coasting;
        woundUp.line = ChartLine::dashed;
        woundUp.width *= 0.8;
        woundUp.isGhost = true;
        for (const DrivelineRow& row : reading_.rows) {
            coasting.points.push_back({row.travel, row.usable ? figure(row.coasting) : kNaN});
            woundUp.points.push_back({row.travel, row.usable ? figure(row.woundUp) : kNaN});
        }
        cards_.back().series.push_back(std::move(coasting));
        if (reading_.windUp) {
            cards_.back().series.push_back(std::move(woundUp));
        }
    }

    // After the card's curves.
    void addBound(double at, const QString& words) {
        ChartCard& card = cards_.back();
        card.rules.push_back(limitRule(at, words));
        const bool sets = std::exchange(card.rules.back().setsRange, false);
        const Extent extent = extentOf(card);
        const double farthest = std::max({card.minimumSpan, std::abs(extent.least), std::abs(extent.most)});
        card.rules.back().setsRange = sets && extent.holdsAny() && std::abs(at) <= kFarBound * farthest;
    }

    void addJoints() {
        addCard(tr("Joint angles"), tr("deg"), kRadiansPerDegree, 0.5 * kRadiansPerDegree);
        cards_.back().share = 1.35;
        const std::size_t joints = reading_.ride.coasting.joints;
        for (std::size_t joint = 0; joint < joints; ++joint) {
            addCurve(jointWords(joint, joints), joint == 0            ? ChartMark::circle
                                                : joint + 1 == joints ? ChartMark::square
                                                                      : ChartMark::diamond);
        }
        if (reading_.line.jointLimit) {
            addBound(*reading_.line.jointLimit, tr("limit entered"));
        }
        if (const std::optional<double> speed = reading_.setup.speed()) {
            const AngleLimit limit = jointAngleLimit(*speed);
            const QString words = limit.pastTable ? tr("less than this at %1 rpm") : tr("limit at %1 rpm");
            addBound(limit.angle, words.arg(std::lround(*speed / kRpm)));
        }
    }

    void addPlunge() {
        addCard(tr("Slip-yoke travel"), unitText(Quantity::length, units_),
                shownUnit(Quantity::length, units_), 0.1 * kMetresPerInch);
        cards_.back().decimals = units_ == Units::inch ? 2 : 1;
        cards_.back().least = -std::numeric_limits<double>::infinity();
        cards_.back().neverBelowLeast = false;
        addCurve(tr("out"), ChartMark::circle);
        if (const std::optional<SlipYoke>& slip = reading_.setup.slip) {
            addBound(slip->engagement - slip->leastEngagement, tr("too little spline"));
            addBound(-slip->inward, tr("bottoms"));
        }
    }

    const DrivelineReading& reading_;
    Units units_;
    std::vector<std::vector<DrivelineFigure>> figures_ = figures(reading_.ride.coasting.joints);
    std::vector<ChartCard> cards_;
    std::size_t curves_ = 0;  // of the last card
};

}  // namespace

std::vector<ChartCard> drivelineCurveCards(const DrivelineReading& reading, Units units,
                                           const std::vector<OutOfReach>& outOfReach) {
    std::vector<ChartCard> cards = CardWriter(reading, units).write();
    for (ChartCard& card : cards) {
        for (const OutOfReach& stretch : outOfReach) {
            card.stretches.push_back({stretch.from, stretch.to});
        }
    }
    return cards;
}

std::vector<std::vector<ChartValue>> drivelineCurveValues(const DrivelineReading& reading,
                                                          const std::vector<ChartCard>& cards,
                                                          const DrivelineRow& cursor) {
    const auto figures = CardWriter::figures(reading.ride.coasting.joints);
    const std::size_t each = reading.windUp ? 2 : 1;  // series a curve
    std::vector<std::vector<ChartValue>> values(cards.size());
    for (std::size_t card = 0; card < cards.size(); ++card) {
        values[card].resize(cards[card].series.size());
        for (std::size_t curve = 0; curve < figures[card].size(); ++curve) {
            const ChartSeries& series = cards[card].series[curve * each];
            const auto at = [&](const DrivelineFigures& of) {
                return cursor.usable ? figures[card][curve](of) : kNaN;
            };
            ChartValue& value = values[card][curve * each];
            value = chartValue(cards[card], series, at(cursor.coasting));
            const QString woundUp = valueText(cards[card], at(cursor.woundUp));
            if (figures[card].size() == 1 && !value.spoken.isEmpty()) {
                value.spoken.replace(0, series.name.size(), cards[card].titles.first().toLower());
            }
            if (reading.windUp) {
                value.other = QStringLiteral("┊ ") + woundUp;
                value.spoken += value.spoken.isEmpty() ? QString() : tr(", wound up %1").arg(woundUp);
            }
        }
    }
    return values;
}

}  // namespace bolthole
