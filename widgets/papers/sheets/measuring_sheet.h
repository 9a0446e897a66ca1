// The measuring sheet: what there is to measure on this very car, with room to write every number twice. One
// layout for PDF, paper and preview.
#pragma once

#include <QPageLayout>
#include <memory>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/printed_sheets.h"
#include "widgets/papers/sheets/paper_kit.h"

namespace bolthole {

/// Lays the sheets out for a page: one an area, more where its points and numbers need it, each with the
/// area's picture.
class MeasuringSheet : public PrintedSheets {
  public:
    /// The car must have passed findFaults(). `style`: units to measure in.
    MeasuringSheet(const Car& car, NumberStyle style, const QPageLayout& page);
    ~MeasuringSheet() override;
    MeasuringSheet(MeasuringSheet&&) noexcept;

    [[nodiscard]] int sheetCount() const override;
    void paintSheet(QPainter& painter, int index) const override;

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace bolthole
