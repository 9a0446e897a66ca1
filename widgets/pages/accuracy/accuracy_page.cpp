#include "widgets/pages/accuracy/accuracy_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "geometry/units/uncertainty_text.h"
#include "geometry/weights/weights.h"
#include "widgets/fields/uncertainty_bar.h"
#include "widgets/kit/card.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/accuracy/accuracy_table.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr std::array kTravelPositions{AccuracyPosition::ride, AccuracyPosition::bump,
                                      AccuracyPosition::droop};

// A tool's own uncertainty.
double usualOf(MeasuringTool tool) {
    switch (tool) {
        case MeasuringTool::tape:
            return kTapeUncertainty;
        case MeasuringTool::calipers:
            return kCaliperUncertainty;
        case MeasuringTool::angleFinder:
            return kAngleFinderUncertainty;
        default:
            return kScaleUncertainty;
    }
}

Quantity quantityOfTool(MeasuringTool tool) {
    switch (tool) {
        case MeasuringTool::angleFinder:
            return Quantity::angle;
        case MeasuringTool::scales:
            return Quantity::mass;
        default:
            return Quantity::length;
    }
}

ToneLabel* words(const QString& text, QWidget* parent) {
    auto* label = new ToneLabel(ToneLabel::Tone::muted, text, parent);
    label->setWordWrap(true);
    label->setContentsMargins(4, 0, 4, 0);
    return label;
}

}  // namespace

AccuracyPage::AccuracyPage(QWidget* parent)
    : WorkPage(tr("Accuracy"), parent), message_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)) {
    setObjectName(QStringLiteral("accuracyPage"));
    message_->setWordWrap(true);
    message_->setFont(textFont(TextSize::body));
    results()->addWidget(message_);
    auto* card = new Card(this);
    auto* column = new QVBoxLayout(card);
    column->setContentsMargins(14, 12, 14, 12);
    column->setSpacing(10);
    buildCombination(column, card);
    buildTable(column, card);
    results()->addWidget(card);
    results()->addWidget(words(
        tr("±: of 100 cars measured like this one, 95 lie within. Each number's share is what it adds to the "
           "square of the figure's ±, to first order; the errors of different numbers are taken as having "
           "nothing to do with each other. A mirrored pair's hole is one measurement.\n\nThe car stands on "
           "rated stands on level ground, wheels chocked, before anybody reaches under it to measure."),
        this));
    results()->addStretch(1);
}

void AccuracyPage::buildCombination(QVBoxLayout* column, QWidget* parent) {
    auto* line = new QHBoxLayout;
    line->setSpacing(8);
    auto* figure = new CalmCombo(parent);
    figure->setObjectName(QStringLiteral("accuracyFigure"));
    figure->setAccessibleName(tr("Figure"));
    figure->setToolTip(wrappedToolTip(tr("The figure whose spread is looked into")));
    for (const AccuracyFigure& each : accuracyFigures()) {
        figure->addItem(each.name);
    }
    auto* place = new CalmCombo(parent);
    place->setObjectName(QStringLiteral("accuracyPosition"));
    place->setAccessibleName(tr("Where in its travel"));
    place->setToolTip(wrappedToolTip(tr("Where in its travel the figure is taken")));
    for (const AccuracyPosition each : kTravelPositions) {
        place->addItem(positionWords(each));
    }
    figure_ = figure;
    place_ = place;
    line->addWidget(new ToneLabel(ToneLabel::Tone::muted, tr("What to measure again for"), parent));
    line->addWidget(figure_);
    line->addWidget(new ToneLabel(ToneLabel::Tone::muted, tr("at"), parent));
    line->addWidget(place_);
    line->addStretch(1);
    column->addLayout(line);
    for (QComboBox* each : {figure_, place_}) {
        connect(each, &QComboBox::currentIndexChanged, this, [this] { showReading(false); });
    }
}

void AccuracyPage::buildTable(QVBoxLayout* column, QWidget* parent) {
    sentence_ = new ToneLabel(ToneLabel::Tone::plain, {}, parent);
    sentence_->setObjectName(QStringLiteral("accuracySentence"));
    sentence_->setWordWrap(true);
    sentence_->setFont(textFont(TextSize::title));
    note_ = words({}, parent);
    table_ = new AccuracyTable(parent);
    bar_ = new UncertaintyBar(parent);
    column->addWidget(sentence_);
    column->addWidget(note_);
    column->addWidget(bar_);
    column->addWidget(table_);
    setTabOrder(place_, table_);
    connect(table_, &AccuracyTable::selectedChanged, this, [this] {
        number_.reset();
        showBar();
    });
    connect(table_, &AccuracyTable::numberRequested, this, &AccuracyPage::fieldRequested);
    connect(table_, &AccuracyTable::calipersRequested, bar_, &UncertaintyBar::takeCalipers);
    connect(table_, &AccuracyTable::toolRequested, bar_, &UncertaintyBar::takeTool);
    connect(bar_, &UncertaintyBar::numberRequested, this, &AccuracyPage::fieldRequested);
    connect(bar_, &UncertaintyBar::edited, this, &AccuracyPage::edited);
}

std::string AccuracyPage::shapeOf(const Car&) const {
    return "sure";
}

