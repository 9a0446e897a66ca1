#include "widgets/pages/loads/loads_page.h"

#include <QVBoxLayout>

#include "geometry/kinematics/trace.h"
#include "geometry/statics/entered_setup.h"
#include "geometry/units/say.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/fields/missing_list.h"
#include "widgets/kit/said.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/loads/combination_load_table.h"
#include "widgets/pages/loads/link_load_curves.h"
#include "widgets/pages/loads/link_load_table.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/pages/loads/loads_picture.h"
#include "widgets/words/field_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

LoadsPage::LoadsPage(QWidget* parent)
    : WorkPage(tr("Loads"), parent),
      problem_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)),
      missing_(new MissingList(this)),
      picture_(new LoadsPicture(this)),
      launch_(new FactCard(tr("Launch"), this)),
      attitude_(new FactCard(tr("Rise, squat and pitch"), this)),
      roll_(new FactCard(tr("Roll by the driveshaft's torque"), this)),
      braking_(new FactCard(tr("Braking"), this)),
      links_(new FactCard(tr("Link loads"), this)),
      table_(new LinkLoadTable(this)),
      curves_(newLinkLoadChart(this)),
      combinationCard_(new FactCard(tr("Worst link load of every hole combination"), this)),
      combinations_(new CombinationLoadTable(this)) {
    problem_->setWordWrap(true);
    problem_->hide();
    buildCards();
    buildLinkCards();
    connect(missing_, &MissingList::fieldRequested, this, &WorkPage::fieldRequested);
    connect(combinations_, &CombinationLoadTable::progressed, this, &LoadsPage::showCombinations);
}

void LoadsPage::buildCards() {
    launch_->addAbove(picture_);
    results()->addWidget(problem_);
    for (QWidget* card :
         {static_cast<QWidget*>(missing_), static_cast<QWidget*>(launch_), static_cast<QWidget*>(attitude_),
          static_cast<QWidget*>(roll_), static_cast<QWidget*>(links_),
          static_cast<QWidget*>(combinationCard_), static_cast<QWidget*>(braking_)}) {
        results()->addWidget(card);
    }
    results()->addStretch(1);
}

void LoadsPage::buildLinkCards() {
    links_->addAbove(curves_);
    links_->addAbove(table_);  // above the curves
    combinationCard_->addAbove(combinations_);
}

std::string LoadsPage::shapeOf(const Car& car) const {
    std::string shape = std::to_string(static_cast<int>(car.launch.from));
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        shape += '|' + linkName(car, link).toStdString();
    }
    return shape;
}

void LoadsPage::fill(QWidget* content, QVBoxLayout* column) {
    column->addWidget(launchSection(content));
    column->addWidget(driveSection(content));
    column->addWidget(loadSection(content));
    column->addWidget(ratingSection(content));
    column->addWidget(brakeSection(content));
}

void LoadsPage::addRow(Section& section, Field field, const QString& whenEmpty) {
    section.body()->addWidget(row({.field = field}, whenEmpty, &section));
}

Section* LoadsPage::launchSection(QWidget* parent) {
    auto* section = new Section(tr("Launch"), parent);
    section->body()->addWidget(choiceRow(
        Choice::launchFrom, tr("Computed from"),
        {tr("acceleration in g"), tr("60-ft time"), tr("engine torque")},
        tr("What the thrust follows from. All of it is statics: no hit, no damping, no wheel spin. Try what "
           "follows only on a closed course."),
        section));
    switch (state().car.launch.from) {
        case LaunchFrom::acceleration:
            addRow(*section, Field::launchAcceleration, tr("not known"));
            break;
        case LaunchFrom::sixtyFoot:
            addRow(*section, Field::sixtyFoot, tr("not known"));
            addRow(*section, Field::rollout, tr("usual beam"));
            break;
        case LaunchFrom::torque:
            addRow(*section, Field::engineTorque, tr("not known"));
            addRow(*section, Field::converter, tr("none: 1"));
            addRow(*section, Field::launchGear, tr("not known"));
            addRow(*section, Field::efficiency, tr("no loss: 100"));
            break;
    }
    return section;
}

Section* LoadsPage::driveSection(QWidget* parent) {
    auto* section = new Section(tr("Axle and tires"), parent);
    addRow(*section, Field::axleRatio, tr("not known"));
    addRow(*section, Field::friction, tr("not known"));
    section->body()->addWidget(choiceRow(
        Choice::differential, tr("Differential"),
        {tr("not entered"), tr("open"), tr("limited slip"), tr("locked")},
        tr("Where the rear tires' grip ends: an open differential gives both the same torque, so it ends at "
           "twice what the lighter tire holds. Not entered, it is taken as locked."),
        section));
    return section;
}

Section* LoadsPage::loadSection(QWidget* parent) {
    auto* section = new Section(tr("For link loads and roll"), parent);
    addRow(*section, Field::unsprungMass, tr("not known"));
    addRow(*section, Field::springBase, tr("not measured"));
    addRow(*section, Field::leftShift, tr("not entered"));
    return section;
}

Section* LoadsPage::ratingSection(QWidget* parent) {
    auto* section = new Section(tr("Ratings of the links"), parent);
    for (int link = 0; link < static_cast<int>(state().car.links.size()); ++link) {
        section->body()->addWidget(row({.field = Field::linkRating, .link = link}, tr("no rating"), section));
    }
    addRow(*section, Field::loadFactor, tr("none: 1"));
    return section;
}

Section* LoadsPage::brakeSection(QWidget* parent) {
    auto* section = new Section(tr("Brakes"), parent);
    addRow(*section, Field::brakeRearShare, tr("not known"));
    addRow(*section, Field::brakeDeceleration, tr("not known"));
    return section;
}

