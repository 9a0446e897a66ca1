#include "widgets/trials/trial_list.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>
#include <limits>
#include <numeric>

#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

namespace {

constexpr int kRowsSeen = 14;
constexpr qsizetype kAlikeNamed = 4;
constexpr double kLast = std::numeric_limits<double>::infinity();

}  // namespace

TrialList::TrialList(QWidget* parent)
    : ReadTable(tr("All single changes"), {tr("No."), tr("Change"), tr("60 ft, s"), tr("helps")}, parent) {
    setObjectName(QStringLiteral("trialList"));
    setAccessibleDescription(
        tr("Every single change, the likeliest to help first. Enter sets the one chosen. Ctrl+C copies."));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setMostRows(kRowsSeen);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTextElideMode(Qt::ElideRight);
    setWordWrap(true);
    horizontalHeader()->setMinimumSectionSize(30);
    // What to do takes all the width that the numbers leave.
    horizontalHeader()->setStyleSheet(QStringLiteral("QHeaderView::section { padding: 2px 4px; }"));
    const QStringList tips{
        tr("The likeliest to help first, then the greatest gain. ≈ 1: can't be told apart from No. 1"),
        tr("What to do"),
        tr("What it does to the 60 ft; within what that lies in 95 of 100 cases stands in the row's tip and "
           "above"),
        tr("In how many of 100 cases it makes the 60 ft shorter")};
    for (int column = 0; column < columnCount(); ++column) {
        horizontalHeaderItem(column)->setToolTip(wrappedToolTip(tips[column]));
    }
    for (int column = 0; column < columnCount(); ++column) {
        headings_ << horizontalHeaderItem(column)->text();
    }
    horizontalHeader()->setSectionsClickable(true);
    horizontalHeader()->setSectionResizeMode(kChange, QHeaderView::Stretch);
    connect(horizontalHeader(), &QHeaderView::sectionClicked, this, &TrialList::sortBy);
    connect(this, &QTableWidget::itemSelectionChanged, this, [this] {
        if (!isShowing_ && chosen() >= 0) {
            emit trialChosen(chosen());
        }
    });
    connect(this, &QTableWidget::cellDoubleClicked, this,
            [this](int row) { emit trialTaken(order_[static_cast<std::size_t>(row)]); });
}

void TrialList::showTrials(std::shared_ptr<const LaunchTrials> trials, std::shared_ptr<const Car> car,
                           Units units) {
    const int before = chosen();
    const std::string words = before >= 0 && trials_
                                  ? trials_->trials[static_cast<std::size_t>(before)].change.words
                                  : std::string();
    trials_ = std::move(trials);
    car_ = std::move(car);
    units_ = units;
    order_.resize(trials_ ? trials_->trials.size() : 0);
    sortOrder();
    showRows();
    for (std::size_t trial = 0; trial < order_.size() && !words.empty(); ++trial) {
        if (trials_->trials[trial].change.words == words) {
            choose(static_cast<int>(trial));
        }
    }
}

int TrialList::chosen() const {
    const QList<QTableWidgetSelectionRange> ranges = selectedRanges();
    const auto row = ranges.isEmpty() ? order_.size() : static_cast<std::size_t>(ranges.first().topRow());
    return row < order_.size() ? order_[row] : -1;
}

void TrialList::choose(int trial) {
    const auto at = std::ranges::find(order_, trial);
    if (at != order_.end()) {
        selectRow(static_cast<int>(at - order_.begin()));
    }
}

void TrialList::sortBy(int column) {
    isDescending_ = column == sortedBy_ && !isDescending_;
    sortedBy_ = column;
    const int kept = chosen();
    sortOrder();
    showRows();
    isShowing_ = true;
    choose(kept);
    isShowing_ = false;
}

double TrialList::keyOf(int index) const {
    const LaunchTrial& trial = trials_->trials[static_cast<std::size_t>(index)];
    switch (sortedBy_) {
        case kGain:
            return trial.sixtyFootChange.change.value_or(kLast);
        case kChance:
            return -trial.chance;
        default:
            return index;
    }
}

