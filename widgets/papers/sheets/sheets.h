// The sheets that a person writes on or hands on, by name: one door for command, menu and preview.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <memory>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

enum class SheetKind { measuring, testDay, setup };

/// "measuring sheet", "test-day sheet", "setup card".
[[nodiscard]] QString nameOf(SheetKind kind);
/// A page for it, turned as it has to be.
[[nodiscard]] QPageLayout pageOf(SheetKind kind, PaperSize paper);

/// Lays the sheet of a car out; the car must have passed findFaults(). `date`: of today.
[[nodiscard]] std::unique_ptr<PrintedSheets> makeSheet(SheetKind kind, const Car& car, NumberStyle style,
                                                       QDate date, const QPageLayout& page);

}  // namespace bolthole
