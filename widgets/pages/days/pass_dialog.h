// The whole form of one pass.
#pragma once

#include <QDialog>
#include <array>

#include "geometry/car/pass_fields.h"
#include "widgets/pages/days/pass_book.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace bolthole {

class PassNumberField;

/// Shows all that a pass may hold; everything but number and date may stay empty. Can't be accepted while
/// something in it can't be read: that is marked and said.
class PassDialog : public QDialog {
    Q_OBJECT
  public:
    /// `isNew`: the pass is to be entered, not changed; without a setup it takes the car as it stands.
    PassDialog(const PassBook& book, const Pass& pass, bool isNew, QWidget* parent = nullptr);

    /// The pass as it stands in the form.
    [[nodiscard]] Pass pass() const;
    [[nodiscard]] PassNumberField* field(PassField field) const;

    void accept() override;

  signals:
    void howToRequested(bolthole::PassField field);  ///< F1 in a field

  private:
    void buildWhen(QVBoxLayout* column);
    void buildSetup(QVBoxLayout* column, bool isNew);
    void buildGround(QVBoxLayout* column);
    void buildNumbers(QVBoxLayout* column, const QString& title, std::initializer_list<PassField> fields);
    void buildSeen(QVBoxLayout* column);
    void addNumber(QFormLayout* form, PassField field);
    [[nodiscard]] QString problem();

    const PassBook& book_;
    Pass pass_;
    std::array<PassNumberField*, static_cast<std::size_t>(PassField::count)> fields_{};
    std::array<QCheckBox*, kSeenCount> seen_{};
    QLineEdit* number_ = nullptr;
    QLineEdit* date_ = nullptr;
    QLineEdit* time_ = nullptr;
    QLineEdit* place_ = nullptr;
    QComboBox* setup_ = nullptr;
    QComboBox* kind_ = nullptr;
    QLineEdit* surface_ = nullptr;
    QCheckBox* struck_ = nullptr;
    QLineEdit* note_ = nullptr;
    QLabel* problem_ = nullptr;
};

}  // namespace bolthole
