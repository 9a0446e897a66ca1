#include "widgets/papers/wall_chart_sheet.h"

#include <algorithm>

#include "widgets/papers/wall_chart_cells.h"
#include "widgets/papers/wall_chart_side.h"

namespace bolthole {

namespace {

/// Where the parts of the key's text stand, from its upper left corner.
struct KeyText {
    QStringList legend;
    double legendAt = 0;          // first baseline
    std::vector<QPointF> shades;  // left end of each step's baseline
    double shadeTitleAt = 0;
    QStringList rods;
    double rodTitleAt = 0;
    double height = 0;
};

constexpr double kNarrowKey = 0.34;  // of the sheet

double shadeWidth(const PrintFonts& fonts, PrintType type, const QString& words) {
    return 2.6 * type.digits + fonts.width(words, type) + 1.6 * type.digits;
}

QStringList brokenInto(const QStringList& sentences, const PrintFonts& fonts, PrintType type, double width) {
    QStringList lines;
    for (const QString& sentence : sentences) {
        lines << fonts.wrapped(sentence, type, width);
    }
    return lines;
}

KeyText keyTextOf(const SheetFrame& frame, const PrintFonts& fonts, const ChartChoices& chart,
                  const ChartWords& words, double width) {
    const double line = frame.text.leading();
    KeyText text;
    // Narrow, the sentences run on as one paragraph.
    const QStringList sentences = words.legend();
    text.legend =
        brokenInto(width < kNarrowKey * frame.page.width() ? QStringList{sentences.join(' ')} : sentences,
                   fonts, frame.text, width);
    text.legendAt = frame.text.digits;
    double y = text.legendAt + static_cast<double>(text.legend.size()) * line + 0.5 * line;
    if (chart.any() != nullptr) {
        text.shadeTitleAt = y;
        QPointF at(0, y + line);
        for (int step = 0; step < chart.shades.steps; ++step) {
            const double needed = shadeWidth(fonts, frame.text, words.shade(step));
            if (at.x() > 0 && at.x() + needed > width) {
                at = QPointF(0, at.y() + line);
            }
            text.shades.push_back(at);
            at.rx() += needed;
        }
        y = at.y() + 1.5 * line;
    }
    text.rods = brokenInto(words.rodLines(), fonts, frame.text, width);
    text.rodTitleAt = y;
    text.height = y + static_cast<double>(text.rods.size()) * line + frame.text.descent();
    return text;
}

}  // namespace

double keyTextHeight(const SheetFrame& frame, const PrintFonts& fonts, const ChartChoices& chart,
                     const ChartWords& words, double width) {
    return keyTextOf(frame, fonts, chart, words, width).height + 1.5 * frame.text.leading();
}

SheetPainter::SheetPainter(QPainter& painter, const SheetFrame& frame, const PrintFonts& fonts,
                           const ChartChoices& chart, const ChartWords& words, const ChartLayout& layout)
    : painter_(painter), frame_(frame), fonts_(fonts), chart_(chart), words_(words), layout_(layout) {}

void SheetPainter::rule(double y, double width) {
    painter_.setPen(QPen(Qt::black, width, Qt::SolidLine, Qt::FlatCap));
    painter_.drawLine(QPointF(0, y), QPointF(frame_.page.width(), y));
}

void SheetPainter::paintFrame(const Car& car, QDate date, int index) {
    paintTitle(car, date, index);
    paintFacts();
    paintFoot();
}

QString SheetPainter::partWords(const ChartSheet& sheet) const {
    const auto range = [](int first, int count, int all) {
        const QString from = QString::number(first + 1);
        return (count == 1 ? from : QStringLiteral("%1 to %2").arg(from).arg(first + count)) +
               QStringLiteral(" of %1").arg(all);
    };
    if (layout_.sheets.size() == 1) {
        return {};
    }
    if (sheet.rows == 0) {
        return QStringLiteral(": side view and key");
    }
    if (!chart_.axes.isMatrix()) {
        return QStringLiteral(": combinations ") + range(sheet.firstRow, sheet.rows, chart_.rows);
    }
    return QStringLiteral(": rows ") + range(sheet.firstRow, sheet.rows, chart_.rows) +
           QStringLiteral(", columns ") + range(sheet.firstColumn, sheet.columns, chart_.columns);
}

void SheetPainter::paintTitle(const Car& car, QDate date, int index) {
    const double right = frame_.page.width();
    const bool hasMap = layout_.sheets.size() > 1;
    painter_.setPen(Qt::black);
    double textRight = right;
    if (hasMap) {
        const QSizeF box(4.2, std::min(3.0, 9.5 * frame_.factor / layout_.sheetsDown));
        textRight -= layout_.sheetsAcross * box.width() + 3;
        paintMap({textRight + 3, 0.4}, box, index);
    }
    const QString sheet = QStringLiteral("sheet %1 of %2").arg(index + 1).arg(layout_.sheets.size()) +
                          partWords(layout_.sheets[static_cast<std::size_t>(index)]);
    painter_.setPen(Qt::black);
    const double second = frame_.rule - startingHeight(frame_) - 1.2 * frame_.text.digits;
    fonts_.draw(painter_, {textRight, second - frame_.text.leading()}, date.toString(Qt::ISODate),
                frame_.text, Qt::AlignRight);
    fonts_.draw(painter_, {textRight, second}, sheet, frame_.text, Qt::AlignRight);
    const QString name = QString::fromStdString(car.title).simplified();
    QString title = name.isEmpty() ? QStringLiteral("Which holes") : name + QStringLiteral(": which holes");
    const double room = textRight - fonts_.width(sheet, frame_.text) - 8;
    PrintType type{6.2 * frame_.factor, true};
    while (type.digits > 3.5 && fonts_.width(title, type) > room) {
        type.digits -= 0.25;
    }
    title = fonts_.width(title, type) > room ? fonts_.elided(name, type, room) : title;
    fonts_.draw(painter_, {0, second}, title, type);
    if (startingHeight(frame_) > 0) {
        fonts_.draw(painter_, {0, second + frame_.text.leading() + 0.2 * frame_.text.digits}, frame_.starting,
                    frame_.strong);
    }
    rule(frame_.rule, 0.6);
}

void SheetPainter::paintFacts() {
    for (std::size_t i = 0; i < frame_.facts.size(); ++i) {
        const QPointF at = frame_.factPlaces[i];
        painter_.setPen(QColor(70, 70, 70));
        fonts_.draw(painter_, at, frame_.facts[i].label, frame_.text);
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, at + QPointF(0, frame_.text.leading()), frame_.facts[i].value, frame_.strong);
    }
    fonts_.draw(painter_, {0, frame_.treatmentAt}, frame_.treatment, frame_.text);
}

