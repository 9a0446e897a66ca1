#include "widgets/pages/springs/spring_section.h"

#include <QVBoxLayout>
#include <array>

#include "geometry/car/fields.h"
#include "geometry/statics/suspension_part.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

namespace {

constexpr std::array kNumbers{Field::springRate,       Field::springFreeLength, Field::springClosedLength,
                              Field::springOpenLength, Field::springPush,       Field::bumpClick,
                              Field::reboundClick};

/// Unless it is what an absent one stands for.
std::optional<double> numberOf(const SuspensionPart& part, Field field) {
    const FieldRule& rule = ruleOf(field);
    const std::optional<double> number = numberIn(rule.access.constSlot(&part, -1));
    return number == rule.fallback ? std::nullopt : number;
}

/// A number that does not belong to the kind but is there counts, and so is shown; one that stands in a table
/// needs its table.
bool hasField(const SuspensionPart& part, Field field) {
    const bool hasPlace = !std::holds_alternative<std::monostate>(ruleOf(field).access.constSlot(&part, -1));
    return hasPlace && (belongsTo(part.kind, field) || numberOf(part, field).has_value());
}

/// The part as another kind, without the numbers such a part does not have.
SuspensionPart turnedInto(SuspensionPart part, PartKind kind) {
    part.kind = kind;
    for (const FieldRule* rule : rulesOf(Scope::spring)) {
        if (belongsTo(kind, rule->field)) {
            continue;
        }
        const Slot<Car> slot = rule->access.slot(&part, -1);
        if (auto* const* unknown = std::get_if<OptionalNumber*>(&slot)) {
            (*unknown)->reset();
        } else if (double* const* number = std::get_if<double*>(&slot)) {
            **number = rule->fallback.value_or(0);
        }
    }
    if (kind != PartKind::shock && kind != PartKind::coilOver) {
        part.damping.reset();
    }
    return part;
}

}  // namespace

SpringSection::SpringSection(SheetHub& hub, int item, QWidget* parent)
    : Section(springTitle(hub.state().car, item), parent), hub_(hub), item_(item) {
    refused_ = new ToneLabel(ToneLabel::Tone::problem, QString(), this);
    refused_->setWordWrap(true);
    refused_->setContentsMargins(4, 0, 4, 0);
    body()->addWidget(refused_);
    addWords();
    chassis_ = new MountGrid(hub, item, End::chassis, this);
    axle_ = new MountGrid(hub, item, End::axle, this);
    body()->addWidget(chassis_);
    body()->addWidget(axle_);
    addNumbers();
    addRemove();
    refresh();
}

std::string SpringSection::shapeOf(const SuspensionPart& part) {
    std::string shape;
    for (const auto number : {static_cast<std::size_t>(part.kind), static_cast<std::size_t>(part.side),
                              part.chassis.holes.size(), part.axle.holes.size()}) {
        shape += std::to_string(number) + ' ';
    }
    for (const Field field : kNumbers) {
        shape += hasField(part, field) ? '+' : '-';
    }
    return shape;
}

const SuspensionPart& SpringSection::part() const {
    return hub_.state().car.springs[static_cast<std::size_t>(item_)];
}

void SpringSection::ask(const SuspensionPart& changed) {
    hub_.request(ChangeSpring{item_, changed});
    refresh();  // a refused choice goes back to what the car has
}

CalmCombo* SpringSection::combo(const QStringList& options, const QString& label, const QString& toolTip) {
    auto* box = new CalmCombo(this);
    box->addItems(options);
    box->setToolTip(wrappedToolTip(toolTip));
    body()->addWidget(new BoxRow(label, box, this));
    return box;
}

void SpringSection::addWords() {
    name_ = new NameField(this);
    name_->setAlignment(Qt::AlignRight);
    name_->setToolTip(wrappedToolTip(tr("What the part is called in pictures and tables.")));
    connect(name_, &NameField::renamed, this, [this](const std::string& typed) {
        SuspensionPart changed = part();
        changed.name = typed;
        ask(changed);
    });
    body()->addWidget(new BoxRow(tr("Name"), name_, this));
    kind_ = combo({tr("spring"), tr("shock"), tr("coilover"), tr("bump stop"), tr("strap")}, tr("Kind"),
                  tr("What it is. Numbers that such a part does not have are dropped."));
    connect(kind_, &QComboBox::activated, this,
            [this](int kind) { ask(turnedInto(part(), static_cast<PartKind>(kind))); });
    side_ = combo({tr("both, mirrored"), tr("left"), tr("right"), tr("center")}, tr("Side"),
                  tr("Both: entered for the left, mirrored to the right."));
    connect(side_, &QComboBox::activated, this, [this](int side) {
        SuspensionPart changed = part();
        changed.side = static_cast<Side>(side);
        ask(changed);
    });
}

void SpringSection::addNumbers() {
    for (const Field field : kNumbers) {
        if (!hasField(part(), field)) {
            continue;
        }
        const FieldId id{.field = field, .item = item_};
        NumberField* number = hub_.makeField(id, this);
        number->setPlaceholderText(tr("not measured"));
        body()->addWidget(new NumberRow(wordsFor(hub_.state().car, id).label, number, this));
    }
}

void SpringSection::addRemove() {
    const QString name = springName(hub_.state().car, item_);
    QAbstractButton* remove = smallButton(tr("Remove"), tr("Remove %1").arg(name),
                                          tr("Takes the part and its numbers out of the car."), this);
    body()->addWidget(remove, 0, Qt::AlignLeft);
    connect(remove, &QAbstractButton::clicked, this, [this] { emit removeRequested(item_); });
}

void SpringSection::refresh() {
    const Car& car = hub_.state().car;
    const QString summary = tr("%1 / %2").arg(holeName(part().chassis, part().chassis.use),
                                              holeName(part().axle, part().axle.use));
    header()->showTexts(springTitle(car, item_), isUnfolded() ? QString() : summary);
    const QString name = springName(car, item_);
    name_->showName(part().name);
    name_->setAccessibleName(tr("%1, name of the part").arg(name));
    kind_->setCurrentIndex(static_cast<int>(part().kind));
    kind_->setAccessibleName(tr("%1, kind").arg(name));
    side_->setCurrentIndex(static_cast<int>(part().side));
    side_->setAccessibleName(tr("%1, side").arg(name));
    chassis_->refresh();
    axle_->refresh();
    const std::string reason = refusal(part());
    refused_->showText(reason.empty() ? QString()
                                      : tr("▲ Not computed: %1.").arg(QString::fromStdString(reason)));
    refused_->setVisible(!reason.empty());
}

}  // namespace bolthole
