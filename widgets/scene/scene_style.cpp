#include "widgets/scene/scene_style.h"

#include <QFontMetricsF>
#include <QPaintDevice>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

QFont screenFont(SceneFont font) {
    switch (font) {
        case SceneFont::small:
            return textFont(TextSize::small);
        case SceneFont::smallStrong:
            return textFont(TextSize::small, true);
        case SceneFont::body:
            return textFont(TextSize::body);
        case SceneFont::figure:
            return textFont(TextSize::figure, true);
        case SceneFont::strong:
            break;
    }
    return textFont(TextSize::body, true);
}

class ScreenType : public SceneType {
  public:
    [[nodiscard]] QSizeF sizeOf(const QString& text, SceneFont font, double wrap) const override {
        const QFontMetricsF metrics(screenFont(font));
        if (wrap <= 0) {
            return {metrics.horizontalAdvance(text), metrics.height()};
        }
        constexpr double kTall = 10'000;
        return metrics.boundingRect(QRectF(0, 0, wrap, kTall), Qt::TextWordWrap, text).size();
    }
    void write(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text,
               SceneFont font) const override {
        const QFontMetricsF metrics(screenFont(font));
        painter.setFont(screenFont(font));
        const int wraps = box.height() > 1.5 * metrics.height() ? Qt::TextWordWrap : Qt::TextDontClip;
        painter.drawText(box, static_cast<int>(lie) | wraps | Qt::TextDontClip, text);
    }
    [[nodiscard]] QString elided(const QString& text, SceneFont font, double widest) const override {
        return QFontMetricsF(screenFont(font)).elidedText(text, Qt::ElideRight, widest);
    }
};

// What is white on paper: what things lie on, and what they are filled with on the screen.
bool isPaperWhite(SceneInk ink) {
    constexpr std::array kPale{&Theme::canvas, &Theme::card,   &Theme::metalFill,
                               &Theme::earth,  &Theme::window, &Theme::panel};
    return std::ranges::find(kPale, ink) != kPale.end();
}

// In widths of the pen, dash and gap in turn.
QList<double> patternOf(SceneDash dash, bool isPrint) {
    switch (dash) {
        case SceneDash::dotted:
            return {1.0, 2.0};
        case SceneDash::dashDot:
            return isPrint ? QList<double>{16.0, 5.0, 3.0, 5.0} : QList<double>{10.0, 3.5, 2.0, 3.5};
        case SceneDash::dashed:
        case SceneDash::solid:
            break;
    }
    return isPrint ? QList<double>{4.0, 2.5} : QList<double>{4.0, 3.0};
}

}  // namespace

const SceneType& sceneScreenType() {
    static const ScreenType type;
    return type;
}

SceneStyle SceneStyle::screen(SceneInk ground) {
    SceneStyle style;
    style.type = &sceneScreenType();
    style.ground = ground;
    return style;
}

SceneStyle SceneStyle::print(const SceneType& type) {
    SceneStyle style;
    style.type = &type;
    style.isPrint = true;
    style.link = 1.3;
    style.hole = 1.25;
    style.center = 2;
    style.arrowHead = 2.4;
    style.reach = 1.6;
    return style;
}

double SceneStyle::width(SceneWeight weight) const {
    constexpr std::array kPixels{1.0, 1.3, 1.6, 2.2, 3.0};
    constexpr std::array kMillimetres{kThinnestPrintedLine, 0.3, 0.35, 0.5, 0.6};
    const auto index = static_cast<std::size_t>(weight);
    return isPrint ? kMillimetres[index] : kPixels[index];
}

QColor SceneStyle::color(SceneInk ink, double strength) const {
    if (isPrint) {
        return isPaperWhite(ink) ? Qt::white : Qt::black;
    }
    return strength < 1 ? over(theme().*ink, strength, theme().*ground) : theme().*ink;
}

QPen SceneStyle::pen(const SceneStroke& stroke) const {
    const double wide = width(stroke.weight);
    if (stroke.dash == SceneDash::solid) {
        return pen(stroke.ink, wide, stroke.strength);
    }
    return dashedPen(color(stroke.ink, stroke.strength), wide, patternOf(stroke.dash, isPrint));
}

QPen SceneStyle::pen(SceneInk ink, double wide, double strength) const {
    return roundPen(color(ink, strength), isPrint ? std::max(wide, kThinnestPrintedLine) : wide);
}

QBrush SceneStyle::fill(SceneInk ink, double strength) const {
    if (ink == nullptr) {
        return Qt::NoBrush;
    }
    return isPrint && strength < 1 ? QBrush(Qt::white) : QBrush(color(ink, strength));
}

QColor SceneStyle::patch() const {
    return isPrint ? QColor(Qt::white) : faded(theme().*ground, 0.85);
}

QPointF SceneView::place(const ScenePlace& place) const {
    switch (place.corner) {
        case PictureCorner::topLeft:
            return picture.topLeft() + place.off;
        case PictureCorner::topRight:
            return picture.topRight() + place.off;
        case PictureCorner::bottomLeft:
            return picture.bottomLeft() + place.off;
        case PictureCorner::bottomRight:
            return picture.bottomRight() + place.off;
        case PictureCorner::none:
            break;
    }
    return camera.toPicture(place.at) + place.off;
}

}  // namespace bolthole
