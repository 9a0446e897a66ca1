// What a card paints in words: at its rules, its events, its sections, and beside places.
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "widgets/curves/chart_card.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kWordGap = 8.0;
constexpr double kLeastSectionWords = 40.0;  // px; words of a section with less room are left out
constexpr double kNoteGap = 9.0;             // px, from the place to its words
constexpr double kNotesApart = 4.0;

double eventsHeight(const ChartCard& card, const CardType& type) {
    return card.events.empty() ? 0.0 : ChartCardOnScreen::kEventRows * type.quietMetrics.height();
}

double sectionsHeight(const ChartCard& card, const CardType& type) {
    const bool hasWords = std::ranges::any_of(
        card.sections, [](const ChartSection& section) { return !section.words.isEmpty(); });
    return card.sections.empty()
               ? 0.0
               : type.sectionMetrics.height() + (hasWords ? type.quietMetrics.height() : 0.0);
}

}  // namespace

double ChartCardOnScreen::wordsAbove(const ChartCard& card, const CardType& type) {
    return std::ceil(eventsHeight(card, type) + sectionsHeight(card, type));
}

// Beside the events' lines above the plot where the imposed runs across, on them where it runs up.
std::vector<QRectF> ChartCardOnScreen::eventPlaces(const QFontMetricsF& metrics) const {
    std::vector<double> middles;
    std::vector<double> lengths;
    for (const ChartEvent& event : card_->events) {
        const double at = plot_.imposedPosition(event.at);
        const double width = metrics.horizontalAdvance(event.word) + kWordGap;
        middles.push_back(plot_.isUpright ? at : at + width / 2);
        lengths.push_back(plot_.isUpright ? metrics.height() : width);
    }
    const QRectF& area = plot_.area;
    const std::vector<int> rows =
        rowsOfWords(middles, lengths, plot_.isUpright ? area.top() : area.left(),
                    plot_.isUpright ? area.bottom() : area.right(), plot_.isUpright ? 1 : kEventRows);
    std::vector<QRectF> places(rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double at = card_->events[i].at;
        if (rows[i] < 0 || at < plot_.from || at > plot_.to) {
            continue;
        }
        const double width = metrics.horizontalAdvance(card_->events[i].word) + kWordGap;
        places[i] =
            plot_.isUpright
                ? QRectF(area.right() - width, middles[i] - metrics.height() / 2, width, metrics.height())
                : QRectF(middles[i] - width / 2,
                         area.top() - (kEventRows - rows[i]) * metrics.height() - kWordGap / 2, width,
                         metrics.height());
    }
    return places;
}

// Measuring costs more than a step of a drag has to spare: done anew where the room is another.
void ChartCardOnScreen::measureWords(const CardType& type) {
    startingFits_.clear();
    startingWords_.clear();
    startingBox_ = {};
    const auto add = [&](const QString& words, bool isAlong) {
        const QSizeF size(type.quietMetrics.horizontalAdvance(words) + 2, type.quietMetrics.height());
        if ((isAlong ? plot_.area.height() : plot_.area.width()) >= size.width() + 4) {
            startingFits_.push_back({words, isAlong ? size.transposed() : size});
        }
    };
    const QString whole = CurveChart::tr("starting numbers");
    add(whole, false);
    add(whole, true);
    add(CurveChart::tr("starting"), false);
    axisSize_ = {type.quietMetrics.horizontalAdvance(card_->axisWords) + 6, type.quietMetrics.height()};
}

// Whether a curve or one of its marks is in a place.
bool ChartCardOnScreen::isCrossed(const QRectF& place) const {
    const QRectF near = place.adjusted(-2, -2, 2, 2);
    const auto isIn = [&](const ChartSeries& series) {
        QPointF last(kNaN, kNaN);
        return std::ranges::any_of(series.points, [&](const ChartPoint& point) {
            const QPointF from = std::exchange(last, plot_.at(point.imposed, point.value));
            const bool isPiece =
                std::isfinite(from.x()) && std::isfinite(from.y()) && series.line != ChartLine::none;
            return std::isfinite(last.x()) && std::isfinite(last.y()) &&
                   (near.contains(last) || (isPiece && clipped({from, last}, near)));
        });
    };
    return std::ranges::any_of(card_->series, isIn);
}

// Stays where it is while it can. Where the curves leave no corner to any words, the dots stand alone.
void ChartCardOnScreen::placeStartingMark() {
    if (!card_->restsOnStarts || !hasValues_) {
        startingWords_.clear();
        startingBox_ = {};
        return;
    }
    if (!startingWords_.isEmpty() && !isCrossed(startingBox_)) {
        return;
    }
    const QRectF& area = plot_.area;
    for (const auto& [words, size] : startingFits_) {
        const double right = area.right() - size.width() - 4;
        const double bottom = area.bottom() - size.height() - 4;
        for (const QPointF& corner :
             {QPointF(area.left() + 2, bottom), QPointF(right, bottom),
              QPointF(area.left() + 2, area.top() + 2), QPointF(right, area.top() + 2)}) {
            const QRectF box(corner, size);
            if (!isCrossed(box)) {
                startingWords_ = words;
                startingBox_ = box;
                return;
            }
        }
    }
    startingWords_.clear();
    startingBox_ = QRectF(area.left() + 2, area.bottom() - 4, area.width() - 4, 1);
}

