#include "widgets/trials/power_map_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "widgets/kit/card.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/read_table.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

namespace {

constexpr int kSteps = 1000;
constexpr int kRowsInView = 12;
constexpr int kLeastColumns = 2;  // torques in sight beside the holes' names
constexpr double kBestTint = 0.24;
constexpr double kLikeTint = 0.10;

QString forceText(double force, Units units) {
    return fromView(withUnit(figureText(force, Quantity::force, units), Quantity::force, units));
}

}  // namespace

PowerMapView::PowerMapView(QWidget* parent)
    : QWidget(parent),
      card_(new Card(this)),
      bands_(new ToneLabel(ToneLabel::Tone::plain, QString(), card_)),
      message_(new ToneLabel(ToneLabel::Tone::plain, QString(), card_)),
      told_(new ToneLabel(ToneLabel::Tone::plain, QString(), card_)),
      key_(new ToneLabel(ToneLabel::Tone::muted, QString(), card_)),
      table_(new ReadTable(tr("60 ft by holes and torque"), {}, card_)),
      progress_(new QProgressBar(card_)),
      cancel_(new QPushButton(tr("Cancel"), card_)) {
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(card_);
    outer->addStretch(1);
    auto* column = new QVBoxLayout(card_);
    column->setContentsMargins(16, 14, 16, 14);
    column->setSpacing(8);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("For how much power"), card_);
    title->setFont(textFont(TextSize::title, true));
    bands_->setFont(textFont(TextSize::body, true));
    for (ToneLabel* label : {bands_, message_, told_, key_}) {
        label->setWordWrap(true);
    }
    progress_->setRange(0, kSteps);
    progress_->setTextVisible(false);
    progress_->setFixedHeight(6);
    progress_->setAccessibleName(tr("Launching every hole combination"));
    table_->setMostRows(kRowsInView);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setMouseTracking(true);
    table_->setAlternatingRowColors(false);
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerItem);
    table_->installEventFilter(this);
    table_->viewport()->installEventFilter(this);
    for (QWidget* part :
         std::initializer_list<QWidget*>{title, message_, progress_, bands_, table_, told_, key_}) {
        column->addWidget(part);
    }
    column->addWidget(cancel_, 0, Qt::AlignLeft);
    connect(table_, &QTableWidget::cellEntered, this, &PowerMapView::tell);
    connect(table_, &QTableWidget::currentCellChanged, this, [this](int row, int to) { tell(row, to); });
    connect(table_, &QTableWidget::cellDoubleClicked, this, &PowerMapView::bolt);
    connect(cancel_, &QPushButton::clicked, this,
            [this] { progress_->isHidden() ? emit requested() : emit cancelled(); });
    showMessage({});
}

void PowerMapView::look(bool hasMap, bool isWorking) {
    for (QWidget* part : std::initializer_list<QWidget*>{bands_, table_, told_, key_}) {
        part->setVisible(hasMap);
    }
    message_->setVisible(!hasMap && !message_->text().isEmpty());
    progress_->setVisible(isWorking);
    cancel_->setVisible(isWorking);
    cancel_->setText(tr("Cancel"));
}

void PowerMapView::showProgress(double share) {
    message_->showText(tr("Launching every hole combination with less and more torque…"));
    progress_->setValue(static_cast<int>(std::lround(share * kSteps)));
    look(false, true);
}

void PowerMapView::showMessage(const QString& why) {
    message_->showText(why);
    look(false, false);
}

void PowerMapView::showStopped() {
    showMessage(tr("Stopped before every combination was launched."));
    cancel_->setText(tr("Try again"));
    cancel_->show();
}

QString PowerMapView::message() const {
    return message_->isVisibleTo(this) ? message_->text() : QString();
}

QString PowerMapView::bands() const {
    return bands_->text();
}

void PowerMapView::showMap(const std::shared_ptr<const PowerMap>& map, const std::shared_ptr<const Car>& car,
                           Units units) {
    if (!map->missing.empty()) {
        showMessage(noTrialsWords(map->missing, true));
        return;
    }
    if (!map->complete || map->bands.empty()) {
        showMessage(map->complete ? tr("With none of these torques the car gets to 60 ft.")
                                  : tr("Not all combinations were launched."));
        return;
    }
    map_ = map;
    car_ = car;
    units_ = units;
    orderRows();
    showRows();
    bands_->showText(capitalized(QString::fromStdString(bandWords(*map, *car, units))));
    key_->showText(
        tr("60 ft in seconds. ● quickest of its torque, ≈ can't be told apart from it. Track bars and "
           "guides stay as bolted.") +
        u' ' + capitalized(fromView(wordsFor(map->lengths))) + u'.' +
        (map->isAll ? QString()
                    : u' ' + tr("The %n combinations that move the fewest bolts.", nullptr,
                                static_cast<int>(map->combinations.size()))) +
        u' ' + trialCaution());
    look(true, false);
    tell(0, 1);
}

