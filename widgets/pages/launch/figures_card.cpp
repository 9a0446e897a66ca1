#include "widgets/pages/launch/figures_card.h"

#include <QGridLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/launch_uncertainty_runner.h"
#include "widgets/pages/launch/launch_words.h"

namespace bolthole {

namespace {

// Times of the clock as a time slip has them, and what the rear does in fractions of an inch.
Fineness finenessOf(LaunchFigure figure) {
    const bool isFine = figure == LaunchFigure::sixtyFoot || figure == LaunchFigure::fromRelease ||
                        figure == LaunchFigure::separation || figure == LaunchFigure::separationRate;
    return isFine ? Fineness::fine : Fineness::plain;
}

QString bareText(LaunchFigure figure, double value, Units units) {
    const Quantity quantity = quantityOf(figure);
    return QString::fromStdString(finenessOf(figure) == Fineness::fine
                                      ? fineFigureText(value, quantity, units)
                                      : figureText(value, quantity, units));
}

bool mayNeverHappen(LaunchFigure figure) {
    return figure == LaunchFigure::toppedOut || figure == LaunchFigure::frontUp;
}

}  // namespace

LaunchFiguresCard::LaunchFiguresCard(QWidget* parent)
    : Card(parent),
      heading_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      baselineHeading_(new ToneLabel(ToneLabel::Tone::muted,
                                     tr("Below each: that one, and what this setup has more."), this)),
      note_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)) {
    setAccessibleName(tr("Figures of the launch"));
    setFocusPolicy(Qt::TabFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 10, 14, 12);
    column->setSpacing(8);
    heading_->setFont(textFont(TextSize::title, true));
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(7);
    grid->setVerticalSpacing(7);
    heading_->setWordWrap(true);
    baselineHeading_->setWordWrap(true);
    column->addWidget(heading_);
    column->addWidget(baselineHeading_);
    grid->setColumnStretch(2, 1);
    column->addLayout(grid);
    addRow(*grid, LaunchFigure::sixtyFoot, tr("60 ft"),
           tr("On the clock, which starts when the front wheel has rolled out of the beam"));
    addRow(*grid, LaunchFigure::fromRelease, tr("From the release"), tr("The same, from the release on"));
    addRow(*grid, LaunchFigure::leastLoad, tr("Least rear load past the hit"),
           tr("What both rear tires carry at the least from 0.3 s, when the hit is over, to 60 ft"));
    addRow(*grid, LaunchFigure::gripLeft, tr("Grip left, least"),
           tr("What is left of the grip at the least from 0.3 s to 60 ft; 0 where the tires spin"));
    addRow(*grid, LaunchFigure::toppedOut, tr("Nose tops out"),
           tr("When the front suspension first gets to the end of its droop"));
    addRow(*grid, LaunchFigure::frontUp, tr("Front tires up"),
           tr("When the front tires first carry nothing"));
    addRow(*grid, LaunchFigure::largestSlip, tr("Largest slip"),
           tr("How much faster than the ground the rear tires' tread runs at the most, to 60 ft"));
    addRow(*grid, LaunchFigure::separation, tr("Separation"),
           tr("How far the body rises over the rear axle at the most, to 60 ft"));
    addRow(*grid, LaunchFigure::separationRate, tr("Fastest"), tr("How fast it does at the most"));
    note_->setWordWrap(true);
    column->addWidget(note_);
}

void LaunchFiguresCard::addRow(QGridLayout& grid, LaunchFigure figure, const QString& label,
                               const QString& toolTip) {
    const int line = grid.rowCount();
    const auto make = [&](ToneLabel::Tone tone, int row, int column, Qt::Alignment side) {
        auto* made = new ToneLabel(tone, QString(), this);
        made->setToolTip(wrappedToolTip(toolTip));
        grid.addWidget(made, row, column, side | Qt::AlignBaseline);
        return made;
    };
    Row& made = row(figure);
    made.label = make(ToneLabel::Tone::muted, line, 0, Qt::AlignLeft);
    made.label->showText(label);
    made.value = make(ToneLabel::Tone::plain, line, 1, Qt::AlignRight);
    made.value->setFont(textFont(TextSize::body, true));
    made.value->setAccessibleName(label);
    made.plusMinus = make(ToneLabel::Tone::muted, line, 2, Qt::AlignLeft);
    made.difference = make(ToneLabel::Tone::muted, line + 1, 2, Qt::AlignLeft);
    made.baseline = make(ToneLabel::Tone::muted, line + 1, 1, Qt::AlignRight);
}

void LaunchFiguresCard::showFilms(const LaunchFilm& film, const LaunchFilm* baseline, Units units) {
    reading_ = film.reading;
    baseline_ = baseline == nullptr ? std::nullopt : std::optional(baseline->reading);
    uncertainties_.reset();
    leastLoadAt_ = film.run.figures.leastRearLoadAt;
    ran_ = film.run.end == LaunchEnd::done;
    units_ = units;
    heading_->showText(baseline_ ? tr("This setup against: %1").arg(baseline->called) : tr("This setup"));
    baselineHeading_->setVisible(baseline_.has_value());
    showUncertainties(std::nullopt);
}

