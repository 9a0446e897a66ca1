// The holes of one end of a spring or shock.
#pragma once

#include "widgets/fields/hole_grid.h"

namespace bolthole {

/// Rows for the holes of a mount. Every change of it but a number is one ChangeSpring.
class MountGrid : public HoleGrid {
    Q_OBJECT
  public:
    MountGrid(SheetHub& hub, int item, End end, QWidget* parent = nullptr);

    /// Brings title, marks and names up to date; the numbers are the hub's.
    void refresh();

  private:
    void ask(const Bracket& bracket);
    [[nodiscard]] const SuspensionPart& part() const;
    [[nodiscard]] const Bracket& bracket() const override { return part().bracket(end_); }
    [[nodiscard]] FieldId fieldOf(int hole) const override;
    void useHole(int hole) override;
    void renameHole(int hole, const std::string& name) override;
    void addHole() override;
    void removeHole(int hole) override;

    int item_;
    End end_;
    QString shownPart_;
};

}  // namespace bolthole
