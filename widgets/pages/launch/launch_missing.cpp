#include "widgets/pages/launch/launch_missing.h"

#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/dynamics/pitch_inertia.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr int kIntroWidth = 560;  // px
constexpr const char* kTorquePath = "launch.engine.torque";
constexpr const char* kCouplingPath = "launch.coupling.kind";
constexpr const char* kInertiaPath = "launch.pitch_inertia";

bool sameInputs(const std::vector<MissingInput>& one, const std::vector<MissingInput>& other) {
    return std::ranges::equal(one, other, [](const MissingInput& a, const MissingInput& b) {
        return a.path == b.path && a.reason == b.reason;
    });
}

/// To two digits of the shown unit: an estimate has no more.
double roundedAsShown(double inertia, Units units) {
    const double unit = shownUnit(Quantity::inertia, units);
    const double step = std::pow(10, std::floor(std::log10(inertia / unit)) - 1);
    return std::round(inertia / unit / step) * step * unit;
}

}  // namespace

std::optional<FieldId> fieldAt(const Car& car, const std::string& path) {
    for (const FieldRule* rule : rulesOf(Scope::car)) {
        if (!rule->hasAxis && rule->path == path) {
            return FieldId{.field = rule->field};
        }
    }
    for (std::size_t item = 0; item < car.springs.size(); ++item) {
        const std::string part = "springs[" + std::to_string(item) + "].";
        for (const FieldRule* rule : rulesOf(Scope::spring)) {
            if (path == part + std::string(rule->path)) {
                return FieldId{.field = rule->field, .item = static_cast<int>(item)};
            }
        }
    }
    return std::nullopt;
}

LaunchMissing::LaunchMissing(QWidget* parent)
    : Card(parent), rows_(new QVBoxLayout), intro_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)) {
    setAccessibleName(tr("Still to be entered for the launch"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(28, 24, 28, 26);
    column->setSpacing(12);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain, tr("The first second, before you drive it"), this);
    heading->setFont(textFont(TextSize::title, true));
    column->addWidget(heading);
    intro_->setFont(textFont(TextSize::body));
    intro_->setWordWrap(true);
    intro_->setMaximumWidth(kIntroWidth);
    intro_->showText(
        tr("This page runs the launch in time: what the rear tires "
           "carry from the release to 60 ft, when the "
           "nose tops out, what a click of the shocks changes. For "
           "that it needs what turns the tires, what "
           "holds them and what has to be moved. Nothing is "
           "guessed: each number below leads to its field, "
           "with how it is measured."));
    column->addWidget(intro_);
    rows_->setSpacing(6);
    column->addLayout(rows_);
    column->addStretch(1);
    hide();
}

void LaunchMissing::showMissing(const Car& car, const std::vector<MissingInput>& missing, Units units) {
    setVisible(!missing.empty());
    if (sameInputs(missing, shown_) && car_ == car) {
        return;
    }
    shown_ = missing;
    car_ = car;
    while (QLayoutItem* item = rows_->takeAt(0)) {
        if (QWidget* widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        }
        delete item;
    }
    for (const MissingInput& input : missing) {
        addRow(car, input, units);
    }
}

void LaunchMissing::addRow(const Car& car, const MissingInput& input, Units units) {
    auto* line = new QWidget(this);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    const std::optional<FieldId> id = fieldAt(car, input.path);
    QString words = QString::fromStdString(input.reason);
    if (id) {
        words = wordsFor(car, *id).name;
    } else if (input.path == kTorquePath) {
        words = tr("torque curve of the engine");
    } else if (input.path == kCouplingPath) {
        words = tr("converter or clutch");
    }
    auto* button = new QPushButton(capitalized(words), line);
    button->setAccessibleName(tr("enter the %1").arg(words));
    button->setToolTip(tr("Goes to the field"));
    row->addWidget(button);
    if (id) {
        connect(button, &QPushButton::clicked, this, [this, field = *id] { emit fieldRequested(field); });
    } else if (input.path == kTorquePath) {
        connect(button, &QPushButton::clicked, this, &LaunchMissing::torqueRequested);
    } else if (input.path == kCouplingPath) {
        connect(button, &QPushButton::clicked, this, &LaunchMissing::couplingRequested);
    } else {
        button->setEnabled(false);
    }
    row->addStretch(1);
    rows_->addWidget(line);
    if (input.path == kInertiaPath) {
        addEstimate(car, units);
    }
}

// Offered beside its number, and taken only when the person takes it.
void LaunchMissing::addEstimate(const Car& car, Units units) {
    const std::optional<double> inertia = estimatedPitchInertia(car);
    if (!inertia) {
        return;
    }
    const double whole = roundedAsShown(*inertia, units);
    const QString value = QString::fromStdString(
        withUnit(fieldText(whole, Quantity::inertia, {units, InchStyle::decimal}), Quantity::inertia, units));
    auto* button = new QPushButton(
        tr("Use the estimate %1 ± %2 %").arg(value).arg(std::lround(100 * kPitchInertiaUncertainty)), this);
    button->setToolTip(
        wrappedToolTip(tr("Sprung mass times its center's distances from the "
                          "rear and the front axle: the usual first guess, "
                          "from memory, no measurement of this car. It is marked "
                          "with its ± and can be undone.")));
    connect(button, &QPushButton::clicked, this, [this, whole] {
        emit edited(SetNumbers{{{{.field = Field::pitchInertia}, whole},
                                {{.field = Field::pitchInertia, .uncertainty = true},
                                 kPitchInertiaUncertainty * whole / kCoverage95}}});
    });
    auto* line = qobject_cast<QHBoxLayout*>(rows_->itemAt(rows_->count() - 1)->widget()->layout());
    line->insertWidget(1, button);
}

}  // namespace bolthole