void LaunchFiguresCard::showUncertainties(const std::optional<LaunchUncertainties>& uncertainties) {
    uncertainties_ = uncertainties;
    for (std::size_t figure = 0; figure < kLaunchFigures; ++figure) {
        showRow(static_cast<LaunchFigure>(figure));
    }
    QString note;
    if (reading_[LaunchFigure::leastLoad]) {
        note = tr("Least rear load at %1.").arg(secondsText(leastLoadAt_));
    }
    if (uncertainties_) {
        note +=
            (baseline_ ? tr(" ±: 95 of 100, from %1 launches with other friction, torque, damping, inertias, "
                            "stall and CG height, the same for both setups.")
                       : tr(" ±: 95 of 100, from %1 launches with other friction, torque, damping, inertias, "
                            "stall and CG height."))
                .arg(LaunchUncertaintyRunner::kDraws);
    }
    note_->showText(note.trimmed());
    note_->setVisible(!note.isEmpty());
}

QString LaunchFiguresCard::valueWords(LaunchFigure figure, const std::optional<double>& value,
                                      bool withUnits) const {
    if (!value) {
        return mayNeverHappen(figure) && ran_ ? tr("never") : QString(kDash);
    }
    const QString text = bareText(figure, *value, units_);
    return withUnits ? QString::fromStdString(withUnit(text.toStdString(), quantityOf(figure), units_))
                     : text;
}

// "+273 ± 40", or that it is within what the numbers may be off.
QString LaunchFiguresCard::differenceWords(LaunchFigure figure, double change) const {
    QString words = signedText(bareText(figure, change, units_));
    if (!uncertainties_) {
        return words;
    }
    const double uncertainty = (*uncertainties_)[static_cast<std::size_t>(figure)].difference;
    if (std::isnan(uncertainty)) {
        return words;
    }
    const bool showsNothing = std::none_of(words.begin(), words.end(),
                                           [](QChar letter) { return letter >= u'1' && letter <= u'9'; });
    if (showsNothing || std::abs(change) < kCoverage95 * uncertainty) {
        return tr("can’t tell");
    }
    const std::string plusMinus =
        uncertaintyText(uncertainty, quantityOf(figure), units_, finenessOf(figure));
    return plusMinus.empty() ? words : words + u' ' + QString::fromStdString(plusMinus);
}

// Both ends with as many decimals as the figure itself, unless they are wide apart.
std::string LaunchFiguresCard::rangeOf(LaunchFigure figure,
                                       const LaunchFigureUncertainty& uncertainty) const {
    if (finenessOf(figure) == Fineness::plain) {
        return withUnit(intervalText(uncertainty.low, uncertainty.high, quantityOf(figure), units_),
                        quantityOf(figure), units_);
    }
    return tr("%1 to %2")
        .arg(bareText(figure, uncertainty.low, units_), valueWords(figure, uncertainty.high, true))
        .toStdString();
}

// "± 0.02 s", or where the draws lie all to one side "9 to 320 %".
QString LaunchFiguresCard::uncertaintyWords(LaunchFigure figure, double value) const {
    if (!uncertainties_) {
        return {};
    }
    const LaunchFigureUncertainty& uncertainty = (*uncertainties_)[static_cast<std::size_t>(figure)];
    const std::string words =
        isLopsided(value, uncertainty.low, uncertainty.high)
            ? rangeOf(figure, uncertainty)
            : uncertaintyText(uncertainty.now, quantityOf(figure), units_, finenessOf(figure));
    return QString::fromStdString(words);
}

void LaunchFiguresCard::showRow(LaunchFigure figure) {
    Row& labels = row(figure);
    const std::optional<double>& now = reading_[figure];
    labels.value->showText(valueWords(figure, now, true));
    labels.plusMinus->showText(now ? uncertaintyWords(figure, *now) : QString());
    const std::optional<double> then = baseline_ ? (*baseline_)[figure] : std::nullopt;
    const bool isTold = now && then;
    const QString difference = isTold ? differenceWords(figure, *now - *then) : QString();
    const bool isDistinct = isTold && difference != tr("can’t tell");
    QFont font = textFont(TextSize::small);
    font.setWeight(isDistinct ? QFont::DemiBold : QFont::Normal);
    labels.difference->setFont(font);
    labels.difference->showText(difference);
    labels.baseline->showText(baseline_ ? valueWords(figure, then, false) : QString());
    labels.difference->setVisible(baseline_.has_value());
    labels.baseline->setVisible(baseline_.has_value());
}

LaunchFiguresCard::Shown LaunchFiguresCard::shown(LaunchFigure figure) const {
    const Row& labels = rows_[static_cast<std::size_t>(figure)];
    return {labels.value->text(), labels.plusMinus->text(), labels.difference->text(),
            labels.baseline->text()};
}

}  // namespace bolthole
