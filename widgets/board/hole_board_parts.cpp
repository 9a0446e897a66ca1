#include "widgets/board/hole_board_parts.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <cmath>

#include "widgets/board/combination_map.h"
#include "widgets/board/combination_table.h"
#include "widgets/board/combination_uncertainty.h"
#include "widgets/board/hole_board_header.h"
#include "widgets/board/hole_board_message.h"
#include "widgets/board/hole_board_target.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

namespace {
constexpr int kLowBoard = 225;   // px; below, the order goes
constexpr int kWideBoard = 850;  // px; from there on the target stands in one row under the map
constexpr int kGaps = 16;        // px between what stands one above the other
}  // namespace

HoleBoardParts::HoleBoardParts(HoleBoard& board) : board_(board) {
    build();
    connectParts();
}

HoleBoardParts::~HoleBoardParts() {
    delete pages_;
    delete header_;
}

void HoleBoardParts::build() {
    header_ = new HoleBoardHeader(&board_);
    pages_ = new QStackedWidget(&board_);
    combinationsPage_ = buildCombinations();
    messagePage_ = buildMessage();
    pages_->addWidget(messagePage_);
    pages_->addWidget(combinationsPage_);
    auto* column = new QVBoxLayout(&board_);
    column->setContentsMargins(10, 4, 10, 4);
    column->setSpacing(4);
    auto* top = new QHBoxLayout;
    top->setSpacing(10);
    top->addWidget(header_, 1);
    top->addWidget(buildButton(), 0, Qt::AlignTop);
    column->addLayout(top);
    column->addWidget(pages_, 1);
    board_.setFocusProxy(table_);
}

QWidget* HoleBoardParts::buildButton() {
    boltButton_ = new QPushButton(tr("Bolt to these holes"), &board_);
    boltButton_->setObjectName(QStringLiteral("boltCombination"));
    return boltButton_;
}

QWidget* HoleBoardParts::buildMessage() {
    auto* page = new QWidget(pages_);
    message_ = new ToneLabel(ToneLabel::Tone::plain, {}, page);
    message_->setObjectName(QStringLiteral("boardMessage"));
    message_->setWordWrap(true);
    message_->setAlignment(Qt::AlignCenter);
    compute_ = new QPushButton(tr("Compute them"), page);
    compute_->setObjectName(QStringLiteral("computeAll"));
    compute_->hide();
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(20, 0, 20, 0);
    column->addStretch(1);
    column->addWidget(message_);
    column->addSpacing(6);
    column->addWidget(compute_, 0, Qt::AlignHCenter);
    column->addStretch(1);
    return page;
}

QWidget* HoleBoardParts::buildCombinations() {
    auto* page = new QWidget(pages_);
    auto* split = new QSplitter(Qt::Horizontal, page);
    left_ = new QWidget(split);
    map_ = new CombinationMap(list_, left_);
    target_ = new HoleBoardTarget(left_);
    table_ = new CombinationTable(list_, split);
    auto* left = new QVBoxLayout(left_);
    left->setContentsMargins(0, 0, 0, 0);
    left->setSpacing(4);
    left->addWidget(map_, 1);
    left->addWidget(target_);
    split->addWidget(left_);
    split->addWidget(table_);
    split->setChildrenCollapsible(false);
    table_->setMinimumSize(map_->minimumSizeHint());
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 3);
    split->setSizes({400, 580});
    split->setHandleWidth(8);
    orderRow_ = new QWidget(page);
    order_ = new ToneLabel(ToneLabel::Tone::muted, {}, orderRow_);
    order_->setObjectName(QStringLiteral("boardOrder"));
    order_->setWordWrap(true);
    uncertainty_ = new ToneLabel(ToneLabel::Tone::plain, {}, orderRow_);
    uncertainty_->setObjectName(QStringLiteral("boardUncertainty"));
    auto* row = new QHBoxLayout(orderRow_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    row->addWidget(order_, 1);
    row->addWidget(uncertainty_);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(split, 1);
    column->addWidget(orderRow_);
    return page;
}

