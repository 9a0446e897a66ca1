#include "widgets/curve_card.h"

#include <algorithm>
#include <cmath>

#include "widgets/distance_scale.h"
#include "widgets/theme.h"

namespace bolthole {

namespace {

constexpr int kPad = 6;      // inside the card, left and right
constexpr int kTopPad = 7;   // above the title
constexpr int kRowGap = 3;   // under the title
constexpr int kPlotGap = 9;  // above the plot
constexpr int kTickLabelGap = 5;
constexpr double kCorner = 6.0;
constexpr double kSample = 11.0;  // the piece of line in a key
constexpr double kKeyGap = 3.0;
constexpr double kUnitGap = 8.0;    // at least, between title and unit
constexpr double kWidestKey = 9.0;  // text heights; values of wide cards stay near their names
constexpr double kNarrowKey = 6.5;  // text heights; keys of narrower cards are set smaller

QString fromView(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QFont figureFont() {
    QFont font = textFont(TextSize::body, true);
    font.setPointSizeF(font.pointSizeF() * 1.4);
    return font;
}

/// The pen of a card's first or second curve: the second is thinner and dash-dotted.
QPen curvePen(bool second, bool faded) {
    QColor color = theme().instantCenter;
    color.setAlphaF(faded ? 0.4F : 1.0F);
    QPen pen(color, second ? 1.7 : 2.2);
    pen.setCapStyle(second ? Qt::FlatCap : Qt::RoundCap);
    pen.setJoinStyle(Qt::RoundJoin);
    if (second) {
        pen.setDashPattern({4.0, 1.8, 1.0, 1.8});
    }
    return pen;
}

/// An axis that only maps: the card paints grid and labels itself.
void muteAxis(QCPAxis& axis) {
    axis.setVisible(false);
    axis.grid()->setVisible(false);
}

}  // namespace

CardType::CardType()
    : title(textFont(TextSize::body, true)),
      body(textFont(TextSize::body, true)),
      quiet(textFont(TextSize::small)),
      smallBold(textFont(TextSize::small, true)),
      figure(figureFont()),
      titleMetrics(title),
      bodyMetrics(body),
      quietMetrics(quiet),
      smallBoldMetrics(smallBold),
      figureMetrics(figure) {}

int CardType::header() const {
    const double values = std::max(2.0 * bodyMetrics.height(), figureMetrics.height());
    return static_cast<int>(std::ceil(kTopPad + titleMetrics.height() + kRowGap + values + kPlotGap));
}

int CardType::footer() const {
    return static_cast<int>(std::ceil(2.0 * kTickLabelGap + quietMetrics.height()));
}

TitleFit fitTitle(const QStringList& titles, const QString& unit, double width, const CardType& type) {
    const double besideUnit = width - type.quietMetrics.horizontalAdvance(unit) - kUnitGap;
    if (type.titleMetrics.horizontalAdvance(titles.first()) <= besideUnit) {
        return {titles.first(), true};
    }
    for (const QString& title : titles) {
        if (type.titleMetrics.horizontalAdvance(title) <= width) {
            return {title, false};
        }
    }
    return {type.titleMetrics.elidedText(titles.last(), Qt::ElideRight, width), false};
}

CurveCard::CurveCard(const CurveCardSpec& spec, QCustomPlot& plot, QCPAxisRect& axisRect)
    : spec_(spec), axisRect_(axisRect), range_(spec.minimumSpan) {
    for (QCPAxis* axis : axisRect.axes()) {
        muteAxis(*axis);
    }
    lines_.reserve(spec.lines.size());
    for (const CurveLine& line : spec.lines) {
        addLine(line, plot);
    }
}

void CurveCard::addLine(const CurveLine& spec, QCustomPlot& plot) {
    QCPGraph* graph = plot.addGraph(axisRect_.axis(QCPAxis::atLeft), axisRect_.axis(QCPAxis::atBottom));
    QSharedPointer<QCPGraphDataContainer> points(new QCPGraphDataContainer);
    points->setAutoSqueeze(false);
    graph->setData(points);
    graph->setSelectable(QCP::stNone);
    graph->setAdaptiveSampling(false);
    graph->setName(spec.spokenName);
    lines_.push_back({&spec, graph, points, {}, std::numeric_limits<double>::quiet_NaN(), QString()});
}

void CurveCard::dress(bool faded) {
    for (Line& line : lines_) {
        line.graph->setPen(curvePen(&line != &lines_.front(), faded));
    }
}

void CurveCard::showTrace(const Trace& trace, const TravelSpan& span, Units units, bool faded) {
    if (units != units_) {
        units_ = units;
        range_.forget();
        ticks_.clear();
    }
    span_ = span;
    outOfReach_ = outOfReach(trace);
    for (Line& line : lines_) {
        curvePoints(trace, line.spec->figure, spec_.scale, line.whole);
    }
    const Extent extent = curveExtent(trace, spec_);
    hasPoints_ = extent.least <= extent.most;
    hasUsableRows_ = std::any_of(trace.stations.begin(), trace.stations.end(),
                                 [](const Station& station) { return station.usable; });
    const bool inverse = spec_.scale == CurveScale::inverseDistance;
    range_.follow(extent.least, extent.most, inverse ? 1.0 : shownUnit(spec_.quantity, units),
                  spec_.neverBelowLeast ? spec_.least : -std::numeric_limits<double>::infinity());
    axisRect_.axis(QCPAxis::atBottom)->setRange(range_.low(), range_.high());
    // A travel of no extent still needs an axis.
    const double least = span.bump > span.droop ? 0.0 : kMetresPerMillimetre;
    axisRect_.axis(QCPAxis::atLeft)->setRange(span.droop - least, span.bump + least);
    fillGraphs();
    dress(faded);
}

void CurveCard::fillGraphs() {
    filledFor_ = plot().size();
    const double perTravel = filledFor_.height() / axisRect_.axis(QCPAxis::atLeft)->range().size();
    const double perValue = filledFor_.width() / axisRect_.axis(QCPAxis::atBottom)->range().size();
    for (Line& line : lines_) {
        points_ = line.whole;
        thinPoints(points_, perTravel, perValue);
        line.points->clear();
        for (const CurvePoint& point : points_) {
            line.points->add(QCPGraphData(point.travel, point.value));
        }
    }
}

void CurveCard::showCursor(const Station& cursor) {
    cursorTravel_ = cursor[Figure::travel];
    cursorUsable_ = cursor.usable;
    for (Line& line : lines_) {
        line.cursorValue = axisValue(cursor, line.spec->figure, spec_.scale);
        line.cursorText = valueText(cursor, *line.spec);
    }
}

QString CurveCard::valueText(const Station& cursor, const CurveLine& line) const {
    const double value = cursor[line.figure];
    if (spec_.scale == CurveScale::inverseDistance && cursor.usable && std::isnan(value)) {
        return QString(QChar(0x221e));
    }
    return QString::fromStdString(figureText(value, spec_.quantity, units_));
}

QString CurveCard::unitText() const {
    return spec_.quantity == Quantity::angle ? QCoreApplication::translate("TravelCurves", "deg")
                                             : fromView(unitMark(spec_.quantity, units_));
}

QStringList CurveCard::spokenValues() const {
    QStringList parts;
    const QString mark = fromView(unitMark(spec_.quantity, units_));
    const QString gap = spec_.quantity == Quantity::angle ? QString() : QStringLiteral(" ");
    for (const Line& line : lines_) {
        if (line.cursorText == QChar(0x221e)) {
            parts << QCoreApplication::translate("TravelCurves", "%1 infinite").arg(line.spec->spokenName);
        } else if (!std::isnan(line.cursorValue)) {
            parts << line.spec->spokenName + QLatin1Char(' ') + line.cursorText + gap + mark;
        }
    }
    return parts;
}

QRectF CurveCard::inner() const {
    return QRectF(card()).adjusted(kPad, 0, -kPad, 0);
}

TravelOnScreen CurveCard::travelAxis() const {
    const QRect at = plot();
    return {span_, static_cast<double>(at.top()), static_cast<double>(at.top() + at.height())};
}

void CurveCard::place(const CardType& type) {
    const QRectF at = plot();
    const AxisOnScreen axis{range_.low(), range_.high(),      at.left(),
                            at.right(),   inner().left() - 3, inner().right() + 3};
    const double unit = shownUnit(spec_.quantity, units_);
    ticks_ = spec_.scale == CurveScale::inverseDistance ? distanceTicks(axis, unit, type.quietMetrics)
                                                        : linearTicks(axis, unit, type.quietMetrics);
    if (plot().size() != filledFor_) {
        fillGraphs();
    }
}

bool CurveCard::takeFaceChange() {
    Face face{.low = range_.low(),
              .high = range_.high(),
              .units = units_,
              .span = span_,
              .outOfReach = outOfReach_,
              .hasPoints = hasPoints_,
              .hasUsableRows = hasUsableRows_};
    if (face == shownFace_) {
        return false;
    }
    shownFace_ = std::move(face);
    return true;
}

void CurveCard::paintFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                          bool focused) const {
    const QRectF frame = QRectF(card()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(focused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(focused ? frame.adjusted(0.5, 0.5, -0.5, -0.5) : frame, kCorner, kCorner);
    painter.setBrush(Qt::NoBrush);
    paintTitle(painter, type);
    if (hasPoints_) {
        paintGrid(painter, travelTicks);
        paintTicks(painter, type);
        paintOutOfReach(painter, type);
        return;
    }
    if (hasUsableRows_) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        const QRectF upperHalf(plot().left(), plot().top(), plot().width(), plot().height() / 2.0);
        painter.drawText(upperHalf, Qt::AlignCenter | Qt::TextWordWrap, spec_.absent);
    }
}

void CurveCard::paintTitle(QPainter& painter, const CardType& type) const {
    const QRectF row(inner().left(), card().top() + kTopPad, inner().width(), type.titleMetrics.height());
    const TitleFit fit = fitTitle(spec_.titles, unitText(), row.width(), type);
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, fit.title);
    if (fit.unitInTitle) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, unitText());
    }
}

