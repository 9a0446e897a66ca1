#include "widgets/papers/wall_chart_sheet.h"

#include <algorithm>

#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/kit/paper_text.h"
#include "widgets/papers/wall_chart_cells.h"
#include "widgets/papers/wall_chart_side.h"

namespace bolthole {

namespace {

constexpr double kNarrowKey = 0.34;  // of the sheet

// The steps of gray with what they stand for, in as many lines as the width asks for.
SheetBlock shadesBlock(const SheetFrame& frame, const PrintFonts& fonts, const ChartCombinations& chart,
                       const ChartWords& words, double width) {
    const PrintType type = frame.text;
    const QSizeF sample(2 * type.digits, 1.3 * type.digits);
    const double toWords = 2.6 * type.digits;
    std::vector<std::pair<QPointF, QString>> steps;  // by the left ends of their baselines
    QPointF at(0, 0.8 * type.leading());
    for (int step = 0; step < chart.shades.steps; ++step) {
        const QString said = words.shade(step);
        const double needed = toWords + fonts.width(said, type) + 1.6 * type.digits;
        if (at.x() > 0 && at.x() + needed > width) {
            at = QPointF(0, at.y() + type.leading());
        }
        steps.emplace_back(at, said);
        at.rx() += needed;
    }
    SheetBlock block;
    block.height = at.y() + 0.2 * type.leading();
    block.paint = [=, &fonts](QPainter& painter, const QRectF& box) {
        int step = 0;
        for (const auto& [place, said] : steps) {
            const QPointF base = box.topLeft() + place;
            painter.setPen(kitPen(kThinnestLine));
            painter.setBrush(shadeColor(step++, static_cast<int>(steps.size())));
            painter.drawRect(QRectF(base - QPointF(0, 1.15 * type.digits), sample));
            painter.setPen(Qt::black);
            fonts.draw(painter, base + QPointF(toWords, 0), said, type);
        }
    };
    return block;
}

// How to read the cells, the shades, the rods.
std::vector<SheetBlock> keyBlocks(const SheetFrame& frame, const PrintFonts& fonts,
                                  const ChartCombinations& chart, const ChartWords& words, double width) {
    std::vector<SheetBlock> blocks;
    const auto add = [&](const QString& said, PrintType type, double above) {
        blocks.push_back(wordsBlock(said, type, width, fonts));
        blocks.back().above = above;
    };
    // Narrow, the sentences run on as one paragraph.
    const QStringList sentences = words.legend();
    const bool isNarrow = width < kNarrowKey * frame.body.width();
    for (const QString& sentence : isNarrow ? QStringList{sentences.join(' ')} : sentences) {
        add(sentence, frame.text, 0);
    }
    const double between = 0.35 * frame.text.leading();
    if (chart.any() != nullptr) {
        add(tr("Shading, anti-squat in %"), frame.strong, between);
        blocks.push_back(shadesBlock(frame, fonts, chart, words, width));
    }
    add(tr("Rods"), frame.strong, between);
    for (const QString& line : words.rodLines()) {
        add(line, frame.text, 0);
    }
    return blocks;
}

}  // namespace

double keyTextHeight(const SheetFrame& frame, const PrintFonts& fonts, const ChartCombinations& chart,
                     const ChartWords& words, double width) {
    const std::vector<SheetBlock> blocks = keyBlocks(frame, fonts, chart, words, width);
    return stacked(blocks, width).back().box.bottom() + 1.5 * frame.text.leading();
}

SheetPainter::SheetPainter(QPainter& painter, const SheetFrame& frame, const PrintFonts& fonts,
                           const ChartCombinations& chart, const ChartWords& words, const ChartLayout& layout)
    : painter_(painter), frame_(frame), fonts_(fonts), chart_(chart), words_(words), layout_(layout) {}

void SheetPainter::paintFrame(const Car& car, QDate date, int index) {
    SheetTitle title = titleOf(car.title, tr("which holes"));
    if (layout_.sheets.size() > 1) {
        const QSizeF box(4.2, std::min(3.0, 3.8 * frame_.text.digits / layout_.sheetsDown));
        title.clear = layout_.sheetsAcross * box.width() + 3;
        paintMap({frame_.around.body().width() - title.clear + 3, 0.4}, box, index);
    }
    const auto count = static_cast<int>(layout_.sheets.size());
    title.asides = {{date.toString(Qt::ISODate)},
                    {sheetWords(index, count) + partWords(layout_.sheets[static_cast<std::size_t>(index)])}};
    frame_.around.paint(painter_, title);
    paintFacts();
}

QString SheetPainter::partWords(const ChartSheet& sheet) const {
    const auto range = [](int first, int count, int all) {
        const QString from = QString::number(first + 1);
        return (count == 1 ? from : tr("%1 to %2").arg(from).arg(first + count)) + tr(" of %1").arg(all);
    };
    if (layout_.sheets.size() == 1) {
        return {};
    }
    if (sheet.rows == 0) {
        return tr(": side view and key");
    }
    if (!chart_.axes.isMatrix()) {
        return tr(": combinations ") + range(sheet.firstRow, sheet.rows, chart_.rows);
    }
    return tr(": rows ") + range(sheet.firstRow, sheet.rows, chart_.rows) + tr(", columns ") +
           range(sheet.firstColumn, sheet.columns, chart_.columns);
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

void SheetPainter::paintKeyText(QPointF at, double width) {
    const std::vector<SheetBlock> blocks = keyBlocks(frame_, fonts_, chart_, words_, width);
    paintPage(painter_, stacked(blocks, width), at);
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
        painter_.setPen(kitPen(kThinnestLine));
        painter_.setBrush(static_cast<int>(index) == current ? Qt::black : Qt::white);
        painter_.drawRect(one);
        if (hasRoom) {
            const QString number = QString::number(index + 1) + (isNowOn(sheet) ? tr(" NOW") : QString());
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
        paintKeyText({key.left(), picture.bottom + gap - 0.4 * frame_.text.digits}, key.width());
        return;
    }
    const double textWidth = 0.36 * key.width();
    const QRectF area = key.adjusted(0, 0, -textWidth - 2 * gap, 0);
    drawSidePicture(painter_, area, frame_, fonts_, car, words_);
    const QPointF at(key.right() - textWidth, key.top() + gap);
    paintKeyText(at, textWidth);
    const double mapTop = at.y() + keyTextHeight(frame_, fonts_, chart_, words_, textWidth);
    fonts_.draw(painter_, {at.x(), mapTop}, tr("The sheets as they hang"), frame_.strong);
    const double room = key.bottom() - mapTop - frame_.text.leading();
    const QSizeF box(std::min(8.8 * frame_.text.digits, textWidth / layout_.sheetsAcross),
                     std::min(3.2 * frame_.text.digits, room / layout_.sheetsDown));
    paintMap({at.x(), mapTop + 0.7 * frame_.text.leading()}, box, -1);
}

}  // namespace bolthole
