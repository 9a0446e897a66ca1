#include "widgets/views/view_deck.h"

#include <QAction>
#include <QActionGroup>
#include <QGridLayout>
#include <QToolButton>
#include <algorithm>

#include "widgets/kit/theme.h"
#include "widgets/views/across_view.h"
#include "widgets/views/side_view.h"

namespace bolthole {

namespace {

constexpr std::array kEach{ViewDeck::Shown::side, ViewDeck::Shown::rear, ViewDeck::Shown::top};

}  // namespace

ViewDeck::ViewDeck(QWidget* parent)
    : QWidget(parent),
      side_(new SideView(this)),
      rear_(new AcrossView(ViewPlane::rear, this)),
      top_(new AcrossView(ViewPlane::top, this)),
      views_{side_, rear_, top_},
      grid_(new QGridLayout(this)),
      choices_(new QActionGroup(this)),
      switch_(new QWidget(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setSpacing(4);
    grid_->addWidget(side_, 0, 0, 2, 1);
    grid_->addWidget(rear_, 0, 1);
    grid_->addWidget(top_, 1, 1);
    auto* row = new QHBoxLayout(switch_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    switch_->setAccessibleName(tr("View"));
    addView(Shown::side, tr("S&ide view"), tr("Side"), tr("The car from its left"));
    addView(Shown::rear, tr("R&ear view"), tr("Rear"), tr("The axle from behind the car"));
    addView(Shown::top, tr("&Top view"), tr("Top"), tr("The car from above"));
    addView(Shown::all, tr("All t&hree views"), tr("All"), tr("Side, rear and top view together"));
    for (BenchPicture* view : views_) {
        connect(view, &BenchPicture::edited, this, &ViewDeck::edited);
        connect(view, &BenchPicture::selected, this, &ViewDeck::selected);
    }
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &ViewDeck::dressSwitch);
    dressSwitch();
    lay(Shown::side);
}

// Quiet words on the picture, the chosen one over a bar, as the pages' tabs have it.
void ViewDeck::dressSwitch() {
    const Theme& now = theme();
    switch_->setStyleSheet(
        QStringLiteral("QToolButton { background: %1; color: %2; border: none; border-bottom: 2px solid %1;"
                       " border-radius: 0; padding: 2px 8px; }"
                       "QToolButton:hover { color: %3; }"
                       "QToolButton:checked { color: %3; border-bottom: 2px solid %4; }"
                       "QToolButton:focus { color: %4; }")
            .arg(now.canvas.name(), now.muted.name(), now.ink.name(), now.focus.name()));
}

void ViewDeck::addView(Shown shown, const QString& entry, const QString& name, const QString& tip) {
    auto* action = new QAction(entry, this);
    const int key = 3 + static_cast<int>(choices_->actions().size());
    action->setIconText(name);
    action->setCheckable(true);
    action->setToolTip(tr("%1 (Ctrl+%2)").arg(tip).arg(key));
    action->setShortcut(QKeySequence(QStringLiteral("Ctrl+%1").arg(key)));
    choices_->addAction(action);
    connect(action, &QAction::triggered, this, [this, shown] { choose(shown); });
    auto* button = new QToolButton(switch_);
    button->setDefaultAction(action);
    button->setAccessibleName(tip);
    button->setFont(textFont(TextSize::small));
    button->setFocusPolicy(Qt::TabFocus);
    switch_->layout()->addWidget(button);
    allButton_ = button;  // the last one stays
}

bool ViewDeck::isShown(std::size_t view) const {
    return shown_ == Shown::all || shown_ == kEach[view];
}

void ViewDeck::showState(const BenchState& state) {
    state_ = &state;
    for (std::size_t view = 0; view < views_.size(); ++view) {
        if (isShown(view)) {
            views_[view]->showState(state);
        }
    }
}

std::size_t ViewDeck::underHand() const {
    const auto dragged = std::ranges::find_if(views_, &BenchPicture::isDragging);
    if (dragged != views_.end()) {
        return static_cast<std::size_t>(dragged - views_.begin());
    }
    return shown_ == Shown::all ? 0 : static_cast<std::size_t>(shown_);
}

void ViewDeck::showUnderHand(const BenchState& state) {
    state_ = &state;
    views_[underHand()]->showState(state);
}

void ViewDeck::showOthers(const BenchState& state) {
    for (std::size_t view = 0; view < views_.size(); ++view) {
        if (isShown(view) && view != underHand()) {
            views_[view]->showState(state);
        }
    }
}

void ViewDeck::choose(Shown shown) {
    chosen_ = shown;
    abandonDrag();
    lay(shown);
    lookForRoom();
}

// What is shown gets all the room; a view that comes into sight is shown the state it missed.
void ViewDeck::lay(Shown shown) {
    const bool hadFocus = isAncestorOf(window()->focusWidget());
    const bool all = shown == Shown::all;
    shown_ = shown;
    grid_->setColumnStretch(0, all ? 3 : shown == Shown::side ? 1 : 0);
    grid_->setColumnStretch(1, all ? 2 : shown == Shown::side ? 0 : 1);
    grid_->setRowStretch(0, shown != Shown::top ? 1 : 0);
    grid_->setRowStretch(1, all || shown == Shown::top ? 1 : 0);
    for (std::size_t view = 0; view < views_.size(); ++view) {
        views_[view]->setCaption(all && view > 0 ? choices_->actions().at(static_cast<int>(view))->iconText()
                                                 : QString());
        views_[view]->setVisible(isShown(view));
        if (isShown(view) && state_ != nullptr) {
            views_[view]->showState(*state_);
        }
    }
    if (hadFocus) {
        views_[all ? 0 : static_cast<std::size_t>(shown)]->setFocus(Qt::OtherFocusReason);
    }
    choices_->actions().at(static_cast<int>(shown))->setChecked(true);
    placeSwitch();
}

void ViewDeck::showLinks() {
    for (BenchPicture* view : views_) {
        view->showLinks();
    }
}

void ViewDeck::showAll() {
    for (BenchPicture* view : views_) {
        view->showAll();
    }
}

void ViewDeck::abandonDrag() {
    for (BenchPicture* view : views_) {
        view->abandonDrag();
    }
}

void ViewDeck::lookForRoom() {
    const bool room = window()->width() >= kRoomForAll;
    choices_->actions().at(static_cast<int>(Shown::all))->setEnabled(room);
    allButton_->setVisible(room);
    const Shown fitting = chosen_ == Shown::all && !room ? Shown::side : chosen_;
    if (fitting != shown_) {
        abandonDrag();
        lay(fitting);
    }
    placeSwitch();
}

void ViewDeck::placeSwitch() {
    switch_->adjustSize();
    switch_->move(8, 8);
    switch_->raise();
    for (std::size_t view = 0; view < views_.size(); ++view) {
        const bool under = shown_ == Shown::all ? view == 0 : isShown(view);
        views_[view]->keepFree(under ? switch_->geometry() : QRect());
    }
}

void ViewDeck::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    lookForRoom();
}

void ViewDeck::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    lookForRoom();
}

}  // namespace bolthole
