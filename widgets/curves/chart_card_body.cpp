// What a card paints before its face: bands, curves, points, rules, events, and what stands at the cursor.
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/curves/chart_card.h"
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
constexpr double kPointRadius = 3.6;
constexpr double kFirstMarker = 4.4;
constexpr double kNextMarker = 3.4;

QColor inkOf(ThemeColor color, double alpha = 1) {
    QColor ink = theme().*color;
    ink.setAlphaF(ink.alphaF() * static_cast<float>(alpha));
    return ink;
}

bool isKeyed(const ChartSeries& series) {
    return !series.isGhost && !series.name.isEmpty();
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
    painter.save();
    painter.setClipRect(plot_.area.adjusted(-3, -3, 3, 3));
    for (const bool isGhost : {true, false}) {  // ghosts lie below
        for (std::size_t i = 0; i < strokes_.size(); ++i) {
            if (card_->series[i].isGhost == isGhost) {
                paintSeries(painter, card_->series[i], strokes_[i], scene.alpha);
            }
        }
    }
    painter.restore();
    paintRules(painter, scene.type);
    paintEvents(painter, scene.type);
    if (scene.look.head == ChartLook::Head::beside) {
        paintKeyBeside(painter, scene);
    }
}

void ChartCardOnScreen::paintSeries(QPainter& painter, const ChartSeries& series, const Stroke& stroke,
                                    double alpha) const {
    const QColor ink = inkOf(series.color, series.isGhost ? 1 : alpha);
    if (series.line != ChartLine::none) {
        painter.setPen(linePen(series.line, series.width, ink));
        drawStroke(painter, stroke);
    }
    if (!series.marksPoints) {
        return;
    }
    painter.setPen(QPen(ink, 1.2));
    drawBars(painter, series.points, plot_, 3);
    painter.setPen(QPen(ink, 1.6));
    painter.setBrush(series.isMarkFilled ? ink : theme().card);
    for (const ChartPoint& point : series.points) {
        if (std::isfinite(point.value)) {
            drawMark(painter, series.mark, plot_.at(point.imposed, point.value), kPointRadius);
        }
    }
    painter.setBrush(Qt::NoBrush);
}

