#include "widgets/board/combination_map_paint.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_set>

#include "widgets/board/combination_columns.h"
#include "widgets/board/combination_dots.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kTallEnough = 150;  // px; below, both axes' titles stand in one line over the plot
constexpr double kTickGapX = 4.0;
constexpr double kGapY = 6.0;
constexpr double kTopRoom = 7.0;
constexpr double kRightRoom = 10.0;
constexpr double kKeyRadius = 4.0;
constexpr double kKeyGap = 14.0;

bool isTall(QSize size) {
    return size.height() >= kTallEnough;
}

void paintGrid(QPainter& painter, const CombinationMapPicture& picture, const QFontMetricsF& metrics) {
    const QRectF& plot = picture.scale.plot();
    const double unit = shownUnit(Quantity::length, picture.list.style().units);
    for (const AxisTick& tick : picture.scale.distanceTicks(unit, metrics)) {
        painter.setPen(tick.at == 0.0 ? dashedPen(theme().muted, 1.0, {3.0, 3.0}) : QPen(theme().grid, 1));
        painter.drawLine(QPointF(tick.position, plot.top()), QPointF(tick.position, plot.bottom()));
        painter.setPen(theme().muted);
        painter.drawText(QPointF(tick.labelLeft, plot.bottom() + kTickGapX + metrics.ascent()), tick.label);
    }
    for (const AxisTick& tick : picture.scale.antiSquatTicks(metrics)) {
        painter.setPen(QPen(theme().grid, 1));
        painter.drawLine(QPointF(plot.left(), tick.position), QPointF(plot.right(), tick.position));
        painter.setPen(theme().muted);
        painter.drawText(QPointF(tick.labelLeft - kGapY, tick.position + metrics.capHeight() / 2),
                         tick.label);
    }
}

// The ground past infinity; null where the plot ends before.
QRectF groundBehind(const CombinationMapPicture& picture) {
    const QRectF& plot = picture.scale.plot();
    return picture.scale.leastInverse() >= 0
               ? QRectF()
               : QRectF(QPointF(std::max(picture.scale.x(0.0), plot.left()), plot.top()), plot.bottomRight());
}
void paintBehind(QPainter& painter, const CombinationMapPicture& picture) {
    const QRectF behind = groundBehind(picture);
    painter.fillRect(behind, theme().panel);
}

/// That its anti-squat rests on starting numbers, as under a field that holds one: up to `right`. Returns
/// where what stands beside it ends.
double paintStartingMark(QPainter& painter, const CombinationMapPicture& picture,
                         const QFontMetricsF& metrics, QPointF right) {
    if (!picture.list.restsOnStarts()) {
        return right.x();
    }
    const QString words = tr("starting numbers");
    const double left = right.x() - metrics.horizontalAdvance(words);
    painter.setPen(theme().muted);
    painter.drawText(QPointF(left, right.y()), words);
    drawStartingDots(painter, left, right.x(), right.y() + metrics.descent() - 1);
    return left - kKeyGap;
}

// What the marks mean, from `right`; as much of it as fits beside the axis's title.
void paintKey(QPainter& painter, const CombinationMapPicture& picture, const QFontMetricsF& metrics,
              double room, double right) {
    const QRectF& plot = picture.scale.plot();
    const double middle = picture.size.height() - metrics.height() / 2 - 1;
    const auto add = [&](const QString& label, bool marked) {
        const double width = metrics.horizontalAdvance(label) + (marked ? 4 * kKeyRadius + 2 : 0);
        if (right - width < plot.left() + room) {
            return;
        }
        painter.setPen(theme().muted);
        painter.drawText(QPointF(right - metrics.horizontalAdvance(label), middle + metrics.capHeight() / 2),
                         label);
        if (marked) {
            paintDot(painter, {right - width + kKeyRadius + 2, middle}, kKeyRadius, DotKind::problem);
        }
        right -= width + kKeyGap;
    };
    const auto& items = picture.list.items();
    if (std::ranges::any_of(items, &CombinationList::Item::problem)) {
        add(tr("has a problem"), true);
    }
    const auto placeless = std::ranges::count_if(items, [](const auto& item) { return !item.hasPlace(); });
    if (placeless > 0) {
        add(tr("%1 can't be assembled").arg(placeless), false);
    }
}

// What stands for what in the names of the combinations, after the axis's title.
QString namesWords(const CombinationMapPicture& picture) {
    const QString brackets = picture.list.car() == nullptr ? QString() : bracketNames(*picture.list.car());
    return brackets.isEmpty() ? QString() : tr("; names: %1").arg(brackets);
}

/// The axes' title with what the names stand for, or without where all of it has no room: half a bracket's
/// name says nothing, and the table's columns say them too.
QString titleWithin(double room, const QString& axes, const CombinationMapPicture& picture,
                    const QFontMetricsF& metrics) {
    const QString whole = axes + namesWords(picture);
    return metrics.horizontalAdvance(whole) <= room ? whole : metrics.elidedText(axes, Qt::ElideRight, room);
}

