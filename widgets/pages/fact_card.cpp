#include "widgets/pages/fact_card.h"

#include <QGridLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "widgets/kit/theme.h"

namespace bolthole {

std::string snakeCase(std::string_view name) {
    std::string id;
    for (const char c : name) {
        const bool capital = c >= 'A' && c <= 'Z';
        if (capital || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
            static_cast<unsigned char>(c) > 0x7F) {
            id += static_cast<char>(capital ? c - 'A' + 'a' : c);
        } else if (!id.empty() && id.back() != '_') {
            id += '_';
        }
    }
    if (!id.empty() && id.back() == '_') {
        id.pop_back();
    }
    return id;
}

FactCard::FactCard(const QString& title, QWidget* parent)
    : Card(parent),
      column_(new QVBoxLayout(this)),
      grid_(new QGridLayout),
      note_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)) {
    setAccessibleName(title);
    setFocusPolicy(Qt::TabFocus);  // the way to figures further down without a mouse
    column_->setContentsMargins(14, 10, 14, 12);
    column_->setSpacing(8);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain, title, this);
    heading->setFont(textFont(TextSize::title, true));
    column_->addWidget(heading);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(14);
    grid_->setVerticalSpacing(5);
    grid_->setColumnStretch(2, 1);
    column_->addLayout(grid_);
    note_->setWordWrap(true);
    note_->hide();
    column_->addWidget(note_);
}

void FigureLabel::showStarting(const QString& words) {
    setToolTip(words.isEmpty() ? words : wrappedToolTip(tr("Without ±: it rests on %1.").arg(words)));
    setAccessibleDescription(words);
    if (starting_ == words.isEmpty()) {
        starting_ = !words.isEmpty();
        update();
    }
}

void FigureLabel::paintEvent(QPaintEvent* event) {
    ToneLabel::paintEvent(event);
    if (starting_ && !text().isEmpty()) {
        QPainter painter(this);
        const double width = fontMetrics().horizontalAdvance(text());
        drawStartingDots(painter, this->width() - width, this->width(), fontMetrics().height() - 0.5);
    }
}

void FactCard::addAbove(QWidget* widget) {
    column_->insertWidget(1, widget);
}

void FactCard::addRow() {
    const auto place = [this](auto* label, int column, Qt::Alignment side) {
        label->setTextFormat(Qt::PlainText);
        label->setAlignment(side | Qt::AlignTop);
        grid_->addWidget(label, static_cast<int>(rows_.size()), column, Qt::AlignTop);
        return label;
    };
    using Tone = ToneLabel::Tone;
    Row row{};
    row.label = place(new ToneLabel(Tone::muted, QString(), this), 0, Qt::AlignLeft);
    row.value = place(new FigureLabel(Tone::plain, QString(), this), 1, Qt::AlignRight);
    row.badValue = place(new FigureLabel(Tone::problem, QString(), this), 1, Qt::AlignRight);
    row.remark = place(new ToneLabel(Tone::muted, QString(), this), 2, Qt::AlignLeft);
    row.badRemark = place(new ToneLabel(Tone::problem, QString(), this), 2, Qt::AlignLeft);
    for (FigureLabel* label : {row.value, row.badValue}) {
        QFont bold = textFont(TextSize::body);
        bold.setWeight(QFont::DemiBold);
        label->setFont(bold);
    }
    row.remark->setWordWrap(true);
    row.badRemark->setWordWrap(true);
    rows_.push_back(row);
}

void FactCard::showRow(const Row& row, const Fact& fact) {
    row.label->showText(fact.label);
    row.label->show();
    const bool bad = fact.isProblem;
    (bad ? row.badValue : row.value)->showText(fact.value);
    // The mark, so that color is not alone.
    const QString remark =
        bad && !fact.remark.contains(u'▲') ? QStringLiteral("▲ ") + fact.remark : fact.remark;
    for (FigureLabel* label : {row.value, row.badValue}) {
        label->showStarting(fact.starting);
    }
    QStringList parts{fact.plusMinus, remark};
    parts.removeAll(QString());
    (bad ? row.badRemark : row.remark)->showText(parts.join(QStringLiteral("; ")));
    row.value->setAccessibleName(fact.label);
    row.badValue->setAccessibleName(fact.label);
    row.value->setVisible(!bad);
    row.badValue->setVisible(bad);
    row.remark->setVisible(!bad);
    row.badRemark->setVisible(bad);
}

void FactCard::showFacts(const std::vector<Fact>& facts, const QString& note) {
    while (rows_.size() < facts.size()) {
        addRow();
    }
    for (std::size_t index = 0; index < rows_.size(); ++index) {
        if (index < facts.size()) {
            showRow(rows_[index], facts[index]);
            continue;
        }
        const Row& row = rows_[index];
        const std::initializer_list<ToneLabel*> labels{row.label, row.value, row.badValue, row.remark,
                                                       row.badRemark};
        for (ToneLabel* label : labels) {
            label->hide();
        }
    }
    note_->showText(note);
    note_->setVisible(!note.isEmpty());
}

}  // namespace bolthole
