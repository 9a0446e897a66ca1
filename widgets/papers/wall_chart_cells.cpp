#include "widgets/papers/wall_chart_cells.h"

#include <algorithm>
#include <numeric>

#include "widgets/kit/pens.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

constexpr double kFrame = 0.3;     // mm
constexpr double kNowFrame = 1.5;  // mm
constexpr int kDarkest = 178;      // gray of the last step; black on it stands out 9 to 1

// The two strokes of a cross, and a white plate under them.
void drawCross(QPainter& painter, const QRectF& plate) {
    painter.fillRect(plate, Qt::white);
    const double inset = plate.height() * 0.25;
    const QRectF cross = plate.adjusted(inset, inset, -inset, -inset);
    painter.setPen(kitPen(plate.height() * 0.14));
    painter.drawLine(cross.topLeft(), cross.bottomRight());
    painter.drawLine(cross.bottomLeft(), cross.topRight());
}

}  // namespace

QColor shadeColor(int step, int steps) {
    const int gray = 255 - (255 - kDarkest) * step / std::max(steps - 1, 2);
    return {gray, gray, gray};
}

void drawHatching(QPainter& painter, const QRectF& box) {
    constexpr double kPitch = 1.7;
    painter.setPen(kitPen(kThinnestLine));
    for (double x = box.left() - box.height() + kPitch; x < box.right(); x += kPitch) {
        const QLineF line(x, box.bottom(), x + box.height(), box.top());
        if (const std::optional<QLineF> part = clipped(line, box)) {
            painter.drawLine(*part);
        }
    }
}

CellPainter::CellPainter(QPainter& painter, const PrintFonts& fonts, const ChartCombinations& chart,
                         const ChartWords& words, const ChartLayout& layout)
    : painter_(painter),
      fonts_(fonts),
      chart_(chart),
      words_(words),
      layout_(layout),
      small_(PrintType{}.scaled(CellMeasure::small(layout.scale))),
      name_(CellMeasure::name(layout.scale)) {}

void CellPainter::paint(const ChartSheet& sheet) {
    if (sheet.rows == 0) {
        return;
    }
    painter_.setPen(Qt::black);
    paintTitles(sheet);
    if (chart_.axes.isMatrix()) {
        paintMatrix(sheet);
    } else {
        paintList(sheet);
    }
}

void CellPainter::paintMatrix(const ChartSheet& sheet) {
    for (int row = 0; row < sheet.rows; ++row) {
        paintRowHeading(layout_.cellAt(row, 0), sheet.firstRow + row);
        for (int column = 0; column < sheet.columns; ++column) {
            paintCell(layout_.cellAt(row, column), sheet.firstRow + row, sheet.firstColumn + column);
        }
    }
    for (int column = 0; column < sheet.columns; ++column) {
        paintColumnHeading(layout_.cellAt(0, column), sheet.firstColumn + column);
    }
}

void CellPainter::paintList(const ChartSheet& sheet) {
    for (int place = 0; place < sheet.rows; ++place) {
        paintCell(layout_.cellAt(place / layout_.across, place % layout_.across), sheet.firstRow + place, 0);
    }
}

void CellPainter::paintTitles(const ChartSheet& sheet) {
    const PrintType strong{small_.digits * 1.1, true};
    const QRectF first = layout_.cellAt(0, 0);
    if (!chart_.axes.isMatrix()) {
        const QString title = words_.title(chart_.axes.down);
        fonts_.draw(painter_, {first.left(), first.top() - 1.2 * small_.digits},
                    fonts_.elided(title, strong, layout_.matrix.width()), strong);
        return;
    }
    const QRectF last = layout_.cellAt(0, sheet.columns - 1);
    const double width = last.right() - first.left();
    fonts_.draw(painter_, {(first.left() + last.right()) / 2, layout_.matrix.top() + strong.digits},
                fonts_.elided(words_.title(chart_.axes.across), strong, width), strong, Qt::AlignHCenter);
    const QStringList lines =
        CellMeasure::rowTitle(words_.title(chart_.axes.down), fonts_, layout_.scale, layout_.rowHeading);
    const double top =
        first.top() - 1.2 * small_.digits - static_cast<double>(lines.size() - 1) * small_.leading();
    fonts_.draw(painter_, {layout_.matrix.left(), top}, lines, {small_.digits, true});
}

