#include "widgets/kit/notice_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

#include "widgets/kit/theme.h"

namespace bolthole {

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent), label_(new QLabel(this)) {
    setObjectName(QStringLiteral("notice"));
    setAccessibleName(tr("Notice"));
    label_->setWordWrap(true);
    label_->setTextFormat(Qt::PlainText);
    label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* close = new QToolButton(this);
    close->setText(tr("Dismiss"));
    connect(close, &QToolButton::clicked, this, &QWidget::hide);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 6, 8, 6);
    row->addWidget(label_, 1);
    row->addWidget(close);
    hide();
}

void NoticeBar::say(const QString& text) {
    show(text, false);
}

void NoticeBar::tell(const QString& text) {
    show(text, true);
}

void NoticeBar::show(const QString& text, bool isQuiet) {
    isQuiet_ = isQuiet;
    label_->setText(text);
    setAccessibleDescription(text);
    setVisible(true);
    update();
}

QString NoticeBar::text() const {
    return isHidden() ? QString() : label_->text();
}

void NoticeBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), theme().card);
    painter.fillRect(QRect(0, 0, 4, height()), isQuiet_ ? theme().focus : theme().problem);
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme().border);
}

void NoticeBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        hide();
        return;
    }
    QFrame::keyPressEvent(event);
}

}  // namespace bolthole
