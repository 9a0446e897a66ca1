#include "widgets/curves/chart_card.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kUnseen = 0.1;  // px
constexpr double kMostTicksUp = 4.0;

/// Round ticks on an upright value axis.
std::vector<AxisTick> uprightTicks(const ChartPlot& plot, double unit) {
    std::vector<AxisTick> ticks;
    const double step = niceStep((plot.high - plot.low) / unit / kMostTicksUp);
    for (double index = std::ceil(plot.low / unit / step - 1e-9);
         index * step * unit <= plot.high * (1 + 1e-9) + 1e-12; index += 1.0) {
        const double at = index * step * unit;
        ticks.push_back({at, plot.valuePosition(at), 0, 0, tickText(index * step, step)});
    }
    return ticks;
}

/// The same in distances.
std::vector<AxisTick> uprightDistances(const ChartPlot& plot, double unit, const QFontMetricsF& metrics) {
    const AxisOnScreen axis{plot.low, plot.high, 0, plot.area.height(), 0, plot.area.height()};
    std::vector<AxisTick> ticks = distanceTicks(axis, unit, metrics);
    for (AxisTick& tick : ticks) {
        tick.position = plot.valuePosition(tick.at);
    }
    return ticks;
}

}  // namespace

ChartLook lookInCard(ChartLook::Head head, QSize size, QSize leastSize) {
    ChartLook look;
    look.head = head;
    look.hasCursor = false;
    look.hasFrame = false;
    look.ground = &Theme::card;
    look.size = size;
    look.leastSize = leastSize;
    return look;
}

void ChartCardOnScreen::take(const ChartCard& card, bool isMoving) {
    if (card.unit != takenUnit_ || card.minimumSpan != takenSpan_ || card.subject != takenSubject_) {
        takenUnit_ = card.unit;
        takenSpan_ = card.minimumSpan;
        takenSubject_ = card.subject;
        range_ = StableRange(card.minimumSpan);
    }
    card_ = &card;
    hasValues_ = bolthole::hasValues(card);
    const Extent extent = extentOf(card);
    const double unit = card.scale == ChartScale::inverseDistance ? 1.0 : card.unit;
    const double floor = card.neverBelowLeast ? card.least : -std::numeric_limits<double>::infinity();
    if (card.isExtentExact && extent.holdsAny()) {
        range_.show(extent.least, extent.most);
    } else if (isMoving) {
        range_.follow(extent.least, extent.most, unit, floor);
    } else {
        range_.settle(extent.least, extent.most, unit, floor);
    }
    strokes_.resize(card.series.size());
}

void ChartCardOnScreen::place(const QRectF& frame, const QRectF& plot, const ChartAxis& axis, double from,
                              double to, const CardType& type) {
    frame_ = frame;
    plot_ = {plot, axis.isUpright, range_.low(), range_.high(), from, to};
    // Measuring words costs more than a step of a drag has to spare.
    Layout layout{frame_, plot_, card_->unit, card_->unitText, card_->titles, card_->scale, card_->axisWords};
    if (layout != laidOut_) {
        title_ = fitTitle(card_->titles, card_->unitText, inner().width(), type);
        placeTicks(type);
        measureWords(type);
        laidOut_ = std::move(layout);
    }
    for (std::size_t i = 0; i < strokes_.size(); ++i) {
        const ChartSeries& series = card_->series[i];
        if (series.line == ChartLine::none) {
            strokes_[i].clear();
        } else {
            traceStroke(series.points, plot_, kUnseen, strokes_[i]);
        }
    }
    placeStartingMark();
    placeAxisWords();
}

void ChartCardOnScreen::placeTicks(const CardType& type) {
    const bool isInverse = card_->scale == ChartScale::inverseDistance;
    if (!plot_.isUpright) {
        ticks_ = isInverse ? uprightDistances(plot_, card_->unit, type.quietMetrics)
                           : uprightTicks(plot_, card_->unit);
        return;
    }
    const AxisOnScreen axis{plot_.low,          plot_.high,         plot_.area.left(),
                            plot_.area.right(), inner().left() - 3, inner().right() + 3};
    ticks_ = isInverse ? distanceTicks(axis, card_->unit, type.quietMetrics)
                       : linearTicks(axis, card_->unit, type.quietMetrics);
}

QRectF ChartCardOnScreen::inner() const {
    return frame_.adjusted(CardType::kPad, 0, -CardType::kPad, 0);
}

ChartHit ChartCardOnScreen::hit(QPointF at, double reach, bool markedOnly) const {
    ChartHit best{.farness = reach};
    for (std::size_t i = 0; i < card_->series.size(); ++i) {
        const ChartSeries& series = card_->series[i];
        if (series.isGhost || (markedOnly && !series.marksPoints)) {
            continue;
        }
        for (std::size_t j = 0; j < series.points.size(); ++j) {
            const ChartPoint& point = series.points[j];
            const QPointF away = plot_.at(point.imposed, point.value) - at;
            const double farness = std::hypot(away.x(), away.y());
            if (farness <= best.farness && point.imposed >= plot_.from && point.imposed <= plot_.to) {
                best = {static_cast<int>(i), static_cast<int>(j), farness};
            }
        }
    }
    return best;
}

std::size_t ChartCardOnScreen::keyRows(const ChartCard& card) {
    return static_cast<std::size_t>(std::ranges::count_if(
        card.series, [](const ChartSeries& series) { return !series.isGhost && !series.name.isEmpty(); }));
}

ChartCardOnScreen::Face ChartCardOnScreen::faceNow(const ChartScene& scene) const {
    Face face{.frame = frame_,
              .plot = plot_,
              .axis = scene.axis,
              .titles = card_->titles,
              .unitText = card_->unitText,
              .absent = card_->absent,
              .stretches = card_->stretches,
              .references = {},
              .hasValues = hasValues_,
              .startingWords = startingWords_,
              .startingBox = startingBox_,
              .axisWords = card_->axisWords,
              .axisBox = axisBox_,
              .isFocused = scene.isFocused};
    for (const ChartRule& rule : card_->rules) {
        if (rule.line == ChartLine::solid) {
            face.references.push_back(rule.at);
        }
    }
    return face;
}

void ChartCardOnScreen::paintFace(QPainter& painter, const ChartScene& scene) {
    if (!takesPixels(painter)) {
        drawFace(painter, scene);
        return;
    }
    const qreal ratio = painter.device()->devicePixelRatioF();
    Face face = faceNow(scene);
    const QRect whole = frame_.toAlignedRect();
    if (face_.isNull() || face_.devicePixelRatio() != ratio || face != drawn_) {
        if (face != asked_) {  // a picture that is shown once costs more to keep than to draw
            asked_ = std::move(face);
            drawFace(painter, scene);
            return;
        }
        face_ = QPixmap(whole.size() * ratio);
        face_.setDevicePixelRatio(ratio);
        face_.fill(theme().*scene.look.ground);
        QPainter picture(&face_);
        picture.translate(-whole.topLeft());
        picture.setRenderHint(QPainter::Antialiasing);
        drawFace(picture, scene);
        drawn_ = std::move(face);
    }
    painter.drawPixmap(whole.topLeft(), face_);
}

}  // namespace bolthole
