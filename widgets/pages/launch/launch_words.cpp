#include "widgets/pages/launch/launch_words.h"

#include <algorithm>

#include "geometry/kinematics/trace.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

QString partWords(const LaunchFilm& film, int part) {
    const bool isThere = part >= 0 && static_cast<std::size_t>(part) < film.car.springs.size();
    return isThere ? QString::fromStdString(film.car.springs[static_cast<std::size_t>(part)].name)
                   : tr("part");
}

}  // namespace

QString secondsText(double seconds) {
    return QString::fromStdString(
        withUnit(figureText(seconds, Quantity::time, Units::metric), Quantity::time, Units::metric));
}

QString eventWords(const LaunchFilm& film, const LaunchEvent& event) {
    switch (event.kind) {
        case LaunchEventKind::toppedOut:
            return tr("nose tops out");
        case LaunchEventKind::offTop:
            return tr("nose leaves the top");
        case LaunchEventKind::bottomed:
            return tr("nose bottoms");
        case LaunchEventKind::offBottom:
            return tr("nose leaves the bottom");
        case LaunchEventKind::frontTiresUp:
            return tr("front tires up");
        case LaunchEventKind::frontTiresDown:
            return tr("front tires down");
        case LaunchEventKind::rearTiresUp:
            return tr("rear tires carry nothing");
        case LaunchEventKind::rearTiresDown:
            return tr("rear tires carry again");
        case LaunchEventKind::partMet:
            return tr("%1 meets its stop").arg(partWords(film, event.part));
        case LaunchEventKind::coupled:
            return tr("converter couples");
        case LaunchEventKind::locked:
            return tr("clutch holds");
        case LaunchEventKind::slipping:
            return tr("clutch slips");
        case LaunchEventKind::clockStarted:
            return tr("clock starts");
        case LaunchEventKind::sixtyFeet:
            return tr("60 ft");
        case LaunchEventKind::released:
        case LaunchEventKind::partFree:
        case LaunchEventKind::uncoupled:
            break;
    }
    return {};
}

bool isMarked(LaunchEventKind kind) {
    switch (kind) {
        case LaunchEventKind::toppedOut:
        case LaunchEventKind::frontTiresUp:
        case LaunchEventKind::rearTiresUp:
        case LaunchEventKind::coupled:
        case LaunchEventKind::locked:
        case LaunchEventKind::sixtyFeet:
            return true;
        default:
            return false;
    }
}

std::optional<double> firstTime(const LaunchFilm& film, LaunchEventKind kind) {
    const auto found = std::ranges::find(film.run.events, kind, &LaunchEvent::kind);
    return found == film.run.events.end() ? std::nullopt : std::optional(found->time);
}

QString endWords(const LaunchFilm& film, Units units) {
    const LaunchRun& run = film.run;
    const QString when = secondsText(run.endTime);
    switch (run.end) {
        case LaunchEnd::done:
            return {};
        case LaunchEnd::timeOut:
            return tr("60 ft are not reached within %1: too little thrust gets to the ground.").arg(when);
        case LaunchEnd::refused:
            return tr("The numbers can't be computed with: %1.").arg(QString::fromStdString(run.refusal));
        case LaunchEnd::noRide:
            return tr("The car can't be assembled at ride: %1")
                .arg(QString::fromStdString(describe(run.links, film.car, units)));
        case LaunchEnd::stalled:
            return tr("The engine stalls %1 after the release.").arg(when);
        case LaunchEnd::linksEnd:
            return tr("The launch ends %1 after the release: the axle gets to a travel of %2, past which the "
                      "links don't let it. %3")
                .arg(when, lengthText(run.endTravel, units),
                     QString::fromStdString(describe(run.links, film.car, units)));
        case LaunchEnd::overBackwards:
            return tr("The car goes over backwards %1 after the release: these numbers lift the nose until "
                      "the center of "
                      "gravity stands behind the rear tires. Nobody may try that: wheelie bars, less grip or "
                      "power.")
                .arg(when);
        case LaunchEnd::notRun:
        case LaunchEnd::unfollowed:
            break;
    }
    return tr("Numbers so extreme that the motion can't be followed past %1.").arg(when);
}

}  // namespace bolthole
