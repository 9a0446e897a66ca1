#include "widgets/kit/kept_marks.h"

#include <QCache>
#include <QHash>
#include <QImage>
#include <QPainter>
#include <cmath>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

constexpr int kPhases = 4;  // pictures a pixel each way

struct MarkKey {
    MarkLook look;
    double ratio = 1;  // device pixels a logical one
    QPoint phase;      // of a pixel, in kPhases

    bool operator==(const MarkKey&) const = default;
};

std::size_t qHash(const MarkKey& key, std::size_t seed = 0) {
    const MarkLook& look = key.look;
    return qHashMulti(seed, look.kind, look.radius, look.inks[0], look.inks[1], look.inks[2], key.ratio,
                      key.phase.x(), key.phase.y());
}

// A cache each thread: papers are also painted off the window's. In 1024ths of a megapixel.
QCache<MarkKey, QImage>& keptMarks() {
    constexpr qsizetype kMost = 2048;
    static thread_local QCache<MarkKey, QImage> kept(kMost);
    return kept;
}

}  // namespace

void drawMarkAt(QPainter& painter, QPointF at, double reach, const MarkLook& look,
                const std::function<void(QPainter& painter, QPointF at)>& draw) {
    const QTransform& world = painter.worldTransform();
    if (!takesPixels(painter) || world.type() > QTransform::TxTranslate) {
        draw(painter, at);
        return;
    }
    const double ratio = painter.device()->devicePixelRatioF();
    const QPointF fine = (at + QPointF(world.dx(), world.dy())) * ratio * kPhases;
    const QPoint place(qRound(fine.x()), qRound(fine.y()));
    const QPoint pixel(static_cast<int>(std::floor(place.x() / static_cast<double>(kPhases))),
                       static_cast<int>(std::floor(place.y() / static_cast<double>(kPhases))));
    const MarkKey key{look, ratio, place - pixel * kPhases};
    const int half = static_cast<int>(std::ceil(reach * ratio)) + 2;
    const QImage* picture = keptMarks().object(key);
    if (picture == nullptr) {
        auto* made = new QImage(2 * half, 2 * half, QImage::Format_ARGB32_Premultiplied);
        made->setDevicePixelRatio(ratio);
        made->fill(Qt::transparent);
        QPainter still(made);
        still.setRenderHint(QPainter::Antialiasing);
        draw(still, (QPointF(half, half) + QPointF(key.phase) / kPhases) / ratio);
        still.end();
        keptMarks().insert(key, made, std::max<qsizetype>(1, made->width() * made->height() / 1024));
        picture = keptMarks().object(key);
    }
    if (picture != nullptr) {
        painter.drawImage(QPointF(pixel - QPoint(half, half)) / ratio - QPointF(world.dx(), world.dy()),
                          *picture);
    } else {
        draw(painter, at);  // larger than all that is kept
    }
}

}  // namespace bolthole
