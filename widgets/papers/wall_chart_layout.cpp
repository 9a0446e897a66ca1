#include "widgets/papers/wall_chart_layout.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace bolthole {

namespace {

constexpr double kLargestScale = 2.3;
constexpr double kRoomy = 0.95;       // of the largest scale, so that white is left between the lines
constexpr double kKeyToCells = 9;     // between key and cells
constexpr double kLeastKey = 76;      // the key's width on letter
constexpr double kLeastPicture = 50;  // the side view's height beside cells
constexpr double kWidestCell = 1.45;  // against the least at its scale
constexpr double kTallestCell = 1.25;

int ceilDivide(int number, int divisor) {
    return (number + divisor - 1) / divisor;
}

/// Cells on one sheet: so many down and across, at such a scale.
struct Grid {
    int down = 1;
    int across = 1;
    double scale = 1;
    bool stacked = false;
};

class Arranger {
  public:
    Arranger(const SheetFrame& frame, const PrintFonts& fonts, const ChartCombinations& chart,
             const ChartWords& words)
        : frame_(frame), fonts_(fonts), chart_(chart), words_(words), measure_(fonts, chart, words) {}

    [[nodiscard]] ChartLayout arrange();

  private:
    [[nodiscard]] bool fits(const Grid& grid, double width) const;
    [[nodiscard]] std::optional<Grid> grown(Grid grid, double width) const;
    [[nodiscard]] std::optional<Grid> onOneSheet(double width) const;
    [[nodiscard]] Grid onSeveralSheets() const;
    struct Beside {
        Grid grid;
        double key;  // its width
    };
    [[nodiscard]] std::optional<Beside> besideKey() const;
    [[nodiscard]] Grid mostOnASheet(bool stacked) const;
    [[nodiscard]] int sheetsFor(const Grid& grid) const;
    void place(const Grid& grid, double width, ChartLayout& layout) const;
    void addSheets(const Grid& grid, ChartLayout& layout) const;