void SheetPainter::paintFoot() {
    rule(frame_.foot, 0.3);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {0, frame_.foot + 2.2 * frame_.text.digits}, frame_.caution, frame_.text);
    paintScaleBar();
}

void SheetPainter::paintScaleBar() {
    const double right = frame_.page.width() - 0.3;
    const double left = right - frame_.barLength;
    const double y = frame_.page.height() - 2;
    painter_.setPen(QPen(Qt::black, 0.5, Qt::SolidLine, Qt::FlatCap));
    painter_.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, (left + right) / 2, right}) {
        painter_.drawLine(QPointF(x, y - 1.6), QPointF(x, y + 1.6));
    }
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {(left + right) / 2, y - 2 - frame_.text.descent()}, frame_.barWords, frame_.text,
                Qt::AlignHCenter);
}

void SheetPainter::paintShade(QPointF at, int step) {
    const QRectF box(at.x(), at.y() - 1.15 * frame_.text.digits, 2 * frame_.text.digits,
                     1.3 * frame_.text.digits);
    painter_.setPen(QPen(Qt::black, kThinnestLine));
    painter_.setBrush(shadeColor(step, chart_.shades.steps));
    painter_.drawRect(box);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {at.x() + 2.6 * frame_.text.digits, at.y()}, words_.shade(step), frame_.text);
}

