// What a card paints before its face: bands, curves, points, rules, events, and what stands at the cursor.
#include <algorithm>
#include <cmath>

#include "widgets/curves/chart_card.h"
#include "widgets/kit/kept_words.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kBandShare = 0.2;  // of the curve's ink
constexpr double kKeySample = 11.0;
constexpr double kKeySampleMarked = 22.0;
constexpr double kKeySpace = 3.0;
constexpr double kWidestFigureKey = 9.0;  // text heights; values of wide cards stay near their names
constexpr double kNarrowFigureKey = 6.5;  // text heights; keys of narrower cards are set smaller
constexpr double kPointRadius = 4.2;
constexpr double kHoveredRing = 7.6;
constexpr double kPickedRing = 9.0;
constexpr double kFirstMarker = 4.4;
constexpr double kNextMarker = 3.4;

bool isKeyed(const ChartSeries& series) {
    return !series.isGhost && !series.name.isEmpty();
}

double sampleWidth(const ChartSeries& series) {
    return series.mark == ChartMark::none ? kKeySample : kKeySampleMarked;
}

}  // namespace

void ChartCardOnScreen::paintBody(QPainter& painter, const ChartScene& scene) {
    if (!hasValues_) {
        return;
    }
    for (const ChartGap& gap : card_->gaps) {
        fillGap(painter, card_->series[gap.first], card_->series[gap.second], plot_,
                inkOf(gap.color, kBandShare));
    }
    const auto hasBand = [](const ChartSeries& series) {
        return !series.marksPoints && std::ranges::any_of(series.points, [](const ChartPoint& point) {
            return !std::isnan(point.low);
        });
    };
    for (const ChartSeries& series : card_->series) {
        if (hasBand(series)) {
            fillBand(painter, series.points, plot_, inkOf(series.color, scene.alpha * kBandShare));
        }
    }
    paintSections(painter, scene.type);
    for (const bool isGhost : {true, false}) {  // ghosts lie below
        for (std::size_t i = 0; i < strokes_.size(); ++i) {
            if (card_->series[i].isGhost == isGhost) {
                paintSeries(painter, card_->series[i], strokes_[i], scene.alpha);
            }
        }
    }
    paintRules(painter, scene.type);
    paintEvents(painter, scene.type);
    paintNotes(painter, scene.type);
    if (scene.look.head == ChartLook::Head::beside) {
        paintKeyBeside(painter, scene);
    }
}

void ChartCardOnScreen::paintSeries(QPainter& painter, const ChartSeries& series, const Stroke& stroke,
                                    double alpha) const {
    const QColor ink = inkOf(series.color, series.isGhost ? 1 : alpha);
    painter.save();
    painter.setClipRect(plot_.area.adjusted(-3, -3, 3, 3));
    if (series.line != ChartLine::none) {
        painter.setPen(linePen(series.line, series.width, ink));
        drawStroke(painter, stroke);
    }
    if (series.marksPoints) {
        painter.setPen(QPen(ink, 1.2));
        drawBars(painter, series.points, plot_, 3);
    }
    painter.restore();
    if (series.marksPoints) {
        paintMarks(painter, series, ink);
    }
}

// A mark at the edge of the plot is whole.
void ChartCardOnScreen::paintMarks(QPainter& painter, const ChartSeries& series, const QColor& ink) const {
    for (std::size_t i = 0; i < series.points.size(); ++i) {
        const ChartPoint& point = series.points[i];
        if (!plot_.shows(point.value) || point.imposed < plot_.from || point.imposed > plot_.to) {
            continue;
        }
        const QPointF at = plot_.at(point.imposed, point.value);
        if (i < series.marks.size()) {
            drawPointMark(painter, series.marks[i], at, kPointRadius);
        } else {
            painter.setPen(QPen(ink, 1.6));
            painter.setBrush(series.isMarkFilled ? ink : theme().card);
            drawMark(painter, series.mark, at, kPointRadius);
        }
    }
    painter.setBrush(Qt::NoBrush);
}

