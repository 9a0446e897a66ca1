#include "widgets/pages/measure/point_picture.h"

#include <QPixmap>
#include <algorithm>

namespace bolthole {

namespace {

// mm of paper: what the sheet's pictures are made for.
constexpr double kPaperWide = 170;
constexpr double kPaperHigh = 66;

}  // namespace

PointPicture::PointPicture(QWidget* parent) : QWidget(parent) {
    setMinimumSize(360, 150);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PointPicture::showPoint(const Car& car, const PlanArea& area, const QString& sign) {
    car_ = car;
    area_ = area;
    sign_ = sign;
    howTo_.reset();
    setAccessibleName(tr("Picture: %1").arg(area.title));
    setAccessibleDescription(sign.isEmpty()        ? tr("The number asked for is not drawn.")
                             : sign.contains(u'–') ? tr("The way between points %1 is lit up.").arg(sign)
                                                   : tr("Point %1 is lit up.").arg(sign));
    update();
}

void PointPicture::showHowTo(const HowToPicture& picture) {
    howTo_ = picture;
    sign_ = picture.letter;
    setAccessibleName(tr("Picture of how it is measured"));
    setAccessibleDescription(tr("Letter %1 is lit up.").arg(picture.letter));
    update();
}

QSize PointPicture::sizeHint() const {
    return {720, 300};
}

double PointPicture::scale() const {
    return std::max(0.1, std::min(width() / kPaperWide, height() / kPaperHigh));
}

MeasuringMarks PointPicture::paintOn(QPainter& painter) const {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(scale(), scale());
    const QRectF box(0, 0, width() / scale(), height() / scale());
    painter.fillRect(box, Qt::white);
    if (howTo_) {
        return drawHowTo(painter, box, fonts_, *howTo_).marks;
    }
    return drawMeasuringPicture(painter, box, fonts_, car_, area_, {}, sign_);
}

std::vector<QPointF> PointPicture::litAt() const {
    QPixmap unseen(size());
    QPainter painter(&unseen);
    const MeasuringMarks marks = paintOn(painter);
    std::vector<QPointF> lit;
    const QStringList signs = sign_.split(u'–');
    for (std::size_t at = 0; at < marks.signs.size(); ++at) {
        if (signs.contains(marks.signs[at])) {
            lit.push_back(scale() * marks.bubbles[at].center());
            lit.push_back(scale() * marks.points[at]);
        }
    }
    return lit;
}

void PointPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintOn(painter);
}

}  // namespace bolthole
