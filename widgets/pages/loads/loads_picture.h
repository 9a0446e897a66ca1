// The car under launch from the side, front to the right: what its tires carry standing and launching,
// thrust, CG, pitch.
#pragma once

#include <QWidget>
#include <optional>

#include "geometry/statics/launch_case.h"
#include "geometry/units/text.h"
#include "widgets/scene/scene_style.h"

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
    void compose();
    void addBody(const LaunchAttitude& attitude, bool isNow);
    void addLoad(double x, double force, bool isNow);
    void addThrust();
    [[nodiscard]] QString whatIsDrawn() const;
    void speak();
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
    double cgAhead_ = 0;    // m
    double cgHeight_ = 0;   // m
    double perNewton_ = 0;  // px
    SideCamera camera_;     // from the rear patch
    Scene scene_;
};

}  // namespace bolthole