void LoadsPage::refresh() {
    const BenchState& bench = state();
    if (!bench.traceIsCurrent || !bench.trace.ride.usable) {
        showNothing();
        return;
    }
    problem_->hide();
    case_ = launchCaseOf(bench.solvedCar, bench.trace, fullStanceOf(bench.solvedCar));
    missing_->showMissing(bench.car, missingOf(case_));
    picture_->showCase(bench.solvedCar, case_, bench.style.units);
    showFacts();
    showLinks();
}

void LoadsPage::showNothing() {
    uncertainty_.forget();
    case_ = {};
    case_.problem = say("the car can't be computed as it stands");
    const QString problem = QString::fromStdString(state().problem);
    const QString why = problem.isEmpty() ? problem : tr(": %1").arg(problem);
    problem_->showText(tr("Nothing can be computed as the car stands%1").arg(why));
    problem_->show();
    missing_->hide();
    picture_->showCase(state().car, case_, state().style.units);
    for (FactCard* card : {launch_, attitude_, roll_, braking_, links_, combinationCard_}) {
        card->showFacts({});
    }
    table_->hide();
    curves_->hide();
    combinations_->showNone();
    combinations_->hide();
}

void LoadsPage::showFacts() {
    const Units units = state().style.units;
    const Car& car = state().solvedCar;
    CardFacts facts = launchCards(car, case_, units);
    if (state().showsUncertainty) {
        uncertainty_.addTo(
            facts, car, units, [units](const Car& varied) { return readLaunchCards(varied, units); },
            whileCurrent([this] { showFacts(); }));
    }
    QString note = tr(
        "Static figures on level ground: no hit of the clutch or converter, no damping, no wheel spin. Test "
        "only on a closed course.");
    if (state().showsUncertainty) {
        note +=
            tr(" ± is of what was measured: acceleration, time, torque and friction count as exact unless "
               "they have a ± of their own.");
    }
    launch_->showFacts(facts[0], note);
    attitude_->showFacts(
        facts[1], tr("Where the springs come to rest under a steady thrust: the swing arm's slope there, the "
                     "rear axle's own inertia and the front's topping out counted; one rate, no bump stop, "
                     "no shock."));
    roll_->showFacts(facts[2],
                     tr("For an engine that turns clockwise seen from the front, as nearly all do. A preload "
                        "cancels one torque and no other, and the car may pull to one side under braking."));
    braking_->showFacts(facts[3],
                        tr("Steady braking on level ground, the rear brakes on the axle. Test only on a "
                           "closed course."));
}

void LoadsPage::showLinks() {
    const BenchState& bench = state();
    const Units units = bench.style.units;
    const bool isKnown = case_.links && !case_.links->sweep.unbalanced;
    table_->setVisible(isKnown);
    curves_->setVisible(isKnown);
    combinations_->setVisible(isKnown);
    std::vector<Fact> facts = linkCaseFacts(bench.solvedCar, case_, units);
    QString note = said(kLinkLoadWarning);
    if (isKnown) {
        table_->showLoads(bench.solvedCar, *case_.links, case_.linkCase->factor, units);
        curves_->showCards(travelAxis(travelSpan(bench), units),
                           withStartingMark({linkLoadCard(bench.solvedCar, bench.trace, *case_.links, units)},
                                            restsOnStarts(bench.car, {Scope::car, Scope::hole, Scope::link,
                                                                      Scope::mount, Scope::spring})));
        combinations_->showCombinations(bench.solvedCar, bench.lengths(), *case_.linkCase, units);
        note = tr("Bracket hole and joint at either end of a link carry what the link does; any other joint "
                  "shows "
                  "the amount of its force.\n") +
               note;
        if (case_.links->hasShared()) {
            note += u'\n' + said(kSharedLoadNote);
        }
    } else {
        combinations_->showNone();
    }
    if (case_.links && case_.links->sweep.unbalanced) {
        facts.push_back({tr("Balance"), tr("none"),
                         tr("nothing holds part of the load: the links do not hold the axle"), true});
    }
    if (isKnown && case_.links->sweep.springsPull) {
        facts.push_back({tr("Springs"), tr("would pull"),
                         tr("somewhere in travel a spring would have to pull to hold the balance, which none "
                            "can: the figures do not hold there"),
                         true});
    }
    if (isKnown && case_.thrust && case_.thrust->isBeyondGrip()) {
        facts.push_back({tr("Thrust"), tr("more than the tires hold"),
                         tr("see Launch above: they spin before the links carry what stands here"), true});
    }
    links_->showFacts(facts, note);
    showCombinations();
}

void LoadsPage::showCombinations() {
    const QString warning = said(kLinkLoadWarning);
    const bool isKnown = case_.links && !case_.links->sweep.unbalanced;
    if (isKnown) {
        QString note = combinations_->summary() + u'\n' + warning;
        if (combinations_->hasPulling()) {
            note += tr(
                "\nSpring pulls: somewhere in travel a spring would have to, which none can. The figures do "
                "not hold there.");
        }
        if (combinations_->hasShared()) {
            note += u'\n' + said(kSharedLoadNote);
        }
        combinationCard_->showFacts({}, note);
    } else {
        combinationCard_->showFacts(
            {{tr("Worst loads"), QString(QChar(0x2014)),
              whyNotKnown(case_.links.refusal.empty() ? say("the links do not hold the axle")
                                                      : case_.links.refusal),
              false}},
            warning);
    }
}

}  // namespace bolthole
