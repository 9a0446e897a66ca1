#include "app/window/recovery_dialog.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QHeaderView>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <utility>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

// A path as a person knows it, the home folder shortened.
QString shortPath(const QString& file) {
    const QString home = QDir::homePath();
    return file.startsWith(home + QLatin1Char('/')) ? QLatin1Char('~') + file.mid(home.size()) : file;
}

}  // namespace

QString whenInWords(const QDateTime& when, const QDate& today) {
    const QString time = when.toString(QStringLiteral("H:mm:ss"));
    if (when.date() == today) {
        return RecoveryDialog::tr("today %1").arg(time);
    }
    if (when.date() == today.addDays(-1)) {
        return RecoveryDialog::tr("yesterday %1").arg(time);
    }
    return when.date().toString(Qt::ISODate) + QLatin1Char(' ') + time;
}

RecoveryDialog::RecoveryDialog(QList<AbandonedLog> logs, QWidget* parent)
    : QDialog(parent), logs_(std::move(logs)), list_(new QTreeWidget(this)) {
    setWindowTitle(tr("Unsaved work"));
    auto* title = new QLabel(tr("Bolthole ended before this was saved"), this);
    title->setFont(textFont(TextSize::title, true));
    auto* words =
        new QLabel(tr("Every change up to the moment shown is here. What you recover is not saved until "
                      "you save it."),
                   this);
    words->setWordWrap(true);
    list_->setHeaderLabels({tr("Car"), tr("When"), tr("Last change"), tr("File")});
    list_->setRootIsDecorated(false);
    list_->setUniformRowHeights(true);
    list_->setAllColumnsShowFocus(true);
    list_->setAccessibleName(tr("Unsaved work"));
    auto* buttons = new QDialogButtonBox(this);
    bringBack_ = buttons->addButton(tr("&Recover"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("&Leave for later"), QDialogButtonBox::RejectRole)
        ->setToolTip(tr("It is offered again at the next start, and under File, Unsaved work"));
    throwAway_ = buttons->addButton(tr("&Delete…"), QDialogButtonBox::DestructiveRole);
    bringBack_->setDefault(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 18, 20, 16);
    column->setSpacing(10);
    column->addWidget(title);
    column->addWidget(words);
    column->addWidget(list_, 1);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(throwAway_, &QPushButton::clicked, this, &RecoveryDialog::throwAway);
    connect(list_, &QTreeWidget::itemDoubleClicked, this, &QDialog::accept);
    resize(860, 300);
    fill();
}

void RecoveryDialog::fill() {
    list_->clear();
    for (const AbandonedLog& log : std::as_const(logs_)) {
        const RecoveryRecord& record = log.newest;
        auto* item = new QTreeWidgetItem(list_);
        item->setText(0, record.title.isEmpty() ? tr("Untitled car") : record.title);
        item->setText(1, whenInWords(record.when, QDate::currentDate()));
        item->setText(2, record.what);
        item->setText(3, record.file.isEmpty() ? tr("never saved") : shortPath(record.file));
        for (int at = 0; at < list_->columnCount(); ++at) {
            item->setToolTip(at, item->text(at));
        }
        if (log.damaged) {
            item->setToolTip(1,
                             tr("The log is damaged behind this moment; what came after could not be read."));
            item->setText(1, item->text(1) + tr(", log damaged after"));
        }
    }
    for (const int at : {0, 1}) {
        list_->resizeColumnToContents(at);
    }
    list_->setColumnWidth(2, 320);
    list_->setCurrentItem(list_->topLevelItem(0));
}

const AbandonedLog& RecoveryDialog::chosen() const {
    return logs_.at(list_->indexOfTopLevelItem(list_->currentItem()));
}

void RecoveryDialog::throwAway() {
    const AbandonedLog log = chosen();
    const auto answer = QMessageBox::question(
        this, tr("Delete?"),
        tr("'%1' as it stood %2 will be gone for good.")
            .arg(list_->currentItem()->text(0), whenInWords(log.newest.when, QDate::currentDate())),
        QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Cancel);
    if (answer != QMessageBox::Discard) {
        return;
    }
    removeLog(log.logFile);
    logs_.removeAt(list_->indexOfTopLevelItem(list_->currentItem()));
    if (logs_.isEmpty()) {
        reject();
        return;
    }
    fill();
}

}  // namespace bolthole