void ChartCardOnScreen::placeAxisWords() {
    const QSizeF size = axisSize_.transposed();
    const auto isFree = [&](const QRectF& box) {
        return plot_.area.contains(box) && !startingBox_.intersects(box) && !isCrossed(box);
    };
    if (card_->axisWords.isEmpty() || !hasValues_ || !plot_.isUpright) {
        axisBox_ = {};
        return;
    }
    if (axisBox_.size() == size && isFree(axisBox_)) {
        return;
    }
    axisBox_ = {};
    const QRectF& area = plot_.area;
    const double right = area.right() - size.width() - 1;
    const double bottom = area.bottom() - size.height() - 2;
    for (const QPointF& corner : {QPointF(right, bottom), QPointF(area.left() + 1, area.top() + 2),
                                  QPointF(right, area.top() + 2), QPointF(area.left() + 1, bottom)}) {
        if (const QRectF box(corner, size); axisBox_.isNull() && isFree(box)) {
            axisBox_ = box;
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
    const double baseline = plot_.isUpright ? line.x1() - size.width() - 3 : area.right() - size.width() - 2;
    const double after = plot_.isUpright ? line.x1() + 3 : area.left() + 2;
    const double top = plot_.isUpright ? area.top() + 2 : line.y1() - size.height() - 2;
    const double bottom = plot_.isUpright ? area.bottom() - size.height() - 2 : line.y1() + 2;
    QRectF best;
    int fewest = std::numeric_limits<int>::max();
    for (const QPointF& corner :
         {QPointF(after, bottom), QPointF(after, top), QPointF(baseline, top), QPointF(baseline, bottom)}) {
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

// The headings stand above the words of events; the line between two sections runs through both.
void ChartCardOnScreen::paintSections(QPainter& painter, const CardType& type) const {
    const double top = plot_.area.top() - wordsAbove(*card_, type) - CardType::kRowGap;
    const ChartSection* baseline = nullptr;
    for (const ChartSection& section : card_->sections) {
        const double left = plot_.imposedPosition(section.from);
        const double width = plot_.imposedPosition(section.to) - left;
        if (baseline != nullptr && section.divider != ChartLine::none) {
            const double line = std::floor((plot_.imposedPosition(baseline->to) + left) / 2) + 0.5;
            painter.setPen(linePen(section.divider, 1.3, theme().border));
            painter.drawLine(QPointF(line, top), QPointF(line, plot_.area.bottom()));
        }
        baseline = &section;
        if (type.sectionMetrics.horizontalAdvance(section.title) <= width) {
            painter.setFont(type.section);
            painter.setPen(theme().ink);
            painter.drawText(QRectF(left, top, width, type.sectionMetrics.height()), Qt::AlignCenter,
                             section.title);
        }
        if (width >= kLeastSectionWords) {
            painter.setFont(type.quiet);
            painter.setPen(theme().focus);
            painter.drawText(
                QRectF(left, top + type.sectionMetrics.height(), width, type.quietMetrics.height()),
                Qt::AlignLeft | Qt::AlignVCenter,
                type.quietMetrics.elidedText(section.words, Qt::ElideRight, width));
        }
    }
}

std::vector<QRectF> ChartCardOnScreen::notePlaces(const QFontMetricsF& metrics) const {
    std::vector<QRectF> places;
    for (const ChartNote& note : card_->notes) {
        const QPointF at = plot_.at(note.imposed, note.value);
        QRectF place(at.x() + kNoteGap, at.y() - metrics.height() / 2, metrics.horizontalAdvance(note.text),
                     metrics.height());
        const auto isOver = [&](const QRectF& other) { return other.intersects(place); };
        for (auto other = std::ranges::find_if(places, isOver);
             other != places.end() && place.right() <= frame_.right();
             other = std::ranges::find_if(places, isOver)) {
            place.moveLeft(other->right() + kNotesApart);
        }
        places.push_back(place.right() <= frame_.right() ? place : QRectF());
    }
    return places;
}

void ChartCardOnScreen::paintNotes(QPainter& painter, const CardType& type) const {
    painter.setFont(type.smallBold);
    painter.setPen(theme().muted);
    const std::vector<QRectF> places = notePlaces(type.smallBoldMetrics);
    for (std::size_t i = 0; i < places.size(); ++i) {
        painter.drawText(places[i], Qt::AlignCenter | Qt::TextDontClip, card_->notes[i].text);
    }
}

}  // namespace bolthole
