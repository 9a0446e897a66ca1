// The holes of one bracket or mount: a mark, a name and three figures a row, under column headings.
#pragma once

#include <QWidget>
#include <string>
#include <vector>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QGridLayout;
class QMenu;

namespace bolthole {

/// Rows for the holes of a bracket, with buttons to add and remove one; whose bracket it is and how it is
/// changed the derived class knows. The number of rows is fixed; a car with another number of holes gets
/// another grid.
class HoleGrid : public QWidget {
    Q_OBJECT
  public:
    HoleGrid(SheetHub& hub, QWidget* parent);

  protected:
    struct Row {
        HoleMark* mark;
        NameField* name;
        std::string shownName;
    };
    /// What the grid belongs to, for who hears it; on which side of the car it is; and what a click on a mark
    /// does.
    struct Words {
        QString of;
        Side side;
        QString boltHere;
    };

    /// Heading and rows: called once, by the derived class when it stands.
    void build(const Words& words);
    /// Marks, and names where they changed, the part's own in `role`'s color. True: a name changed.
    bool refreshRows(Role role);
    /// Names all rows anew at the next refresh: what they belong to is called otherwise.
    void forgetNames();

    [[nodiscard]] virtual const Bracket& bracket() const = 0;
    /// The hole's place forward; the other axes follow from it.
    [[nodiscard]] virtual FieldId fieldOf(int hole) const = 0;
    virtual void useHole(int hole) = 0;
    virtual void renameHole(int hole, const std::string& name) = 0;
    virtual void addHole() = 0;
    virtual void removeHole(int hole) = 0;
    /// The keys came to the hole's name.
    virtual void nameEntered(int /*hole*/) {}

    [[nodiscard]] SheetHub& hub() const { return hub_; }
    [[nodiscard]] ToneLabel* title() const { return title_; }
    [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }

  private:
    void addHeading(QGridLayout* grid, const Words& words);
    void addRow(QGridLayout* grid, int hole, const QString& boltHere);
    void fillRemoveMenu(QMenu* menu);
    void nameRow(Row& row, int hole);

    SheetHub& hub_;
    ToneLabel* title_ = nullptr;
    std::vector<Row> rows_;
};

/// Three compact fields for the coordinates of one point, in columns `column` to `column` + 2 of `row`, and
/// their note in the row below.
void addPointFields(SheetHub& hub, QGridLayout* grid, int row, int column, FieldId id, QWidget* parent);

/// Column headings of points: forward, height, sideways.
void addPointHeadings(QGridLayout* grid, int row, int column, Side side, QWidget* parent);

}  // namespace bolthole