    const SheetFrame& frame_;
    const PrintFonts& fonts_;
    const ChartCombinations& chart_;
    const ChartWords& words_;
    CellMeasure measure_;
    double gap_ = ChartLayout{}.gap;
};

bool Arranger::fits(const Grid& grid, double width) const {
    const QSizeF cell = measure_.cell(grid.scale, grid.stacked);
    return measure_.rowHeading(grid.scale) + grid.across * (cell.width() + gap_) - gap_ <= width &&
           measure_.columnHeading(grid.scale) + grid.down * (cell.height() + gap_) - gap_ <=
               frame_.body.height();
}

// The largest scale at which the grid fits; nothing if it does not fit at 1.
std::optional<Grid> Arranger::grown(Grid grid, double width) const {
    grid.scale = 1;
    if (!fits(grid, width)) {
        return std::nullopt;
    }
    double low = 1;
    double high = kLargestScale;
    for (int step = 0; step < 20; ++step) {
        grid.scale = (low + high) / 2;
        (fits(grid, width) ? low : high) = grid.scale;
    }
    grid.scale = std::max(1.0, kRoomy * low);
    return grid;
}

// All cells on one sheet, as large as can be.
std::optional<Grid> Arranger::onOneSheet(double width) const {
    std::optional<Grid> best;
    for (const bool stacked : {false, true}) {
        const int most = chart_.axes.isMatrix() ? chart_.columns : chart_.rows;
        for (int across = chart_.axes.isMatrix() ? most : 1; across <= most; ++across) {
            const int down = chart_.axes.isMatrix() ? chart_.rows : ceilDivide(chart_.rows, across);
            const std::optional<Grid> grid = grown({down, across, 1, stacked}, width);
            if (grid && (!best || grid->scale > best->scale + 0.02)) {
                best = grid;
            }
        }
    }
    return best;
}

Grid Arranger::mostOnASheet(bool stacked) const {
    Grid grid{1, 1, 1, stacked};
    const double width = frame_.body.width();
    while (fits({grid.down + 1, grid.across, 1, stacked}, width)) {
        ++grid.down;
    }
    while (fits({grid.down, grid.across + 1, 1, stacked}, width)) {
        ++grid.across;
    }
    return grid;
}

int Arranger::sheetsFor(const Grid& grid) const {
    return chart_.axes.isMatrix()
               ? ceilDivide(chart_.rows, grid.down) * ceilDivide(chart_.columns, grid.across)
               : ceilDivide(chart_.rows, grid.down * grid.across);
}

// As few sheets as the least sizes allow, evenly filled.
Grid Arranger::onSeveralSheets() const {
    std::optional<Grid> best;
    for (const bool stacked : {false, true}) {
        Grid grid = mostOnASheet(stacked);
        const int sheets = sheetsFor(grid);
        if (chart_.axes.isMatrix()) {
            grid.down = ceilDivide(chart_.rows, ceilDivide(chart_.rows, grid.down));
            grid.across = ceilDivide(chart_.columns, ceilDivide(chart_.columns, grid.across));
        } else {
            grid.down = ceilDivide(ceilDivide(chart_.rows, sheets), grid.across);
        }
        grid = grown(grid, frame_.body.width()).value_or(grid);
        const int fewest = best ? sheetsFor(*best) : sheets + 1;
        if (sheets < fewest || (sheets == fewest && grid.scale > best->scale + 0.02)) {
            best = grid;
        }
    }
    return *best;
}

// Spreads the cells over the room there is, up to what still looks like one thing.
void Arranger::place(const Grid& grid, double width, ChartLayout& layout) const {
    const QSizeF least = measure_.cell(grid.scale, grid.stacked);
    layout.scale = grid.scale;
    layout.stacked = grid.stacked;
    layout.across = grid.across;
    layout.strip = measure_.strip(grid.scale);
    layout.rowHeading = measure_.rowHeading(grid.scale);
    layout.columnHeading = measure_.columnHeading(grid.scale);
    const double cellsWide = width - layout.rowHeading + gap_;
    const double cellsHigh = frame_.body.height() - layout.columnHeading + gap_;
    layout.cell = {std::clamp(cellsWide / grid.across - gap_, least.width(), kWidestCell * least.width()),
                   std::clamp(cellsHigh / grid.down - gap_, least.height(), kTallestCell * least.height())};
    const QSizeF size(layout.rowHeading + grid.across * (layout.cell.width() + gap_) - gap_,
                      layout.columnHeading + grid.down * (layout.cell.height() + gap_) - gap_);
    layout.matrix = QRectF(QPointF(frame_.body.right() - size.width(), frame_.body.top()), size);
}

void Arranger::addSheets(const Grid& grid, ChartLayout& layout) const {
    const bool isMatrix = chart_.axes.isMatrix();
    const int down = isMatrix ? grid.down : grid.down * grid.across;
    const int across = isMatrix ? grid.across : 1;
    layout.sheetsDown = ceilDivide(chart_.rows, down);
    layout.sheetsAcross = ceilDivide(chart_.columns, across);
    for (int row = 0; row < chart_.rows; row += down) {
        for (int column = 0; column < chart_.columns; column += across) {
            layout.sheets.push_back({false, row, std::min(down, chart_.rows - row), column,
                                     std::min(across, chart_.columns - column)});
        }
    }
}

// The widest key beside cells hardly smaller than they could be.
std::optional<Arranger::Beside> Arranger::besideKey() const {
    std::optional<Beside> best;
    for (const double part : {0.3, 0.33, 0.36, 0.4}) {
        const double key = std::max(kLeastKey, part * frame_.body.width());
        if (keyTextHeight(frame_, fonts_, chart_, words_, key) +
                kLeastPicture * frame_.text.digits / digit_height::kText >
            frame_.body.height()) {
            continue;
        }
        const std::optional<Grid> grid = onOneSheet(frame_.body.width() - key - kKeyToCells);
        if (grid && (!best || grid->scale > 0.93 * best->grid.scale)) {
            best = Beside{*grid, key};
        }
    }
    return best;
}

ChartLayout Arranger::arrange() {
    ChartLayout layout;
    const QRectF& body = frame_.body;
    if (const std::optional<Beside> one = besideKey()) {
        place(one->grid, body.width() - one->key - kKeyToCells, layout);
        addSheets(one->grid, layout);
        layout.sheets.front().hasKey = true;
        layout.key = QRectF(body.topLeft(), QPointF(layout.matrix.left() - kKeyToCells, body.bottom()));
        return layout;
    }
    const Grid several = onSeveralSheets();
    place(several, body.width(), layout);
    layout.matrix.moveLeft(body.left());
    layout.key = body;
    layout.sheets.push_back({.hasKey = true});
    addSheets(several, layout);
    return layout;
}

}  // namespace

QRectF ChartLayout::cellAt(int row, int column) const {
    const QPointF first = matrix.topLeft() + QPointF(rowHeading, columnHeading);
    return {first + QPointF(column * (cell.width() + gap), row * (cell.height() + gap)), cell};
}

ChartLayout layOut(const SheetFrame& frame, const PrintFonts& fonts, const ChartCombinations& chart,
                   const ChartWords& words) {
    return Arranger(frame, fonts, chart, words).arrange();
}

}  // namespace bolthole
