// Reads back what a PDF file of Qt's writer draws: text with its size and place, strokes with their width,
// fills with their gray. Enough of ISO 32000 for that writer's files, no more.
#pragma once

#include <QByteArray>
#include <QLineF>
#include <QRectF>
#include <QString>
#include <array>
#include <vector>

namespace bolthole::test {

/// One run of text; `size` is the font size.
struct PdfText {
    QString text;
    double size = 0;  ///< mm
    QPointF at;       ///< baseline's start, mm from the page's upper left corner, y down
};

/// One piece of a path that is a Bézier curve: start, two control points, end, mm.
using PdfCurve = std::array<QPointF, 4>;

/// One stroked path.
struct PdfStroke {
    double width = 0;           ///< mm
    std::vector<QLineF> lines;  ///< every piece, a curve by its chord
    std::vector<PdfCurve> curves{};
};

/// One filled path.
struct PdfFill {
    QRectF box;    ///< mm
    int gray = 0;  ///< 0 to 255
};

struct PdfPage {
    QSizeF size;  ///< mm
    std::vector<PdfText> texts;
    std::vector<PdfStroke> strokes;
    std::vector<PdfFill> fills;

    /// The first run that holds `text`; null: none does.
    [[nodiscard]] const PdfText* find(const QString& text) const;
    /// All runs, one a line.
    [[nodiscard]] QString allText() const;
};

/// The pages of a file, in order; empty if it is none of Qt's.
[[nodiscard]] std::vector<PdfPage> readPdf(const QByteArray& bytes);

}  // namespace bolthole::test