namespace {

std::optional<BaselineMark> baselineMark(const BenchState& bench) {
    if (!bench.baseline || !bench.baseline->trace.ride.usable) {
        return std::nullopt;
    }
    const Station& ride = bench.baseline->trace.ride;
    const double distance = ride[Figure::icX];
    return BaselineMark{std::isnan(distance) ? 0.0 : 1.0 / distance, ride[Figure::antiSquat]};
}

}  // namespace

void HoleBoardParts::connectParts() {
    connect(header_, &HoleBoardHeader::lengthsChosen, &board_, &HoleBoard::lengthsChosen);
    connect(header_, &HoleBoardHeader::scopeChosen, &board_, &HoleBoard::scopeChosen);
    connect(header_, &HoleBoardHeader::filterChanged, this, &HoleBoardParts::applyFilter);
    connect(map_, &CombinationMap::edited, &board_, &HoleBoard::edited);
    connect(target_, &HoleBoardTarget::edited, &board_, &HoleBoard::edited);
    connect(compute_, &QPushButton::clicked, &board_, &HoleBoard::computeRequested);
    connect(map_, &CombinationMap::pointed, this, &HoleBoardParts::hover);
    connect(table_, &CombinationTable::pointed, this, &HoleBoardParts::hover);
    connect(map_, &CombinationMap::picked, this,
            [this](const std::optional<std::size_t>& at) { select(at, true); });
    connect(table_, &CombinationTable::picked, this,
            [this](const std::optional<std::size_t>& at) { select(at, false); });
    connect(map_, &CombinationMap::bolted, this, &HoleBoardParts::bolt);
    connect(table_, &CombinationTable::bolted, this, &HoleBoardParts::bolt);
    connect(&table_->combinations(), &CombinationTableModel::sorted, this, &HoleBoardParts::showOrder);
    connect(boltButton_, &QPushButton::clicked, this, [this] {
        if (const std::optional<std::size_t> at = selected_ ? list_.find(*selected_) : std::nullopt) {
            bolt(*at);
        }
    });
}

void HoleBoardParts::show(const BenchState& bench, const BoardState& state) {
    bench_ = &bench;
    state_ = &state;
    if (list_.take(bench, state)) {
        refreshViews();
    }
    map_->showBaseline(baselineMark(bench));
    header_->showBoard(state, bench.car.target.has_value(), list_.shownCount());
    if (showMessage()) {
        map_->abandonDrag();
    }
    target_->showTarget(bench, map_->wholeWindow());
    showOrder();
}

void HoleBoardParts::refreshViews() {
    map_->refresh(state_->complete && !state_->inDrag);
    table_->refresh();
    forgetHidden();
    showMarks(false);
}

void HoleBoardParts::applyFilter() {
    if (state_ != nullptr && list_.setFilter(header_->filter())) {
        refreshViews();
        header_->showCount(*state_, list_.shownCount());
        showOrder();
    }
}

// Instead of map and table: why there are none.
bool HoleBoardParts::showMessage() {
    const BoardMessage message = boardMessage(*state_, estimateFor(*state_));
    pages_->setCurrentWidget(message.text.isEmpty() ? combinationsPage_ : messagePage_);
    message_->setText(message.text);
    compute_->setVisible(message.mayCompute);
    boltButton_->setVisible(message.text.isEmpty());
    return !message.text.isEmpty();
}

const QString& HoleBoardParts::estimateFor(const BoardState& state) {
    if (state.mayCompute || !state.car) {
        estimate_.clear();
        estimatedFor_.reset();
    } else if (estimatedFor_ != state.car) {
        estimatedFor_ = state.car;
        estimate_ = computingTimeInWords(state);
    }
    return estimate_;
}

void HoleBoardParts::showOrder() {
    if (list_.car() != nullptr) {
        const CombinationTableModel& model = table_->combinations();
        const CombinationColumn& column = model.columns()[static_cast<std::size_t>(model.sortColumn())];
        const QString sortedBy =
            model.isByRank() ? QString() : columnTitle(column, *list_.car(), list_.style().units);
        order_->showText(
            orderInWords(list_.target().has_value(), list_.car()->driveline.has_value(), sortedBy));
    }
    showButton();
}

