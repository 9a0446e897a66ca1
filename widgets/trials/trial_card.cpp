#include "widgets/trials/trial_card.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

TrialCard::TrialCard(QWidget* parent)
    : Card(parent),
      heading_(new ToneLabel(ToneLabel::Tone::heading, QString(), this)),
      title_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      why_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      expected_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      chance_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      effort_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      proof_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      undo_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      set_(new QPushButton(tr("Set it"), this)),
      launch_(new QPushButton(tr("Show its launch"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 14, 16, 16);
    column->setSpacing(8);
    title_->setFont(textFont(TextSize::title, true));
    chance_->setFont(textFont(TextSize::body, true));
    for (ToneLabel* label : {title_, why_, expected_, proof_, undo_}) {
        label->setWordWrap(true);
    }
    auto* sums = new QHBoxLayout;
    sums->setSpacing(14);
    sums->addWidget(chance_);
    sums->addWidget(effort_, 1, Qt::AlignVCenter);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(10);
    buttons->addWidget(set_, 1);
    buttons->addWidget(launch_, 1);
    column->addWidget(heading_);
    column->addWidget(title_);
    column->addWidget(why_);
    column->addWidget(expected_);
    column->addLayout(sums);
    column->addWidget(proof_);
    column->addWidget(undo_);
    column->addSpacing(4);
    column->addLayout(buttons);
    set_->setObjectName(QStringLiteral("setTrial"));
    launch_->setObjectName(QStringLiteral("showTrial"));
    set_->setToolTip(tr("Changes the car in one step that can be undone"));
    launch_->setToolTip(tr("Shows its launch beside the car's own; changes nothing"));
    connect(set_, &QPushButton::clicked, this, &TrialCard::setRequested);
    connect(launch_, &QPushButton::clicked, this, &TrialCard::launchRequested);
    dress();
}

void TrialCard::showTrial(const LaunchTrial& trial, const Car& car, Units units, bool isFirst) {
    isFirst_ = isFirst;
    heading_->showText(isFirst ? tr("Next thing to try") : tr("Another single change"));
    title_->showText(trialTitle(trial.change, car, units));
    why_->showText(trialWhy(trial, units));
    expected_->showText(trialExpected(trial, units));
    chance_->showText(trialChance(trial));
    effort_->showText(trialEffort(trial.change));
    proof_->showText(trialProof(trial));
    undo_->showText(trialUndo(trial.change, car, units));
    setAccessibleName(heading_->text() + QStringLiteral(": ") + title_->text());
    setAccessibleDescription(said());
    set_->setAccessibleName(tr("Set it: %1").arg(title_->text()));
    launch_->setAccessibleName(tr("Show the launch with: %1").arg(title_->text()));
    launch_->setEnabled(trial.sixtyFoot.has_value());
    dress();
    update();
}

QString TrialCard::said() const {
    QStringList lines;
    for (const ToneLabel* label : {heading_, title_, why_, expected_, chance_, effort_, proof_, undo_}) {
        lines << label->text();
    }
    return lines.join(u'\n');
}

// The one accent: what is to be tried next, and the button that does it.
void TrialCard::dress() {
    const Theme& colors = theme();
    const QColor ink = colors.dark ? colors.window : colors.card;
    set_->setStyleSheet(
        QStringLiteral("QPushButton { background: %1; color: %2; border: 1px solid %1; padding: 6px "
                       "12px; font-weight: 600; } QPushButton:hover { border-color: %3; } "
                       "QPushButton:focus { border: 2px solid %3; padding: 5px 11px; }")
            .arg(colors.instantCenter.name(), ink.name(), colors.ink.name()));
    launch_->setStyleSheet(
        QStringLiteral("QPushButton { padding: 6px 12px; } QPushButton:focus { padding: 5px "
                       "11px; }"));
    QPalette toned = heading_->palette();
    toned.setColor(QPalette::WindowText, isFirst_ ? colors.instantCenter : colors.muted);
    if (heading_->palette() != toned) {
        heading_->setPalette(toned);
    }
}

void TrialCard::changeEvent(QEvent* event) {
    Card::changeEvent(event);
    if (event->type() == QEvent::ApplicationPaletteChange || event->type() == QEvent::StyleChange) {
        dress();
    }
}

void TrialCard::paintEvent(QPaintEvent* event) {
    Card::paintEvent(event);
    if (isFirst_) {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(theme().instantCenter, 2));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
    }
}

}  // namespace bolthole
