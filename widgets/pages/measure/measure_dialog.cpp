#include "widgets/pages/measure/measure_dialog.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/measure/point_picture.h"
#include "widgets/words/field_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr int kFieldWide = 190;  // px: the longest number in big type

ToneLabel* lineOf(ToneLabel::Tone tone, const QString& name, QVBoxLayout* column, QWidget* parent) {
    auto* label = new ToneLabel(tone, QString(), parent);
    label->setObjectName(name);
    label->setWordWrap(true);
    label->setFont(textFont(TextSize::body));
    column->addWidget(label);
    return label;
}

QString withItsUnit(double number, Quantity quantity, NumberStyle style) {
    return fromView(withUnit(fieldText(number, quantity, style), quantity, style.units))
        .replace(u'-', QChar(0x2212));
}

/// "Box 12 of 41, point 7": where the walk is, and what the sheet's picture calls it.
QString placeWords(const QString& place, const QString& sign) {
    if (sign.isEmpty()) {
        return place;
    }
    if (const QStringList ends = sign.split(u'–'); ends.size() == 2) {
        return MeasureDialog::tr("%1, from point %2 to point %3").arg(place, ends[0], ends[1]);
    }
    return (sign.front().isDigit() ? MeasureDialog::tr("%1, point %2") : MeasureDialog::tr("%1, letter %2"))
        .arg(place, sign);
}

/// The first stop whose number, its ± or its mark is another in the second car.
std::optional<std::size_t> firstChanged(const Car& before, const Car& after, const MeasuringWalk& walk) {
    const auto isOther = [&](const WalkStop& stop) {
        FieldId uncertainty = stop.id;
        uncertainty.uncertainty = true;
        return numberAt(before, stop.id) != numberAt(after, stop.id) ||
               numberAt(before, uncertainty) != numberAt(after, uncertainty) ||
               originOf(before, stop.id) != originOf(after, stop.id);
    };
    const auto found = std::ranges::find_if(walk.stops, isOther);
    return found == walk.stops.end() ? std::nullopt
                                     : std::optional(static_cast<std::size_t>(found - walk.stops.begin()));
}

}  // namespace

MeasureDialog::MeasureDialog(QWidget* parent) : QDialog(parent), faces_(new QStackedWidget(this)) {
    setWindowTitle(tr("Enter measurements"));
    setObjectName(QStringLiteral("measureDialog"));
    auto* column = new QVBoxLayout(this);
    auto* top = new QHBoxLayout;
    count_ = new ToneLabel(ToneLabel::Tone::plain, QString(), this);
    count_->setObjectName(QStringLiteral("measureCount"));
    count_->setFont(textFont(TextSize::title, true));
    top->addWidget(count_, 1);
    historyRow_ = new QHBoxLayout;
    top->addLayout(historyRow_);
    column->addLayout(top);
    faces_->addWidget(buildWalk());
    faces_->addWidget(buildDone());
    column->addWidget(faces_, 1);
    resize(820, 660);
}

QPushButton* MeasureDialog::makeButton(const QString& words, const QString& key, const QString& tip) {
    auto* button = new QPushButton(words, this);
    button->setAutoDefault(false);  // Enter is the field's
    // Not the button's own shortcut: that clicks a tenth of a second later, and loses a key that follows
    // fast.
    auto* shortcut = new QShortcut(QKeySequence(key), this);
    connect(shortcut, &QShortcut::activated, button, &QPushButton::click);
    button->setToolTip(wrappedToolTip(QStringLiteral("%1. %2").arg(tip, shortcut->key().toString())));
    return button;
}

QWidget* MeasureDialog::buildWalk() {
    auto* face = new QWidget(faces_);
    auto* column = new QVBoxLayout(face);
    column->setContentsMargins(0, 0, 0, 0);
    area_ = lineOf(ToneLabel::Tone::muted, QStringLiteral("measureArea"), column, face);
    picture_ = new PointPicture(face);
    column->addWidget(picture_, 1);
    name_ = lineOf(ToneLabel::Tone::plain, QStringLiteral("measureName"), column, face);
    name_->setFont(textFont(TextSize::title, true));
    now_ = lineOf(ToneLabel::Tone::muted, QStringLiteral("measureNow"), column, face);
    fieldRow_ = new QHBoxLayout;
    column->addLayout(fieldRow_);
    mean_ = lineOf(ToneLabel::Tone::plain, QStringLiteral("measureMean"), column, face);
    warning_ = lineOf(ToneLabel::Tone::problem, QStringLiteral("measureWarning"), column, face);
    howTo_ = lineOf(ToneLabel::Tone::muted, QStringLiteral("measureHowTo"), column, face);
    column->addLayout(buildButtons(face));
    return face;
}