// References are part of the face.
void ChartCardOnScreen::paintRules(QPainter& painter, const CardType& type) const {
    std::vector<QRectF> taken = eventPlaces(type.quietMetrics);
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

// How many of the curves' points lie under a place.
int ChartCardOnScreen::pointsUnder(const QRectF& place) const {
    int count = 0;
    for (const ChartSeries& series : card_->series) {
        for (const ChartPoint& point : series.points) {
            count += place.contains(plot_.at(point.imposed, point.value)) ? 1 : 0;
        }
    }
    return count;
}

// At one of the line's ends, on the side where the words hide least of the curves and no other words; along
// an upright line where they would be long across.
void ChartCardOnScreen::paintRuleWords(QPainter& painter, const CardType& type, const ChartRule& rule,
                                       std::vector<QRectF>& taken) const {
    const QRectF& area = plot_.area;
    const QLineF line = plot_.valueLine(rule.at);
    const QSizeF flat(type.quietMetrics.horizontalAdvance(rule.words) + 6, type.quietMetrics.height());
    const bool isAlong = plot_.isUpright && flat.width() > 0.5 * area.width();
    const QSizeF size = isAlong ? flat.transposed() : flat;
    const double before = plot_.isUpright ? line.x1() - size.width() - 3 : area.right() - size.width() - 2;
    const double after = plot_.isUpright ? line.x1() + 3 : area.left() + 2;
    const double top = plot_.isUpright ? area.top() + 2 : line.y1() - size.height() - 2;
    const double bottom = plot_.isUpright ? area.bottom() - size.height() - 2 : line.y1() + 2;
    QRectF best;
    int fewest = std::numeric_limits<int>::max();
    for (const QPointF& corner :
         {QPointF(after, bottom), QPointF(after, top), QPointF(before, top), QPointF(before, bottom)}) {
        const QRectF place(corner, size);
        const bool isFree = area.contains(place) && std::ranges::none_of(taken, [&](const QRectF& other) {
                                return other.intersects(place);
                            });
        const int hidden = isFree ? pointsUnder(place) : fewest;
        if (hidden < fewest) {
            fewest = hidden;
            best = place;
        }
    }
    if (best.isNull()) {
        return;
    }
    taken.push_back(best);
    painter.save();
    painter.fillRect(best, theme().card);
    painter.setFont(type.quiet);
    painter.setPen(rule.color == &Theme::border ? theme().muted : inkOf(rule.color));
    if (isAlong) {
        painter.translate(best.bottomLeft());
        painter.rotate(-90);
        painter.drawText(QRectF(QPointF(), flat), Qt::AlignCenter | Qt::TextDontClip, rule.words);
    } else {
        painter.drawText(best, Qt::AlignCenter | Qt::TextDontClip, rule.words);
    }
    painter.restore();
}

void ChartCardOnScreen::paintEvents(QPainter& painter, const CardType& type) const {
    if (card_->events.empty()) {
        return;
    }
    painter.setFont(type.quiet);
    const std::vector<QRectF> places = eventPlaces(type.quietMetrics);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const ChartEvent& event = card_->events[i];
        if (event.at < plot_.from || event.at > plot_.to) {
            continue;
        }
        const QColor ink = inkOf(event.color);
        painter.setPen(linePen(ChartLine::dotted, 1.1, ink));
        QLineF line = plot_.imposedLine(event.at);
        if (!plot_.isUpright && !places[i].isNull()) {
            line.setP1({line.x1(), places[i].top()});
        }
        painter.drawLine(line);
        if (!places[i].isNull()) {
            painter.fillRect(places[i].adjusted(2, 1, -2, -1), theme().card);
            painter.setPen(ink);
            painter.drawText(places[i], Qt::AlignCenter | Qt::TextDontClip, event.word);
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
    const double unitWidth = unit.isEmpty() ? 0.0 : type.quietMetrics.horizontalAdvance(unit) + 3.0;
    const bool big = type.figureMetrics.horizontalAdvance(value.text) + unitWidth <= inner().width();
    const QFontMetricsF& metrics = big ? type.figureMetrics : type.bodyMetrics;
    const double top = frame_.top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    const double baseline = top + type.figureMetrics.ascent();
    painter.setFont(big ? type.figure : type.body);
    painter.setPen(exists ? theme().ink : theme().muted);
    painter.drawText(QPointF(inner().left(), baseline), value.text);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double from = inner().left() + metrics.horizontalAdvance(value.text) + 3.0;
    painter.drawText(QPointF(from, baseline), unit);
    const double sureFrom = from + unitWidth + 2.0;
    if (sureFrom + type.quietMetrics.horizontalAdvance(value.sure) <= inner().right()) {
        painter.drawText(QPointF(sureFrom, baseline), value.sure);
    }
    paintBefore(painter, type, value.before, top + type.figureMetrics.height());
}

void ChartCardOnScreen::paintKey(QPainter& painter, const ChartScene& scene,
                                 const std::vector<ChartValue>& values) const {
    const CardType& type = scene.type;
    double top = frame_.top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (isKeyed(card_->series[i])) {
            paintKeyRow(painter, scene, card_->series[i], values[i], top);
            top += type.bodyMetrics.height();
            paintBefore(painter, type, values[i].before, top);
            top += type.withBefore ? type.quietMetrics.height() : 0.0;
        }
    }
}

// Under a value: what it was before and by how much it changed.
void ChartCardOnScreen::paintBefore(QPainter& painter, const CardType& type, const QStringList& texts,
                                    double top) const {
    const QRectF row(inner().left(), top, inner().width(), type.quietMetrics.height());
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    for (const QString& text : texts) {
        if (type.quietMetrics.horizontalAdvance(text) <= row.width() || text == texts.last()) {
            painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, text);
            return;
        }
    }
}

