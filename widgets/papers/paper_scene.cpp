#include "widgets/papers/paper_scene.h"

#include <algorithm>

namespace bolthole {

namespace {

PrintType printTypeOf(SceneFont font) {
    return {digit_height::kText, font != SceneFont::small && font != SceneFont::body};
}

}  // namespace

QSizeF PaperType::sizeOf(const QString& text, SceneFont font, double wrap) const {
    const PrintType type = printTypeOf(font);
    if (wrap <= 0) {
        return {fonts_.width(text, type), 1.5 * type.digits};
    }
    const QStringList lines = fonts_.wrapped(text, type, wrap);
    const auto more = static_cast<double>(std::max<qsizetype>(lines.size(), 1) - 1);
    return {fonts_.widest(lines, type), 1.5 * type.digits + more * type.leading()};
}

void PaperType::write(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text,
                      SceneFont font) const {
    const PrintType type = printTypeOf(font);
    const bool isWrapped = box.height() > 2 * type.digits;
    const QStringList lines = isWrapped ? fonts_.wrapped(text, type, box.width()) : QStringList{text};
    const double baseline = box.top() + 1.25 * type.digits;
    if (lie.testFlag(Qt::AlignHCenter)) {
        fonts_.draw(painter, {box.center().x(), baseline}, lines, type, Qt::AlignHCenter);
    } else if (lie.testFlag(Qt::AlignRight)) {
        fonts_.draw(painter, {box.right(), baseline}, lines, type, Qt::AlignRight);
    } else {
        fonts_.draw(painter, {box.left(), baseline}, lines, type);
    }
}

QString PaperType::elided(const QString& text, SceneFont font, double widest) const {
    return fonts_.elided(text, printTypeOf(font), widest);
}

}  // namespace bolthole