void SheetPainter::paintKeyText(QPointF at, double width) {
    const KeyText text = keyTextOf(frame_, fonts_, chart_, words_, width);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, at + QPointF(0, text.legendAt), text.legend, frame_.text);
    if (!text.shades.empty()) {
        fonts_.draw(painter_, at + QPointF(0, text.shadeTitleAt), QStringLiteral("Shading, anti-squat in %"),
                    frame_.strong);
    }
    for (std::size_t step = 0; step < text.shades.size(); ++step) {
        paintShade(at + text.shades[step], static_cast<int>(step));
    }
    fonts_.draw(painter_, at + QPointF(0, text.rodTitleAt), QStringLiteral("Rods"), frame_.strong);
    fonts_.draw(painter_, at + QPointF(0, text.rodTitleAt + frame_.text.leading()), text.rods, frame_.text);
}

bool SheetPainter::isNowOn(const ChartSheet& sheet) const {
    return chart_.now && sheet.rows > 0 && chart_.now->first >= sheet.firstRow &&
           chart_.now->first < sheet.firstRow + sheet.rows && chart_.now->second >= sheet.firstColumn &&
           chart_.now->second < sheet.firstColumn + sheet.columns;
}

// The sheets with cells as they hang together; `current` is filled. Gives where it ends.
double SheetPainter::paintMap(QPointF at, QSizeF box, int current) {
    const bool hasRoom = box.height() > 1.6 * frame_.text.digits;
    int place = 0;
    for (std::size_t index = 0; index < layout_.sheets.size(); ++index) {
        const ChartSheet& sheet = layout_.sheets[index];
        if (sheet.rows == 0) {
            continue;
        }
        const int across = place % layout_.sheetsAcross;
        const int down = place / layout_.sheetsAcross;
        const QRectF one(at + QPointF(across * box.width(), down * box.height()), box - QSizeF(0.7, 0.7));
        painter_.setPen(QPen(Qt::black, kThinnestLine, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter_.setBrush(static_cast<int>(index) == current ? Qt::black : Qt::white);
        painter_.drawRect(one);
        if (hasRoom) {
            const QString number =
                QString::number(index + 1) + (isNowOn(sheet) ? QStringLiteral(" NOW") : QString());
            painter_.setPen(Qt::black);
            fonts_.draw(painter_, {one.center().x(), one.center().y() + frame_.text.digits / 2}, number,
                        isNowOn(sheet) ? frame_.strong : frame_.text, Qt::AlignHCenter);
        }
        ++place;
    }
    return at.y() + layout_.sheetsDown * box.height();
}

void SheetPainter::paintKey(const Car& car) {
    const QRectF& key = layout_.key;
    const bool standsAlone = layout_.sheets.size() > 1;
    const double gap = 1.5 * frame_.text.leading();
    if (!standsAlone) {
        const double textHeight = keyTextHeight(frame_, fonts_, chart_, words_, key.width());
        const QRectF area = key.adjusted(0, 0, 0, -textHeight);
        const SidePicture picture = drawSidePicture(painter_, area, frame_, fonts_, car, words_);
        paintKeyText({key.left(), picture.bottom + gap}, key.width());
        return;
    }
    const double textWidth = 0.36 * key.width();
    const QRectF area = key.adjusted(0, 0, -textWidth - 2 * gap, 0);
    drawSidePicture(painter_, area, frame_, fonts_, car, words_);
    const QPointF at(key.right() - textWidth, key.top() + gap);
    paintKeyText(at, textWidth);
    const double mapTop = at.y() + keyTextHeight(frame_, fonts_, chart_, words_, textWidth);
    fonts_.draw(painter_, {at.x(), mapTop}, QStringLiteral("The sheets as they hang"), frame_.strong);
    const double room = key.bottom() - mapTop - frame_.text.leading();
    const QSizeF box(std::min(22.0 * frame_.factor, textWidth / layout_.sheetsAcross),
                     std::min(8.0 * frame_.factor, room / layout_.sheetsDown));
    paintMap({at.x(), mapTop + 0.7 * frame_.text.leading()}, box, -1);
}

}  // namespace bolthole
