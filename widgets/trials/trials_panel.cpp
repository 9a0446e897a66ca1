#include "widgets/trials/trials_panel.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "geometry/edits/edit.h"
#include "widgets/kit/card.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/trials/trial_card.h"
#include "widgets/trials/trial_list.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

namespace {

constexpr int kProgressSteps = 1000;
constexpr int kCardSpace = 10;
constexpr int kBesideWords = 10;  // within the list's own margin
constexpr int kBesideList = 6;    // less than beside words: the list needs the width

QVBoxLayout* columnIn(QWidget* card) {
    auto* column = new QVBoxLayout(card);
    column->setContentsMargins(16, 14, 16, 14);
    column->setSpacing(8);
    return column;
}

ToneLabel* wrappingLabel(ToneLabel::Tone tone, QWidget* parent) {
    auto* label = new ToneLabel(tone, QString(), parent);
    label->setWordWrap(true);
    return label;
}

}  // namespace

TrialsPanel::TrialsPanel(QWidget* parent)
    : QWidget(parent),
      card_(new TrialCard(this)),
      listCard_(new Card(this)),
      waiting_(new Card(this)),
      message_(wrappingLabel(ToneLabel::Tone::plain, waiting_)),
      progress_(new QProgressBar(waiting_)),
      cancel_(new QPushButton(tr("Cancel"), waiting_)) {
    setAccessibleName(tr("What to try next"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kCardSpace);
    auto* waiting = columnIn(waiting_);
    auto* heading = new ToneLabel(ToneLabel::Tone::heading, tr("Next thing to try"), waiting_);
    progress_->setRange(0, kProgressSteps);
    progress_->setTextVisible(false);
    progress_->setFixedHeight(6);
    progress_->setAccessibleName(tr("Trying every single change"));
    cancel_->setObjectName(QStringLiteral("cancelTrials"));
    waiting->addWidget(heading);
    waiting->addWidget(message_);
    waiting->addWidget(progress_);
    waiting->addWidget(cancel_, 0, Qt::AlignLeft);
    auto* listed = columnIn(listCard_);
    listed->setContentsMargins(kBesideList, 14, kBesideList, 14);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("All single changes"), listCard_);
    title->setFont(textFont(TextSize::title, true));
    list_ = new TrialList(listCard_);
    alike_ = wrappingLabel(ToneLabel::Tone::plain, listCard_);
    alike_->setFont(textFont(TextSize::small));
    auto* caution = wrappingLabel(ToneLabel::Tone::muted, listCard_);
    caution->showText(tr("≈ 1: can't be told apart from No. 1.") + u' ' + trialCaution());
    listed->addWidget(title);
    listed->addWidget(list_);
    listed->addWidget(alike_);
    fared_ = wrappingLabel(ToneLabel::Tone::plain, listCard_);
    fared_->setObjectName(QStringLiteral("faredWords"));
    fared_->setFont(textFont(TextSize::small));
    fared_->hide();
    listed->addWidget(fared_);
    listed->addWidget(caution);
    for (QWidget* words : std::initializer_list<QWidget*>{title, alike_, fared_, caution}) {
        words->setContentsMargins(kBesideWords, 0, kBesideWords, 0);
    }
    column->addWidget(waiting_);
    column->addWidget(card_);
    column->addWidget(listCard_);
    column->addStretch(1);
    connect(card_, &TrialCard::setRequested, this, [this] { take(shown_); });
    connect(card_, &TrialCard::launchRequested, this, &TrialsPanel::showLaunch);
    connect(list_, &TrialList::trialChosen, this, &TrialsPanel::showChosen);
    connect(list_, &TrialList::trialTaken, this, &TrialsPanel::take);
    connect(cancel_, &QPushButton::clicked, this,
            [this] { progress_->isHidden() ? emit requested() : emit cancelled(); });
    showMessage({});
}

// Where what has the focus goes, the panel keeps it: else Cancel would get it, and the next key would cancel.
void TrialsPanel::look(Look what) {
    const QWidget* focused = QApplication::focusWidget();
    if (what != Look::trials && (card_->isAncestorOf(focused) || listCard_->isAncestorOf(focused))) {
        setFocus(Qt::OtherFocusReason);
    }
    waiting_->setVisible(what != Look::trials);
    progress_->setVisible(what == Look::working);
    cancel_->setVisible(what == Look::working || what == Look::stopped);
    cancel_->setText(what == Look::working ? tr("Cancel") : tr("Try again"));
    card_->setVisible(what == Look::trials);
    listCard_->setVisible(what == Look::trials);
    if (hasFocus() && what == Look::trials) {
        list_->setFocus(Qt::OtherFocusReason);
    }
}

void TrialsPanel::showTrials(const std::shared_ptr<const LaunchTrials>& trials,
                             const std::shared_ptr<const Car>& car, Units units) {
    const QString nothing = noTrialsWords(trials->missing, trials->present.figures.sixtyFoot.has_value());
    if (!nothing.isEmpty() || !trials->complete || trials->trials.empty()) {
        showMessage(!nothing.isEmpty() ? nothing
                    : trials->complete ? tr("Nothing on this car can be changed in the paddock.")
                                       : tr("Not all changes were tried."));
        return;
    }
    trials_ = trials;
    car_ = car;
    units_ = units;
    list_->showTrials(trials, car, units);
    showChosen(std::max(0, list_->chosen()));
    look(Look::trials);
}

void TrialsPanel::showProgress(double share) {
    message_->showText(tr("Trying every single change, each with what is not known drawn anew…"));
    message_->show();
    progress_->setValue(static_cast<int>(std::lround(share * kProgressSteps)));
    look(Look::working);
}

void TrialsPanel::showFared(const QString& words) {
    fared_->showText(words);
    fared_->setVisible(!words.isEmpty());
}

void TrialsPanel::showMessage(const QString& why) {
    message_->showText(why);
    message_->setVisible(!why.isEmpty());
    look(Look::nothing);
}

void TrialsPanel::showStopped() {
    showMessage(tr("Stopped before every change was tried."));
    look(Look::stopped);
}

QString TrialsPanel::message() const {
    return waiting_->isVisibleTo(this) ? message_->text() : QString();
}

void TrialsPanel::showChosen(int trial) {
    shown_ = trial;
    card_->showTrial(trials_->trials[static_cast<std::size_t>(trial)], *car_, units_, trial == 0);
    const QString alike = list_->alikeWords(trial);
    alike_->showText(alike.isEmpty() ? QString() : tr("No. %1 %2.").arg(trial + 1).arg(alike));
    alike_->setVisible(!alike.isEmpty());
}

void TrialsPanel::take(int trial) {
    if (trials_ && static_cast<std::size_t>(trial) < trials_->trials.size()) {
        emit edited(
            Edit(trials_->trials[static_cast<std::size_t>(trial)].change.edit));  // a copy: rows change
    }
}

void TrialsPanel::showLaunch() {
    const PaddockChange& change = trials_->trials[static_cast<std::size_t>(shown_)].change;
    EditResult changed = bolthole::apply(*car_, change.edit);
    if (changed.refusal.empty()) {
        emit launchRequested(std::make_shared<const Car>(std::move(changed.car)),
                             trialName(change, *car_, units_));
    }
}

void TrialsPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    emit seen(true);
}

void TrialsPanel::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    emit seen(false);
}

}  // namespace bolthole
