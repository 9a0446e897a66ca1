#include "app/controllers/target_controller.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/weights/entered_figures.h"
#include "widgets/board/hole_board.h"
#include "widgets/pages/target/target_page.h"
#include "widgets/pages/target/target_words.h"
#include "widgets/views/target_mark.h"

namespace bolthole {

namespace {

constexpr int kTargetDelay = 150;       // ms
constexpr double kPercentRoom = 10;     // either way around a target center
constexpr double kLeastDistance = 0.1;  // m from the contact patch

double rounded(double value, Units units) {
    const double step = units == Units::inch ? kMetresPerInch / 4 : 0.005;
    return std::round(value / step) * step;
}

// Whether two cars differ in nothing that the answers depend on.
bool sameSearch(Car one, const Car& other) {
    one.title = other.title;
    one.notes = other.notes;
    one.units = other.units;
    return withoutKept(one) == withoutKept(other);
}

}  // namespace

TargetController::TargetController(BenchState& bench, const BoardState& board, TargetPage& page,
                                   TargetMark& mark, QObject* parent)
    : QObject(parent), bench_(bench), board_(board), page_(page), mark_(mark) {
    connect(&jobs_, &JobRunner::progressed, &page_, &TargetPage::showProgress);
    connect(&page, &TargetPage::searchRequested, this, &TargetController::search);
    connect(&page, &TargetPage::inPictureChosen, this, &TargetController::showMark);
    connect(&mark, &TargetMark::toggled, this, [this] { showMark(!mark_.isOn()); });
    connect(&mark, &TargetMark::moved, this, &TargetController::moveMark);
    connect(&mark, &TargetMark::abandoned, this, &TargetController::placeMark);
}

void TargetController::carChanged() {
    if (mark_.isOn() && !mark_.isDragging()) {
        placeMark();
        search();
    }
}

void TargetController::showMark(bool on) {
    if (on == mark_.isOn()) {
        return;
    }
    page_.showInPicture(on);
    if (on) {
        placeMark();
        search();
    } else {
        bench_.targetCenter.reset();
        mark_.showMark(std::nullopt, bench_.style.units);
    }
}

// At the middle of the target; where nothing is, at the instant center there is.
void TargetController::placeMark() {
    const Station& ride = bench_.trace.ride;
    Eigen::Vector2d at(1.2, 0.3);
    if (std::isfinite(ride[Figure::icX]) && std::abs(ride[Figure::icX]) < kMaxLength) {
        at = {ride[Figure::icX], ride[Figure::icZ]};
    }
    if (bench_.car.target && (bench_.car.target->icNear || bench_.car.target->icFar)) {
        const TargetWindow& target = *bench_.car.target;
        const double inverse = (target.inverseNear() + target.inverseFar()) / 2;
        at.x() = std::abs(inverse) > 1 / kMaxLength ? 1 / inverse : std::copysign(kMaxLength, inverse);
        if (target.icLow || target.icHigh) {
            at.y() = (target.icLow.value_or(*(target.icHigh ? target.icHigh : target.icLow)) +
                      target.icHigh.value_or(*(target.icLow ? target.icLow : target.icHigh))) /
                     2;
        } else if (ride[Figure::antiSquat] != 0) {
            const double slope = std::tan(ride[Figure::swingArmAngle]) / ride[Figure::antiSquat];
            at.y() = at.x() * slope * (target.antiSquatLow + target.antiSquatHigh) / 2;
        }
    }
    bench_.targetCenter = inCar(ride.ground, at);
    mark_.showMark(bench_.targetCenter, bench_.style.units);
    mark_.showLine(nearestInWords(at));
}

void TargetController::moveMark(const Eigen::Vector2d& at, bool done) {
    const GroundLine& ground = bench_.trace.ride.ground;
    Eigen::Vector2d there = onGround(ground, at);
    there = {rounded(there.x(), bench_.style.units), rounded(there.y(), bench_.style.units)};
    if (std::abs(there.x()) < kLeastDistance) {
        there.x() = std::copysign(kLeastDistance, there.x());
    }
    there.x() = std::clamp(there.x(), -kMaxLength, kMaxLength);
    there.y() = std::clamp(there.y(), -kMaxLength, kMaxLength);
    bench_.targetCenter = inCar(ground, there);
    mark_.showMark(bench_.targetCenter, bench_.style.units);
    mark_.showLine(nearestInWords(there));
    if (done && bench_.traceIsCurrent) {
        emit edited(SetTarget{windowAt(there)}, EditPhase::whole);
    }
}

// The instant center's place alone decides; anti-squat follows from it, and gets room enough that the hole
// board shows a window too. The rest of the target stays.
TargetWindow TargetController::windowAt(const Eigen::Vector2d& onGround) const {
    TargetWindow target = bench_.car.target.value_or(TargetWindow{});
    target.icNear = target.icFar = onGround.x();
    target.icLow = target.icHigh = onGround.y();
    const CarBalance balance = balanceOf(bench_.solvedCar);
    const GroundLine& ground = bench_.trace.ride.ground;
    const double height = ground.above(balance.cgX(bench_.solvedCar.wheelbase), balance.height);
    const double antiSquat = 100 * onGround.y() / onGround.x() * ground.wheelbase / height;
    target.antiSquatLow = std::floor(antiSquat - kPercentRoom);
    target.antiSquatHigh = std::ceil(antiSquat + kPercentRoom);
    return target;
}

// Of the combinations already computed the one whose instant center comes nearest: quick enough for a drag.
QString TargetController::nearestInWords(const Eigen::Vector2d& onGround) const {
    const HoleCombination* nearest = nullptr;
    double least = std::numeric_limits<double>::infinity();
    for (const HoleCombination& combination : board_.combinations) {
        const double miss =
            std::hypot(combination[Figure::icX] - onGround.x(), combination[Figure::icZ] - onGround.y());
        if (miss < least) {
            least = miss;
            nearest = &combination;
        }
    }
    if (nearest == nullptr || !board_.car) {
        return {};
    }
    const std::string names = holeNames(nearest->use, *board_.car);
    const Units units = bench_.style.units;
    const std::string by = withUnit(figureText(least, Quantity::length, units), Quantity::length, units);
    return tr("nearest holes %1 miss by %2")
        .arg(names.empty() ? tr("current") : QString::fromStdString(names), QString::fromStdString(by));
}

void TargetController::search() {
    const bool possible = bench_.traceIsCurrent && bench_.car.target.has_value();
    const bool same =
        askedCar_ && possible && askedLengths_ == page_.lengths() && sameSearch(bench_.car, *askedCar_);
    if (same) {
        if (answers_) {
            page_.showAnswers(answers_, askedCar_);
        }
        return;
    }
    jobs_.cancel();
    answers_.reset();
    askedCar_.reset();
    page_.showAnswers(nullptr, nullptr);
    if (possible) {
        askedCar_ = std::make_shared<const Car>(bench_.car);
        askedLengths_ = page_.lengths();
        page_.showProgress(0);
        start();
    }
}

void TargetController::start() {
    jobs_.start(
        [this, car = askedCar_, lengths = askedLengths_](const Job& job) {
            TargetSearch search{.lengths = lengths, .threads = std::min(jobThreads(), 2)};
            search.isCancelled = [job] { return job.isCancelled(); };
            search.progress = [job](double share) { job.report(share); };
            const auto answers = std::make_shared<const TargetAnswers>(searchTarget(*car, search));
            job.answer([this, answers] { take(answers); });
        },
        {.delay = kTargetDelay});
}

void TargetController::take(const std::shared_ptr<const TargetAnswers>& answers) {
    answers_ = answers;
    page_.showAnswers(answers_, askedCar_);
    if (mark_.isOn() && !mark_.isDragging()) {
        mark_.showLine(bestInWords(*answers_, *askedCar_, bench_.style));
    }
}

}  // namespace bolthole