// What is good for some torque first, the car's own among them; the rest by the bolts it takes.
void PowerMapView::orderRows() {
    order_.resize(map_->combinations.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    const auto goodFor = [this](std::size_t combination) {
        int good = 0;
        for (std::size_t power = 0; power < map_->shares.size(); ++power) {
            good += map_->cell(combination, power).isLike ? 1 : 0;
        }
        return good;
    };
    std::ranges::stable_sort(order_, std::greater<>{}, goodFor);
}

QString PowerMapView::torqueText(std::size_t power) const {
    return fromView(withUnit(figureText(map_->shares[power] * map_->peakTorque, Quantity::torque, units_),
                             Quantity::torque, units_));
}

void PowerMapView::showRows() {
    const int columns = static_cast<int>(map_->shares.size()) + 1;
    table_->setColumnCount(columns);
    QStringList headings{tr("Holes")};
    for (std::size_t power = 0; power < map_->shares.size(); ++power) {
        headings << fromView(figureText(map_->shares[power] * map_->peakTorque, Quantity::torque, units_));
    }
    headings[1] += u' ' + unitText(Quantity::torque, units_);  // the last is out of sight at first
    table_->setHorizontalHeaderLabels(headings);
    table_->setRows(static_cast<int>(order_.size()));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const std::size_t combination = order_[static_cast<std::size_t>(row)];
        const QString name = QString::fromStdString(combinationNames(*map_, combination, *car_));
        table_->setCell(row, 0, combination == 0 ? tr("%1 (now)").arg(name) : name, true);
        table_->item(row, 0)->setToolTip(table_->item(row, 0)->text());
        for (int column = 1; column < columns; ++column) {
            showCell(row, column);
        }
    }
    table_->fit();
    shareColumns();
}

// Whole columns only: one that is cut in the middle of its numbers can be misread. They share what room there
// is; the holes' names leave room for at least two.
void PowerMapView::shareColumns() {
    const int columns = table_->columnCount();
    const int room = table_->viewport()->width();
    if (columns < 2 || room <= 0) {
        return;
    }
    const QAbstractItemView& cells = *table_;
    int widest = 0;
    for (int column = 1; column < columns; ++column) {
        widest = std::max(
            {widest, cells.sizeHintForColumn(column), table_->horizontalHeader()->sectionSizeHint(column)});
    }
    const int names = std::max(std::min(cells.sizeHintForColumn(0), room - kLeastColumns * widest), widest);
    const int whole = std::clamp((room - names) / widest, 1, columns - 1);
    const int each = std::max((room - names) / whole, widest);
    table_->setColumnWidth(0, room - whole * each);
    for (int column = 1; column < columns; ++column) {
        table_->setColumnWidth(column, each);
    }
}

void PowerMapView::showCell(int row, int column) {
    const PowerCell& cell =
        map_->cell(order_[static_cast<std::size_t>(row)], static_cast<std::size_t>(column - 1));
    const QString time = cell.sixtyFoot ? QString::number(*cell.sixtyFoot, 'f', 3) : QString(kDash);
    table_->setCell(row, column,
                    cell.isBest   ? QStringLiteral("● ") + time
                    : cell.isLike ? QStringLiteral("≈ ") + time
                                  : time);
    QTableWidgetItem& item = *table_->item(row, column);
    item.setFont(textFont(TextSize::body, cell.isBest));
    const double tint = cell.isBest ? kBestTint : cell.isLike ? kLikeTint : 0;
    item.setBackground(tint > 0 ? QBrush(over(theme().instantCenter, tint, theme().card)) : QBrush());
    const QString words = cellWords(row, column);
    item.setToolTip(wrappedToolTip(words));
    item.setData(Qt::AccessibleTextRole, words);
}

QString PowerMapView::cellWords(int row, int column) const {
    if (!map_ || row < 0 || column < 1 || static_cast<std::size_t>(row) >= order_.size()) {
        return {};
    }
    const std::size_t combination = order_[static_cast<std::size_t>(row)];
    const auto power = static_cast<std::size_t>(column - 1);
    const PowerCell& cell = map_->cell(combination, power);
    QString words = capitalized(QString::fromStdString(combinationNames(*map_, combination, *car_))) +
                    tr(" with %1: ").arg(torqueText(power));
    if (!cell.sixtyFoot) {
        return words + tr("does not get to 60 ft.");
    }
    words += tr("60 ft %1 s").arg(*cell.sixtyFoot, 0, 'f', 3);
    words += cell.isBest   ? tr(", the quickest")
             : cell.isLike ? tr(", can't be told apart from the quickest")
                           : QString();
    if (cell.leastRearLoad) {
        words += tr("; least rear load %1").arg(forceText(*cell.leastRearLoad, units_));
    }
    words += cell.toppedOut ? tr("; the nose tops out at %1 s.").arg(*cell.toppedOut, 0, 'f', 2)
                            : tr("; the nose never tops out.");
    return words;
}

void PowerMapView::tell(int row, int column) {
    const QString words = cellWords(row, column);
    if (!words.isEmpty()) {
        told_->showText(words);
    }
}

void PowerMapView::bolt(int row) {
    if (map_ && row >= 0 && static_cast<std::size_t>(row) < order_.size()) {
        const HoleUse use = map_->combinations[order_[static_cast<std::size_t>(row)]].use;
        if (use != holesInUse(*car_)) {
            emit boltRequested(ChooseHoles{use, map_->lengths});
        }
    }
}

bool PowerMapView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_->viewport() && event->type() == QEvent::Resize) {
        shareColumns();
    }
    if (watched == table_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            bolt(table_->currentRow());
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void PowerMapView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    emit seen(true);
}

void PowerMapView::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    emit seen(false);
}

}  // namespace bolthole
