#include "widgets/pages/launch/launch_curves.h"

#include <algorithm>
#include <functional>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/launch_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr double kMostSlip = 60;       // percent: a spinning tire's slip would flatten all else
constexpr double kLowestPart = 0.6;    // of the least load
constexpr double kMainShare = 1.7;     // of the room, for the card that decides
constexpr int kLeastHeight = 1040;     // px
constexpr double kShortestAxis = 0.1;  // s

using RowValue = std::function<double(const LaunchFilm& film, const LaunchRow& row)>;

/// Builds the cards of one launch.
class CardMaker {
  public:
    CardMaker(const LaunchFilm& film, const LaunchFilm* baseline, Units units)
        : film_(film), baseline_(baseline), units_(units) {}

    [[nodiscard]] ChartCard card(const QString& title, Quantity quantity) const {
        ChartCard made;
        made.titles = {title};
        made.unitText = unitText(quantity, units_);
        made.unit = shownUnit(quantity, units_);
        made.decimals = 0;
        return made;
    }
    /// Both launches' curve; the baseline's dashed.
    void add(ChartCard& card, const QString& name, ThemeColor color, const RowValue& value) const {
        if (baseline_ != nullptr) {
            ChartSeries ghost{.name = {}, .color = &Theme::baseline, .line = ChartLine::dashed, .width = 1.2};
            ghost.isGhost = true;
            ghost.points = points(*baseline_, value);
            ghosts_.push_back(std::move(ghost));
        }
        ChartSeries series{.name = name, .color = color};
        series.points = points(film_, value);
        card.series.push_back(std::move(series));
    }
    /// After the curves of the card, so that a gap counts those from 0.
    void addGhosts(ChartCard& card) const {
        card.series.insert(card.series.end(), ghosts_.begin(), ghosts_.end());
        ghosts_.clear();
    }
    void mark(ChartCard& card, std::initializer_list<LaunchEventKind> kinds) const {
        for (const LaunchEventKind kind : kinds) {
            for (const LaunchEvent& event : film_.run.events) {
                if (event.kind == kind) {
                    card.events.push_back({event.time, eventWords(film_, event)});
                    break;
                }
            }
        }
    }

  private:
    [[nodiscard]] static std::vector<ChartPoint> points(const LaunchFilm& film, const RowValue& value) {
        std::vector<ChartPoint> made;
        made.reserve(film.run.rows.size());
        for (const LaunchRow& row : film.run.rows) {
            made.push_back({row.time, value(film, row)});
        }
        return made;
    }

    const LaunchFilm& film_;
    const LaunchFilm* baseline_;
    Units units_;
    mutable std::vector<ChartSeries> ghosts_;
};

/// Below this a force card has nothing to say: the first moments, in which thrust builds up, would flatten
/// the rest.
double lowestShown(const LaunchFilm& film, double LaunchRow::*force) {
    const std::vector<LaunchRow>& rows = film.run.rows;
    return rows.empty() ? 0 : kLowestPart * (*std::ranges::min_element(rows, {}, force)).*force;
}

ChartCard loadCard(const CardMaker& maker, const LaunchFilm& film) {
    ChartCard card = maker.card(tr("Rear load and what the thrust needs of it"), Quantity::force);
    card.share = kMainShare;
    card.least = lowestShown(film, &LaunchRow::rearLoad);
    maker.add(card, tr("rear load"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return row.rearLoad; });
    maker.add(card, tr("needed"), &Theme::upper,
              [](const LaunchFilm& of, const LaunchRow& row) { return neededLoad(of.inputs, row.thrust); });
    maker.addGhosts(card);
    card.gaps = {ChartGap{}};
    maker.mark(card, {LaunchEventKind::toppedOut, LaunchEventKind::frontTiresUp, LaunchEventKind::rearTiresUp,
                      LaunchEventKind::sixtyFeet});
    return card;
}

ChartCard thrustCard(const CardMaker& maker, const LaunchFilm& film) {
    ChartCard card = maker.card(tr("Thrust and grip"), Quantity::force);
    card.least = lowestShown(film, &LaunchRow::grip);
    maker.add(card, tr("thrust"), &Theme::upper,
              [](const LaunchFilm&, const LaunchRow& row) { return row.thrust; });
    maker.add(card, tr("grip"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return row.grip; });
    maker.addGhosts(card);
    return card;
}

