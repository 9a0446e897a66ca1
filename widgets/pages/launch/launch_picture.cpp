#include "widgets/pages/launch/launch_picture.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/body_outline.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/film_bar.h"
#include "widgets/pages/launch/launch_words.h"

namespace bolthole {

namespace {

constexpr double kPictureTop = 50;     // px, for the words
constexpr double kPictureBelow = 76;   // px under the ground, for the tires' loads
constexpr double kPictureSides = 26;   // px
constexpr double kNoseRoom = 0.12;     // m over the roof, for a body that rises
constexpr double kLongestForce = 58;   // px
constexpr double kShortestFlag = 0.1;  // s of film that a flag stays
constexpr double kFlagReading = 0.8;   // s of the wall's clock that a flag stays

double mostForceOf(const LaunchFilm& film) {
    double most = 0;
    for (const LaunchRow& row : film.run.rows) {
        most = std::max({most, row.rearLoad, row.frontLoad, row.thrust});
    }
    return most;
}

QString distanceText(double distance, Units units) {
    const bool inch = units == Units::inch;
    const double shown = inch ? distance / (12 * kMetresPerInch) : distance;
    return QString::number(shown, 'f', inch ? 1 : 2) + (inch ? QStringLiteral(" ft") : QStringLiteral(" m"));
}

}  // namespace

LaunchPicture::LaunchPicture(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("The launch, side view"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setFocusPolicy(Qt::StrongFocus);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
    offerPicture(*this);
}

void LaunchPicture::showFilms(std::shared_ptr<const LaunchFilm> film,
                              std::shared_ptr<const LaunchFilm> baseline, Units units) {
    film_ = std::move(film);
    baseline_ = std::move(baseline);
    units_ = units;
    mostForce_ = 0;
    for (const LaunchFilm* each : {film_.get(), baseline_.get()}) {
        mostForce_ = each == nullptr ? mostForce_ : std::max(mostForce_, mostForceOf(*each));
    }
    if (film_) {
        bench_.car = film_->car;
    }
    speak();
    update();
}

void LaunchPicture::showTime(double time, double speed) {
    time_ = time;
    speed_ = speed;
    update();
}

void LaunchPicture::speak() {
    QStringList words;
    for (const LaunchEvent& event : film_ ? film_->run.events : std::vector<LaunchEvent>{}) {
        if (isMarked(event.kind)) {
            words << tr("%1 at %2").arg(eventWords(*film_, event), secondsText(event.time));
        }
    }
    setAccessibleDescription(words.isEmpty() ? tr("nothing to play") : words.join(QStringLiteral("; ")));
}

const LaunchEvent* LaunchPicture::eventNow() const {
    const double stays = std::max(kShortestFlag, kFlagReading * speed_);
    const LaunchEvent* now = nullptr;
    if (film_) {
        for (const LaunchEvent& event : film_->run.events) {
            now = isMarked(event.kind) && event.time <= time_ && time_ <= event.time + stays ? &event : now;
        }
    }
    return now;
}

QString LaunchPicture::flag() const {
    const LaunchEvent* event = eventNow();
    return event == nullptr ? QString() : capitalized(eventWords(*film_, *event));
}

void LaunchPicture::place() {
    const Car& car = film_->car;
    const QRectF body = roomOf(bodyShape(car.body, car.wheelbase, car.rearTireRadius));
    const double tall = height() - kPictureBelow - kPictureTop;
    camera_.scale = std::max(
        20.0, std::min((width() - 2 * kPictureSides) / body.width(), tall / (body.height() + kNoseRoom)));
    camera_.origin = {(width() - body.width() * camera_.scale) / 2 - body.left() * camera_.scale,
                      height() - kPictureBelow};
    perNewton_ = mostForce_ > 0 ? kLongestForce / mostForce_ : 0;
}

void LaunchPicture::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        setFocus(Qt::MouseFocusReason);
        emit clicked();
    }
    event->accept();
}

void LaunchPicture::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    ring_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
    update();
}

void LaunchPicture::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    ring_ = false;
    update();
}

QString LaunchPicture::forceText(double force) const {
    return QString::fromStdString(
        withUnit(figureText(force, Quantity::force, units_), Quantity::force, units_));
}

void LaunchPicture::addHeading(const LaunchRow& row) {
    const double widest = sceneScreenType().sizeOf(QStringLiteral("0.00 s"), SceneFont::figure).width();
    scene_.write({.at = {PictureCorner::topLeft, {18, 8}},
                  .lie = Qt::AlignLeft | Qt::AlignTop,
                  .text = secondsText(time_),
                  .font = SceneFont::figure,
                  .ink = &Theme::ink});
    QStringList words{tr("after the release")};
    if (speed_ > 0) {
        words << speedWords(speed_);
    }
    words << distanceText(row.distance, units_);
    scene_.write({.at = {PictureCorner::topLeft, {34 + widest, 34}},
                  .lie = Qt::AlignLeft | Qt::AlignBottom,
                  .text = words.join(QStringLiteral(" · "))});
}

// What happens now, and when the baseline did it.
void LaunchPicture::addFlag() {
    const LaunchEvent* event = eventNow();
    if (event == nullptr) {
        return;
    }
    QString below = secondsText(event->time);
    if (baseline_) {
        const std::optional<double> then = firstTime(*baseline_, event->kind);
        below += tr(" · %1: %2").arg(baseline_->called, then ? secondsText(*then) : tr("never"));
    }
    scene_.write({.at = {PictureCorner::topRight, {-16, 12}},
                  .lie = Qt::AlignRight | Qt::AlignTop,
                  .text = flag(),
                  .below = below,
                  .font = SceneFont::strong,
                  .ink = &Theme::ink,
                  .card = &Theme::upper});
}

}  // namespace bolthole
