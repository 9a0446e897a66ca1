// A chart of made-up curves, shown, and what can be told of its picture.
#pragma once

#include <QApplication>
#include <QImage>
#include <QMouseEvent>
#include <QTest>
#include <QWheelEvent>
#include <vector>

#include "widgets/curves/curve_chart.h"
#include "widgets/kit/theme.h"

namespace bolthole::test {

/// y = 2 x over 0 to 1, in eleven rows.
inline ChartSeries straight(const QString& name) {
    ChartSeries series{.name = name};
    for (int row = 0; row <= 10; ++row) {
        series.points.push_back({row / 10.0, row / 5.0});
    }
    return series;
}

inline ChartCard cardOf(const QString& title, std::vector<ChartSeries> series) {
    ChartCard card;
    card.titles = {title};
    card.unitText = QStringLiteral("g");
    card.minimumSpan = 0.1;
    card.series = std::move(series);
    return card;
}

/// Five passes with error bars.
inline ChartSeries passes() {
    ChartSeries series{.name = QStringLiteral("sixty feet"), .line = ChartLine::none};
    series.mark = ChartMark::circle;
    series.marksPoints = true;
    for (int pass = 1; pass <= 5; ++pass) {
        const double value = 1.5 - 0.02 * pass;
        series.points.push_back({static_cast<double>(pass), value, value - 0.01, value + 0.01});
    }
    return series;
}

inline ChartAxis passAxis() {
    std::vector<ImposedLabel> labels;
    for (int pass = 1; pass <= 5; ++pass) {
        labels.push_back({static_cast<double>(pass), QStringLiteral("pass %1").arg(pass)});
    }
    return labelAxis(labels);
}

inline ChartLook looking(bool canZoom, bool isStacked = false) {
    ChartLook look;
    look.canZoom = canZoom;
    look.isStacked = isStacked;
    return look;
}

/// Whether the color is seen within three pixels of a place.
inline bool isSeen(const QImage& image, QPoint place, const QColor& color) {
    for (int y = -3; y <= 3; ++y) {
        for (int x = -3; x <= 3; ++x) {
            if (image.pixelColor(place + QPoint(x, y)) == color) {
                return true;
            }
        }
    }
    return false;
}

/// A chart wired as a page wires it: what is asked for is shown.
class ShownChart {
  public:
    ShownChart(const ChartLook& look, const ChartAxis& axis, const std::vector<ChartCard>& cards,
               QSize size = {640, 400})
        : chart(QStringLiteral("Curves"), look) {
        ThemeKeeper::instance().choose(Appearance::light);
        chart.resize(size);
        QObject::connect(&chart, &CurveChart::cursorMoved, [this](double imposed) {
            asked.push_back(imposed);
            chart.showCursor(imposed);
        });
        chart.showCards(axis, cards);
        chart.show();
        [[maybe_unused]] const bool exposed = QTest::qWaitForWindowExposed(&chart);
    }
    /// A place in a card's plot, px.
    [[nodiscard]] QPoint at(double imposed, double value, std::size_t card = 0) const {
        return chart.onScreen()[card].plot().at(imposed, value).toPoint();
    }
    void wheel(QPoint place, int notches, Qt::KeyboardModifiers with) {
        QWheelEvent event(place, chart.mapToGlobal(place), {}, {0, 120 * notches}, Qt::NoButton, with,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(&chart, &event);
    }

    void moveMouse(QPoint place, Qt::MouseButton held = Qt::NoButton) {
        QMouseEvent event(QEvent::MouseMove, place, chart.mapToGlobal(place), Qt::NoButton, held, {});
        QApplication::sendEvent(&chart, &event);
    }

    CurveChart chart;
    std::vector<double> asked;
};

/// Whether any pixel of a place has the color, exactly.
inline bool isIn(const QImage& image, const QRectF& place, const QColor& color) {
    const QRect area = place.toAlignedRect() & image.rect();
    for (int y = area.top(); y <= area.bottom(); ++y) {
        for (int x = area.left(); x <= area.right(); ++x) {
            if (image.pixelColor(x, y) == color) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace bolthole::test
