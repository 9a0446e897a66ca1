#include "widgets/pages/driveline/driveline_page.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/curves/curve_chart.h"
#include "widgets/fields/car_sheet_groups.h"
#include "widgets/fields/hole_grid.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/driveline/driveline_cards.h"
#include "widgets/pages/driveline/driveline_facts.h"
#include "widgets/pages/driveline/driveline_picture.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

FactCard* factCard(const QString& title, QVBoxLayout* column, QWidget* parent) {
    auto* card = new FactCard(title, parent);
    column->addWidget(card);
    return card;
}

}  // namespace

DrivelinePage::DrivelinePage(QWidget* parent)
    : WorkPage(tr("Driveline"), parent), message_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)) {
    message_->setWordWrap(true);
    message_->setFont(textFont(TextSize::body));
    results()->addWidget(message_);
    hint_ = new ToneLabel(
        ToneLabel::Tone::muted,
        tr("No driveline is entered. Add one at left: it starts with numbers that are not "
           "your car's, each of them to be measured. From then on joint angles, speed variation, "
           "slip-yoke travel and the pinion angle that cancels stand here."),
        this);
    hint_->setWordWrap(true);
    hint_->setFont(textFont(TextSize::body));
    results()->addWidget(hint_);
    buildPicture();
    buildCurves();
    pinion_ = factCard(tr("Pinion angle that cancels"), results(), this);
    ride_ = factCard(tr("Joints and speed variation at ride"), results(), this);
    travel_ = factCard(tr("Largest over the travel"), results(), this);
    speed_ = factCard(tr("At the shaft's highest speed"), results(), this);
    plunge_ = factCard(tr("Slip yoke"), results(), this);
    results()->addStretch(1);
}

DrivelinePage::~DrivelinePage() = default;

void DrivelinePage::buildPicture() {
    pictureCard_ = new Card(this);
    auto* layout = new QVBoxLayout(pictureCard_);
    layout->setContentsMargins(Card::kInset, Card::kInset, Card::kInset, Card::kInset);
    picture_ = new DrivelinePicture(pictureCard_);
    layout->addWidget(picture_);
    results()->addWidget(pictureCard_);
}

