#include "widgets/pages/roll/roll_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/fields/car_sheet_groups.h"
#include "widgets/kit/section.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/roll/rod_effect_facts.h"
#include "widgets/pages/roll/roll_curves.h"
#include "widgets/pages/roll/roll_facts.h"
#include "widgets/pages/roll/roll_picture.h"
#include "widgets/scales/travel_slider.h"

namespace bolthole {

namespace {

constexpr double kFirstRoll = 2 * kRadiansPerDegree;  // so that the picture shows what it is about

// A length against roll or travel.
RollCurve lengthCurve(const QString& title, Units units, double minimumSpan, bool fine) {
    RollCurve curve;
    curve.title = title;
    curve.unitText = unitText(Quantity::length, units);
    curve.unit = shownUnit(Quantity::length, units);
    curve.decimals = (units == Units::inch ? 2 : 1) + (fine ? 1 : 0);
    curve.minimumSpan = minimumSpan;
    return curve;
}

// `rows`: which of a RollTrace, against roll or travel; the before's too where there is one.
template <typename Value>
RollCurve filled(RollCurve curve, const RollReading& reading, std::vector<RollFigures> RollTrace::*rows,
                 double RollFigures::*imposed, Value value) {
    const auto take = [&](const RollTrace& trace, std::vector<RollCurve::Point>& points) {
        for (const RollFigures& row : trace.*rows) {
            points.push_back({row.*imposed, row.usable ? value(row) : std::nan("")});
        }
    };
    take(reading.roll, curve.points);
    if (reading.before) {
        take(*reading.before, curve.before);
    }
    return curve;
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

void RollPage::buildRollCurves() {
    auto* box = new QWidget(rollBox_);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* key = new ToneLabel(ToneLabel::Tone::muted,
                              tr("Against body roll at ride; plus is the body rolled to its left. Steer and "
                                 "laterally: plus is to the left."),
                              box);
    key->setWordWrap(true);
    column->addWidget(key);
    rollCurves_ = new RollCurves(ImposedAxis::rollAcross, tr("Curves against roll"), 4, box);
    column->addWidget(rollCurves_);
    rollBox_->layout()->addWidget(box);
    connect(rollCurves_, &RollCurves::cursorMoved, this, &RollPage::moveRoll);
}

// Beside them the two cards that speak of the same.
void RollPage::buildTravelCurves() {
    auto* box = new QWidget(rollBox_);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(new ToneLabel(ToneLabel::Tone::muted,
                                    tr("Through travel, without roll. Lateral: plus is to the left."), box));
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    column->addLayout(line);
    slider_ = new TravelSlider(box);
    travelCurves_ = new RollCurves(ImposedAxis::travelUp, tr("Roll center and shift through travel"), 2, box);
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
    connect(travelCurves_, &RollCurves::plotAreaChanged, slider_, &TravelSlider::alignTrack);
    connect(travelCurves_, &RollCurves::cursorMoved, this, &RollPage::moveTravel);
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
    if (!state().traceIsCurrent) {
        said << tr("▲ The car can't be computed as it stands: %1")
                    .arg(QString::fromStdString(state().problem));
    }
    said.removeAll(QString());
    message_->showText(said.join(QLatin1Char(' ')));
    message_->setVisible(!said.isEmpty());
}

void RollPage::showCurves() {
    const Units units = state().style.units;
    const double inch = kMetresPerInch;
    RollCurve steer;
    steer.title = tr("Axle steer");
    steer.unitText = unitText(Quantity::angle, units);
    steer.unit = kRadiansPerDegree;
    steer.decimals = 3;
    steer.minimumSpan = 0.1 * kRadiansPerDegree;
    RollCurve bind = lengthCurve(tr("Bind"), units, 0.01 * inch, true);
    bind.neverNegative = true;
    std::vector<RollCurve> curves;
    curves.push_back(filled(lengthCurve(tr("Roll center"), units, 0.2 * inch, false), reading_,
                            &RollTrace::rows, &RollFigures::roll,
                            [](const RollFigures& row) { return row.center; }));
    curves.push_back(filled(std::move(steer), reading_, &RollTrace::rows, &RollFigures::roll, steerOf));
    curves.push_back(filled(lengthCurve(tr("Lateral"), units, 0.1 * inch, true), reading_, &RollTrace::rows,
                            &RollFigures::roll, sidewaysOf));
    curves.push_back(filled(std::move(bind), reading_, &RollTrace::rows, &RollFigures::roll,
                            [](const RollFigures& row) { return row.bind; }));
    const TravelSpan span = travelSpan(state());
    rollCurves_->showCurves(std::move(curves), span, RollRange().most, units);
    curves.clear();
    curves.push_back(filled(lengthCurve(tr("Roll center"), units, 0.5 * inch, false), reading_,
                            &RollTrace::travel, &RollFigures::travel,
                            [](const RollFigures& row) { return row.squareCenter; }));
    curves.push_back(filled(lengthCurve(tr("Lateral"), units, 0.1 * inch, true), reading_, &RollTrace::travel,
                            &RollFigures::travel, sidewaysOf));
    travelCurves_->showCurves(std::move(curves), span, RollRange().most, units);
}

void RollPage::showCards() {
    const Units units = state().style.units;
    CardFacts facts = rollCards(reading_, units);
    if (state().showsSure && state().trace.ride.usable) {
        spread_.addTo(
            facts, state().solvedCar, units,
            [units](const Car& car) { return rollCards(readRollBriefly(car), units); },
            [this] { showCards(); });
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
    const double none = std::nan("");
    const bool there = shown_.usable;
    picture_->showRoll(reading_, shown_, state().style.units);
    rollCurves_->showCursor(
        roll_, rollWords(roll_),
        {shown_.center, there ? headingOf(shown_.pose) : none, there ? shown_.pose.y : none, shown_.bind});
}

void RollPage::showTravel() {
    slider_->showCursor(state());
    const double travel = state().cursorTravel;
    const RollFigures at = reading_.atTravel(travel);
    travelCurves_->showCursor(travel, travelInWords(travel, state().style.units),
                              {at.squareCenter, at.usable ? at.pose.y : std::nan("")});
}

void RollPage::showEvent(QShowEvent* event) {
    WorkPage::showEvent(event);
    if (reading_.isThere()) {
        showTravel();  // the cursor may have moved while the page was hidden
    }
}

}  // namespace bolthole
