#include "widgets/fields/forward_finder.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "geometry/kinematics/tape.h"
#include "geometry/units/say.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

QString lengthWords(double value, NumberStyle style) {
    return QString::fromStdString(
        withUnit(fineFigureText(value, Quantity::length, style.units), Quantity::length, style.units));
}

}  // namespace

ForwardFinder::ForwardFinder(SheetHub& hub, int link, QWidget* parent)
    : QWidget(parent), hub_(hub), link_(link) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 4);
    column->setSpacing(4);
    const QString name = linkName(hub.state().car, link);
    auto* intro = new ToneLabel(ToneLabel::Tone::muted,
                                tr("From both heights and the length between the bolts, the fore-aft figure "
                                   "follows. Current holes:"),
                                this);
    intro->setWordWrap(true);
    intro->setContentsMargins(4, 0, 4, 0);
    column->addWidget(intro);
    length_ = new NumberField(Quantity::length, this);
    length_->setAccessibleName(tr("%1, taped length center to center").arg(name));
    length_->setHowTo(tr("Tape from bolt center to bolt center, straight from one hole to the other."));
    length_->setPlaceholderText(tr("center to center"));
    length_->setCheck([](double value) { return value > 0 ? std::string() : say("a length above 0"); });
    column->addWidget(new NumberRow(tr("Taped length"), length_, this));
    end_ = new CalmCombo(this);
    end_->addItems({tr("chassis hole, forward"), tr("axle hole, forward")});
    end_->setAccessibleName(tr("%1, which hole to find").arg(name));
    column->addWidget(new BoxRow(tr("Find"), end_, this));
    result_ = new ToneLabel(ToneLabel::Tone::plain, QString(), this);
    refusal_ = new ToneLabel(ToneLabel::Tone::problem, QString(), this);
    for (ToneLabel* label : {result_, refusal_}) {
        label->setWordWrap(true);
        label->setContentsMargins(10, 0, 4, 0);
        column->addWidget(label);
    }
    auto* buttons = new QHBoxLayout;
    apply_ = new QPushButton(tr("Move the hole there"), this);
    auto* close = new QPushButton(tr("Close"), this);
    buttons->addWidget(apply_, 1);
    buttons->addWidget(close);
    column->addLayout(buttons);
    connect(length_, &QLineEdit::textEdited, this, [this] {
        typed_ = length_->typedNumber();
        refresh();
    });
    connect(length_, &NumberField::committed, this, [this](double value) {
        typed_ = value;
        refresh();
    });
    connect(end_, &QComboBox::currentIndexChanged, this, &ForwardFinder::refresh);
    connect(apply_, &QPushButton::clicked, this, &ForwardFinder::apply);
    connect(close, &QPushButton::clicked, this, &QWidget::hide);
    hide();
}

const Link& ForwardFinder::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

End ForwardFinder::sought() const {
    return end_->currentIndex() == 0 ? End::chassis : End::axle;
}

void ForwardFinder::open() {
    typed_ = link().length;
    setVisible(true);
    refresh();
    length_->setFocus();
    length_->selectAll();
}

void ForwardFinder::refresh() {
    if (isHidden()) {
        return;
    }
    length_->showNumber(typed_, hub_.state().style);
    found_.reset();
    QString result = tr("Type the taped length.");
    QString refused;
    if (typed_) {
        const End other = sought() == End::chassis ? End::axle : End::chassis;
        const ForwardFigure figure =
            forwardFromLength(link().bracket(other).inUse().at, link().bracket(sought()).inUse().at, *typed_);
        found_ = figure.forward;
        (found_ ? result : refused) = resultWords(figure);
        if (!found_) {
            result.clear();
        }
    }
    result_->showText(result);
    result_->setVisible(!result.isEmpty());
    refusal_->showText(refused);
    refusal_->setVisible(!refused.isEmpty());
    apply_->setEnabled(found_.has_value());
}

QString ForwardFinder::resultWords(const ForwardFigure& figure) const {
    const NumberStyle style = hub_.state().style;
    if (!figure.forward) {
        return tr("▲ Too short: height and %2 alone put the holes %1 apart. Check them, and the length.")
            .arg(lengthWords(figure.shortest, style), sidewaysWord(link().side));
    }
    const Bracket& bracket = link().bracket(sought());
    return tr("'%1' comes to %2 forward (now %3).")
        .arg(holeName(bracket, bracket.use), lengthWords(*figure.forward, style),
             lengthWords(bracket.inUse().at.x(), style));
}

void ForwardFinder::apply() {
    if (!found_) {
        return;
    }
    const Bracket& bracket = link().bracket(sought());
    Eigen::Vector3d at = bracket.inUse().at;
    at.x() = *found_;
    const MoveHole move{link_, sought(), bracket.use, at};
    hide();
    hub_.request(move);
}

}  // namespace bolthole
