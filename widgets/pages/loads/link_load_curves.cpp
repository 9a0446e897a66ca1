#include "widgets/pages/loads/link_load_curves.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kKeyWidth = 190;  // px
constexpr double kLeft = 86;       // px, for the travel's labels
constexpr double kPlotTop = 24;
constexpr double kBottom = 24;
constexpr double kSame = 1.0;  // N: sides whose loads differ by less have one curve

QPen penOf(Role role, bool isRight) {
    const QColor color = roleColor(role);
    return isRight ? dashedPen(color, 2, {5, 3}) : roundPen(color, 2);
}

/// The rows of a sweep that are drawn: all, or as many as the picture can tell apart, both ends included.
std::vector<std::size_t> drawnRows(std::size_t rows) {
    constexpr std::size_t kMostDrawn = 400;
    const std::size_t step = rows / kMostDrawn + 1;
    std::vector<std::size_t> drawn;
    for (std::size_t row = 0; row < rows; row += step) {
        drawn.push_back(row);
    }
    if (!drawn.empty() && drawn.back() != rows - 1) {
        drawn.push_back(rows - 1);
    }
    return drawn;
}

bool isSame(const std::vector<double>& one, const std::vector<double>& other) {
    return std::ranges::equal(one, other, [](double a, double b) {
        return std::isnan(a) ? std::isnan(b) : std::abs(a - b) < kSame;
    });
}

}  // namespace

LinkLoadCurves::LinkLoadCurves(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Link loads through travel"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void LinkLoadCurves::showLoads(const Car& car, const Trace& trace, const LinkFigures& figures, Units units) {
    units_ = units;
    travel_.clear();
    curves_.clear();
    const std::vector<std::size_t> rows = drawnRows(trace.stations.size());
    for (const std::size_t row : rows) {
        travel_.push_back(trace.stations[row][Figure::travel]);
    }
    for (std::size_t joint = 0; joint < figures.joints.size(); ++joint) {
        addCurve(car, figures, joint, rows);
    }
    low_ = 0;
    high_ = 0;
    for (const Curve& curve : curves_) {
        for (const double load : curve.loads) {
            low_ = std::isnan(load) ? low_ : std::min(low_, load);
            high_ = std::isnan(load) ? high_ : std::max(high_, load);
        }
    }
    const double margin = 0.06 * std::max(high_ - low_, 1.0);
    low_ -= margin;
    high_ += margin;
    setAccessibleDescription(tr("The table above holds the largest loads and where they are."));
    update();
}

void LinkLoadCurves::addCurve(const Car& car, const LinkFigures& figures, std::size_t joint,
                              const std::vector<std::size_t>& rows) {
    const JointLoads& at = figures.joints[joint];
    const Link& link = car.links[static_cast<std::size_t>(at.link)];
    Curve curve{QString::fromStdString(jointWords(car, at.link, at.side)),
                roleOf(link, car.rearTireRadius),
                at.side == Side::right,
                {}};
    for (const std::size_t row : rows) {
        curve.loads.push_back(figures.sweep.value(row, joint));
    }
    const bool isPair = joint > 0 && figures.joints[joint - 1].link == at.link;
    if (isPair && !curves_.empty() && isSame(curves_.back().loads, curve.loads)) {
        curves_.back().name = tr("%1, both sides").arg(linkName(car, at.link));
        return;
    }
    curves_.push_back(std::move(curve));
}

QPointF LinkLoadCurves::place(const QRectF& plot, double load, double travel) const {
    const double span = std::max(travel_.back() - travel_.front(), 1e-6);
    return {plot.left() + (load - low_) / (high_ - low_) * plot.width(),
            plot.bottom() - (travel - travel_.front()) / span * plot.height()};
}

void LinkLoadCurves::paintEvent(QPaintEvent*) {
    if (travel_.empty() || curves_.empty()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF plot(kLeft, kPlotTop, width() - kLeft - kKeyWidth - 16, height() - kPlotTop - kBottom);
    paintAxes(painter, plot);
    for (const Curve& curve : curves_) {
        paintCurve(painter, plot, curve);
    }
    paintKey(painter, {plot.right() + 16, kPlotTop, kKeyWidth, plot.height()});
}

void LinkLoadCurves::paintAxes(QPainter& painter, const QRectF& plot) const {
    painter.setFont(textFont(TextSize::small));
    const QFontMetricsF metrics(painter.font());
    const AxisOnScreen axis{low_, high_, plot.left(), plot.right(), plot.left(), plot.right()};
    for (const AxisTick& tick : linearTicks(axis, shownUnit(Quantity::force, units_), metrics)) {
        painter.setPen(QPen(theme().grid, 1));
        painter.drawLine(QPointF(tick.position, plot.top()), QPointF(tick.position, plot.bottom()));
        painter.setPen(theme().muted);
        painter.drawText(QPointF(tick.labelLeft, plot.bottom() + metrics.ascent() + 5), tick.label);
    }
    for (const double travel : {travel_.front(), 0.0, travel_.back()}) {
        const QPointF at = place(plot, low_, travel);
        painter.setPen(QPen(theme().grid, 1));
        painter.drawLine(at, place(plot, high_, travel));
        painter.setPen(theme().muted);
        const QRectF box(0, at.y() - 10, kLeft - 8, 20);
        painter.drawText(box, static_cast<int>(Qt::AlignRight | Qt::AlignVCenter),
                         travelWords(travel, units_));
    }
    painter.setPen(QPen(theme().metal, 1.5));
    painter.drawLine(place(plot, 0, travel_.front()), place(plot, 0, travel_.back()));
    const QString unit = unitText(Quantity::force, units_);
    painter.setPen(theme().muted);
    const double zero = place(plot, 0, 0).x();
    painter.drawText(QRectF(zero + 8, 2, plot.right() - zero, kPlotTop - 4),
                     static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter), tr("tension, %1 →").arg(unit));
    painter.drawText(QRectF(plot.left() - kLeft, 2, zero - 8 - plot.left() + kLeft, kPlotTop - 4),
                     static_cast<int>(Qt::AlignRight | Qt::AlignVCenter), tr("← compression"));
}

void LinkLoadCurves::paintCurve(QPainter& painter, const QRectF& plot, const Curve& curve) const {
    painter.setPen(penOf(curve.role, curve.isRight));
    QPolygonF line;
    for (std::size_t index = 0; index < travel_.size(); ++index) {
        if (std::isnan(curve.loads[index])) {
            painter.drawPolyline(line);
            line.clear();
            continue;
        }
        line << place(plot, curve.loads[index], travel_[index]);
    }
    painter.drawPolyline(line);
}

void LinkLoadCurves::paintKey(QPainter& painter, const QRectF& box) const {
    painter.setFont(textFont(TextSize::small));
    const QFontMetricsF metrics(painter.font());
    constexpr double kSample = 26;
    double y = box.top() + 8;
    for (const Curve& curve : curves_) {
        painter.setPen(penOf(curve.role, curve.isRight));
        painter.drawLine(QPointF(box.left(), y), QPointF(box.left() + kSample, y));
        painter.setPen(theme().ink);
        const double room = box.width() - kSample - 8;
        painter.drawText(QPointF(box.left() + kSample + 8, y + metrics.ascent() / 2 - 1),
                         metrics.elidedText(curve.name, Qt::ElideRight, room));
        y += metrics.height() + 3;
    }
}

}  // namespace bolthole
