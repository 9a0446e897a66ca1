// What a card paints behind its curves: frame, title, grid, labels, stretches.
#include <cmath>

#include "widgets/curves/chart_card.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/kit/kept_words.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kFrameCorner = 6.0;
constexpr double kStretchInk = 0.10;
constexpr double kLeastGroup = 60.0;  // px; a label of several places with less room is left out

/// A line that is to be told from the grid.
QColor strongBorder() {
    return theme().dark ? theme().border.lighter(130) : theme().border;
}

/// On whole pixels, so that a grid of one pixel is sharp.
QLineF onPixels(const QLineF& line) {
    return {std::round(line.x1()), std::round(line.y1()), std::round(line.x2()), std::round(line.y2())};
}

}  // namespace

void ChartCardOnScreen::drawFace(QPainter& painter, const ChartScene& scene) const {
    const QRectF frame = frame_.adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setPen(scene.isFocused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.setBrush(theme().card);
    if (!scene.look.hasFrame) {
        painter.setBrush(Qt::NoBrush);
    }
    if (scene.look.hasFrame || scene.isFocused) {
        painter.drawRoundedRect(scene.isFocused ? frame.adjusted(0.5, 0.5, -0.5, -0.5) : frame, kFrameCorner,
                                kFrameCorner);
    }
    painter.setBrush(Qt::NoBrush);
    if (scene.look.head != ChartLook::Head::none) {
        drawTitle(painter, scene.type);
    }
    if (hasValues_) {
        drawGrid(painter, scene);
        drawTickLabels(painter, scene);
        if (scene.look.labelsImposed && !plot_.isUpright) {
            drawImposedLabels(painter, scene);
        }
        drawStretches(painter, scene.type);
        if (!startingBox_.isNull()) {
            drawStartingMark(painter, scene.type);
        }
        if (!axisBox_.isNull()) {
            drawAxisWords(painter, scene.type);
        }
        return;
    }
    painter.setFont(scene.type.quiet);
    painter.setPen(theme().muted);
    const QRectF& area = plot_.area;
    const QRectF upperHalf(area.left(), area.top(), area.width(), area.height() / 2.0);
    painter.drawText(scene.look.head == ChartLook::Head::none ? frame_ : upperHalf,
                     Qt::AlignCenter | Qt::TextWordWrap, card_->absent);
}

void ChartCardOnScreen::drawTitle(QPainter& painter, const CardType& type) const {
    const QRectF row(inner().left(), frame_.top() + CardType::kTopPad, inner().width(),
                     type.titleMetrics.height());
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    drawLine(painter, row, Qt::AlignLeft | Qt::AlignVCenter, title_.title);
    if (title_.unitInTitle) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        drawLine(painter, row, Qt::AlignRight | Qt::AlignVCenter, card_->unitText);
    }
}

void ChartCardOnScreen::drawGrid(QPainter& painter, const ChartScene& scene) const {
    painter.setRenderHint(QPainter::Antialiasing, false);
    if (scene.axis.hasLines) {
        for (const ImposedLabel& tick : scene.ticks) {
            painter.setPen(QPen(tick.at == 0 ? theme().border : theme().grid, 1));
            painter.drawLine(onPixels(plot_.imposedLine(tick.at)));
        }
    }
    painter.setPen(QPen(theme().grid, 1));
    for (const AxisTick& tick : ticks_) {
        painter.drawLine(onPixels(plot_.valueLine(tick.at)));
    }
    painter.setPen(QPen(strongBorder(), 1));
    for (const ChartRule& rule : card_->rules) {
        if (rule.line == ChartLine::solid && plot_.shows(rule.at)) {
            painter.drawLine(onPixels(plot_.valueLine(rule.at)));
        }
    }
    painter.setRenderHint(QPainter::Antialiasing);
}

void ChartCardOnScreen::drawTickLabels(QPainter& painter, const ChartScene& scene) const {
    const QFontMetricsF& metrics = scene.type.quietMetrics;
    painter.setFont(scene.type.quiet);
    painter.setPen(theme().muted);
    const double baseline = plot_.area.bottom() + CardType::kTickLabelGap + metrics.ascent();
    for (const AxisTick& tick : ticks_) {
        if (plot_.isUpright) {
            drawLine(painter, QPointF(tick.labelLeft, baseline), tick.label);
        } else {
            const QRectF label(frame_.left() + 2, tick.position - metrics.height() / 2,
                               plot_.area.left() - frame_.left() - 6, metrics.height());
            drawLine(painter, label, Qt::AlignRight | Qt::AlignVCenter, tick.label);
        }
    }
}