// References are part of the face.
void ChartCardOnScreen::paintRules(QPainter& painter, const CardType& type) const {
    std::vector<QRectF> taken = eventPlaces(type.quietMetrics);
    for (const QRectF& box : {startingBox_.adjusted(0, 0, 0, 2), axisBox_}) {
        taken.push_back(box);
    }
    for (const ChartRule& rule : card_->rules) {
        if (!plot_.shows(rule.at)) {
            continue;
        }
        if (rule.line != ChartLine::solid) {
            QLineF line = plot_.valueLine(rule.at);
            const QPointF onPixel = plot_.isUpright ? QPointF(std::floor(line.x1()) + 0.5 - line.x1(), 0)
                                                    : QPointF(0, std::floor(line.y1()) + 0.5 - line.y1());
            painter.setPen(linePen(rule.line, rule.width, inkOf(rule.color)));
            painter.drawLine(line.translated(onPixel));
        }
        if (!rule.words.isEmpty()) {
            paintRuleWords(painter, type, rule, taken);
        }
    }
}

void ChartCardOnScreen::paintCursor(QPainter& painter, const ChartScene& scene, double cursor,
                                    const std::vector<ChartValue>& values) const {
    if (!hasValues_ || values.size() != card_->series.size()) {
        return;
    }
    if (scene.look.head == ChartLook::Head::figure && keyRows(*card_) == 1) {
        const auto only = std::ranges::find_if(card_->series, isKeyed) - card_->series.begin();
        paintFigure(painter, scene, values[static_cast<std::size_t>(only)]);
    } else if (scene.look.head != ChartLook::Head::beside) {
        paintKey(painter, scene, values);
    }
    bool isFirst = true;
    painter.setBrush(theme().card);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const ChartSeries& series = card_->series[i];
        if (!isKeyed(series)) {
            continue;
        }
        if (plot_.shows(values[i].value) && cursor >= plot_.from && cursor <= plot_.to) {
            const QPointF at = plot_.at(cursor, values[i].value);
            const QPointF onLine = plot_.isUpright ? QPointF(at.x(), std::floor(at.y()) + 0.5)
                                                   : QPointF(std::floor(at.x()) + 0.5, at.y());
            painter.setPen(QPen(inkOf(series.color, scene.alpha), 2));
            drawMark(painter, series.mark, onLine, isFirst ? kFirstMarker : kNextMarker);
        }
        isFirst = false;
    }
    painter.setBrush(Qt::NoBrush);
}

void ChartCardOnScreen::paintFigure(QPainter& painter, const ChartScene& scene,
                                    const ChartValue& value) const {
    const CardType& type = scene.type;
    const bool exists = !value.text.isEmpty() && value.text != QChar(0x2014);
    const QString unit = title_.unitInTitle || !exists ? QString() : card_->unitText;
    const double unitWidth = unit.isEmpty() ? 0.0 : widthOfLine(type.quiet, unit) + 3.0;
    const double top = frame_.top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    const double baseline = top + type.bodyMetrics.ascent();
    painter.setFont(type.body);
    painter.setPen(exists ? theme().ink : theme().muted);
    drawLine(painter, QPointF(inner().left(), baseline), value.text);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double from = inner().left() + widthOfLine(type.body, value.text) + 3.0;
    drawLine(painter, QPointF(from, baseline), unit);
    const double uncertaintyFrom = from + unitWidth + 2.0;
    if (uncertaintyFrom + widthOfLine(type.quiet, value.plusMinus) <= inner().right()) {
        drawLine(painter, QPointF(uncertaintyFrom, baseline), value.plusMinus);
    }
    paintBaseline(painter, scene, value.baseline, top + type.bodyMetrics.height());
}

