// Takes a dyno sheet's rows, as they were copied or typed.
#pragma once

#include <QDialog>
#include <vector>

#include "geometry/dynamics/dyno_sheet.h"

class QPlainTextEdit;
class QPushButton;

namespace bolthole {

class CalmCombo;
class ToneLabel;

/// Begins with what the clipboard holds, where that has rows. Says what it makes of the text while it is
/// changed, each refused row by its line; taken are all rows or none.
class DynoDialog : public QDialog {
    Q_OBJECT
  public:
    /// `units`: decides the unit of the torques where the sheet does not say.
    explicit DynoDialog(Units units, QWidget* parent = nullptr);

    /// What was read; empty where anything is refused.
    [[nodiscard]] const std::vector<TorquePoint>& torque() const { return sheet_.torque; }

  private:
    void refresh();
    [[nodiscard]] QString verdict() const;

    Units units_;
    DynoSheet sheet_;
    QPlainTextEdit* text_;
    CalmCombo* unit_;
    ToneLabel* good_;
    ToneLabel* bad_;
    QPushButton* take_ = nullptr;
};

}  // namespace bolthole
