// The top layer of the hole board's map: marks of single choices and their names.
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/board/combination_dots.h"
#include "widgets/board/combination_map_paint.h"
#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostNamed = 48;  // with more, names would only be clutter
constexpr double kLabelGap = 5.0;
constexpr double kEdgeGap = 7.0;  // a mark at the edge reaches farther in
constexpr double kChipPad = 4.0;

QRectF around(QPointF center, double reach) {
    return {center.x() - reach, center.y() - reach, 2 * reach, 2 * reach};
}

class MarkPainter {
  public:
    MarkPainter(QPainter& painter, const CombinationMapPicture& picture)
        : painter_(painter),
          picture_(picture),
          radius_(dotRadius(picture.list.shownCount(), picture.scale.plot())),
          placer_(picture.scale.plot().adjusted(1, 1, -1, -1)),
          plain_(textFont(TextSize::small)),
          bold_(textFont(TextSize::small, true)),
          named_(picture.places.size()) {}

    void paint();

  private:
    void takeDots();
    void takeBars();
    void markDots();
    void tie(QPointF place, const QRectF& box, double gap);
    void paintChip(const QRectF& chip, const QString& name);
    [[nodiscard]] int dotsUnder(const QRectF& chip) const;
    [[nodiscard]] QRectF chipPlace(QPointF place, QSizeF size, double ring) const;
    void takeWindow();
    void countBeyond();
    void paintNow(std::size_t at, QPointF place);
    void paintBaseline(const BaselineMark& baseline);
    void nameOthers();
    void paintFocused(std::size_t at, bool selected);
    [[nodiscard]] bool namesFit() const { return picture_.list.shownCount() <= kMostNamed; }
    [[nodiscard]] DotKind kindOf(std::size_t at) const {
        return picture_.list.items()[at].problem ? DotKind::problem : DotKind::plain;
    }

    QPainter& painter_;
    const CombinationMapPicture& picture_;
    double radius_;
    LabelPlacer placer_;
    QFont plain_;
    QFont bold_;
    std::vector<bool> named_;  // of the list's items
};

void MarkPainter::takeWindow() {
    constexpr double kSide = 2.0;
    if (picture_.target) {
        const QRectF box = picture_.scale.boxOf(*picture_.target);
        for (const double x : {box.left(), box.right()}) {
            placer_.take({x - kSide, box.top(), 2 * kSide, box.height()});
        }
        for (const double y : {box.top(), box.bottom()}) {
            placer_.take({box.left(), y - kSide, box.width(), 2 * kSide});
        }
    }
}

void MarkPainter::takeDots() {
    placer_.take(windowLabelBox(picture_));
    for (const std::optional<QPointF>& place : picture_.places) {
        if (place) {
            placer_.take(around(*place, radius_ + 1));
        }
    }
}

// Where each choice has its bars, they keep names off; where only marked ones have, those do.
void MarkPainter::takeBars() {
    const std::array marked{picture_.list.present(), picture_.selected, picture_.pointed};
    const bool all = picture_.list.shownCount() <= kFewCombinations;
    for (std::size_t at = 0; at < picture_.places.size(); ++at) {
        if (all || std::ranges::find(marked, std::optional(at)) != marked.end()) {
            for (const QRectF& bar : errorBars(picture_, at)) {
                placer_.take(bar);
            }
        }
    }
}

// A label that found no room at its point is tied to it.
void MarkPainter::tie(QPointF place, const QRectF& box, double gap) {
    constexpr double kAtItsPoint = 1.6;  // of the gap; a label at a corner of its point is 1.42 of it away
    const QPointF near(std::clamp(place.x(), box.left(), box.right()),
                       std::clamp(place.y(), box.top(), box.bottom()));
    const QPointF way = near - place;
    const double length = std::hypot(way.x(), way.y());
    if (length > kAtItsPoint * gap) {
        painter_.setPen(QPen(theme().muted, 1));
        painter_.drawLine(place + way / length * gap, near);
    }
}

