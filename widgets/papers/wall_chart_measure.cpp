// The frame of a sheet and the measure of its cells: the first half of widgets/papers/wall_chart_layout.h.
#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/papers/wall_chart_layout.h"

namespace bolthole {

namespace {

constexpr double kSmallGrowth = 1.35;  // small print grows less than the figures
constexpr double kNameGrowth = 1.5;
constexpr int kLinesOfFigures = 3;  // lines of small print where instant center, droop and bump would be
constexpr PrintType kName{3.2, true};
constexpr PrintType kSmall{digit_height::kText, false};

// Least page the common text is kept small on: letter and A4 within their margins, mm².
constexpr double kSmallPage = 259 * 196;

void placeFacts(SheetFrame& frame, const PrintFonts& fonts, double top) {
    const double line = frame.text.leading();
    std::vector<double> widths;
    double sum = 0;
    for (const FactWords& fact : frame.facts) {
        widths.push_back(
            std::max(fonts.width(fact.label, frame.text), fonts.width(fact.value, frame.strong)));
        sum += widths.back();
    }
    const double least = 1.6 * frame.text.digits;
    const double spread = (frame.around.body().width() - sum) /
                          static_cast<double>(std::max<std::size_t>(widths.size(), 2) - 1);
    const double gap = std::clamp(spread, least, 6 * frame.text.digits);
    QPointF at(0, top);
    for (const double width : widths) {
        if (at.x() > 0 && at.x() + width > frame.around.body().width() + 0.01) {
            at = QPointF(0, at.y() + 2 * line + 0.6 * frame.text.digits);
        }
        frame.factPlaces.push_back(at);
        at.rx() += width + gap;
    }
    frame.treatmentAt = at.y() + 2 * line + 0.5 * frame.text.digits;
}

}  // namespace

SheetFrame frameOf(QSizeF page, const PrintFonts& fonts, const ChartWords& words, Units units) {
    const double factor = std::clamp(std::sqrt(page.width() * page.height() / kSmallPage), 1.0, 1.3);
    SheetFrame frame(PaperFrame(fonts, page, {.title = 6.2 * factor, .factor = factor, .scaleBar = units},
                                words.starting(), cautionWords(words.car())));
    frame.facts = words.facts();
    const QRectF& inside = frame.around.body();
    placeFacts(frame, fonts, inside.top() + 2.1 * frame.text.digits);
    for (const QString& line : words.treatment()) {
        frame.treatment << fonts.wrapped(line, frame.text, page.width());
    }
    const double bodyTop = frame.treatmentAt +
                           static_cast<double>(frame.treatment.size() - 1) * frame.text.leading() +
                           1.7 * frame.text.digits;
    frame.body = QRectF(QPointF(0, bodyTop), inside.bottomRight() - QPointF(0, frame.text.digits));
    return frame;
}

double CellMeasure::small(double scale) {
    return std::min(scale, kSmallGrowth);
}

PrintType CellMeasure::instantCenterType(double scale, const TextRun& run) {
    return {scale * run.digits, false};
}

PrintType CellMeasure::name(double scale) {
    return kName.scaled(std::min(scale, kNameGrowth));
}

CellMeasure::CellMeasure(const PrintFonts& fonts, const ChartCombinations& chart, const ChartWords& words)
    : isMatrix_(chart.axes.isMatrix()), hasStrip_(chart.now.has_value()) {
    percent_ = fonts.width(QStringLiteral(" %"), {digit_height::kAntiSquat, true});
    for (int row = 0; row < chart.rows; ++row) {
        for (int column = 0; column < chart.columns; ++column) {
            measureCell(fonts, words.cell(row, column));
        }
    }
    measureHeadings(fonts, chart, words);
    measureProblems(fonts, chart, words);
}

void CellMeasure::measureCell(const PrintFonts& fonts, const CellWords& cell) {
    constexpr PrintType kEnds{digit_height::kTravelEnds, false};
    hasStrip_ |= !cell.problems.isEmpty();
    number_ = std::max(number_, fonts.width(cell.antiSquat, {digit_height::kAntiSquat, true}));
    double instantCenter = 0;
    for (const TextRun& run : cell.instantCenter) {
        instantCenter += fonts.width(run.text, instantCenterType(1, run));
    }
    instantCenter_ = std::max(instantCenter_, instantCenter);
    const double droop = fonts.width(cell.droop, kEnds);
    const double bump = fonts.width(cell.bump, kEnds);
    ends_ = std::max(ends_, droop + bump + 0.9 * digit_height::kTravelEnds);
    stackedEnds_ = std::max({stackedEnds_, droop, bump});
    for (const LengthWords& length : cell.lengths) {
        lengths_ = std::max(lengths_, fonts.width(length.whole(), kSmall));
        stackedLengths_ = std::max(stackedLengths_, fonts.widest({length.length, length.work}, kSmall));
    }
    lengthLines_ = std::max(lengthLines_, static_cast<int>(cell.lengths.size()));
}

void CellMeasure::measureHeadings(const PrintFonts& fonts, const ChartCombinations& chart,
                                  const ChartWords& words) {
    const auto widthOf = [&](const HoleWords& hole) { return nameWidth(hole, fonts, 1); };
    const PrintType name = CellMeasure::name(1);
    for (int row = 0; row < chart.rows; ++row) {
        for (const HoleWords& hole : words.holes(chart.axes.down, row)) {
            const double holeWide = fonts.width(hole.hole, name);
            rowNames_.push_back({widthOf(hole) - holeWide, holeWide});
        }
        for (const LengthWords& length : words.rowLengths(row)) {
            rowSmall_ = std::max(rowSmall_, fonts.widest({length.length, length.work}, kSmall));
        }
    }
    if (!isMatrix_) {
        names_ = rowNames(1);
        nameLines_ = static_cast<int>(chart.axes.down.brackets.size());
        return;
    }
    for (int column = 0; column < chart.columns; ++column) {
        for (const HoleWords& hole : words.holes(chart.axes.across, column)) {
            names_ = std::max(names_, widthOf(hole));
        }
        const std::vector<LengthWords> lengths = words.columnLengths(column);
        for (const LengthWords& length : lengths) {
            stackedLengths_ = std::max(stackedLengths_, fonts.widest({length.length, length.work}, kSmall));
        }
        columnSmallLines_ = std::max(columnSmallLines_, 2 * static_cast<int>(lengths.size()));
    }
    names_ = std::min(names_, kWidestHeading);
    const double width = cell(1, false).width();
    for (int column = 0; column < chart.columns; ++column) {
        const auto lines = linesOf(words.holes(chart.axes.across, column), fonts, 1, width);
        columnNameLines_ = std::max(columnNameLines_, static_cast<int>(lines.size()));
    }
    rowTitleLines_ = static_cast<int>(rowTitle(words.title(chart.axes.down), fonts, 1, rowHeading(1)).size());
}

// Broken after the link's name where that costs no line.
QStringList CellMeasure::rowTitle(const QString& title, const PrintFonts& fonts, double scale,
                                  double headingWidth) {
    const PrintType type{kSmall.digits * small(scale), true};
    const double width = headingWidth - 1;
    const QStringList whole = fonts.wrapped(title, type, width);
    const qsizetype name = title.indexOf(QStringLiteral(", ")) + 1;
    const QStringList broken =
        fonts.wrapped(title.left(name), type, width) + fonts.wrapped(title.mid(name), type, width);
    return broken.size() <= whole.size() ? broken : whole;
}

double CellMeasure::nameWidth(const HoleWords& hole, const PrintFonts& fonts, double scale) {
    const QString label = hole.label.isEmpty() ? QString() : hole.label + ' ';
    return fonts.width(label, kSmall.scaled(small(scale))) + fonts.width(hole.hole, name(scale));
}

std::vector<std::vector<HoleWords>> CellMeasure::linesOf(const std::vector<HoleWords>& names,
                                                         const PrintFonts& fonts, double scale,
                                                         double width) {
    std::vector<std::vector<HoleWords>> lines;
    double room = 0;
    for (const HoleWords& one : names) {
        const double needed = nameWidth(one, fonts, scale);
        if (lines.empty() || room < needed + nameGap(scale)) {
            lines.emplace_back();
            room = width;
        } else {
            room -= nameGap(scale);
        }
        lines.back().push_back(one);
        room -= needed;
    }
    return lines;
}

double CellMeasure::nowTag(const PrintFonts& fonts, double scale) {
    const PrintType type{kSmall.digits * small(scale), true};
    return fonts.width(tr("NOW"), type) + 2.4 * type.digits;
}

QStringList CellMeasure::problemsBelow(const CellWords& cell, bool isNow, const PrintFonts& fonts,
                                       double scale, double width) {
    constexpr double kCrossAndHatching = 11;  // mm at scale 1
    if (!cell.assembled || cell.problems.isEmpty()) {
        return cell.problems;
    }
    const double room = width - (isNow ? nowTag(fonts, scale) : 0.0) - kCrossAndHatching * small(scale);
    const bool fits = fonts.width(cell.problems.front(), {kSmall.digits * small(scale), true}) <= room;
    return fits ? cell.problems.mid(1) : cell.problems;
}

// Problems don't widen a cell: they break into as many lines as the rest of it allows.
void CellMeasure::measureProblems(const PrintFonts& fonts, const ChartCombinations& chart,
                                  const ChartWords& words) {
    for (const bool stacked : {false, true}) {
        const double width = cell(1, stacked).width();
        int most = 0;
        for (int row = 0; row < chart.rows; ++row) {
            for (int column = 0; column < chart.columns; ++column) {
                const CellWords cell = words.cell(row, column);
                int lines = 0;
                for (const QString& one : problemsBelow(cell, chart.isNow(row, column), fonts, 1, width)) {
                    lines += static_cast<int>(
                        fonts.wrapped(one, {digit_height::kText, true}, width - 2 * kPad).size());
                }
                // Where nothing can be assembled, the problems take the figures' place.
                most = std::max(most, cell.assembled ? lines : lines - kLinesOfFigures);
            }
        }
        (stacked ? problemLinesStacked_ : problemLinesBeside_) = most;
    }
}

QSizeF CellMeasure::cell(double scale, bool stacked) const {
    const double smallScale = small(scale);
    // Stacked cells set the percent sign smaller as well.
    const double number = number_ + percent_ * (stacked ? kSmallPercent : 1);
    const double figures = std::max({number, instantCenter_, stacked ? stackedEnds_ : ends_});
    const double words = std::max(smallScale * std::max(stackedLengths_, stacked ? 0 : lengths_),
                                  names_ * name(scale).digits / kName.digits);
    const int smallLines =
        lengthLines_ * (stacked ? 2 : 1) + (stacked ? problemLinesStacked_ : problemLinesBeside_);
    double height = strip(scale) + nameLines_ * name(scale).leading();
    height += nameLines_ > 0 ? kBelowNames * small(scale) : 0;
    height += scale * (kAboveNumber + digit_height::kAntiSquat);
    height += scale * (kAboveInstantCenter + digit_height::kInstantCenter);
    height += scale * (stacked ? 2 : 1) * (kAboveEnds + digit_height::kTravelEnds);
    height += smallScale * (smallLines * kSmall.leading() + (smallLines > 0 ? kAboveSmall : 0));
    return {std::max(scale * figures, words) + 2 * kPad, height + kBelow * smallScale};
}

double CellMeasure::rowNames(double scale) const {
    const double part = name(scale).digits / kName.digits;
    double widest = 0;
    for (const NameWidth& each : rowNames_) {
        widest = std::max(widest, each.label * small(scale) / small(1) + each.hole * part);
    }
    return std::min(widest, kWidestHeading);
}

double CellMeasure::rowHeading(double scale) const {
    if (!isMatrix_) {
        return 0;
    }
    return std::max({rowNames(scale), (std::max(rowSmall_, 20.0)) * small(scale)}) + kHeadingPad;
}

double CellMeasure::columnHeading(double scale) const {
    const double title = 1.5 * kSmall.leading() * small(scale);
    const double heading = title + columnNameLines_ * name(scale).leading() +
                           columnSmallLines_ * kSmall.leading() * small(scale) + 0.5;
    return std::max(heading, rowTitleLines_ * kSmall.leading() * small(scale) + 0.5);
}

}  // namespace bolthole
