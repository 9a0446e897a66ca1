// One link in the car sheet: its holes, its length, its adjuster.
#pragma once

#include "widgets/bracket_grid.h"
#include "widgets/length_part.h"
#include "widgets/section.h"

namespace bolthole {

/// The group of one link. Folded, it says which holes are in use and how long the link is.
class LinkSection : public Section {
    Q_OBJECT
  public:
    LinkSection(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Brings everything but the hub's numbers up to date. True: a name changed.
    bool refresh();

  private:
    [[nodiscard]] QString summary() const;
    [[nodiscard]] const Link& link() const;

    SheetHub& hub_;
    int link_;
    NameField* name_;
    BracketGrid* chassis_;
    BracketGrid* axle_;
    LengthPart* length_ = nullptr;  // rods only
};

}  // namespace bolthole
