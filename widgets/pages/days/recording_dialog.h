// Asks what the columns of a recording are, and shows what is read with that.
#pragma once

#include <QDialog>
#include <array>

#include "geometry/passes/recording.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace bolthole {

/// A row a kind: its column and unit. What is read so, where it starts and its own 60 ft are said below; it
/// can be accepted only while the table can be read.
class RecordingDialog : public QDialog {
    Q_OBJECT
  public:
    /// `table` must outlive the dialog; `columns`: chosen at first; `rollout`: m, of the car's front tires.
    RecordingDialog(const CsvRows& table, const std::vector<RecordedColumn>& columns, double rollout,
                    QWidget* parent = nullptr);

    [[nodiscard]] std::vector<RecordedColumn> columns() const;
    /// s of the table's clock; found by the acceleration until it is typed.
    [[nodiscard]] double start() const { return start_; }

  private:
    void addKind(std::size_t kind, const std::vector<RecordedColumn>& columns);
    void read(bool findsStart);

    const CsvRows& table_;
    double rollout_;
    double start_ = 0;
    std::array<QComboBox*, kRecordedKinds> headers_{};
    std::array<QComboBox*, kRecordedKinds> units_{};
    QLineEdit* startField_;
    QLabel* said_;
    QPushButton* take_;
    QGridLayout* grid_;
};

/// "time", "engine speed": for a person.
[[nodiscard]] QString recordedWords(Recorded kind);

}  // namespace bolthole
