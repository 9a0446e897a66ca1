#include "widgets/pages/days/days_page.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QMenu>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/kit/card.h"
#include "widgets/kit/quiet_scroller.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/compare_card.h"
#include "widgets/pages/days/pass_dialog.h"
#include "widgets/pages/days/pass_entry.h"
#include "widgets/pages/days/pass_plot.h"
#include "widgets/pages/days/pass_table.h"
#include "widgets/pages/days/pass_words.h"
#include "widgets/pages/days/recording_card.h"
#include "widgets/pages/days/seen_card.h"

namespace bolthole {

namespace {

constexpr int kSideWidth = 432;

}  // namespace

TestDaysPage::TestDaysPage(QWidget* parent) : QWidget(parent) {
    setObjectName(QStringLiteral("testDaysPage"));
    setAccessibleName(title());
    auto* left = new QVBoxLayout;
    left->setSpacing(12);
    left->addWidget(buildPlotCard(), 4);
    left->addWidget(buildLogCard(), 7);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(12, 10, 8, 10);
    row->setSpacing(12);
    row->addLayout(left, 1);
    row->addWidget(buildSide());
    // The widest page says how narrow the window may be, car sheet and all, even while another one is seen.
    constexpr QSize kLeast(790, 420);
    setMinimumSize(kLeast);
    connectParts();
}

TestDaysPage::~TestDaysPage() = default;

QWidget* TestDaysPage::buildPlotCard() {
    plotCard_ = new Card(this);
    auto* column = new QVBoxLayout(plotCard_);
    column->setContentsMargins(16, 10, 12, 6);
    column->setSpacing(4);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("60 ft"), plotCard_);
    title->setFont(textFont(TextSize::title, true));
    row->addWidget(title);
    against_ = new CalmCombo(plotCard_);
    against_->setObjectName(QStringLiteral("plotAgainst"));
    against_->setAccessibleName(tr("60 ft drawn against"));
    against_->addItem(tr("over passes"));
    for (int measure = 0; measure < kPassMeasures; ++measure) {
        against_->addItem(tr("against %1").arg(measureName(static_cast<PassMeasure>(measure))));
    }
    row->addWidget(against_);
    key_ = new SurfaceKey(book_, plotCard_);
    row->addWidget(key_);
    row->addStretch(1);
    onePass_ = new ToneLabel(ToneLabel::Tone::muted, {}, plotCard_);
    row->addWidget(onePass_);
    column->addLayout(row);
    plot_ = new PassPlot(book_, plotCard_);
    column->addWidget(plot_, 1);
    return plotCard_;
}

QToolButton* TestDaysPage::addTool(QBoxLayout* row, const QString& text, const QString& tip) {
    auto* button = new QToolButton(this);
    button->setText(text);
    button->setToolTip(tip);
    button->setProperty("small", true);
    button->setFocusPolicy(Qt::TabFocus);
    row->addWidget(button);
    return button;
}

QWidget* TestDaysPage::buildTools() {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(2);
    auto* title = new ToneLabel(ToneLabel::Tone::plain, tr("Log"), bar);
    title->setFont(textFont(TextSize::title, true));
    row->addWidget(title);
    row->addSpacing(6);
    count_ = new ToneLabel(ToneLabel::Tone::muted, {}, bar);
    row->addWidget(count_);
    row->addStretch(1);
    QToolButton* open =
        addTool(row, tr("All fields…"), tr("The picked pass with everything it holds (Enter)"));
    QToolButton* back = addTool(row, tr("Back to its setup"),
                                tr("Brings the setup of the picked pass back to the bench (B)"));
    strikeTool_ = addTool(row, tr("Strike"), tr("The picked pass stays in the log and counts nowhere (S)"));
    QToolButton* remove =
        addTool(row, tr("Remove"), tr("Removes the picked pass; its setup stays kept (Delete)"));
    passTools_ = {open, back, strikeTool_, remove};
    row->addSpacing(14);
    QToolButton* import = addTool(row, tr("Import…"), tr("Passes from a table as CSV, all or none"));
    QToolButton* paste = addTool(row, tr("Paste"), tr("Passes from a table on the clipboard, all or none"));
    QToolButton* save = addTool(row, tr("Export…"), tr("The log as CSV"));
    const auto onPicked = [this](QToolButton* tool, auto&& act) {
        connect(tool, &QToolButton::clicked, this, [this, act] {
            if (selected_) {
                act(*selected_);
            }
        });
    };
    onPicked(open, [this](std::size_t pass) { openPass(pass); });
    onPicked(back, [this](std::size_t pass) { restoreSetup(pass); });
    onPicked(strikeTool_, [this](std::size_t pass) { strike(pass); });
    onPicked(remove, [this](std::size_t pass) { emit edited(RemovePass{static_cast<int>(pass)}); });
    connect(import, &QToolButton::clicked, this, &TestDaysPage::importRequested);
    connect(paste, &QToolButton::clicked, this, &TestDaysPage::pasteRequested);
    connect(save, &QToolButton::clicked, this, &TestDaysPage::exportRequested);
    return bar;
}

