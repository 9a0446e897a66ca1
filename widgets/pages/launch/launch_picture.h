// The launch as a moving picture: the whole car from the side at one moment, the ground going by under it.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "geometry/units/text.h"
#include "widgets/pages/launch/launch_film.h"
#include "widgets/scene/scene_style.h"
#include "widgets/state/bench_state.h"
#include "widgets/state/drawn_points.h"

namespace bolthole {

/// Front to the right. Lengths and moves to scale, forces to one scale of their own; the body is a plain
/// shape and no car's. The baseline stands dashed over it, car on car: how it sits, not how far it got.
class LaunchPicture : public QWidget {
    Q_OBJECT
  public:
    explicit LaunchPicture(QWidget* parent = nullptr);

    /// Shows the launches; `baseline` may be null.
    void showFilms(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> baseline,
                   Units units);
    /// Goes to a time, s; `speed`: how fast it plays, which decides how long what happens stays in words.
    void showTime(double time, double speed);
    [[nodiscard]] double time() const { return time_; }
    /// What is flagged as happening now; empty: nothing.
    [[nodiscard]] QString flag() const;

    [[nodiscard]] QSize sizeHint() const override { return {760, 380}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {420, 250}; }

  signals:
    void clicked();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    // What one axle carries, m and N.
    struct Patch {
        double x = 0;
        double load = 0;
        std::optional<double> baseline;
        QString name;
    };
    void place();
    void compose(const FilmPose& now);
    void addGround(const FilmPose& pose);
    void addMark(double x, double distance);
    void addBody(const FilmPose& pose, bool isNow);
    void addLinks(const FilmPose& pose);
    void addCenter(const FilmPose& pose);
    void addForces(const FilmPose& pose, const FilmPose* baseline);
    void addLoad(const Patch& patch);
    void addThrust(const FilmPose& pose);
    void addHeading(const LaunchRow& row);
    void addFlag();
    void speak();
    [[nodiscard]] const LaunchEvent* eventNow() const;
    [[nodiscard]] SceneView view() const { return {camera_, QRectF(rect())}; }
    [[nodiscard]] QString forceText(double force) const;

    std::shared_ptr<const LaunchFilm> film_;
    std::shared_ptr<const LaunchFilm> baseline_;
    Units units_ = Units::inch;
    double time_ = 0;
    double speed_ = 0;
    bool ring_ = false;  // the focus came by the keyboard
    SideCamera camera_;
    double perNewton_ = 0;  // px
    double mostForce_ = 0;  // N, of the whole film
    BenchState bench_;      // the car at the moment, for where its links are
    DrawnPoints points_;
    Scene scene_;
};

}  // namespace bolthole
