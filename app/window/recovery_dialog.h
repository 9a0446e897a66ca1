// What is offered after a program ended without saving.
#pragma once

#include <QDialog>
#include <QList>

#include "app/document/recovery_log.h"

class QPushButton;
class QTreeWidget;

namespace bolthole {

/// Lists what was left behind: which car, when, after which change, from which file. Accepted: bring back
/// chosen(). Rejected: leave all for later. Throwing one away asks first.
class RecoveryDialog : public QDialog {
    Q_OBJECT
  public:
    /// `logs` is not empty.
    RecoveryDialog(QList<AbandonedLog> logs, QWidget* parent);

    [[nodiscard]] const AbandonedLog& chosen() const;

  private:
    void fill();
    void throwAway();

    QList<AbandonedLog> logs_;
    QTreeWidget* list_;
    QPushButton* bringBack_;
    QPushButton* throwAway_;
};

/// "today 14:03:22", "yesterday 9:10:00", "2026-11-21 9:10:00".
[[nodiscard]] QString whenInWords(const QDateTime& when, const QDate& today);

}  // namespace bolthole
