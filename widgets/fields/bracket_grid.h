// The holes of one bracket of a link.
#pragma once

#include "widgets/fields/hole_grid.h"

namespace bolthole {

/// Rows for the holes of a bracket; the one whose hole is selected stands out.
class BracketGrid : public HoleGrid {
    Q_OBJECT
  public:
    BracketGrid(SheetHub& hub, int link, End end, QWidget* parent = nullptr);

    /// Brings title, marks and names up to date; the numbers are the hub's. True: a name changed.
    bool refresh();

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] const Link& link() const;
    [[nodiscard]] const Bracket& bracket() const override { return link().bracket(end_); }
    [[nodiscard]] FieldId fieldOf(int hole) const override { return holeField(link_, end_, hole, 0); }
    void useHole(int hole) override { hub().request(UseHole{link_, end_, hole}); }
    void renameHole(int hole, const std::string& name) override;
    void addHole() override;
    void removeHole(int hole) override;
    void nameEntered(int hole) override { hub().select(fieldOf(hole)); }

    int link_;
    End end_;
    std::string shownLinkName_;
    int selectedHole_ = -1;
};

}  // namespace bolthole
