#include "widgets/fit/fit_parts.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/units/sure_text.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kBarHeight = 8;
constexpr double kDot = 4;                // px, radius
constexpr double kUnderPointer = 9;       // px
constexpr double kRoomAround = 0.08;      // of the range, at either end
constexpr double kLeastRange = 0.02;      // s
constexpr double kTakenForMistake = 0.3;  // weight

QString inSeconds(double seconds) {
    return QString::number(seconds, 'f', 3);
}

}  // namespace

ShareBar::ShareBar(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void ShareBar::showShare(double percent) {
    percent_ = std::clamp(percent, 0.0, 100.0);
    update();
}

void ShareBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    QRectF bar(0, (height() - kBarHeight) / 2, width(), kBarHeight);
    painter.setBrush(over(theme().border, 0.55, theme().card));
    painter.drawRoundedRect(bar, kBarHeight / 2, kBarHeight / 2);
    if (percent_ >= 1) {
        bar.setWidth(std::max(kBarHeight / 2, bar.width() * percent_ / 100));
        painter.setBrush(theme().instantCenter);
        painter.drawRoundedRect(bar, kBarHeight / 2, kBarHeight / 2);
    }
}

PredictionPlot::PredictionPlot(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Predicted against run"));
}

void PredictionPlot::showPasses(std::vector<FittedPass> passes, std::vector<QString> names) {
    passes_ = std::move(passes);
    names_ = std::move(names);
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    QStringList spoken;
    for (std::size_t index = 0; index < passes_.size(); ++index) {
        const FittedPass& pass = passes_[index];
        if (pass.weight >= kTakenForMistake) {  // the others need the room; a mistake stands at the edge
            low = std::min({low, pass.run, pass.predicted});
            high = std::max({high, pass.run, pass.predicted});
        }
        spoken += tr("%1: run %2 s, predicted %3 s")
                      .arg(names_[index], inSeconds(pass.run), inSeconds(pass.predicted));
    }
    if (low <= high) {
        const double room = std::max(kLeastRange, high - low) * kRoomAround;
        const double middle = (low + high) / 2;
        low_ = std::min(low, middle - kLeastRange / 2) - room;
        high_ = std::max(high, middle + kLeastRange / 2) + room;
    }
    setAccessibleDescription(spoken.join(QStringLiteral("; ")));
    update();
}

QRectF PredictionPlot::plot() const {
    const QFontMetricsF metrics(textFont(TextSize::small));
    const double left = metrics.horizontalAdvance(QStringLiteral("0.000")) + 10;
    return QRectF(rect()).adjusted(left, metrics.height() + 8, -8, -metrics.height() - 8);
}

QPointF PredictionPlot::placeOf(double predicted, double run) const {
    const QRectF box = plot();
    const auto share = [this](double seconds) {
        return std::clamp((seconds - low_) / (high_ - low_), 0.0, 1.0);
    };
    return {box.left() + share(predicted) * box.width(), box.bottom() - share(run) * box.height()};
}

void PredictionPlot::paintAxes(QPainter& painter) const {
    const QRectF box = plot();
    painter.setFont(textFont(TextSize::small));
    painter.setPen(QPen(theme().grid, 1));
    painter.drawLine(box.bottomLeft(), box.bottomRight());
    painter.drawLine(box.bottomLeft(), box.topLeft());
    painter.setPen(dashedPen(theme().muted, 1, {4, 4}));
    painter.drawLine(placeOf(low_, low_), placeOf(high_, high_));
    painter.setPen(theme().muted);
    const double height = QFontMetricsF(painter.font()).height();
    const QRectF left(0, 0, box.left() - 6, height);
    for (const double at : {low_ + (high_ - low_) * 0.1, high_ - (high_ - low_) * 0.1}) {
        const QPointF place = placeOf(at, at);
        painter.drawText(left.translated(0, place.y() - height / 2), Qt::AlignRight | Qt::AlignVCenter,
                         inSeconds(at));
    }
    for (const double share : {0.1, 0.5}) {  // the last would stand where the axis is named
        const double at = low_ + (high_ - low_) * share;
        painter.drawText(QRectF(placeOf(at, at).x() - 40, box.bottom() + 4, 80, height), Qt::AlignCenter,
                         inSeconds(at));
    }
    painter.drawText(QRectF(0, 0, width(), height), Qt::AlignLeft, tr("run, s"));
    painter.drawText(QRectF(0, box.bottom() + 4, box.right(), height), Qt::AlignRight, tr("predicted, s"));
}

void PredictionPlot::paintPass(QPainter& painter, const FittedPass& pass) const {
    const double half = kCoverage95 * pass.predictedU;
    const QPointF at = placeOf(pass.predicted, pass.run);
    const QColor color = pass.isInside() ? theme().instantCenter : theme().upper;
    const QLineF whisker(placeOf(pass.predicted - half, pass.run), placeOf(pass.predicted + half, pass.run));
    if (const std::optional<QLineF> seen = clipped(whisker, plot())) {
        painter.setPen(QPen(faded(theme().muted, 0.7), 1));
        painter.drawLine(*seen);
    }
    painter.setPen(QPen(color, 1.6));
    painter.setBrush(pass.weight < kTakenForMistake ? theme().card : color);
    if (pass.isInside()) {
        painter.drawEllipse(at, kDot, kDot);
    } else {  // told by its shape, too
        const QPointF diamond[] = {at + QPointF(0, -kDot - 1), at + QPointF(kDot + 1, 0),
                                   at + QPointF(0, kDot + 1), at + QPointF(-kDot - 1, 0)};
        painter.drawPolygon(diamond, 4);
    }
}

void PredictionPlot::paintEvent(QPaintEvent*) {
    if (passes_.empty()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintAxes(painter);
    for (const FittedPass& pass : passes_) {
        paintPass(painter, pass);
    }
}

QString PredictionPlot::nameUnder(QPointF at) const {
    QString name;
    double least = kUnderPointer;
    for (std::size_t index = 0; index < passes_.size(); ++index) {
        const FittedPass& pass = passes_[index];
        const QPointF away = placeOf(pass.predicted, pass.run) - at;
        const double distance = std::hypot(away.x(), away.y());
        if (distance <= least) {
            least = distance;
            const std::string half =
                halfWidthText(pass.predictedU, Quantity::time, Units::metric, Fineness::fine);
            name = tr("%1: run %2 s, predicted %3 ± %4 s")
                       .arg(names_[index], inSeconds(pass.run), inSeconds(pass.predicted),
                            QString::fromStdString(half));
            if (pass.weight < kTakenForMistake) {
                name += tr("\nso far off that it hardly counts");
            }
        }
    }
    return name;
}

bool PredictionPlot::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        QToolTip::showText(help->globalPos(), nameUnder(help->pos()), this);
        return true;
    }
    return QWidget::event(event);
}

}  // namespace bolthole
