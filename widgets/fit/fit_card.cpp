#include "widgets/fit/fit_card.h"

#include <QGraphicsOpacityEffect>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <cmath>

#include "widgets/fit/fit_parts.h"
#include "widgets/fit/fit_words.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kMargin = 16;
constexpr int kSteps = 1000;  // of the progress bar
constexpr int kMostUnusedLines = 3;

ToneLabel* label(ToneLabel::Tone tone, const QString& text, QWidget* parent, bool wraps = false) {
    auto* made = new ToneLabel(tone, text, parent);
    made->setWordWrap(wraps);
    return made;
}

}  // namespace

FitCard::FitCard(QWidget* parent) : Card(parent) {
    setAccessibleName(tr("What the passes taught the model"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kMargin, kMargin - 2, kMargin, kMargin);
    column->setSpacing(10);
    auto* title = label(ToneLabel::Tone::plain, tr("What the passes taught the model"), this);
    title->setFont(textFont(TextSize::title, true));
    column->addWidget(title);
    message_ = label(ToneLabel::Tone::muted, QString(), this, true);
    column->addWidget(message_);
    column->addWidget(buildWait());
    body_ = new QWidget(this);
    auto* inner = new QVBoxLayout(body_);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setSpacing(10);
    grid_ = new QGridLayout;
    grid_->setHorizontalSpacing(9);
    grid_->setVerticalSpacing(7);
    grid_->setColumnStretch(0, 1);
    buildHead(grid_);
    inner->addLayout(grid_);
    inside_ = label(ToneLabel::Tone::plain, QString(), body_, true);
    inner->addWidget(inside_);
    plot_ = new PredictionPlot(body_);
    inner->addWidget(plot_);
    left_ = label(ToneLabel::Tone::muted, QString(), body_, true);
    inner->addWidget(left_);
    inner->addWidget(buildTake());
    column->addWidget(body_);
    column->addStretch();
    showNothing(tr("Not fitted yet."));
}

void FitCard::buildHead(QGridLayout* grid) {
    int column = 1;
    for (const QString& head : {tr("before"), tr("after"), tr("told")}) {
        auto* made = label(ToneLabel::Tone::muted, head, body_);
        made->setFont(textFont(TextSize::small));
        const bool isLast = column == 3;
        grid->addWidget(made, 0, column, 1, isLast ? 2 : 1, isLast ? Qt::AlignLeft : Qt::AlignRight);
        ++column;
    }
}

QWidget* FitCard::buildWait() {
    wait_ = new QWidget(this);
    auto* row = new QHBoxLayout(wait_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(10);
    bar_ = new QProgressBar(wait_);
    bar_->setRange(0, kSteps);
    bar_->setTextVisible(false);
    bar_->setFixedHeight(6);
    bar_->setAccessibleName(tr("Fit under way"));
    row->addWidget(bar_, 1);
    QAbstractButton* cancel =
        smallButton(tr("Cancel"), tr("Cancel the fit"),
                    tr("Give this fit up. What the passes taught before stays."), wait_);
    row->addWidget(cancel);
    connect(cancel, &QAbstractButton::clicked, this, &FitCard::cancelRequested);
    again_ = new QPushButton(tr("Fit to the passes"), this);
    again_->hide();
    static_cast<QVBoxLayout*>(layout())->addWidget(again_, 0, Qt::AlignLeft);
    connect(again_, &QPushButton::clicked, this, &FitCard::fitRequested);
    enter_ = new QPushButton(tr("&Enter them on the Launch page"), this);
    static_cast<QVBoxLayout*>(layout())->addWidget(enter_, 0, Qt::AlignLeft);
    connect(enter_, &QPushButton::clicked, this, &FitCard::launchNumbersRequested);
    return wait_;
}

QWidget* FitCard::buildTake() {
    auto* box = new QWidget(body_);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    surfaceRow_ = new QWidget(box);
    auto* choice = new QHBoxLayout(surfaceRow_);
    choice->setContentsMargins(0, 0, 0, 0);
    choice->addWidget(label(ToneLabel::Tone::muted, tr("Friction goes into the car from"), surfaceRow_));
    surfaces_ = new CalmCombo(surfaceRow_);
    surfaces_->setAccessibleName(tr("Surface whose friction goes into the car"));
    choice->addWidget(surfaces_);
    choice->addStretch();
    column->addWidget(surfaceRow_);
    auto* row = new QHBoxLayout;
    row->setSpacing(12);
    take_ = new QPushButton(tr("Take it over"), box);
    take_->setToolTip(
        tr("Writes what the passes taught into the car and every kept setup. One step; undo takes it "
           "back."));
    row->addWidget(take_);
    row->addWidget(label(ToneLabel::Tone::muted, tr("one step, undoable"), box));
    row->addStretch();
    column->addLayout(row);
    connect(take_, &QPushButton::clicked, this, &FitCard::takeOver);
    return box;
}

void FitCard::addRow() {
    const int place = static_cast<int>(rows_.size()) + 1;
    Row row{label(ToneLabel::Tone::muted, QString(), body_), label(ToneLabel::Tone::muted, QString(), body_),
            label(ToneLabel::Tone::plain, QString(), body_), new ShareBar(body_),
            label(ToneLabel::Tone::muted, QString(), body_)};
    row.after->setFont(textFont(TextSize::body, true));
    row.told->setFont(textFont(TextSize::small));
    row.before->setFont(textFont(TextSize::small));
    row.label->setFont(textFont(TextSize::small));
    grid_->addWidget(row.label, place, 0);
    grid_->addWidget(row.before, place, 1, Qt::AlignRight);
    grid_->addWidget(row.after, place, 2, Qt::AlignRight);
    grid_->addWidget(row.bar, place, 3, Qt::AlignVCenter);
    grid_->addWidget(row.told, place, 4, Qt::AlignRight);
    rows_.push_back(row);
}

// A button that goes takes no focus to whatever comes next to it.
void FitCard::look(Look look) {
    if (take_->hasFocus() && look != Look::fitted) {
        setFocus(Qt::OtherFocusReason);
    }
    message_->setVisible(look == Look::nothing);
    wait_->setVisible(look == Look::waiting);
    body_->setVisible(fit_ != nullptr && look != Look::nothing);
    take_->setEnabled(look == Look::fitted);
    again_->hide();
    enter_->hide();
    if (hasFocus() && look == Look::fitted) {
        take_->setFocus(Qt::OtherFocusReason);
    }
}

void FitCard::showNothing(const QString& why) {
    fit_.reset();
    message_->showText(why);
    look(Look::nothing);
}

void FitCard::showProgress(double share) {
    bar_->setValue(static_cast<int>(std::round(share * kSteps)));
    look(Look::waiting);
}

void FitCard::showCancelled() {
    if (fit_) {
        look(Look::fitted);
        take_->setEnabled(false);  // of a car changed since
    } else {
        showNothing(tr("Not fitted."));
    }
    again_->show();
}

void FitCard::showFit(const std::shared_ptr<const LaunchFit>& fit, const Car& car) {
    if (fit->end != FitEnd::done) {
        showNothing(noFitWords(*fit, car));
        enter_->setVisible(fit->end == FitEnd::missing);
        return;
    }
    fit_ = fit;
    units_ = car.units;
    showNumbers();
    showPredictions(car);
    showSurfaces();
    look(Look::fitted);
}

void FitCard::showNumbers() {
    while (rows_.size() < fit_->numbers.size()) {
        addRow();
    }
    for (std::size_t index = 0; index < rows_.size(); ++index) {
        const Row& row = rows_[index];
        const bool isThere = index < fit_->numbers.size();
        for (QWidget* part : {static_cast<QWidget*>(row.label), static_cast<QWidget*>(row.before),
                              static_cast<QWidget*>(row.after), static_cast<QWidget*>(row.bar),
                              static_cast<QWidget*>(row.told)}) {
            part->setVisible(isThere);
        }
        if (!isThere) {
            continue;
        }
        const FittedNumber& number = fit_->numbers[index];
        row.label->showText(fittedWords(number, fit_->surfaces.size() > 1));
        row.before->showText(fittedText(number.number, number.before, number.beforeU));
        row.after->showText(fittedText(number.number, number.after, number.afterU));
        row.bar->showShare(number.toldPercent());
        row.told->showText(toldText(number));
        row.bar->setAccessibleName(tr("%1: %2 told by the passes").arg(row.label->text(), row.told->text()));
    }
}

void FitCard::showPredictions(const Car& car) {
    inside_->showText(insideWords(*fit_));
    std::vector<QString> names;
    for (const FittedPass& pass : fit_->passes) {
        names.push_back(QString::fromStdString(passWords(car.passes[pass.row])));
    }
    plot_->showPasses(fit_->passes, names);
    const QString unused = unusedWords(*fit_, car);
    const auto count = static_cast<int>(fit_->unused.size());
    left_->showText(count > kMostUnusedLines
                        ? tr("%n passes are left out; the pointer here says why.", nullptr, count)
                        : unused);
    left_->setToolTip(unused);
    left_->setVisible(count > 0);
}

void FitCard::showSurfaces() {
    const QSignalBlocker quiet(surfaces_);
    const QString was = surfaces_->currentText();
    surfaces_->clear();
    for (const FittedSurface& surface : fit_->surfaces) {
        surfaces_->addItem(QString::fromStdString(surface.name));
    }
    const int same = surfaces_->findText(was);
    surfaces_->setCurrentIndex(same >= 0 ? same : static_cast<int>(fit_->lastSurface));
    surfaceRow_->setVisible(fit_->surfaces.size() > 1);
}

std::size_t FitCard::surface() const {
    return static_cast<std::size_t>(std::max(0, surfaces_->currentIndex()));
}

void FitCard::takeOver() {
    if (fit_) {
        emit edited(bolthole::takeOver(*fit_, surface()));
    }
}

void FitCard::showEvent(QShowEvent* event) {
    Card::showEvent(event);
    emit seen();
}

}  // namespace bolthole
