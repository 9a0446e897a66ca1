// The car under launch from the side, front to the right: what its tires carry standing and launching,
// thrust, CG, pitch.
#pragma once

#include <QWidget>
#include <optional>

#include "geometry/statics/launch_case.h"
#include "geometry/units/text.h"

class QPainter;

namespace bolthole {

/// Front to the right, lengths to scale, all forces to one scale of their own. The body is a plain shape and
/// no car's; its rise and pitch are drawn kRiseDrawn times what they are, which the picture says.
class LoadsPicture : public QWidget {
    Q_OBJECT
  public:
    static constexpr double kRiseDrawn = 3;
    explicit LoadsPicture(QWidget* parent = nullptr);

    /// Copies what it needs. A case with a problem shows an empty ground.
    void showCase(const Car& car, const LaunchCase& launch, Units units);

    [[nodiscard]] QSize sizeHint() const override { return {760, 306}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {480, 270}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Axle {
        double x = 0;         // m ahead of the rear patch
        double radius = 0;    // m
        double standing = 0;  // N
        double launching = 0;
    };
    void place();
    void paintBody(QPainter& painter, const LaunchAttitude& attitude, bool isNow) const;
    void paintWheel(QPainter& painter, const Axle& axle) const;
    void paintLoads(QPainter& painter, const Axle& axle) const;
    void paintLoad(QPainter& painter, QPointF at, double force, bool isNow) const;
    void paintThrust(QPainter& painter) const;
    void paintCenter(QPainter& painter) const;
    void paintWords(QPainter& painter) const;
    void speak();
    [[nodiscard]] QPointF toPicture(double x, double z) const;
    [[nodiscard]] double lengthOf(double force) const { return force * perNewton_; }

    Units units_ = Units::inch;
    std::optional<Body> body_;
    bool isEmpty_ = true;
    bool isLaunching_ = false;
    bool wheelsUp_ = false;
    Axle rear_;
    Axle front_;
    double thrust_ = 0;  // N
    std::optional<LaunchAttitude> attitude_;
    double cgAhead_ = 0;   // m
    double cgHeight_ = 0;  // m
    double scale_ = 1;     // px per m
    double perNewton_ = 0;
    QPointF origin_;  // of the rear patch, px
};

}  // namespace bolthole