QWidget* MeasureDialog::buildDone() {
    auto* face = new QWidget(faces_);
    auto* column = new QVBoxLayout(face);
    column->addStretch(1);
    auto* words = new ToneLabel(ToneLabel::Tone::plain,
                                tr("Every number of the measuring sheet is measured. What it comes to stands "
                                   "on the bench."),
                                face);
    words->setObjectName(QStringLiteral("measureDone"));
    words->setWordWrap(true);
    words->setAlignment(Qt::AlignCenter);
    column->addWidget(words);
    auto* again = new QPushButton(tr("Go through them again"), face);
    again->setObjectName(QStringLiteral("measureAgain"));
    again->setAutoDefault(false);
    connect(again, &QPushButton::clicked, this, [this] {
        if (!walk_.stops.empty()) {
            goTo(0);
        }
    });
    column->addWidget(again, 0, Qt::AlignCenter);
    column->addStretch(2);
    return face;
}

void MeasureDialog::offerHistory(QAction* undo, QAction* redo) {
    for (QAction* action : {undo, redo}) {
        auto* button = new QToolButton(this);
        button->setDefaultAction(action);
        historyRow_->addWidget(button);
        addAction(action);
        connect(action, &QAction::triggered, this, &MeasureDialog::followHistory);
    }
}

NumberField* MeasureDialog::makeReading(const QString& name) {
    const FieldId id = stop().id;
    auto* field = new NumberField(quantityOf(id.field), fields_);
    field->setFont(textFont(TextSize::figure));
    field->setFixedWidth(kFieldWide);
    field->setMayBeEmpty(true);
    field->setAccessibleName(QStringLiteral("%1, %2").arg(stop().name, name));
    field->setHowTo(wordsFor(car_, id).howTo);
    field->setStepStart(std::nullopt);  // "nothing typed: left alone" holds for arrow keys too
    field->setCheck([this, id](double value) { return refusalIn(id, value, state_->style.units); });
    field->showNumber(std::nullopt, state_->style);
    return field;
}

// Fields of the number's own quantity: made anew for every number.
void MeasureDialog::buildFields() {
    if (fields_ != nullptr) {
        for (NumberField* field : field_) {
            field->disconnect(this);
        }
        fields_->hide();
        fields_->deleteLater();  // one of them may be handling the key that led here
    }
    fields_ = new QWidget(this);
    auto* row = new QHBoxLayout(fields_);
    row->setContentsMargins(0, 0, 0, 0);
    const std::array names{tr("1st reading"), tr("2nd reading, may stay empty"), tr("Measure once more")};
    for (std::size_t at = 0; at < field_.size(); ++at) {
        third_ = addReading(at, names[at]);
        row->addWidget(third_);
        row->addSpacing(24);
    }
    third_->hide();
    connect(field_[0], &NumberField::confirmed, this,
            [this] { readings_[0] ? field_[1]->setFocus(Qt::TabFocusReason) : finish(); });
    connect(field_[1], &NumberField::confirmed, this, &MeasureDialog::finishReadings);
    connect(field_[2], &NumberField::confirmed, this, &MeasureDialog::finish);
    row->addStretch(1);
    fieldRow_->addWidget(fields_);
    fields_->show();
    QWidget::setTabOrder(field_[0], field_[1]);
    QWidget::setTabOrder(field_[1], field_[2]);
}

// A field with its words over it and its unit beside it.
QWidget* MeasureDialog::addReading(std::size_t at, const QString& name) {
    auto* part = new QWidget(fields_);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    NumberField* field = makeReading(name);
    field_[at] = field;
    auto* label = new ToneLabel(ToneLabel::Tone::muted, name, part);
    label->setBuddy(field);
    column->addWidget(label);
    auto* beside = new QHBoxLayout;
    beside->addWidget(field);
    beside->addWidget(new ToneLabel(ToneLabel::Tone::muted, field->unitText(), part));
    column->addLayout(beside);
    connect(field, &NumberField::committed, this, [this, at](double value) {
        readings_[at] = value;
        readingTaken();
    });
    connect(field, &NumberField::cleared, this, [this, at] {
        readings_[at].reset();
        readingTaken();
    });
    connect(field, &NumberField::noteChanged, this, &MeasureDialog::showWarnings);
    return part;
}

void MeasureDialog::readingTaken() {
    if (!areFarApart()) {
        toldApart_ = false;
        readings_[2].reset();
    }
    for (std::size_t at = 0; at < field_.size(); ++at) {
        field_[at]->showNumber(readings_[at], state_->style);
    }
    showReadings();
}