// How many lie beyond each edge, in words along it.
void MarkPainter::countBeyond() {
    std::array<int, 4> counts{};  // left, right, above, below
    for (std::size_t at = 0; at < picture_.places.size(); ++at) {
        if (picture_.places[at]) {
            const QPoint out = beyond(picture_.list.items()[at], picture_.scale);
            counts[0] += out.x() < 0 ? 1 : 0;
            counts[1] += out.x() > 0 ? 1 : 0;
            counts[2] += out.y() < 0 ? 1 : 0;
            counts[3] += out.y() > 0 ? 1 : 0;
        }
    }
    constexpr std::array kWords{
        QT_TRANSLATE_NOOP("CombinationMap", "%1 nearer"), QT_TRANSLATE_NOOP("CombinationMap", "%1 beyond"),
        QT_TRANSLATE_NOOP("CombinationMap", "%1 above"), QT_TRANSLATE_NOOP("CombinationMap", "%1 below")};
    const QRectF plot = picture_.scale.plot().adjusted(10, 10, -10, -10);
    const std::array places{QPointF(plot.left(), plot.center().y()), QPointF(plot.right(), plot.center().y()),
                            QPointF(plot.center().x(), plot.top()),
                            QPointF(plot.center().x(), plot.bottom())};
    constexpr std::array kInward{0, 4, 6, 2};
    painter_.setFont(plain_);
    const QFontMetricsF metrics(plain_);
    for (std::size_t side = 0; side < counts.size(); ++side) {
        const QString label = tr(kWords[side]).arg(counts[side]);
        if (counts[side] > 0) {
            const QSizeF size(metrics.horizontalAdvance(label), metrics.height());
            const QRectF box = placer_.place(places[side], size, 2, kInward[side]);
            painter_.setPen(theme().muted);
            painter_.drawText(box, Qt::AlignCenter, box.isNull() ? QString() : label);
        }
    }
}

void MarkPainter::paintNow(std::size_t at, QPointF place) {
    placer_.take(around(place, radius_ + 6));
    const QFontMetricsF metrics(bold_);
    const QString now = tr("NOW");
    const double chip = metrics.horizontalAdvance(now) + 2 * kChipPad;
    const QString name = namesFit() ? picture_.list.nameOf(at) : QString();
    const double nameWidth = name.isEmpty() ? 0 : metrics.horizontalAdvance(name) + kChipPad;
    QRectF box = placer_.place(place, {chip + nameWidth, metrics.height() + 1}, radius_ + 8);
    QString shown = name;
    if (box.isNull()) {
        shown.clear();
        box = placer_.place(place, {chip, metrics.height() + 1}, radius_ + 8);
    }
    if (box.isNull()) {
        // NOW is never left out: it goes over whatever lies there, points last.
        box = chipPlace(place, {chip, metrics.height() + 1}, radius_ + 8);
    }
    tie(place, box, radius_ + 8);
    named_[at] = !shown.isEmpty();
    const QRectF ink(box.topLeft(), QSizeF(chip, box.height()));
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme().ink);
    painter_.drawRoundedRect(ink, 3, 3);
    painter_.setFont(bold_);
    painter_.setPen(theme().card);
    painter_.drawText(ink, Qt::AlignCenter, now);
    if (shown.isEmpty()) {
        return;
    }
    painter_.fillRect(QRectF(ink.topRight(), box.bottomRight()).adjusted(1, 2, 1, -2),
                      faded(theme().card, 0.8));
    painter_.setPen(theme().ink);
    painter_.drawText(box.adjusted(chip + kChipPad, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, shown);
}

// An open dashed ring: it may lie over a dot, or where no choice of today's car is. Outside the map it stands
// at its edge.
void MarkPainter::paintBaseline(const BaselineMark& baseline) {
    const QRectF& plot = picture_.scale.plot();
    const QPointF at = picture_.scale.at(baseline.inverse, baseline.antiSquat);
    const QPointF place(std::clamp(at.x(), plot.left(), plot.right()),
                        std::clamp(at.y(), plot.top(), plot.bottom()));
    const double ring = std::max(radius_, 3.0) + 6.0;
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(dashedPen(theme().muted, 1.8, {1.6, 1.4}));
    painter_.drawEllipse(place, ring, ring);
    const QFontMetricsF metrics(plain_);
    const QString word = tr("before");
    const QRectF box =
        placer_.place(place, {metrics.horizontalAdvance(word) + 4, metrics.height()}, ring + 3, 6);
    if (!box.isNull()) {
        tie(place, box, ring + 3);
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(theme().card, 0.85));
        painter_.drawRoundedRect(box, 3, 3);
        painter_.setFont(plain_);
        painter_.setPen(theme().muted);
        painter_.drawText(box, Qt::AlignCenter, word);
    }
}

