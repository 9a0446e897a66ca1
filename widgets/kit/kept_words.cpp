#include "widgets/kit/kept_words.h"

#include <QCache>
#include <QFontMetricsF>
#include <QPainter>
#include <QStaticText>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

struct LineKey {
    QFont font;
    double height = 0;  // of its lines: fonts that differ in their device's resolution alone compare equal
    QString text;

    bool operator==(const LineKey&) const = default;
};

std::size_t qHash(const LineKey& key, std::size_t seed = 0) {
    return qHashMulti(seed, key.font, key.height, key.text);
}

struct Line {
    QSizeF size;
    QStaticText glyphs;
};

// A cache each thread: papers are also painted off the window's.
const Line& lineOf(const QFont& font, const QString& text) {
    constexpr qsizetype kMost = 600;  // several windows' worth; numbers that are past fall out
    static thread_local QCache<LineKey, Line> kept(kMost);
    const QFontMetricsF metrics(font);
    const LineKey key{font, metrics.height(), text};
    if (const Line* known = kept.object(key)) {
        return *known;
    }
    auto* line = new Line{{metrics.horizontalAdvance(text), metrics.height()}, QStaticText(text)};
    line->glyphs.setTextFormat(Qt::PlainText);
    line->glyphs.prepare(QTransform(), font);
    kept.insert(key, line);
    return *line;
}

}  // namespace

QSizeF sizeOfLine(const QFont& font, const QString& text) {
    return lineOf(font, text).size;
}

void drawLine(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text) {
    if (!takesPixels(painter)) {  // a file of lines and words has words
        painter.drawText(box, static_cast<int>(lie) | Qt::TextDontClip, text);
        return;
    }
    const Line& line = lineOf(painter.font(), text);
    const QSizeF& size = line.size;
    const double left = lie.testFlag(Qt::AlignRight)     ? box.right() - size.width()
                        : lie.testFlag(Qt::AlignHCenter) ? box.center().x() - size.width() / 2
                                                         : box.left();
    const double top = lie.testFlag(Qt::AlignBottom)    ? box.bottom() - size.height()
                       : lie.testFlag(Qt::AlignVCenter) ? box.center().y() - size.height() / 2
                                                        : box.top();
    painter.drawStaticText(QPointF(left, top), line.glyphs);
}

void drawLine(QPainter& painter, QPointF from, const QString& text) {
    if (!takesPixels(painter)) {
        painter.drawText(from, text);
        return;
    }
    const double ascent = QFontMetricsF(painter.font()).ascent();
    painter.drawStaticText(from - QPointF(0, ascent), lineOf(painter.font(), text).glyphs);
}

}  // namespace bolthole
