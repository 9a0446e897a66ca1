#include "widgets/pages/launch/dyno_dialog.h"

#include <QApplication>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr std::size_t kToldRows = 6;
constexpr qsizetype kLongestPaste = 200'000;  // letters: more is no dyno sheet

}  // namespace

DynoDialog::DynoDialog(Units units, QWidget* parent)
    : QDialog(parent),
      units_(units),
      text_(new QPlainTextEdit(this)),
      unit_(new CalmCombo(this)),
      good_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      bad_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)) {
    setWindowTitle(tr("Torque from a dyno sheet"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(18, 16, 18, 14);
    column->setSpacing(10);
    auto* words =
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("Rows of rpm and torque at the flywheel, with tabs, commas or spaces between "
                         "them. A heading may say which columns they are; other columns are left "
                         "alone."),
                      this);
    words->setWordWrap(true);
    column->addWidget(words);
    text_->setAccessibleName(tr("Rows of the dyno sheet"));
    text_->setTabChangesFocus(true);
    text_->setMinimumSize(440, 240);
    text_->setPlainText(QApplication::clipboard()->text().left(kLongestPaste));
    column->addWidget(text_, 1);
    unit_->addItems({tr("lbf·ft"), tr("N·m")});
    unit_->setCurrentIndex(units == Units::inch ? 0 : 1);
    unit_->setAccessibleName(tr("Unit of the torques"));
    column->addWidget(new BoxRow(tr("Torque in"), unit_, this));
    good_->setWordWrap(true);
    bad_->setWordWrap(true);
    column->addWidget(good_);
    column->addWidget(bad_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("Take the rows"), QDialogButtonBox::AcceptRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(text_, &QPlainTextEdit::textChanged, this, &DynoDialog::refresh);
    connect(unit_, &QComboBox::currentIndexChanged, this, &DynoDialog::refresh);
    refresh();
}

void DynoDialog::refresh() {
    const TorqueUnit usual = unit_->currentIndex() == 0 ? TorqueUnit::poundFeet : TorqueUnit::newtonMetres;
    sheet_ = readDynoSheet(text_->toPlainText().toStdString(), usual);
    unit_->setEnabled(!sheet_.unitIsSaid);
    QStringList lines;
    for (const RefusedRow& row : sheet_.refused) {
        if (static_cast<std::size_t>(lines.size()) == kToldRows) {
            lines << tr("and %1 more").arg(sheet_.refused.size() - kToldRows);
            break;
        }
        lines << QStringLiteral("▲ ") +
                     tr("line %1, '%2': %3")
                         .arg(row.line)
                         .arg(QString::fromStdString(row.text), QString::fromStdString(row.reason));
    }
    bad_->showText(lines.join(u'\n'));
    bad_->setVisible(!lines.isEmpty());
    good_->showText(verdict());
    take_->setEnabled(!sheet_.torque.empty());
}

QString DynoDialog::verdict() const {
    if (!sheet_.refused.empty()) {
        return tr("Nothing is taken until every row can be read.");
    }
    if (sheet_.torque.empty()) {
        return tr("No rows yet.");
    }
    const auto text = [this](double value, Quantity quantity) {
        return QString::fromStdString(withUnit(figureText(value, quantity, units_), quantity, units_));
    };
    const TorquePoint& peak = *std::ranges::max_element(sheet_.torque, {}, &TorquePoint::torque);
    const QString unit = sheet_.unit == TorqueUnit::poundFeet ? tr("lbf·ft") : tr("N·m");
    const QString read =
        sheet_.unitIsSaid ? tr("read in %1 as its heading says").arg(unit) : tr("read in %1").arg(unit);
    return tr("%1 rows from %2 to %3, at the most %4 at %5; %6.")
        .arg(sheet_.torque.size())
        .arg(text(sheet_.torque.front().speed, Quantity::speed),
             text(sheet_.torque.back().speed, Quantity::speed), text(peak.torque, Quantity::torque),
             text(peak.speed, Quantity::speed), read);
}

}  // namespace bolthole
