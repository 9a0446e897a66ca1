// Draws what frames the cells of a wall chart: title, the car's figures, the key, caution and scale bar.
#pragma once

#include <QDate>
#include <QPainter>

#include "widgets/papers/wall_chart_layout.h"

namespace bolthole {

/// Paints everything on a sheet but its cells; the painter's unit is 1 mm.
class SheetPainter {
  public:
    SheetPainter(QPainter& painter, const SheetFrame& frame, const PrintFonts& fonts,
                 const ChartCombinations& chart, const ChartWords& words, const ChartLayout& layout);

    /// Title line, figures and foot of sheet `index`.
    void paintFrame(const Car& car, QDate date, int index);
    /// Side view, how to read the cells, shades, rods, and on a sheet of its own the map of the others.
    void paintKey(const Car& car);

  private:
    void paintFacts();
    void paintKeyText(QPointF at, double width);
    double paintMap(QPointF at, QSizeF box, int current);
    [[nodiscard]] QString partWords(const ChartSheet& sheet) const;
    [[nodiscard]] bool isNowOn(const ChartSheet& sheet) const;

    QPainter& painter_;
    const SheetFrame& frame_;
    const PrintFonts& fonts_;
    const ChartCombinations& chart_;
    const ChartWords& words_;
    const ChartLayout& layout_;
};

}  // namespace bolthole
