// One spring, shock, stop or strap among the fields of the Springs page.
#pragma once

#include "widgets/kit/section.h"
#include "widgets/pages/springs/mount_grid.h"

namespace bolthole {

/// The group of one part. Folded, it says which holes are in use.
class SpringSection : public Section {
    Q_OBJECT
  public:
    /// `starting` must outlive the section.
    SpringSection(SheetHub& hub, int item, QWidget* parent = nullptr);

    /// Brings everything but the hub's numbers up to date.
    void refresh();
    [[nodiscard]] int item() const { return item_; }

    /// What decides which fields such a section has, in any spelling.
    [[nodiscard]] static std::string shapeOf(const SuspensionPart& part);

  signals:
    void removeRequested(int item);

  private:
    void addWords();
    void addNumbers();
    void addRemove();
    [[nodiscard]] CalmCombo* combo(const QStringList& options, const QString& label, const QString& toolTip);
    void ask(const SuspensionPart& changed);
    [[nodiscard]] const SuspensionPart& part() const;

    SheetHub& hub_;
    int item_;
    ToneLabel* refused_;
    NameField* name_ = nullptr;
    CalmCombo* kind_ = nullptr;
    CalmCombo* side_ = nullptr;
    MountGrid* chassis_;
    MountGrid* axle_;
};

}  // namespace bolthole
