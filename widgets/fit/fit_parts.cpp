#include "widgets/fit/fit_parts.h"

#include <QPainter>
#include <algorithm>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kBarHeight = 8;
constexpr double kRoomAround = 0.08;      // of the range, at either end
constexpr double kLeastRange = 0.02;      // s
constexpr double kTakenForMistake = 0.3;  // weight

QString inSeconds(double seconds) {
    return QString::number(seconds, 'f', 3);
}

/// What both axes show: all but mistakes, which stand at the edge.
Extent timesShown(const std::vector<FittedPass>& passes) {
    Extent times;
    for (const FittedPass& pass : passes) {
        if (pass.weight >= kTakenForMistake) {
            times.take(pass.run);
            times.take(pass.predicted);
        }
    }
    if (!times.holdsAny()) {
        return {0, 1};
    }
    const double room = std::max(kLeastRange, times.most - times.least) * kRoomAround;
    const double middle = (times.least + times.most) / 2;
    return {std::min(times.least, middle - kLeastRange / 2) - room,
            std::max(times.most, middle + kLeastRange / 2) + room};
}

QString tellsOf(const FittedPass& pass, const QString& name) {
    const std::string half = halfWidthText(pass.predictedU, Quantity::time, Units::metric, Fineness::fine);
    QString words =
        PredictionPlot::tr("%1: run %2 s, predicted %3 ± %4 s")
            .arg(name, inSeconds(pass.run), inSeconds(pass.predicted), QString::fromStdString(half));
    if (pass.weight < kTakenForMistake) {
        words += PredictionPlot::tr("\nso far off that it hardly counts");
    }
    return words;
}

ChartSeries predictions(const std::vector<FittedPass>& passes, const std::vector<QString>& names,
                        const Extent& times) {
    ChartSeries series{.name = {}, .color = &Theme::muted, .line = ChartLine::none, .marksPoints = true};
    for (std::size_t index = 0; index < passes.size(); ++index) {
        const FittedPass& pass = passes[index];
        const double half = kCoverage95 * pass.predictedU;
        series.points.push_back({std::clamp(pass.run, times.least, times.most),
                                 std::clamp(pass.predicted, times.least, times.most), pass.predicted - half,
                                 pass.predicted + half});
        series.marks.push_back({.mark = pass.isInside() ? ChartMark::circle : ChartMark::diamond,
                                .isFilled = pass.weight >= kTakenForMistake,
                                .color = pass.isInside() ? &Theme::instantCenter : &Theme::upper});
        series.pointWords << tellsOf(pass, names[index]);
    }
    return series;
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

PredictionPlot::PredictionPlot(QWidget* parent)
    : CurveChart(tr("Predicted against run"), lookInCard(ChartLook::Head::keys, {380, 190}, {220, 150}),
                 parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void PredictionPlot::showPasses(const std::vector<FittedPass>& passes, const std::vector<QString>& names) {
    const Extent times = timesShown(passes);
    ChartAxis axis;
    axis.isUpright = true;
    axis.low = times.least;
    axis.high = times.most;
    axis.decimals = 3;
    axis.title = tr("run, s");
    ChartCard card;
    card.titles = {tr("predicted")};
    card.unitText = QStringLiteral("s");
    card.decimals = 3;
    card.extent = times;
    card.isExtentExact = true;
    const ChartSeries diagonal{.name = {},
                               .points = {{times.least, times.least}, {times.most, times.most}},
                               .color = &Theme::muted,
                               .line = ChartLine::dashed,
                               .width = 1};
    card.series = {diagonal, predictions(passes, names, times)};
    showCards(axis, {card});
    QStringList spoken;
    for (std::size_t index = 0; index < passes.size(); ++index) {
        spoken += tr("%1: run %2 s, predicted %3 s")
                      .arg(names[index], inSeconds(passes[index].run), inSeconds(passes[index].predicted));
    }
    setAccessibleDescription(spoken.join(QStringLiteral("; ")));
}

}  // namespace bolthole
