#include "widgets/views/still_layers.h"

#include <QPainter>
#include <QtGlobal>
#include <cmath>

namespace bolthole {

void StillKey::tell(QPointF place) {
    constexpr double kFine = 64;
    tell(std::round(place.x() * kFine));
    tell(std::round(place.y() * kFine));
}

void StillKey::tell(double number) {
    Q_ASSERT(count_ < kMost);
    told_[count_++] = number;
}

void StillKey::tell(const QRectF& box) {
    tell(box.topLeft());
    tell(box.bottomRight());
}

void StillLayer::show(QPainter& painter, const QRectF& picture, const StillKey& key, const Paint& paint) {
    const double ratio = painter.device()->devicePixelRatioF();
    if (pixels_.isNull() || pixels_.devicePixelRatioF() != ratio || key != key_) {
        key_ = key;
        pixels_ = QPixmap((picture.size() * ratio).toSize());
        pixels_.setDevicePixelRatio(ratio);
        QPainter still(&pixels_);
        still.translate(-picture.topLeft());
        still.setRenderHint(QPainter::Antialiasing);
        paint(still);
    }
    painter.drawPixmap(picture.topLeft(), pixels_);
}

bool StillLayer::showIfStill(QPainter& painter, const QRectF& picture, const StillKey& key,
                             const Paint& paint) {
    if (key != asked_) {
        asked_ = key;
        return false;
    }
    show(painter, picture, key, paint);
    return true;
}

}  // namespace bolthole
