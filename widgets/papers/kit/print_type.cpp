#include "widgets/papers/kit/print_type.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <QRawFont>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

namespace bolthole {

namespace {

QFont familyFont(bool bold) {
    QFont font;
    font.setFamilies({QStringLiteral("Inter"), QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")});
    font.setWeight(bold ? QFont::Bold : QFont::Normal);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

bool isWords(const QString& text) {
    return std::ranges::all_of(text,
                               [](QChar c) { return c.isLetter() || c == ' ' || c == ',' || c == '.'; });
}

double lowestDigit(bool bold) {
    constexpr int kSize = 1000;
    QFont font = familyFont(bold);
    font.setPixelSize(kSize);
    const QRawFont raw = QRawFont::fromFont(font);
    double lowest = kSize;
    for (const quint32 glyph : raw.glyphIndexesForString(QStringLiteral("0123456789"))) {
        const double height = raw.pathForGlyph(glyph).boundingRect().height();
        lowest = height > 0 ? std::min(lowest, height) : lowest;
    }
    return lowest / kSize;
}

}  // namespace

PrintFonts::PrintFonts() : regularDigit_(lowestDigit(false)), boldDigit_(lowestDigit(true)) {}

QFont PrintFonts::font(PrintType type, const QString& text) const {
    QFont font = familyFont(type.bold);
    // Inter puts other shapes for signs beside digits, which a PDF of Qt's can't tell the characters of: they
    // would be lost to whoever searches or copies. Shaping is for words alone.
    font.setStyleStrategy(isWords(text) ? QFont::PreferDefault : QFont::PreferNoShaping);
    const double size = kPixelsPerMillimetre * type.digits / (type.bold ? boldDigit_ : regularDigit_);
    font.setPixelSize(static_cast<int>(std::ceil(size)));
    return font;
}

double PrintFonts::width(const QString& text, PrintType type) const {
    return QFontMetricsF(font(type, text)).horizontalAdvance(text) / kPixelsPerMillimetre;
}

double PrintFonts::widest(const QStringList& lines, PrintType type) const {
    double widest = 0;
    for (const QString& line : lines) {
        widest = std::max(widest, width(line, type));
    }
    return widest;
}

QStringList PrintFonts::wrapped(const QString& text, PrintType type, double width) const {
    if (text.isEmpty()) {
        return {};
    }
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    QTextLayout layout(text, font(type, text));
    layout.setTextOption(option);
    QStringList lines;
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width * kPixelsPerMillimetre);
        lines << text.mid(line.textStart(), line.textLength()).trimmed();
    }
    layout.endLayout();
    return lines;
}

PrintType PrintFonts::fitted(const QString& text, PrintType type, double width, double least) const {
    constexpr double kStep = 0.1;
    while (type.digits > least && this->width(text, type) > width) {
        type.digits = std::max(type.digits - kStep, least);
    }
    return type;
}

QString PrintFonts::elided(const QString& text, PrintType type, double width) const {
    return QFontMetricsF(font(type, text)).elidedText(text, Qt::ElideRight, width * kPixelsPerMillimetre);
}

void PrintFonts::draw(QPainter& painter, QPointF at, const QString& text, PrintType type,
                      Qt::AlignmentFlag alignment) const {
    const double width = alignment == Qt::AlignLeft ? 0 : this->width(text, type);
    const double before = alignment == Qt::AlignRight ? width : width / 2;
    painter.save();
    painter.translate(at.x() - (alignment == Qt::AlignLeft ? 0 : before), at.y());
    painter.scale(1 / kPixelsPerMillimetre, 1 / kPixelsPerMillimetre);
    painter.setFont(font(type, text));
    painter.drawText(QPointF(0, 0), text);
    painter.restore();
}

void PrintFonts::draw(QPainter& painter, QPointF at, const QStringList& lines, PrintType type,
                      Qt::AlignmentFlag alignment) const {
    for (const QString& line : lines) {
        draw(painter, at, line, type, alignment);
        at.ry() += type.leading();
    }
}

}  // namespace bolthole
