#include "app/desks/wanted_desk.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/weights/entered_figures.h"
#include "widgets/board/hole_board.h"
#include "widgets/pages/target/wanted_page.h"
#include "widgets/pages/target/wanted_words.h"
#include "widgets/views/wanted_mark.h"

namespace bolthole {

namespace {

constexpr int kTargetSettling = 150;    // ms
constexpr double kPercentRoom = 10;     // either way around a wanted center
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

WantedDesk::WantedDesk(BenchState& bench, const BoardState& board, WantedPage& page, WantedMark& mark,
                       QObject* parent)
    : QObject(parent), bench_(bench), board_(board), page_(page), mark_(mark) {
    connect(&jobs_, &JobRunner::progressed, &page_, &WantedPage::showProgress);
    connect(&page, &WantedPage::searchWanted, this, &WantedDesk::search);
    connect(&page, &WantedPage::inPictureChosen, this, &WantedDesk::showMark);
    connect(&mark, &WantedMark::toggled, this, [this] { showMark(!mark_.isOn()); });
    connect(&mark, &WantedMark::moved, this, &WantedDesk::moveMark);
    connect(&mark, &WantedMark::abandoned, this, &WantedDesk::placeMark);
}

void WantedDesk::carChanged() {
    if (mark_.isOn() && !mark_.isDragging()) {
        placeMark();
        search();
    }
}

void WantedDesk::showMark(bool on) {
    if (on == mark_.isOn()) {
        return;
    }
    page_.showInPicture(on);
    if (on) {
        placeMark();
        search();
    } else {
        bench_.wantedCenter.reset();
        mark_.showMark(std::nullopt, bench_.style.units);
    }
}

// At the middle of what is wanted; where nothing is, at the instant center there is.
void WantedDesk::placeMark() {
    const Station& ride = bench_.trace.ride;
    Eigen::Vector2d at(1.2, 0.3);
    if (std::isfinite(ride[Figure::icX]) && std::abs(ride[Figure::icX]) < kMaxLength) {
        at = {ride[Figure::icX], ride[Figure::icZ]};
    }
    if (bench_.car.wanted && (bench_.car.wanted->icNear || bench_.car.wanted->icFar)) {
        const WantedWindow& wanted = *bench_.car.wanted;
        const double inverse = (wanted.inverseNear() + wanted.inverseFar()) / 2;
        at.x() = std::abs(inverse) > 1 / kMaxLength ? 1 / inverse : std::copysign(kMaxLength, inverse);
        if (wanted.icLow || wanted.icHigh) {
            at.y() = (wanted.icLow.value_or(*(wanted.icHigh ? wanted.icHigh : wanted.icLow)) +
                      wanted.icHigh.value_or(*(wanted.icLow ? wanted.icLow : wanted.icHigh))) /
                     2;
        } else if (ride[Figure::antiSquat] != 0) {
            const double slope = std::tan(ride[Figure::swingArmAngle]) / ride[Figure::antiSquat];
            at.y() = at.x() * slope * (wanted.antiSquatLow + wanted.antiSquatHigh) / 2;
        }
    }
    bench_.wantedCenter = inCar(ride.ground, at);
    mark_.showMark(bench_.wantedCenter, bench_.style.units);
    mark_.showLine(nearestInWords(at));
}

void WantedDesk::moveMark(const Eigen::Vector2d& at, bool done) {
    const GroundLine& ground = bench_.trace.ride.ground;
    Eigen::Vector2d there = onGround(ground, at);
    there = {rounded(there.x(), bench_.style.units), rounded(there.y(), bench_.style.units)};
    if (std::abs(there.x()) < kLeastDistance) {
        there.x() = std::copysign(kLeastDistance, there.x());
    }
    there.x() = std::clamp(there.x(), -kMaxLength, kMaxLength);
    there.y() = std::clamp(there.y(), -kMaxLength, kMaxLength);
    bench_.wantedCenter = inCar(ground, there);
    mark_.showMark(bench_.wantedCenter, bench_.style.units);
    mark_.showLine(nearestInWords(there));
    if (done && bench_.traceIsCurrent) {
        emit edited(SetWanted{windowAt(there)}, EditPhase::whole);
    }
}

// The instant center's place alone decides; anti-squat follows from it, and gets room enough that the hole
// board shows a window too. The rest of what was wanted stays.
WantedWindow WantedDesk::windowAt(const Eigen::Vector2d& onGround) const {
    WantedWindow wanted = bench_.car.wanted.value_or(WantedWindow{});
    wanted.icNear = wanted.icFar = onGround.x();
    wanted.icLow = wanted.icHigh = onGround.y();
    const CarBalance balance = balanceOf(bench_.solvedCar);
    const GroundLine& ground = bench_.trace.ride.ground;
    const double height = ground.above(balance.cgX(bench_.solvedCar.wheelbase), balance.height);
    const double antiSquat = 100 * onGround.y() / onGround.x() * ground.wheelbase / height;
    wanted.antiSquatLow = std::floor(antiSquat - kPercentRoom);
    wanted.antiSquatHigh = std::ceil(antiSquat + kPercentRoom);
    return wanted;
}

// Of the choices already computed the one whose instant center comes nearest: quick enough for a drag.
QString WantedDesk::nearestInWords(const Eigen::Vector2d& onGround) const {
    const HoleChoice* nearest = nullptr;
    double least = std::numeric_limits<double>::infinity();
    for (const HoleChoice& choice : board_.choices) {
        const double miss =
            std::hypot(choice[Figure::icX] - onGround.x(), choice[Figure::icZ] - onGround.y());
        if (miss < least) {
            least = miss;
            nearest = &choice;
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

void WantedDesk::search() {
    const bool possible = bench_.traceIsCurrent && bench_.car.wanted.has_value();
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

void WantedDesk::start() {
    jobs_.start(
        [this, car = askedCar_, lengths = askedLengths_](const Job& job) {
            WantedSearch search{.lengths = lengths, .threads = std::min(jobThreads(), 2)};
            search.isCancelled = [job] { return job.isCancelled(); };
            search.progress = [job](double share) { job.report(share); };
            const auto answers = std::make_shared<const WantedAnswers>(searchWanted(*car, search));
            job.answer([this, answers] { take(answers); });
        },
        {.settling = kTargetSettling});
}

void WantedDesk::take(const std::shared_ptr<const WantedAnswers>& answers) {
    answers_ = answers;
    page_.showAnswers(answers_, askedCar_);
    if (mark_.isOn() && !mark_.isDragging()) {
        mark_.showLine(bestInWords(*answers_, *askedCar_, bench_.style));
    }
}

}  // namespace bolthole
