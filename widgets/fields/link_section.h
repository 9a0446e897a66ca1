// One link in the car sheet: its holes, its length, its adjuster.
#pragma once

#include "widgets/fields/bracket_grid.h"
#include "widgets/fields/length_part.h"
#include "widgets/fields/link_tools.h"
#include "widgets/kit/section.h"

namespace bolthole {

/// The group of one link. Folded, it says which holes are in use and how long the link is. A link that is at
/// fault, or in doubt, has a triangle at its heading.
class LinkSection : public Section {
    Q_OBJECT
  public:
    LinkSection(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Brings everything but the hub's numbers up to date. True: a name changed.
    bool refresh();

  private:
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString warningWords(bool ofWholeLink) const;
    void refreshWarnings();
    [[nodiscard]] const Link& link() const;

    SheetHub& hub_;
    int link_;
    ToneLabel* warnings_;
    NameField* name_;
    LinkTools* tools_;
    BracketGrid* chassis_;
    BracketGrid* axle_;
    LengthPart* length_ = nullptr;  // rods only
};

}  // namespace bolthole
