#include "widgets/compare/difference_view.h"

#include <QAbstractButton>
#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/compare/difference_table.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/starting_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr int kMostLines = 5;
constexpr int kLeastForTitle = 300;  // px of height
constexpr int kBetweenChanges = 18;  // px

/// A change as wide as its words, so that as many stand in a row as there is room for.
class ChangeDelegate : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const QSize size = QStyledItemDelegate::sizeHint(option, index);
        const int most = static_cast<const QAbstractItemView*>(parent())->viewport()->width();
        return {std::min(size.width() + kBetweenChanges, most), size.height()};
    }
};

QString tellingWords(NumberStyle style) {
    const auto amount = [&](Quantity quantity) {
        return QString::fromStdString(
            withUnit(fieldText(tellingChange(quantity), quantity, style), quantity, style.units));
    };
    return DifferenceView::tr("Telling: from %1, %2 or %3 on, or a figure only one of the cars has.")
        .arg(amount(Quantity::length), amount(Quantity::angle), amount(Quantity::percent));
}

QString titleOf(const BenchState& state) {
    const KeptSetup* before = state.car.baselineSetup();
    if (before == nullptr) {
        return {};
    }
    const QString date = QString::fromStdString(before->date);
    return DifferenceView::tr("From '%1'%2 to the current car")
        .arg(QString::fromStdString(before->name),
             date.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(date));
}

}  // namespace

DifferenceView::DifferenceView(QWidget* parent)
    : QWidget(parent),
      title_(new ToneLabel(ToneLabel::Tone::heading, QString(), this)),
      starts_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      lines_(new QListWidget(this)),
      message_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      offer_(new QPushButton(tr("Compare with the car &before the last bolting"), this)),
      table_(new DifferenceTable(this)),
      fold_(smallButton({}, {}, {}, this)),
      telling_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)) {
    lines_->setObjectName(QStringLiteral("changes"));
    lines_->setAccessibleName(tr("What was turned"));
    lines_->setFrameShape(QFrame::NoFrame);
    lines_->setSelectionMode(QAbstractItemView::NoSelection);
    lines_->setTextElideMode(Qt::ElideRight);
    lines_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    lines_->setItemDelegate(new ChangeDelegate(lines_));
    lines_->setFlow(QListView::LeftToRight);
    lines_->setWrapping(true);
    lines_->setResizeMode(QListView::Adjust);
    auto* copy = new QShortcut(QKeySequence::Copy, lines_, nullptr, nullptr, Qt::WidgetShortcut);
    connect(copy, &QShortcut::activated, this, &DifferenceView::copyLines);
    message_->setObjectName(QStringLiteral("message"));
    message_->setWordWrap(true);
    message_->setAlignment(Qt::AlignCenter);
    message_->setMargin(12);
    const QString offer =
        tr("Keeps the car as it was before its holes were last changed, and makes it the "
           "baseline. Undo turns it back.");
    offer_->setToolTip(wrappedToolTip(offer));
    offer_->setAccessibleDescription(offer);
    offer_->setAutoDefault(false);
    offer_->hide();
    connect(offer_, &QPushButton::clicked, this, &DifferenceView::offerTaken);
    telling_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    telling_->setWordWrap(true);
    title_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    starts_->setObjectName(QStringLiteral("unmeasured"));
    starts_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    fold_->setObjectName(QStringLiteral("fold"));
    fold_->setCheckable(true);
    connect(fold_, &QAbstractButton::toggled, this, [this](bool unfolded) {
        table_->setUnfolded(unfolded);
        showFold();
    });
    auto* foot = new QHBoxLayout;
    foot->setSpacing(10);
    foot->addWidget(fold_);
    foot->addWidget(telling_, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(title_);
    column->addWidget(starts_);
    column->addWidget(lines_);
    column->addWidget(message_, 1);
    column->addWidget(offer_, 0, Qt::AlignHCenter);
    column->addWidget(table_, 1);
    column->addLayout(foot);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &DifferenceView::fit);
}

void DifferenceView::showState(const BenchState& state, const Comparison* comparison,
                               const QString& message) {
    const bool differs = comparison != nullptr && anythingDiffers(*comparison);
    const QString words = message.isEmpty() && !differs ? tr("Nothing differs.") : message;
    const bool hasTable = comparison != nullptr && words.isEmpty();
    fullTitle_ = comparison == nullptr ? QString() : titleOf(state);
    fullStarts_ =
        comparison == nullptr ? QString() : startingHeading(comparison->beforeCar, comparison->afterCar);
    showLines(comparison == nullptr ? std::vector<ChangeLine>{} : changeLines(*comparison, state.style));
    message_->showText(words);
    message_->setVisible(!hasTable);
    table_->setVisible(hasTable);
    fold_->setVisible(hasTable);
    telling_->setVisible(hasTable);
    if (hasTable) {
        table_->showState(state, *comparison);
        showTelling(state);
        showFold();
    }
}