void CellPainter::paintName(QPointF at, const HoleWords& name, Qt::AlignmentFlag alignment, double width) {
    const QString label = name.label.isEmpty() ? QString() : name.label + ' ';
    const double labelWidth = fonts_.width(label, small_);
    const QString hole = fonts_.elided(name.hole, name_, std::max(width - labelWidth, 4.0));
    if (alignment == Qt::AlignHCenter) {
        at.rx() -= (labelWidth + fonts_.width(hole, name_)) / 2;
    }
    fonts_.draw(painter_, at, label, small_);
    fonts_.draw(painter_, at + QPointF(labelWidth, 0), hole, name_);
}

void CellPainter::paintRowHeading(const QRectF& cell, int row) {
    const std::vector<HoleWords> names = words_.holes(chart_.axes.down, row);
    const std::vector<LengthWords> lengths = words_.rowLengths(row);
    QStringList lines;
    for (const LengthWords& length : lengths) {
        lines << length.length << length.work;
    }
    lines.removeAll(QString());
    const double height = static_cast<double>(names.size()) * name_.leading() +
                          static_cast<double>(lines.size()) * small_.leading();
    QPointF at(layout_.matrix.left(), cell.center().y() - height / 2 + 0.7 * name_.leading());
    for (const HoleWords& name : names) {
        paintName(at, name, Qt::AlignLeft, layout_.rowHeading - CellMeasure::kHeadingPad);
        at.ry() += name_.leading();
    }
    at.ry() -= name_.leading() - small_.leading() - 0.2 * small_.digits;
    fonts_.draw(painter_, at, lines, small_);
}

// Stands on the cells: lengths lowest, the names above them.
void CellPainter::paintColumnHeading(const QRectF& cell, int column) {
    QStringList lines;
    for (const LengthWords& length : words_.columnLengths(column)) {
        lines << length.length << length.work;
    }
    lines.removeAll(QString());
    QPointF at(cell.center().x(), cell.top() - 0.6 * small_.leading());
    for (auto line = lines.rbegin(); line != lines.rend(); ++line) {
        fonts_.draw(painter_, at, *line, small_, Qt::AlignHCenter);
        at.ry() -= small_.leading();
    }
    at.ry() -= lines.isEmpty() ? 0 : 0.2 * small_.digits;
    const auto names =
        CellMeasure::linesOf(words_.holes(chart_.axes.across, column), fonts_, layout_.scale, cell.width());
    for (auto line = names.rbegin(); line != names.rend(); ++line) {
        paintNameLine(at, *line, cell.width());
        at.ry() -= name_.leading();
    }
}

// Several names beside each other, around a point.
void CellPainter::paintNameLine(QPointF at, const std::vector<HoleWords>& names, double width) {
    if (names.size() == 1) {
        paintName(at, names.front(), Qt::AlignHCenter, width);
        return;
    }
    const double gap = CellMeasure::nameGap(layout_.scale);
    double all = -gap;
    for (const HoleWords& name : names) {
        all += gap + CellMeasure::nameWidth(name, fonts_, layout_.scale);
    }
    at.rx() -= all / 2;
    for (const HoleWords& name : names) {
        paintName(at, name, Qt::AlignLeft, width);
        at.rx() += gap + CellMeasure::nameWidth(name, fonts_, layout_.scale);
    }
}

