// The change sheet: what to turn and what to expect, to be carried to the car. One layout for PDF, paper and
// preview.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <QStringList>

#include "geometry/compare/comparison.h"
#include "geometry/units/text.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// The sheet's page: upright.
[[nodiscard]] inline QPageLayout changePageOf(PaperSize paper) {
    return pageOf(paper, QPageLayout::Portrait);
}

/// What a change sheet is made of.
struct ChangeRequest {
    Car before;
    Car after;
    QString beforeName;  ///< "Monday" or the file's title
    QString afterName;
    NumberStyle style;
    QDate date;
    QStringList next{};  ///< the next thing to try, a sentence each, see nextToTry(); empty: not said
};

/// The sheet, laid out for a page.
class ChangeSheet : public PrintedSheets {
  public:
    /// Both cars must have passed findFaults().
    ChangeSheet(const ChangeRequest& request, const QPageLayout& page);
};

}  // namespace bolthole