void ChartCardOnScreen::paintKeySample(QPainter& painter, const ChartSeries& series, double left,
                                       double middle, double alpha) const {
    const double length = series.mark == ChartMark::none ? kKeySample : kKeySampleMarked;
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

// The value, with the other state's at its right; what stands left of them ends where this says.
double ChartCardOnScreen::paintKeyValue(QPainter& painter, const ChartScene& scene, const ChartValue& value,
                                        const QRectF& row) const {
    const CardType& type = scene.type;
    double right = row.right();
    if (!value.other.isEmpty()) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, value.other);
        right -= type.quietMetrics.horizontalAdvance(value.other) + kKeySpace + 1;
    }
    const bool narrow = scene.look.head == ChartLook::Head::figure &&
                        inner().width() < type.bodyMetrics.height() * kNarrowFigureKey;
    const QFontMetricsF& metrics = narrow ? type.smallBoldMetrics : type.bodyMetrics;
    painter.setFont(narrow ? type.smallBold : type.body);
    painter.setPen(value.text == QChar(0x2014) ? theme().muted : theme().ink);
    painter.drawText(QRectF(row.left(), row.top(), right - row.left(), row.height()),
                     Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip, value.text);
    return right - metrics.horizontalAdvance(value.text) - kKeySpace;
}

void ChartCardOnScreen::paintKeyRow(QPainter& painter, const ChartScene& scene, const ChartSeries& series,
                                    const ChartValue& value, double top) const {
    const CardType& type = scene.type;
    const double height = type.bodyMetrics.height();
    const double widest =
        scene.look.head == ChartLook::Head::figure ? kWidestFigureKey * height : inner().width();
    const QRectF row(inner().left(), top, std::min(inner().width(), widest), height);
    paintKeySample(painter, series, row.left(), std::round(row.center().y()) + 0.5, scene.alpha);
    const double from =
        row.left() + (series.mark == ChartMark::none ? kKeySample : kKeySampleMarked) + kKeySpace;
    const double room = paintKeyValue(painter, scene, value, row) - from;
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const auto name = std::ranges::find_if(series.keyNames, [&](const QString& each) {
        return type.quietMetrics.horizontalAdvance(each) <= room;
    });
    const QString& shortest = series.keyNames.isEmpty() ? series.name : series.keyNames.last();
    const QString cut = type.quietMetrics.elidedText(shortest, Qt::ElideRight, room);
    painter.drawText(QRectF(from, row.top(), room, row.height()), Qt::AlignLeft | Qt::AlignVCenter,
                     name == series.keyNames.end() ? cut : *name);
    const double sureFrom = row.right() + kKeySpace;
    if (sureFrom + type.quietMetrics.horizontalAdvance(value.sure) <= inner().right()) {
        painter.drawText(QRectF(sureFrom, row.top(), inner().right() - sureFrom, row.height()),
                         Qt::AlignLeft | Qt::AlignVCenter, value.sure);
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
        painter.drawText(QPointF(left + kKeySampleMarked + 2 * kKeySpace,
                                 middle + (metrics.ascent() - metrics.descent()) / 2),
                         metrics.elidedText(series.name, Qt::ElideRight, room));
        middle += metrics.height() + 3;
    }
}

void ChartCardOnScreen::paintHit(QPainter& painter, const ChartHit& hit) const {
    const ChartSeries& series = card_->series[static_cast<std::size_t>(hit.series)];
    const ChartPoint& point = series.points[static_cast<std::size_t>(hit.point)];
    painter.setPen(QPen(inkOf(series.color), 1.4));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(plot_.at(point.imposed, point.value), 2.1 * kPointRadius, 2.1 * kPointRadius);
}

}  // namespace bolthole
