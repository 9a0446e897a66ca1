#include "app/chart_file.h"

#include <QBuffer>
#include <QPdfWriter>

#include "app/file_writing.h"

namespace bolthole {

QByteArray chartPdf(const WallChart& chart, const QPageLayout& page, const std::string& title) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(page);
        writer.setResolution(1200);
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Bolthole"));
        if (!printChart(chart, writer)) {
            return {};
        }
    }
    return bytes;
}

std::string writeChartFile(const ChartRequest& request, ChartPaper paper, const std::string& fileName) {
    const QPageLayout page = pageLayoutOf(paper);
    const QByteArray pdf = chartPdf(WallChart(request, page), page, request.car.title);
    if (pdf.isEmpty()) {
        return "the chart could not be painted";
    }
    return writeWholeFile(fileName, std::string_view(pdf.constData(), static_cast<std::size_t>(pdf.size())));
}

}  // namespace bolthole