void CellPainter::paintCell(const QRectF& box, int row, int column) {
    const HoleCombination& combination = chart_.at(row, column);
    const bool isNow = chart_.isNow(row, column);
    CellWords words = words_.cell(row, column);
    const QStringList below = CellMeasure::problemsBelow(words, isNow, fonts_, layout_.scale, box.width());
    paintGround(box, combination, isNow);
    const double left = isNow ? box.left() + paintNow(box) : box.left() + kFrame;
    if (!words.problems.isEmpty()) {
        const QString inStrip = below.size() < words.problems.size() ? words.problems.front() : QString();
        const double inset = isNow ? kNowFrame : kFrame;
        paintProblem(
            QRectF(QPointF(left, box.top() + inset), QPointF(box.right() - inset, box.top() + layout_.strip)),
            inStrip);
    }
    painter_.setPen(Qt::black);
    words.problems = below;
    paintFigures(box, words,
                 chart_.axes.isMatrix() ? std::vector<HoleWords>() : words_.holes(chart_.axes.down, row));
}

void CellPainter::paintGround(const QRectF& box, const HoleCombination& combination, bool isNow) {
    const int step = combination.assembled ? chart_.shades.stepOf(combination[Figure::antiSquat]) : 0;
    painter_.fillRect(box, shadeColor(step, chart_.shades.steps));
    const double width = isNow ? kNowFrame : kFrame;
    painter_.setPen(kitPen(width));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawRect(box.adjusted(width / 2, width / 2, -width / 2, -width / 2));
}

// White on black; gives its width.
double CellPainter::paintNow(const QRectF& box) {
    const double width = CellMeasure::nowTag(fonts_, layout_.scale);
    painter_.fillRect(QRectF(box.topLeft(), QSizeF(width, layout_.strip)), Qt::black);
    painter_.setPen(Qt::white);
    fonts_.draw(painter_, box.topLeft() + QPointF(width / 2, (layout_.strip + small_.digits) / 2), tr("NOW"),
                {small_.digits, true}, Qt::AlignHCenter);
    return width;
}

// Hatching, then a cross and what is wrong on white.
void CellPainter::paintProblem(const QRectF& strip, const QString& words) {
    const PrintType strong{small_.digits, true};
    const double cross = strip.height();
    const double wide = words.isEmpty() ? 0 : fonts_.width(words, strong) + 0.6 * strong.digits;
    const QRectF plate(QPointF(strip.right() - cross - wide, strip.top()), strip.bottomRight());
    painter_.fillRect(strip, Qt::white);
    drawHatching(painter_, QRectF(strip.topLeft(), plate.bottomLeft()));
    drawCross(painter_, QRectF(plate.topLeft(), QSizeF(cross, cross)));
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {plate.left() + cross, strip.center().y() + strong.digits / 2}, words, strong);
}

double CellPainter::contentHeight(const CellWords& words, double width, std::size_t names) const {
    const double scale = layout_.scale;
    double height = layout_.strip + static_cast<double>(names) * name_.leading();
    height += names > 0 ? CellMeasure::kBelowNames * CellMeasure::small(scale) : 0;
    height += scale * (CellMeasure::kAboveNumber + digit_height::kAntiSquat);
    if (words.assembled) {
        height += scale * (CellMeasure::kAboveInstantCenter + digit_height::kInstantCenter);
        height += scale * (layout_.stacked ? 2 : 1) * (CellMeasure::kAboveEnds + digit_height::kTravelEnds);
    }
    qsizetype lines = static_cast<qsizetype>(words.lengths.size()) * (layout_.stacked ? 2 : 1);
    for (const QString& problem : words.problems) {
        lines += fonts_.wrapped(problem, {small_.digits, true}, width).size();
    }
    const double smallScale = CellMeasure::small(scale);
    return height + static_cast<double>(lines) * small_.leading() +
           smallScale * (CellMeasure::kBelow + (lines > 0 ? CellMeasure::kAboveSmall : 0));
}