void MeasureDialog::showState(const BenchState& state) {
    const bool isFirst = state_ == nullptr;
    const bool isRestyled = !isFirst && style_ != state.style;
    const std::optional<FieldId> before = isFirst ? std::nullopt : asked();
    walk_ = measuringWalk(state.car);
    changed_ = isFirst ? std::nullopt : firstChanged(car_, state.car, walk_);
    state_ = &state;
    car_ = state.car;
    style_ = state.style;
    const auto same =
        std::ranges::find_if(walk_.stops, [&](const WalkStop& stop) { return before && stop.id == *before; });
    if (same == walk_.stops.end() && !done_) {
        begin();
        return;
    }
    at_ = same == walk_.stops.end() ? 0 : static_cast<std::size_t>(same - walk_.stops.begin());
    if (done_ && countLeft(car_, walk_) > 0) {
        begin();
        return;
    }
    if (isRestyled) {
        goTo(at_);
    }
    showStop();
}

void MeasureDialog::begin(const std::optional<FieldId>& from) {
    const auto found =
        std::ranges::find_if(walk_.stops, [&](const WalkStop& stop) { return from && stop.id == *from; });
    if (found != walk_.stops.end()) {
        goTo(static_cast<std::size_t>(found - walk_.stops.begin()));
        return;
    }
    const std::optional<std::size_t> first = firstLeft(car_, walk_);
    done_ = !first;
    if (first) {
        goTo(*first);
    } else {
        showStop();
    }
}

void MeasureDialog::goTo(std::size_t stop) {
    done_ = false;
    isRoundAgain_ = false;
    at_ = stop;
    readings_ = {};
    toldApart_ = false;
    buildFields();
    showStop();
    if (isVisible()) {
        field_[0]->setFocus(Qt::TabFocusReason);
    }
}

bool MeasureDialog::commitPending() {
    if (done_ || fields_ == nullptr) {
        return true;
    }
    if (!std::ranges::all_of(field_, [](NumberField* field) { return field->commit(); })) {
        return false;
    }
    const std::optional<Edit> edit = editOfTyped();
    if (!edit) {
        return true;
    }
    readings_ = {};
    readingTaken();
    emit edited(*edit);
    return true;
}

std::optional<Edit> MeasureDialog::editOfTyped() const {
    if (readings_[0] && readings_[1] && readings_[2]) {
        const auto [first, second] = closestTwo({*readings_[0], *readings_[1], *readings_[2]});
        return editOfReadings(car_, stop().id, first, second);
    }
    // A second reading alone is a reading.
    const std::optional<double> first = readings_[0] ? readings_[0] : readings_[1];
    if (!first) {
        return std::nullopt;
    }
    return editOfReadings(car_, stop().id, *first, readings_[0] ? readings_[1] : std::nullopt);
}

void MeasureDialog::discardTyping() {
    readings_ = {};
    if (fields_ != nullptr) {
        for (NumberField* field : field_) {
            field->restore();
        }
        readingTaken();
    }
}

void MeasureDialog::goBy(int steps) {
    if (!commitPending()) {
        return;
    }
    const auto last = static_cast<std::ptrdiff_t>(walk_.stops.size()) - 1;
    const std::ptrdiff_t wanted = static_cast<std::ptrdiff_t>(at_) + steps;
    if (wanted > last) {
        begin();  // round the car once: what is left, or that nothing is
        isRoundAgain_ = true;
        showStop();
        return;
    }
    goTo(static_cast<std::size_t>(std::max<std::ptrdiff_t>(wanted, 0)));
}

void MeasureDialog::finish() {
    goBy(1);
}

bool MeasureDialog::areFarApart() const {
    return quantityOf(stop().id.field) == Quantity::length && readings_[0] && readings_[1] &&
           std::abs(*readings_[0] - *readings_[1]) > kReadingsFarApart;
}

// One of two readings that lie far apart is a slip: a third tells which. Left empty, both are taken as they
// are.
void MeasureDialog::finishReadings() {
    if (!areFarApart()) {
        finish();
        return;
    }
    toldApart_ = true;
    showReadings();
    field_[2]->setFocus(Qt::TabFocusReason);
}

void MeasureDialog::skip() {
    discardTyping();
    const std::size_t count = walk_.stops.size();
    for (std::size_t step = 1; step <= count; ++step) {
        const std::size_t next = (at_ + step) % count;
        if (!isMeasured(car_, walk_.stops[next].id)) {
            goTo(next);
            return;
        }
    }
    begin();
}

