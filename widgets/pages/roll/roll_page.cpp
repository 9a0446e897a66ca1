#include "widgets/pages/roll/roll_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/curves/curve_chart.h"
#include "widgets/fields/car_sheet_groups.h"
#include "widgets/kit/section.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/roll/rod_effect_facts.h"
#include "widgets/pages/roll/roll_facts.h"
#include "widgets/pages/roll/roll_picture.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr double kFirstRoll = 2 * kRadiansPerDegree;  // so that the picture shows what it is about

// A quantity against roll or travel.
ChartCard cardOf(const QString& title, Quantity quantity, Units units, int decimals, double minimumSpan) {
    ChartCard card;
    card.titles = {title};
    card.unitText = unitText(quantity, units);
    card.unit = shownUnit(quantity, units);
    card.decimals = decimals;
    card.minimumSpan = minimumSpan;
    return card;
}
ChartCard lengthCard(const QString& title, Units units, double minimumSpan, bool fine) {
    return cardOf(title, Quantity::length, units, (units == Units::inch ? 2 : 1) + (fine ? 1 : 0),
                  minimumSpan);
}

// `rows`: which of a RollTrace, against roll or travel; the baseline's too where there is one.
template <typename Value>
ChartCard filled(ChartCard card, const RollReading& reading, std::vector<RollFigures> RollTrace::*rows,
                 double RollFigures::*imposed, Value value) {
    const auto add = [&](const RollTrace& trace, ChartSeries series) {
        for (const RollFigures& row : trace.*rows) {
            series.points.push_back({row.*imposed, row.usable ? value(row) : kNaN});
        }
        card.series.push_back(std::move(series));
    };
    add(reading.roll, {.name = card.titles.first().toLower()});
    if (reading.baseline) {
        add(*reading.baseline, {.name = {},
                                .color = &Theme::baseline,
                                .line = ChartLine::dashed,
                                .width = 1.4,
                                .isGhost = true});
    }
    return card;
}

// What stands at the cursor in cards of one curve, a value a card.
std::vector<std::vector<ChartValue>> valuesAt(const std::vector<ChartCard>& cards,
                                              const std::vector<double>& values) {
    std::vector<std::vector<ChartValue>> there(cards.size());
    for (std::size_t card = 0; card < cards.size(); ++card) {
        there[card] = {chartValue(cards[card], cards[card].series.front(), values[card])};
        there[card].resize(cards[card].series.size());
    }
    return there;
}

// A chart of the page's, in its height.
CurveChart* addChart(const QString& name, const QString& how, QSize size, bool labelsImposed, QWidget* box) {
    ChartLook look;
    look.size = size;
    look.leastSize = size - QSize(size.width() * 2 / 5, 0);
    look.labelsImposed = labelsImposed;
    auto* chart = new CurveChart(name, look, box);
    chart->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    chart->setToolTip(how);
    return chart;
}

double sidewaysOf(const RollFigures& row) {
    return row.pose.y;
}
double steerOf(const RollFigures& row) {
    return headingOf(row.pose);
}

}  // namespace

