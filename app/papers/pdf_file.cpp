#include "app/papers/pdf_file.h"

#include <QBuffer>
#include <QPdfWriter>

#include "app/carfile/file_writing.h"
#include "geometry/units/say.h"

namespace bolthole {

QByteArray pdfOf(const PrintedSheets& sheets, const QPageLayout& page, const std::string& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(page);
        writer.setResolution(1200);
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Bolthole"));
        if (!printSheets(sheets, writer)) {
            return {};
        }
    }
    return bytes;
}

std::string writePdf(const PrintedSheets& sheets, const QPageLayout& page, const std::string& title,
                     const std::string& fileName) {
    const QByteArray pdf = pdfOf(sheets, page, title);
    if (pdf.isEmpty()) {
        return say("the sheets %1", say(kNotPainted));
    }
    return writeWholeFile(fileName, std::string_view(pdf.constData(), static_cast<std::size_t>(pdf.size())));
}

}  // namespace bolthole