std::optional<FieldId> MeasureDialog::asked() const {
    return done_ || at_ >= walk_.stops.size() ? std::nullopt : std::optional(stop().id);
}

void MeasureDialog::followHistory() {
    if (isVisible() && changed_) {
        goTo(*changed_);
    }
}

void MeasureDialog::hideEvent(QHideEvent* event) {
    commitPending();
    QDialog::hideEvent(event);
}

void MeasureDialog::showStop() {
    const QString place = (isRoundAgain_ ? tr("Back to what is left: box %1 of %2") : tr("Box %1 of %2"))
                              .arg(at_ + 1)
                              .arg(walk_.stops.size());
    count_->showText((done_ ? place : placeWords(place, stop().sign)) + leftWords(car_, walk_));
    faces_->setCurrentIndex(done_ ? 1 : 0);
    if (done_) {
        return;
    }
    const PlanArea& area = walk_.areas[stop().area];
    area_->showText(capitalized(area.title) +
                    (area.caution.isEmpty() ? QString() : QStringLiteral(". ") + area.caution));
    name_->showText(stop().name);
    const Quantity quantity = quantityOf(stop().id.field);
    const std::optional<double> number = numberAt(car_, stop().id);
    const QString shown = number ? withItsUnit(*number, quantity, state_->style) : QString();
    now_->showText(number ? tr("in the car: %1, %2").arg(shown, originWords(originOf(car_, stop().id)))
                          : tr("in the car: nothing yet"));
    const QString howTo = wordsFor(car_, stop().id).howTo;
    howTo_->showText(stop().isOfFirstTable ? howTo + u' ' + area.hint : howTo);
    showHoleButtons();
    showReadings();
    showPicture();
    showWarnings();
}

// A car that can't be computed can't be drawn: the picture is that of the last that could. What its picture
// does not have is shown as it is measured on any car.
void MeasureDialog::showPicture() {
    const Car& drawn = state_->faults.empty() ? state_->car : state_->solvedCar;
    const std::optional<HowToPicture> howTo = howToPicture(drawn, stop().id);
    for (const PlanArea& area : measuringPlan(drawn)) {
        if (area.kind == walk_.areas[stop().area].kind) {
            picture_->showPoint(drawn, area, stop().sign);
        }
    }
    if (howTo && picture_->litAt().empty()) {
        picture_->showHowTo(*howTo);
    }
}

void MeasureDialog::showReadings() {
    third_->setVisible(toldApart_);
    if (!readings_[0] || !readings_[1]) {
        mean_->showText(
            tr("With two readings their mean is taken, and their difference is its ± where that is more than "
               "the tool's own."));
        return;
    }
    const Quantity quantity = quantityOf(stop().id.field);
    const auto shown = [&](double number) { return withItsUnit(number, quantity, state_->style); };
    if (areFarApart() && !readings_[2]) {
        mean_->showText(
            tr("▲ The readings lie %1 apart: one of them is a slip. Measure once more; the two that lie "
               "closest are taken.")
                .arg(shown(std::abs(*readings_[0] - *readings_[1]))));
        return;
    }
    const Car then = bolthole::apply(car_, *editOfTyped()).car;
    FieldId uncertainty = stop().id;
    uncertainty.uncertainty = true;
    const std::optional<double> own = numberAt(then, uncertainty);
    const QString mean = shown(*numberAt(then, stop().id));
    mean_->showText(
        own ? tr("Mean %1 %2")
                  .arg(mean, QString::fromStdString(uncertaintyText(*own, quantity, state_->style.units)))
            : tr("Mean %1; the readings differ by no more than the tool's own ±").arg(mean));
}

void MeasureDialog::showWarnings() {
    QStringList lines;
    for (const NumberField* field : field_) {
        if (field != nullptr && field->hasProblem()) {
            lines << field->note();
        }
    }
    for (const Fault& fault : state_->faults) {
        lines << QString::fromStdString(fault.reason);
    }
    for (const Warning& warning : state_->warnings) {
        if (warning.id == stop().id && !warning.isOfWhole) {
            lines << QString::fromStdString(sentence(warning.finding));
        }
    }
    if (const std::size_t all = state_->warnings.size(); all > 0) {
        lines << (all == 1 ? tr("1 warning in the list, F9 once this is closed")
                           : tr("%n warnings in the list, F9 once this is closed", nullptr,
                                static_cast<int>(all)));
    }
    warning_->showText(lines.join(QLatin1Char('\n')));
    warning_->setVisible(!lines.isEmpty());
}

}  // namespace bolthole
