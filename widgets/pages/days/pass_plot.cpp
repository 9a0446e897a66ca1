#include "widgets/pages/days/pass_plot.h"

#include <QPainter>
#include <algorithm>

#include "widgets/kit/said.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_cards.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostInARow = 60;  // passes; more can't be told apart
constexpr double kKeyMark = 4.2;         // px, half a mark's width
constexpr int kKeyGap = 32;              // px, a mark and what is left free beside a name
constexpr int kKeyLine = 20;             // px

ChartLook passLook() {
    ChartLook look = lookInCard(ChartLook::Head::none, {760, 240}, {360, 170});
    look.picksPoints = true;
    return look;
}

}  // namespace

PassPlot::PassPlot(const PassBook& book, QWidget* parent)
    : CurveChart(tr("60 ft times"), passLook(), parent), book_(book) {
    setObjectName(QStringLiteral("passPlot"));
    connect(this, &CurveChart::pointPicked, this, [this](int, int, int point) {
        emit picked(point < 0 ? std::nullopt : std::optional(marked_[static_cast<std::size_t>(point)]));
    });
}

void PassPlot::refresh() {
    reader_.clear();
    takePasses();
}

void PassPlot::setMeasure(std::optional<PassMeasure> measure) {
    measure_ = measure;
    takePasses();
}

void PassPlot::showSelected(std::optional<std::size_t> pass) {
    selected_ = pass;
    if (pass && !markOf(*pass)) {
        takePasses();
    }
    ringSelected();
}

void PassPlot::ringSelected() {
    const std::optional<std::size_t> mark = selected_ ? markOf(*selected_) : std::nullopt;
    if (mark) {
        showPicked(0, static_cast<int>(cards().front().series.size()) - 1, static_cast<int>(*mark));
    } else {
        showPicked(-1, -1, -1);
    }
}

// As many as can be told apart: against a number all, one after the other the last, or a stretch around the
// one that was picked.
std::vector<std::size_t> PassPlot::drawnRows() const {
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < book_.passes().size(); ++row) {
        if (book_.passes()[row].sixtyFoot) {
            rows.push_back(row);
        }
    }
    if (measure_ || rows.size() <= kMostInARow) {
        return rows;
    }
    std::size_t first = rows.size() - kMostInARow;
    if (selected_ && *selected_ < rows[first]) {
        const auto at = static_cast<std::size_t>(std::ranges::lower_bound(rows, *selected_) - rows.begin());
        first = at - std::min(at, kMostInARow / 2);
    }
    const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(first);
    return {begin, begin + static_cast<std::ptrdiff_t>(kMostInARow)};
}

void PassPlot::takePasses() {
    marked_ = drawnRows();
    missing_ = 0;
    PassChart chart;
    if (measure_) {
        std::vector<PlottedPass> passes;
        for (const std::size_t row : marked_) {
            if (const std::optional<double> at = reader_.read(book_, row, *measure_)) {
                passes.push_back({row, *at});
            }
        }
        missing_ = static_cast<int>(marked_.size() - passes.size());
        marked_.clear();
        std::ranges::transform(passes, std::back_inserter(marked_), &PlottedPass::row);
        chart = passesAgainst(book_, passes, *measure_, missing_);
    } else {
        chart = passesInARow(book_, marked_);
    }
    showCards(chart.axis, {chart.card});
    ringSelected();
}

std::pair<std::size_t, std::size_t> PassPlot::span() const {
    return marked_.empty() ? std::pair<std::size_t, std::size_t>{0, 0}
                           : std::pair{marked_.front(), marked_.back()};
}

std::optional<std::size_t> PassPlot::markOf(std::size_t pass) const {
    const auto found = std::ranges::find(marked_, pass);
    return found == marked_.end() ? std::nullopt
                                  : std::optional(static_cast<std::size_t>(found - marked_.begin()));
}

std::optional<QPointF> PassPlot::placeOf(std::size_t pass) const {
    const std::optional<std::size_t> mark = markOf(pass);
    if (!mark) {
        return std::nullopt;
    }
    const ChartPoint& point = cards().front().series.back().points[*mark];
    return onScreen().front().plot().at(point.imposed, point.value);
}

SurfaceKey::SurfaceKey(const PassBook& book, QWidget* parent) : QWidget(parent), book_(book) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setFont(textFont(TextSize::small));
}

QString SurfaceKey::nameFor(const std::optional<SurfaceKind>& kind) {
    return kind ? said(nameOf(*kind)) : tr("surface not said");
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

int SurfaceKey::widthOf(const std::optional<SurfaceKind>& kind) const {
    return fontMetrics().horizontalAdvance(nameFor(kind)) + kKeyGap;
}

QSize SurfaceKey::sizeHint() const {
    int width = 0;
    for (const auto& kind : kinds_) {
        width += widthOf(kind);
    }
    return {width, kKeyLine};
}

QSize SurfaceKey::minimumSizeHint() const {
    int width = 0;
    for (const auto& kind : kinds_) {
        width = std::max(width, widthOf(kind));
    }
    return {width, kKeyLine};
}

std::vector<QPoint> SurfaceKey::positions(int width) const {
    std::vector<QPoint> all;
    QPoint next(0, 0);
    for (const auto& kind : kinds_) {
        if (next.x() > 0 && next.x() + widthOf(kind) > width) {
            next = {0, next.y() + kKeyLine};
        }
        all.push_back(next);
        next.rx() += widthOf(kind);
    }
    return all;
}

int SurfaceKey::heightForWidth(int width) const {
    return kinds_.empty() ? kKeyLine : positions(width).back().y() + kKeyLine;
}

void SurfaceKey::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const std::vector<QPoint> at = positions(width());
    for (std::size_t row = 0; row < kinds_.size(); ++row) {
        const QRect line(at[row], QSize(widthOf(kinds_[row]), kKeyLine));
        drawPointMark(painter, surfaceMark(kinds_[row], false), {line.left() + 12.0, line.center().y() + 0.5},
                      kKeyMark);
        painter.setPen(theme().muted);
        painter.drawText(line.adjusted(24, 0, 0, 0), static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter),
                         nameFor(kinds_[row]));
    }
}

}  // namespace bolthole
