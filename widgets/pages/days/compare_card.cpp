#include "widgets/pages/days/compare_card.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/compare/setup_changes.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

const Pass& firstPassOf(const PassBook& book, std::size_t run) {
    return book.passes()[book.runs().firstOf[run]];
}

QString letter(std::size_t run) {
    return QString::fromStdString(letterOf(run));
}

/// What was changed from one run to another, where both were run on the same spot.
QString changesBetween(const PassBook& book, std::size_t first, std::size_t second) {
    Car two;
    two.kept = book.car().kept;
    two.passes = {firstPassOf(book, first), firstPassOf(book, second)};
    for (Pass& pass : two.passes) {
        pass.place.clear();
        pass.surface = {};
    }
    return changeText(changesSincePassBefore(two, 1, book.units()));
}

QString measureChange(const PassBook& book, MeasureReader& reader, std::size_t first, std::size_t second,
                      PassMeasure measure, const QString& name) {
    const std::optional<double> from = reader.read(book, book.runs().firstOf[first], measure);
    const std::optional<double> to = reader.read(book, book.runs().firstOf[second], measure);
    const int decimals = measure == PassMeasure::icDistance && book.units() == Units::inch ? 1 : 0;
    const auto text = [&](double value) { return QString::number(value, 'f', decimals); };
    if (!from || !to || text(*from) == text(*to)) {
        return {};
    }
    return tr("%1 %2 → %3 %4").arg(name, text(*from), text(*to), measureUnit(measure, book.units()));
}

QString surfacesOf(const PassBook& book, std::size_t run) {
    QStringList names;
    for (const Pass& pass : book.passes()) {
        if (isCounted(pass) && runWith(pass) == book.runs().runs[run]) {
            const QString name = surfaceText(pass.surface.kind, pass.surface.name);
            names << (name.isEmpty() ? tr("a surface not said") : name);
        }
    }
    names.removeDuplicates();
    return names.isEmpty() ? tr("nothing that counts") : names.join(tr(" and "));
}

QString passCount(int count) {
    return count == 1 ? tr("1 pass") : tr("%n passes", count);
}

QString groundWords(const Ground& ground) {
    const QString surface = surfaceText(ground.kind, ground.name);
    const QString on = surface.isEmpty() ? tr("Surface not said") : tr("Both on %1").arg(surface);
    return ground.date ? tr("%1, %2").arg(on, dayText(*ground.date))
                       : tr("%1, on different days: air and track are in the difference too").arg(on);
}

QString driftWords(const RunComparison& comparison) {
    if (!comparison.drift) {
        return {};
    }
    const Answer<Drift>& drift = comparison.drift->drift;
    if (!drift) {
        return tr("The day's trend can't be told: %1").arg(QString::fromStdString(drift.reason));
    }
    const QString each = comparison.drift->isByHour ? tr("an hour") : tr("a pass");
    const QString slope =
        tr("%1 s %2 ± %3").arg(signedTime(drift->slope), each, timeText((drift->high - drift->low) / 2));
    if (!comparison.byDrift) {
        return tr("No trend of the day is seen in the repeats: %1").arg(slope);
    }
    return tr("▲ The day drifts by %1: of the difference %2 s may be the day's")
        .arg(slope, signedTime(*comparison.byDrift));
}

/// How far one pass alone may be off, s: half the interval of a mean of one.
QString onePass(const Scatter& scatter) {
    const Answer<Interval> interval = meanInterval(Sample{1, 0, 0}, scatter);
    return interval ? timeText(interval->high) : QString();
}

void addVerdict(CompareWords& words, const SetupComparison& times) {
    const Answer<Difference>& difference = times.difference;
    if (!difference) {
        words.verdict = capitalized(QString::fromStdString(difference.reason));
        return;
    }
    words.figure =
        tr("%1 s ± %2")
            .arg(signedTime(difference->change), timeText((difference->high - difference->low) / 2));
    words.isClear = difference->apart();
    words.verdict = words.isClear ? (difference->change < 0 ? tr("clearly quicker") : tr("clearly slower"))
                                  : QString::fromStdString(bolthole::verdict(times));
}

}  // namespace

CompareWords compareInWords(const PassBook& book, MeasureReader& reader, std::size_t first,
                            std::size_t second) {
    CompareWords words;
    if (first == second) {
        words.verdict = tr("Choose two setups that differ.");
        return words;
    }
    const QString changes = changesBetween(book, first, second);
    QStringList figures{
        measureChange(book, reader, first, second, PassMeasure::icDistance, tr("instant center")),
        measureChange(book, reader, first, second, PassMeasure::antiSquat, tr("anti-squat"))};
    figures.removeAll(QString());
    words.lines << capitalized(changes) << capitalized(figures.join(QStringLiteral(", ")));
    const Answer<RunComparison> comparison =
        compareRuns(book.car(), book.runs().runs[first], book.runs().runs[second]);
    if (!comparison) {
        words.verdict =
            tr("Not compared: %1 ran on %2, %3 on %4. Only the model can compare them.")
                .arg(letter(first), surfacesOf(book, first), letter(second), surfacesOf(book, second));
        words.lines.removeAll(QString());
        return words;
    }
    addVerdict(words, comparison->times);
    QString counts =
        tr("%1 against %2").arg(passCount(comparison->times.second.count)).arg(comparison->times.first.count);
    counts += comparison->scatter
                  ? tr("; one pass alone tells ± %1 s (from %2 repeats)")
                        .arg(onePass(*comparison->scatter), QString::number(comparison->scatter->freedom))
                  : QStringLiteral("; ") + QString::fromStdString(comparison->scatter.reason);
    words.lines << counts << groundWords(comparison->ground) << driftWords(*comparison);
    words.lines.removeAll(QString());
    return words;
}

