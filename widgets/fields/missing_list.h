// Numbers that are still to be entered, each a button that leads to its field.
#pragma once

#include <vector>

#include "geometry/edits/edit.h"
#include "widgets/kit/card.h"

class QGridLayout;
class QPushButton;

namespace bolthole {

/// A card of buttons; hidden while nothing is missing.
class MissingList : public Card {
    Q_OBJECT
  public:
    explicit MissingList(QWidget* parent = nullptr);

    /// Names the numbers as the fields of `car` do.
    void showMissing(const Car& car, const std::vector<FieldId>& missing);

  signals:
    void fieldRequested(const FieldId& id);

  private:
    QGridLayout* grid_;
    std::vector<QPushButton*> buttons_;
    std::vector<FieldId> shown_;
};

}  // namespace bolthole
