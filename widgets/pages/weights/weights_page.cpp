#include "widgets/pages/weights/weights_page.h"

#include <QVBoxLayout>
#include <array>
#include <cmath>

#include "geometry/statics/entered_setup.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/fields/wheel_grid.h"
#include "widgets/pages/weights/weights_facts.h"
#include "widgets/pages/weights/weights_picture.h"
#include "widgets/pages/weights/weights_sections.h"

namespace bolthole {

WeightsPage::WeightsPage(QWidget* parent)
    : WorkPage(tr("Weights"), parent),
      picture_(new PlanPicture(this)),
      weighedCard_(new FactCard(tr("By the corner weights"), this)),
      ballastCard_(new FactCard(tr("With what is aboard now"), this)),
      heightCard_(new FactCard(tr("CG height"), this)),
      driverCard_(new FactCard(tr("Driver and other reading"), this)),
      padsCard_(new FactCard(tr("Pads"), this)),
      ticketCard_(new FactCard(tr("Truck-scale ticket"), this)) {
    weighedCard_->addAbove(picture_);
    for (FactCard* card : {weighedCard_, ballastCard_, heightCard_, driverCard_, padsCard_, ticketCard_}) {
        results()->addWidget(card);
    }
    results()->addStretch(1);
}

std::string WeightsPage::shapeOf(const Car& car) const {
    return std::to_string(car.ballast.size());
}

void WeightsPage::fill(QWidget* content, QVBoxLayout* column) {
    column->addWidget(carSection(content));
    column->addWidget(cornerSection(content));
    column->addWidget(driverSection(content));
    column->addWidget(padSection(content));
    column->addWidget(rateSection(content));
    addBallast(content, column);
    column->addWidget(ticketSection(content));
    column->addWidget(heightSection(content));
    refreshFields();
}

void WeightsPage::addRows(Section* section, std::initializer_list<Field> fields, const QString& whenEmpty) {
    for (const Field field : fields) {
        section->body()->addWidget(row(carField(field), whenEmpty, section));
    }
}

Section* WeightsPage::carSection(QWidget* content) {
    auto* section = new Section(tr("Car"), content);
    addRows(section,
            {Field::wheelbase, Field::frontTrack, Field::rearTrack, Field::frontTireRadius,
             Field::rearTireRadius},
            tr("not measured"));
    return section;
}

Section* WeightsPage::cornerSection(QWidget* content) {
    auto* section = new Section(tr("Corner weights"), content);
    const QString howTo =
        tr("Whether the driver sat in the car for the four corner weights. The other reading is then the one "
           "with the driver the other way.");
    section->body()->addWidget(choiceRow(Choice::cornersAre, tr("Corners weighed"),
                                         {tr("with driver"), tr("without driver")}, howTo, section));
    corners_ = new WheelGrid(hub(), tr("Weights"), kCornerFields, section);
    section->body()->addWidget(corners_);
    otherTitle_ = sectionWords(ToneLabel::Tone::muted, QString(), section);
    section->body()->addWidget(otherTitle_);
    other_ = new WheelGrid(hub(), tr("Weights"), kOtherCornerFields, section);
    section->body()->addWidget(other_);
    addRows(section, {Field::scaleUncertainty}, tr("usual: 1 kg or 2.2 lb"));
    return section;
}

Section* WeightsPage::driverSection(QWidget* content) {
    auto* section = new Section(tr("Driver"), content);
    addRows(section, {Field::driverMass}, tr("not weighed"));
    seat_ = new PointRow(hub(), tr("Seat"), carField(Field::driverAt, 0), section);
    section->body()->addWidget(seat_);
    return section;
}

Section* WeightsPage::padSection(QWidget* content) {
    auto* section = new Section(tr("Pads"), content);
    section->body()->addWidget(
        sectionWords(ToneLabel::Tone::muted,
                     tr("Heights of the four pads' tops over any one level, one of them 0."), section));
    pads_ = new WheelGrid(hub(), tr("Heights"), kPadFields, section);
    section->body()->addWidget(pads_);
    return section;
}

Section* WeightsPage::rateSection(QWidget* content) {
    auto* section = new Section(tr("Wheel rates"), content);
    section->body()->addWidget(sectionWords(
        ToneLabel::Tone::muted,
        tr("Used for what unlevel pads do to the corners, for how loads share out over them, and on the "
           "Loads page for squat and roll. A rear wheel rate left empty is taken from the springs, if "
           "those are entered."),
        section));
    addRows(section,
            {Field::frontWheelRate, Field::frontTireRate, Field::frontRollRate, Field::rearWheelRate,
             Field::rearTireRate, Field::rearRollRate},
            tr("not known"));
    return section;
}

// The list is built anew as loads come and go: what is entered next is named after that.
void WeightsPage::addBallast(QWidget* content, QVBoxLayout* column) {
    ballast_ = new BallastSection(hub(), content);
    column->addWidget(ballast_);
    connect(ballast_, &BallastSection::addRequested, this, [this](const QString& name) {
        const std::size_t before = state().car.ballast.size();
        EnteredBallast load;
        load.name = name.toStdString();
        hub().request(AddBallast{load});
        if (state().car.ballast.size() > before) {
            ballast_->enterBallast(static_cast<int>(before));
        }
    });
    connect(ballast_, &BallastSection::removalRequested, this, [this](int item) {
        hub().request(RemoveBallast{item});
        ballast_->enterBallast(item);
    });
}

Section* WeightsPage::ticketSection(QWidget* content) {
    auto* section = new Section(tr("Truck-scale ticket"), content);
    section->body()->addWidget(choiceRow(Choice::ticketDriver, tr("That scale, weighed"),
                                         {tr("with driver"), tr("without driver")},
                                         tr("Whether the driver sat in the car on that scale."), section));
    addRows(section, {Field::ticketFront, Field::ticketRear, Field::ticketTotal}, tr("not weighed"));
    addRows(section, {Field::ticketUncertainty}, tr("usual: 20 kg or 43 lb"));
    return section;
}

Section* WeightsPage::heightSection(QWidget* content) {
    auto* section = new Section(tr("CG height"), content);
    section->body()->addWidget(choiceRow(
        Choice::cgHeightFrom, tr("CG height from"), {tr("entered"), tr("lift method"), tr("estimate")},
        tr("Where the CG height comes from that anti-squat and everything else is computed with: the "
           "number entered, the lift below, or what cars as built usually have."),
        section));
    addRows(section, {Field::cgHeight}, QString());
    addLift(section);
    return section;
}

void WeightsPage::addLift(Section* section) {
    section->body()->addWidget(sectionWords(ToneLabel::Tone::plain, tr("Lift method"), section));
    section->body()->addWidget(sectionWords(
        ToneLabel::Tone::problem,
        tr("▲ Chock the wheels that stay down. Rated stands under the raised end before anyone goes near; "
           "nobody in, under or beside the car. Springs blocked at ride height; fluids and loads as they "
           "were."),
        section));
    const QStringList ends{tr("front"), tr("rear")};
    section->body()->addWidget(choiceRow(Choice::liftRaised, tr("Raised end"), ends,
                                         tr("Which end of the car was raised."), section));
    addRows(section, {Field::liftHeight}, tr("not lifted"));
    section->body()->addWidget(choiceRow(
        Choice::liftRead, tr("Axle read"), ends,
        tr("Which axle was weighed with the car raised: the one on the ground as a rule."), section));
    addRows(section, {Field::liftReading}, tr("not weighed"));
    section->body()->addWidget(choiceRow(
        Choice::liftDriver, tr("Lifted, weighed"), {tr("with driver"), tr("without driver")},
        tr("Which of the two readings on level ground the lift belongs to. Nobody sits in a raised car: lift "
           "it without the driver, or with ballast of the driver's weight strapped into the seat."),
        section));
}

void WeightsPage::refresh() {
    refreshFields();
    if (state().faults.empty()) {
        showCards();
    } else {
        showUncomputable();
    }
}

void WeightsPage::refreshFields() {
    const Car& car = state().car;
    const CardNumbers numbers(car.units);
    hub().refreshWords();
    corners_->refresh(tr("total %1").arg(numbers.mass(car.cornerWeights.total())));
    const std::optional<CornerWeights> other = car.weighing.other.whole();
    other_->refresh(other ? tr("total %1").arg(numbers.mass(other->total())) : enteredOf(car.weighing.other));
    otherTitle_->showText(car.cornersAre == DriverSeat::aboard
                              ? tr("The other reading, without driver; may stay empty")
                              : tr("The other reading, with driver; may stay empty"));
    pads_->refresh(enteredOf(car.weighing.pads));
    seat_->refresh();
    ballast_->refresh();
}

void WeightsPage::showCards() {
    const Car& car = state().car;
    const FullStance stance = fullStanceOf(car);
    std::optional<double> antiSquat;
    if (state().traceIsCurrent && std::isfinite(state().trace.ride[Figure::antiSquat])) {
        antiSquat = state().trace.ride[Figure::antiSquat];
    }
    picture_->showCar(car, true);
    const std::vector<CardWords> words = weightCards(car, stance, antiSquat);
    CardFacts facts = factsOf(words);
    if (state().showsUncertainty) {
        uncertainty_.addTo(
            facts, car, car.units, [](const Car& varied) { return variedWeightFacts(varied); },
            whileCurrent([this] { showCards(); }));
    }
    const std::array cards{weighedCard_, ballastCard_, heightCard_, driverCard_, padsCard_, ticketCard_};
    for (std::size_t card = 0; card < cards.size(); ++card) {
        cards[card]->showFacts(facts[card], words[card].note);
    }
}

void WeightsPage::showUncomputable() {
    uncertainty_.forget();
    picture_->showCar(state().car, false);
    const QString why = QString::fromStdString(state().problem);
    for (FactCard* card : {weighedCard_, ballastCard_, heightCard_, driverCard_, padsCard_, ticketCard_}) {
        card->showFacts({}, tr("Not computed. %1").arg(why));
    }
}

}  // namespace bolthole