RollPage::RollPage(QWidget* parent)
    : WorkPage(tr("Roll"), parent),
      roll_(kFirstRoll),
      message_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)) {
    message_->setWordWrap(true);
    message_->setFont(textFont(TextSize::body));
    results()->addWidget(message_);
    rollBox_ = new QWidget(this);
    auto* column = new QVBoxLayout(rollBox_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(12);
    results()->addWidget(rollBox_);
    buildPictures();
    buildRollCurves();
    buildTravelCurves();
    bind_ = new FactCard(tr("Bind in roll"), rollBox_);
    column->addWidget(bind_);
    sides_ = new FactCard(tr("Instant centers of each side at ride"), this);
    results()->addWidget(sides_);
    rods_ = new FactCard(tr("Preload: what one link's length does"), this);
    results()->addWidget(rods_);
    results()->addStretch(1);
}

RollPage::~RollPage() = default;

void RollPage::buildPictures() {
    auto* card = new Card(rollBox_);
    auto* line = new QHBoxLayout(card);
    line->setContentsMargins(Card::kInset, Card::kInset, Card::kInset, Card::kInset);
    line->setSpacing(Card::kInset);
    picture_ = new RollPicture(card);
    axisPicture_ = new RollAxisPicture(card);
    line->addWidget(picture_, 5);
    line->addWidget(axisPicture_, 6);
    rollBox_->layout()->addWidget(card);
}

// The baseline's line is explained where there is one.
void RollPage::showCurveWords() {
    const QString dashed = reading_.baseline ? tr(" Dashed: before.") : QString();
    rollWords_->showText(tr("Against body roll at ride; plus is the body rolled to its left. Steer and "
                            "laterally: plus is to the left.") +
                         dashed);
    travelWords_->showText(tr("Through travel, without roll. Lateral: plus is to the left.") + dashed);
}

void RollPage::buildRollCurves() {
    auto* box = new QWidget(rollBox_);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    rollWords_ = new ToneLabel(ToneLabel::Tone::muted, {}, box);
    rollWords_->setWordWrap(true);
    column->addWidget(rollWords_);
    rollCurves_ =
        addChart(tr("Curves against roll"),
                 tr("Drag to roll the axle; Left, Right, Page Up, Page Down, Home, End; 0 for none"),
                 {640, 228}, true, box);
    column->addWidget(rollCurves_);
    rollBox_->layout()->addWidget(box);
    connect(rollCurves_, &CurveChart::cursorMoved, this, &RollPage::moveRoll);
}

// Beside them the two cards that speak of the same.
void RollPage::buildTravelCurves() {
    auto* box = new QWidget(rollBox_);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    travelWords_ = new ToneLabel(ToneLabel::Tone::muted, {}, box);
    column->addWidget(travelWords_);
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    column->addLayout(line);
    slider_ = new TravelSlider(box);
    travelCurves_ =
        addChart(tr("Roll center and shift through travel"),
                 tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"),
                 {430, 300}, false, box);
    line->addWidget(slider_);
    line->addWidget(travelCurves_, 5);
    line->addSpacing(8);
    auto* cards = new QVBoxLayout;
    cards->setSpacing(12);
    center_ = new FactCard(tr("Roll center and roll axis"), box);
    shift_ = new FactCard(tr("Axle lateral shift through travel"), box);
    cards->addWidget(center_, 1);
    cards->addWidget(shift_);
    line->addLayout(cards, 6);
    line->setAlignment(slider_, Qt::AlignTop);
    line->setAlignment(travelCurves_, Qt::AlignTop);
    slider_->setFixedHeight(travelCurves_->sizeHint().height());
    rollBox_->layout()->addWidget(box);
    connect(travelCurves_, &CurveChart::plotAreaChanged, slider_, &TravelSlider::alignTrack);
    connect(travelCurves_, &CurveChart::cursorMoved, this, &RollPage::moveTravel);
    connect(slider_, &TravelSlider::cursorMoved, this, &RollPage::moveTravel);
}

std::string RollPage::shapeOf(const Car&) const {
    return "roll";
}

void RollPage::fill(QWidget* content, QVBoxLayout* column) {
    auto* section = new Section(tr("Tires, track and travel"), content);
    for (const Field field : {Field::rearTireRadius, Field::frontTireRadius, Field::wheelbase,
                              Field::rearTrack, Field::bump, Field::droop, Field::frontRatio}) {
        section->body()->addWidget(row(carField(field), tr("not measured"), section));
    }
    column->addWidget(section);
    auto* note =
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("The links with their holes and lengths stand on the Links page. The rest of the "
                         "roll figures follows "
                         "from them.\n\nRoll center: the point of the axle's upright plane that does not "
                         "move laterally as the "
                         "axle rolls under the body. Roll oversteer: the body rolls left and the rear axle "
                         "steers left, out "
                         "of the turn. How far the body rolls is for springs and bars."),
                      content);
    note->setWordWrap(true);
    note->setContentsMargins(4, 0, 4, 0);
    column->addWidget(note);
}

void RollPage::refresh() {
    reading_ = readRoll(state());
    showMessage();
    rollBox_->setVisible(reading_.isThere());
    slider_->showTrace(state());
    showCards();
    rods_->showFacts(rodEffectFacts(state().solvedCar, state().style), rodEffectWords());
    if (!reading_.isThere()) {
        return;
    }
    axisPicture_->showRoll(reading_, state().style.units);
    showCurves();
    showRoll();
    showTravel();
}

