// Draws the cells of a wall chart with their headings.
#pragma once

#include <QPainter>

#include "widgets/papers/wall_chart_layout.h"

namespace bolthole {

/// Gray of a shading step, light enough for black text on it.
[[nodiscard]] QColor shadeColor(int step, int steps);
/// Slanting lines in a box: the sign of a problem.
void drawHatching(QPainter& painter, const QRectF& box);

/// Paints cells; the painter's unit is 1 mm.
class CellPainter {
  public:
    CellPainter(QPainter& painter, const PrintFonts& fonts, const ChartCombinations& chart,
                const ChartWords& words, const ChartLayout& layout);

    /// The cells of a sheet, and the headings of its rows and columns.
    void paint(const ChartSheet& sheet);

  private:
    void paintMatrix(const ChartSheet& sheet);
    void paintList(const ChartSheet& sheet);
    void paintCell(const QRectF& box, int row, int column);
    void paintGround(const QRectF& box, const HoleCombination& combination, bool isNow);
    double paintNow(const QRectF& box);
    void paintProblem(const QRectF& strip, const QString& words);
    void paintFigures(const QRectF& box, const CellWords& words, const std::vector<HoleWords>& names);
    double paintNumber(double middle, double top, const CellWords& words, double air);
    void paintInstantCenter(QPointF at, const std::vector<TextRun>& runs);
    double paintEnds(double middle, double top, const CellWords& words);
    void paintSmall(double middle, double top, double width, const CellWords& words);
    void paintRowHeading(const QRectF& cell, int row);
    void paintColumnHeading(const QRectF& cell, int column);
    void paintNameLine(QPointF at, const std::vector<HoleWords>& names, double width);
    void paintTitles(const ChartSheet& sheet);
    void paintName(QPointF at, const HoleWords& name, Qt::AlignmentFlag alignment, double width);
    [[nodiscard]] double contentHeight(const CellWords& words, double width, std::size_t names) const;

    QPainter& painter_;
    const PrintFonts& fonts_;
    const ChartCombinations& chart_;
    const ChartWords& words_;
    const ChartLayout& layout_;
    PrintType small_;
    PrintType name_;
};

}  // namespace bolthole