void CurveCard::paintGrid(QPainter& painter, const std::vector<TravelTick>& travelTicks) const {
    painter.setRenderHint(QPainter::Antialiasing, false);
    const QRectF at = plot();
    const double right = at.left() + at.width();
    const double bottom = at.top() + at.height();
    const auto across = [&](double travel, const QColor& color) {
        const double y = std::round(travelAxis().position(travel));
        painter.setPen(QPen(color, 1));
        painter.drawLine(QPointF(at.left(), y), QPointF(right, y));
    };
    const auto upright = [&](double x, const QColor& color) {
        painter.setPen(QPen(color, 1));
        painter.drawLine(QPointF(std::round(x), at.top()), QPointF(std::round(x), bottom));
    };
    for (const TravelTick& tick : travelTicks) {
        across(tick.travel, tick.travel == 0 ? theme().border : theme().grid);
    }
    for (const AxisTick& tick : ticks_) {
        upright(tick.position, theme().grid);
    }
    if (spec_.reference && *spec_.reference >= range_.low() && *spec_.reference <= range_.high()) {
        const double share = (*spec_.reference - range_.low()) / (range_.high() - range_.low());
        upright(at.left() + share * at.width(), theme().dark ? theme().border.lighter(130) : theme().border);
    }
    painter.setRenderHint(QPainter::Antialiasing);
}