void AccuracyPage::addTool(Field field, MeasuringTool tool, Section* section) {
    const FieldId id{.field = field};
    NumberField* number = hub().makeField(id, section);
    section->body()->addWidget(new NumberRow(wordsFor(state().car, id).label, number, section));
    tools_.emplace_back(tool, number);
}

// What all points share; no usual one is taken for it.
Section* AccuracyPage::makeDatums(QWidget* content) {
    auto* section = new Section(tr("What points are measured from, ±"), content);
    for (const Field field :
         {Field::floorUncertainty, Field::centerPlaneUncertainty, Field::originLineUncertainty}) {
        const FieldId id{.field = field};
        NumberField* number = hub().makeField(id, section);
        number->setPlaceholderText(tr("not counted"));
        section->body()->addWidget(new NumberRow(wordsFor(state().car, id).label, number, section));
    }
    section->body()->addWidget(words(
        tr("One error that every hole, joint and mount shares, beside the tape's own: a floor that is not "
           "level, a center line or a line below the axle that lies off. Left empty, none is counted."),
        section));
    return section;
}

void AccuracyPage::fill(QWidget* content, QVBoxLayout* column) {
    tools_.clear();
    auto* section = new Section(tr("What it was measured with, ±"), content);
    addTool(Field::tapeUncertainty, MeasuringTool::tape, section);
    section->body()->addWidget(words(
        tr("Usual: read to the nearest sixteenth at both ends (common practice, no source)."), section));
    addTool(Field::caliperUncertainty, MeasuringTool::calipers, section);
    section->body()->addWidget(words(tr("Usual: within a tenth of a millimeter, over a bolt and back to the "
                                        "hole's center (common practice, no source)."),
                                     section));
    addTool(Field::angleFinderUncertainty, MeasuringTool::angleFinder, section);
    section->body()->addWidget(
        words(tr("Usual: within half a degree (common practice, no source)."), section));
    addTool(Field::scaleUncertainty, MeasuringTool::scales, section);
    section->body()->addWidget(
        words(tr("Of one pad. Usual: within 1 kg or 2.2 lb (common practice, no source), "
                 "as on the Weights page."),
              section));
    column->addWidget(section);
    column->addWidget(makeDatums(content));
    column->addWidget(
        words(tr("Every ± here means that 95 of 100 readings lie within. Left empty, the usual "
                 "one is taken. A number measured better or worse than the rest gets a ± of its "
                 "own in the table."),
              content));
    showDefaults();
}

void AccuracyPage::showDefaults() {
    for (const auto& [tool, field] : tools_) {
        field->setPlaceholderText(
            tr("usual: %1")
                .arg(QString::fromStdString(halfWidthText(usualOf(tool), quantityOfTool(tool),
                                                          state().style.units, Fineness::fine))));
    }
}

void AccuracyPage::refresh() {
    showDefaults();
    QString said;
    if (!state().traceIsCurrent) {
        said = tr("▲ The car can't be computed as it stands; what is shown is the last that could.") +
               QLatin1Char(' ') + QString::fromStdString(state().problem);
    }
    message_->showText(said.trimmed());
    message_->setVisible(!said.isEmpty());
    if (state().trace.assembly.usable()) {
        computeUncertainty(state().solvedCar, uncertainty_);
    } else {
        uncertainty_.known = false;
    }
    showReading(true);
}

// Another figure begins with what matters most for it; another car goes on with the number in hand.
void AccuracyPage::showReading(bool keepsNumber) {
    if (!hasState()) {
        return;
    }
    const AccuracyFigure& figure = accuracyFigures()[static_cast<std::size_t>(figure_->currentIndex())];
    reading_ =
        readAccuracy(state().solvedCar, uncertainty_, figure,
                     kTravelPositions[static_cast<std::size_t>(place_->currentIndex())], state().style);
    const bool isThere = reading_.problem.isEmpty();
    sentence_->showText(isThere ? reading_.sentence : reading_.problem);
    note_->showText(reading_.note);
    note_->setVisible(!reading_.note.isEmpty());
    table_->setVisible(isThere);
    table_->showRows(reading_.rows, keepsNumber);
    showBar();
}

void AccuracyPage::showBar() {
    const auto stillThere = [this](const FieldId& id) { return numberAt(state().car, id).has_value(); };
    std::optional<FieldId> id = number_;
    if (!id && table_->selected() != nullptr) {
        id = *table_->selected();
    }
    if (id && (!stillThere(*id) || datumAxis(id->field))) {
        id.reset();  // a datum's ± has its field on the left
    }
    bar_->showNumber(state().car, id, state().style);
}

bool AccuracyPage::hasField(const FieldId& id) const {
    if (!id.uncertainty) {
        return WorkPage::hasField(id);
    }
    FieldId number = id;
    number.uncertainty = false;
    return hasState() && mayHaveUncertainty(id.field) && numberAt(state().car, number).has_value();
}

void AccuracyPage::focusField(const FieldId& id) {
    if (!id.uncertainty) {
        WorkPage::focusField(id);
        return;
    }
    FieldId number = id;
    number.uncertainty = false;
    if (table_->selectNumber(number)) {
        number_.reset();
    } else {
        number_ = number;
    }
    showBar();
    bar_->enter();
}

}  // namespace bolthole
