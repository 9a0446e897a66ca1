#include "widgets/pages/days/recording_dialog.h"

#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

QString recordedWords(Recorded kind) {
    switch (kind) {
        case Recorded::time:
            return RecordingDialog::tr("Time");
        case Recorded::speed:
            return RecordingDialog::tr("Speed");
        case Recorded::acceleration:
            return RecordingDialog::tr("Acceleration");
        case Recorded::engineSpeed:
            return RecordingDialog::tr("Engine speed");
        case Recorded::shaftSpeed:
            return RecordingDialog::tr("Driveshaft speed");
        case Recorded::frontTravel:
            return RecordingDialog::tr("Front travel, bump +");
        case Recorded::rearTravel:
            break;
    }
    return RecordingDialog::tr("Rear travel, bump +");
}

RecordingDialog::RecordingDialog(const CsvRows& table, const std::vector<RecordedColumn>& columns,
                                 double rollout, QWidget* parent)
    : QDialog(parent), table_(table), rollout_(rollout) {
    setObjectName(QStringLiteral("recordingDialog"));
    setWindowTitle(tr("What the columns are"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 16);
    column->setSpacing(10);
    grid_ = new QGridLayout;
    grid_->setHorizontalSpacing(12);
    grid_->setVerticalSpacing(6);
    grid_->setColumnStretch(1, 1);
    column->addLayout(grid_);
    for (std::size_t kind = 0; kind < kRecordedKinds; ++kind) {
        addKind(kind, columns);
    }
    startField_ = new QLineEdit(this);
    startField_->setAccessibleName(tr("Release, seconds of the table's time"));
    startField_->setToolTip(tr("Found where the car began to move; type another time where that is wrong"));
    const int last = grid_->rowCount();
    grid_->addWidget(new QLabel(tr("Release at"), this), last, 0);
    grid_->addWidget(startField_, last, 1);
    grid_->addWidget(new QLabel(tr("s"), this), last, 2);
    said_ = new ToneLabel(ToneLabel::Tone::plain, {}, this);
    said_->setWordWrap(true);
    said_->setMinimumWidth(380);
    column->addWidget(said_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    take_ = buttons->button(QDialogButtonBox::Ok);
    take_->setText(tr("Add to the pass"));
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(startField_, &QLineEdit::textEdited, this, [this] { read(false); });
    read(true);
}

void RecordingDialog::addKind(std::size_t kind, const std::vector<RecordedColumn>& columns) {
    const auto is = static_cast<Recorded>(kind);
    auto* header = new CalmCombo(this);
    header->addItem(is == Recorded::time ? tr("choose its column") : tr("not recorded"));
    for (const std::string& each : table_.rows.front()) {
        header->addItem(QString::fromStdString(each));
    }
    auto* unit = new CalmCombo(this);
    for (const RecordedUnit& each : unitsOf(is)) {
        unit->addItem(fromView(each.mark));
    }
    const auto chosen = std::ranges::find(columns, is, &RecordedColumn::is);
    if (chosen != columns.end()) {
        header->setCurrentIndex(std::max(0, header->findText(QString::fromStdString(chosen->header))));
        unit->setCurrentIndex(std::max(0, unit->findText(QString::fromStdString(chosen->unit))));
    }
    header->setAccessibleName(tr("%1, column").arg(recordedWords(is)));
    unit->setAccessibleName(tr("%1, unit").arg(recordedWords(is)));
    const int row = static_cast<int>(kind);
    grid_->addWidget(new QLabel(recordedWords(is), this), row, 0);
    grid_->addWidget(header, row, 1);
    grid_->addWidget(unit, row, 2);
    headers_[kind] = header;
    units_[kind] = unit;
    for (QComboBox* box : {header, unit}) {
        connect(box, &QComboBox::activated, this, [this] { read(true); });
    }
}

std::vector<RecordedColumn> RecordingDialog::columns() const {
    std::vector<RecordedColumn> chosen;
    for (std::size_t kind = 0; kind < kRecordedKinds; ++kind) {
        if (headers_[kind]->currentIndex() > 0) {
            chosen.push_back({static_cast<Recorded>(kind), headers_[kind]->currentText().toStdString(),
                              units_[kind]->currentText().toStdString()});
        }
    }
    return chosen;
}

void RecordingDialog::read(bool findsStart) {
    const std::vector<RecordedColumn> chosen = columns();
    const TableFault fault = refusal(PassRecording{"table.csv", std::string(64, '0'), 0, chosen});
    const ReadRecording result = fault.reason.empty() ? readRecording(table_, chosen) : ReadRecording{};
    QString problem = QString::fromStdString(fault.reason.empty() ? result.problem : fault.reason);
    if (problem.isEmpty() && findsStart) {
        start_ = findStart(result.recording).value_or(result.recording.time.front());
        startField_->setText(QString::number(start_, 'f', 3));
    } else if (problem.isEmpty()) {
        bool isNumber = false;
        start_ = startField_->text().trimmed().toDouble(&isNumber);
        problem =
            isNumber && std::abs(start_) <= kMostRecordedTime ? QString() : tr("The release is no time.");
    }
    take_->setEnabled(problem.isEmpty());
    if (!problem.isEmpty()) {
        said_->setText(QStringLiteral("▲ ") + capitalized(problem));
        return;
    }
    const std::optional<double> sixty = recordedSixtyFoot(result.recording, start_, rollout_);
    said_->setText(
        tr("%1 rows. %2")
            .arg(result.recording.time.size())
            .arg(sixty ? tr("60 ft from the release: %1 s, by the car's own rollout.").arg(timeText(*sixty))
                       : tr("It does not reach 60 ft by its speed or acceleration.")));
}

}  // namespace bolthole
