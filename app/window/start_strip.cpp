#include "app/window/start_strip.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QPainter>
#include <QToolButton>

#include "widgets/kit/theme.h"

namespace bolthole {

StartStrip::StartStrip(QWidget* parent)
    : QFrame(parent), sentence_(new QLabel(this)), row_(new QHBoxLayout(this)) {
    setObjectName(QStringLiteral("startStrip"));
    setAccessibleName(tr("First steps"));
    row_->setContentsMargins(16, 6, 8, 6);
    row_->setSpacing(6);
    row_->addWidget(sentence_);
    row_->addSpacing(10);
    row_->addStretch(1);
    dismiss_ = new QToolButton(this);
    dismiss_->setText(tr("Dismiss"));
    connect(dismiss_, &QToolButton::clicked, this, &QWidget::hide);
    row_->addWidget(dismiss_);
    hide();
}

void StartStrip::addWay(const QString& words, QAction* action) {
    auto* button = new QToolButton(this);
    button->setText(words);
    button->setToolTip(action->statusTip().isEmpty() ? action->toolTip() : action->statusTip());
    if (action->menu() != nullptr) {
        button->setMenu(action->menu());
        button->setPopupMode(QToolButton::InstantPopup);
        connect(action->menu(), &QMenu::triggered, this, &QWidget::hide);
    } else {
        connect(button, &QToolButton::clicked, action, &QAction::trigger);
        connect(action, &QAction::triggered, this, &QWidget::hide);
    }
    row_->insertWidget(row_->count() - 2, button);  // before the stretch and what dismisses it
    setTabOrder(last_ == nullptr ? dismiss_ : last_, button);
    setTabOrder(button, dismiss_);
    first_ = first_ == nullptr ? button : first_;
    last_ = button;
}

void StartStrip::say(const QString& sentence) {
    sentence_->setText(sentence);
    setAccessibleDescription(sentence);
    show();
    if (first_ != nullptr && window()->focusWidget() == nullptr) {
        first_->setFocus(Qt::OtherFocusReason);  // the window's first stop, not what dismisses the offers
    }
}

void StartStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), theme().panel);
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme().border);
}

void StartStrip::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        hide();
        return;
    }
    QFrame::keyPressEvent(event);
}

}  // namespace bolthole