void CurveCard::paintTicks(QPainter& painter, const CardType& type) const {
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double baseline = plot().top() + plot().height() + kTickLabelGap + type.quietMetrics.ascent();
    for (const AxisTick& tick : ticks_) {
        painter.drawText(QPointF(tick.labelLeft, baseline), tick.label);
    }
}

void CurveCard::paintOutOfReach(QPainter& painter, const CardType& type) const {
    for (const OutOfReach& stretch : outOfReach_) {
        const double top = travelAxis().position(stretch.to);
        const QRectF zone(plot().left(), top, plot().width(), travelAxis().position(stretch.from) - top);
        painter.setPen(Qt::NoPen);
        painter.setBrush(
            QBrush(theme().dark ? theme().border.lighter(130) : theme().border, Qt::BDiagPattern));
        painter.drawRect(zone);
        painter.setBrush(Qt::NoBrush);
        painter.setFont(type.quiet);
        const QString words = QCoreApplication::translate("TravelCurves", "out of reach");
        const QRectF text =
            painter.boundingRect(zone, Qt::AlignCenter | Qt::TextWordWrap, words).adjusted(-4, -1, 4, 1);
        if (text.height() <= zone.height() && text.width() <= zone.width() + 8) {
            painter.fillRect(text, theme().card);
            painter.setPen(theme().muted);
            painter.drawText(zone, Qt::AlignCenter | Qt::TextWordWrap, words);
        }
    }
}

