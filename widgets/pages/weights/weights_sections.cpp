#include "widgets/pages/weights/weights_sections.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "geometry/car/fields.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/fields/hole_grid.h"
#include "widgets/kit/said.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

FieldId ballastField(Field field, int item) {
    return {.field = field, .item = item};
}

}  // namespace

ToneLabel* sectionWords(ToneLabel::Tone tone, const QString& text, QWidget* parent) {
    auto* words = new ToneLabel(tone, text, parent);
    words->setWordWrap(true);
    words->setContentsMargins(4, 0, 4, 0);
    return words;
}

PointRow::PointRow(SheetHub& hub, const QString& title, const FieldId& id, QWidget* parent)
    : QWidget(parent), hub_(hub), title_(title) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(4);
    grid->setVerticalSpacing(3);
    heading_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    heading_->setContentsMargins(10, 0, 0, 0);
    grid->addWidget(heading_, 1, 0);
    addPointHeadings(grid, 0, 1, Side::center, this);
    addPointFields(hub, grid, 1, 1, id, this);
    for (int column = 0; column < 4; ++column) {
        grid->setColumnStretch(column, 1);
    }
}

void PointRow::refresh() {
    heading_->showText(
        QStringLiteral("%1, %2").arg(title_, unitText(Quantity::length, hub_.state().style.units)));
}

BallastBlock::BallastBlock(SheetHub& hub, int item, QWidget* parent)
    : QWidget(parent), hub_(hub), item_(item) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 4);
    column->setSpacing(4);
    addHeader(column);
    column->addWidget(row(Field::ballastMass, tr("or volume × density")));
    column->addWidget(row(Field::ballastVolume, tr("for a tank")));
    column->addWidget(row(Field::ballastDensity, tr("for a tank")));
    place_ = new PointRow(hub, tr("Place"), ballastField(Field::ballastAt, item), this);
    column->addWidget(place_);
    column->addWidget(row(Field::ballastWeighed, QString()));
    column->addWidget(row(Field::ballastAboard, QString()));
    summary_ = sectionWords(ToneLabel::Tone::muted, QString(), this);
    summary_->setAlignment(Qt::AlignRight);
    column->addWidget(summary_);
}

void BallastBlock::addHeader(QVBoxLayout* column) {
    auto* line = new QHBoxLayout;
    line->setContentsMargins(0, 0, 0, 0);
    name_ = new NameField(this);
    name_->setProperty("nameLike", true);
    name_->setFont(textFont(TextSize::body, true));
    name_->setToolTip(wrappedToolTip(tr("What the load is called. Enter takes a new name.")));
    line->addWidget(name_, 1);
    remove_ = smallButton(tr("Remove"), QString(), tr("Takes this load out of the list."), this);
    line->addWidget(remove_);
    column->addLayout(line);
    connect(name_, &NameField::renamed, this, [this](const std::string& typed) {
        hub_.request(RenameBallast{item_, typed});
    });
    connect(remove_, &QAbstractButton::clicked, this, &BallastBlock::removalRequested);
}

NumberRow* BallastBlock::row(Field field, const QString& whenEmpty) {
    const FieldId id = ballastField(field, item_);
    NumberField* number = hub_.makeField(id, this);
    number->setPlaceholderText(whenEmpty);
    return new NumberRow(wordsFor(hub_.state().car, id).label, number, this);
}

void BallastBlock::enterName() {
    name_->setFocus(Qt::OtherFocusReason);
    name_->selectAll();
}

void BallastBlock::refresh() {
    const Car& car = hub_.state().car;
    const QString words = QString::fromStdString(ballastWords(car, item_));
    const EnteredBallast& load = car.ballast[static_cast<std::size_t>(item_)];
    name_->showName(load.name);
    name_->setAccessibleName(tr("name of load %1").arg(item_ + 1));
    remove_->setAccessibleName(tr("Remove %1").arg(words));
    place_->refresh();
    summary_->showText(ballastSummary(load, hub_.state().style.units));
}

QString ballastSummary(const EnteredBallast& load, Units units) {
    const std::string_view missing = missingOf(load);
    if (!missing.empty()) {
        return BallastBlock::tr("not counted: %1").arg(said(missing));
    }
    const double full = load.mass ? *load.mass : *load.volume * *load.density;
    const auto text = [units](double mass) {
        return QString::fromStdString(
            withUnit(fineFigureText(mass, Quantity::mass, units), Quantity::mass, units));
    };
    const QString since = signedText(text(full * (load.aboard - load.weighed) / 100));
    return BallastBlock::tr("%1 in all, %2 since weighed").arg(text(full), since);
}

BallastSection::BallastSection(SheetHub& hub, QWidget* parent) : Section(tr("Loads"), parent), hub_(hub) {
    body()->addWidget(
        sectionWords(ToneLabel::Tone::muted,
                     tr("What came or went since the scales were read: fuel, a bottle, tools. Each with its "
                        "weight, or volume and density, and its place."),
                     this));
    const auto count = static_cast<int>(hub.state().car.ballast.size());
    for (int item = 0; item < count; ++item) {
        auto* block = new BallastBlock(hub, item, this);
        body()->addWidget(block);
        blocks_.push_back(block);
        connect(block, &BallastBlock::removalRequested, this, [this, item] { emit removalRequested(item); });
    }
    addChooser();
}

void BallastSection::addChooser() {
    auto* line = new QHBoxLayout;
    line->setContentsMargins(0, 0, 0, 0);
    kinds_ = new CalmCombo(this);
    kinds_->addItems({tr("Fuel"), tr("Bottle"), tr("Tools"), tr("Passenger"), tr("Ballast"), tr("Load")});
    kinds_->setAccessibleName(tr("kind of load to add"));
    kinds_->setToolTip(wrappedToolTip(tr("Only the name to start with: every number stays to be entered.")));
    line->addWidget(kinds_, 1);
    auto* add = new QPushButton(tr("Add load"), this);
    add->setToolTip(wrappedToolTip(tr("Appends a load of this name; its weight and place are empty.")));
    line->addWidget(add);
    body()->addLayout(line);
    connect(add, &QPushButton::clicked, this, [this] { emit addRequested(kinds_->currentText()); });
}

void BallastSection::refresh() {
    for (BallastBlock* block : blocks_) {
        block->refresh();
    }
}

void BallastSection::enterBallast(int item) {
    if (item >= 0 && static_cast<std::size_t>(item) < blocks_.size()) {
        blocks_[static_cast<std::size_t>(item)]->enterName();
    } else {
        kinds_->setFocus(Qt::OtherFocusReason);
    }
}

}  // namespace bolthole