void DifferenceView::showOffer(bool offered) {
    offer_->setVisible(offered);
}

// What can't be told apart says more than what counts as telling.
void DifferenceView::showTelling(const BenchState& state) {
    const QString telling = tellingWords(state.style);
    const QString judgement = telling + tr(" A judgement of what tape, angle finder and scales can show.");
    if (!state.showsUncertainty || !state.baseline || !state.baseline->uncertainty.known ||
        !state.uncertainty.known) {
        telling_->showText(telling);
        telling_->setToolTip(wrappedToolTip(judgement));
        return;
    }
    QStringList names;
    for (const Figure figure : table_->cannotTell()) {
        names << figureWords(figure);
    }
    telling_->showText(
        names.isEmpty()
            ? tr("At ride every change that matters is more than we may be off by.")
            : tr("At ride we %1 by: %2.").arg(cannotTellWords(), names.join(QStringLiteral("; "))));
    telling_->setToolTip(wrappedToolTip(telling_->text() + QLatin1Char(' ') +
                                        uncertaintyMeaning(state.solvedCar, state.style.units) +
                                        QLatin1Char(' ') + judgement));
}

void DifferenceView::showCursor(const BenchState& state, const Comparison* comparison) {
    if (comparison != nullptr && table_->isVisibleTo(this)) {
        table_->showCursor(state);
    }
}

void DifferenceView::showLines(const std::vector<ChangeLine>& lines) {
    while (lines_->count() > static_cast<int>(lines.size())) {
        delete lines_->takeItem(lines_->count() - 1);
    }
    while (lines_->count() < static_cast<int>(lines.size())) {
        lines_->addItem(new QListWidgetItem);
    }
    for (int row = 0; row < lines_->count(); ++row) {
        const ChangeLine& line = lines[static_cast<std::size_t>(row)];
        QListWidgetItem& item = *lines_->item(row);
        if (item.text() != line.text) {
            item.setText(line.text);
        }
        const QString tip = wrappedToolTip(line.text + (line.more.isEmpty() ? "" : ":\n") + line.more)
                                .replace(QLatin1Char('\n'), QStringLiteral("<br>"));
        if (item.toolTip() != tip) {
            item.setToolTip(tip);
        }
    }
    lines_->setVisible(!lines.empty());
    fit();
}

// As much of the text as the view is wide; all of it in the tip and for a screen reader.
void DifferenceView::showWithin(ToneLabel& label, const QString& text) const {
    label.showText(label.fontMetrics().elidedText(text, Qt::ElideRight, width()));
    label.setToolTip(wrappedToolTip(text));
    label.setAccessibleName(text);
}

// The title gives way first; the lines leave most of the room to the table.
void DifferenceView::fit() {
    title_->setVisible(!fullTitle_.isEmpty() && height() >= kLeastForTitle);
    showWithin(*title_, fullTitle_);
    starts_->setVisible(!fullStarts_.isEmpty());
    showWithin(*starts_, fullStarts_);
    const int line = std::max(lines_->sizeHintForRow(0), QFontMetrics(textFont(TextSize::body)).height());
    const int room = std::clamp(height() / (5 * line), 1, kMostLines);
    const int rows = rowsOfChanges();
    lines_->setVerticalScrollBarPolicy(rows > room ? Qt::ScrollBarAsNeeded : Qt::ScrollBarAlwaysOff);
    lines_->setFixedHeight(std::min(rows, room) * line + 4);
}

// As the list wraps them.
int DifferenceView::rowsOfChanges() const {
    int rows = 1;
    int left = width();
    for (int at = 0; at < lines_->count(); ++at) {
        const int wide = lines_->sizeHintForIndex(lines_->indexFromItem(lines_->item(at))).width();
        rows += wide > left && left < width() ? 1 : 0;
        left = (wide > left ? width() : left) - wide;
    }
    return rows;
}

void DifferenceView::showFold() {
    const int quiet = table_->quietCount();
    const QString arrow = fold_->isChecked() ? QStringLiteral("▾ ") : QStringLiteral("▸ ");
    const QString words = quiet == 1 ? tr("1 figure without a change big enough to matter")
                                     : tr("%n figures without a change big enough to matter", nullptr, quiet);
    if (fold_->text() != arrow + words) {
        fold_->setText(arrow + words);
        fold_->setAccessibleName(words);
    }
    fold_->setToolTip(fold_->isChecked() ? tr("Hide them again") : tr("Show them too"));
    fold_->setVisible(quiet > 0);
}

void DifferenceView::copyLines() const {
    QStringList lines;
    for (int row = 0; row < lines_->count(); ++row) {
        lines << lines_->item(row)->text();
    }
    QGuiApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

void DifferenceView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit();
}

}  // namespace bolthole