CompareCard::CompareCard(const PassBook& book, QWidget* parent)
    : Card(parent),
      book_(book),
      secondBox_(new CalmCombo(this)),
      firstBox_(new CalmCombo(this)),
      figure_(new ToneLabel(ToneLabel::Tone::plain, {}, this)),
      verdict_(new ToneLabel(ToneLabel::Tone::plain, {}, this)) {
    setObjectName(QStringLiteral("compareCard"));
    setAccessibleName(tr("Honest comparison"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 12, 16, 14);
    column->setSpacing(7);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain, tr("Honest comparison"), this);
    heading->setFont(textFont(TextSize::title, true));
    column->addWidget(heading);
    for (QComboBox* box : {secondBox_, firstBox_}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(8);
    }
    column->addWidget(secondBox_);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    row->addWidget(new ToneLabel(ToneLabel::Tone::muted, tr("against"), this));
    row->addWidget(firstBox_, 1);
    secondBox_->setAccessibleName(tr("Setup"));
    firstBox_->setAccessibleName(tr("Setup it is held against"));
    column->addLayout(row);
    figure_->setFont(textFont(TextSize::figure, true));
    figure_->setObjectName(QStringLiteral("compareFigure"));
    verdict_->setFont(textFont(TextSize::body, true));
    verdict_->setObjectName(QStringLiteral("compareVerdict"));
    verdict_->setWordWrap(true);
    column->addSpacing(4);
    column->addWidget(figure_);
    column->addWidget(verdict_);
    for (ToneLabel*& line : lines_) {
        line = new ToneLabel(&line == &lines_.front() ? ToneLabel::Tone::plain : ToneLabel::Tone::muted, {},
                             this);
        line->setFont(textFont(TextSize::small));
        line->setWordWrap(true);
        column->addWidget(line);
    }
    const auto choose = [this] {
        const std::vector<RunWith>& runs = book_.runs().runs;
        second_ = runs[static_cast<std::size_t>(secondBox_->currentIndex())];
        first_ = runs[static_cast<std::size_t>(firstBox_->currentIndex())];
        show();
    };
    connect(secondBox_, &QComboBox::activated, this, choose);
    connect(firstBox_, &QComboBox::activated, this, choose);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &CompareCard::show);
}

void CompareCard::refresh() {
    reader_.clear();
    fillBoxes();
    show();
}

void CompareCard::fillBoxes() {
    const RunList& list = book_.runs();
    for (QComboBox* box : {secondBox_, firstBox_}) {
        box->clear();
        for (std::size_t run = 0; run < list.runs.size(); ++run) {
            const Pass& pass = firstPassOf(book_, run);
            const QString& change = book_.changes(list.firstOf[run]);
            box->addItem(tr("%1 · %2").arg(
                letter(run), !change.isEmpty() ? change
                             : pass.setup      ? QString::fromStdString(
                                                     book_.car().kept[static_cast<std::size_t>(*pass.setup)].name)
                                          : tr("pass %1 of %2").arg(pass.number).arg(dayText(pass.date))));
        }
    }
    const auto placeOf = [&](const std::optional<RunWith>& run) {
        const auto found = run ? std::ranges::find(list.runs, *run) : list.runs.end();
        return found == list.runs.end() ? -1 : static_cast<int>(found - list.runs.begin());
    };
    const int second = placeOf(second_);
    const int first = placeOf(first_);
    if (second >= 0 && first >= 0) {
        secondBox_->setCurrentIndex(second);
        firstBox_->setCurrentIndex(first);
    } else {
        second_.reset();
        first_.reset();
        chooseUsual();
    }
}

// The last run that counts against the one run before it.
void CompareCard::chooseUsual() {
    std::vector<std::size_t> counted;
    for (std::size_t row = 0; row < book_.passes().size(); ++row) {
        const std::size_t run = book_.runs().ofPass[row];
        if (isCounted(book_.passes()[row]) && (counted.empty() || counted.back() != run)) {
            counted.push_back(run);
        }
    }
    if (!counted.empty()) {
        secondBox_->setCurrentIndex(static_cast<int>(counted.back()));
        firstBox_->setCurrentIndex(static_cast<int>(counted[counted.size() > 1 ? counted.size() - 2 : 0]));
    }
}

void CompareCard::show() {
    words_ = {};
    if (book_.runs().runs.size() < 2) {
        words_.verdict = tr("Nothing to compare yet: a second setup is.");
    } else if (secondBox_->currentIndex() >= 0) {
        words_ = compareInWords(book_, reader_, static_cast<std::size_t>(firstBox_->currentIndex()),
                                static_cast<std::size_t>(secondBox_->currentIndex()));
    }
    const bool hasTwo = book_.runs().runs.size() > 1;
    secondBox_->setEnabled(hasTwo);
    firstBox_->setEnabled(hasTwo);
    figure_->setText(words_.figure);
    figure_->setVisible(!words_.figure.isEmpty());
    verdict_->setText(words_.isClear ? words_.verdict : capitalized(words_.verdict));
    verdict_->setStyleSheet(
        QStringLiteral("color: %1").arg((words_.isClear ? theme().instantCenter : theme().muted).name()));
    for (std::size_t at = 0; at < lines_.size(); ++at) {
        const QString line = words_.lines.value(static_cast<qsizetype>(at));
        lines_[at]->showText(line);
        lines_[at]->setVisible(!line.isEmpty());
    }
}

}  // namespace bolthole
