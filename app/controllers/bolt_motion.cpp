#include "app/controllers/bolt_motion.h"

#include <QEasingCurve>
#include <QEvent>
#include <algorithm>

#include "widgets/views/view_deck.h"

namespace bolthole {

namespace {

constexpr std::array kEnds{End::chassis, End::axle};

}  // namespace

BoltMotion::BoltMotion(const BenchState& bench, ViewDeck& views, QObject* parent)
    : QObject(parent), bench_(bench), views_(views) {
    clock_.setDuration(kMotion);
    clock_.setStartValue(0.0);
    clock_.setEndValue(1.0);
    clock_.setEasingCurve(QEasingCurve::InOutCubic);
    connect(&clock_, &QVariantAnimation::valueChanged, this,
            [this](const QVariant& share) { show(share.toDouble()); });
    connect(&clock_, &QVariantAnimation::finished, this, [this] { views_.showState(bench_); });
    for (QWidget* view : views.findChildren<QWidget*>()) {
        view->installEventFilter(this);
    }
}

void BoltMotion::keepStill(bool still) {
    still_ = still;
    if (still) {
        end();
    }
}

std::vector<BoltMotion::Bolted> BoltMotion::boltsOf(const Car& car) {
    std::vector<Bolted> bolts;
    for (const Link& link : car.links) {
        Bolted& one = bolts.emplace_back();
        one.name = link.name;
        one.length = builtLength(link);
        for (std::size_t end = 0; end < kEnds.size(); ++end) {
            const Bracket& bracket = link.bracket(kEnds[end]);
            one.holes[end] = bracket.holes.size();
            one.use[end] = bracket.use;
            one.at[end] = bracket.inUse().at;
        }
    }
    return bolts;
}

void BoltMotion::carWillChange(bool isDragging) {
    if (isRunning()) {
        clock_.stop();
    }
    from_.clear();
    if (!isDragging && !still_ && bench_.traceIsCurrent) {
        from_ = boltsOf(bench_.car);
    }
}

// Of the same links with the same holes, some bolt is in another one.
bool BoltMotion::isAnotherHole(const std::vector<Bolted>& now) const {
    const bool isSameCar = std::ranges::equal(from_, now, [](const Bolted& one, const Bolted& other) {
        return one.name == other.name && one.holes == other.holes;
    });
    return isSameCar && !std::ranges::equal(from_, now, {}, &Bolted::use, &Bolted::use);
}

void BoltMotion::carChanged() {
    if (from_.empty() || !bench_.traceIsCurrent || !views_.isVisible()) {
        return;
    }
    to_ = boltsOf(bench_.car);
    if (!isAnotherHole(to_)) {
        return;
    }
    between_ = bench_;
    between_.car.kept.clear();
    between_.cloud.reset();
    between_.uncertainty = {};
    // The holes stay where they are: what moves is a bolt in none of them.
    for (Link& link : between_.car.links) {
        for (const End end : kEnds) {
            Bracket& bracket = link.bracket(end);
            bracket.holes.push_back(bracket.inUse());
            bracket.holes.back().name.clear();
            bracket.use = static_cast<int>(bracket.holes.size()) - 1;
        }
    }
    clock_.start();
}

void BoltMotion::show(double share) {
    for (std::size_t index = 0; index < to_.size(); ++index) {
        Link& link = between_.car.links[index];
        for (std::size_t end = 0; end < kEnds.size(); ++end) {
            link.bracket(kEnds[end]).holes.back().at =
                (1 - share) * from_[index].at[end] + share * to_[index].at[end];
        }
        if (link.kind == LinkKind::rod) {
            link.length = (1 - share) * from_[index].length + share * to_[index].length;
        }
    }
    computeTrace(between_.car, between_.trace);
    if (!between_.trace.assembly.usable()) {
        return;  // on the straight way there the links need not fit
    }
    between_.solvedCar = between_.car;
    between_.cursor = solveStation(between_.car, between_.cursorTravel);
    views_.showState(between_);
}

void BoltMotion::end() {
    if (isRunning()) {
        clock_.stop();
        views_.showState(bench_);
    }
}

bool BoltMotion::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::MouseButtonPress || event->type() == QEvent::KeyPress) {
        end();
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace bolthole