void CellPainter::paintFigures(const QRectF& box, const CellWords& words,
                               const std::vector<HoleWords>& names) {
    const double width = box.width() - 2 * CellMeasure::kPad;
    const double middle = box.center().x();
    // What room is left goes evenly above, between and below the figures.
    const double air = std::max(box.height() - contentHeight(words, width, names.size()), 0.0) / 5;
    double y = box.top() + layout_.strip + air;
    for (const HoleWords& name : names) {
        y += name_.leading();
        paintName({middle, y - 0.2 * name_.digits}, name, Qt::AlignHCenter, width);
    }
    y += names.empty() ? 0 : CellMeasure::kBelowNames * CellMeasure::small(layout_.scale);
    y = paintNumber(middle, y, words, air);
    if (words.assembled) {
        y = paintEnds(middle, y + air, words);
    }
    paintSmall(middle, y + air * 0.6, width, words);
}

// Anti-squat and the instant center; gives the last baseline.
double CellPainter::paintNumber(double middle, double top, const CellWords& words, double air) {
    const double scale = layout_.scale;
    const PrintType number{digit_height::kAntiSquat * scale, true};
    const PrintType percent{number.digits * (layout_.stacked ? CellMeasure::kSmallPercent : 1.0), true};
    const QString sign = words.assembled ? QStringLiteral(" %") : QString();
    double y = top + scale * CellMeasure::kAboveNumber + number.digits;
    const double width = fonts_.width(words.antiSquat, number);
    const double left = middle - (width + fonts_.width(sign, percent)) / 2;
    fonts_.draw(painter_, {left, y}, words.antiSquat, number);
    fonts_.draw(painter_, {left + width, y}, sign, percent);
    if (words.assembled) {
        y += air + scale * (CellMeasure::kAboveInstantCenter + digit_height::kInstantCenter);
        paintInstantCenter({middle, y}, words.instantCenter);
    }
    return y;
}

void CellPainter::paintInstantCenter(QPointF at, const std::vector<TextRun>& runs) {
    std::vector<double> widths;
    widths.reserve(runs.size());
    for (const TextRun& run : runs) {
        widths.push_back(fonts_.width(run.text, CellMeasure::instantCenterType(layout_.scale, run)));
    }
    at.rx() -= std::accumulate(widths.begin(), widths.end(), 0.0) / 2;
    for (std::size_t run = 0; run < runs.size(); ++run) {
        fonts_.draw(painter_, at, runs[run].text, CellMeasure::instantCenterType(layout_.scale, runs[run]));
        at.rx() += widths[run];
    }
}

double CellPainter::paintEnds(double middle, double top, const CellWords& words) {
    const double scale = layout_.scale;
    const PrintType ends{digit_height::kTravelEnds * scale, false};
    const double step = scale * CellMeasure::kAboveEnds + ends.digits;
    const double y = top + step;
    if (layout_.stacked) {
        fonts_.draw(painter_, {middle, y}, words.droop, ends, Qt::AlignHCenter);
        fonts_.draw(painter_, {middle, y + step}, words.bump, ends, Qt::AlignHCenter);
        return y + step;
    }
    const double droop = fonts_.width(words.droop, ends);
    const double gap = 0.9 * ends.digits;
    const double left = middle - (droop + gap + fonts_.width(words.bump, ends)) / 2;
    fonts_.draw(painter_, {left, y}, words.droop, ends);
    fonts_.draw(painter_, {left + droop + gap, y}, words.bump, ends);
    return y;
}

void CellPainter::paintSmall(double middle, double top, double width, const CellWords& words) {
    QPointF at(middle, top + small_.leading() + CellMeasure::kAboveSmall * CellMeasure::small(layout_.scale));
    for (const LengthWords& length : words.lengths) {
        QStringList lines =
            layout_.stacked ? QStringList{length.length, length.work} : QStringList{length.whole()};
        lines.removeAll(QString());
        fonts_.draw(painter_, at, lines, small_, Qt::AlignHCenter);
        at.ry() += static_cast<double>(lines.size()) * small_.leading();
    }
    const PrintType strong{small_.digits, true};
    for (const QString& problem : words.problems) {
        const QStringList lines = fonts_.wrapped(problem, strong, width);
        fonts_.draw(painter_, at, lines, strong, Qt::AlignHCenter);
        at.ry() += static_cast<double>(lines.size()) * small_.leading();
    }
}

}  // namespace bolthole
