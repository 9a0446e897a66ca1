#include "app/change_file.h"

#include <QBuffer>
#include <QFileInfo>
#include <QPdfWriter>

#include "app/file_writing.h"
#include "app/quiet_toolkit.h"

namespace bolthole {

namespace {

// "monday" of "cars/monday.bolt.json"
QString nameOfFile(const std::string& file) {
    QString name = QFileInfo(QString::fromStdString(file)).fileName();
    for (const QString& ending : {QStringLiteral(".json"), QStringLiteral(".bolt")}) {
        if (name.endsWith(ending) && name.size() > ending.size()) {
            name.chop(ending.size());
        }
    }
    return name;
}

}  // namespace

QByteArray changePdf(const ChangeSheet& sheet, const QPageLayout& page, const std::string& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(page);
        writer.setResolution(1200);
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Bolthole"));
        if (!printSheet(sheet, writer)) {
            return {};
        }
    }
    return bytes;
}

std::string writeChangeSheet(const ChangeRequest& request, ChangePaper paper, const std::string& fileName) {
    const QPageLayout page = changePageOf(paper);
    const QByteArray pdf = changePdf(ChangeSheet(request, page), page, request.after.title);
    if (pdf.isEmpty()) {
        return "the change sheet could not be painted";
    }
    return writeWholeFile(fileName, std::string_view(pdf.constData(), static_cast<std::size_t>(pdf.size())));
}

std::string makeChangeSheet(const Car& before, const Car& after, const std::string& beforeFile,
                            const std::string& afterFile) {
    const QuietToolkit toolkit;
    const bool hasTitles = before.title != after.title && !before.title.empty() && !after.title.empty();
    const QString from = hasTitles ? QString::fromStdString(before.title) : nameOfFile(beforeFile);
    const QString to = hasTitles ? QString::fromStdString(after.title) : nameOfFile(afterFile);
    const QPageLayout page = changePageOf(usualChangePaper(after.units));
    const ChangeSheet sheet({before, after, from, to, NumberStyle{after.units}, QDate::currentDate()}, page);
    return changePdf(sheet, page, after.title).toStdString();
}

}  // namespace bolthole
