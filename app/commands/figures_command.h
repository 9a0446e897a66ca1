// The command figures: every number the window's pages show of a car, as a table.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "widgets/pages/fact_uncertainty.h"

namespace bolthole {

/// A row of the table.
struct PageFigure {
    std::string page;           ///< "links", "weights", "springs", "driveline", "loads", "roll", "brackets"
    FactNumber number;          ///< SI; NaN: the car has no such figure
    double uncertainty = kNaN;  ///< standard, SI; NaN: not known, or it has none
};

/// Every figure of every page of `car`, which must have passed findFaults() and can be assembled: those of
/// the sweep at ride, full bump and full droop, then the rows of the pages' cards and the load of every
/// joint, page after page. Uncertainties are those the pages show, before they are widened to 95 %.
[[nodiscard]] std::vector<PageFigure> pageFigures(const Car& car);

/// pageFigures() as CSV with the columns page, figure, value, unit and u, value and u in the car's shown
/// units, empty where there is none.
[[nodiscard]] std::string figuresTable(const Car& car);

}  // namespace bolthole