void MarkPainter::nameOthers() {
    const QFontMetricsF metrics(plain_);
    painter_.setFont(plain_);
    painter_.setPen(theme().ink);
    const std::optional<std::size_t> present = picture_.list.present();
    for (const std::uint32_t at : picture_.list.ranked()) {
        if (!picture_.places[at] || (present && *present == at)) {
            continue;
        }
        const QString name = picture_.list.nameOf(at);
        const QSizeF size(metrics.horizontalAdvance(name), metrics.height());
        const bool atEdge = !beyond(picture_.list.items()[at], picture_.scale).isNull();
        const double gap = radius_ + (atEdge ? kEdgeGap : kLabelGap);
        const QRectF box = placer_.place(*picture_.places[at], size, gap, 0, 1);
        if (!box.isNull()) {
            painter_.drawText(box, Qt::AlignCenter, name);
            named_[at] = true;
        }
    }
}

// The name of what is pointed at is always there, over whatever lies beside it.
void MarkPainter::paintFocused(std::size_t at, bool selected) {
    if (at >= picture_.places.size() || !picture_.places[at]) {
        return;
    }
    const QPointF place = *picture_.places[at];
    const std::optional<std::size_t> present = picture_.list.present();
    const bool isPresent = present && *present == at;
    const double ring = std::max(radius_, 3.0) + (isPresent ? 8.0 : 4.0);
    paintHalo(painter_, place, ring, selected);
    if (named_[at]) {
        return;
    }
    const QFontMetricsF metrics(bold_);
    const QString name = picture_.list.nameOf(at);
    const QSizeF size(metrics.horizontalAdvance(name) + 2 * kChipPad, metrics.height() + 3);
    paintChip(chipPlace(place, size, ring), name);
}

int MarkPainter::dotsUnder(const QRectF& chip) const {
    const QRectF reach = chip.adjusted(-radius_, -radius_, radius_, radius_);
    return static_cast<int>(std::ranges::count_if(picture_.places, [&](const std::optional<QPointF>& place) {
        return place && reach.contains(*place);
    }));
}

// In a quarter between the bars, which run across and up: where it hides the fewest points, else above and
// right of the dot, or where the plot has room.
QRectF MarkPainter::chipPlace(QPointF place, QSizeF size, double ring) const {
    const QRectF plot = picture_.scale.plot().adjusted(2, 2, -2, -2);
    const double off = ring * 0.75 + 1;
    const std::array corners{QPointF(place.x() + off, place.y() - off - size.height()),
                             QPointF(place.x() - off - size.width(), place.y() - off - size.height()),
                             QPointF(place.x() + off, place.y() + off),
                             QPointF(place.x() - off - size.width(), place.y() + off)};
    QRectF best;
    for (const QPointF& corner : corners) {
        const QRectF chip(corner, size);
        if (plot.contains(chip) && (best.isNull() || dotsUnder(chip) < dotsUnder(best))) {
            best = chip;
        }
    }
    if (!best.isNull()) {
        return best;
    }
    QRectF chip(corners[0], size);
    chip.moveLeft(std::clamp(chip.left(), plot.left(), std::max(plot.left(), plot.right() - size.width())));
    chip.moveTop(std::clamp(chip.top(), plot.top(), std::max(plot.top(), plot.bottom() - size.height())));
    return chip;
}

void MarkPainter::paintChip(const QRectF& chip, const QString& name) {
    painter_.setPen(QPen(theme().focus, 1));
    painter_.setBrush(theme().card);
    painter_.drawRoundedRect(chip, 3, 3);
    painter_.setFont(bold_);
    painter_.setPen(theme().ink);
    painter_.drawText(chip, Qt::AlignCenter, name);
}

// What stands under the bars.
void MarkPainter::markDots() {
    const std::optional<std::size_t> present = picture_.list.present();
    if (present && picture_.places[*present]) {
        paintPresent(painter_, *picture_.places[*present], std::max(radius_, 3.0), kindOf(*present));
    }
    paintMarkedErrors(painter_, picture_);
}

void MarkPainter::paint() {
    markDots();
    if (namesFit()) {
        takeDots();
    }
    takeBars();
    countBeyond();
    if (const std::optional<std::size_t> present = picture_.list.present();
        present && picture_.places[*present]) {
        paintNow(*present, *picture_.places[*present]);
    }
    if (picture_.baseline) {
        paintBaseline(*picture_.baseline);
    }
    if (namesFit()) {
        takeWindow();  // NOW stays close to its dot, over a side of the window if need be
        nameOthers();
    }
    if (picture_.selected) {
        paintFocused(*picture_.selected, true);
    }
    if (picture_.pointed && picture_.pointed != picture_.selected) {
        paintFocused(*picture_.pointed, false);
    }
}

}  // namespace

void paintMapMarks(QPainter& painter, const CombinationMapPicture& picture) {
    MarkPainter(painter, picture).paint();
}

}  // namespace bolthole
