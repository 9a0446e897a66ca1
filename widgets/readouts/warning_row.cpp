#include "widgets/readouts/warning_row.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kCorner = 5;

/// The severity in a word: light on dark where it is grave, in a frame where it is not.
class Badge : public QWidget {
  public:
    Badge(const QString& word, bool isGrave, QWidget* parent)
        : QWidget(parent), word_(word), isGrave_(isGrave) {
        setFont(textFont(TextSize::small, true));
        setAttribute(Qt::WA_TransparentForMouseEvents);
        setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    }
    [[nodiscard]] QSize sizeHint() const override {
        return {fontMetrics().horizontalAdvance(word_) + 14, fontMetrics().height() + 4};
    }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        const Theme& colors = theme();
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(isGrave_ ? colors.problem : colors.muted, 1));
        painter.setBrush(isGrave_ ? QBrush(colors.problem) : QBrush(Qt::NoBrush));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), kCorner, kCorner);
        painter.setPen(isGrave_ ? colors.card : colors.muted);
        painter.drawText(rect(), Qt::AlignCenter, word_);
    }

  private:
    QString word_;
    bool isGrave_;
};

ToneLabel* wrapped(ToneLabel::Tone tone, const QString& text, QWidget* parent) {
    auto* label = new ToneLabel(tone, text, parent);
    label->setWordWrap(true);
    label->setAttribute(Qt::WA_TransparentForMouseEvents);
    return label;
}

}  // namespace

WarningRow::WarningRow(const WarningWords& words, QWidget* parent) : QAbstractButton(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    setToolTip(tr("Click, or press Enter, to go to the field."));
    const QString end = words.follows.isEmpty() ? QString() : u' ' + words.follows;
    setAccessibleName(words.badge + QStringLiteral(": ") + words.cause + end);
    auto* layout = new QGridLayout(this);
    layout->setContentsMargins(8, 6, 8, 6);
    layout->setHorizontalSpacing(10);
    layout->setVerticalSpacing(1);
    layout->setColumnMinimumWidth(0, Badge(tr("Not measured yet"), true, nullptr).sizeHint().width());
    layout->setColumnStretch(1, 1);
    layout->addWidget(new Badge(words.badge, words.isGrave, this), 0, 0, Qt::AlignTop | Qt::AlignLeft);
    layout->addWidget(wrapped(ToneLabel::Tone::plain, words.cause, this), 0, 1);
    if (!words.follows.isEmpty()) {
        layout->addWidget(wrapped(ToneLabel::Tone::muted, words.follows, this), 1, 1);
    }
    if (!words.fix.isEmpty()) {
        fix_ = new QPushButton(words.fix, this);
        fix_->setToolTip(tr("One step that can be undone."));
        fix_->setAccessibleDescription(words.cause);
        layout->addWidget(fix_, 0, 2, 2, 1, Qt::AlignVCenter);
        connect(fix_, &QPushButton::clicked, this, &WarningRow::fixRequested);
    }
}

void WarningRow::paintEvent(QPaintEvent* /*event*/) {
    const Theme& colors = theme();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || hasFocus()) {
        painter.setPen(hasFocus() ? QPen(colors.focus, 1.5) : QPen(Qt::NoPen));
        painter.setBrush(underMouse() ? colors.panel : colors.card);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), kCorner, kCorner);
    }
    painter.setPen(colors.grid);
    painter.drawLine(QPointF(8, height() - 0.5), QPointF(width() - 8, height() - 0.5));
}

void WarningRow::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
    } else {
        QAbstractButton::keyPressEvent(event);  // space, and arrow keys to the rows around
    }
}

}  // namespace bolthole