ChartCard travelCard(const CardMaker& maker, const LaunchFilm& film, Units units) {
    ChartCard card = maker.card(tr("Nose and rear, travel from ride, rise +"), Quantity::length);
    card.decimals = units == Units::inch ? 1 : 0;
    maker.add(card, tr("nose"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return -row.frontTravel; });
    maker.add(card, tr("rear"), &Theme::lower,
              [](const LaunchFilm&, const LaunchRow& row) { return -row.rearTravel; });
    maker.addGhosts(card);
    card.rules = {referenceRule(0), limitRule(film.inputs.front.droop, tr("front tops out")),
                  limitRule(-film.inputs.front.bump, tr("front bottoms"))};
    card.rules[1].setsRange = true;
    card.rules[2].setsRange = false;
    maker.mark(card, {LaunchEventKind::toppedOut});
    return card;
}

ChartCard slipCard(const CardMaker& maker) {
    ChartCard card = maker.card(tr("Slip"), Quantity::percent);
    card.most = kMostSlip;
    card.minimumSpan = 10;
    maker.add(card, tr("slip"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return 100 * row.slip; });
    maker.addGhosts(card);
    return card;
}

ChartCard engineCard(const CardMaker& maker) {
    ChartCard card = maker.card(tr("Engine and turbine"), Quantity::speed);
    maker.add(card, tr("engine"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return row.engineSpeed; });
    maker.add(card, tr("turbine"), &Theme::upper,
              [](const LaunchFilm&, const LaunchRow& row) { return row.turbineSpeed; });
    maker.addGhosts(card);
    maker.mark(card, {LaunchEventKind::coupled, LaunchEventKind::locked});
    return card;
}

ChartCard accelerationCard(const CardMaker& maker) {
    ChartCard card = maker.card(tr("Acceleration"), Quantity::ratio);
    card.unitText = tr("g");
    card.unit = kStandardGravity;
    card.decimals = 2;
    maker.add(card, tr("acceleration"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return row.acceleration; });
    maker.addGhosts(card);
    return card;
}

ChartCard distanceCard(const CardMaker& maker, Units units) {
    ChartCard card = maker.card(tr("Distance of the front wheel"), Quantity::length);
    card.unitText = units == Units::inch ? tr("ft") : tr("m");
    card.unit = units == Units::inch ? 12 * kMetresPerInch : 1;
    card.decimals = 1;
    maker.add(card, tr("distance"), &Theme::instantCenter,
              [](const LaunchFilm&, const LaunchRow& row) { return row.distance; });
    maker.addGhosts(card);
    return card;
}

ChartLook launchLook() {
    ChartLook look;
    look.head = ChartLook::Head::beside;
    look.isStacked = true;
    look.canZoom = true;
    look.size = {600, kLeastHeight};
    look.leastSize = {320, kLeastHeight};
    return look;
}

}  // namespace

std::vector<ChartCard> launchCurveCards(const LaunchFilm& film, const LaunchFilm* baseline, Units units) {
    const CardMaker maker(film, baseline, units);
    return {loadCard(maker, film), thrustCard(maker, film), travelCard(maker, film, units), slipCard(maker),
            engineCard(maker),     accelerationCard(maker), distanceCard(maker, units)};
}

LaunchCurves::LaunchCurves(QWidget* parent) : CurveChart(tr("The launch over time"), launchLook(), parent) {
    setFocusPolicy(Qt::StrongFocus);
}

void LaunchCurves::showFilms(const LaunchFilm& film, const LaunchFilm* baseline, double end, Units units) {
    showCards(timeAxis(0, std::max(end, kShortestAxis)),
              withStartingMark(launchCurveCards(film, baseline, units),
                               restsOnStarts(film.car, {Scope::car, Scope::hole, Scope::link, Scope::spring,
                                                        Scope::mount, Scope::ballast})));
}

}  // namespace bolthole