void ChartCardOnScreen::paintKey(QPainter& painter, const ChartScene& scene,
                                 const std::vector<ChartValue>& values) const {
    const CardType& type = scene.type;
    double top = frame_.top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (isKeyed(card_->series[i])) {
            paintKeyRow(painter, scene, card_->series[i], values[i], top);
            top += type.bodyMetrics.height() + (scene.keysInTwoLines ? type.quietMetrics.height() : 0.0);
            paintBaseline(painter, scene, values[i].baseline, top);
            top += type.withBaseline ? type.quietMetrics.height() : 0.0;
        }
    }
}

// Under a value: what it was before and by how much it changed.
void ChartCardOnScreen::paintBaseline(QPainter& painter, const ChartScene& scene, const QStringList& texts,
                                      double top) const {
    if (!texts.isEmpty()) {
        const QRectF row(inner().left(), top, inner().width(), scene.type.quietMetrics.height());
        painter.setFont(scene.type.quiet);
        painter.setPen(theme().muted);
        drawLine(painter, row, Qt::AlignLeft | Qt::AlignVCenter,
                 texts[std::min(scene.baselineForm, texts.size() - 1)]);
    }
}

qsizetype ChartCardOnScreen::baselineForm(const CardType& type, const QStringList& texts) const {
    for (qsizetype form = 0; form + 1 < texts.size(); ++form) {
        if (widthOfLine(type.quiet, texts[form]) <= inner().width()) {
            return form;
        }
    }
    return std::max<qsizetype>(texts.size() - 1, 0);
}

void ChartCardOnScreen::paintKeySample(QPainter& painter, const ChartSeries& series, double left,
                                       double middle, double alpha) const {
    const double length = sampleWidth(series);
    const QColor ink = inkOf(series.color, alpha);
    painter.setPen(linePen(series.line, series.width, ink));
    painter.drawLine(QPointF(left, middle), QPointF(left + length, middle));
    if (series.mark != ChartMark::none) {
        painter.setPen(QPen(ink, 1.6));
        painter.setBrush(series.isMarkFilled ? ink : theme().card);
        drawMark(painter, series.mark, {left + length / 2, middle}, 3.2);
        painter.setBrush(Qt::NoBrush);
    }
}

double ChartCardOnScreen::keyWidth(const ChartCard& card, const CardType& type) {
    if (keyRows(card) < 2) {
        return 0;
    }
    double widest = 0;
    for (const ChartSeries& series : card.series) {
        if (isKeyed(series)) {
            const QString& shortest = series.keyNames.isEmpty() ? series.name : series.keyNames.last();
            widest = std::max(widest, sampleWidth(series) + widthOfLine(type.quiet, shortest));
        }
    }
    return widest + 2 * kKeySpace + widthOfLine(type.smallBold, QStringLiteral("−10.0")) + 2 * CardType::kPad;
}

bool ChartCardOnScreen::hasSmallValues(const ChartScene& scene) const {
    return scene.look.head == ChartLook::Head::figure &&
           inner().width() < scene.type.bodyMetrics.height() * kNarrowFigureKey;
}

QRectF ChartCardOnScreen::keyRow(const ChartScene& scene, double top) const {
    const double height = scene.type.bodyMetrics.height();
    const double widest =
        scene.look.head == ChartLook::Head::figure ? kWidestFigureKey * height : inner().width();
    return {inner().left(), top, std::min(inner().width(), widest), height};
}

QString ChartCardOnScreen::keyName(const ChartScene& scene, const ChartSeries& series,
                                   const ChartValue& value) const {
    const CardType& type = scene.type;
    double room = keyRow(scene, 0).width() - sampleWidth(series) - kKeySpace;
    if (!scene.keysInTwoLines) {
        const QFont& font = hasSmallValues(scene) ? type.smallBold : type.body;
        room -= widthOfLine(font, value.text) + kKeySpace;
        room -= value.other.isEmpty() ? 0 : widthOfLine(type.quiet, value.other) + kKeySpace + 1;
    }
    const auto name = std::ranges::find_if(
        series.keyNames, [&](const QString& each) { return widthOfLine(type.quiet, each) <= room; });
    const QString& shortest = series.keyNames.isEmpty() ? series.name : series.keyNames.last();
    return name == series.keyNames.end() ? type.quietMetrics.elidedText(shortest, Qt::ElideRight, room)
                                         : *name;
}

