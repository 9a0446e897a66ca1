#include "widgets/fields/limit_part.h"

#include <QVBoxLayout>
#include <algorithm>

#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

QVBoxLayout* columnOf(QWidget* widget) {
    auto* column = new QVBoxLayout(widget);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(5);
    return column;
}

}  // namespace

LimitPart::LimitPart(SheetHub& hub, int link, QWidget* parent) : QWidget(parent), hub_(hub), link_(link) {
    auto* column = columnOf(this);
    button_ = smallButton(QString(), tr("%1: limits").arg(linkName(hub.state().car, link)),
                          tr("What the link can be set to, the least thread engagement, and how far its "
                             "ends may be misaligned. Hole combinations that would pass a limit are marked."),
                          this);
    button_->setCheckable(true);
    column->addWidget(button_, 0, Qt::AlignLeft);
    box_ = new QWidget(this);
    columnOf(box_);
    column->addWidget(box_);
    box_->layout()->addWidget(addRow(Field::rodEndLimit, tr("no limit")));
    adjuster_ = new QWidget(box_);
    columnOf(adjuster_);
    NumberRow* shortest = addRow(Field::adjusterShortest, tr("no limit"));
    NumberRow* longest = addRow(Field::adjusterLongest, tr("no limit"));
    shortest_ = shortest->field();
    longest_ = longest->field();
    measured_ = new ToneLabel(ToneLabel::Tone::muted, QString(), adjuster_);
    measured_->setIndent(10);
    for (QWidget* row : {static_cast<QWidget*>(shortest), static_cast<QWidget*>(longest),
                         static_cast<QWidget*>(addRow(Field::adjusterEngagement, tr("not measured"))),
                         static_cast<QWidget*>(measured_),
                         static_cast<QWidget*>(addRow(Field::adjusterLeastEngagement, tr("no limit")))}) {
        adjuster_->layout()->addWidget(row);
    }
    box_->layout()->addWidget(adjuster_);
    connect(button_, &QAbstractButton::toggled, this, &LimitPart::setUnfolded);
    setUnfolded(std::ranges::find(hub.openLimits, link) != hub.openLimits.end());
}

const Link& LimitPart::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

NumberRow* LimitPart::addRow(Field field, const QString& absent) {
    const FieldId id = linkField(field, link_);
    NumberField* number = hub_.makeField(id, this);
    number->setMayBeEmpty(true);
    number->setPlaceholderText(absent);
    return new NumberRow(wordsFor(hub_.state().car, id).label, number, this);
}

void LimitPart::setUnfolded(bool unfolded) {
    std::erase(hub_.openLimits, link_);
    if (unfolded) {
        hub_.openLimits.push_back(link_);
    }
    button_->setChecked(unfolded);
    box_->setVisible(unfolded);
    refresh();
}

int LimitPart::entered() const {
    int count = link().rodEndLimit ? 1 : 0;
    if (link().adjuster) {
        count += link().adjuster->shortest ? 1 : 0;
        count += link().adjuster->longest ? 1 : 0;
        count += link().adjuster->leastEngagement ? 1 : 0;
    }
    return count;
}

/// "in each end, at 19 1/2 in long"
QString LimitPart::measuredWords() const {
    if (!link().adjuster || !link().adjuster->engagement) {
        return {};
    }
    const double at = link().adjuster->engagementAt.value_or(builtLength(link()));
    const NumberStyle style = hub_.state().style;
    const QString length = QString::fromStdString(
        withUnit(fieldText(at, Quantity::length, style), Quantity::length, style.units));
    return link().adjuster->threadedEnds == 2 ? tr("in each end, at %1 long").arg(length)
                                              : tr("at %1 long").arg(length);
}

void LimitPart::refreshSteps() {
    const double built = builtLength(link());
    shortest_->setStepStart(built);
    longest_->setStepStart(built);
}

void LimitPart::refresh() {
    const int count = entered();
    const QString text = count == 0 ? tr("Limits…") : tr("Limits (%1)…").arg(count);
    if (button_->text() != text) {
        button_->setText(text);
    }
    const QString state = tr("%n entered", nullptr, count);
    if (button_->accessibleDescription() != state) {
        button_->setAccessibleDescription(state);
    }
    if (box_->isHidden()) {
        return;
    }
    refreshSteps();
    adjuster_->setVisible(link().adjuster.has_value());
    const QString words = measuredWords();
    measured_->showText(words);
    measured_->setVisible(!words.isEmpty());
}

}  // namespace bolthole