void CurveCard::paintCursor(QPainter& painter, const CardType& type) const {
    if (!hasPoints_) {
        return;
    }
    if (lines_.size() == 1) {
        paintOneValue(painter, type);
    } else {
        double top = card().top() + kTopPad + type.titleMetrics.height() + kRowGap;
        for (const Line& line : lines_) {
            paintKeyRow(painter, type, line, top);
            top += type.bodyMetrics.height();
        }
    }
    paintMarkers(painter);
}

void CurveCard::paintOneValue(QPainter& painter, const CardType& type) const {
    const TitleFit fit = fitTitle(spec_.titles, unitText(), inner().width(), type);
    const QString unit = fit.unitInTitle || !cursorUsable_ ? QString() : unitText();
    const double unitWidth = unit.isEmpty() ? 0.0 : type.quietMetrics.horizontalAdvance(unit) + 3.0;
    const QString& value = lines_.front().cursorText;
    const bool big = type.figureMetrics.horizontalAdvance(value) + unitWidth <= inner().width();
    const QFontMetricsF& metrics = big ? type.figureMetrics : type.bodyMetrics;
    const double top = card().top() + kTopPad + type.titleMetrics.height() + kRowGap;
    const double baseline = top + type.figureMetrics.ascent();
    painter.setFont(big ? type.figure : type.body);
    painter.setPen(cursorUsable_ ? theme().ink : theme().muted);
    painter.drawText(QPointF(inner().left(), baseline), value);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.drawText(QPointF(inner().left() + metrics.horizontalAdvance(value) + 3.0, baseline), unit);
}

void CurveCard::paintKeyRow(QPainter& painter, const CardType& type, const Line& line, double top) const {
    const double height = type.bodyMetrics.height();
    const QRectF row(inner().left(), top, std::min(inner().width(), kWidestKey * height), height);
    const double middle = std::round(row.center().y()) + 0.5;
    painter.setPen(line.graph->pen());
    painter.drawLine(QPointF(row.left(), middle), QPointF(row.left() + kSample, middle));
    const double from = row.left() + kSample + kKeyGap;
    const bool narrow = inner().width() < height * kNarrowKey;
    const QFontMetricsF& metrics = narrow ? type.smallBoldMetrics : type.bodyMetrics;
    painter.setFont(narrow ? type.smallBold : type.body);
    painter.setPen(cursorUsable_ ? theme().ink : theme().muted);
    painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip, line.cursorText);
    const double room = row.right() - metrics.horizontalAdvance(line.cursorText) - kKeyGap - from;
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    for (const QString& name : line.spec->keyNames) {
        if (type.quietMetrics.horizontalAdvance(name) <= room) {
            painter.drawText(QRectF(from, row.top(), room, row.height()), Qt::AlignLeft | Qt::AlignVCenter,
                             name);
            return;
        }
    }
}

void CurveCard::paintMarkers(QPainter& painter) const {
    if (!cursorUsable_) {
        return;
    }
    const double y = std::floor(travelAxis().position(cursorTravel_)) + 0.5;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(theme().card);
    for (const Line& line : lines_) {
        const bool second = &line != &lines_.front();
        if (std::isnan(line.cursorValue) || line.cursorValue < range_.low() ||
            line.cursorValue > range_.high()) {
            continue;
        }
        const double x = axisRect_.axis(QCPAxis::atBottom)->coordToPixel(line.cursorValue) + 0.5;
        painter.setPen(QPen(line.graph->pen().color(), 2));
        const double radius = second ? 3.4 : 4.4;
        painter.drawEllipse(QPointF(x, y), radius, radius);
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace bolthole
