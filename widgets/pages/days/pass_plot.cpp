#include "widgets/pages/days/pass_plot.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/pages/days/pass_words.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {

constexpr double kLeft = 52;
constexpr double kRight = 14;
constexpr double kTopOfRuns = 46;  // letters, and what changed
constexpr double kTopOfMeasure = 16;
constexpr double kBottom = 40;
constexpr double kDayGap = 0.5;      // passes
constexpr double kReach = 14;        // px
constexpr double kLeastSpan = 0.02;  // s

}  // namespace

PassPlot::PassPlot(const PassBook& book, QWidget* parent) : QWidget(parent), book_(book) {
    setObjectName(QStringLiteral("passPlot"));
    setAccessibleName(tr("60 ft times"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void PassPlot::refresh() {
    reader_.clear();
    makeMarks();
    update();
}

void PassPlot::setMeasure(std::optional<PassMeasure> measure) {
    measure_ = measure;
    makeMarks();
    update();
}

void PassPlot::showSelected(std::optional<std::size_t> pass) {
    selected_ = pass;
    if (pass && !markOf(*pass)) {
        makeMarks();
    }
    update();
}

// As many as can be told apart: against a number all, one after the other the last, or a stretch around the
// one that was picked.
std::vector<std::size_t> PassPlot::drawnRows() const {
    constexpr std::size_t kMostShown = 60;
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < book_.passes().size(); ++row) {
        if (book_.passes()[row].sixtyFoot) {
            rows.push_back(row);
        }
    }
    if (measure_ || rows.size() <= kMostShown) {
        return rows;
    }
    std::size_t first = rows.size() - kMostShown;
    if (selected_ && *selected_ < rows[first]) {
        const auto at = static_cast<std::size_t>(std::ranges::lower_bound(rows, *selected_) - rows.begin());
        first = at - std::min(at, kMostShown / 2);
    }
    const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(first);
    return {begin, begin + static_cast<std::ptrdiff_t>(kMostShown)};
}

std::pair<std::size_t, std::size_t> PassPlot::span() const {
    return marks_.empty() ? std::pair<std::size_t, std::size_t>{0, 0}
                          : std::pair{marks_.front().pass, marks_.back().pass};
}

void PassPlot::makeMarks() {
    marks_.clear();
    missing_ = 0;
    double along = 0;
    std::optional<std::size_t> before;
    for (const std::size_t row : drawnRows()) {
        const bool isNewDay = before && book_.passes()[*before].date != book_.passes()[row].date;
        along += (before ? static_cast<double>(row - *before) : 1) + (isNewDay ? kDayGap : 0);
        before = row;
        const std::optional<double> at =
            measure_ ? reader_.read(book_, row, *measure_) : std::optional(along);
        if (at) {
            marks_.push_back({row, *at, {}});
        } else {
            ++missing_;
        }
    }
    makeStretches();
    layOut();
}

void PassPlot::makeStretches() {
    stretches_.clear();
    if (measure_) {
        return;
    }
    std::vector<Sample> samples(book_.passes().size());
    for (const Repeats& group : repeatsOf(book_.car())) {
        const Sample sample = sampleOf(group.sixtyFoot);
        for (const std::size_t row : group.passes) {
            samples[row] = sample;
        }
    }
    for (std::size_t at = 0; at < marks_.size(); ++at) {
        const std::size_t row = marks_[at].pass;
        const Pass& pass = book_.passes()[row];
        const Pass* before = at == 0 ? nullptr : &book_.passes()[marks_[at - 1].pass];
        const bool isNewDay = before == nullptr || before->date != pass.date;
        const bool isSame = before != nullptr && !isNewDay && runWith(*before) == runWith(pass) &&
                            before->surface.kind == pass.surface.kind &&
                            before->surface.name == pass.surface.name;
        if (isSame) {
            stretches_.back().last = at;
            if (stretches_.back().sample.count == 0) {
                stretches_.back().sample = samples[row];
            }
            continue;
        }
        stretches_.push_back({at, at, isNewDay, row == 0 ? QString() : book_.changes(row), samples[row]});
    }
}

QRectF PassPlot::plotBox() const {
    const double top = measure_ ? kTopOfMeasure : kTopOfRuns;
    return {kLeft, top, std::max(10.0, width() - kLeft - kRight), std::max(10.0, height() - top - kBottom)};
}

double PassPlot::heightOf(double time) const {
    const QRectF box = plotBox();
    return box.bottom() - (time - quick_) / (slow_ - quick_) * box.height();
}

double PassPlot::alongOf(double at) const {
    const QRectF box = plotBox();
    return box.left() + (at - low_) / (high_ - low_) * box.width();
}

// Struck passes are drawn where they fall but don't stretch the axis: a missed shift would flatten the rest.
void PassPlot::layOut() {
    std::vector<double> times;
    for (const Mark& mark : marks_) {
        const Pass& pass = book_.passes()[mark.pass];
        if (!pass.struck) {
            times.push_back(*pass.sixtyFoot);
        }
    }
    const auto [least, most] = std::ranges::minmax_element(times);
    const double low = times.empty() ? 0 : *least;
    const double high = times.empty() ? 1 : *most;
    const double room = std::max(kLeastSpan, 0.12 * (high - low));
    quick_ = low - room;
    slow_ = high + room;
    low_ = 0;
    high_ = 1;
    if (!marks_.empty()) {
        const auto [first, last] = std::ranges::minmax_element(marks_, {}, &Mark::at);
        const double span = std::max(last->at - first->at, measure_ ? 1.0 : 6.0);
        const double margin = measure_ ? 0.08 * span : 0.6;
        low_ = first->at - margin;
        high_ = std::max(last->at, first->at + span) + margin;
        if (measure_ && first->at == last->at) {
            low_ = first->at - span / 2;
            high_ = first->at + span / 2;
        }
    }
    const QRectF box = plotBox();
    for (Mark& mark : marks_) {
        const double height = heightOf(*book_.passes()[mark.pass].sixtyFoot);
        mark.place = {alongOf(mark.at), std::clamp(height, box.top(), box.bottom())};
    }
}

void PassPlot::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layOut();
}

std::optional<std::size_t> PassPlot::markOf(std::size_t pass) const {
    const auto found = std::ranges::find(marks_, pass, &Mark::pass);
    return found == marks_.end() ? std::nullopt
                                 : std::optional(static_cast<std::size_t>(found - marks_.begin()));
}

std::optional<QPointF> PassPlot::placeOf(std::size_t pass) const {
    const std::optional<std::size_t> mark = markOf(pass);
    return mark ? std::optional(marks_[*mark].place) : std::nullopt;
}

std::optional<std::size_t> PassPlot::markNear(QPointF at) const {
    std::optional<std::size_t> nearest;
    double least = kReach;
    for (std::size_t mark = 0; mark < marks_.size(); ++mark) {
        const QPointF away = marks_[mark].place - at;
        const double distance = std::hypot(away.x(), away.y());
        if (distance < least) {
            least = distance;
            nearest = mark;
        }
    }
    return nearest;
}

void PassPlot::mousePressEvent(QMouseEvent* event) {
    const std::optional<std::size_t> mark = markNear(event->position());
    emit picked(mark ? std::optional(marks_[*mark].pass) : std::nullopt);
}

void PassPlot::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && selected_) {
        emit picked(std::nullopt);
    } else if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right) {
        step(event->key() == Qt::Key_Right);
    } else {
        QWidget::keyPressEvent(event);
    }
}

// The first step goes to the end it comes from.
void PassPlot::step(bool right) {
    if (marks_.empty()) {
        return;
    }
    const std::size_t last = marks_.size() - 1;
    std::size_t at = right ? 0 : last;
    if (const std::optional<std::size_t> mark = selected_ ? markOf(*selected_) : std::nullopt) {
        at = right ? std::min(*mark + 1, last) : *mark - std::min<std::size_t>(*mark, 1);
    }
    emit picked(marks_[at].pass);
}

void PassPlot::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void PassPlot::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

bool PassPlot::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && selected_ &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        if (const std::optional<std::size_t> mark = markNear(help->pos())) {
            const std::size_t row = marks_[*mark].pass;
            const Pass& pass = book_.passes()[row];
            QToolTip::showText(help->globalPos(),
                               tr("Pass %1 of %2, setup %3: %4 s\n%5")
                                   .arg(pass.number)
                                   .arg(dayText(pass.date), book_.letterOf(row), timeText(*pass.sixtyFoot),
                                        surfaceText(pass.surface.kind, pass.surface.name)),
                               this);
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QWidget::event(event);
}

}  // namespace bolthole
