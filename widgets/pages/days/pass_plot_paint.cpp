// How the plot of the passes is painted.
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_plot.h"
#include "widgets/pages/days/pass_words.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {

constexpr double kMark = 4.5;  // px, half a mark's width
constexpr int kMostTimeTicks = 5;

/// Decimals of a time that tell ticks of `step` apart.
int decimalsOf(double step) {
    return step < 0.0099 ? 3 : step < 0.099 ? 2 : 1;
}

}  // namespace

void paintSurfaceMark(QPainter& painter, QPointF at, const std::optional<SurfaceKind>& kind, bool isStruck) {
    const QColor ink = isStruck ? over(theme().muted, 0.45, theme().card) : theme().ink;
    const bool isHollow = !kind || kind == SurfaceKind::street;
    painter.setPen(QPen(ink, 1.8));
    painter.setBrush(isHollow || isStruck ? theme().card : ink);
    if (!kind) {
        painter.drawPolygon(QPolygonF{at + QPointF(0, -5.5), at + QPointF(5.5, 0), at + QPointF(0, 5.5),
                                      at + QPointF(-5.5, 0)});
    } else if (kind == SurfaceKind::street) {
        painter.drawEllipse(at, kMark, kMark);
    } else if (kind == SurfaceKind::preppedTrack) {
        painter.drawRect(QRectF(at.x() - 4, at.y() - 4, 8, 8));
    } else {
        painter.drawPolygon(QPolygonF{at + QPointF(0, -5), at + QPointF(5, 4), at + QPointF(-5, 4)});
    }
}

