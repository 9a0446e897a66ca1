// The side view's marks: instant center, CG and roll axis.
#include <cmath>
#include <optional>

#include "geometry/kinematics/roll.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/kit/kept_words.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/views/side_drawing.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

void SideDrawing::drawCenterOfGravity() {
    const Car& car = state_.solvedCar;
    const CarBalance balance = balanceOf(car);
    const double x = balance.cgX(car.wheelbase);
    const QPointF at = picture(x, balance.height);
    const Units units = state_.style.units;
    const QString mark = unitText(Quantity::length, units);
    const QString text =
        tr("CG %1 %3 forward, %2 high").arg(distanceText(x), distanceText(balance.height), mark);
    if (!inPicture(at, 10)) {
        drawEdgeMarker(text, {x, balance.height}, theme_.reference);
        return;
    }
    put(SceneCenter{.at = {x, balance.height}, .kind = CenterKind::gravity});
    const QPointF reach(1.1 * style_.center, 1.1 * style_.center);
    labels_.take(QRectF(at - reach, at + reach));
    const QSizeF size = sizeOfLine(painter_.font(), text) + QSizeF(8, 2);
    const QRectF place = labels_.place(at, size, 11, 2);
    drawChip(place, text, faded(theme_.canvas, 0.85));
}

// Its ring and dot, where it is in the picture.
void SideDrawing::markInstantCenter() {
    const QPointF at = picture(station_->icCarX, station_->icCarZ);
    if (!std::isfinite(station_->icCarX) || !inPicture(at, 12)) {
        return;
    }
    put(SceneCenter{.at = {station_->icCarX, station_->icCarZ}, .kind = CenterKind::instant});
}

void SideDrawing::drawInstantCenter() {
    const Station& station = *station_;
    if (!std::isfinite(station.icCarX)) {
        return;
    }
    const QPointF at = picture(station.icCarX, station.icCarZ);
    const QString mark = unitText(Quantity::length, state_.style.units);
    const QString text =
        QStringLiteral("%1 × %2 %3")
            .arg(distanceText(station[Figure::icX]), distanceText(station[Figure::icZ]), mark);
    const QString plusMinus = centerUncertaintyWords(state_);
    if (!inPicture(at, 12)) {
        const QString far = plusMinus.isEmpty() ? QString() : QStringLiteral(", %1").arg(plusMinus);
        drawEdgeMarker(tr("IC %1%2").arg(text, far), {station.icCarX, station.icCarZ}, theme_.instantCenter);
        return;
    }
    labels_.take(QRectF(at - QPointF(13, 13), QSizeF(26, 26)));
    // Small and without its ±: the readouts above have both, large.
    const QString chip = tr("IC %1").arg(text);
    const QRectF box = labels_.place(at, sizeOfLine(painter_.font(), chip) + QSizeF(8, 2), 15, 2);
    if (!box.isNull()) {
        drawChip(box, chip, faded(theme_.canvas, 0.85));
    }
}

// At the travel drawn, from behind the axle to the front one: farther out it says nothing. The dash-dot is
// that of an axis in engineering drawing.
void SideDrawing::drawRollAxis() {
    const RollFigures roll = solveRoll(state_.solvedCar, (*station_)[Figure::travel], 0);
    if (!std::isfinite(roll.squareCenter) || !std::isfinite(roll.axisAngle)) {
        return;
    }
    const GroundLine& ground = station_->ground;
    const double x = ground.patchX - roll.squareCenter * ground.alongZ;
    const double z = ground.patchZ + roll.squareCenter * ground.alongX;
    const double rise = std::tan(roll.axisAngle + (*station_)[Figure::ground]);
    const double behind = state_.solvedCar.rearTireRadius;
    const double ahead = state_.solvedCar.wheelbase;
    const QPointF rear(x - behind, z - rise * behind);
    const QPointF front(ahead, z + rise * (ahead - x));
    rollAxis_ =
        clipped(QLineF(camera_.toPicture(rear), camera_.toPicture(front)), picture_).value_or(QLineF());
    put(SceneLine{
        .from = rear, .to = front, .stroke = {&Theme::ink, SceneWeight::hair, SceneDash::dashDot, 0.55}});
}

// Near its front end; left out where there is no room.
void SideDrawing::nameRollAxis() {
    constexpr double kFromEnd = 48;  // pixels
    if (rollAxis_.length() <= 2 * kFromEnd) {
        return;
    }
    const QString text = tr("roll axis");
    const QPointF at = rollAxis_.pointAt(1 - kFromEnd / rollAxis_.length());
    const QRectF box = labels_.place(at, sizeOfLine(painter_.font(), text), 4, 6);
    if (!box.isNull()) {
        painter_.fillRect(box, faded(theme_.canvas, 0.85));
        painter_.setPen(theme_.muted);
        drawLine(painter_, box, Qt::AlignCenter, text);
    }
}

}  // namespace bolthole
