#include "widgets/pages/fact_card.h"

#include <QGridLayout>
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

void FactCard::addAbove(QWidget* widget) {
    column_->insertWidget(1, widget);
}

void FactCard::addRow() {
    const auto make = [this](ToneLabel::Tone tone, int column, Qt::Alignment side) {
        auto* label = new ToneLabel(tone, QString(), this);
        label->setTextFormat(Qt::PlainText);
        label->setAlignment(side | Qt::AlignTop);
        grid_->addWidget(label, static_cast<int>(rows_.size()), column, Qt::AlignTop);
        return label;
    };
    Row row{};
    row.label = make(ToneLabel::Tone::muted, 0, Qt::AlignLeft);
    row.value = make(ToneLabel::Tone::plain, 1, Qt::AlignRight);
    row.badValue = make(ToneLabel::Tone::problem, 1, Qt::AlignRight);
    row.remark = make(ToneLabel::Tone::muted, 2, Qt::AlignLeft);
    row.badRemark = make(ToneLabel::Tone::problem, 2, Qt::AlignLeft);
    for (ToneLabel* label : {row.value, row.badValue}) {
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
    QStringList parts{fact.sure, remark};
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
        for (ToneLabel* label : {row.label, row.value, row.badValue, row.remark, row.badRemark}) {
            label->hide();
        }
    }
    note_->showText(note);
    note_->setVisible(!note.isEmpty());
}

}  // namespace bolthole