void DrivelinePage::buildCurves() {
    curvesBox_ = new QWidget(this);
    auto* column = new QVBoxLayout(curvesBox_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    curvesKey_ = new ToneLabel(ToneLabel::Tone::muted, QString(), curvesBox_);
    curvesKey_->setWordWrap(true);
    column->addWidget(curvesKey_);
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    slider_ = new TravelSlider(curvesBox_);
    ChartLook look;
    look.head = ChartLook::Head::keys;
    look.labelsImposed = false;
    look.size = {640, 330};
    look.leastSize = {460, 330};
    curves_ = new CurveChart(tr("Driveline through travel"), look, curvesBox_);
    curves_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    curves_->setToolTip(
        tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    line->addWidget(slider_);
    line->addWidget(curves_, 1);
    column->addLayout(line);
    results()->addWidget(curvesBox_);
    connect(curves_, &CurveChart::plotAreaChanged, slider_, &TravelSlider::alignTrack);
    connect(curves_, &CurveChart::cursorMoved, this, &DrivelinePage::moveCursor);
    connect(slider_, &TravelSlider::cursorMoved, this, &DrivelinePage::moveCursor);
}

std::string DrivelinePage::shapeOf(const Car& car) const {
    return car.driveline ? "driveline" : "none";
}

void DrivelinePage::fill(QWidget* content, QVBoxLayout* column) {
    joints_ = new DrivelineSection(hub(), content);
    column->addWidget(joints_);
    carrierTitle_ = carrierNote_ = nullptr;
    if (state().car.driveline) {
        column->addWidget(powerSection(content));
        column->addWidget(slipSection(content));
        column->addWidget(carrierSection(content));
    }
}

Section* DrivelinePage::powerSection(QWidget* content) {
    auto* section = new Section(tr("Under power"), content);
    for (const Field field : {Field::windUp, Field::engineSpeed, Field::shaftGear}) {
        section->body()->addWidget(row(carField(field), tr("not known"), section));
    }
    return section;
}

Section* DrivelinePage::slipSection(QWidget* content) {
    auto* section = new Section(tr("Slip yoke at ride height"), content);
    for (const Field field : {Field::slipEngagement, Field::slipLeast, Field::slipInward}) {
        section->body()->addWidget(row(carField(field), tr("not measured"), section));
    }
    return section;
}

Section* DrivelinePage::carrierSection(QWidget* content) {
    auto* section = new Section(tr("Carrier bearing and yokes"), content);
    carrierNote_ = new ToneLabel(ToneLabel::Tone::muted, QString(), section);
    carrierNote_->setWordWrap(true);
    carrierNote_->setContentsMargins(4, 0, 4, 0);
    section->body()->addWidget(carrierNote_);
    auto* grid = new QGridLayout;
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    carrierTitle_ = new ToneLabel(ToneLabel::Tone::muted, QString(), section);
    carrierTitle_->setContentsMargins(4, 0, 0, 0);
    grid->addWidget(carrierTitle_, 0, 0, 1, 4);
    addPointHeadings(grid, 1, 1, Side::center, section);
    auto* label = new QLabel(tr("joint"), section);
    label->setContentsMargins(10, 0, 0, 0);
    grid->addWidget(label, 2, 0);
    addPointFields(hub(), grid, 2, 1, carField(Field::carrierJoint), section);
    for (int part = 0; part < 4; ++part) {
        grid->setColumnStretch(part, 4);
    }
    section->body()->addLayout(grid);
    for (const Field field : {Field::frontYokeOffset, Field::rearYokeOffset}) {
        section->body()->addWidget(row(carField(field), tr("in phase"), section));
    }
    return section;
}

// A joint counts whole or not at all, and the page says which.
QString DrivelinePage::carrierWords() const {
    const EnteredPoint& joint = state().car.driveline->shaft.carrierJoint;
    const auto entered = std::count_if(joint.at.begin(), joint.at.end(),
                                       [](const OptionalNumber& number) { return number.has_value(); });
    if (entered == 3) {
        return tr("Two-piece shaft: the front piece is held by the carrier bearing.");
    }
    return entered == 0 ? tr("One-piece shaft. With a carrier bearing, enter the joint behind it.")
                        : tr("▲ The carrier joint counts only when forward, height and left are all entered; "
                             "until then the shaft is computed as one piece.");
}

void DrivelinePage::refresh() {
    joints_->refresh();
    if (carrierNote_ != nullptr) {
        carrierNote_->showText(carrierWords());
        carrierTitle_->showText(
            tr("Joint behind the carrier bearing, %1").arg(unitText(Quantity::length, state().style.units)));
    }
    reading_ = readDriveline(state());
    showMessage();
    for (QWidget* shown : {static_cast<QWidget*>(pictureCard_), curvesBox_, static_cast<QWidget*>(pinion_),
                           static_cast<QWidget*>(ride_), static_cast<QWidget*>(travel_),
                           static_cast<QWidget*>(speed_), static_cast<QWidget*>(plunge_)}) {
        shown->setVisible(reading_.isThere());
    }
    slider_->showTrace(state());
    if (reading_.isThere()) {
        const Units units = state().style.units;
        const bool hasStarts = restsOnStarts(state().car, {Scope::hole, Scope::link, Scope::driveline});
        curves_->showCards(
            travelAxis(travelSpan(state()), units),
            withStartingMark(drivelineCurveCards(reading_, units, outOfReach(state().trace)), hasStarts));
        showCards();
        showCursor();
    } else {
        uncertainty_.forget();
    }
}

void DrivelinePage::showMessage() {
    QStringList said;
    hint_->setVisible(!state().solvedCar.driveline);
    if (!reading_.problem.empty() && state().solvedCar.driveline) {
        said << QString::fromStdString(reading_.problem);
    }
    sayWhatIsWrong(*message_, said);
}

void DrivelinePage::showCards() {
    const Units units = state().style.units;
    curvesKey_->showText(
        reading_.windUp
            ? tr("Solid and bold: coasting. Dashed and after the ┊: wound up by %1. Upright lines: bounds.")
                  .arg(angleText(*reading_.windUp))
            : tr("Coasting. With a wind-up entered, the curves under power stand beside them, dashed. "
                 "Upright lines: bounds."));
    CardFacts facts = drivelineCards(reading_, units);
    if (state().showsUncertainty) {
        uncertainty_.addTo(
            facts, state().solvedCar, units,
            [units](const Car& car) { return drivelineCards(readDrivelineBriefly(car), units); },
            whileCurrent([this] { showCards(); }));
    }
    pinion_->showFacts(
        facts[0],
        tr("Pinion inclinations are those at ride, coasting, against the ground. Turned by shims or new "
           "brackets, the links stay as they are; adjusting links for it changes their lengths, and with "
           "them the instant center, a little: change, then check the next trace. Car on rated stands, "
           "wheels chocked, before a bolt comes out."));
    ride_->showFacts(facts[1]);
    travel_->showFacts(facts[2]);
    speed_->showFacts(facts[3]);
    plunge_->showFacts(facts[4],
                       tr("A shaft that comes out or jams at speed can wreck the car: a driveshaft loop "
                          "catches it, it does not replace spline."));
}

void DrivelinePage::moveCursor(double travel) {
    emit cursorMoved(travel);
    showCursor();
}

void DrivelinePage::showCursor() {
    if (!reading_.isThere()) {
        return;
    }
    slider_->showCursor(state());
    const DrivelineRow row = reading_.rowAt(state().cursor);
    curves_->showCursor(state().cursorTravel, drivelineCurveValues(reading_, curves_->cards(), row));
    const Station& station = state().cursor.usable ? state().cursor : state().trace.ride;
    picture_->showDriveline(reading_, station, state().solvedCar.rearTireRadius, state().style.units);
}

void DrivelinePage::showEvent(QShowEvent* event) {
    WorkPage::showEvent(event);
    showCursor();  // it may have moved while the page was hidden
}

}  // namespace bolthole
