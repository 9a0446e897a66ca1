#include "app/window/recording_controller.h"

#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QSaveFile>
#include <algorithm>

#include "app/document/document.h"
#include "app/document/recording_file.h"
#include "app/document/settings.h"
#include "geometry/fit/fitted_launch.h"
#include "geometry/fit/recording_misfit.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/recording_card.h"
#include "widgets/pages/days/recording_dialog.h"
#include "widgets/pages/days/seen_card.h"

namespace bolthole {

namespace {

constexpr QChar kBetween = u'\t';

QStringList headersOf(const CsvRows& table) {
    QStringList headers;
    for (const std::string& header : table.rows.front()) {
        headers << QString::fromStdString(header);
    }
    return headers;
}

QStringList linesOf(const std::vector<RecordedColumn>& columns) {
    QStringList lines;
    for (const RecordedColumn& column : columns) {
        lines << QStringList{QString::number(static_cast<int>(column.is)),
                             QString::fromStdString(column.header), QString::fromStdString(column.unit)}
                     .join(kBetween);
    }
    return lines;
}

/// What was said of such a table last, else what its headers seem to be.
std::vector<RecordedColumn> columnsFor(const CsvRows& table) {
    std::vector<RecordedColumn> columns;
    for (const QString& line : Settings::columnsOf(headersOf(table))) {
        const QStringList parts = line.split(kBetween);
        bool isNumber = false;
        const int kind = parts.front().toInt(&isNumber);
        if (parts.size() == 3 && isNumber && kind >= 0 && kind < static_cast<int>(kRecordedKinds)) {
            columns.push_back({static_cast<Recorded>(kind), parts[1].toStdString(), parts[2].toStdString()});
        }
    }
    return columns.empty() ? guessColumns(table.rows.front()) : columns;
}

/// How far the front tires roll before they leave the beam, m; as the launch of the setup has it.
double rolloutOf(const Car& car) {
    const LaunchInputsResult entered = launchInputsOf(car);
    return entered.inputs ? entered.inputs->rollout : 0;
}

}  // namespace

RecordingController::RecordingController(const BenchState& bench, const Document& document,
                                         TestDaysPage& page, QObject* parent)
    : QObject(parent), bench_(bench), document_(document), page_(page) {
    connect(&page, &TestDaysPage::passPicked, this, &RecordingController::show);
    connect(&page.recording(), &RecordingCard::addRequested, this, &RecordingController::ask);
    connect(&page.recording(), &RecordingCard::removeRequested, this, &RecordingController::remove);
    connect(&page.recording(), &RecordingCard::startMoved, this, &RecordingController::moveStart);
    connect(&shows_, &JobRunner::failed, this, [this](const QString& reason) {
        made_.reset();
        page_.recording().showRecording({.problem = reason}, bench_.style.units);
    });
}

const Pass* RecordingController::pass() const {
    return shown_ && *shown_ < bench_.car.passes.size() ? &bench_.car.passes[*shown_] : nullptr;
}

QString RecordingController::folder() const {
    return document_.fileName().isEmpty() ? QString() : QFileInfo(document_.fileName()).absolutePath();
}

void RecordingController::showFit(const std::shared_ptr<const LaunchFit>& fit) {
    fit_ = fit;
    show(shown_);
}

void RecordingController::show(const std::optional<std::size_t>& pass) {
    shown_ = pass;
    const Pass* picked = this->pass();
    if (picked == nullptr || !picked->recording) {
        made_.reset();
        shows_.cancel();
        page_.recording().offer();
        return;
    }
    const Sources sources = sourcesOf(*picked);
    if (sources.setup == nullptr || made_ != sources) {
        made_ = sources;
        makeShown(*picked);
    }
}

const Car& RecordingController::setupOf(const Pass& pass) const {
    return pass.setup ? *bench_.car.kept[static_cast<std::size_t>(*pass.setup)].car : bench_.car;
}

// Empty while the car has no file.
QString RecordingController::pathOf(const Pass& pass) const {
    return folder().isEmpty() ? QString()
                              : QDir(folder()).filePath(QString::fromStdString(pass.recording->file));
}

RecordingController::Sources RecordingController::sourcesOf(const Pass& pass) const {
    const QFileInfo info(pathOf(pass));
    const std::shared_ptr<const Car> kept =
        pass.setup ? bench_.car.kept[static_cast<std::size_t>(*pass.setup)].car : nullptr;
    return {pass, kept, fit_, bench_.style.units, info.size(), info.lastModified()};
}

struct RecordingController::Task {
    Pass pass;
    std::size_t row = 0;
    QString path;  // empty: the car has no file
    std::shared_ptr<const Read> last;
    std::shared_ptr<const Car> setup;
    std::shared_ptr<const Car> bench;  // what the fit is of
    std::shared_ptr<const LaunchFit> fit;
};
struct RecordingController::Made {
    ShownRecording shown;
    std::shared_ptr<const Read> last;
};

// Whether it is too long to be read while the window waits.
bool RecordingController::isLong(const QString& path) const {
    const QFileInfo info(path);
    const bool isKnown =
        last_ && last_->path == path && last_->size == info.size() && last_->changed == info.lastModified();
    return !isKnown && info.size() > kReadAtOnce;
}

RecordingController::Made RecordingController::make(const Task& task) {
    const Pass& pass = task.pass;
    Made made{{.start = pass.recording->start, .byClock = pass.sixtyFoot}, task.last};
    const QFileInfo info(task.path);
    if (!made.last || made.last->path != task.path || made.last->size != info.size() ||
        made.last->changed != info.lastModified()) {
        made.last.reset();  // what is not there, or can't be read, has no table
        const auto bytes = task.path.isEmpty() ? std::nullopt : recordingBytes(task.path);
        if (bytes) {
            made.last = std::make_shared<const Read>(
                Read{task.path, info.size(), info.lastModified(), recordingTable(*bytes)});
        }
    }
    ReadRecording result = recordingOf(*pass.recording, made.last ? &made.last->table : nullptr);
    ShownRecording& shown = made.shown;
    if (!result.problem.empty()) {
        shown.problem = QString::fromStdString(result.problem);
        return made;
    }
    shown.recording = std::move(result.recording);
    shown.byRecording = recordedSixtyFoot(shown.recording, shown.start, rolloutOf(*task.setup));
    if (const std::optional<LaunchRun> run = launchOf(*task.setup, pass)) {
        shown.computed = run->rows;
        shown.byComputation = run->figures.sixtyFoot;
    }
    if (task.fit && task.fit->end == FitEnd::done) {
        if (const std::optional<LaunchRun> run = fittedLaunch(*task.bench, *task.fit, task.row)) {
            shown.fitted = run->rows;
            shown.misfits = misfitsOf(shown.recording, shown.start, shown.fitted);
        }
    }
    return made;
}

void RecordingController::take(Made made, Units units) {
    last_ = std::move(made.last);
    page_.recording().showRecording(made.shown, units);
}

void RecordingController::makeShown(const Pass& pass) {
    const auto bench = std::make_shared<const Car>(bench_.car);
    const Task task{pass,
                    *shown_,
                    pathOf(pass),
                    last_,
                    pass.setup ? bench_.car.kept[static_cast<std::size_t>(*pass.setup)].car : bench,
                    bench,
                    fit_};
    const Units units = bench_.style.units;
    if (!isLong(task.path)) {
        shows_.cancel();
        take(make(task), units);
        return;
    }
    page_.recording().showRecording({.problem = tr("Reading %1 …").arg(QFileInfo(task.path).fileName())},
                                    units);
    shows_.start([this, task, units](const Job& job) {
        job.answer([this, units, made = make(task)]() mutable { take(std::move(made), units); });
    });
}

void RecordingController::ask() {
    if (pass() == nullptr) {
        return;
    }
    if (folder().isEmpty()) {
        emit said(tr("Save the car first: a recording is kept beside its file."));
        return;
    }
    const QString name = QFileDialog::getOpenFileName(&page_, tr("Add a recording"), {},
                                                      tr("Tables (*.csv *.txt);;All files (*)"));
    if (!name.isEmpty()) {
        addFile(*shown_, name);
    }
}

void RecordingController::addFile(std::size_t row, const QString& fileName) {
    if (row >= bench_.car.passes.size()) {
        return;
    }
    // By the time a long one is read the pass may stand elsewhere, or be gone.
    const auto read = [this, pass = bench_.car.passes[row], fileName](const std::optional<QByteArray>& bytes,
                                                                      const RecordingTable& table) {
        const auto found = std::ranges::find(bench_.car.passes, pass);
        if (!bytes || folder().isEmpty() || found == bench_.car.passes.end()) {
            emit said(tr("%1 can't be read, or is larger than 64 MB.").arg(QFileInfo(fileName).fileName()));
            return;
        }
        takeTable(static_cast<std::size_t>(found - bench_.car.passes.begin()), fileName, *bytes, table);
    };
    if (QFileInfo(fileName).size() <= kReadAtOnce) {
        const std::optional<QByteArray> bytes = recordingBytes(fileName);
        read(bytes, bytes ? recordingTable(*bytes) : RecordingTable{});
        return;
    }
    emit said(tr("Reading %1 …").arg(QFileInfo(fileName).fileName()));
    adds_.start([fileName, read](const Job& job) {
        const std::optional<QByteArray> bytes = recordingBytes(fileName);
        job.answer(
            [read, bytes, table = bytes ? recordingTable(*bytes) : RecordingTable{}] { read(bytes, table); });
    });
}

void RecordingController::takeTable(std::size_t row, const QString& fileName, const QByteArray& bytes,
                                    const RecordingTable& read) {
    Pass pass = bench_.car.passes[row];
    const auto& [hash, table] = read;
    if (!table.problem.empty() || table.rows.empty()) {
        emit said(tr("%1 is no table: %2")
                      .arg(QFileInfo(fileName).fileName(), table.rows.empty() && table.problem.empty()
                                                               ? tr("it is empty")
                                                               : QString::fromStdString(table.problem)));
        return;
    }
    RecordingDialog dialog(table, columnsFor(table), rolloutOf(setupOf(pass)), &page_);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    const QString kept = keep(pass, fileName, bytes);
    if (kept.isEmpty()) {
        return;
    }
    Settings::rememberColumns(headersOf(table), linesOf(dialog.columns()));
    pass.recording = PassRecording{kept.toStdString(), hash, dialog.start(), dialog.columns()};
    emit edited(ChangePass{static_cast<int>(row), pass});
}

// The name it has beside the car's file; empty: it could not be put there, and that was said.
QString RecordingController::keep(const Pass& pass, const QString& fileName, const QByteArray& bytes) {
    const QFileInfo from(fileName);
    if (from.absolutePath() == folder()) {
        return from.fileName();
    }
    QString base = QFileInfo(document_.fileName()).fileName();
    base.remove(QStringLiteral(".bolt.json"), Qt::CaseInsensitive);
    const QString stem =
        QStringLiteral("%1 %2 pass %3").arg(base, QString::fromStdString(pass.date)).arg(pass.number);
    QString name = stem + QStringLiteral(".csv");
    for (int copy = 2; QFile::exists(QDir(folder()).filePath(name)); ++copy) {
        const std::optional<QByteArray> there = recordingBytes(QDir(folder()).filePath(name));
        if (there == bytes) {
            return name;
        }
        name = QStringLiteral("%1 (%2).csv").arg(stem).arg(copy);
    }
    QSaveFile file(QDir(folder()).filePath(name));
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
        emit said(tr("%1 was not written beside the car's file: %2").arg(name, file.errorString()));
        return {};
    }
    return name;
}

void RecordingController::remove() {
    if (const Pass* picked = pass()) {
        Pass without = *picked;
        without.recording.reset();
        emit edited(ChangePass{static_cast<int>(*shown_), without});
    }
}

void RecordingController::moveStart(double by) {
    const Pass* picked = pass();
    if (picked != nullptr && picked->recording && by != 0) {
        Pass moved = *picked;
        moved.recording->start += by;
        emit edited(ChangePass{static_cast<int>(*shown_), moved});
    }
}

}  // namespace bolthole