void PassPlot::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (marks_.empty()) {
        paintEmpty(painter);
        return;
    }
    painter.setFont(textFont(TextSize::small));
    paintTimeAxis(painter);
    if (measure_) {
        paintMeasureAxis(painter);
        paintLetters(painter);
    } else {
        for (const Stretch& stretch : stretches_) {
            paintBand(painter, stretch);
        }
        for (const Stretch& stretch : stretches_) {
            paintStretch(painter, stretch);
        }
        paintNumbers(painter);
        paintDays(painter);
    }
    paintMarks(painter);
    if (hasFocus()) {
        painter.setPen(QPen(over(theme().focus, 0.45, theme().card), 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
    }
}

void PassPlot::paintEmpty(QPainter& painter) const {
    painter.setFont(textFont(TextSize::body));
    painter.setPen(theme().muted);
    const QString words = missing_ > 0 ? tr("No timed pass has a number for %1.").arg(measureName(*measure_))
                                       : tr("No pass has a 60 ft time yet.");
    painter.drawText(rect(), static_cast<int>(Qt::AlignCenter | Qt::TextWordWrap), words);
}

void PassPlot::paintTimeAxis(QPainter& painter) const {
    const QRectF box = plotBox();
    const double step = niceStep((slow_ - quick_) / kMostTimeTicks);
    for (double time = std::ceil(quick_ / step) * step; time <= slow_; time += step) {
        const double height = heightOf(time);
        painter.setPen(QPen(theme().grid, 1));
        painter.drawLine(QPointF(box.left(), height), QPointF(box.right(), height));
        painter.setPen(theme().muted);
        painter.drawText(QRectF(0, height - 10, box.left() - 8, 20),
                         static_cast<int>(Qt::AlignRight | Qt::AlignVCenter),
                         QString::number(time, 'f', decimalsOf(step)));
    }
}

void PassPlot::paintMeasureAxis(QPainter& painter) const {
    const QRectF box = plotBox();
    const QFontMetricsF metrics(painter.font());
    const AxisOnScreen axis{low_, high_, box.left(), box.right(), box.left(), box.right()};
    for (const AxisTick& tick : linearTicks(axis, 1, metrics)) {
        painter.setPen(QPen(theme().grid, 1));
        painter.drawLine(QPointF(tick.position, box.top()), QPointF(tick.position, box.bottom()));
        painter.setPen(theme().muted);
        painter.drawText(QPointF(tick.labelLeft, box.bottom() + metrics.ascent() + 5), tick.label);
    }
    const QString unit = measureUnit(*measure_, book_.units());
    QString words = measureName(*measure_) + (unit.isEmpty() ? QString() : QStringLiteral(", ") + unit);
    if (missing_ > 0) {
        words += tr(" · %1 timed passes without it").arg(missing_);
    }
    painter.setPen(theme().muted);
    painter.drawText(QRectF(box.left(), box.bottom() + 19, box.width(), 18),
                     static_cast<int>(Qt::AlignHCenter | Qt::AlignVCenter), words);
}

double PassPlot::bandSide(const Stretch& stretch, bool right) const {
    constexpr double kBeside = 0.42;  // passes
    return right ? alongOf(marks_[stretch.last].at + kBeside) : alongOf(marks_[stretch.first].at - kBeside);
}

// The mean of all repeats of the stretch, and where its true mean lies by the scatter of all repeats.
void PassPlot::paintBand(QPainter& painter, const Stretch& stretch) const {
    const Sample& sample = stretch.sample;
    if (sample.count == 0) {
        return;
    }
    const double left = bandSide(stretch, false);
    const double right = bandSide(stretch, true);
    if (book_.scatter()) {
        if (const Answer<Interval> interval = meanInterval(sample, *book_.scatter())) {
            const QRectF box = plotBox();
            const double top = std::max(heightOf(interval->high), box.top());
            const double bottom = std::min(heightOf(interval->low), box.bottom());
            painter.fillRect(QRectF(left, top, right - left, bottom - top),
                             over(theme().instantCenter, 0.13, theme().card));
        }
    }
    painter.setPen(roundPen(theme().instantCenter, 2));
    painter.drawLine(QPointF(left, heightOf(sample.mean)), QPointF(right, heightOf(sample.mean)));
}

void PassPlot::paintStretch(QPainter& painter, const Stretch& stretch) const {
    const QRectF box = plotBox();
    const double left = bandSide(stretch, false);
    const double right = bandSide(stretch, true);
    const bool isFirst = stretch.first == 0;
    if (!isFirst) {
        const double line = (bandSide({0, stretch.first - 1, false, {}, {}}, true) + left) / 2;
        painter.setPen(stretch.beginsDay ? QPen(theme().border, 1.5)
                                         : dashedPen(theme().border, 1.2, {3, 3}));
        painter.drawLine(QPointF(line, 4), QPointF(line, box.bottom()));
    }
    const QString letter = book_.letterOf(marks_[stretch.first].pass);
    painter.setFont(textFont(TextSize::title, true));
    if (painter.fontMetrics().horizontalAdvance(letter) + 4 <= right - left) {
        painter.setPen(theme().ink);
        painter.drawText(QRectF(left, 2, right - left, 20), static_cast<int>(Qt::AlignCenter), letter);
    }
    painter.setFont(textFont(TextSize::small));
    constexpr double kLeastWords = 40;
    if (!stretch.change.isEmpty() && right - left > kLeastWords) {
        painter.setPen(theme().focus);
        painter.drawText(
            QRectF(left, 23, right - left, 18), static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter),
            painter.fontMetrics().elidedText(stretch.change, Qt::ElideRight, static_cast<int>(right - left)));
    }
}

void PassPlot::paintNumbers(QPainter& painter) const {
    const QRectF box = plotBox();
    painter.setPen(theme().muted);
    double free = 0;
    for (const Mark& mark : marks_) {
        const QString number = QString::number(book_.passes()[mark.pass].number);
        const double half = painter.fontMetrics().horizontalAdvance(number) / 2.0;
        if (mark.place.x() - half >= free) {
            painter.drawText(QRectF(mark.place.x() - 20, box.bottom() + 3, 40, 16),
                             static_cast<int>(Qt::AlignCenter), number);
            free = mark.place.x() + half + 6;
        }
    }
}