void HoleBoardParts::showButton() {
    const QString refusal = refuseBolt(selected_ ? list_.find(*selected_) : std::nullopt);
    if (boltButton_->hasFocus() && !refusal.isEmpty()) {
        table_->setFocus(Qt::OtherFocusReason);  // else the toolkit goes on to whatever comes next
    }
    boltButton_->setEnabled(refusal.isEmpty());
    boltButton_->setToolTip(wrappedToolTip(refusal.isEmpty()
                                               ? tr("Bolt every link to the selected combination's holes. "
                                                    "Enter or a double click does the same; "
                                                    "one step to undo.")
                                               : refusal));
}

// Of the combination pointed at or selected, whether it can be told from the one in use.
void HoleBoardParts::showUncertainty() {
    const std::optional<HoleUse>& pointed = hovered_ ? hovered_ : selected_;
    const std::optional<std::size_t> at = pointed ? list_.find(*pointed) : std::nullopt;
    uncertainty_->showText(at ? toldApartInWords(list_, *at) : QString());
    uncertainty_->setVisible(!uncertainty_->text().isEmpty());
}

void HoleBoardParts::fitTo(QSize size) {
    const int taken = header_->minimumSizeHint().height() + target_->minimumSizeHint().height() + kGaps;
    target_->setVisible(size.height() >= taken + map_->minimumSizeHint().height());
    orderRow_->setVisible(size.height() >= kLowBoard);
    left_->setMinimumWidth(size.width() >= kWideBoard ? target_->rowWidth() : 0);
}

void HoleBoardParts::hover(const std::optional<std::size_t>& at) {
    hovered_ = at ? std::optional(list_.items()[*at].use) : std::nullopt;
    showMarks(false);
}

void HoleBoardParts::select(const std::optional<std::size_t>& at, bool reveal) {
    selected_ = at ? std::optional(list_.items()[*at].use) : std::nullopt;
    showMarks(reveal);
    showButton();
}

// A combination that is gone, or that the filter holds back, is selected no longer; one that was not computed
// yet is.
void HoleBoardParts::forgetHidden() {
    for (std::optional<HoleUse>* held : {&selected_, &hovered_}) {
        if (!*held) {
            continue;
        }
        const std::optional<std::size_t> at = list_.find(**held);
        if (at ? !list_.items()[*at].shown : state_->complete || !state_->car) {
            held->reset();
        }
    }
}

void HoleBoardParts::showMarks(bool reveal) {
    const std::optional<std::size_t> selected = selected_ ? list_.find(*selected_) : std::nullopt;
    const std::optional<std::size_t> hovered = hovered_ ? list_.find(*hovered_) : std::nullopt;
    map_->showMarks(selected, hovered);
    table_->showMarks(selected, hovered, reveal);
    showUncertainty();
    tellPointed();
}

void HoleBoardParts::tellPointed() {
    const std::optional<HoleUse> pointed = !board_.isVisible() ? std::nullopt
                                           : hovered_          ? hovered_
                                                               : selected_;
    if (pointed != told_) {
        told_ = pointed;
        emit board_.pointedAt(told_);
    }
}

QString HoleBoardParts::refuseBolt(const std::optional<std::size_t>& at) const {
    const HoleCombination* combination = at ? list_.combination(*at) : nullptr;
    if (combination == nullptr) {
        return tr("Pick a combination on the map or in the table first.");
    }
    if (!combination->assembled) {
        return tr("The links can't be assembled in these holes.");
    }
    if (list_.present() == at && combination->adjustersTurned == 0 && combination->newRods == 0) {
        return tr("The car is bolted to these holes now.");
    }
    return {};
}

void HoleBoardParts::bolt(std::size_t at) {
    if (refuseBolt(at).isEmpty()) {
        select(at, false);
        emit board_.edited(ChooseHoles{list_.items()[at].use, list_.lengths()}, EditPhase::whole);
    }
}

std::optional<QPointF> HoleBoardParts::placeOf(std::uint64_t combination) const {
    for (std::size_t at = 0; at < list_.items().size(); ++at) {
        if (list_.items()[at].index == combination) {
            return map_->placeOf(at);
        }
    }
    return std::nullopt;
}

}  // namespace bolthole
