// The fields of the launch page.
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/click_stepper.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/launch/shock_dialog.h"
#include "widgets/pages/launch/torque_section.h"
#include "widgets/pages/launch/work_out_dialog.h"

namespace bolthole {

namespace {

const std::vector<Field> kMassFields{Field::unsprungMass,    Field::frontUnsprungMass, Field::pitchInertia,
                                     Field::wheelInertia,    Field::frontWheelInertia, Field::housingInertia,
                                     Field::drivelineInertia};
const std::vector<Field> kRateFields{Field::frontWheelRate, Field::frontTireRate, Field::rearTireRate,
                                     Field::rearWheelRate};
const std::vector<Field> kPressureFields{
    Field::rearPressure,  Field::rearTirePressure,  Field::rearOtherTire,  Field::rearOtherPressure,
    Field::frontPressure, Field::frontTirePressure, Field::frontOtherTire, Field::frontOtherPressure};
const std::vector<Field> kTireFields{Field::tirePeakSlip, Field::tireSliding, Field::tireRelaxation,
                                     Field::tireLag, Field::tireDamping};

int shocksOf(const Car& car) {
    return static_cast<int>(std::ranges::count_if(
        car.springs, [](const SuspensionPart& part) { return part.damping.has_value(); }));
}

}  // namespace

std::string LaunchPage::shapeOf(const Car& car) const {
    std::string shape =
        car.launch.coupling.kind ? std::to_string(static_cast<int>(*car.launch.coupling.kind)) : "-";
    shape += car.launch.front.damping ? '+' : '-';
    for (const SuspensionPart& part : car.springs) {
        shape += part.damping ? '|' + part.name : "|";
        shape += std::to_string(static_cast<int>(part.kind));
    }
    return shape;
}

void LaunchPage::fill(QWidget* content, QVBoxLayout* column) {
    clicks_.clear();
    column->addWidget(clickSection(content));
    column->addWidget(releaseSection(content));
    column->addWidget(engineSection(content));
    column->addWidget(drivelineSection(content));
    column->addWidget(frontSection(content));
    column->addWidget(massSection(content));
    column->addWidget(rateSection(content));
    column->addWidget(pressureSection(content));
    column->addWidget(tireSection(content));
}

void LaunchPage::addRow(Section& section, Field field, const QString& whenEmpty) {
    section.body()->addWidget(row({.field = field}, whenEmpty, &section));
}

void LaunchPage::addClicks(Section& section, const FieldId& bump, const FieldId& rebound,
                           const QString& name) {
    for (const auto& [click, words] :
         {std::pair(bump, tr("%1 bump")), std::pair(rebound, tr("%1 rebound"))}) {
        clicks_.push_back(new ClickStepper(hub(), click, words.arg(name), &section));
        section.body()->addWidget(clicks_.back());
    }
}

// A shock's forces; `item`: of the springs, below 0 the front.
void LaunchPage::addForces(Section& section, int item, const QString& whose) {
    auto* button =
        smallButton(tr("Forces of %1…").arg(whose), tr("Forces of %1").arg(whose),
                    tr("From a shock dyno's sheet, a hung weight and a stopwatch, or an estimate"), &section);
    section.body()->addWidget(button, 0, Qt::AlignLeft);
    connect(button, &QAbstractButton::clicked, this, [this, item, whose] {
        const Car& car = state().car;
        const std::optional<Damping>& now =
            item < 0 ? car.launch.front.damping : car.springs[static_cast<std::size_t>(item)].damping;
        ShockDialog dialog(whose, now, estimatedDamping(car, item), state().style.units, this);
        if (dialog.exec() == QDialog::Accepted) {
            hub().request(SetDamping{item, dialog.damping()});
        }
    });
}

Section* LaunchPage::clickSection(QWidget* parent) {
    auto* section = new Section(tr("Clicks"), parent);
    const Car& car = state().car;
    if (car.launch.front.damping) {
        addClicks(*section, {.field = Field::frontBumpClick}, {.field = Field::frontReboundClick},
                  tr("Front"));
    }
    addForces(*section, -1, tr("the front shocks"));
    for (int item = 0; item < static_cast<int>(car.springs.size()); ++item) {
        const SuspensionPart& part = car.springs[static_cast<std::size_t>(item)];
        if (part.damping) {
            const QString name =
                shocksOf(car) == 1 ? tr("Rear") : capitalized(QString::fromStdString(part.name));
            addClicks(*section, {.field = Field::bumpClick, .item = item},
                      {.field = Field::reboundClick, .item = item}, name);
        }
        if (part.kind == PartKind::shock || part.kind == PartKind::coilOver) {
            addForces(*section, item, QString::fromStdString(springWords(car, item)));
        }
    }
    auto* note = new ToneLabel(
        ToneLabel::Tone::muted,
        clicks_.empty() ? tr("No shock has its forces yet, so there are no clicks to turn: the "
                             "launch runs without them. A rear shock is added on the Springs page.")
                        : tr("As each shock's table counts them. Left and right are set alike."),
        section);
    note->setWordWrap(true);
    note->setContentsMargins(6, 0, 6, 0);
    section->body()->addWidget(note);
    return section;
}

Section* LaunchPage::releaseSection(QWidget* parent) {
    auto* section = new Section(tr("Tires and release"), parent);
    addRow(*section, Field::friction, tr("not known"));
    addRow(*section, Field::launchSpeed, tr("not known"));
    coupling_ = choiceRow(
        Choice::coupling, tr("Converter or clutch"), {tr("not entered"), tr("converter"), tr("clutch")},
        tr("What stands between engine and transmission: a torque converter or a clutch."), section);
    section->body()->addWidget(coupling_);
    const std::optional<CouplingKind>& kind = state().car.launch.coupling.kind;
    if (kind == CouplingKind::converter) {
        addRow(*section, Field::stallSpeed, tr("not known"));
        addRow(*section, Field::converter, tr("none: 1"));
        addRow(*section, Field::couplingRatio, tr("usual: 0.88"));
    } else if (kind == CouplingKind::clutch) {
        addRow(*section, Field::clutchCapacity, tr("not known"));
    }
    addRow(*section, Field::release, tr("usual: 0.05"));
    addRow(*section, Field::rollout, tr("none: 0"));
    return section;
}

Section* LaunchPage::engineSection(QWidget* parent) {
    auto* section = new Section(tr("Engine"), parent);
    torque_ = new TorqueSection(hub(), section);
    torque_->showRows(showsRows_);
    connect(torque_, &TorqueSection::rowsShown, this, [this](bool shown) { showsRows_ = shown; });
    section->body()->addWidget(torque_);
    addRow(*section, Field::engineInertia, tr("not known"));
    addRow(*section, Field::revLimit, tr("not known"));
    return section;
}

Section* LaunchPage::drivelineSection(QWidget* parent) {
    auto* section = new Section(tr("Driveline"), parent);
    addRow(*section, Field::launchGear, tr("not known"));
    addRow(*section, Field::axleRatio, tr("not known"));
    addRow(*section, Field::efficiency, tr("no loss: 100"));
    return section;
}

Section* LaunchPage::frontSection(QWidget* parent) {
    auto* section = new Section(tr("Front travel"), parent);
    addRow(*section, Field::frontDroop, tr("not known"));
    addRow(*section, Field::frontBump, tr("not known"));
    addRow(*section, Field::frontMotionRatio, tr("at the wheel: 1"));
    return section;
}

// A number that readings give: with its own ± it is one edit.
void LaunchPage::addWorkOut(Section& section, Field field, const QString& name,
                            std::function<WorkOut()> task) {
    auto* button =
        smallButton(tr("%1 from readings…").arg(name), tr("%1 from readings").arg(name),
                    tr("Works it out of what a tape, a scale or a watch reads, with its ±"), &section);
    section.body()->addWidget(button, 0, Qt::AlignLeft);
    connect(button, &QAbstractButton::clicked, this, [this, field, task = std::move(task)] {
        WorkOutDialog dialog(task(), state().style, this);
        if (dialog.exec() == QDialog::Accepted && dialog.worked()) {
            const FieldId id{.field = field};
            FieldId uncertainty = id;
            uncertainty.uncertainty = true;
            hub().request(
                SetNumbers{{{id, dialog.worked()->value}, {uncertainty, dialog.worked()->uncertainty}}});
        }
    });
}

ReadWith LaunchPage::readWith() const {
    const Car& car = state().car;
    return {uncertaintyOf(car, MeasuringTool::scales), uncertaintyOf(car, MeasuringTool::tape), kStopwatch};
}

WorkOut LaunchPage::tireRateTask(const QString& name) const {
    return {tr("%1 from readings").arg(name),
            tr("At race pressure, with the tire on a scale: read the scale and the height of the wheel's "
               "center above it, put more weight on, and read both again. Further apart is surer. On a jack "
               "nothing holds the car: work beside it, stands under the frame just clear."),
            name,
            Quantity::rate,
            {{tr("Scale, less weight"), Quantity::mass},
             {tr("Wheel center, less weight"), Quantity::length},
             {tr("Scale, more weight"), Quantity::mass},
             {tr("Wheel center, more weight"), Quantity::length}},
            [with = readWith()](const std::vector<double>& read) {
                return tireRateOf(read[0], read[2], read[1], read[3], with);
            }};
}

WorkOut LaunchPage::wheelInertiaTask(const QString& name) const {
    return {
        tr("%1 from readings").arg(name),
        tr("Hang one wheel with its tire over an edge inside the rim, so that it swings freely in its own "
           "plane; let it swing a hand's width to and fro and time ten swings, there and back each. The "
           "edge must hold the wheel safely, feet out of the way. Brake rotors, axle shafts and ring gear "
           "come on top."),
        name,
        Quantity::inertia,
        {{tr("Weight of one wheel with tire"), Quantity::mass},
         {tr("Edge to the wheel's center"), Quantity::length},
         {tr("Ten swings, seconds"), Quantity::time}},
        [with = readWith()](const std::vector<double>& read) {
            return wheelInertiaOf(read[0], read[1], read[2], with);
        }};
}

Section* LaunchPage::massSection(QWidget* parent) {
    auto* section = new Section(tr("Unsprung weights and inertias"), parent);
    for (const Field field : kMassFields) {
        const bool mayBeZero = field == Field::frontWheelInertia || field == Field::housingInertia ||
                               field == Field::drivelineInertia;
        addRow(*section, field, mayBeZero ? tr("left out: 0") : tr("not known"));
    }
    addWorkOut(*section, Field::wheelInertia, tr("Rear wheels' inertia"),
               [this] { return wheelInertiaTask(tr("Rear wheels' inertia")); });
    addWorkOut(*section, Field::frontWheelInertia, tr("Front wheels' inertia"),
               [this] { return wheelInertiaTask(tr("Front wheels' inertia")); });
    letFold(*section, 0, kMassFields);
    return section;
}

Section* LaunchPage::rateSection(QWidget* parent) {
    auto* section = new Section(tr("Wheel and tire rates"), parent);
    for (const Field field : kRateFields) {
        addRow(*section, field, field == Field::rearWheelRate ? tr("from the springs") : tr("not known"));
    }
    addWorkOut(*section, Field::frontTireRate, tr("Front tire rate"),
               [this] { return tireRateTask(tr("Front tire rate")); });
    addWorkOut(*section, Field::rearTireRate, tr("Rear tire rate"),
               [this] { return tireRateTask(tr("Rear tire rate")); });
    letFold(*section, 1, kRateFields);
    return section;
}

Section* LaunchPage::pressureSection(QWidget* parent) {
    auto* section = new Section(tr("Tire pressures"), parent);
    for (const Field field : kPressureFields) {
        if (field == Field::rearPressure || field == Field::frontPressure) {
            section->body()->addWidget(new ToneLabel(
                ToneLabel::Tone::muted, field == Field::rearPressure ? tr("Rear") : tr("Front"), section));
        }
        addRow(*section, field, tr("not known"));
    }
    addWorkOut(*section, Field::rearOtherTire, tr("Rear tire rate at another pressure"),
               [this] { return tireRateTask(tr("Rear tire rate at another pressure")); });
    addWorkOut(*section, Field::frontOtherTire, tr("Front tire rate at another pressure"),
               [this] { return tireRateTask(tr("Front tire rate at another pressure")); });
    letFold(*section, 3, kPressureFields);
    return section;
}

Section* LaunchPage::tireSection(QWidget* parent) {
    auto* section = new Section(tr("Tire data"), parent);
    addRow(*section, Field::tirePeakSlip, tr("usual: 10"));
    addRow(*section, Field::tireSliding, tr("usual: 85"));
    addRow(*section, Field::tireRelaxation, tr("usual: 300 mm"));
    addRow(*section, Field::tireLag, tr("usual: 0.005"));
    addRow(*section, Field::tireDamping, tr("usual: 0.1 N·s/mm"));
    letFold(*section, 2, kTireFields);
    return section;
}

void LaunchPage::letFold(Section& section, std::size_t index, const std::vector<Field>& fields) {
    folded_[index] = {&section, fields};
    section.setUnfolded(unfolded_[index]);
    connect(section.header(), &QAbstractButton::toggled, this,
            [this, index](bool unfolded) { unfolded_[index] = unfolded; });
}

// What follows the car in the fields' column beside the hub's numbers.
void LaunchPage::showSections() {
    const BenchState& bench = state();
    for (ClickStepper* click : clicks_) {
        click->refresh(bench.car, bench.baseline ? &bench.baseline->car : nullptr);
    }
    torque_->showTorque(bench.car.launch.engine.torque, bench.style);
    for (const Folded& folded : folded_) {
        const auto entered = std::ranges::count_if(folded.fields, [&bench](Field field) {
            return numberAt(bench.car, {.field = field}).has_value();
        });
        folded.section->header()->showTexts(folded.section->header()->text(),
                                            tr("%1 of %2 entered").arg(entered).arg(folded.fields.size()));
    }
}

void LaunchPage::enterTorque() {
    torque_->enter();
}

void LaunchPage::enterCoupling() {
    if (auto* box = coupling_->findChild<CalmCombo*>()) {
        box->setFocus(Qt::OtherFocusReason);
        box->showPopup();
    }
}

}  // namespace bolthole
