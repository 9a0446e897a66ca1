// What a launch still needs: each a way to its field, and an estimate where there is one.
#pragma once

#include <vector>

#include "geometry/dynamics/launch_inputs.h"
#include "geometry/edits/edit.h"
#include "widgets/kit/card.h"
#include "widgets/kit/sheet_parts.h"

class QVBoxLayout;

namespace bolthole {

/// The number a path of the car file names; nothing where it names none that has a field.
[[nodiscard]] std::optional<FieldId> fieldAt(const Car& car, const std::string& path);

/// A calm card in the place of the launch: what for, and a button a number.
class LaunchMissing : public Card {
    Q_OBJECT
  public:
    explicit LaunchMissing(QWidget* parent = nullptr);

    void showMissing(const Car& car, const std::vector<MissingInput>& missing, Units units);

  signals:
    void fieldRequested(const FieldId& id);
    void torqueRequested();    ///< the torque curve is to be entered
    void couplingRequested();  ///< converter or clutch is to be chosen
    void edited(const Edit& edit);

  private:
    void addRow(const Car& car, const MissingInput& input, Units units);
    void addEstimate(const Car& car, Units units);

    QVBoxLayout* rows_;
    ToneLabel* intro_;
    std::vector<MissingInput> shown_;
    Car car_;
};

}  // namespace bolthole