// Equal keys keep the order they were found in.
void TrialList::sortOrder() {
    std::iota(order_.begin(), order_.end(), 0);
    const auto name = [this](int trial) {
        return trialName(trials_->trials[static_cast<std::size_t>(trial)].change, *car_, units_);
    };
    std::ranges::stable_sort(order_, [&](int one, int other) {
        const bool up =
            sortedBy_ == kChange ? name(one).localeAwareCompare(name(other)) < 0 : keyOf(one) < keyOf(other);
        const bool down =
            sortedBy_ == kChange ? name(other).localeAwareCompare(name(one)) < 0 : keyOf(other) < keyOf(one);
        return isDescending_ ? down : up;
    });
}

int TrialList::leaderOf(int trial) const {
    const std::vector<LaunchTrial>& all = trials_->trials;
    const int group = all[static_cast<std::size_t>(trial)].group;
    const auto first = std::ranges::find(all, group, &LaunchTrial::group);
    return static_cast<int>(first - all.begin());
}

QString TrialList::alikeWords(int trial) const {
    const std::vector<LaunchTrial>& all = trials_->trials;
    const int group = all[static_cast<std::size_t>(trial)].group;
    QStringList names;
    for (std::size_t other = 0; other < all.size(); ++other) {
        if (static_cast<int>(other) != trial && all[other].group == group) {
            names << trialName(all[other].change, *car_, units_);
        }
    }
    const qsizetype more = names.size() - kAlikeNamed;
    if (more > 0) {
        names = names.first(kAlikeNamed) << tr("%1 more").arg(more);
    }
    QStringList said;
    if (!all[static_cast<std::size_t>(trial)].differs) {
        said << tr("can't be told apart from leaving the car as it is");
    }
    if (!names.isEmpty()) {
        said << tr("can't be told apart from %1").arg(names.join(QStringLiteral("; ")));
    }
    return said.join(QStringLiteral(", "));
}

void TrialList::showRows() {
    isShowing_ = true;
    clearSelection();
    setRows(static_cast<int>(order_.size()));
    for (int row = 0; row < rowCount(); ++row) {
        showRow(row, order_[static_cast<std::size_t>(row)]);
    }
    for (int column = 0; column < columnCount(); ++column) {
        const QString arrow = column != sortedBy_ ? QString() : isDescending_ ? tr(" ↓") : tr(" ↑");
        horizontalHeaderItem(column)->setText(headings_[column] + arrow);
    }
    fit();
    resizeRowsToContents();
    isShowing_ = false;
}

// What to do is said in as many lines as it needs.
void TrialList::resizeEvent(QResizeEvent* event) {
    ReadTable::resizeEvent(event);
    resizeRowsToContents();
}

void TrialList::showRow(int row, int index) {
    const LaunchTrial& trial = trials_->trials[static_cast<std::size_t>(index)];
    const int leader = leaderOf(index);
    const QString number = QString::number(index + 1);
    setCell(row, kRank, leader == index ? number : tr("%1 ≈ %2").arg(number).arg(leader + 1));
    setCell(row, kChange, trialName(trial.change, *car_, units_), true);
    setCell(row, kGain, trialChange(trial));
    setCell(row, kChance, tr("%1 %").arg(std::lround(100 * trial.chance)));
    const QString why = trialWhy(trial, units_) + u' ' + trialExpected(trial, units_);
    const QString alike = alikeWords(index);
    for (int column = 0; column < columnCount(); ++column) {
        item(row, column)->setToolTip(wrappedToolTip(why));
        item(row, column)->setForeground(trial.differs ? theme().ink : theme().muted);
    }
    item(row, kChance)->setFont(textFont(TextSize::body, true));
    item(row, kChange)
        ->setData(Qt::AccessibleTextRole, alike.isEmpty()
                                              ? item(row, kChange)->text()
                                              : item(row, kChange)->text() + QStringLiteral(", ") + alike);
}

void TrialList::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && chosen() >= 0) {
        emit trialTaken(chosen());
        return;
    }
    ReadTable::keyPressEvent(event);
}

}  // namespace bolthole
