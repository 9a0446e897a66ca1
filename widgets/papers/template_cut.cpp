#include "widgets/papers/template_cut.h"

#include <algorithm>
#include <array>

#include "widgets/kit/translation.h"
#include "widgets/papers/drilling_template.h"

namespace bolthole {

namespace {

constexpr double kMargin = 6;  // mm around the bracket
constexpr double kCross = 3;   // half of a center's cross
constexpr double kLaserLine = 0.1;
constexpr double kNoteSize = 3;  // of the type of the notes
constexpr double kNoteLine = 4;  // from one line of theirs to the next

/// All that is cut or marked, mm, y down.
QRectF cutBox(const TemplateScene& scene) {
    QRectF box;
    const auto add = [&box](QPointF at, double reach) {
        box |= QRectF(at - QPointF(reach, reach), QSizeF(2 * reach, 2 * reach));
    };
    for (const QPointF& corner : scene.outline) {
        add(corner, 0.001);
    }
    for (const TemplateHole& hole : scene.holes) {
        add(hole.at, std::max(scene.diameter / 2, kCross));
    }
    return box;
}

/// A text in lines of at most `most` characters, but for a longer word.
QStringList linesOf(const QString& text, qsizetype most) {
    QStringList lines;
    for (const QString& word : text.split(u' ', Qt::SkipEmptyParts)) {
        if (lines.isEmpty() || lines.last().size() + 1 + word.size() > most) {
            lines << word;
        } else {
            lines.last() += u' ' + word;
        }
    }
    return lines;
}

QByteArray asciiOf(const QString& text) {
    QByteArray ascii;
    for (const QChar each : text) {
        const bool isPlain = each.unicode() >= 0x20 && each.unicode() < 0x7F;
        ascii += isPlain ? static_cast<char>(each.unicode()) : '?';
    }
    return ascii;
}

QByteArray decimals(double value) {
    const QByteArray text = QByteArray::number(value, 'f', 4);
    return text == "-0.0000" ? QByteArray("0.0000") : text;
}

/// Writes the groups of a DXF file, a code and a value each.
class DxfWriter {
  public:
    explicit DxfWriter(Units units) : perUnit_(units == Units::inch ? kMillimetresPerInch : 1.0) {}

    void put(int code, const QByteArray& value) {
        bytes_ += QByteArray::number(code).rightJustified(3) + "\r\n" + value + "\r\n";
    }
    /// A point of the scene: x and y in the file's unit, y up.
    void point(QPointF at, int code = 10) {
        put(code, decimals(at.x() / perUnit_));
        put(code + 10, decimals(-at.y() / perUnit_));
        put(code + 20, decimals(0));
    }
    void length(int code, double millimetres) { put(code, decimals(millimetres / perUnit_)); }
    void begin(const QByteArray& section) {
        put(0, "SECTION");
        put(2, section);
    }
    void end() { put(0, "ENDSEC"); }
    void entity(const QByteArray& kind, const char* layer) {
        put(0, kind);
        put(8, layer);
    }
    [[nodiscard]] QByteArray finished() {
        put(0, "EOF");
        return bytes_;
    }

    static constexpr double kMillimetresPerInch = 25.4;