// A low map has one line over the plot for both axes.
void paintLowTitle(QPainter& painter, const CombinationMapPicture& picture, const QFontMetricsF& metrics) {
    const QString axes =
        tr("Anti-squat, %, over IC distance, %1").arg(unitText(Quantity::length, picture.list.style().units));
    const double right = paintStartingMark(painter, picture, metrics,
                                           {picture.size.width() - kRightRoom, 1 + metrics.ascent()});
    const double room = right - 2;
    painter.setPen(theme().muted);
    painter.drawText(QPointF(2, 1 + metrics.ascent()), titleWithin(room, axes, picture, metrics));
}

void paintTitles(QPainter& painter, const CombinationMapPicture& picture, const QFontMetricsF& metrics) {
    if (!isTall(picture.size)) {
        paintLowTitle(painter, picture, metrics);
        return;
    }
    const QRectF& plot = picture.scale.plot();
    const QString axis = tr("IC distance, %1").arg(unitText(Quantity::length, picture.list.style().units));
    const double baseline = picture.size.height() - 1 - metrics.descent();
    const double right = paintStartingMark(painter, picture, metrics, {plot.right(), baseline});
    const QString across = titleWithin(right - plot.left(), axis, picture, metrics);
    painter.setPen(theme().muted);
    painter.drawText(QPointF(plot.left(), baseline), across);
    paintKey(painter, picture, metrics, metrics.horizontalAdvance(across) + kKeyGap, right);
    const QString up = tr("Anti-squat, %");
    painter.save();
    painter.translate(2 + metrics.ascent(), plot.center().y() + metrics.horizontalAdvance(up) / 2);
    painter.rotate(-90);
    painter.setPen(theme().muted);
    painter.drawText(QPointF(0, 0), up);
    painter.restore();
}

QString windowLabel() {
    return tr("target");
}

// Every dot there is to paint, the best-ranked last. Where many lie on one pixel the first of a kind covers
// the others: no cost grows with the crowd.
template <class Paint>
void eachDot(const CombinationMapPicture& picture, double ratio, const Paint& paint) {
    std::unordered_set<std::uint64_t> taken;
    const auto& ranked = picture.list.ranked();
    for (const bool problems : {true, false}) {
        for (auto at = ranked.rbegin(); at != ranked.rend(); ++at) {
            const CombinationList::Item& item = picture.list.items()[*at];
            const std::optional<QPointF>& place = picture.places[*at];
            if (!place || item.problem != problems) {
                continue;
            }
            const QPoint pixel = (*place * ratio).toPoint();
            const auto key = static_cast<std::uint64_t>(pixel.x()) << 33U |
                             static_cast<std::uint64_t>(pixel.y()) << 1U | (problems ? 1U : 0U);
            if (taken.insert(key).second) {
                paint(*place, beyond(item, picture.scale), problems ? DotKind::problem : DotKind::plain);
            }
        }
    }
}

}  // namespace

QRectF combinationPlot(QSize size, const CombinationMapScale& scale) {
    const QFontMetricsF metrics(textFont(TextSize::small));
    const double labels = std::max(metrics.horizontalAdvance(tickText(scale.leastAntiSquat(), 1.0)),
                                   metrics.horizontalAdvance(tickText(scale.mostAntiSquat(), 1.0)));
    const double title = isTall(size) ? metrics.height() + 3 : 0.0;
    const double above = isTall(size) ? kTopRoom : std::ceil(metrics.height() + 2);
    const QPointF corner(std::ceil(2 + title + labels + kGapY), above);
    const double bottom = size.height() - std::ceil(metrics.height() + kTickGapX + title + 1);
    return {corner,
            QPointF(std::max(size.width() - kRightRoom, corner.x() + 20), std::max(bottom, corner.y() + 20))};
}

QPoint beyond(const CombinationList::Item& item, const CombinationMapScale& scale) {
    const int across = item.inverse > scale.mostInverse() ? -1 : item.inverse < scale.leastInverse() ? 1 : 0;
    const int down = item.antiSquat > scale.mostAntiSquat()    ? -1
                     : item.antiSquat < scale.leastAntiSquat() ? 1
                                                               : 0;
    return {across, down};
}

std::vector<std::optional<QPointF>> placesOf(const CombinationList& list, const CombinationMapScale& scale) {
    std::vector<std::optional<QPointF>> places(list.items().size());
    const QRectF& plot = scale.plot();
    for (std::size_t at = 0; at < places.size(); ++at) {
        const CombinationList::Item& item = list.items()[at];
        if (item.shown && item.hasPlace()) {
            places[at] = QPointF(std::clamp(scale.x(item.inverse), plot.left(), plot.right()),
                                 std::clamp(scale.y(item.antiSquat), plot.top(), plot.bottom()));
        }
    }
    return places;
}

double dotRadius(std::size_t count, const QRectF& plot) {
    constexpr double kShare = 0.19;  // of the distance between dots spread evenly
    const double room = plot.width() * plot.height() / static_cast<double>(std::max<std::size_t>(count, 1));
    return std::clamp(kShare * std::sqrt(room), 1.7, 4.5);
}

