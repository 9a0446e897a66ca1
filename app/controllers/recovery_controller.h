// Keeps one window's recovery log in step with its document, and knows who else has the file open.
#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <memory>

#include "app/document/document.h"
#include "app/document/recovery_log.h"

namespace bolthole {

/// Between a document and its log: a log a file, a record a step.
class RecoveryController : public QObject {
    Q_OBJECT
  public:
    /// `document` must outlive the controller.
    RecoveryController(Document& document, QString folder);

    /// What programs that ended without saving left behind, newest first.
    [[nodiscard]] QList<AbandonedLog> leftBehind() const { return abandonedLogs(folder_); }
    /// Makes a log's newest record the document; the log goes once the record stands in this window's own. On
    /// failure gives the reason, and all stays.
    [[nodiscard]] QString bringBack(const AbandonedLog& log);
    /// Whether another window has `file` (absolute path) open.
    [[nodiscard]] bool isOpenElsewhere(const QString& file) const;
    /// Whether another window has this window's file open, as last looked at.
    [[nodiscard]] bool hasCompany() const { return hasCompany_; }
    /// Looks anew.
    void lookForOthers();
    /// The document was saved or given up, and the window closes: its log goes.
    void release();
    /// Why nothing can be kept; empty: it is kept.
    [[nodiscard]] const QString& problem() const { return problem_; }

  signals:
    /// hasCompany() changed.
    void othersChanged();
    /// Whether changes are kept changed; problem() says why not.
    void problemChanged();

  private:
    void start();
    void record(const QString& what);

    Document& document_;
    QString folder_;
    QString problem_;
    bool hasCompany_ = false;
    std::unique_ptr<RecoveryLog> log_;
    QFileSystemWatcher watcher_;
};

}  // namespace bolthole
