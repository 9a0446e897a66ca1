// What the program draws itself of the toolkit's small parts, so that they can be seen in both themes.
#pragma once

#include <QProxyStyle>

namespace bolthole {

/// Fusion, with check boxes, radio buttons, splitters and the pictures of message boxes in the theme's
/// colors.
class CalmStyle : public QProxyStyle {
    Q_OBJECT
  public:
    CalmStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    [[nodiscard]] QIcon standardIcon(StandardPixmap which, const QStyleOption* option,
                                     const QWidget* widget) const override;
    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option,
                                  const QWidget* widget) const override;
};

}  // namespace bolthole
