#include "app/commands/sheet_command.h"

#include "app/papers/pdf_file.h"
#include "app/papers/quiet_toolkit.h"
#include "widgets/papers/sheets/setup_facts.h"
#include "widgets/papers/sheets/sheets.h"

namespace bolthole {

namespace {

bool isPdfName(const std::string& fileName) {
    return QString::fromStdString(fileName).endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive);
}

}  // namespace

SheetOutcome makeSheet(const Request& request, const Car& car) {
    const std::optional<std::string> of = request.value(kSheetOption);
    if (!of) {
        return {{}, "--of: no sheet named, expected --of measuring, test-day or setup"};
    }
    const SheetKind kind = *of == "measuring"  ? SheetKind::measuring
                           : *of == "test-day" ? SheetKind::testDay
                                               : SheetKind::setup;
    const std::optional<std::string> output = request.value(kOutputOption);
    const QDate today = QDate::currentDate();
    const NumberStyle style{car.units};
    if (kind == SheetKind::setup && !(output && isPdfName(*output))) {
        return {setupText(setupFactsOf(car, style, true), today).toStdString(), {}};
    }
    if (!output) {
        return {{}, "-o: no file given for the sheet, expected -o FILE"};
    }
    const std::optional<std::string> paper = request.value(kSheetPaperOption);
    const PaperSize chosen = !paper               ? usualPaper(car.units)
                             : *paper == "letter" ? PaperSize::letter
                                                  : PaperSize::a4;
    const QuietToolkit toolkit;
    const QPageLayout page = pageOf(kind, chosen);
    const QByteArray pdf = pdfOf(*bolthole::makeSheet(kind, car, style, today, page), page, car.title);
    return pdf.isEmpty() ? SheetOutcome{{}, "the sheet could not be painted"}
                         : SheetOutcome{pdf.toStdString(), {}};
}

}  // namespace bolthole
