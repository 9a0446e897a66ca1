#include "app/controllers/recovery_controller.h"

#include <QDir>
#include <utility>

namespace bolthole {

RecoveryController::RecoveryController(Document& document, QString folder)
    : document_(document), folder_(std::move(folder)) {
    QDir().mkpath(folder_);
    watcher_.addPath(folder_);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &RecoveryController::lookForOthers);
    connect(&document_, &Document::fileChanged, this, &RecoveryController::start);
    connect(&document_, &Document::stepDone, this, &RecoveryController::record);
}

// What the last log held was saved or given up before another file could come.
void RecoveryController::start() {
    release();
    log_ = std::make_unique<RecoveryLog>(folder_, document_.fileName());
    connect(log_.get(), &RecoveryLog::problemChanged, this, [this](const QString& reason) {
        problem_ = reason;
        emit problemChanged();
    });
    record({});
    lookForOthers();
}

void RecoveryController::record(const QString& what) {
    if (log_) {
        log_->record(document_.recoveryPoint(what));
    }
}

void RecoveryController::release() {
    if (log_) {
        log_->remove();
        log_.reset();
    }
}

QString RecoveryController::bringBack(const AbandonedLog& log) {
    QString problem = document_.recover(log.newest);
    if (!problem.isEmpty()) {
        return problem;
    }
    if (log_->flush()) {  // else the old log is the only place on the disk that has the car
        removeLog(log.logFile);
    }
    return {};
}

void RecoveryController::lookForOthers() {
    const bool has = isOpenElsewhere(document_.fileName());
    if (std::exchange(hasCompany_, has) != has) {
        emit othersChanged();
    }
}

bool RecoveryController::isOpenElsewhere(const QString& file) const {
    return !logsOpenOn(folder_, file, log_ ? log_->logFile() : QString()).isEmpty();
}

}  // namespace bolthole
