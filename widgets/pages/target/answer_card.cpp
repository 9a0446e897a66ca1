#include "widgets/pages/target/answer_card.h"

#include <QGridLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

AnswerCard::AnswerCard(const QString& title, QWidget* parent)
    : Card(parent),
      column_(new QVBoxLayout(this)),
      list_(new QVBoxLayout),
      none_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      note_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)) {
    setAccessibleName(title);
    column_->setContentsMargins(14, 10, 14, 12);
    column_->setSpacing(8);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain, title, this);
    heading->setFont(textFont(TextSize::title, true));
    column_->addWidget(heading);
    none_->setWordWrap(true);
    column_->addWidget(none_);
    list_->setSpacing(10);
    column_->addLayout(list_);
    note_->setWordWrap(true);
    column_->addWidget(note_);
}

void AnswerCard::addRow() {
    Row row{};
    row.box = new QWidget(this);
    auto* grid = new QGridLayout(row.box);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(14);
    grid->setVerticalSpacing(2);
    grid->setColumnStretch(0, 1);
    const auto label = [&](ToneLabel::Tone tone, int line, int column, int span) {
        auto* made = new ToneLabel(tone, QString(), row.box);
        made->setTextFormat(Qt::PlainText);
        made->setWordWrap(column == 0);
        grid->addWidget(made, line, column, 1, span);
        return made;
    };
    row.what = label(ToneLabel::Tone::plain, 0, 0, 1);
    QFont bold = textFont(TextSize::body);
    bold.setWeight(QFont::DemiBold);
    row.what->setFont(bold);
    row.chance = label(ToneLabel::Tone::plain, 0, 1, 1);
    row.figures = label(ToneLabel::Tone::muted, 1, 0, 2);
    row.remark = label(ToneLabel::Tone::muted, 2, 0, 2);
    row.miss = label(ToneLabel::Tone::problem, 2, 0, 2);
    row.button = new QPushButton(row.box);
    row.button->setMinimumWidth(84);
    grid->addWidget(row.button, 0, 2, 2, 1, Qt::AlignTop);
    const std::size_t index = rows_.size();
    connect(row.button, &QPushButton::clicked, this, [this, index] {
        if (index < shown_.size() && shown_[index].edit) {
            emit taken(Edit(*shown_[index].edit));  // a copy: what follows shows other rows
        }
    });
    list_->addWidget(row.box);
    rows_.push_back(row);
}

void AnswerCard::showRow(const Row& row, const AnswerRow& answer) {
    row.what->showText(answer.what);
    row.chance->showText(answer.chance);
    row.chance->setVisible(!answer.chance.isEmpty());
    row.figures->showText(answer.figures);
    row.figures->setVisible(!answer.figures.isEmpty());
    row.remark->showText(answer.remark);
    row.remark->setVisible(!answer.remark.isEmpty() && !answer.isMiss && !answer.isProblem);
    row.miss->showText(answer.remark);
    row.miss->setVisible(!answer.remark.isEmpty() && (answer.isMiss || answer.isProblem));
    // The button keeps its room where there is nothing to do, so that the columns stand in line.
    row.button->setText(answer.action.isEmpty() ? tr("As it is") : answer.action);
    row.button->setEnabled(answer.edit.has_value());
    row.button->setVisible(answer.edit.has_value() || !answer.figures.isEmpty());
    row.button->setAccessibleName(tr("%1: %2").arg(row.button->text(), answer.what));
    row.button->setAccessibleDescription(
        QStringList{answer.chance, answer.figures, answer.remark}.join(QStringLiteral(". ")));
    row.button->setToolTip(answer.edit ? tr("Changes the car in one step that can be undone") : QString());
}

void AnswerCard::showRows(std::vector<AnswerRow> rows, const QString& none, const QString& note) {
    shown_ = std::move(rows);
    while (rows_.size() < shown_.size()) {
        addRow();
    }
    for (std::size_t index = 0; index < rows_.size(); ++index) {
        rows_[index].box->setVisible(index < shown_.size());
        if (index < shown_.size()) {
            showRow(rows_[index], shown_[index]);
        }
    }
    none_->showText(none);
    none_->setVisible(shown_.empty());
    note_->showText(note);
    note_->setVisible(!note.isEmpty());
}

}  // namespace bolthole
