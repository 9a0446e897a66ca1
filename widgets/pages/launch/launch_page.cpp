#include "widgets/pages/launch/launch_page.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "geometry/kinematics/trace.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/card.h"
#include "widgets/kit/quiet_scroller.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/click_stepper.h"
#include "widgets/pages/launch/figures_card.h"
#include "widgets/pages/launch/film_bar.h"
#include "widgets/pages/launch/launch_curves.h"
#include "widgets/pages/launch/launch_missing.h"
#include "widgets/pages/launch/launch_picture.h"
#include "widgets/pages/launch/launch_words.h"
#include "widgets/pages/launch/torque_section.h"

namespace bolthole {

namespace {

constexpr int kFieldsWidth = 312;  // px
constexpr int kSideWidth = 356;
constexpr double kAfterSixtyFeet = 0.1;  // s that are still shown
constexpr double kKeyStep = 0.01;        // s
constexpr double kKeyPage = 0.1;

/// To 60 ft and a little more; where they are not reached, to the last row.
double shownEndOf(const LaunchFilm& film) {
    const std::optional<double>& sixty = film.run.figures.fromRelease;
    return sixty ? std::min(film.end(), *sixty + kAfterSixtyFeet) : film.end();
}

}  // namespace

LaunchPage::LaunchPage(QWidget* parent)
    : WorkPage(tr("Launch"), parent),
      problem_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)),
      missing_(new LaunchMissing(this)),
      body_(new QWidget(this)) {
    if (auto* fields = findChild<QScrollArea*>(QStringLiteral("fields"))) {
        fields->setFixedWidth(kFieldsWidth);
    }
    problem_->setWordWrap(true);
    problem_->hide();
    results()->setContentsMargins(6, 10, 10, 10);
    results()->addWidget(problem_);
    results()->addWidget(missing_);
    results()->addWidget(body_, 1);
    buildBody();
    connectParts();
}

void LaunchPage::buildBody() {
    auto* line = new QHBoxLayout(body_);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(12);
    line->addWidget(buildMiddle(), 1);
    line->addWidget(buildSide());
}

QWidget* LaunchPage::buildMiddle() {
    auto* middle = new QWidget(body_);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    ended_ = new ToneLabel(ToneLabel::Tone::problem, QString(), middle);
    ended_->setWordWrap(true);
    column->addWidget(ended_);
    auto* card = new Card(middle);
    auto* inside = new QVBoxLayout(card);
    inside->setContentsMargins(Card::kInset, Card::kInset, Card::kInset, Card::kInset);
    inside->setSpacing(0);
    picture_ = new LaunchPicture(card);
    bar_ = new FilmBar(player_, card);
    inside->addWidget(picture_, 1);
    inside->addWidget(bar_);
    column->addWidget(card, 11);
    auto* scroll = new QuietScroller(middle);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    curves_ = new LaunchCurves;
    scroll->setWidget(curves_);
    column->addWidget(scroll, 10);
    return middle;
}

QWidget* LaunchPage::buildSide() {
    auto* scroll = new QuietScroller(body_);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFixedWidth(kSideWidth);
    auto* content = new QWidget;
    side_ = new QVBoxLayout(content);
    side_->setContentsMargins(0, 0, 2, 0);
    side_->setSpacing(12);
    figures_ = new LaunchFiguresCard(content);
    side_->addWidget(figures_);
    auto* limits = new ToneLabel(
        ToneLabel::Tone::muted,
        tr("Left out: drag, rolling resistance, the driveshaft's twist, roll, shifts, bumps, and what the "
           "tread "
           "remembers after heavy wheelspin. Compares setups on your car; no real car has been compared yet. "
           "Try it on a closed course only."),
        content);
    limits->setWordWrap(true);
    limits->setContentsMargins(6, 0, 6, 0);
    side_->addWidget(limits);
    side_->addStretch(1);
    scroll->setWidget(content);
    content->setAutoFillBackground(false);
    return scroll;
}

void LaunchPage::addSide(QWidget* widget) {
    side_->insertWidget(1 + sideWidgets_, widget);
    ++sideWidgets_;
}

void LaunchPage::connectParts() {
    connect(missing_, &LaunchMissing::fieldRequested, this, &WorkPage::fieldRequested);
    connect(missing_, &LaunchMissing::torqueRequested, this, &LaunchPage::enterTorque);
    connect(missing_, &LaunchMissing::couplingRequested, this, &LaunchPage::enterCoupling);
    connect(missing_, &LaunchMissing::edited, this, &WorkPage::edited);
    connect(&player_, &FilmPlayer::timeChanged, this, &LaunchPage::showTime);
    connect(&player_, &FilmPlayer::playingChanged, this, &LaunchPage::showTime);
    connect(curves_, &CurveChart::cursorMoved, &player_, &FilmPlayer::seek);
    connect(&uncertainties_, &LaunchUncertaintyRunner::arrived, this,
            [this](const LaunchUncertainties& uncertainties) {
                drawn_ = uncertainties;
                drawnFilm_ = film_;
                drawnBaseline_ = baseline_;
                figures_->showUncertainties(drawn_);
            });
    picture_->installEventFilter(this);
}