void ChartCardOnScreen::drawImposedLabels(QPainter& painter, const ChartScene& scene) const {
    const QFontMetricsF& metrics = scene.type.quietMetrics;
    const double top = plot_.area.bottom() + CardType::kTickLabelGap;
    const double baseline = top + metrics.ascent();
    double free = frame_.left();
    for (const ImposedLabel& tick : scene.ticks) {
        const double width = metrics.horizontalAdvance(tick.text);
        const double left = std::clamp(plot_.imposedPosition(tick.at) - width / 2, frame_.left() + 3,
                                       std::max(frame_.right() - 3 - width, frame_.left() + 3));
        if (left >= free) {
            drawLine(painter, QPointF(left, baseline), tick.text);
            free = left + width + kTickGap;
        }
    }
    drawLowerRow(painter, scene, top + metrics.height() + CardType::kRowGap);
}

// What several places share, each beginning under its first one; else what the axis is.
void ChartCardOnScreen::drawLowerRow(QPainter& painter, const ChartScene& scene, double top) const {
    const QFontMetricsF& metrics = scene.type.quietMetrics;
    const std::vector<ImposedGroup>& groups = scene.axis.groups;
    if (groups.empty()) {
        drawLine(painter, QRectF(plot_.area.left(), top, plot_.area.width(), metrics.height()),
                 Qt::AlignCenter, scene.axis.title);
        return;
    }
    double free = plot_.area.left();
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const double left = std::max(plot_.imposedPosition(groups[i].from), free);
        const double right = i + 1 < groups.size()
                                 ? plot_.imposedPosition(groups[i + 1].from) - CardType::kGroupGap
                                 : frame_.right();
        if (right - left >= kLeastGroup) {
            const QString words = metrics.elidedText(groups[i].text, Qt::ElideRight, right - left);
            drawLine(painter, QPointF(left, top + metrics.ascent()), words);
            free = left + metrics.horizontalAdvance(words) + CardType::kGroupGap;
        }
    }
}

// As under a field that holds such a number: words in a corner of the plot, dots below them. Upward where
// they have more room so.
void ChartCardOnScreen::drawStartingMark(QPainter& painter, const CardType& type) const {
    painter.save();
    QRectF box = startingBox_;
    if (box.height() > box.width()) {
        painter.translate(box.bottomLeft());
        painter.rotate(-90);
        box = QRectF(QPointF(), box.size().transposed());
    }
    if (!startingWords_.isEmpty()) {
        painter.fillRect(box, theme().card);
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        drawLine(painter, box, Qt::AlignLeft | Qt::AlignVCenter, startingWords_);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().startingMark);
    constexpr double kDotGap = 4;
    for (double x = box.left() + 1; x < box.right(); x += kDotGap) {
        painter.drawEllipse(QPointF(x, box.bottom() + 1), 0.9, 0.9);
    }
    painter.restore();
}

// Upward along the plot's side.
void ChartCardOnScreen::drawAxisWords(QPainter& painter, const CardType& type) const {
    painter.save();
    painter.fillRect(axisBox_, theme().card);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.translate(axisBox_.bottomLeft());
    painter.rotate(-90);
    painter.drawText(QRectF(QPointF(), axisSize_), Qt::AlignCenter | Qt::TextDontClip, card_->axisWords);
    painter.restore();
}

void ChartCardOnScreen::drawStretches(QPainter& painter, const CardType& type) const {
    for (const ChartStretch& stretch : card_->stretches) {
        const QRectF zone =
            QRectF(plot_.imposedLine(stretch.from).p1(), plot_.imposedLine(stretch.to).p2()).normalized() &
            plot_.area;
        painter.setPen(Qt::NoPen);
        QColor shade = theme().muted;
        shade.setAlphaF(static_cast<float>(kStretchInk));
        painter.setBrush(stretch.isHatched ? QBrush(strongBorder(), Qt::BDiagPattern) : QBrush(shade));
        painter.drawRect(zone);
        painter.setBrush(Qt::NoBrush);
        painter.setFont(type.quiet);
        const QRectF text = painter.boundingRect(zone, Qt::AlignCenter | Qt::TextWordWrap, stretch.words)
                                .adjusted(-4, -1, 4, 1);
        if (!stretch.words.isEmpty() && text.height() <= zone.height() && text.width() <= zone.width() + 8) {
            painter.fillRect(text, theme().card);
            painter.setPen(theme().muted);
            painter.drawText(zone, Qt::AlignCenter | Qt::TextWordWrap, stretch.words);
        }
    }
}

}  // namespace bolthole