QWidget* TestDaysPage::buildLogCard() {
    auto* card = new Card(this);
    auto* column = new QVBoxLayout(card);
    column->setContentsMargins(12, 8, 12, 12);
    column->setSpacing(6);
    column->addWidget(buildTools());
    table_ = new PassTable(book_, card);
    column->addWidget(table_, 1);
    entry_ = new PassEntry(book_, *table_, card);
    column->addWidget(entry_);
    return card;
}

QWidget* TestDaysPage::buildSide() {
    auto* area = new QuietScroller(this);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFixedWidth(kSideWidth);
    auto* content = new QWidget;
    side_ = new QVBoxLayout(content);
    side_->setContentsMargins(0, 0, 12, 0);
    side_->setSpacing(12);
    compare_ = new CompareCard(book_, content);
    side_->addWidget(compare_);
    seen_ = new SeenCard(book_, content);
    side_->addWidget(seen_);
    recording_ = new RecordingCard(content);
    side_->addWidget(recording_);
    side_->addStretch(1);
    area->setWidget(content);
    content->setAutoFillBackground(false);
    return area;
}

void TestDaysPage::addSide(QWidget* widget) {
    side_->insertWidget(side_->count() - 1, widget);
}

void TestDaysPage::setClock(std::function<QDateTime()> clock) {
    entry_->setClock(std::move(clock));
}

void TestDaysPage::connectParts() {
    connect(against_, &QComboBox::currentIndexChanged, this, [this](int index) {
        plot_->setMeasure(index == 0 ? std::nullopt : std::optional(static_cast<PassMeasure>(index - 1)));
    });
    connect(plot_, &PassPlot::picked, this, &TestDaysPage::select);
    connect(table_, &PassTable::picked, this, &TestDaysPage::select);
    connect(table_, &PassTable::opened, this, &TestDaysPage::openPass);
    connect(table_, &PassTable::strikeRequested, this, &TestDaysPage::strike);
    connect(table_, &PassTable::restoreRequested, this, &TestDaysPage::restoreSetup);
    connect(table_, &PassTable::removeRequested, this,
            [this](std::size_t pass) { emit edited(RemovePass{static_cast<int>(pass)}); });
    connect(table_, &PassTable::entryRequested, entry_, &PassEntry::enter);
    connect(table_, &PassTable::columnsMoved, entry_, &PassEntry::alignToColumns);
    connect(table_, &PassTable::menuRequested, this, &TestDaysPage::showMenu);
    connect(entry_, &PassEntry::entered, this, &TestDaysPage::enterPass);
    connect(entry_, &PassEntry::howToRequested, this, &TestDaysPage::howToRequested);
    connect(entry_, &PassEntry::left, this, &TestDaysPage::goToLog);
    connect(entry_, &PassEntry::detailsRequested, this, &TestDaysPage::openNext);
}

// What was refused stays as it was typed.
void TestDaysPage::enterPass(const Edit& edit) {
    if (state_ == nullptr) {
        return;
    }
    const std::vector<Pass> before = state_->car.passes;
    emit edited(edit);
    if (state_->car.passes.size() == before.size()) {
        return;
    }
    entry_->restore();
    revealNew(before);
    if (entry_->isAncestorOf(QApplication::focusWidget())) {
        entry_->enter();
    }
}

// A pass that came in between or after those there were is scrolled to.
void TestDaysPage::revealNew(const std::vector<Pass>& before) {
    const std::vector<Pass>& now = state_->car.passes;
    if (now.size() > before.size()) {
        table_->reveal(static_cast<std::size_t>(std::ranges::mismatch(now, before).in1 - now.begin()));
    }
}

void TestDaysPage::showState(const BenchState& state) {
    state_ = &state;
    stale_ = true;
    refreshIfSeen();
}

void TestDaysPage::refreshIfSeen() {
    if (stale_ && state_ != nullptr && isVisible()) {
        stale_ = false;
        refresh();
    }
}

void TestDaysPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refreshIfSeen();
}

void TestDaysPage::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), theme().window);
}

void TestDaysPage::refresh() {
    const std::optional<Pass> was = selected_ ? std::optional(book_.passes()[*selected_]) : std::nullopt;
    const std::size_t count = book_.passes().size();
    if (book_.take(state_->car, state_->style)) {
        keepSelection(was, count);
        showPasses();
    }
    const bool isEmpty = book_.passes().empty();
    plotCard_->setVisible(!isEmpty);
    count_->setVisible(!isEmpty);
    compare_->setVisible(!isEmpty);
    for (QToolButton* tool : passTools_) {
        tool->setVisible(!isEmpty);
    }
    entry_->refresh(state_->car);
    showSelection();
}