// The value, with the other state's at its right.
void ChartCardOnScreen::paintKeyValue(QPainter& painter, const ChartScene& scene, const ChartValue& value,
                                      const QRectF& row) const {
    const CardType& type = scene.type;
    double right = row.right();
    if (!value.other.isEmpty()) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        drawLine(painter, row, Qt::AlignRight | Qt::AlignVCenter, value.other);
        right -= widthOfLine(type.quiet, value.other) + kKeySpace + 1;
    }
    painter.setFont(hasSmallValues(scene) ? type.smallBold : type.body);
    painter.setPen(value.text == QChar(0x2014) ? theme().muted : theme().ink);
    drawLine(painter, QRectF(row.left(), row.top(), right - row.left(), row.height()),
             Qt::AlignRight | Qt::AlignVCenter, value.text);
}

void ChartCardOnScreen::paintKeyRow(QPainter& painter, const ChartScene& scene, const ChartSeries& series,
                                    const ChartValue& value, double top) const {
    const CardType& type = scene.type;
    QRectF row = keyRow(scene, top);
    const double nameHeight = scene.keysInTwoLines ? type.quietMetrics.height() : row.height();
    paintKeySample(painter, series, row.left(), std::round(top + nameHeight / 2) + 0.5, scene.alpha);
    const double from = row.left() + sampleWidth(series) + kKeySpace;
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    drawLine(painter, QRectF(from, top, row.right() - from, nameHeight), Qt::AlignLeft | Qt::AlignVCenter,
             keyName(scene, series, value));
    row.translate(0, scene.keysInTwoLines ? nameHeight : 0);
    paintKeyValue(painter, scene, value, row);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double uncertaintyFrom = row.right() + kKeySpace;
    if (uncertaintyFrom + widthOfLine(type.quiet, value.plusMinus) <= inner().right()) {
        drawLine(painter, QRectF(uncertaintyFrom, row.top(), inner().right() - uncertaintyFrom, row.height()),
                 Qt::AlignLeft | Qt::AlignVCenter, value.plusMinus);
    }
}

void ChartCardOnScreen::paintKeyBeside(QPainter& painter, const ChartScene& scene) const {
    const QFontMetricsF& metrics = scene.type.quietMetrics;
    const double left = plot_.area.right() + 16;
    const double room = inner().right() - left - kKeySampleMarked - 2 * kKeySpace;
    double middle = plot_.area.top() + metrics.height() / 2;
    for (const ChartSeries& series : card_->series) {
        if (!isKeyed(series)) {
            continue;
        }
        painter.setPen(linePen(series.line, series.width, inkOf(series.color, scene.alpha)));
        painter.drawLine(QPointF(left, middle), QPointF(left + kKeySampleMarked, middle));
        painter.setFont(scene.type.quiet);
        painter.setPen(theme().ink);
        drawLine(painter,
                 QPointF(left + kKeySampleMarked + 2 * kKeySpace,
                         middle + (metrics.ascent() - metrics.descent()) / 2),
                 metrics.elidedText(series.name, Qt::ElideRight, room));
        middle += metrics.height() + 3;
    }
}

void ChartCardOnScreen::paintHit(QPainter& painter, const ChartHit& hit, bool isPicked) const {
    const ChartSeries& series = card_->series[static_cast<std::size_t>(hit.series)];
    const ChartPoint& point = series.points[static_cast<std::size_t>(hit.point)];
    painter.setPen(isPicked ? QPen(theme().focus, 2) : QPen(inkOf(series.color), 1.4));
    painter.setBrush(Qt::NoBrush);
    const double radius = isPicked ? kPickedRing : kHoveredRing;
    painter.drawEllipse(plot_.at(point.imposed, point.value), radius, radius);
}

}  // namespace bolthole