QRectF windowLabelBox(const CombinationMapPicture& picture) {
    const QRectF box = picture.target ? picture.scale.boxOf(*picture.target) : QRectF();
    const QFontMetricsF metrics(textFont(TextSize::small));
    const QSizeF size(metrics.horizontalAdvance(windowLabel()), metrics.height());
    if (size.width() + 10 > box.width() || size.height() + 4 > box.height()) {
        return {};
    }
    const double right = box.right() - 6 - size.width();
    const double left = box.left() + 6;
    const double bottom = box.bottom() - 3 - size.height();
    const double top = box.top() + 3;
    const std::array corners{QRectF({right, bottom}, size), QRectF({left, bottom}, size),
                             QRectF({right, top}, size), QRectF({left, top}, size)};
    const auto isFree = [&](const QRectF& corner) {
        return std::ranges::none_of(picture.places, [&](const std::optional<QPointF>& place) {
            return place && corner.adjusted(-6, -6, 6, 6).contains(*place);
        });
    };
    const auto* free = std::ranges::find_if(corners, isFree);
    return free == corners.end() ? corners[0] : *free;
}

void paintMapGround(QPainter& painter, const CombinationMapPicture& picture) {
    painter.setFont(textFont(TextSize::small));
    const QFontMetricsF metrics(painter.font());
    paintBehind(painter, picture);
    paintGrid(painter, picture, metrics);
    paintTitles(painter, picture, metrics);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(picture.focused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.drawRect(picture.scale.plot());
}

void paintMapWindow(QPainter& painter, const CombinationMapPicture& picture) {
    if (!picture.target) {
        return;
    }
    const QRectF box = picture.scale.boxOf(*picture.target);
    if (box.isEmpty()) {
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(faded(theme().instantCenter, theme().dark ? 0.16 : 0.10));
    painter.drawRoundedRect(box, 2.5, 2.5);
    painter.setFont(textFont(TextSize::small));
    const QRectF label = windowLabelBox(picture);
    painter.setPen(theme().instantCenter);
    painter.drawText(label, Qt::AlignCenter, label.isNull() ? QString() : windowLabel());
}

void paintMapWindowSides(QPainter& painter, const CombinationMapPicture& picture) {
    const QRectF box = picture.target ? picture.scale.boxOf(*picture.target) : QRectF();
    if (!box.isEmpty()) {
        painter.setPen(roundPen(theme().instantCenter, 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(box, 2.5, 2.5);
    }
}

void paintMapBehindWords(QPainter& painter, const CombinationMapPicture& picture) {
    painter.setFont(textFont(TextSize::small));
    const QFontMetricsF metrics(painter.font());
    const QRectF behind = groundBehind(picture);
    const QString label = tr("behind the axle");
    const QSizeF size(metrics.horizontalAdvance(label) + 6, metrics.height());
    if (size.width() + 4 < behind.width()) {
        const QRectF box(behind.bottomRight() - QPointF(size.width() + 2, size.height() + 2), size);
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(theme().panel, 0.85));
        painter.drawRoundedRect(box, 2.5, 2.5);
        painter.setPen(theme().muted);
        painter.drawText(box, Qt::AlignCenter, label);
    }
}

void paintMapDots(QPainter& painter, const CombinationMapPicture& picture) {
    const double radius = dotRadius(picture.list.shownCount(), picture.scale.plot());
    eachDot(picture, 1.0, [&](QPointF place, QPoint out, DotKind kind) {
        if (out.isNull()) {
            paintDot(painter, place, radius, kind);
        } else {
            paintEdgeMark(painter, place, unit(QPointF(out)), kind);
        }
    });
}

QPixmap paintMapDots(const CombinationMapPicture& picture, double ratio) {
    QPixmap layer(picture.size * ratio);
    layer.setDevicePixelRatio(ratio);
    layer.fill(Qt::transparent);
    const double radius = dotRadius(picture.list.shownCount(), picture.scale.plot());
    const double half = std::ceil(radius + 4);
    const auto stampOf = [&](DotKind kind) {
        QPixmap stamp(QSize(static_cast<int>(2 * half), static_cast<int>(2 * half)) * ratio);
        stamp.setDevicePixelRatio(ratio);
        stamp.fill(Qt::transparent);
        QPainter painter(&stamp);
        painter.setRenderHint(QPainter::Antialiasing);
        paintDot(painter, {half, half}, radius, kind);
        return stamp;
    };
    const QPixmap plain = stampOf(DotKind::plain);
    const QPixmap problem = stampOf(DotKind::problem);
    QPainter painter(&layer);
    painter.setRenderHint(QPainter::Antialiasing);
    eachDot(picture, ratio, [&](QPointF place, QPoint out, DotKind kind) {
        if (out.isNull()) {
            const QPointF pixel = QPointF((place * ratio).toPoint()) / ratio;
            painter.drawPixmap(pixel - QPointF(half, half), kind == DotKind::problem ? problem : plain);
        } else {
            paintEdgeMark(painter, place, unit(QPointF(out)), kind);
        }
    });
    return layer;
}

}  // namespace bolthole
