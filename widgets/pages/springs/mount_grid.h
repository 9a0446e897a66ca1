// The holes of one end of a spring or shock: a mark, a name and three figures a row.
#pragma once

#include <QWidget>
#include <vector>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QGridLayout;
class QMenu;

namespace bolthole {

/// Rows for the holes of a mount, with buttons to add and remove one. Every change of it but a number is one
/// ChangeSpring. The number of rows is fixed; a part with another number of holes gets another grid.
class MountGrid : public QWidget {
    Q_OBJECT
  public:
    MountGrid(SheetHub& hub, int item, End end, QWidget* parent = nullptr);

    /// Brings title, marks and names up to date; the numbers are the hub's.
    void refresh();

  private:
    struct Row {
        HoleMark* mark;
        NameField* name;
    };
    void addHeading(QGridLayout* grid);
    void addRow(QGridLayout* grid, int hole);
    void addHole();
    void fillRemoveMenu(QMenu* menu);
    void removeHole(int hole);
    void ask(const Bracket& bracket);
    [[nodiscard]] FieldId fieldOf(int hole) const;
    [[nodiscard]] const SuspensionPart& part() const;
    [[nodiscard]] const Bracket& bracket() const { return part().bracket(end_); }

    SheetHub& hub_;
    int item_;
    End end_;
    ToneLabel* title_ = nullptr;
    std::vector<Row> rows_;
};

}  // namespace bolthole