void PassPlot::paintDays(QPainter& painter) const {
    const QRectF box = plotBox();
    painter.setPen(theme().muted);
    double free = 0;
    for (std::size_t at = 0; at < stretches_.size(); ++at) {
        if (!stretches_[at].beginsDay) {
            continue;
        }
        const auto isDay = [](const Stretch& stretch) { return stretch.beginsDay; };
        const auto next =
            std::find_if(stretches_.begin() + static_cast<std::ptrdiff_t>(at) + 1, stretches_.end(), isDay);
        const double left = std::max(bandSide(stretches_[at], false), free);
        const double right = next == stretches_.end() ? width() : bandSide(*next, false) - 8;
        const Pass& pass = book_.passes()[marks_[stretches_[at].first].pass];
        const QString ground =
            passNumberWords(pass.surface.temperature, PassField::surfaceTemperature, book_.units());
        QStringList parts{dayText(pass.date), surfaceText(pass.surface.kind, pass.surface.name),
                          ground.isEmpty() ? ground : PassPlot::tr("surface %1").arg(ground)};
        parts.removeAll(QString());
        constexpr double kLeastDay = 60;
        if (right - left < kLeastDay) {
            continue;
        }
        const QString words = painter.fontMetrics().elidedText(
            parts.join(QStringLiteral(", ")), Qt::ElideRight, static_cast<int>(right - left));
        painter.drawText(QRectF(left, box.bottom() + 20, right - left, 16),
                         static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter), words);
        free = left + painter.fontMetrics().horizontalAdvance(words) + 12;
    }
}

// One letter for each cluster of marks of a run, beside its middle; where two would stand on each other the
// later stands further right.
void PassPlot::paintLetters(QPainter& painter) const {
    std::map<std::pair<std::size_t, double>, std::pair<double, int>> sums;
    for (const Mark& mark : marks_) {
        if (!book_.passes()[mark.pass].struck) {
            auto& [sum, count] = sums[{book_.runs().ofPass[mark.pass], mark.at}];
            sum += *book_.passes()[mark.pass].sixtyFoot;
            ++count;
        }
    }
    painter.setFont(textFont(TextSize::small, true));
    painter.setPen(theme().muted);
    std::vector<QRectF> taken;
    for (const auto& [key, sum] : sums) {
        const QString letter = QString::fromStdString(letterOf(key.first));
        const QFontMetrics metrics = painter.fontMetrics();
        QRectF place(alongOf(key.second) + 9, heightOf(sum.first / sum.second) - metrics.height() / 2.0,
                     metrics.horizontalAdvance(letter), metrics.height());
        const auto isOver = [&](const QRectF& other) { return other.intersects(place); };
        for (auto other = std::ranges::find_if(taken, isOver); other != taken.end();
             other = std::ranges::find_if(taken, isOver)) {
            place.moveLeft(other->right() + 4);
        }
        painter.drawText(place, static_cast<int>(Qt::AlignCenter), letter);
        taken.push_back(place);
    }
    painter.setFont(textFont(TextSize::small));
}

void PassPlot::paintMarks(QPainter& painter) const {
    for (const Mark& mark : marks_) {
        const Pass& pass = book_.passes()[mark.pass];
        paintSurfaceMark(painter, mark.place, pass.surface.kind, pass.struck);
    }
    if (const std::optional<std::size_t> mark = selected_ ? markOf(*selected_) : std::nullopt) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(marks_[*mark].place, 9, 9);
    }
}

SurfaceKey::SurfaceKey(const PassBook& book, QWidget* parent) : QWidget(parent), book_(book) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

QString SurfaceKey::nameFor(const std::optional<SurfaceKind>& kind) {
    return kind ? fromView(nameOf(*kind)) : tr("surface not said");
}

void SurfaceKey::refresh() {
    kinds_.clear();
    for (const Pass& pass : book_.passes()) {
        if (pass.sixtyFoot && std::ranges::find(kinds_, pass.surface.kind) == kinds_.end()) {
            kinds_.push_back(pass.surface.kind);
        }
    }
    updateGeometry();
    update();
}

QSize SurfaceKey::sizeHint() const {
    const QFontMetrics metrics(textFont(TextSize::small));
    int width = 0;
    for (const auto& kind : kinds_) {
        width += metrics.horizontalAdvance(nameFor(kind)) + 32;
    }
    return {width, 20};
}

void SurfaceKey::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(textFont(TextSize::small));
    double left = 6;
    for (const auto& kind : kinds_) {
        paintSurfaceMark(painter, {left + 6, height() / 2.0}, kind, false);
        painter.setPen(theme().muted);
        const QString name = nameFor(kind);
        painter.drawText(QRectF(left + 18, 0, 300, height()),
                         static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter), name);
        left += painter.fontMetrics().horizontalAdvance(name) + 32;
    }
}

}  // namespace bolthole
