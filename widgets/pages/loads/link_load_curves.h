// Every joint's load through the travel, travel upward as the wheel moves.
#pragma once

#include <QWidget>
#include <vector>

#include "geometry/statics/launch_case.h"
#include "geometry/units/text.h"

class QPainter;

namespace bolthole {

/// A curve a joint: tension to the right of the zero line, compression to the left. Sides whose curves
/// coincide are drawn once. A key beside the curves tells them by color, line and name.
class LinkLoadCurves : public QWidget {
    Q_OBJECT
  public:
    explicit LinkLoadCurves(QWidget* parent = nullptr);

    /// Copies what it needs.
    void showLoads(const Car& car, const Trace& trace, const LinkFigures& figures, Units units);

    [[nodiscard]] QSize sizeHint() const override { return {760, 260}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {460, 240}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Curve {
        QString name;
        Role role = Role::lower;
        bool isRight = false;       // of a pair whose sides differ: dashed
        std::vector<double> loads;  // N, NaN where the links do not reach
    };
    void addCurve(const Car& car, const LinkFigures& figures, std::size_t joint,
                  const std::vector<std::size_t>& rows);
    void paintAxes(QPainter& painter, const QRectF& plot) const;
    void paintCurve(QPainter& painter, const QRectF& plot, const Curve& curve) const;
    void paintKey(QPainter& painter, const QRectF& box) const;
    [[nodiscard]] QPointF place(const QRectF& plot, double load, double travel) const;

    Units units_ = Units::inch;
    std::vector<double> travel_;  // m
    std::vector<Curve> curves_;
    double low_ = 0;   // N
    double high_ = 1;  // N
};

}  // namespace bolthole