void TestDaysPage::showPasses() {
    plot_->refresh();
    key_->refresh();
    table_->refresh();
    compare_->refresh();
    const Answer<Interval> one =
        book_.scatter() ? meanInterval(Sample{1, 0, 0}, *book_.scatter()) : Answer<Interval>::none("");
    onePass_->setText(one ? tr("s, lower is better · one pass ± %1").arg(timeText(one->high))
                          : tr("s, lower is better"));
    const auto counted = std::ranges::count_if(book_.passes(), isCounted);
    const auto all = static_cast<int>(book_.passes().size());
    const QString passes = all == 1 ? tr("1 pass") : tr("%n passes", nullptr, all);
    count_->setText(counted == all ? passes : tr("%1, %2 that count").arg(passes).arg(counted));
}

// The picked pass is followed where others came or went; a row that changed in place stays picked.
void TestDaysPage::keepSelection(const std::optional<Pass>& was, std::size_t count) {
    const std::vector<Pass>& passes = book_.passes();
    if (!was || (passes.size() == count && *selected_ < count)) {
        return;
    }
    const auto found = std::ranges::find(passes, *was);
    selected_ = found == passes.end() ? std::nullopt
                                      : std::optional(static_cast<std::size_t>(found - passes.begin()));
}

void TestDaysPage::select(const std::optional<std::size_t>& pass) {
    selected_ = pass && *pass < book_.passes().size() ? pass : std::nullopt;
    showSelection();
}

void TestDaysPage::showSelection() {
    table_->showSelected(selected_);
    plot_->showSelected(selected_);
    const bool hasAny = !book_.passes().empty();
    const std::optional<std::size_t> told = selected_ ? selected_
                                            : hasAny  ? std::optional(book_.passes().size() - 1)
                                                      : std::nullopt;
    seen_->showPass(told);
    for (QToolButton* tool : passTools_) {
        tool->setEnabled(selected_.has_value());
    }
    const Pass* pass = selected_ ? &book_.passes()[*selected_] : nullptr;
    passTools_[1]->setEnabled(pass != nullptr && pass->setup.has_value());
    recording_->setVisible(told.has_value());
    emit passPicked(told);
    side_->activate();
    strikeTool_->setText(pass != nullptr && pass->struck ? tr("Count again") : tr("Strike"));
    const std::optional<int> setup = pass == nullptr ? std::nullopt : pass->setup;
    if (setup != pointed_) {
        pointed_ = setup;
        emit setupPointed(setup);
    }
}

void TestDaysPage::openPass(std::size_t pass) {
    PassDialog dialog(book_, book_.passes()[pass], false, this);
    connect(&dialog, &PassDialog::howToRequested, this, &TestDaysPage::howToRequested);
    if (dialog.exec() == QDialog::Accepted) {
        emit edited(ChangePass{static_cast<int>(pass), dialog.pass()});
    }
}

void TestDaysPage::openNext(const Pass& pass) {
    PassDialog dialog(book_, pass, true, this);
    connect(&dialog, &PassDialog::howToRequested, this, &TestDaysPage::howToRequested);
    if (dialog.exec() == QDialog::Accepted) {
        entry_->restore();
        const std::vector<Pass> before = state_->car.passes;
        emit edited(AddPass{dialog.pass()});
        revealNew(before);
    }
}

void TestDaysPage::strike(std::size_t pass) {
    emit edited(StrikePass{static_cast<int>(pass), !book_.passes()[pass].struck});
}

void TestDaysPage::restoreSetup(std::size_t pass) {
    if (const std::optional<int>& setup = book_.passes()[pass].setup) {
        emit edited(RestoreKept{*setup});
    }
}

void TestDaysPage::showMenu(const QPoint& global) {
    QMenu menu(this);
    for (QToolButton* tool : passTools_) {
        QAction* action = menu.addAction(tool->text(), tool, &QToolButton::click);
        action->setEnabled(tool->isEnabled());
    }
    menu.exec(global);
}

void TestDaysPage::goToLog() {
    if (book_.passes().empty()) {
        setFocus(Qt::OtherFocusReason);
        return;
    }
    if (!selected_) {
        select(book_.passes().size() - 1);
    }
    table_->setFocus(Qt::OtherFocusReason);
}

void TestDaysPage::enter() {
    entry_->enter();
}

void TestDaysPage::commitPending() {
    entry_->commit();
}

void TestDaysPage::discardTyping() {
    entry_->restore();
}

}  // namespace bolthole
