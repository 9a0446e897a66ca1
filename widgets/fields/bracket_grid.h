// The holes of one bracket: a mark, a name and three figures a row, under column headings.
#pragma once

#include <QWidget>
#include <vector>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QGridLayout;
class QMenu;

namespace bolthole {

/// Rows for the holes of a bracket, with buttons to add and remove one. The number of rows is fixed; a car
/// with another number of holes gets another grid.
class BracketGrid : public QWidget {
    Q_OBJECT
  public:
    BracketGrid(SheetHub& hub, int link, End end, QWidget* parent = nullptr);

    /// Brings marks and names up to date; the numbers are the hub's. True: a name changed.
    bool refresh();

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Row {
        HoleMark* mark;
        NameField* name;
        std::string shownName;
    };
    void addHeading(QGridLayout* grid);
    void addRow(QGridLayout* grid, int hole);
    void addHole();
    void fillRemoveMenu(QMenu* menu);
    [[nodiscard]] const Link& link() const;
    [[nodiscard]] const Bracket& bracket() const { return link().bracket(end_); }

    SheetHub& hub_;
    int link_;
    End end_;
    ToneLabel* title_ = nullptr;
    std::vector<Row> rows_;
    std::string shownLinkName_;
    int selectedHole_ = -1;
};

/// Three compact fields for the coordinates of one point, in columns `column` to `column` + 2 of `row`, and
/// their note in the row below.
void addPointFields(SheetHub& hub, QGridLayout* grid, int row, int column, FieldId id, QWidget* parent);

/// Column headings of points: forward, height, sideways.
void addPointHeadings(QGridLayout* grid, int row, int column, Side side, QWidget* parent);

}  // namespace bolthole