void RollPage::showMessage() {
    QStringList said;
    if (!reading_.problem.empty()) {
        said << QStringLiteral("▲ ") + QString::fromStdString(reading_.problem);
    }
    for (const MoveReport* end : {&reading_.roll.rightEnd, &reading_.roll.leftEnd}) {
        if (reading_.isThere() && !end->usable()) {
            said << QStringLiteral("▲ ") +
                        capitalized(QString::fromStdString(describeRollEnd(*end, reading_.car))) +
                        QLatin1Char('.');
        }
    }
    sayWhatIsWrong(*message_, said);
}

void RollPage::showCurves() {
    showCurveWords();
    const Units units = state().style.units;
    const double inch = kMetresPerInch;
    const auto center = [](const RollFigures& row) { return row.center; };
    const auto squareCenter = [](const RollFigures& row) { return row.squareCenter; };
    const auto bindOf = [](const RollFigures& row) { return row.bind; };
    ChartCard steer = cardOf(tr("Axle steer"), Quantity::angle, units, 3, 0.1 * kRadiansPerDegree);
    ChartCard bind = lengthCard(tr("Bind"), units, 0.01 * inch, true);
    bind.least = 0;
    bind.neverBelowLeast = true;
    std::vector<ChartCard> cards;
    const auto add = [&](ChartCard card, std::vector<RollFigures> RollTrace::*rows,
                         double RollFigures::*imposed, auto value) {
        cards.push_back(filled(std::move(card), reading_, rows, imposed, value));
    };
    add(lengthCard(tr("Roll center"), units, 0.2 * inch, false), &RollTrace::rows, &RollFigures::roll,
        center);
    add(std::move(steer), &RollTrace::rows, &RollFigures::roll, steerOf);
    add(lengthCard(tr("Lateral"), units, 0.1 * inch, true), &RollTrace::rows, &RollFigures::roll, sidewaysOf);
    add(std::move(bind), &RollTrace::rows, &RollFigures::roll, bindOf);
    const bool hasStarts = restsOnStarts(state().car, {Scope::hole, Scope::link});
    rollCurves_->showCards(rollAxis(RollRange().most), withStartingMark(cards, hasStarts));
    cards.clear();
    add(lengthCard(tr("Roll center"), units, 0.5 * inch, false), &RollTrace::travel, &RollFigures::travel,
        squareCenter);
    add(lengthCard(tr("Lateral"), units, 0.1 * inch, true), &RollTrace::travel, &RollFigures::travel,
        sidewaysOf);
    travelCurves_->showCards(travelAxis(travelSpan(state()), units), withStartingMark(cards, hasStarts));
}

void RollPage::showCards() {
    const Units units = state().style.units;
    CardFacts facts = rollCards(reading_, units);
    if (state().showsUncertainty && state().trace.ride.usable) {
        uncertainty_.addTo(
            facts, state().solvedCar, units,
            [units](const Car& car) { return rollCards(readRollBriefly(car), units); },
            whileCurrent([this] { showCards(); }));
    }
    sides_->showFacts(facts[0], sideCenterWords(reading_.centers));
    if (reading_.isThere()) {
        center_->showFacts(facts[1]);
        shift_->showFacts(facts[2], shiftWords(reading_));
        bind_->showFacts(facts[3], bindWords(reading_, units));
    }
}

void RollPage::moveRoll(double roll) {
    roll_ = roll;
    showRoll();
}

void RollPage::moveTravel(double travel) {
    emit cursorMoved(travel);
    showTravel();
}

void RollPage::showRoll() {
    shown_ = reading_.atRoll(roll_);
    const double none = kNaN;
    const bool there = shown_.usable;
    picture_->showRoll(reading_, shown_, state().style.units);
    rollCurves_->showCursor(
        roll_,
        valuesAt(rollCurves_->cards(), {shown_.center, there ? headingOf(shown_.pose) : none,
                                        there ? shown_.pose.y : none, shown_.bind}),
        rollWords(roll_));
}

void RollPage::showTravel() {
    slider_->showCursor(state());
    const double travel = state().cursorTravel;
    const RollFigures at = reading_.atTravel(travel);
    travelCurves_->showCursor(
        travel, valuesAt(travelCurves_->cards(), {at.squareCenter, at.usable ? at.pose.y : kNaN}));
}

void RollPage::showEvent(QShowEvent* event) {
    WorkPage::showEvent(event);
    if (reading_.isThere()) {
        showTravel();  // the cursor may have moved while the page was hidden
    }
}

}  // namespace bolthole
