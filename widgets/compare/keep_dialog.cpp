#include "widgets/compare/keep_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kLongestName = 80;

}  // namespace

KeepDialog::KeepDialog(const QString& title, const QString& action, const KeptWords& words, QWidget* parent)
    : QDialog(parent),
      before_(words),
      name_(new QLineEdit(QString::fromStdString(words.name), this)),
      note_(new QPlainTextEdit(QString::fromStdString(words.note), this)),
      problem_(new ToneLabel(ToneLabel::Tone::problem, tr("▲ A kept setup needs a name."), this)) {
    setWindowTitle(title);
    name_->setMaxLength(kLongestName);
    name_->setAccessibleName(tr("Name of the setup"));
    name_->selectAll();
    note_->setAccessibleName(tr("Note"));
    note_->setPlaceholderText(tr("Weather, track, tire pressures, what it felt like"));
    note_->setTabChangesFocus(true);
    note_->setMinimumHeight(3 * QFontMetrics(note_->font()).lineSpacing() + 16);
    auto* date = new QLabel(QString::fromStdString(words.date), this);
    auto* form = new QFormLayout;
    form->setVerticalSpacing(8);
    form->addRow(tr("&Name"), name_);
    form->addRow(QString(), problem_);
    form->addRow(tr("Date"), date);
    form->addRow(tr("N&ote"), note_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(action, QDialogButtonBox::AcceptRole);
    take_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 16, 16, 12);
    column->setSpacing(12);
    column->addLayout(form);
    column->addWidget(buttons);
    connect(name_, &QLineEdit::textChanged, this, &KeepDialog::refresh);
    refresh();
    resize(420, sizeHint().height());
}

void KeepDialog::refresh() {
    const bool named = !name_->text().trimmed().isEmpty();
    problem_->setVisible(!named);
    take_->setEnabled(named);
}

KeptWords KeepDialog::words() const {
    return {name_->text().trimmed().toStdString(), before_.date,
            note_->toPlainText().trimmed().toStdString()};
}

}  // namespace bolthole