  private:
    QByteArray bytes_;
    double perUnit_;
};

void writeHeader(DxfWriter& dxf, const TemplateScene& scene, Units units) {
    dxf.put(999, units == Units::inch ? "inches, 1:1" : "millimeters, 1:1");
    dxf.put(999, scene.face == TemplateFace::left ? "seen from the left, front of the car at the left"
                                                  : "seen from the right, front of the car at the right");
    dxf.put(999,
            "measure the line on layer CHECK before you cut; bracket strength is for a qualified person");
    constexpr qsizetype kCommentLine = 200;  // a value of that release has 255 characters at most
    for (const QString& line : linesOf(scene.starts, kCommentLine)) {
        dxf.put(999, asciiOf(line));
    }
    const QRectF box = cutBox(scene);
    dxf.begin("HEADER");
    dxf.put(9, "$ACADVER");
    dxf.put(1, "AC1009");
    dxf.put(9, "$EXTMIN");
    dxf.point(box.bottomLeft());
    dxf.put(9, "$EXTMAX");
    dxf.point(box.topRight());
    dxf.end();
}

void writeTables(DxfWriter& dxf) {
    struct Layer {
        const char* name;
        int color;
    };
    constexpr std::array<Layer, 5> kLayers{{{cut_layer::kOutline, 7},
                                            {cut_layer::kHoles, 7},
                                            {cut_layer::kPlanned, 1},
                                            {cut_layer::kCenters, 8},
                                            {cut_layer::kCheck, 5}}};
    dxf.begin("TABLES");
    dxf.put(0, "TABLE");
    dxf.put(2, "LTYPE");
    dxf.put(70, "1");
    dxf.put(0, "LTYPE");
    dxf.put(2, "CONTINUOUS");
    dxf.put(70, "0");
    dxf.put(3, "Solid line");
    dxf.put(72, "65");
    dxf.put(73, "0");
    dxf.put(40, "0.0");
    dxf.put(0, "ENDTAB");
    dxf.put(0, "TABLE");
    dxf.put(2, "LAYER");
    dxf.put(70, QByteArray::number(static_cast<int>(kLayers.size())));
    for (const Layer& layer : kLayers) {
        dxf.put(0, "LAYER");
        dxf.put(2, layer.name);
        dxf.put(70, "0");
        dxf.put(62, QByteArray::number(layer.color));
        dxf.put(6, "CONTINUOUS");
    }
    dxf.put(0, "ENDTAB");
    dxf.end();
}

void writeOutline(DxfWriter& dxf, const std::vector<QPointF>& outline) {
    if (outline.empty()) {
        return;
    }
    dxf.entity("POLYLINE", cut_layer::kOutline);
    dxf.put(66, "1");  // vertices follow
    dxf.put(70, "1");  // closed
    dxf.point({0, 0});
    for (const QPointF& corner : outline) {
        dxf.entity("VERTEX", cut_layer::kOutline);
        dxf.point(corner);
    }
    dxf.entity("SEQEND", cut_layer::kOutline);
}

void writeHoles(DxfWriter& dxf, const TemplateScene& scene) {
    for (const TemplateHole& hole : scene.holes) {
        if (scene.diameter > 0) {
            dxf.entity("CIRCLE", hole.planned ? cut_layer::kPlanned : cut_layer::kHoles);
            dxf.point(hole.at);
            dxf.length(40, scene.diameter / 2);
        }
        dxf.entity("POINT", cut_layer::kCenters);
        dxf.point(hole.at);
    }
}

QByteArray svgCircle(const TemplateHole& hole, double diameter) {
    return QByteArray("    <circle id=\"hole-") + QByteArray::number(hole.number) + "\" cx=\"" +
           decimals(hole.at.x()) + "\" cy=\"" + decimals(hole.at.y()) + "\" r=\"" + decimals(diameter / 2) +
           "\"/>\n";
}

QByteArray svgLine(QPointF from, QPointF to) {
    return "    <line x1=\"" + decimals(from.x()) + "\" y1=\"" + decimals(from.y()) + "\" x2=\"" +
           decimals(to.x()) + "\" y2=\"" + decimals(to.y()) + "\"/>\n";
}

/// What nobody measured, in lines that fit `width`, mm, in any usual font.
QStringList noteLines(const TemplateScene& scene, double width) {
    constexpr double kWidestLetter = 0.7;  // of the type's size, as a mean over a line
    return linesOf(scene.starts, static_cast<qsizetype>(width / (kWidestLetter * kNoteSize)));
}

/// Filled text without a stroke: a laser follows lines.
QByteArray svgNotes(const QStringList& lines, QPointF at) {
    if (lines.isEmpty()) {
        return {};
    }
    QByteArray text;
    for (qsizetype line = 0; line < lines.size(); ++line) {
        text += "    <text x=\"" + decimals(at.x()) + "\" y=\"" +
                decimals(at.y() + static_cast<double>(line) * kNoteLine) + "\">" +
                lines[line].toHtmlEscaped().toUtf8() + "</text>\n";
    }
    return QByteArray("  <g id=\"") + cut_layer::kNotes + "\" stroke=\"none\" fill=\"#808080\" " +
           "font-family=\"sans-serif\" font-size=\"" + decimals(kNoteSize) + "\">\n" + text + "  </g>\n";
}

QByteArray svgGroup(const char* name, const char* color, const QByteArray& inside) {
    return inside.isEmpty()
               ? QByteArray()
               : QByteArray("  <g id=\"") + name + "\" stroke=\"" + color + "\">\n" + inside + "  </g>\n";
}

QByteArray svgOutline(const std::vector<QPointF>& outline) {
    QByteArray path;
    for (const QPointF& corner : outline) {
        path += (path.isEmpty() ? "M " : " L ") + decimals(corner.x()) + ' ' + decimals(corner.y());
    }
    return path.isEmpty() ? path : "    <path d=\"" + path + " Z\"/>\n";
}

}  // namespace

double cutCheckLength(Units units) {
    return units == Units::inch ? 4 * DxfWriter::kMillimetresPerInch : 100.0;
}

QByteArray templateSvg(const TemplateScene& scene, const QString& title) {
    QRectF box = cutBox(scene);
    const QPointF check = box.bottomLeft() + QPointF(0, 2 * kMargin);
    box.setRight(std::max(box.right(), check.x() + cutCheckLength(Units::metric)));
    const QStringList notes = noteLines(scene, box.width());
    box.setBottom(check.y() +
                  (notes.isEmpty() ? 0.0 : kMargin + static_cast<double>(notes.size()) * kNoteLine));
    box.adjust(-kMargin, -kMargin, kMargin, kMargin);
    QByteArray holes;
    QByteArray planned;
    QByteArray centers;
    for (const TemplateHole& hole : scene.holes) {
        if (scene.diameter > 0) {
            (hole.planned ? planned : holes) += svgCircle(hole, scene.diameter);
        }
        centers += svgLine(hole.at - QPointF(kCross, 0), hole.at + QPointF(kCross, 0));
        centers += svgLine(hole.at - QPointF(0, kCross), hole.at + QPointF(0, kCross));
    }
    const QByteArray size =
        "width=\"" + decimals(box.width()) + "mm\" height=\"" + decimals(box.height()) + "mm\"";
    const QByteArray view = "viewBox=\"" + decimals(box.left()) + ' ' + decimals(box.top()) + ' ' +
                            decimals(box.width()) + ' ' + decimals(box.height()) + "\"";
    const QString what = QStringLiteral("%1: %2").arg(title.simplified(), scene.bracketWords.simplified());
    QString how =
        tr("%1. 1:1; the line in group CHECK is 100 mm long. %2.").arg(scene.faceWords, tr(kTemplateCaution));
    if (!scene.starts.isEmpty()) {
        how += u' ' + scene.starts + u'.';
    }
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
           "version=\"1.1\" " +
           size + ' ' + view + " fill=\"none\" stroke-width=\"" + decimals(kLaserLine) + "\">\n  <title>" +
           what.toHtmlEscaped().toUtf8() + "</title>\n  <desc>" + how.toHtmlEscaped().toUtf8() + "</desc>\n" +
           svgGroup(cut_layer::kOutline, "#000000", svgOutline(scene.outline)) +
           svgGroup(cut_layer::kHoles, "#000000", holes) + svgGroup(cut_layer::kPlanned, "#d00000", planned) +
           svgGroup(cut_layer::kCenters, "#808080", centers) +
           svgGroup(cut_layer::kCheck, "#0000d0",
                    svgLine(check, check + QPointF(cutCheckLength(Units::metric), 0))) +
           svgNotes(notes, check + QPointF(0, kMargin)) + "</svg>\n";
}

QByteArray templateDxf(const TemplateScene& scene, Units units) {
    DxfWriter dxf(units);
    writeHeader(dxf, scene, units);
    writeTables(dxf);
    dxf.begin("ENTITIES");
    writeOutline(dxf, scene.outline);
    writeHoles(dxf, scene);
    const QPointF check = cutBox(scene).bottomLeft() + QPointF(0, 2 * kMargin);
    dxf.entity("LINE", cut_layer::kCheck);
    dxf.point(check);
    dxf.point(check + QPointF(cutCheckLength(units), 0), 11);
    dxf.end();
    return dxf.finished();
}

}  // namespace bolthole