// Kept setups would only be copied along: a launch is one car's.
void LaunchPage::runFilms() {
    const auto film = [this](const Car& whole, const LaunchInputs& inputs,
                             const std::shared_ptr<const LaunchFilm>& last, const QString& called) {
        Car car = withoutKept(whole);
        return last && last->car == car && last->called == called ? last
                                                                  : filmOf(car, inputs, simulator_, called);
    };
    const BenchState& bench = state();
    if (tried_.car && withoutKept(bench.car) != tried_.of) {
        tried_ = {};
    }
    const LaunchInputsResult now = launchInputsOf(bench.car);
    missing_->showMissing(bench.car, now.missing, bench.style.units);
    film_ = now.inputs ? film(bench.car, *now.inputs, film_, {}) : nullptr;
    const Car* other = tried_.car ? tried_.car.get() : bench.baseline ? &bench.baseline->car : nullptr;
    const LaunchInputsResult then = other != nullptr ? launchInputsOf(*other) : LaunchInputsResult{};
    const QString called = tried_.car ? tried_.name : tr("before");
    baseline_ = film_ && then.inputs ? film(*other, *then.inputs, baseline_, called) : nullptr;
}

void LaunchPage::showTried(std::shared_ptr<const Car> car, const QString& name) {
    if (hasState()) {
        tried_ = {std::move(car), name, withoutKept(state().car)};
        refresh();
        player_.seek(0);
    }
}

void LaunchPage::refresh() {
    showSections();
    uncertainties_.cancel();
    if (!state().faults.empty()) {
        film_ = nullptr;
        missing_->hide();
        showNothing(QString::fromStdString(state().problem));
        return;
    }
    runFilms();
    if (!film_) {
        showNothing({});
        return;
    }
    problem_->hide();
    body_->show();
    showFilms();
    showUncertainties();
}

void LaunchPage::showUncertainties() {
    if (!state().showsUncertainty || film_->run.end != LaunchEnd::done) {
        return;
    }
    if (drawn_ && drawnFilm_ == film_ && drawnBaseline_ == baseline_) {
        figures_->showUncertainties(drawn_);
    } else {
        uncertainties_.start(film_, baseline_);
    }
}

void LaunchPage::showNothing(const QString& why) {
    player_.pause();
    baseline_ = nullptr;
    player_.setEnd(0);
    picture_->showFilms(nullptr, nullptr, state().style.units);
    problem_->showText(tr("Nothing can be computed as the car stands: %1").arg(why));
    problem_->setVisible(!why.isEmpty());
    body_->hide();
}

void LaunchPage::showFilms() {
    const Units units = state().style.units;
    shownEnd_ = std::max(shownEndOf(*film_), baseline_ ? shownEndOf(*baseline_) : 0);
    player_.setEnd(shownEnd_);
    picture_->showFilms(film_, baseline_, units);
    curves_->showFilms(*film_, baseline_.get(), shownEnd_, units);
    figures_->showFilms(*film_, baseline_.get(), units);
    std::vector<FilmMark> marks;
    for (const LaunchEvent& event : film_->run.events) {
        if (isMarked(event.kind) && event.time <= shownEnd_) {
            marks.push_back({event.time, capitalized(eventWords(*film_, event))});
        }
    }
    bar_->showFilm(shownEnd_, std::move(marks));
    const QString ended = endWords(*film_, units);
    ended_->showText(ended.isEmpty() ? ended : QStringLiteral("▲ ") + ended);
    ended_->setVisible(!ended.isEmpty());
    showTime();
}

void LaunchPage::showTime() {
    picture_->showTime(player_.time(), player_.isPlaying() ? player_.speed() : 0);
    curves_->showCursor(player_.time());
}

// What was given up when the page was hidden is taken up again.
void LaunchPage::showEvent(QShowEvent* event) {
    WorkPage::showEvent(event);
    if (film_ && !uncertainties_.isRunning()) {
        showUncertainties();
    }
}

void LaunchPage::hideEvent(QHideEvent* event) {
    player_.pause();
    uncertainties_.cancel();
    WorkPage::hideEvent(event);
}

bool LaunchPage::goByKey(int key) {
    switch (key) {
        case Qt::Key_Space:
            player_.toggle();
            return true;
        case Qt::Key_Left:
            player_.seek(player_.time() - kKeyStep);
            return true;
        case Qt::Key_Right:
            player_.seek(player_.time() + kKeyStep);
            return true;
        case Qt::Key_PageUp:
            player_.seek(player_.time() - kKeyPage);
            return true;
        case Qt::Key_PageDown:
            player_.seek(player_.time() + kKeyPage);
            return true;
        case Qt::Key_Home:
            player_.seek(0);
            return true;
        case Qt::Key_End:
            player_.seek(player_.end());
            return true;
        default:
            return false;
    }
}

bool LaunchPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == picture_ && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->modifiers() == Qt::NoModifier && goByKey(key->key())) {
            return true;
        }
    }
    return WorkPage::eventFilter(watched, event);
}

void LaunchPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && event->modifiers() == Qt::NoModifier && film_) {
        player_.toggle();
        return;
    }
    WorkPage::keyPressEvent(event);
}

}  // namespace bolthole
