// The change sheet: what to turn and what to expect, to be carried to the car. One layout for PDF, paper and
// preview.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <QStringList>
#include <memory>

#include "geometry/compare/comparison.h"
#include "geometry/units/text.h"
#include "widgets/papers/printed_sheets.h"

namespace bolthole {

/// Papers the sheet is made for.
enum class ChangePaper { letter, a4 };
/// Portrait page of a paper with the sheet's margins.
[[nodiscard]] QPageLayout changePageOf(ChangePaper paper);
/// Letter where inches are used, A4 elsewhere.
[[nodiscard]] ChangePaper usualChangePaper(Units units);

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

/// Lays the sheet out for a page and paints it sheet by sheet, lengths in mm on paper, as WallChart does.
class ChangeSheet : public PrintedSheets {
  public:
    /// Both cars must have passed findFaults().
    ChangeSheet(const ChangeRequest& request, const QPageLayout& page);
    ~ChangeSheet() override;
    ChangeSheet(ChangeSheet&&) noexcept;

    [[nodiscard]] int sheetCount() const override;
    void paintSheet(QPainter& painter, int index) const override;

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace bolthole
